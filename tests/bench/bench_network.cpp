// Flows of one manifold and of a campus: 10 000 loops on 800 manifolds, 100 000 on 8 000; in ladders, and with rings.
#include <benchmark/benchmark.h>

#include "slabwright/hydraulics.hpp"

using namespace slabwright;

namespace {

constexpr Liquid water{992.2, 652.7e-6};

std::vector<Element> loop_elements(std::size_t number) {
  const double length = 60.0 + static_cast<double>(number * 7 % 31);
  return {{Part::balancing_valve, KvValve{1.1}},   {Part::leader, Bore{3.0, 0.012, 7e-6}},
          {Part::tube, Bore{length, 0.012, 7e-6}}, {Part::bend, Fitting{4.8, 0.012}},
          {Part::leader, Bore{3.0, 0.012, 7e-6}},  {Part::return_valve, KvValve{2.0}}};
}

struct Pair {
  NodeId supply, back;
};

Pair add_pair(HydronicGraph& graph) {
  const NodeId supply = graph.add_node("supply"), back = graph.add_node("return");
  return {supply, back};
}

std::vector<Element> segment(double length_m, double bore_m) {
  return {{Part::bar, Bore{length_m, bore_m, 7e-6}}, {Part::bar, Fitting{0.5, bore_m}}};
}

void join(HydronicGraph& graph, Pair from, Pair to, double length_m, double bore_m) {
  graph.add_branch(from.supply, to.supply, "supply run", water, segment(length_m, bore_m));
  graph.add_branch(to.back, from.back, "return run", water, segment(length_m, bore_m));
}

void add_manifold(HydronicGraph& graph, Pair bars, std::size_t loops, bool port_by_port) {
  for (std::size_t i = 0; i < loops; ++i) {
    if (i > 0 && port_by_port) {
      const Pair next = add_pair(graph);
      join(graph, bars, next, 0.05, 0.025);
      bars = next;
    }
    graph.add_branch(bars.supply, bars.back, "loop", water, loop_elements(i));
  }
}

enum class Mains { ladder, ringed };

// A pump feeds wide mains along rows of manifolds, twenty to a row, 12 or 13 loops each. Ringed, the far ends of
// neighbouring rows are joined, and the end of the mains with their start.
HydronicGraph campus(std::size_t loops, std::size_t manifolds, bool port_by_port, Mains kind = Mains::ladder) {
  HydronicGraph graph;
  const double flow = 7e-5 * static_cast<double>(loops);
  const Pair plant = add_pair(graph);
  graph.add_branch(plant.back, plant.supply, "pump", water, {{Part::pump, Pump{PumpLaw{12.0, 2.0 * flow, 2.0}}}});
  Pair mains = plant, row = plant;
  std::vector<Pair> row_ends;
  for (std::size_t m = 0; m < manifolds; ++m) {
    if (m % 20 == 0) {
      const Pair next = add_pair(graph);
      join(graph, mains, next, 8.0, 0.4);
      mains = row = next;
    }
    const Pair bars = add_pair(graph);
    join(graph, row, bars, 6.0, 0.1);
    row = bars;
    add_manifold(graph, bars, loops * (m + 1) / manifolds - loops * m / manifolds, port_by_port);
    if (m % 20 == 19) row_ends.push_back(bars);
  }
  if (kind == Mains::ladder) return graph;
  for (std::size_t i = 1; i < row_ends.size(); ++i) join(graph, row_ends[i - 1], row_ends[i], 8.0, 0.1);
  join(graph, mains, plant, 8.0, 0.4);
  return graph;
}

void report(benchmark::State& state, const NetworkSolution& solved) {
  if (solved.stop != Stop::converged) state.SkipWithError("not converged");
  state.counters["rounds"] = solved.rounds;
  state.counters["worst_m3_per_s"] = solved.worst_imbalance_m3_per_s;
  state.counters["worst_Pa"] = solved.worst_head_Pa;
}

void solve_cold(benchmark::State& state, const HydronicGraph& graph) {
  NetworkSolution solved;
  for (auto _ : state) solved = solve_network(graph);
  report(state, solved);
}

void manifold_of_50_loops(benchmark::State& state) {
  HydronicGraph graph;
  const Pair bars = add_pair(graph);
  graph.add_branch(bars.back, bars.supply, "pump", water, {{Part::pump, Pump{PumpLaw{8.0, 7e-3, 2.0}}}});
  add_manifold(graph, bars, 50, true);
  solve_cold(state, graph);
}
BENCHMARK(manifold_of_50_loops)->Unit(benchmark::kMicrosecond);

void campus_of_10_000_loops(benchmark::State& state) { solve_cold(state, campus(10'000, 800, false)); }
BENCHMARK(campus_of_10_000_loops)->Unit(benchmark::kMillisecond);

void campus_of_10_000_loops_built_port_by_port(benchmark::State& state) {
  NetworkSolution solved;
  for (auto _ : state) solved = solve_network(campus(10'000, 800, true));
  report(state, solved);
}
BENCHMARK(campus_of_10_000_loops_built_port_by_port)->Unit(benchmark::kMillisecond);

void campus_of_100_000_loops(benchmark::State& state) { solve_cold(state, campus(100'000, 8'000, false)); }
BENCHMARK(campus_of_100_000_loops)->Unit(benchmark::kMillisecond);

void ringed_campus_of_10_000_loops(benchmark::State& state) {
  solve_cold(state, campus(10'000, 800, false, Mains::ringed));
}
BENCHMARK(ringed_campus_of_10_000_loops)->Unit(benchmark::kMillisecond);

void ringed_campus_of_10_000_loops_built_port_by_port(benchmark::State& state) {
  NetworkSolution solved;
  for (auto _ : state) solved = solve_network(campus(10'000, 800, true, Mains::ringed));
  report(state, solved);
}
BENCHMARK(ringed_campus_of_10_000_loops_built_port_by_port)->Unit(benchmark::kMillisecond);

void campus_built_port_by_port(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(campus(10'000, 800, true).branch_count());
}
BENCHMARK(campus_built_port_by_port)->Unit(benchmark::kMillisecond);

}  // namespace
