// Coils, stake-out and holes of a floor of 200 x 120 ft.
#include <benchmark/benchmark.h>

#include "slabwright/routing_layout.hpp"
#include "slabwright/sitework.hpp"
#include "slabwright/sitework_drill.hpp"

using namespace slabwright;

namespace {

constexpr double foot_m = 0.3048, inch_m = 0.0254;

const TubeLayout& hall() {
  static const TubeLayout laid = [] {
    LayoutTask task;
    task.outline = rectangle(200.0 * foot_m, 120.0 * foot_m);
    task.spacing_m = foot_m;
    task.longest_loop_m = 500.0 * foot_m;
    task.manifold = {{{100.0 * foot_m, 0.0}, {0.0, 1.0}, 70, foot_m / 6.0}};
    return *lay_tube(task).value;
  }();
  return laid;
}

DrawnTube tube() {
  DrawnTube tube{{}, 0.625 * inch_m, 2.0 * inch_m};
  for (const LaidLoop& loop : hall().loop) tube.loop.push_back(loop.path);
  return tube;
}

void cut(benchmark::State& state) {
  std::vector<double> pieces_m;
  for (const LaidLoop& loop : hall().loop) pieces_m.push_back(loop.length_m);
  for (auto _ : state) benchmark::DoNotOptimize(cut_coils(pieces_m, usual_coils_m(System::us)));
}

void stake(benchmark::State& state) {
  StakeTask task;
  for (const LaidLoop& loop : hall().loop) {
    task.name.push_back("loop");
    task.loop.push_back(loop.path);
  }
  task.first = {"west", {0.0, 120.0 * foot_m}, {0.0, 0.0}};
  task.second = {"south", {0.0, 0.0}, {200.0 * foot_m, 0.0}};
  for (auto _ : state) benchmark::DoNotOptimize(stake_out(task));
}

void hole(benchmark::State& state) {
  const DrawnTube floor = tube();
  const TubeDoubt doubt{usual_placing(System::us), {}};
  for (auto _ : state) benchmark::DoNotOptimize(read_hole(floor, doubt, {{20.0, 20.1}, 0.5 * inch_m, 3.0 * inch_m}));
}

void move(benchmark::State& state) {
  const DrawnTube floor = tube();
  const TubeDoubt doubt{usual_placing(System::us), {}};
  const AnchorPattern plate{{{20.0, 20.0}, {20.3, 20.0}, {20.3, 20.3}, {20.0, 20.3}}, 0.5 * inch_m, 3.0 * inch_m};
  const MoveLimits limits{6.0 * inch_m, 0.25 * inch_m, 0.0};
  for (auto _ : state) benchmark::DoNotOptimize(least_risk_move(floor, doubt, plate, limits));
}

BENCHMARK(cut)->Unit(benchmark::kMillisecond);
BENCHMARK(stake)->Unit(benchmark::kMillisecond);
BENCHMARK(hole)->Unit(benchmark::kMicrosecond);
BENCHMARK(move)->Unit(benchmark::kMillisecond);

}  // namespace
