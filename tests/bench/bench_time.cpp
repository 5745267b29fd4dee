// A floor's edge in time: few states from a section's numbers on, a year of them, and unit steps of the whole field.
#include <benchmark/benchmark.h>

#include "../published/ground/edge_in_time.hpp"
#include "slabwright/conduction_states.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const std::vector<FieldPoint> points{edge_point("door", 0.0, 0.0),
                                     edge_point("door", 0.005, 0.0),
                                     edge_point("door", 0.15, 0.075),
                                     edge_point("door", 0.30, 0.075),
                                     {0.0, -0.075}};

FewStates states_of(const char* detail, const FieldOptions& grid_in_time) {
  StatesOptions options;
  options.grid_in_time = grid_in_time;
  options.constant = {edge_driver::ground};
  return few_states(edge_in_time(detail), points, options);
}

void build_states(benchmark::State& state, const char* detail, const FieldOptions& grid_in_time) {
  FewStates states;
  for (auto _ : state) states = states_of(detail, grid_in_time);
  state.counters["unknowns"] = static_cast<double>(states.unknowns);
  state.counters["states"] = static_cast<double>(states.decay_per_s.size());
}

void year_of_hours(benchmark::State& state) {
  const FewStates states = states_of("door_under", StatesOptions{}.grid_in_time);
  for (auto _ : state) {
    StateValues values = steady_state(states, {10.0, 0.0, 8.0, 20.0});
    for (int hour = 0; hour < 8760; ++hour)
      values = after_straight(states, values, {10.0, -5.0, 8.0, 20.0}, {10.0, -6.0, 8.0, 20.0}, 3600.0);
    benchmark::DoNotOptimize(values.front());
  }
}

void unit_steps(benchmark::State& state) {
  StepResponses steps;
  for (auto _ : state) steps = step_responses(edge_in_time("door_under"), points, {21600.0, 86400.0, 669600.0});
  state.counters["unknowns"] = static_cast<double>(steps.unknowns);
  state.counters["steps"] = static_cast<double>(steps.steps);
  state.counters["factorisations"] = static_cast<double>(steps.factorisations);
}

}  // namespace

BENCHMARK_CAPTURE(build_states, wall, "wall", StatesOptions{}.grid_in_time)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(build_states, wall_with_boards, "wall_under_edge", StatesOptions{}.grid_in_time)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(build_states, door_on_board, "door_under", StatesOptions{}.grid_in_time)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(build_states, door_on_board_fine, "door_under", FieldOptions{})->Unit(benchmark::kMillisecond);
BENCHMARK(year_of_hours)->Unit(benchmark::kMillisecond);
BENCHMARK(unit_steps)->Unit(benchmark::kMillisecond);
