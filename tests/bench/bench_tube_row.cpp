// A row of tubes to 0.1 %, from the layers' numbers on: three tube resistances at one film, and a table over films.
#include <benchmark/benchmark.h>

#include "slabwright/conduction_tube_row.hpp"

using namespace slabwright;

namespace {

const std::vector<double> tubes{0.05, 0.12, 0.20};

/// 5/8 in every 12 in, in the middle of 4 in of concrete below a covering and above foam on soil.
TubeRow mid_slab() {
  return {0.3048, 0.015875, 0.0628, {{0.012, 0.15}, {0.1016, 1.75}, {0.05, 0.035}, {0.1, 1.2}}, 9.0, 1.0};
}

TubeRow lying_on_foam() {
  TubeRow row = mid_slab();
  row.axis_depth_m = 0.012 + 0.1016 - row.outside_diameter_m / 2.0;
  return row;
}

/// Bare tube on a metal sheet: the worst that a floor may have.
TubeRow lying_on_metal() {
  TubeRow row = lying_on_foam();
  row.layers[2] = {0.002, 50.0};
  return row;
}

void solve(benchmark::State& state, const TubeRow& row, const std::vector<double>& tube_mK_per_W) {
  std::size_t terms = 0;
  for (auto _ : state) {
    const auto responses = tube_row_responses(row, tube_mK_per_W);
    benchmark::DoNotOptimize(responses.front().above_W_per_m_K);
    for (const TubeRowResponse& response : responses) terms = std::max(terms, response.terms);
  }
  state.counters["terms"] = static_cast<double>(terms);
}

void tube_row_mid_slab(benchmark::State& state) { solve(state, mid_slab(), tubes); }
void tube_row_on_foam(benchmark::State& state) { solve(state, lying_on_foam(), tubes); }
void tube_row_bare_on_metal(benchmark::State& state) { solve(state, lying_on_metal(), {0.0}); }

void tube_row_seven_films(benchmark::State& state) {
  for (auto _ : state) {
    for (const double film_W_per_m2K : {6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0}) {
      TubeRow row = mid_slab();
      row.above_W_per_m2K = film_W_per_m2K;
      benchmark::DoNotOptimize(tube_row_responses(row, tubes));
    }
  }
}

}  // namespace

BENCHMARK(tube_row_mid_slab)->Unit(benchmark::kMicrosecond);
BENCHMARK(tube_row_on_foam)->Unit(benchmark::kMicrosecond);
BENCHMARK(tube_row_bare_on_metal)->Unit(benchmark::kMicrosecond);
BENCHMARK(tube_row_seven_films)->Unit(benchmark::kMicrosecond);
