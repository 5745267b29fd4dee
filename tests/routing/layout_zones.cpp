// Several manifolds on one floor: its zones, and the tube in them.
#include <algorithm>
#include <cstdio>
#include <random>

#include "drawn_floors.hpp"
#include "routing/zones.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

PortRow row(double x_ft, double y_ft, Point facing, int loops = 30) {
  return {{x_ft * foot_m, y_ft * foot_m}, facing, loops, 2.0 * inch_m};
}

LayoutTask on(Polygon outline, std::vector<PortRow> manifolds, double limit_ft = 300.0) {
  LayoutTask task = task_on(std::move(outline), {0, 0}, {0, 1});
  task.manifold = std::move(manifolds);
  task.longest_loop_m = limit_ft * foot_m;
  return task;
}

Polygon rect(double w, double d) { return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}}); }

NoTubeArea wall_of(double x0, double y0, double x1, double y1) {
  return {in_feet({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}), 4.0 * inch_m};
}

struct Named {
  const char* name;
  LayoutTask task;
};

std::vector<Named> named_floors() {
  const Polygon l_shape = in_feet({{0, 0}, {60, 0}, {60, 24}, {30, 24}, {30, 50}, {0, 50}});
  const Polygon u_shape = in_feet({{0, 0}, {60, 0}, {60, 40}, {42, 40}, {42, 18}, {18, 18}, {18, 40}, {0, 40}});
  std::vector<Named> all{
      {"two on one wall", on(rect(80, 28), {row(20, 0, {0, 1}), row(60, 0, {0, 1})})},
      {"two on one wall, off the middle", on(rect(80, 30), {row(15, 0, {0, 1}), row(50, 0, {0, 1})})},
      {"one against the other", on(rect(70, 40), {row(0, 20, {1, 0}), row(70, 20, {-1, 0})})},
      {"across a corner", on(rect(60, 40), {row(15, 0, {0, 1}), row(60, 28, {-1, 0})})},
      {"three on one wall", on(rect(120, 40), {row(20, 0, {0, 1}), row(60, 0, {0, 1}), row(100, 0, {0, 1})})},
      {"few ports on one", on(rect(80, 30), {row(20, 0, {0, 1}, 3), row(60, 0, {0, 1})})},
      {"L, one in each wing", on(l_shape, {row(48, 0, {0, 1}), row(0, 36, {1, 0})})},
      {"U, one in each wing", on(u_shape, {row(0, 20, {1, 0}), row(60, 20, {-1, 0})})},
      {"two rooms", on(rect(61, 30), {row(14, 0, {0, 1}), row(46, 0, {0, 1})}, 250.0)}};
  all.back().task.no_tube = {wall_of(30.75, 0, 31.25, 12), wall_of(30.75, 16, 31.25, 30)};
  return all;
}

void turn(LayoutTask& task) {
  const auto by = [](Point p) { return Point{0.8 * p.x_m - 0.6 * p.y_m + 5.0, 0.6 * p.x_m + 0.8 * p.y_m - 3.0}; };
  for (Point& p : task.outline) p = by(p);
  for (NoTubeArea& area : task.no_tube) {
    for (Point& p : area.outline) p = by(p);
  }
  for (PortRow& manifold : task.manifold) {
    const Point f = manifold.facing;
    manifold.place = by(manifold.place);
    manifold.facing = {0.8 * f.x_m - 0.6 * f.y_m, 0.6 * f.x_m + 0.8 * f.y_m};
  }
}

std::vector<int> loops_by_manifold(const LayoutTask& task, const TubeLayout& layout) {
  std::vector<int> count(task.manifold.size(), 0);
  for (const LaidLoop& loop : layout.loop) ++count[loop.manifold];
  return count;
}

std::vector<ZoneShare> zones(const LayoutTask& task) {
  const auto made = zones_of(task, ZoneNotes(task.manifold.size()));
  REQUIRE(made);
  return *made.value;
}

}  // namespace

