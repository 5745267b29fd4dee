// Tube laid on floors of many shapes, measured on the final lines and arcs.
#include <boost/geometry/algorithms/distance.hpp>
#include <boost/geometry/algorithms/intersects.hpp>
#include <boost/geometry/algorithms/length.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/geometries/segment.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <cstdio>

#include "drawn_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace floors;
namespace bg = boost::geometry;

namespace {

using OtherPoint = bg::model::d2::point_xy<double>;
using OtherLine = bg::model::linestring<OtherPoint>;

struct Named {
  const char* name;
  LayoutTask task;
  double far_floor;  ///< share of the floor that may lie more than a spacing from tube
};

std::vector<Named> named_floors() {
  const auto rect = [](double w, double d) { return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}}); };
  std::vector<Named> all{
      {"rectangle 36 x 30", task_on(rect(36, 30), {18, 0}, {0, 1}), 0.001},
      {"rectangle 40 x 28", task_on(rect(40, 28), {20, 0}, {0, 1}), 0.001},
      {"manifold on the right", task_on(rect(36, 30), {36, 12}, {-1, 0}), 0.001},
      {"manifold in a corner", task_on(rect(36, 30), {1.5, 0}, {0, 1}), 0.001},
      {"L", task_on(in_feet({{0, 0}, {46, 0}, {46, 22}, {26, 22}, {26, 40}, {0, 40}}), {12, 0}, {0, 1}), 0.001},
      {"T",
       task_on(in_feet({{0, 0}, {50, 0}, {50, 18}, {35, 18}, {35, 40}, {15, 40}, {15, 18}, {0, 18}}), {25, 0}, {0, 1}),
       0.001},
      {"U",
       task_on(in_feet({{0, 0}, {50, 0}, {50, 36}, {34, 36}, {34, 16}, {16, 16}, {16, 36}, {0, 36}}), {25, 0}, {0, 1}),
       0.001},
      {"cut corner", task_on(in_feet({{0, 0}, {40, 0}, {40, 18}, {26, 18}, {26, 28}, {0, 28}}), {12, 0}, {0, 1}),
       0.001},
      {"slanted wall", task_on(in_feet({{0, 0}, {50, 0}, {50, 22}, {38, 36}, {0, 36}}), {12, 0}, {0, 1}), 0.005},
      {"columns", task_on(rect(36, 30), {18, 0}, {0, 1}), 0.005},
      {"6 in", task_on(rect(30, 20), {15, 0}, {0, 1}, 6.0), 0.005},
      {"9 in", task_on(rect(36, 30), {18, 0}, {0, 1}, 9.0), 0.005},
      {"18 in", task_on(rect(60, 40), {30, 0}, {0, 1}, 18.0), 0.001}};
  all[9].task.no_tube = {column(12, 15, 1), column(24, 15, 1)};
  return all;
}

void check_hard(const LayoutCheck& check) {
  CHECK(check.crossings_number == 0);
  CHECK(check.wrong_ends_number == 0);
  CHECK(check.broken_number == 0);
  CHECK(check.apron_separation_m >= 1.3 * inch_m);
}

OtherLine other(const Path& path) {
  OtherLine made;
  for (const Point& p : flattened(path, 0.002)) made.push_back({p.x_m, p.y_m});
  return made;
}

/// Segment by segment: the library's question for a whole line (release 1.74) calls rounded lines not simple of which
/// no two segments meet, neither by its own test of two segments nor by our exact one.
bool is_simple(const OtherLine& line) {
  using Segment = bg::model::segment<OtherPoint>;
  const auto apart = [](double a, double b, double c, double d) {
    return std::max(a, b) < std::min(c, d) || std::max(c, d) < std::min(a, b);
  };
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const OtherPoint &a = line[i], &b = line[i + 1];
    for (std::size_t j = i + 2; j + 1 < line.size(); ++j) {
      const OtherPoint &c = line[j], &d = line[j + 1];
      if (apart(a.x(), b.x(), c.x(), d.x()) || apart(a.y(), b.y(), c.y(), d.y())) continue;
      if (bg::intersects(Segment(a, b), Segment(c, d))) return false;
    }
  }
  return true;
}

/// The same facts from a general library of geometry: no crossings, lengths, clearance from walls.
void check_by_other_means(const LayoutTask& task, const TubeLayout& layout) {
  std::vector<OtherLine> lines;
  for (const LaidLoop& loop : layout.loop) lines.push_back(other(loop.path));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    CHECK(is_simple(lines[i]));
    CHECK(bg::length(lines[i]) == Approx(layout.loop[i].length_m).epsilon(0.002));
    for (std::size_t j = i + 1; j < lines.size(); ++j) CHECK_FALSE(bg::intersects(lines[i], lines[j]));
    for (const NoTubeArea& area : task.no_tube) {
      bg::model::polygon<OtherPoint, false, false> polygon;
      for (const Point& p : normalized(area.outline)) polygon.outer().push_back({p.x_m, p.y_m});
      CHECK(bg::distance(lines[i], polygon) > area.clearance_m - 0.0025);
    }
  }
}

}  // namespace

