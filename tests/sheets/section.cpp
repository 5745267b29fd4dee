// The sections of every layout: labels apart, figures with keys that the answer has.
#include "sheets/section.hpp"

#include <set>
#include <sstream>

#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

Answer sheets_answer(const DesignFile& file) {
  Wishes wishes;
  wishes.question = Question::sheets;
  wishes.sensitivities = wishes.bands = false;
  return answer(file, wishes);
}

void check_section(const Quotes& quotes, const SectionSheet& sheet) {
  for (const KeyedText& words : sheet.left_out) UNSCOPED_INFO(words.text);
  CHECK(sheet.left_out.empty());
  const std::vector<Box> boxes = text_boxes(sheet.picture);
  const Box paper{{0.0, 0.0}, {sheet.picture.width_m, sheet.picture.height_m}};
  std::size_t outside = 0, meeting = 0;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    outside += !within(boxes[i], paper);
    for (std::size_t j = i + 1; j < boxes.size(); ++j) meeting += overlap(boxes[i], boxes[j]);
  }
  CHECK(boxes.size() > 15);
  CHECK(outside == 0);
  CHECK(meeting == 0);
  for (const Layer& layer : sheet.picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      const auto* text = std::get_if<Lettering>(&shape);
      if (!text) continue;
      INFO(text->text);
      CHECK((!text->key.empty() || text->text.find_first_of("0123456789") == std::string::npos));
      std::istringstream keys(text->key);
      for (std::string key; keys >> key;) CHECK((key == scale_mark || quotes.has(key)));
    }
  }
}

}  // namespace

TEST_CASE("sections of every layout have their labels apart, and keys that the answer has") {
  for (const auto& one : test::layouts()) {
    INFO(one.name);
    const Answer made = sheets_answer(one.file);
    const Quotes quotes(made);
    const auto edge = sheets::section_at_edge(quotes), door = sheets::section_at_door(quotes);
    CHECK((edge && door));
    if (edge) check_section(quotes, *edge);
    if (door) check_section(quotes, *door);
  }
}

TEST_CASE("sections of edges of every make are drawn whole") {
  const test::Keys makes[] = {
      {{"edge.thickened_depth", "16 in"}, {"edge.thickened_width", "12 in"}},
      {{"edge.stem_wall", "8 in"},
       {"edge.footing_depth", "42 in"},
       {"edge.footing_width", "16 in"},
       {"edge.footing_thickness", "8 in"},
       {"edge.floor_above_grade", "8 in"},
       {"edge.inside_insulation", "R-10"},
       {"edge.inside_depth", "24 in"}},
      {{"edge.wing_insulation", "R-10"}, {"edge.wing_width", "24 in"}, {"edge.wing_depth", "12 in"}},
      {{"edge.apron_thickness", "5 in"}, {"edge.apron_length", "4 ft"}, {"edge.apron_gap", "R-5"}},
      {{"slab.covering", "R-0.5"}, {"tube.spacing", "6 in"}}};
  for (const test::Keys& keys : makes) {
    INFO(keys[0].first);
    const Answer made = sheets_answer(test::with_keys(test::layout("ten-lines").file, keys));
    const Quotes quotes(made);
    const auto edge = sheets::section_at_edge(quotes), door = sheets::section_at_door(quotes);
    REQUIRE((edge && door));
    check_section(quotes, *edge);
    check_section(quotes, *door);
  }
}

TEST_CASE("only sheets ask for sections, and without a frost hold there are none") {
  Wishes wishes;
  wishes.question = Question::freeze;
  wishes.sensitivities = wishes.bands = false;
  const Answer cold = answer(test::layout("ten-lines").file, wishes);
  CHECK(cold.edge_section.empty());
  CHECK_FALSE(sheets::section_at_edge(Quotes(cold)));
  const Answer bare = sheets_answer(test::from_keys({{"slab.size", "36 x 30 ft"}, {"tube.spacing", "12 in"}}));
  CHECK(bare.edge_section.empty());
  CHECK_FALSE(sheets::section_at_door(Quotes(bare)));
}
