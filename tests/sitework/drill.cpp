// Holes against tube: by hand, against shifts thrown at random, and what must hold everywhere.
#include <cmath>
#include <random>

#include "floor.hpp"
#include "slabwright/sitework_drill.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double inch = 0.0254;

/// 5/8 in tube every 12 in, 2 in down.
DrawnTube usual_floor() { return {{to_and_fro(12, 6.0, 12.0 * inch)}, 0.625 * inch, 2.0 * inch}; }

double nearest_m(const DrawnTube& tube, Point place) {
  double least = 1e9;
  for (const Path& path : tube.loop)
    for (const Piece& piece : path) least = std::min(least, distance_to_piece_m(place, piece));
  return least;
}

/// Of many floors, each laid a little aside and a little deeper or higher, the share in which the hole meets tube: a
/// flat-bottomed hole in the section across the tube, whose top is round or, if `square`, as deep all over.
double thrown(const DrawnTube& tube, const Placing& placing, const Hole& hole, bool square, int floors) {
  std::mt19937_64 engine(7);
  std::normal_distribution<double> normal;
  const double tube_radius = 0.5 * tube.outside_diameter_m, hole_radius = 0.5 * hole.diameter_m;
  int struck = 0;
  for (int i = 0; i < floors; ++i) {
    const Point place{hole.place.x_m + placing.sideways_m * normal(engine),
                      hole.place.y_m + placing.sideways_m * normal(engine)};
    const double above = tube.concrete_above_m + placing.depth_m * normal(engine);
    const double beside = std::max(0.0, nearest_m(tube, place) - hole_radius);
    if (beside >= tube_radius) continue;
    const double lower = square ? 0.0 : tube_radius - std::sqrt(tube_radius * tube_radius - beside * beside);
    if (hole.depth_m > above + lower) ++struck;
  }
  return static_cast<double>(struck) / floors;
}

}  // namespace

TEST_CASE("a hole right over tube, as deep as its top, by hand") {
  const DrawnTube tube = usual_floor();
  const double both = 0.5 * (0.5 + 0.625) * inch;
  // One standard deviation as wide as both radii: F(1) - F(-1) = 0.682689, derived.
  const TubeDoubt doubt{{both, 0.25 * inch}, {}};
  const HoleReading over = read_hole(tube, doubt, {{3.0, 0.0}, 0.5 * inch, 2.0 * inch});
  CHECK(over.distance_m == Approx(0.0).margin(1e-12));
  CHECK(over.along_m == Approx(3.0));
  CHECK(over.clear_m == Approx(-both));
  CHECK(over.depth_margin_m == Approx(0.0).margin(1e-12));
  CHECK(over.over_share == Approx(0.6826894921).epsilon(1e-9));
  CHECK(over.deep_share == Approx(0.5));
  CHECK(over.strike_share == Approx(0.3413447461).epsilon(1e-9));
  CHECK(over.word == Drilling::do_not_drill);
  // Its edge one deviation from the tube's: F(-1) - F(-3) = 0.157305.
  const HoleReading beside = read_hole(tube, doubt, {{3.0, 2.0 * both}, 0.5 * inch, 3.0 * inch});
  CHECK(beside.over_share == Approx(0.1573053559).epsilon(1e-9));
  CHECK(beside.deep_share == Approx(0.9999683288).epsilon(1e-9));
}

TEST_CASE("between two tubes a hole is likely clear, and short ones are everywhere") {
  const DrawnTube tube = usual_floor();
  const TubeDoubt doubt{usual_placing(System::us), {}};
  const HoleReading between = read_hole(tube, doubt, {{3.0, 6.0 * inch}, 0.5 * inch, 3.0 * inch});
  CHECK(between.clear_m == Approx((6.0 - 0.5625) * inch));
  CHECK(between.word == Drilling::likely_clear);
  CHECK(read_hole(tube, doubt, {{3.0, 0.0}, 0.5 * inch, 1.25 * inch}).word == Drilling::likely_clear);
  CHECK(read_hole(tube, doubt, {{3.0, 0.0}, 0.5 * inch, 1.5 * inch}).word == Drilling::in_doubt);
  CHECK(read_hole(tube, doubt, {{3.0, 0.0}, 0.5 * inch, 3.0 * inch}).word == Drilling::do_not_drill);
}

