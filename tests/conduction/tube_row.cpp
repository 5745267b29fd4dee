// What holds for every row of tubes, and what a caller may not ask for.
#include "slabwright/conduction_tube_row.hpp"

#include <rapidcheck.h>

#include <cmath>
#include <functional>
#include <limits>

#include "support/catch.hpp"

using namespace slabwright;

namespace {

using Catch::Matchers::Contains;
using Response = TubeRowResponse;

constexpr double rounding = 1e-9;
const TubeRowWeights Response::*const places[] = {
    &Response::floor_mean, &Response::floor_over_tube, &Response::floor_midway, &Response::plane_midway,
    &Response::under_mean, &Response::under_tube,      &Response::under_midway};

/// A covering, concrete, a board and what it lies on.
TubeRow sound() { return {0.3048, 0.015875, 0.07, {{0.012, 0.15}, {0.1, 1.75}, {0.05, 0.035}, {0.1, 0.5}}, 9.0, 1.5}; }

rc::Gen<double> between(double low, double high) {
  return rc::gen::map(rc::gen::inRange(0, 1001), [=](int step) { return low + (high - low) * step / 1000.0; });
}

std::vector<FlatLayer> any_layers() {
  std::vector<FlatLayer> layers;
  for (int count = *rc::gen::inRange(0, 3); count > 0; --count) {
    layers.push_back({*between(0.003, 0.1), std::exp(*between(std::log(0.03), std::log(50.0)))});
  }
  return layers;
}

TubeRow any_row() {
  TubeRow row{*between(0.1, 0.6), *between(0.01, 0.03), 0.0, any_layers(), *between(5.0, 15.0), *between(0.1, 5.0)};
  for (const FlatLayer& layer : row.layers) row.axis_depth_m += layer.thickness_m;
  const double above_m = row.outside_diameter_m * *between(0.55, 4.0),
               below_m = row.outside_diameter_m * *between(0.55, 4.0);
  row.axis_depth_m += above_m;
  row.layers.push_back({above_m + below_m, *between(0.3, 2.5)});
  for (const FlatLayer& layer : any_layers()) row.layers.push_back(layer);
  return row;
}

TubeRow upside_down(const TubeRow& row) {
  TubeRow turned = row;
  turned.layers.assign(row.layers.rbegin(), row.layers.rend());
  turned.axis_depth_m = -row.axis_depth_m;
  for (const FlatLayer& layer : row.layers) turned.axis_depth_m += layer.thickness_m;
  std::swap(turned.above_W_per_m2K, turned.below_W_per_m2K);
  return turned;
}

void refused(const std::string& words, const std::function<void(TubeRow&)>& spoil) {
  TubeRow row = sound();
  spoil(row);
  CHECK_THROWS_WITH(tube_row_responses(row, {0.1}), Contains(words));
}

}  // namespace

TEST_CASE("tube row: weights add up to 1, heat goes the same both ways and is the film's") {
  CHECK(rc::check("any row", [] {
    const TubeRow row = any_row();
    const double film = row.above_W_per_m2K * row.spacing_m, under = row.below_W_per_m2K * row.spacing_m;
    for (const Response& r : tube_row_responses(row, {0.0, *between(0.01, 0.5)})) {
      for (const auto place : places) {
        const TubeRowWeights& w = r.*place;
        RC_ASSERT(std::abs(w.tube_share + w.above_share + w.below_share - 1.0) < rounding);
        RC_ASSERT(std::min({w.tube_share, w.above_share, w.below_share}) > -rounding);
      }
      RC_ASSERT(std::min({r.above_W_per_m_K, r.below_W_per_m_K, r.through_W_per_m_K}) > 0.0);
      // Upward: the tube's heat and what comes through, both by the film and the floor's mean.
      RC_ASSERT(std::abs(r.above_W_per_m_K - film * r.floor_mean.tube_share) < rounding);
      RC_ASSERT(std::abs(r.through_W_per_m_K - film * r.floor_mean.below_share) < rounding);
      // Downward, and the same seen from the room: what it sends through and what it sends to the tube.
      RC_ASSERT(std::abs(r.below_W_per_m_K - under * r.under_mean.tube_share) < rounding);
      RC_ASSERT(std::abs(r.through_W_per_m_K - under * r.under_mean.above_share) < rounding);
      const double from_room = film * (1.0 - r.floor_mean.above_share) - under * r.under_mean.above_share;
      RC_ASSERT(std::abs(r.above_W_per_m_K - from_room) < rounding);
    }
  }));
}

