// A floor's edge with its ground: four unit responses, watched points and heat, from the detail's numbers on.
#include <benchmark/benchmark.h>

#include "slabwright/conduction_edge.hpp"

using namespace slabwright;

namespace {

EdgeDetail door() {
  EdgeDetail detail;
  detail.kind = DoorEdge{0.05, 0.05, ThermalBreak{{1.4, 0.05}, 0.0}};
  detail.half_width_m = 6.0;
  detail.slab_thickness_m = 0.15;
  detail.under_slab = InsulatingBoard{1.43, 0.05};
  detail.tube_depth_m = 0.075;
  detail.last_tube_in_m = 0.20;
  return detail;
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

void edge_usual_grid(benchmark::State& state) { solve(state, {}); }

void edge_with_error_estimate(benchmark::State& state) {
  FieldOptions options;
  options.with_error_estimate = true;
  solve(state, options);
}

void edge_15000_unknowns(benchmark::State& state) { solve(state, {0.005, 1.1, 1.0, false}); }

}  // namespace

BENCHMARK(edge_usual_grid)->Unit(benchmark::kMillisecond);
BENCHMARK(edge_with_error_estimate)->Unit(benchmark::kMillisecond);
BENCHMARK(edge_15000_unknowns)->Unit(benchmark::kMillisecond);
