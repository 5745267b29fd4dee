// A floor's edge with its ground: four unit responses, watched points and heat, from the detail's numbers on.
#include <benchmark/benchmark.h>

#include "slabwright/conduction_edge.hpp"
#include "slabwright/conduction_time.hpp"

using namespace slabwright;

namespace {

EdgeDetail door() {
  EdgeDetail detail;
  detail.kind = DoorEdge{};
  detail.half_width_m = 6.0;
  detail.slab_thickness_m = 0.15;
  detail.tube_depth_m = 0.075;
  detail.last_tube_in_m = 0.20;
  EdgeBuild build;
  build.under = {{{1.43, 0.05}, {}}};
  build.thermal_break = ThermalBreak{{1.4, 0.05}, 0.0};
  return with_build(detail, build);
}

void solve(benchmark::State& state, const FieldOptions& options) {
  const std::vector<EdgePoint> points{{0.0, 0.0}, {0.025, 0.0}, {0.15, 0.075}, {0.30, 0.075}};
  std::size_t unknowns = 0;
  for (auto _ : state) {
    const UnitResponses responses = edge_responses(door(), points, options);
    benchmark::DoNotOptimize(responses.weights.front().front());
    unknowns = responses.unknowns;
  }
  state.counters["unknowns"] = static_cast<double>(unknowns);
}

/// Everything at once: the most lines that a file can ask for without rectangles of its own.
EdgeDetail wall_with_everything() {
  EdgeDetail detail = door();
  detail.parts.clear();
  detail.kind = WallEdge{};
  detail.grade_depth_m = 0.2;
  const InsulatingBoard board{1.43, 0.05};
  EdgeBuild build;
  build.under = {{board, {}}, {board, 0.6}};
  build.stem_wall = StemWall{0.2, 1.2, Footing{0.4, 0.2}};
  build.inside = build.outside = EdgeBoard{board, 0.6};
  build.wing = WingBoard{board, 0.6, 0.3};
  return with_build(detail, build);
}

/// The ground path's own grid and drivers.
void held_edge(benchmark::State& state, const EdgeDetail& detail, const FieldOptions& options) {
  std::size_t unknowns = 0;
  for (auto _ : state) {
    const UnitResponses responses = unit_responses(held_edge_section(detail), {}, options);
    benchmark::DoNotOptimize(responses.heat_in.front().front());
    unknowns = responses.unknowns;
  }
  state.counters["unknowns"] = static_cast<double>(unknowns);
}

void edge_usual_grid(benchmark::State& state) { solve(state, {}); }

void edge_with_error_estimate(benchmark::State& state) {
  FieldOptions options;
  options.with_error_estimate = true;
  solve(state, options);
}

const FieldOptions weight_grid{0.005, 1.4, 1.0, false};

void edge_weights(benchmark::State& state) { solve(state, weight_grid); }

void edge_with_everything(benchmark::State& state) {
  const EdgeDetail detail = wall_with_everything();
  std::size_t unknowns = 0;
  for (auto _ : state) {
    const UnitResponses responses = edge_responses(detail, {{0.15, 0.075}}, weight_grid);
    benchmark::DoNotOptimize(responses.weights.front().front());
    unknowns = responses.unknowns;
  }
  state.counters["unknowns"] = static_cast<double>(unknowns);
}

const FieldOptions heat_grid{0.01, 1.4, 1.0, true}, swing_grid{0.04, 1.5, 2.0, false};

void ground_path(benchmark::State& state) { held_edge(state, door(), heat_grid); }

void ground_path_with_everything(benchmark::State& state) { held_edge(state, wall_with_everything(), heat_grid); }

void ground_swing(benchmark::State& state) {
  const FieldSection section = held_edge_section(wall_with_everything());
  for (auto _ : state) {
    const SwingResponses swing = swing_responses(section, {}, 365.0 * 86400.0, swing_grid);
    benchmark::DoNotOptimize(swing.heat_in_with.front().front());
  }
}

void edge_15000_unknowns(benchmark::State& state) { solve(state, {0.005, 1.1, 1.0, false}); }

}  // namespace

BENCHMARK(edge_usual_grid)->Unit(benchmark::kMillisecond);
BENCHMARK(edge_with_error_estimate)->Unit(benchmark::kMillisecond);
BENCHMARK(edge_with_everything)->Unit(benchmark::kMillisecond);
BENCHMARK(edge_weights)->Unit(benchmark::kMillisecond);
BENCHMARK(ground_swing)->Unit(benchmark::kMillisecond);
BENCHMARK(ground_path)->Unit(benchmark::kMillisecond);
BENCHMARK(ground_path_with_everything)->Unit(benchmark::kMillisecond);
BENCHMARK(edge_15000_unknowns)->Unit(benchmark::kMillisecond);
