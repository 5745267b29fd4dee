// Lines from two walls and walks along them: by hand, and walked again on floors that were laid.
#include <algorithm>
#include <cmath>

#include "floor.hpp"
#include "slabwright/routing_layout.hpp"
#include "slabwright/sitework_stakes.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const StakeWall west{"west wall", {0.0, 7.0}, {0.0, 0.0}}, south{"south wall", {0.0, 0.0}, {10.0, 0.0}};

StakeTask task_of(std::vector<Path> loops) {
  StakeTask task{{}, std::move(loops), west, south, 0.005, 0.25};
  for (std::size_t i = 0; i < task.loop.size(); ++i) task.name.push_back("loop " + std::to_string(i + 1));
  return task;
}

/// A walk step by step, those to and fro one by one.
std::vector<StakeStep> unfolded(const StakeOut& out, const StakeWalk& walk) {
  std::vector<StakeStep> steps;
  for (const StakeStep& step : walk.step) {
    for (std::size_t i = 0; i < std::max<std::size_t>(step.line.size(), 1); ++i) {
      steps.push_back(step);
      if (step.line.empty()) continue;
      StakeStep& one = steps.back();
      one.line = {step.line[i]};
      const StakeTable& table = step.line[i][0] == 'A' ? out.first : out.second;
      const auto line = std::find_if(table.line.begin(), table.line.end(),
                                     [&](const StakeLine& l) { return l.name == step.line[i]; });
      REQUIRE(line != table.line.end());
      if (i % 2 == 1) std::swap(one.from, one.to);
      for (StakePlace* place : {&one.from, &one.to})
        (step.line[i][0] == 'A' ? place->first_m : place->second_m) = line->at_m;
    }
  }
  return steps;
}

double from_path_m(const Path& path, Point place) {
  double least = 1e9;
  for (const Piece& piece : path) least = std::min(least, distance_to_piece_m(place, piece));
  return least;
}

Point at(const StakePlace& place) { return {place.first_m, place.second_m}; }

/// Tube lies along every step but its two ends, and no straight tube lies elsewhere.
void walk_again(const StakeTask& task, const StakeOut& out) {
  const double near = out.off_m + task.step_m + 0.002, bend = 0.35;
  for (std::size_t loop = 0; loop < task.loop.size(); ++loop) {
    const std::vector<StakeStep> steps = unfolded(out, out.walk[loop]);
    double walked = 0.0;
    for (const StakeStep& step : steps) {
      const Point from = at(step.from), to = at(step.to);
      const double length = distance_m(from, to);
      walked += length;
      if (step.radius_m > 0.0) continue;
      for (double m = bend; m < length - bend; m += 0.1) {
        const Point here{from.x_m + m / length * (to.x_m - from.x_m), from.y_m + m / length * (to.y_m - from.y_m)};
        CHECK(from_path_m(task.loop[loop], here) < near);
      }
    }
    for (const Piece& piece : task.loop[loop]) {
      if (piece.radius_m > 0.0 || length_m(piece) < task.least_run_m) continue;
      const Point middle{0.5 * (piece.from.x_m + piece.to.x_m), 0.5 * (piece.from.y_m + piece.to.y_m)};
      double least = 1e9;
      for (const StakeStep& step : steps)
        least = std::min(least, distance_to_edge_m(middle, at(step.from), at(step.to)));
      CHECK(least < near);
    }
    CHECK(steps.back().at_end_m == Approx(length_m(task.loop[loop])));
    CHECK(walked > 0.75 * length_m(task.loop[loop]));
  }
}