TEST_CASE("tube row: upside down, above and below change places") {
  CHECK(rc::check("any row", [] {
    const TubeRow row = any_row();
    const double tube = *between(0.0, 0.5);
    const Response r = tube_row_responses(row, {tube}).front(),
                   turned = tube_row_responses(upside_down(row), {tube}).front();
    RC_ASSERT(std::abs(r.above_W_per_m_K - turned.below_W_per_m_K) < rounding);
    RC_ASSERT(std::abs(r.through_W_per_m_K - turned.through_W_per_m_K) < rounding);
    RC_ASSERT(std::abs(r.floor_over_tube.tube_share - turned.under_tube.tube_share) < rounding);
    RC_ASSERT(std::abs(r.floor_midway.above_share - turned.under_midway.below_share) < rounding);
    RC_ASSERT(std::abs(r.plane_midway.below_share - turned.plane_midway.above_share) < rounding);
  }));
}

TEST_CASE("tube row: a layer cut in two is the same layer") {
  const TubeRow row = sound();
  TubeRow cut = row;
  cut.layers = {{0.005, 0.15}, {0.007, 0.15}, {0.1, 1.75}, {0.05, 0.035}, {0.06, 0.5}, {0.04, 0.5}};
  const Response a = tube_row_responses(row, {0.1}).front(), b = tube_row_responses(cut, {0.1}).front();
  CHECK(a.above_W_per_m_K == Approx(b.above_W_per_m_K).epsilon(rounding));
  CHECK(a.under_tube.tube_share == Approx(b.under_tube.tube_share).epsilon(rounding));
}

TEST_CASE("tube row: each resistance has the answer it has alone") {
  const TubeRow row = sound();
  const std::vector<double> tubes{0.0, 0.05, 0.2};
  const auto table = tube_row_responses(row, tubes);
  for (std::size_t t = 0; t < tubes.size(); ++t)
    CHECK(table[t].above_W_per_m_K == tube_row_responses(row, {tubes[t]}).front().above_W_per_m_K);
  TubeRow livelier = row;
  livelier.above_W_per_m2K = 1.5 * row.above_W_per_m2K;
  CHECK(tube_row_responses(livelier, tubes)[0].above_W_per_m_K > table[0].above_W_per_m_K);
  CHECK(table[0].above_W_per_m_K > table[1].above_W_per_m_K);
}

TEST_CASE("tube row: a thin tube's resistance stands in series with the slab's") {
  // At a radius of 0.2 mm the field around the tube is even to (radius / cover)^2 = 1e-5, so that a resistance of its
  // own adds up.
  TubeRow row = sound();
  row.outside_diameter_m = 0.0004;
  const std::vector<Response> r = tube_row_responses(row, {0.0, 0.3});
  const auto whole = [](const Response& one) { return 1.0 / (one.above_W_per_m_K + one.below_W_per_m_K); };
  CHECK(whole(r[1]) - whole(r[0]) == Approx(0.3).epsilon(1e-5));
}

TEST_CASE("tube row: what does not fit or means nothing is refused") {
  CHECK_NOTHROW(tube_row_responses(sound(), {0.1}));
  refused("above 0", [](TubeRow& r) { r.spacing_m = 0.0; });
  refused("above 0", [](TubeRow& r) { r.axis_depth_m = std::numeric_limits<double>::quiet_NaN(); });
  refused("overlap", [](TubeRow& r) { r.spacing_m = r.outside_diameter_m; });
  refused("1000 diameters", [](TubeRow& r) { r.spacing_m = 20.0; });
  refused("no layer", [](TubeRow& r) { r.layers.clear(); });
  refused("thickness and conductivity", [](TubeRow& r) { r.layers[2].conductivity_W_per_mK = 0.0; });
  refused("within one layer", [](TubeRow& r) { r.axis_depth_m = 0.012; });
  refused("within one layer", [](TubeRow& r) { r.axis_depth_m = 0.112 - 0.007; });
  refused("within one layer", [](TubeRow& r) { r.axis_depth_m = 5.0; });
  refused("film above", [](TubeRow& r) { r.above_W_per_m2K = 0.0; });
  refused("coefficient below", [](TubeRow& r) { r.below_W_per_m2K = -1.0; });
  CHECK_THROWS_WITH(tube_row_responses(sound(), {-0.1}), Contains("resistance"));
  CHECK_THROWS_WITH(tube_row_responses(sound(), {0.1}, {0.0, 64}), Contains("tolerance"));
  CHECK_THROWS_WITH(tube_row_responses(sound(), {0.1}, {1e-3, 4}), Contains("8 terms"));
}
