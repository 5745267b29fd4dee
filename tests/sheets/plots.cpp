// Plots of every layout: words apart, keys that the answer has, and none drawn where it has nothing.
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "sheets/plots.hpp"
#include "slabwright/answer.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

std::size_t meeting(const Picture& picture) {
  const std::vector<Box> boxes = text_boxes(picture);
  const Box paper{{0.0, 0.0}, {picture.width_m, picture.height_m}};
  std::size_t number = 0;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    number += !within(boxes[i], paper);
    for (std::size_t j = i + 1; j < boxes.size(); ++j) number += overlap(boxes[i], boxes[j]);
  }
  return number;
}

/// Texts with a digit and no key, or with a key that the answer has not.
std::vector<std::string> without_key(const Picture& picture, const Quotes& q) {
  std::vector<std::string> found;
  for (const Layer& layer : picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      const auto* text = std::get_if<Lettering>(&shape);
      if (!text || text->key == scale_mark) continue;
      std::istringstream keys(text->key);
      bool known = text->text.find_first_of("0123456789") == std::string::npos || !text->key.empty();
      for (std::string key; keys >> key;) known = known && q.has(key);
      if (!known) found.push_back(text->text);
    }
  }
  return found;
}

void look_at(const std::string& name, const Picture& picture) {
  const char* folder = std::getenv("SLABWRIGHT_PICTURES");
  if (folder) std::ofstream(std::string(folder) + "/" + name + ".svg") << svg_of(picture);
}

}  // namespace

TEST_CASE("every plot of every layout has its words at their places", "[whole]") {
  std::size_t seen = 0;
  for (const test::Layout& layout : test::layouts()) {
    Wishes wishes;
    wishes.question = Question::sheets;
    wishes.sensitivities = false;
    const Answer made = answer(layout.file, wishes);
    const Quotes q(made);
    for (const sheets::ReaderPlot& plot : sheets::plots_of(q)) {
      INFO(layout.name << ' ' << plot.name);
      ++seen;
      look_at(layout.name + "-" + plot.name, plot.drawn.picture);
      CHECK(plot.drawn.left_out == std::vector<std::string>{});
      CHECK(meeting(plot.drawn.picture) == 0);
      CHECK(without_key(plot.drawn.picture, q) == std::vector<std::string>{});
      CHECK(plot.caption.find_first_of("0123456789") == std::string::npos);
      CHECK(plot.drawn.picture.title.find_first_of("0123456789") == std::string::npos);
      CHECK(plot.drawn.picture.description.find_first_of("0123456789") == std::string::npos);
      CHECK(plot.drawn.picture.width_m == Approx(0.09));
    }
  }
  CHECK(seen > 20);
}

TEST_CASE("an answer without a stage has no plot of it") {
  Wishes wishes;
  wishes.question = Question::design;
  wishes.sensitivities = false;
  const Answer made = answer(test::layout("ten-lines").file, wishes);
  CHECK(sheets::plots_of(Quotes(made)).empty());
}