TEST_CASE("floors with several manifolds are laid soundly and evenly over all their loops") {
  for (Named& floor : named_floors()) {
    for (const bool turned : {false, true}) {
      CAPTURE(floor.name, turned);
      if (turned) turn(floor.task);
      const auto laid = lay_tube(floor.task);
      REQUIRE(laid);
      const LayoutCheck check = check_layout(floor.task, *laid.value);
      CHECK(check.sound());
      CHECK_FALSE(any(laid.said, Severity::failure));
      CHECK(check.spread_ratio <= 0.06);
      CHECK(check.far_floor_ratio <= 0.005);
      CHECK(check.apron_separation_m >= 1.3 * inch_m);
      CHECK(laid.value->apron.size() == floor.task.manifold.size());
      const std::vector<int> loops = loops_by_manifold(floor.task, *laid.value);
      for (std::size_t k = 0; k < loops.size(); ++k) {
        CHECK(loops[k] >= 1);
        CHECK(loops[k] <= floor.task.manifold[k].loops_number);
      }
      // By manifold, then by port.
      CHECK(std::is_sorted(laid.value->loop.begin(), laid.value->loop.end(), [](const LaidLoop& a, const LaidLoop& b) {
        return a.manifold != b.manifold ? a.manifold < b.manifold : a.port < b.port;
      }));
    }
  }
}

TEST_CASE("zones share the floor out, none over another, each with its manifold") {
  for (const Named& floor : named_floors()) {
    CAPTURE(floor.name);
    double area_m2 = 0.0;
    const auto shares = zones(floor.task);
    for (const ZoneShare& share : shares) {
      area_m2 += signed_area_m2(share.zone.corner);
      CHECK_FALSE(self_crossing(share.zone.corner));
      CHECK(inside(share.zone.corner, floor.task.outline, 1e-5));
      const PortRow& manifold = floor.task.manifold[share.manifold];
      const Point before{manifold.place.x_m + 0.3 * manifold.facing.x_m,
                         manifold.place.y_m + 0.3 * manifold.facing.y_m};
      CHECK(where_is(before, share.zone.corner) == Where::inside);
      // A bend at most: three edges of border.
      CHECK(std::count_if(share.zone.edge.begin(), share.zone.edge.end(),
                          [](const Zone::Edge& edge) { return edge.is_border; }) <= 3);
    }
    CHECK(area_m2 == Approx(signed_area_m2(floor.task.outline)).epsilon(1e-5));
  }
}

TEST_CASE("a border lies on a joint or a partition that is about where it should be") {
  LayoutTask task = on(rect(80, 28), {row(20, 0, {0, 1}), row(60, 0, {0, 1})});
  const auto border_ft = [](const LayoutTask& t) {
    double right_m = 0.0;
    const auto shares = zones(t);
    for (const Point& p : shares.front().zone.corner) right_m = std::max(right_m, p.x_m);
    return right_m / foot_m;
  };
  CHECK(border_ft(task) == Approx(40.0).epsilon(0.001));
  task.joint = {{{40.4 * foot_m, 0.0}, {40.4 * foot_m, 28.0 * foot_m}}};
  CHECK(border_ft(task) == Approx(40.4).epsilon(0.001));
  task.joint = {{{34.0 * foot_m, 0.0}, {34.0 * foot_m, 28.0 * foot_m}}};
  CHECK(border_ft(task) == Approx(40.0).epsilon(0.001));  // too uneven there
  CHECK(border_ft(named_floors().back().task) == Approx(31.0).epsilon(0.001));
}

TEST_CASE("a manifold with few ports gets the floor for them; a colder floor fewer square feet for each loop") {
  LayoutTask task = on(rect(80, 30), {row(20, 0, {0, 1}, 3), row(60, 0, {0, 1})});
  const auto few = zones(task);
  CHECK(few[0].loops == 3);
  CHECK(signed_area_m2(few[0].zone.corner) * few[1].loops ==
        Approx(signed_area_m2(few[1].zone.corner) * few[0].loops).epsilon(0.03));
  task.manifold[0].loops_number = 30;
  task.loss = {{rect(40, 30), 1.5}};
  const auto cold = zones(task);
  const auto by_loop = [&](std::size_t k) { return signed_area_m2(cold[k].zone.corner) / cold[k].loops; };
  CHECK(by_loop(0) < 0.8 * by_loop(1));
}

TEST_CASE("manifolds in another order and floors elsewhere: the same lengths") {
  LayoutTask task = named_floors()[3].task;
  const auto first = lay_tube(task);
  std::swap(task.manifold[0], task.manifold[1]);
  for (Point& p : task.outline) p = {p.x_m + 64.0, p.y_m - 32.0};
  for (PortRow& manifold : task.manifold) manifold.place = {manifold.place.x_m + 64.0, manifold.place.y_m - 32.0};
  const auto second = lay_tube(task);
  REQUIRE(first);
  REQUIRE(second);
  std::vector<double> a, b;
  for (const LaidLoop& loop : first.value->loop) a.push_back(loop.length_m);
  for (const LaidLoop& loop : second.value->loop) b.push_back(loop.length_m);
  std::sort(a.begin(), a.end());
  std::sort(b.begin(), b.end());
  REQUIRE(a.size() == b.size());
  for (std::size_t k = 0; k < a.size(); ++k) CHECK(a[k] == Approx(b[k]).epsilon(1e-6));
}

