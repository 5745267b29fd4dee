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

/// The same with so many manifolds side by side on one wall.
LayoutTask floor_of(double width_ft, double depth_ft, int manifolds, double limit_ft) {
  LayoutTask task = floor_of(width_ft, depth_ft);
  task.longest_loop_m = limit_ft * foot_m;
  const PortRow row = task.manifold.front();
  task.manifold.assign(static_cast<std::size_t>(manifolds), row);
  for (int k = 0; k < manifolds; ++k) {
    task.manifold[static_cast<std::size_t>(k)].place.x_m = (k + 0.5) / manifolds * width_ft * foot_m;
  }
  return task;
}

void lay(benchmark::State& state) {
  const LayoutTask task = floor_of(static_cast<double>(state.range(0)), static_cast<double>(state.range(1)));
  for (auto _ : state) benchmark::DoNotOptimize(lay_tube(task));
}

void lay_many(benchmark::State& state) {
  const LayoutTask task = floor_of(static_cast<double>(state.range(0)), static_cast<double>(state.range(1)),
                                   static_cast<int>(state.range(2)), static_cast<double>(state.range(3)));
  const auto laid = lay_tube(task);
  if (!laid) return state.SkipWithError("no layout");
  state.counters["loops"] = static_cast<double>(laid.value->loop.size());
  state.counters["spread_pc"] = 100.0 * check_layout(task, *laid.value).spread_ratio;
  for (auto _ : state) benchmark::DoNotOptimize(lay_tube(task));
}

/// The manifold in the middle of the floor.
void lay_free(benchmark::State& state) {
  LayoutTask task = floor_of(60.0, 40.0);
  task.manifold.front().place.y_m = 18.0 * foot_m;
  for (auto _ : state) benchmark::DoNotOptimize(lay_tube(task));
}

void find_place(benchmark::State& state) {
  LayoutTask task = floor_of(60.0, 30.0);
  task.manifold.front().place.x_m = 4.0 * foot_m;
  for (auto _ : state) benchmark::DoNotOptimize(better_place(task));
}

void check(benchmark::State& state) {
  const LayoutTask task = floor_of(40.0, 28.0);
  const auto laid = lay_tube(task);
  for (auto _ : state) benchmark::DoNotOptimize(check_layout(task, *laid.value));
}

BENCHMARK(lay)->Args({40, 28})->Args({100, 60})->Unit(benchmark::kMillisecond);
BENCHMARK(lay_many)->Args({120, 70, 3, 300})->Args({200, 120, 3, 500})->Unit(benchmark::kMillisecond);
BENCHMARK(lay_free)->Unit(benchmark::kMillisecond);
BENCHMARK(find_place)->Unit(benchmark::kMillisecond);
BENCHMARK(check)->Unit(benchmark::kMillisecond);

}  // namespace
