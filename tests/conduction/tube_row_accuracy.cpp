// How good a row of tubes is: against finite volumes, and against itself with four times the terms.
#include <cmath>
#include <random>

#include "slabwright/conduction.hpp"
#include "slabwright/conduction_tube_row.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

using Kind = FieldDriver::Kind;
using Response = TubeRowResponse;
constexpr double pi = 3.14159265358979323846;

struct Judged {
  double above, below, through, over, midway, plane, under;
};

/// Area of a circle below the height y.
double area_below(double radius, double y) {
  const double in = std::clamp(y, -radius, radius);
  return 0.5 * (in * std::sqrt(radius * radius - in * in) + radius * radius * std::asin(in / radius));
}

/// Half a pitch with the tube as steps of equal area, conducting 1e5 W/mK and heated along its axis.
FieldSection stepped(const TubeRow& row, int steps) {
  const double half_m = row.spacing_m / 2.0, radius_m = row.outside_diameter_m / 2.0;
  FieldSection section;
  section.drivers = {{"room", Kind::temperature}, {"below", Kind::temperature}, {"tube", Kind::heat}};
  double y_m = 0.0;
  for (const FlatLayer& layer : row.layers) {
    section.materials.push_back({0.0, half_m, y_m - layer.thickness_m, y_m, layer.conductivity_W_per_mK});
    y_m -= layer.thickness_m;
  }
  for (int i = 0; i < steps; ++i) {
    const double low = -radius_m * std::cos(pi * i / steps), high = -radius_m * std::cos(pi * (i + 1) / steps);
    const double width = (area_below(radius_m, high) - area_below(radius_m, low)) / (high - low);
    section.materials.push_back({0.0, width, low - row.axis_depth_m, high - row.axis_depth_m, 1e5});
  }
  section.boundaries = {{{{0.0, 0.0}, {half_m, 0.0}}, SurfaceFilm{row.above_W_per_m2K, {0}}},
                        {{{0.0, y_m}, {half_m, y_m}}, SurfaceFilm{row.below_W_per_m2K, {1}}}};
  section.lines = {{{0.0, -row.axis_depth_m}, {2}}};
  return section;
}

Judged by_finite_volumes(const TubeRow& row, int steps) {
  const double half_m = row.spacing_m / 2.0, axis_m = -row.axis_depth_m;
  const FieldSection section = stepped(row, steps);
  const double bottom_m = section.boundaries[1].where.from.y_m;
  const UnitResponses r =
      unit_responses(section, {{0.0, axis_m}, {0.0, 0.0}, {half_m, 0.0}, {half_m, axis_m}, {0.0, bottom_m}},
                     {row.outside_diameter_m / (2.0 * steps), std::pow(1.2, 12.0 / steps), 0.12 / steps, false});
  // A watt in the half section is two of the whole tube.
  const double per_watt = r.weights[0][2] / 2.0, up_share = -r.heat_in[0][2];
  const auto weight = [&](std::size_t point) { return r.weights[point][2] / 2.0 / per_watt; };
  const double through = -2.0 * r.heat_in[0][1] - up_share * r.weights[0][1] / per_watt;
  return {up_share / per_watt, (1.0 - up_share) / per_watt, through, weight(1), weight(2), weight(3), weight(4)};
}

/// Steps err in proportion to their size: half of them twice as much.
Judged extrapolated(const TubeRow& row) {
  const Judged a = by_finite_volumes(row, 24), b = by_finite_volumes(row, 48);
  return {2.0 * b.above - a.above,   2.0 * b.below - a.below, 2.0 * b.through - a.through, 2.0 * b.over - a.over,
          2.0 * b.midway - a.midway, 2.0 * b.plane - a.plane, 2.0 * b.under - a.under};
}

class Dice {
 public:
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  double between_logs(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  int upto(int last) { return static_cast<int>(engine_() % static_cast<unsigned>(last + 1)); }

 private:
  std::mt19937_64 engine_{20240817};
};

/// 1 to 6 layers of 0.03 to 50 W/mK, tubes every 4 to 24 in at any depth within one of them.
TubeRow any_row(Dice& dice) {
  TubeRow row{dice.between(0.1016, 0.6096), dice.between(0.0095, 0.0286), 0.0, {}, dice.between(6.0, 12.0)};
  if (dice.upto(3) > 0) row.below_W_per_m2K = dice.between_logs(0.1, 10.0);
  const int count = 1 + dice.upto(5), own = dice.upto(count - 1);
  for (int i = 0; i < count; ++i) {
    FlatLayer layer{dice.between_logs(0.002, 0.2), dice.between_logs(0.03, 50.0)};
    if (i == own) layer.thickness_m += row.outside_diameter_m;
    row.layers.push_back(layer);
    if (i < own) row.axis_depth_m += layer.thickness_m;
  }
  const double room_m = row.layers[static_cast<std::size_t>(own)].thickness_m - row.outside_diameter_m;
  row.axis_depth_m += row.outside_diameter_m / 2.0 + dice.between(0.0, 1.0) * room_m;
  return row;
}

struct Coverage {
  int figures = 0, covered = 0, beyond_tolerance = 0;

