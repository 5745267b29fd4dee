// Manifolds that stand away from walls.
#include <algorithm>

#include "drawn_floors.hpp"
#include "routing/slit.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

Polygon rect(double w, double d) { return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}}); }

struct Named {
  const char* name;
  LayoutTask task;
};

std::vector<Named> named_floors() {
  std::vector<Named> all{{"in the middle", task_on(rect(40, 30), {20, 15}, {0, 1})},
                         {"off it", task_on(rect(40, 30), {17, 11}, {0, 1})},
                         {"facing west", task_on(rect(60, 40), {44, 20}, {-1, 0})},
                         {"facing south, 18 in", task_on(rect(60, 40), {30, 20}, {0, -1}, 18.0)},
                         {"four feet off a wall", task_on(rect(40, 30), {20, 4}, {0, 1})},
                         {"two of them", task_on(rect(80, 30), {20, 14}, {0, 1})}};
  all.back().task.manifold.push_back({{60.0 * foot_m, 14.0 * foot_m}, {0, 1}, 30, 2.0 * inch_m});
  return all;
}

void turn(LayoutTask& task) {
  const auto by = [](Point p) { return Point{0.8 * p.x_m - 0.6 * p.y_m + 5.0, 0.6 * p.x_m + 0.8 * p.y_m - 3.0}; };
  for (Point& p : task.outline) p = by(p);
  for (PortRow& manifold : task.manifold) {
    const Point f = manifold.facing;
    manifold.place = by(manifold.place);
    manifold.facing = {0.8 * f.x_m - 0.6 * f.y_m, 0.6 * f.x_m + 0.8 * f.y_m};
  }
}

}  // namespace

TEST_CASE("floors round manifolds that stand free are laid soundly, in front of them and behind") {
  for (Named& floor : named_floors()) {
    for (const bool turned : {false, true}) {
      CAPTURE(floor.name, turned);
      if (turned) turn(floor.task);
      const auto laid = lay_tube(floor.task);
      REQUIRE(laid);
      const LayoutCheck check = check_layout(floor.task, *laid.value);
      CHECK(check.sound());
      CHECK(check.spread_ratio <= 0.06);
      CHECK(check.far_floor_ratio <= 0.001);
      CHECK(check.apron_separation_m >= 1.3 * inch_m);
    }
  }
}

TEST_CASE("a slit leads to the nearest wall, rather behind than beside, and takes hardly any floor") {
  const auto slit_of = [](Point place_ft, Point facing) {
    const LayoutTask task = task_on(rect(40, 30), place_ft, facing);
    CHECK(stands_free(task, task.manifold.front()));
    const Zone zone = zone_of(task), cut = with_slit(zone, task, task.manifold.front(), 4);
    CHECK_FALSE(self_crossing(cut.corner));
    CHECK(signed_area_m2(cut.corner) == Approx(signed_area_m2(zone.corner)).margin(0.02));
    CHECK(std::any_of(cut.corner.begin(), cut.corner.end(),
                      [&](Point p) { return distance_to_edge_m(task.manifold.front().place, p, p) < 1.0; }));
    return cut;
  };
  const auto meets_wall = [](const Zone& zone, Point at_ft) {
    return std::any_of(zone.corner.begin(), zone.corner.end(), [&](Point p) {
      return distance_m(p, {at_ft.x_m * foot_m, at_ft.y_m * foot_m}) < 0.01;
    });
  };
  CHECK(meets_wall(slit_of({20, 10}, {0, 1}), {20, 0}));
  CHECK(meets_wall(slit_of({20, 10}, {1, 0}), {20, 0}));
  CHECK(meets_wall(slit_of({12, 14}, {0, 1}), {12, 0}));  // two feet nearer to the wall on the left
  CHECK(meets_wall(slit_of({4, 20}, {0, 1}), {0, 20}));
  LayoutTask task = task_on(rect(40, 30), {20, 0.9}, {0, 1});
  CHECK_FALSE(stands_free(task, task.manifold.front()));
}