TEST_CASE("what cannot be shared out is refused with its manifold's name") {
  const auto said = [](const LayoutTask& task) {
    const auto laid = lay_tube(task);
    CHECK_FALSE(laid);
    REQUIRE_FALSE(laid.said.empty());
    return laid.said.front();
  };
  LayoutTask task = on(rect(80, 28), {row(20, 0, {0, 1}, 2), row(60, 0, {0, 1}, 2)});
  CHECK(said(task).code == "layout.too-few-ports");
  task = on(rect(80, 28), {row(20, 0, {0, 1}), row(60, 0, {0, -1})});
  CHECK(said(task).code == "layout.no-floor");
  CHECK(said(task).about == "manifold[2]");
}

namespace {

/// One more manifold on a wall of 16 ft or more that is parallel to the first one's or square to it, 12 ft or more from
/// it and from columns.
bool add_manifold(LayoutTask& task, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  const Polygon o = normalized(task.outline);
  const PortRow first = task.manifold.front();
  for (int tries = 0; tries < 100; ++tries) {
    const std::size_t i = random() % o.size();
    const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
    const double length = distance_m(a, b), share = 0.2 + 0.1 * static_cast<double>(random() % 7);
    const Point facing{-(b.y_m - a.y_m) / length, (b.x_m - a.x_m) / length};
    const double along = std::abs(facing.x_m * first.facing.x_m + facing.y_m * first.facing.y_m);
    const Point place{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
    const bool near_column = std::any_of(task.no_tube.begin(), task.no_tube.end(), [&](const NoTubeArea& area) {
      return distance_to_boundary_m(place, area.outline) < 12.0 * foot_m;
    });
    if (length < 16.0 * foot_m || (along > 1e-6 && along < 1.0 - 1e-6) || near_column) continue;
    if (distance_m(place, first.place) < 12.0 * foot_m) continue;
    task.manifold.push_back({place, facing, first.loops_number, first.port_pitch_m});
    return true;
  }
  return false;
}

}  // namespace

TEST_CASE("floors drawn at random, two manifolds: tube never crosses, ends at its ports, keeps its distances") {
  int drawn = 0, laid_number = 0, sound_number = 0;
  for (std::uint64_t seed = 600; seed < 612; ++seed) {
    LayoutTask task = Drawer(seed).task();
    if (task.spacing_m < 8.0 * inch_m || !add_manifold(task, seed)) continue;
    CAPTURE(seed);
    ++drawn;
    const auto laid = lay_tube(task);
    if (!laid) {
      CHECK(any(laid.said, Severity::problem));
      continue;
    }
    ++laid_number;
    const LayoutCheck check = check_layout(task, *laid.value);
    CHECK(check.crossings_number == 0);
    CHECK(check.wrong_ends_number == 0);
    CHECK(check.broken_number == 0);
    CHECK(check.separation_ratio >= 0.93);
    CHECK(check.sound() != any(laid.said, Severity::failure));
    sound_number += check.sound() ? 1 : 0;
  }
  CHECK(drawn >= 7);
  CHECK(laid_number >= drawn - 1);
  CHECK(sound_number >= drawn - 1);
}

// Figures for who works on the method: test_routing "[zone-figures]"
TEST_CASE("figures of floors with several manifolds", "[.zone-figures]") {
  for (const Named& floor : named_floors()) {
    const auto laid = lay_tube(floor.task);
    if (!laid) continue;
    const LayoutCheck c = check_layout(floor.task, *laid.value);
    std::string loops;
    for (const int n : loops_by_manifold(floor.task, *laid.value)) loops += std::to_string(n) + " ";
    std::printf("%-32s loops %s longest %3.0f ft, spread %.1f %%, separation %.2f, beyond a spacing %.2f %%\n",
                floor.name, loops.c_str(), c.longest_m / foot_m, 100.0 * c.spread_ratio, c.separation_ratio,
                100.0 * c.far_floor_ratio);
  }
}
