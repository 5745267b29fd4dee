// Moves of single tube lines, each on a small floor where it must act.
#include <algorithm>

#include "drawn_floors.hpp"
#include "routing/lying.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

/// One loop of half-inch tube, 12 in apart, on a floor seen from its manifold; in feet.
struct OneLoop {
  LayoutTask task;
  std::vector<Strand> strand;
  std::vector<Path> path;

  OneLoop(std::initializer_list<Point> outline_ft, std::initializer_list<Point> corners_ft)
      : task(task_on(in_feet(outline_ft), {0, 0}, {0, 1})), strand{{in_feet(corners_ft)}} {
    path.push_back(bent(task, strand.front()));
  }
};

double turned_rad(const Path& path) {
  double sum = 0.0;
  for (const Piece& piece : path) sum += sweep_rad(piece);
  return sum;
}

Bare bare_in(const Lying& lying, Point low_ft, Point high_ft) {
  Bare bare;
  bare.low = {low_ft.x_m * foot_m, low_ft.y_m * foot_m};
  bare.high = {high_ft.x_m * foot_m, high_ft.y_m * foot_m};
  bare.middle = {0.5 * (bare.low.x_m + bare.high.x_m), 0.5 * (bare.low.y_m + bare.high.y_m)};
  const auto& spots = lying.map().spots();
  for (std::size_t k = 0; k < spots.size(); ++k) {
    const Point p = spots[k].place;
    if (spots[k].lines_number == 0 && p.x_m > bare.low.x_m && p.x_m < bare.high.x_m && p.y_m > bare.low.y_m &&
        p.y_m < bare.high.y_m) {
      bare.spot.push_back(static_cast<int>(k));
    }
  }
  return bare;
}

int tight_number(const LayoutTask& task, const Path& path) {
  return static_cast<int>(std::count_if(path.begin(), path.end(), [&](const Piece& piece) {
    return piece.radius_m > 0.0 && piece.radius_m < task.bend_radius_m - 1e-6;
  }));
}

/// All tube keeps its clearance and its least radius.
void check_holds(const OneLoop& floor) {
  CHECK(tight_number(floor.task, floor.path.front()) == 0);
  const auto line = flattened(floor.path.front(), 1e-4);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    if (line[i].y_m > 1.2 * foot_m) CHECK(keeps_clear(floor.task, line[i], line[i + 1]));
  }
}

}  // namespace

TEST_CASE("a jog slants over where no floor is bare for it") {
  OneLoop floor({{-1, 0}, {1, 0}, {1, 4.5}, {2, 6.2}, {2, 12}, {0, 12}, {0, 8.5}, {-1, 8.5}}, {{0.08, 0},
                                                                                               {0.08, 0.6},
                                                                                               {0.5, 1.5},
                                                                                               {0.5, 5},
                                                                                               {1.5, 5},
                                                                                               {1.5, 11.5},
                                                                                               {0.5, 11.5},
                                                                                               {0.5, 8},
                                                                                               {-0.5, 8},
                                                                                               {-0.5, 1.5},
                                                                                               {-0.08, 0.6},
                                                                                               {-0.08, 0}});
  const double before = turned_rad(floor.path.front());
  Lying lying(floor.task, floor.strand, floor.path);
  const int far = lying.map().far_number();
  ease_jogs(lying);
  CHECK(lying.map().far_number() <= far);
  // Two right angles become two of 60 degrees or less.
  CHECK(turned_rad(floor.path.front()) < before - 1.0);
  CHECK(tight_number(floor.task, floor.path.front()) == 0);
}

TEST_CASE("an end is pushed out to a slanted wall and bends no more than before") {
  OneLoop floor({{-3, 0}, {3, 0}, {3, 7}, {-3, 10}},
                {{0.08, 0}, {0.08, 0.6}, {0.5, 1.5}, {0.5, 6}, {-0.5, 6}, {-0.5, 1.5}, {-0.08, 0.6}, {-0.08, 0}});
  const double before = turned_rad(floor.path.front());
  Lying lying(floor.task, floor.strand, floor.path);
  const int far = lying.map().far_number();
  while (nudge_into(lying, bare_in(lying, {-1.5, 6.5}, {1.5, 9.0}), 0.0)) {
  }
  CHECK(lying.map().far_number() < far);
  CHECK(lying.corners(0)[4].y_m > 7.0 * foot_m);
  // The wall falls to the right: the left leg reaches farther.
  CHECK(lying.corners(0)[4].y_m > lying.corners(0)[3].y_m + 0.2 * foot_m);
  CHECK(turned_rad(floor.path.front()) == Approx(before).epsilon(1e-6));
  check_holds(floor);
}

