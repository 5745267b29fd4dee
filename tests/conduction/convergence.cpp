// Halving the cells of a plain square quarters the error against series solutions.
#include <cmath>

#include "slabwright/conduction.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr FieldDriverId rest{0}, top{1};
/// Terms fall by exp(-n pi / 8) at the points nearest the top.
constexpr int last_term = 151;

/// A square of side 1 and conductivity 1, three sides held at 0 and the top (y = 1) warmed to 1.
FieldSection square(std::variant<SurfaceFilm, FixedTemperature> warmed) {
  FieldSection section;
  section.drivers = {{"rest", FieldDriver::Kind::temperature}, {"top", FieldDriver::Kind::temperature}};
  section.materials = {{0.0, 1.0, 0.0, 1.0, 1.0}};
  const FixedTemperature held{rest, rest};
  section.boundaries = {{{{0.0, 1.0}, {1.0, 1.0}}, warmed},
                        {{{0.0, 0.0}, {1.0, 0.0}}, held},
                        {{{0.0, 0.0}, {0.0, 1.0}}, held},
                        {{{1.0, 0.0}, {1.0, 1.0}}, held}};
  return section;
}

/// sinh(n pi y) over sinh(n pi), with no overflow.
double fall(int n, double y) { return std::exp(n * pi * (y - 1.0)) * (1.0 - std::exp(-2.0 * n * pi * y)); }

/// Separation of variables; biot 0 stands for the temperature itself held at the top.
double exact(FieldPoint point, double biot) {
  double sum = 0.0;
  for (int n = 1; n <= last_term; n += 2) {
    const double at_top = fall(n, 1.0), slope = n * pi * (1.0 + std::exp(-2.0 * n * pi));
    const double warmed = biot == 0.0 ? 1.0 / at_top : biot / (slope + biot * at_top);
    sum += 4.0 / (n * pi) * std::sin(n * pi * point.x_m) * fall(n, point.y_m) * warmed;
  }
  return sum;
}

FieldOptions uniform(double cell_m) { return {cell_m, 1.0, cell_m, false}; }

double worst_error(const FieldSection& section, double biot, double cell_m) {
  std::vector<FieldPoint> points;
  for (const double y : {0.25, 0.5, 0.75, 0.875}) {
    for (const double x : {0.125, 0.375, 0.5}) points.push_back({x, y});
  }
  const UnitResponses responses = unit_responses(section, points, uniform(cell_m));
  double worst = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    worst = std::max(worst, std::abs(responses.weights[i][top.at] - exact(points[i], biot)));
  }
  return worst;
}

void check_second_order(const FieldSection& section, double biot) {
  // The point nearest a corner is six of these cells from it; nearer than that the corner itself is felt.
  double before = worst_error(section, biot, 1.0 / 32.0);
  CHECK(before < 0.01);
  for (const double cell_m : {1.0 / 64.0, 1.0 / 128.0}) {
    const double now = worst_error(section, biot, cell_m);
    const double order = std::log2(before / now);
    CHECK(order == Approx(2.0).margin(0.1));
    before = now;
  }
}

}  // namespace

TEST_CASE("second order with a temperature that jumps at the corners") {
  check_second_order(square(FixedTemperature{top, top}), 0.0);
}

TEST_CASE("second order with a film") { check_second_order(square(SurfaceFilm{3.0, top}), 3.0); }

TEST_CASE("a surface below a film has a temperature of its own") {
  const UnitResponses responses = unit_responses(square(SurfaceFilm{3.0, top}), {{0.5, 1.0}}, uniform(1.0 / 64.0));
  // On the surface the series falls by 1/n2 only: 151 terms leave 1e-4.
  CHECK(responses.weights[0][top.at] == Approx(exact({0.5, 1.0}, 3.0)).margin(3e-4));
}

TEST_CASE("a line of heat below an isothermal surface, one of an endless row") {
  // Lines 0.3 m apart, 0.1 m deep, 1.75 W/mK: images in closed form, T = 1/(4 pi k) ln(...) for 1 W per m of line.
  const double apart_m = 0.3, depth_m = 0.1, conductivity = 1.75;
  FieldSection section;
  section.drivers = {{"surface", FieldDriver::Kind::temperature}, {"lines", FieldDriver::Kind::heat}};
  // One metre further down the field is even to exp(-2 pi / 0.3).
  section.materials = {{0.0, apart_m / 2.0, -1.1, 0.0, conductivity}};
  section.boundaries = {{{{0.0, 0.0}, {apart_m / 2.0, 0.0}}, FixedTemperature{{0}, {0}}}};
  section.lines = {{{0.0, -depth_m}, {1}}};
  const std::vector<FieldPoint> points{{0.15, -0.1}, {0.0, -0.05}, {0.08, -0.03}, {0.1, -0.3}};
  const UnitResponses responses = unit_responses(section, points, {0.0025, 1.1, 0.02, false});
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double turn = 2.0 * pi / apart_m, across = std::cos(turn * points[i].x_m);
    const double image = std::cosh(turn * (points[i].y_m - depth_m)) - across;
    const double line = std::cosh(turn * (points[i].y_m + depth_m)) - across;
    // Half of each line lies in the section, so that its 1 W is 2 W of a whole line.
    const double kelvin = 2.0 / (4.0 * pi * conductivity) * std::log(image / line);
    CHECK(responses.weights[i][1] == Approx(kelvin).epsilon(2e-3));
  }
  CHECK(responses.heat_in[0][1] == Approx(-1.0).epsilon(1e-9));
}
