// Symmetric floors get symmetric loops; a floor mirrored, moved, turned or told in another order gets the same ones.
#include <algorithm>

#include "drawn_floors.hpp"
#include "routing/cells.hpp"
#include "routing/mirror.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

Polygon mirror_image(Polygon polygon) {
  for (Point& p : polygon) p.x_m = 20.0 - p.x_m;
  std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

LayoutTask mirror_image(LayoutTask task) {
  task.outline = mirror_image(task.outline);
  for (NoTubeArea& area : task.no_tube) area.outline = mirror_image(area.outline);
  for (JointLine& joint : task.joint)
    joint = {{20.0 - joint.from.x_m, joint.from.y_m}, {20.0 - joint.to.x_m, joint.to.y_m}};
  for (PortRow& row : task.manifold) {
    row.place.x_m = 20.0 - row.place.x_m;
    row.facing.x_m = -row.facing.x_m;
  }
  return task;
}

template <class Move>
LayoutTask moved(LayoutTask task, const Move& to) {
  for (Point& p : task.outline) p = to(p);
  for (NoTubeArea& area : task.no_tube) {
    for (Point& p : area.outline) p = to(p);
  }
  for (JointLine& joint : task.joint) joint = {to(joint.from), to(joint.to)};
  for (PortRow& row : task.manifold) {
    const Point zero = to({0.0, 0.0}), ahead = to(row.facing);
    row.place = to(row.place);
    row.facing = {ahead.x_m - zero.x_m, ahead.y_m - zero.y_m};
  }
  return task;
}

LayoutTask reordered(LayoutTask task) {
  std::rotate(task.outline.begin(), task.outline.begin() + 2, task.outline.end());
  std::reverse(task.no_tube.begin(), task.no_tube.end());
  for (NoTubeArea& area : task.no_tube) std::rotate(area.outline.begin(), area.outline.begin() + 1, area.outline.end());
  for (JointLine& joint : task.joint) std::swap(joint.from, joint.to);
  return task;
}

/// By port; from the last one where `backwards`.
std::vector<double> lengths_m(const Checked<TubeLayout>& laid, bool backwards = false) {
  std::vector<double> all;
  if (!laid) return all;
  for (const LaidLoop& loop : laid.value->loop) all.push_back(loop.length_m);
  if (backwards) std::reverse(all.begin(), all.end());
  return all;
}

void check_same(const std::vector<double>& a, const std::vector<double>& b) {
  REQUIRE(a.size() == b.size());
  for (std::size_t k = 0; k < a.size(); ++k) CHECK(a[k] == Approx(b[k]).epsilon(1e-9));
}

LayoutTask symmetric(int which) {
  const auto rect = [](double w, double d) { return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}}); };
  switch (which) {
    case 0: return task_on(rect(40, 28), {20, 0}, {0, 1});
    case 1: return task_on(rect(28, 52), {28, 26}, {-1, 0});
    case 2: {
      LayoutTask task = task_on(rect(36, 30), {18, 0}, {0, 1});
      task.no_tube = {column(12, 15, 1), column(24, 15, 1)};
      return task;
    }
    case 3: {
      LayoutTask task = task_on(in_feet({{0, 0}, {48, 0}, {48, 16}, {34, 16}, {34, 36}, {14, 36}, {14, 16}, {0, 16}}),
                                {24, 0}, {0, 1});
      task.longest_loop_m = 400 * foot_m;
      return task;
    }
    default: {
      LayoutTask task = task_on(rect(40, 28), {20, 0}, {0, 1});
      task.joint = {{{20 * foot_m, 0}, {20 * foot_m, 28 * foot_m}}};
      return task;
    }
  }
}

}  // namespace

