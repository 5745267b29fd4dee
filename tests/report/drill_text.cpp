// What `drill` says, from answers made by hand.
#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double in = 0.0254;

GuideHole hole(double x_m, double strike_share, Drilling word) {
  return {{x_m, 2.0, x_m, 2.0}, "bench", 36.0,         1.25 * in, 0.7 * in, -1.0 * in, 0.75 * in,
          strike_share,         1.0,     strike_share, word};
}

GuideAnchor anchor(const std::string& name, double strike_share, Drilling word, std::size_t holes) {
  GuideAnchor one{name, 0.5 * in, 3.0 * in, {}, strike_share, word, {}};
  for (std::size_t i = 0; i < holes; ++i)
    one.hole.push_back(hole(3.7 + 0.1 * static_cast<double>(i), strike_share / static_cast<double>(holes), word));
  return one;
}

Answer drilled(std::vector<GuideAnchor> anchors) {
  Answer answer = sample(Question::drill);
  DrillGuide guide;
  guide.first_wall = "west wall";
  guide.second_wall = "door wall";
  guide.outside_diameter_m = 0.625 * in;
  guide.concrete_above_m = 2.0 * in;
  guide.tolerance_m = 1.5 * in;
  guide.depth_tolerance_m = 0.5 * in;
  guide.may_move_m = 6.0 * in;
  guide.anchor = std::move(anchors);
  answer.drill = guide;
  answer.verdict = {};
  return answer;
}

std::string text(const Answer& answer, bool full = false) { return text_of(answer, {"harness.toml", full, ""}); }

void fits(const std::string& all) {
  const auto lines = lines_of(all);
  CHECK(lines.size() <= 45);
  for (const std::string& line : lines) CHECK(line.size() <= 80);
}

}  // namespace

TEST_CASE("the verdict stands first, with the chance") {
  const std::string all = text(drilled({anchor("the hole", 0.38, Drilling::do_not_drill, 1)}));
  CHECK(lines_of(all)[2] == "DO NOT DRILL the hole: a chance of 38 % to strike tube as placed.");
  CHECK(has(flat(all), "no place within 6 in is better"));
  fits(all);
  const std::string clear = text(drilled({anchor("the hole", 0.002, Drilling::likely_clear, 1)}));
  CHECK(has(flat(clear), "LIKELY CLEAR, the hole: a chance of 0.2 % to strike tube as placed. Scan before you drill."));
  CHECK_FALSE(has(flat(clear), "Instead"));
}

TEST_CASE("the cautions are there, and nothing is called safe") {
  for (const Drilling word : {Drilling::do_not_drill, Drilling::in_doubt, Drilling::likely_clear}) {
    const std::string all = flat(text(drilled({anchor("lift", 0.05, word, 4)})));
    CHECK(has(all, "The drawn position is not the cast position"));
    CHECK(has(all, "scan the floor"));
    CHECK(has(all, "GFCI"));
    CHECK(has(all, "silica dust"));
    CHECK_FALSE(has(all, "safe"));
  }
}

TEST_CASE("where the hole goes instead is told from the same walls") {
  GuideAnchor one = anchor("the hole", 0.2, Drilling::do_not_drill, 1);
  one.move.push_back({2.25 * in, -1.0 * in, 0.0, 2.5 * in, {{3.7572, 1.9746, 3.7572, 1.9746}}, 0.004, true});
  const std::string all = flat(text(drilled({one})));
  CHECK(has(all, "2 1/4 in right and 1 in down on the plan: likely clear, a chance of 0.4 %"));
  CHECK(has(all, "12 ft 4 in from west wall, 6 ft 5 3/4 in from door wall"));
  one.move[0].turn_deg = -3.0;
  CHECK(has(flat(text(drilled({one}))), "turned 3 degrees to the right"));
}

TEST_CASE("many machines with many holes still fit the screen") {
  std::vector<GuideAnchor> many;
  for (int i = 0; i < 6; ++i) {
    many.push_back(anchor("machine with a long name", 0.3, Drilling::do_not_drill, 12));
    many.back().move.push_back({0.1, 0.1, 0.0, 0.14, {}, 0.1, false});
    for (int k = 0; k < 12; ++k) many.back().move[0].hole.push_back({3.0, 2.0, 3.0, 2.0});
  }
  const std::string all = text(drilled(many));
  fits(all);
  CHECK(has(flat(all), "more: add --full"));
  for (const std::string& line : lines_of(text(drilled(many), true))) CHECK(line.size() <= 80);
}

TEST_CASE("several machines are sorted by what they are called") {
  const std::string all = flat(
      text(drilled({anchor("lift", 0.3, Drilling::do_not_drill, 4), anchor("mill", 0.001, Drilling::likely_clear, 4),
                    anchor("press", 0.002, Drilling::likely_clear, 1)})));
  CHECK(has(all, "DO NOT DRILL: lift; likely clear: mill and press. Scan before you drill."));
}

TEST_CASE("a guess carries its mark, and what was found its row") {
  Answer answer = drilled({anchor("the hole", 0.05, Drilling::in_doubt, 1)});
  answer.drill->hole_is_ours = true;
  answer.drill->found = {{{1.0, 1.0, 1.0, 1.0}, 0.02, 0.004, false}, {{2.0, 1.0, 2.0, 1.0}, 0.1, 0.09, true}};
  const std::string all = flat(text(answer));
  CHECK(has(all, "3 in deep ~"));
  CHECK(has(all, "~ (practice; yours with --tolerance)"));
  CHECK(has(all, "Found 2 places up to 0.8 in off the drawing, 0.2 in off it re-fitted; one left out"));
  answer.drill->tolerance_is_ours = false;
  CHECK_FALSE(has(flat(text(answer)), "(practice; yours"));
}

TEST_CASE("holes have a table of their own") {
  const auto sheets = tables_of(drilled({anchor("lift", 0.3, Drilling::do_not_drill, 2)}));
  const auto holes = std::find_if(sheets.begin(), sheets.end(), [](const Sheet& s) { return s.name == "holes.csv"; });
  REQUIRE(holes != sheets.end());
  const auto lines = lines_of(holes->content);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0] ==
        "anchor,hole,from west wall,from door wall,loop,along it (ft),to its centre line (in),edge to edge (in),"
        "depth margin (in),chance of a strike,so");
  CHECK(lines[1] == "lift,1,12 ft 1 3/4 in,6 ft 6 3/4 in,bench,118,1.2,0.7,-1.0,15 %,do not drill");
}