/// Every turn back of the walks has its tip on the line the walk names, and on tube.
void check_tips(const StakeTask& task, const StakeOut& out) {
  std::size_t row = 0;
  for (std::size_t loop = 0; loop < out.walk.size(); ++loop) {
    std::size_t turns = 0;
    for (const StakeStep& step : out.walk[loop].step) {
      // Inside a to and fro every run turns back.
      const bool back = step.then == StakeTurn::back_left || step.then == StakeTurn::back_right;
      turns += (step.line.size() > 1 ? step.line.size() - 1 : 0) + (back ? 1 : 0);
    }
    for (std::size_t k = 0; k < turns; ++k) {
      REQUIRE(row < out.tip.size());
      const StakeTip& tip = out.tip[row++];
      CHECK(tip.loop == loop);
      CHECK(from_path_m(task.loop[loop], tip.place) < 0.002);
      const StakeTable& table = tip.line[0] == 'A' ? out.first : out.second;
      const auto line =
          std::find_if(table.line.begin(), table.line.end(), [&](const StakeLine& l) { return l.name == tip.line; });
      REQUIRE(line != table.line.end());
      CHECK(line->turns_end);
      const double at_m = tip.line[0] == 'A' ? tip.place.x_m : tip.place.y_m;
      CHECK(at_m == Approx(line->at_m).margin(line->off_m + 1e-9));
      // No tube beyond: the tip is the farthest the turn goes.
      CHECK(from_path_m(task.loop[loop], {tip.place.x_m + 0.02 * tip.ahead.x_m, tip.place.y_m + 0.02 * tip.ahead.y_m}) >
            0.015);
    }
  }
  CHECK(row == out.tip.size());
}

void check_tables(const StakeOut& out) {
  for (const StakeTable* table : {&out.first, &out.second}) {
    for (std::size_t i = 0; i < table->line.size(); ++i) {
      const StakeLine& line = table->line[i];
      CHECK(line.off_m <= 0.5 * out.step_m + 0.001 + 1e-9);
      CHECK((line.carries || line.turns_end));
      CHECK(line.from_m <= line.to_m);
      const double steps = line.at_m / out.step_m;
      CHECK(steps == Approx(std::floor(steps + 0.5)).margin(1e-6));
      if (i > 0) CHECK(line.at_m > table->line[i - 1].at_m);
    }
  }
}

}  // namespace

TEST_CASE("one loop to and fro is one step between two lines") {
  StakeTask task = task_of({to_and_fro(8, 6.0, 0.3)});
  for (Piece& piece : task.loop[0])
    for (Point* p : {&piece.from, &piece.to, &piece.centre}) *p = {p->x_m + 0.151, p->y_m + 0.152};
  const StakeOut out = stake_out(task);
  check_tables(out);
  REQUIRE(out.first.line.size() == 2);
  CHECK(out.first.wall == "west wall");
  CHECK(out.first.line[0].at_m == Approx(0.150));
  CHECK(out.first.line[1].at_m == Approx(6.150));
  CHECK(out.first.line[1].turns_end);
  CHECK_FALSE(out.first.line[1].carries);
  REQUIRE(out.second.line.size() == 8);
  CHECK(out.second.line[7].at_m == Approx(2.250));
  CHECK(out.second.line[7].off_m == Approx(0.002));
  REQUIRE(out.walk[0].step.size() == 1);
  const StakeStep& step = out.walk[0].step[0];
  CHECK(step.line.size() == 8);
  CHECK(step.line.front() == "B1");
  CHECK(step.line.back() == "B8");
  CHECK(step.from_line == "A1");
  CHECK(step.to_line == "A2");
  CHECK(step.then == StakeTurn::end);
  walk_again(task, out);
}

