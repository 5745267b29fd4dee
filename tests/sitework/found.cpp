// The drawing laid over places where tube was found.
#include <cmath>
#include <random>

#include "floor.hpp"
#include "slabwright/sitework_drill.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Placing usual{0.02, 0.006};
const std::vector<Path> loops{to_and_fro(20, 9.0, 0.3)};

TubeDoubt known(const std::vector<FoundPoint>& found, const RefitOptions& options = {}) {
  return {usual, refit(loops, usual, found, options)};
}

/// Tube found `off` to the side of every third row, at three places each.
std::vector<FoundPoint> rows_found(double off_m) {
  std::vector<FoundPoint> found;
  for (int row = 1; row < 20; row += 3)
    for (const double x : {1.5, 4.5, 7.5}) found.push_back({{x, 0.3 * row + off_m}, {}});
  return found;
}

constexpr Point across{0.0, 1.0}, along{1.0, 0.0};

}  // namespace

TEST_CASE("one place found, by hand") {
  const TubeDoubt doubt = known({{{4.5, 0.61}, {}}});
  // Near the middle of the drawing the turn counts for little: shift and local part share the 10 mm, derived.
  const double s2 = 0.02 * 0.02, m2 = 0.012 * 0.012;
  const Refit& fit = *doubt.refit;
  const double arm = (4.5 - fit.middle.x_m) / fit.mean_arm_m;
  const double whole = s2 * (2.0 + arm * arm) + m2;
  CHECK(displacement_at(doubt, {4.5, 0.6}).y_m == Approx(0.01 * (whole - m2) / whole));
  CHECK(fit.shift.y_m == Approx(0.01 * s2 / whole));
  CHECK(fit.shift.x_m == Approx(0.0).margin(1e-12));
  const double left = s2 * (2.0 + arm * arm) - std::pow(s2 * (2.0 + arm * arm), 2) / whole;
  CHECK(sideways_at_m(doubt, {4.5, 0.6}, across) == Approx(std::sqrt(left)));
  // Along the tube nothing is known, and far away nothing.
  CHECK(sideways_at_m(doubt, {4.5, 0.6}, along) == usual.sideways_m);
  CHECK(sideways_at_m(doubt, {4.5, 5.4}, across) == usual.sideways_m);
}

TEST_CASE("nothing measured changes nothing") {
  const TubeDoubt doubt{usual, {}};
  CHECK(displacement_at(doubt, {1.0, 1.0}) == Point{0.0, 0.0});
  CHECK(sideways_at_m(doubt, {1.0, 1.0}, across) == usual.sideways_m);
}

TEST_CASE("a drawing that lies aside is found aside") {
  const TubeDoubt doubt = known(rows_found(0.03));
  CHECK(doubt.refit->shift.y_m == Approx(0.03).epsilon(0.15));
  CHECK(std::abs(doubt.refit->turn_deg) < 0.005);
  for (const FoundTube& tube : doubt.refit->found) {
    CHECK(tube.off_m == Approx(0.03));
    CHECK(tube.left_m < 0.006);
    CHECK_FALSE(tube.left_out);
  }
  CHECK(sideways_at_m(doubt, {4.5, 3.0}, across) < 0.6 * usual.sideways_m);
}

TEST_CASE("a drawing that is turned is found turned") {
  const double turn = 0.005;
  std::vector<FoundPoint> found;
  for (const Point p : {Point{0.5, 0.3}, {4.5, 0.3}, {8.5, 0.3}, {0.5, 3.0}, {8.5, 3.0}, {0.5, 5.4}, {8.5, 5.4}})
    found.push_back({{p.x_m - turn * (p.y_m - 2.85), p.y_m + turn * (p.x_m - 4.5)}, p});
  const TubeDoubt doubt = known(found);
  CHECK(doubt.refit->turn_deg * 3.14159265 / 180.0 == Approx(turn).epsilon(0.25));
  CHECK(std::abs(doubt.refit->shift.x_m) < 0.002);
  const Point there = displacement_at(doubt, {8.5, 3.0});
  CHECK(there.y_m == Approx(turn * 4.0).epsilon(0.2));
}

TEST_CASE("one place that is wrong is left out, and doubt grows round it") {
  std::vector<FoundPoint> found = rows_found(0.01);
  found[7].place.y_m += 0.11;
  const TubeDoubt doubt = known(found), right = known(rows_found(0.01));
  for (std::size_t i = 0; i < found.size(); ++i) CHECK(doubt.refit->found[i].left_out == (i == 7));
  CHECK(doubt.refit->shift.y_m == Approx(right.refit->shift.y_m).epsilon(0.1));
  CHECK(sideways_at_m(doubt, found[7].place, across) > 2.0 * usual.sideways_m);
  CHECK(sideways_at_m(doubt, {7.5, 5.7}, across) < usual.sideways_m);
}

TEST_CASE("doubt is least at measured places, grows away from them and stays within what is usual") {
  const TubeDoubt doubt = known({{{3.0, 0.905}, {}}, {{3.4, 1.21}, {}}, {{2.8, 0.61}, {}}, {{3.2, 1.49}, {}}});
  double before = 0.0;
  for (double x = 3.0; x <= 9.0; x += 0.25) {
    const double here = sideways_at_m(doubt, {x, 0.9}, across);
    CHECK(here >= before - 1e-12);
    CHECK(here <= usual.sideways_m);
    before = here;
  }
  CHECK(sideways_at_m(doubt, {3.0, 0.9}, across) < 0.012);
  CHECK(before == usual.sideways_m);
}

TEST_CASE("what is estimated is right on average, and as uncertain as it says") {
  // Floors thrown from the same field: a shift of the whole and a wave that is unlike between far places.
  std::mt19937_64 engine(3);
  std::normal_distribution<double> normal;
  double square = 0.0, told = 0.0;
  constexpr int floors = 400;
  for (int i = 0; i < floors; ++i) {
    const double whole = 0.02 * normal(engine), local = 0.02 * normal(engine);
    std::vector<FoundPoint> found;
    for (const double x : {4.0, 4.3, 4.6}) found.push_back({{x, 2.7 + whole + local + 0.012 * normal(engine)}, {}});
    const TubeDoubt doubt = known(found, {0.012, 50.0, 100.0});
    const double wrong = displacement_at(doubt, {4.3, 2.7}).y_m - whole - local;
    square += wrong * wrong / floors;
    const double said = sideways_at_m(doubt, {4.3, 2.7}, across);
    told += said * said / floors;
  }
  CHECK(square == Approx(told).epsilon(0.25));
}

TEST_CASE("a hole that was in doubt becomes likely clear where tube was found") {
  const DrawnTube tube{loops, 0.016, 0.05};
  const Hole hole{{4.5, 2.7 + 0.055}, 0.012, 0.08};
  const TubeDoubt before{usual, {}};
  CHECK(read_hole(tube, before, hole).word == Drilling::in_doubt);
  const TubeDoubt after =
      known({{{4.3, 2.69}, {}}, {{4.5, 2.69}, {}}, {{4.7, 2.69}, {}}, {{4.9, 2.69}, {}}}, {0.006, 1.0, 3.5});
  const HoleReading reading = read_hole(tube, after, hole);
  CHECK(reading.word == Drilling::likely_clear);
  CHECK(reading.distance_m > 0.06);
  CHECK(reading.sideways_m < 0.012);
}
