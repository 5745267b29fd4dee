// Tube laid on floors, and the check of a layout.
#include <benchmark/benchmark.h>

#include "slabwright/routing_layout.hpp"

using namespace slabwright;

namespace {

constexpr double foot_m = 0.3048;

/// A rectangle with its manifold in the middle of a long wall; 12 in, 300 ft.
LayoutTask floor_of(double width_ft, double depth_ft) {
  LayoutTask task;
  task.outline = rectangle(width_ft * foot_m, depth_ft * foot_m);
  task.wall_clearance_m = 0.5 * foot_m;
  task.spacing_m = foot_m;
  task.bend_radius_m = 5.0 / 12.0 * foot_m;
  task.longest_loop_m = 300.0 * foot_m;
  task.manifold = {{{0.5 * width_ft * foot_m, 0.0}, {0.0, 1.0}, 60, foot_m / 6.0}};
  return task;
}

void lay(benchmark::State& state) {
  const LayoutTask task = floor_of(static_cast<double>(state.range(0)), static_cast<double>(state.range(1)));
  for (auto _ : state) benchmark::DoNotOptimize(lay_tube(task));
}

void check(benchmark::State& state) {
  const LayoutTask task = floor_of(40.0, 28.0);
  const auto laid = lay_tube(task);
  for (auto _ : state) benchmark::DoNotOptimize(check_layout(task, *laid.value));
}

BENCHMARK(lay)->Args({40, 28})->Args({100, 60})->Args({150, 100})->Unit(benchmark::kMillisecond);
BENCHMARK(check)->Unit(benchmark::kMillisecond);

}  // namespace