TEST_CASE("a walk with square corners, a slant and a curve") {
  // East, then north, then a slant to the north-west, then a wide quarter turn to the left.
  Path path = rounded(std::vector<Point>{{1.0, 1.0}, {5.0, 1.0}, {5.0, 4.0}, {4.0, 5.0}, {2.5, 5.0}}, 0.15);
  path.push_back(arc({2.5, 5.0}, {1.0, 3.5}, {2.5, 3.5}, Side::left));
  const StakeTask task = task_of({path});
  const StakeOut out = stake_out(task);
  check_tables(out);
  const auto& steps = out.walk[0].step;
  REQUIRE(steps.size() == 5);
  CHECK(steps[0].line == std::vector<std::string>{"B1"});
  CHECK(steps[0].from_line.empty());
  CHECK(steps[0].to_line == "A1");
  CHECK(steps[0].then == StakeTurn::left);
  CHECK(steps[1].line == std::vector<std::string>{"A1"});
  CHECK(steps[1].from_line == "B1");
  CHECK(steps[1].to.second_m == Approx(3.94).margin(0.006));
  CHECK(steps[1].then == StakeTurn::bears);
  CHECK(steps[2].line.empty());
  CHECK(steps[2].from.first_m == Approx(4.955).margin(0.006));
  CHECK(steps[2].radius_m == 0.0);
  CHECK(steps[3].line == std::vector<std::string>{"B2"});
  CHECK(steps[4].radius_m == Approx(1.5));
  CHECK(steps[4].to.first_m == Approx(1.0));
  CHECK(steps[4].then == StakeTurn::end);
  walk_again(task, out);
}

TEST_CASE("lines are measured square off a slanted wall") {
  // The same floor, turned by the angle of a 3-4-5 triangle and moved: every figure stays.
  StakeTask task = task_of({to_and_fro(6, 5.0, 0.3)}), turned = task;
  const auto move = [](Point p) { return Point{0.8 * p.x_m - 0.6 * p.y_m + 3.0, 0.6 * p.x_m + 0.8 * p.y_m - 2.0}; };
  for (Piece& piece : turned.loop[0])
    for (Point* p : {&piece.from, &piece.to, &piece.centre}) *p = move(*p);
  for (StakeWall* wall : {&turned.first, &turned.second}) *wall = {wall->name, move(wall->from), move(wall->to)};
  const StakeOut a = stake_out(task), b = stake_out(turned);
  REQUIRE(a.second.line.size() == b.second.line.size());
  for (std::size_t i = 0; i < a.second.line.size(); ++i)
    CHECK(a.second.line[i].at_m == Approx(b.second.line[i].at_m).margin(1e-9));
  REQUIRE(a.tip.size() == 5);
  REQUIRE(b.tip.size() == 5);
  for (std::size_t i = 0; i < a.tip.size(); ++i) {
    CHECK(a.tip[i].line == b.tip[i].line);
    CHECK(distance_m(move(a.tip[i].place), b.tip[i].place) < 1e-9);
  }
  REQUIRE(a.walk[0].step.size() == b.walk[0].step.size());
  CHECK(a.walk[0].step[0].then == b.walk[0].step[0].then);
}

TEST_CASE("laid floors are walked again from their tables alone") {
  LayoutTask floors[3];
  floors[0].outline = {{0.0, 0.0}, {10.0, 0.0}, {10.0, 7.0}, {0.0, 7.0}};
  floors[1].outline = {{0.0, 0.0}, {12.0, 0.0}, {12.0, 4.0}, {8.0, 8.0}, {0.0, 8.0}};
  floors[2].outline = {{0.0, 0.0}, {14.0, 0.0}, {14.0, 9.0}, {0.0, 9.0}};
  floors[2].no_tube = {{{{6.0, 4.0}, {6.5, 4.0}, {6.5, 4.5}, {6.0, 4.5}}, 0.1}};
  for (LayoutTask& floor : floors) {
    floor.manifold = {{{5.0, 0.0}, {0.0, 1.0}, 12, 0.05}};
    const auto layout = lay_tube(floor);
    REQUIRE(layout);
    std::vector<Path> loops;
    for (const LaidLoop& loop : layout.value->loop) loops.push_back(loop.path);
    for (const double step : {0.005, 0.00635}) {
      StakeTask task = task_of(loops);
      task.step_m = step;
      const StakeOut out = stake_out(task);
      check_tips(task, out);
      check_tables(out);
      walk_again(task, out);
    }
  }
}