TEST_CASE("a hole anywhere strikes as often as tube and hole cover the floor, however sure the drawing is") {
  const DrawnTube tube = usual_floor();
  for (const double deviation_in : {0.1, 0.75, 2.0}) {
    const TubeDoubt doubt{{deviation_in * inch, 0.0}, {}};
    double sum = 0.0;
    constexpr int places = 480;
    for (int i = 0; i < places; ++i)
      sum +=
          read_hole(tube, doubt, {{3.0, (54.0 + (i + 0.5) * 12.0 / places) * inch}, 0.5 * inch, 4.0 * inch}).over_share;
    // Both diameters over the spacing, derived: 1.125 in 12.
    CHECK(sum / places == Approx(1.125 / 12.0).epsilon(2e-3));
  }
}

TEST_CASE("the chance agrees with floors thrown at random, at rows, in turns and at their ends") {
  const DrawnTube tube = usual_floor();
  const Placing placing = usual_placing(System::us);
  const TubeDoubt doubt{placing, {}};
  const double s = 12.0 * inch, turn_x = 6.0 - 0.5 * s;
  const Point places[] = {{3.0, 0.0},
                          {3.0, 1.0 * inch},
                          {3.0, s + 1.5 * inch},
                          {turn_x + 0.5 * s, 0.5 * s},
                          {turn_x + 0.5 * s - 1.0 * inch, 0.5 * s},
                          {turn_x + 0.35 * s, 0.9 * s},
                          {turn_x, 1.0 * inch}};
  for (const Point place : places) {
    CAPTURE(place.x_m, place.y_m);
    const Hole hole{place, 0.5 * inch, 2.1 * inch};
    const HoleReading reading = read_hole(tube, doubt, hole);
    constexpr int floors = 20000;
    const double struck = thrown(tube, placing, hole, true, floors);
    const double noise = std::sqrt(struck / floors);
    // In a turn the tube is no straight line: its bend is a few deviations wide, which moves the chance by a twentieth.
    CHECK(std::abs(reading.strike_share - struck) < 4.0 * noise + 0.05 * struck);
    // A round top is met a little less often than a flat one.
    const double round = thrown(tube, placing, hole, false, floors);
    CHECK(reading.strike_share > round - 4.0 * noise);
    CHECK(round > 0.75 * struck - 4.0 * noise);
  }
}

TEST_CASE("the nearest tube and how far along it are exact on lines and arcs") {
  const DrawnTube tube = usual_floor();
  const TubeDoubt doubt{usual_placing(System::us), {}};
  std::mt19937_64 engine(21);
  for (int i = 0; i < 40; ++i) {
    const Point place{-0.2 + 6.4 * static_cast<double>(engine() % 1000) / 1000.0,
                      -0.2 + 3.7 * static_cast<double>(engine() % 1000) / 1000.0};
    const HoleReading reading = read_hole(tube, doubt, {place, 0.5 * inch, 3.0 * inch});
    CHECK(reading.distance_m == Approx(nearest_m(tube, place)).margin(1e-12));
    const Point along = point_at(tube.loop[reading.loop], reading.along_m);
    CHECK(distance_m(along, reading.tube) == Approx(0.0).margin(1e-9));
    CHECK(distance_m(place, reading.tube) == Approx(reading.distance_m).margin(1e-12));
    CHECK((reading.over_share >= 0.0 && reading.over_share <= 1.0));
  }
}

TEST_CASE("farther, shallower and thinner strike less") {
  const DrawnTube tube = usual_floor();
  const TubeDoubt doubt{usual_placing(System::us), {}};
  double before = 1.0;
  for (int i = 0; i <= 24; ++i) {
    const double share = read_hole(tube, doubt, {{3.0, 0.25 * i * inch}, 0.5 * inch, 3.0 * inch}).strike_share;
    CHECK(share <= before + 1e-12);
    before = share;
  }
  const auto at = [&](double diameter_in, double depth_in) {
    return read_hole(tube, doubt, {{3.0, 1.0 * inch}, diameter_in * inch, depth_in * inch}).strike_share;
  };
  CHECK(at(0.5, 2.0) < at(0.5, 2.5));
  CHECK(at(0.375, 2.5) < at(0.75, 2.5));
}