  void count(double stated, double truly, double tolerance) {
    ++figures;
    if (truly <= stated) ++covered;
    if (truly > tolerance) ++beyond_tolerance;
  }
};

double share(double from, double truth) { return truth == 0.0 ? 0.0 : std::abs(from - truth) / std::abs(truth); }

void compare(const Response& r, const Response& judge, Coverage& coverage) {
  constexpr double tolerance = 1e-3;
  coverage.count(r.error.above_share, share(r.above_W_per_m_K, judge.above_W_per_m_K), tolerance);
  coverage.count(r.error.below_share, share(r.below_W_per_m_K, judge.below_W_per_m_K), tolerance);
  coverage.count(r.error.through_share, share(r.through_W_per_m_K, judge.through_W_per_m_K), tolerance);
  for (const auto place : {&Response::floor_over_tube, &Response::floor_midway, &Response::floor_mean,
                           &Response::plane_midway, &Response::under_tube, &Response::under_midway}) {
    coverage.count(r.error.weight_share, std::abs((r.*place).tube_share - (judge.*place).tube_share), tolerance);
  }
}

/// A tube of 5/8 in every 12 in lying on foam below 4 in of concrete.
const TubeRow on_foam{0.3048, 0.015875, 0.1016, {{0.1016 + 0.0079375, 1.7307}, {0.05, 0.035}}, 8.0, 2.0};

}  // namespace

TEST_CASE("tube row: finite volumes around a stepped tube come to the same") {
  // On foam the heat upward is 0.37, 0.17 and 0.08 % high by 12, 24 and 48 steps, 0.008 % low after extrapolation; 8
  // multipoles have all but 5e-8 of it.
  constexpr double left = 2e-4;
  const TubeRow rows[] = {
      on_foam,
      {0.20, 0.020, 0.0501, {{0.01, 0.15}, {0.06, 1.4}, {0.02, 0.5}, {0.003, 50.0}, {0.04, 0.03}}, 8.0, 1.0},
      {0.15, 0.016, 0.045, {{0.03, 0.2}, {0.03, 0.04}, {0.001, 200.0}, {0.02, 0.12}}, 6.0, 3.0}};
  for (const TubeRow& row : rows) {
    const Response r = tube_row_responses(row, {0.0}, {1e-6, 64}).front();
    const Judged judge = extrapolated(row);
    CHECK(r.above_W_per_m_K == Approx(judge.above).epsilon(left));
    CHECK(r.below_W_per_m_K == Approx(judge.below).epsilon(left));
    CHECK(r.through_W_per_m_K == Approx(judge.through).margin(left * judge.above));
    CHECK(r.floor_over_tube.tube_share == Approx(judge.over).epsilon(left));
    CHECK(r.floor_midway.tube_share == Approx(judge.midway).epsilon(left));
    CHECK(r.plane_midway.tube_share == Approx(judge.plane).epsilon(left));
    CHECK(r.under_tube.tube_share == Approx(judge.under).epsilon(left));
  }
}

TEST_CASE("tube row: doubling the terms of a tube that lies on foam leaves little of the error") {
  // Heat upward, error and what is said, by 8, 16, 32 and 64 terms against 128: bare 5e-8 (8e-6), 3e-10 (5e-8),
  // rounding; behind 0.12 mK/W 4e-5 (2e-4), 7e-6 (4e-5), 8e-7 (6e-6), 6e-8 (7e-7).
  const std::pair<double, double> left_by_tube[] = {{0.0, 0.01}, {0.12, 0.25}};
  for (const auto& [tube, left] : left_by_tube) {
    const double truth = tube_row_responses(on_foam, {tube}, {1e-12, 128}).front().above_W_per_m_K;
    double before = 1.0;
    for (const std::size_t terms : {8, 16}) {
      const Response r = tube_row_responses(on_foam, {tube}, {1e-12, terms}).front();
      const double error = share(r.above_W_per_m_K, truth);
      CHECK(r.terms == terms);
      CHECK(r.end == TubeRowEnd::most_terms);
      CHECK(error < r.error.above_share);
      CHECK(error < before * left);
      before = error;
    }
  }
}

TEST_CASE("tube row: 200 sections are within 0.1 %, and the error said covers the true one") {
  Dice dice;
  Coverage coverage;
  int not_met = 0;
  for (int i = 0; i < 200; ++i) {
    const TubeRow row = any_row(dice);
    for (const double tube : {0.0, dice.between(0.02, 0.4)}) {
      const Response r = tube_row_responses(row, {tube}).front();
      if (r.end != TubeRowEnd::tolerance_met) {
        ++not_met;
        continue;
      }
      const Response judge = tube_row_responses(row, {tube}, {1e-15, 4 * r.terms}).front();
      compare(r, judge, coverage);
    }
  }
  CAPTURE(not_met, coverage.figures, coverage.covered, coverage.beyond_tolerance);
  CHECK(not_met == 0);
  CHECK(coverage.beyond_tolerance == 0);
  CHECK(coverage.covered >= 95 * coverage.figures / 100);
}