TEST_CASE("floors of every shape are laid soundly, evenly and without bare floor") {
  for (const Named& floor : named_floors()) {
    CAPTURE(floor.name);
    const auto laid = lay_tube(floor.task);
    REQUIRE(laid);
    const LayoutCheck check = check_layout(floor.task, *laid.value);
    check_hard(check);
    CHECK(check.sound());
    CHECK(check.spread_ratio <= 0.05);
    CHECK(check.far_floor_ratio <= floor.far_floor);
    CHECK(check.bends_per_100ft_ratio <= 12.0 * std::max(1.0, 12.0 * inch_m / floor.task.spacing_m));
    check_by_other_means(floor.task, *laid.value);
  }
}

TEST_CASE("floors drawn at random: tube never crosses, ends at its ports, keeps its distances") {
  int laid_number = 0, even_number = 0, sound_number = 0, wide_number = 0;
  for (std::uint64_t seed = 200; seed < 216; ++seed) {
    const LayoutTask task = Drawer(seed).task();
    CAPTURE(seed);
    const auto laid = lay_tube(task);
    if (!laid) {
      CHECK(any(laid.said, Severity::problem));
      continue;
    }
    ++laid_number;
    const LayoutCheck check = check_layout(task, *laid.value);
    check_hard(check);
    CHECK(check.separation_ratio >= 0.93);
    check_by_other_means(task, *laid.value);
    // What is not sound is said as a failure.
    CHECK(check.sound() != any(laid.said, Severity::failure));
    if (task.spacing_m < 8.0 * inch_m) continue;  // half-inch tube hardly bends into 6 in
    ++wide_number;
    even_number += check.spread_ratio <= 0.05 ? 1 : 0;
    sound_number += check.sound() ? 1 : 0;
  }
  CHECK(laid_number >= 15);
  CHECK(sound_number >= wide_number - 1);
  CHECK(even_number >= wide_number - 2);
}

TEST_CASE("the same task gives the same layout, wherever it lies") {
  const LayoutTask task = named_floors()[4].task;
  const auto first = lay_tube(task), again = lay_tube(task);
  LayoutTask moved = task;
  const auto by = [](Point p) { return Point{-p.y_m + 64.0, p.x_m - 32.0}; };  // a quarter turn and far away
  for (Point& p : moved.outline) p = by(p);
  moved.manifold.front().place = by(moved.manifold.front().place);
  moved.manifold.front().facing = {-1.0, 0.0};
  const auto there = lay_tube(moved);
  REQUIRE((first && again && there));
  REQUIRE(there.value->loop.size() == first.value->loop.size());
  for (std::size_t k = 0; k < first.value->loop.size(); ++k) {
    const LaidLoop& a = first.value->loop[k];
    CHECK(a.length_m == again.value->loop[k].length_m);
    CHECK(a.path.size() == again.value->loop[k].path.size());
    CHECK(there.value->loop[k].length_m == Approx(a.length_m).epsilon(1e-9));
    CHECK(distance_m(there.value->loop[k].path[5].from, by(a.path[5].from)) < 1e-9);
  }
}

TEST_CASE("what cannot be laid is said") {
  const auto rect = in_feet({{0, 0}, {36, 0}, {36, 30}, {0, 30}});
  const auto code = [](const LayoutTask& task) {
    const auto laid = lay_tube(task);
    CHECK_FALSE(laid);
    return laid.said.empty() ? std::string() : laid.said[0].code;
  };
  LayoutTask task = task_on(rect, {18, 0}, {0, 1}, 5.0);
  CHECK(code(task) == "layout.bend-too-wide");
  task = task_on(rect, {18, 0.4}, {0, 1});
  CHECK(lay_tube(task));
  task.manifold.front().loops_number = 3;
  CHECK(code(task) == "layout.too-few-ports");
  task = task_on(in_feet({{0, 0}, {5, 0}, {5, 60}, {0, 60}}), {2.5, 0}, {0, 1});
  task.longest_loop_m = 60.0 * foot_m;
  CHECK(code(task) == "layout.no-apron");
  task = task_on(in_feet({{0, 0}, {30, 0}, {30, 0.9}, {0, 0.9}}), {15, 0}, {0, 1});
  CHECK(code(task) == "layout.no-floor");
  // Two rooms and a gap of a foot between them.
  task = task_on(in_feet({{0, 0},
                          {20, 0},
                          {20, 10},
                          {21, 10},
                          {21, 0},
                          {41, 0},
                          {41, 20},
                          {21, 20},
                          {21, 11},
                          {20, 11},
                          {20, 20},
                          {0, 20}}),
                 {10, 0}, {0, 1});
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  CHECK(std::any_of(laid.said.begin(), laid.said.end(),
                    [](const Diagnostic& d) { return d.code == "layout.floor-out-of-reach"; }));
}

// Shares reached, for who works on the method: test_routing "[figures]"
TEST_CASE("figures of layouts", "[.figures]") {
  for (const Named& floor : named_floors()) {
    const auto laid = lay_tube(floor.task);
    if (!laid) continue;
    const LayoutCheck c = check_layout(floor.task, *laid.value);
    std::printf(
        "%-22s %2zu loops, longest %3.0f ft, spread %.1f %%, separation %.2f, floor beyond a spacing %.2f %%, "
        "farthest %.2f, 99 %% within %.2f, bends in 100 ft %.1f\n",
        floor.name, laid.value->loop.size(), c.longest_m / foot_m, 100.0 * c.spread_ratio, c.separation_ratio,
        100.0 * c.far_floor_ratio, c.farthest_ratio, c.near_ratio, c.bends_per_100ft_ratio);
  }
}