TEST_CASE("symmetric floors with an even number of loops get loops in mirrored pairs") {
  for (int which = 0; which < 5; ++which) {
    CAPTURE(which);
    const LayoutTask task = symmetric(which);
    CHECK(is_symmetric(seen_from_manifold(task)));
    const auto laid = lay_tube(task);
    REQUIRE(laid);
    CHECK(check_layout(task, *laid.value).sound());
    const auto& loops = laid.value->loop;
    REQUIRE(loops.size() % 2 == 0);
    const PortRow& row = task.manifold[0];
    for (std::size_t k = 0; k < loops.size(); ++k) {
      const LaidLoop &one = loops[k], &other = loops[loops.size() - 1 - k];
      CHECK(one.length_m == Approx(other.length_m).epsilon(1e-12));
      CHECK(one.left_first != other.left_first);
      REQUIRE(one.path.size() == other.path.size());
      for (std::size_t i = 0; i < one.path.size(); ++i) {
        const Point a = one.path[i].to, b = other.path[i].to;
        const bool upright = row.facing.x_m == 0.0;
        CHECK((upright ? a.x_m + b.x_m - 2.0 * row.place.x_m : a.x_m - b.x_m) == Approx(0.0).margin(1e-9));
        CHECK((upright ? a.y_m - b.y_m : a.y_m + b.y_m - 2.0 * row.place.y_m) == Approx(0.0).margin(1e-9));
      }
    }
  }
}

TEST_CASE("floors that are not symmetric are not taken for such") {
  LayoutTask task = symmetric(2);
  CHECK(is_symmetric(seen_from_manifold(task)));
  task.no_tube.pop_back();
  CHECK_FALSE(is_symmetric(seen_from_manifold(task)));
  task = symmetric(0);
  task.edge_clearance_m = {0.15, 0.2, 0.15, 0.15};
  CHECK_FALSE(is_symmetric(seen_from_manifold(task)));
  task.edge_clearance_m = {0.15, 0.2, 0.15, 0.2};
  CHECK(is_symmetric(seen_from_manifold(task)));
}

TEST_CASE("a floor mirrored, moved, turned or told in another order gets loops of the same lengths") {
  for (std::uint64_t seed = 300; seed < 304; ++seed) {
    CAPTURE(seed);
    LayoutTask task = Drawer(seed).task();
    if (seed % 2 == 0) task.joint = {{task.outline[0], task.outline[2]}};
    const auto lengths = lengths_m(lay_tube(task));
    check_same(lengths, lengths_m(lay_tube(reordered(task))));
    check_same(lengths, lengths_m(lay_tube(mirror_image(task)), true));
    const auto far_off = [](Point p) { return Point{p.x_m + 128.0, p.y_m - 37.3}; };
    check_same(lengths, lengths_m(lay_tube(moved(task, far_off))));
    const auto quarter_turn = [](Point p) { return Point{-p.y_m + 5.0, p.x_m}; };
    check_same(lengths, lengths_m(lay_tube(moved(task, quarter_turn))));
  }
}

TEST_CASE("what crosses a joint is told where the joint is, mirrored or not") {
  LayoutTask task = task_on(in_feet({{0, 0}, {46, 0}, {46, 22}, {26, 22}, {26, 40}, {0, 40}}), {12, 0}, {0, 1});
  task.joint = {{{0, 22 * foot_m}, {26 * foot_m, 22 * foot_m}}, {{26 * foot_m, 0}, {26 * foot_m, 22 * foot_m}}};
  for (const LayoutTask& one : {task, mirror_image(task)}) {
    const auto laid = lay_tube(one);
    REQUIRE(laid);
    std::size_t crossings = 0;
    for (const LaidLoop& loop : laid.value->loop) {
      for (const JointCrossing& crossing : loop.crossing) {
        const JointLine& joint = one.joint[crossing.joint];
        CHECK(distance_to_edge_m(crossing.place, joint.from, joint.to) < 1e-5);
        CHECK(distance_m(point_at(loop.path, crossing.at_m), crossing.place) < 1e-6);
        ++crossings;
      }
    }
    CHECK(crossings > 0);
    CHECK(crossings == static_cast<std::size_t>(check_layout(one, *laid.value).joint_crossings_number));
  }
}
