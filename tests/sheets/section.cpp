// The sections of every layout: labels apart, figures with keys that the answer has.
#include "sheets/section.hpp"

#include "picture_keys.hpp"
#include "slabwright/freeze_section.hpp"
#include "slabwright/report.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

Answer asked(const DesignFile& file, Question question) {
  Wishes wishes;
  wishes.question = question;
  wishes.sensitivities = wishes.bands = false;
  return answer(file, wishes);
}

/// What the sheets' answer has of its edges, without the year that it runs too.
Answer with_sections(const DesignFile& file) {
  Answer made = asked(file, Question::freeze);
  REQUIRE((made.envelope && made.floor && made.freeze));
  EdgeFields fields;
  const Design& design = made.file.design;
  const WatchedPlaces places = watched_places(design, *made.envelope, fields);
  const Snap snap = snap_of(design);
  made.edge_section = held_sections({design, *made.envelope, *made.floor, places, snap}, *made.freeze);
  return made;
}

void check_section(const SectionSheet& sheet, const std::string& json) {
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
  const test::KeyFaults keys = test::key_faults(sheet.picture, json);
  for (const std::string& fault : keys.fault) UNSCOPED_INFO(fault);
  CHECK(keys.fault.empty());
  CHECK(keys.keys > 20);
}

/// Both sections of an answer.
void check_sections(const Answer& made) {
  const Quotes quotes(made);
  const std::string json = json_of(made);
  const auto edge = sheets::section_at_edge(quotes), door = sheets::section_at_door(quotes);
  CHECK((edge && door));
  if (edge) check_section(*edge, json);
  if (door) check_section(*door, json);
}

}  // namespace

TEST_CASE("sections of every layout have their labels apart, and keys that the answer has") {
  for (const auto& one : test::layouts()) {
    INFO(one.name);
    check_sections(with_sections(one.file));
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
    check_sections(with_sections(test::with_keys(test::layout("ten-lines").file, keys)));
  }
}

TEST_CASE("only sheets ask for sections, and without a frost hold there are none") {
  const Answer cold = asked(test::layout("ten-lines").file, Question::freeze);
  CHECK(cold.edge_section.empty());
  CHECK_FALSE(sheets::section_at_edge(Quotes(cold)));
  const Answer all = asked(test::layout("ten-lines").file, Question::sheets);
  CHECK(all.edge_section.size() == 2);
  check_sections(all);
  const Answer bare =
      asked(test::from_keys({{"slab.size", "36 x 30 ft"}, {"tube.spacing", "12 in"}}), Question::sheets);
  CHECK(bare.edge_section.empty());
  CHECK_FALSE(sheets::section_at_door(Quotes(bare)));
}
