// One friction factor, and the loss of one tube.
#include <benchmark/benchmark.h>

#include "slabwright/tube.hpp"

using namespace slabwright;

namespace {

void friction_factor_turbulent(benchmark::State& state) {
  double reynolds = 4000.0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(friction_factor(reynolds, 5.7e-4));
    reynolds = reynolds < 30000.0 ? reynolds + 1.0 : 4000.0;
  }
}
BENCHMARK(friction_factor_turbulent);

void tube_loss_with_slope(benchmark::State& state) {
  const Bore loop{80.0, 0.012065, 7e-6};
  const Liquid water{992.2, 652.7e-6};
  double flow = 1e-6;
  for (auto _ : state) {
    benchmark::DoNotOptimize(tube_loss(loop, water, flow));
    flow = flow < 1e-4 ? flow + 1e-8 : 1e-6;
  }
}
BENCHMARK(tube_loss_with_slope);

}  // namespace