TEST_CASE("tube follows several walls in a row") {
  OneLoop floor(
      {{-4, 0}, {4, 0}, {4, 6}, {3, 8}, {1, 9}, {-4, 9}},
      {{0.08, 0}, {0.08, 0.6}, {1.5, 1.5}, {3.4, 1.5}, {3.4, 5}, {-1, 5}, {-1, 1.5}, {-0.08, 0.6}, {-0.08, 0}});
  Lying lying(floor.task, floor.strand, floor.path);
  const int far = lying.map().far_number();
  REQUIRE(follow_wall(lying, bare_in(lying, {-2, 6.5}, {4, 9})));
  CHECK(lying.map().far_number() < far);
  // Along all three: a corner more between each two.
  CHECK(lying.corners(0).size() == 11);
  check_holds(floor);
}

TEST_CASE("two bends on a short line are as narrow as the tube allows, no narrower") {
  // 90 and 30 degrees on 0.55 ft: 5 in of radius ask for 0.417 (1 + 0.268) = 0.528 ft.
  const LayoutTask task = task_on(rectangle(20 * foot_m, 20 * foot_m), {10, 0}, {0, 1});
  const Strand strand{in_feet(
      {{10, 0}, {10, 1}, {10, 2}, {10, 5}, {10.55, 5}, {13, 6.4145}, {13, 8}, {8, 8}, {8, 2}, {9.9, 1}, {9.9, 0}})};
  CHECK(tight_number(task, bent(task, strand)) == 0);
}

TEST_CASE("the map of tube is the same after a change as made anew") {
  OneLoop floor({{-3, 0}, {3, 0}, {3, 10}, {-3, 10}},
                {{0.08, 0}, {0.08, 0.6}, {0.5, 1.5}, {0.5, 6}, {-0.5, 6}, {-0.5, 1.5}, {-0.08, 0.6}, {-0.08, 0}});
  TubeMap changed(floor.task), anew(floor.task);
  changed.set(0, floor.path.front());
  floor.strand.front().corner[3].y_m = floor.strand.front().corner[4].y_m = 8.0 * foot_m;
  const Path other = bent(floor.task, floor.strand.front());
  changed.set(0, other);
  anew.set(0, other);
  CHECK(changed.far_number() == anew.far_number());
  for (std::size_t k = 0; k < anew.spots().size(); ++k) {
    CHECK(changed.spots()[k].lines_number == anew.spots()[k].lines_number);
  }
  double places_m = 0.0;
  for (const TubeMap* map : {&changed, &anew}) {
    double sum_m = 0.0;
    map->each_near({-1.0, 0.0}, {1.0, 3.0}, 0.0, [&](const TubeEdge& edge) {
      sum_m += edge.at_m;
      return true;
    });
    if (places_m > 0.0) CHECK(sum_m == Approx(places_m).epsilon(1e-9));
    places_m = sum_m;
  }
}

TEST_CASE("no end is pushed into a no-tube area that asks for no clearance") {
  OneLoop floor({{-3, 0}, {3, 0}, {3, 10}, {-3, 10}},
                {{0.08, 0}, {0.08, 0.6}, {0.5, 1.5}, {0.5, 5}, {-0.5, 5}, {-0.5, 1.5}, {-0.08, 0.6}, {-0.08, 0}});
  floor.task.no_tube = {{in_feet({{-3, 6}, {3, 6}, {3, 7}, {-3, 7}}), 0.0}};
  Lying lying(floor.task, floor.strand, floor.path);
  while (nudge_into(lying, bare_in(lying, {-2, 5}, {2, 10}), 0.0)) {
  }
  for (const Point& p : flattened(floor.path.front(), 1e-4)) CHECK(p.y_m < 6.0 * foot_m);
}
