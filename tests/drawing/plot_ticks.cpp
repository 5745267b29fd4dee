// Ticks are round, few, and within the ends.
#include <rapidcheck.h>

#include <cmath>
#include <set>

#include "plots.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

int drawn(int from, int to) { return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(from, to)); }
bool drawn_flag() { return *rc::gen::arbitrary<bool>(); }

}  // namespace

TEST_CASE("ticks are the numbers that people write") {
  const auto at = [](double low, double high, int most) { return round_ticks(low, high, most, PlotSteps::decimal).at; };
  CHECK(at(0.0, 10.0, 6) == std::vector<double>{0, 2, 4, 6, 8, 10});
  CHECK(at(-12.0, 60.0, 6) == std::vector<double>{0, 20, 40, 60});
  CHECK(at(0.0, 1.0, 6) == std::vector<double>{0, 0.2, 0.4, 0.6, 0.8, 1.0});
  CHECK(at(0.31, 0.52, 5) == std::vector<double>{0.35, 0.4, 0.45, 0.5});
  CHECK(at(-3.0e6, 4.0e6, 5) == std::vector<double>{-2e6, 0, 2e6, 4e6});
  CHECK(round_ticks(0.0, 96.0, 6, PlotSteps::hours).at == std::vector<double>{0, 24, 48, 72, 96});
  CHECK(round_ticks(0.0, 30.0, 7, PlotSteps::hours).at == std::vector<double>{0, 6, 12, 18, 24, 30});
  CHECK(round_ticks(0.0, 1.0, 5, PlotSteps::hours).at == std::vector<double>{0, 0.25, 0.5, 0.75, 1});
}

TEST_CASE("ticks are written without digits that say nothing") {
  CHECK(tick_words(1500.0, 0, true) == "1,500");
  CHECK(tick_words(-1500.0, 0, true) == "-1,500");
  CHECK(tick_words(-150.0, 0, true) == "-150");
  CHECK(tick_words(1234567.0, 0, true) == "1,234,567");
  CHECK(tick_words(1500.0, 0, false) == "1500");
  CHECK(tick_words(0.3, 1, true) == "0.3");
  CHECK(tick_words(2e-7, 7, true) == "2e-07");
  CHECK(tick_words(3e9, 0, true) == "3000000000");
}

TEST_CASE("ticks of any ends are round, in order, few and not too few") {
  CHECK(rc::check("ticks", [] {
    const auto any = [] { return 1.0e-3 * drawn(-1000000, 1000000); };
    const double scale = std::pow(10.0, drawn(-6, 7));
    const double one = any(), other = any();
    RC_PRE(std::abs(one - other) > 1.0e-2);
    const double low = scale * std::min(one, other), high = scale * std::max(one, other);
    const int most = drawn(2, 12);
    const auto steps = *rc::gen::element(PlotSteps::decimal, PlotSteps::hours);
    RC_PRE(steps == PlotSteps::decimal || high - low > 2.0);
    const RoundTicks ticks = round_ticks(low, high, most, steps);
    RC_ASSERT(ticks.at.size() <= static_cast<std::size_t>(most));
    std::set<std::string> words;
    for (std::size_t k = 0; k < ticks.at.size(); ++k) {
      const double slack = 1e-5 * ticks.step;
      RC_ASSERT(ticks.at[k] >= low - slack);
      RC_ASSERT(ticks.at[k] <= high + slack);
      const double steps_off_zero = ticks.at[k] / ticks.step;
      RC_ASSERT(std::abs(steps_off_zero - std::round(steps_off_zero)) < 1e-6);
      if (k > 0) RC_ASSERT(ticks.at[k] > ticks.at[k - 1]);
      words.insert(tick_words(ticks.at[k], ticks.decimals, true));
    }
    RC_ASSERT(words.size() == ticks.at.size());
    // The next finer step, at most 2.5 times finer, would have given too many.
    if (steps == PlotSteps::decimal) RC_ASSERT((high - low) / ticks.step * 2.5 + 1.0 > static_cast<double>(most));
  }));
}

TEST_CASE("any lines, bars and marks: text stays apart and inside, and nothing is lost unsaid") {
  CHECK(rc::check("plots", [] {
    const auto any = [](int most) { return static_cast<double>(drawn(-most, most)); };
    PlotPanel panel;
    std::size_t words = 0;
    const int lines_number = drawn(0, 5);
    for (int k = 0; k < lines_number; ++k) {
      std::vector<PlotPoint> at;
      double x = any(50);
      for (int j = drawn(1, 20); j > 0; --j) at.push_back({x += drawn(0, 9), any(500)});
      panel.line.push_back(
          plots::line("line " + std::string(1, static_cast<char>('a' + k)), at, static_cast<PlotInk>(drawn(0, 5))));
      panel.line.back().steps = drawn_flag();
      ++words;
    }
    for (int k = drawn(0, 4); k > 0; --k, ++words)
      panel.mark.push_back({{any(50), any(500)}, plots::words("a mark"), drawn_flag()});
    if (drawn_flag()) {
      panel.wall.push_back({any(40), static_cast<PlotBeyond>(drawn(0, 4)), plots::words("a limit")});
      ++words;
    }
    panel.height_m = 0.001 * drawn(18, 70);
    const DrawnPlot made = draw_plot(plots::plot_of(panel));
    const auto boxes = text_boxes(made.picture);
    const Box paper{{0.0, 0.0}, {made.picture.width_m, made.picture.height_m}};
    std::size_t there = 0;
    for (const Layer& layer : made.picture.layer) {
      for (const SheetShape& shape : layer.shape) there += layer.name == "words" && std::get_if<Lettering>(&shape);
    }
    RC_ASSERT(there + made.left_out.size() == words);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      RC_ASSERT(within(boxes[i], paper));
      for (std::size_t j = i + 1; j < boxes.size(); ++j) RC_ASSERT_FALSE(overlap(boxes[i], boxes[j]));
    }
  }));
}
