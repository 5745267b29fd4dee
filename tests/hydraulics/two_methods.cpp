// Two solvers that share nothing but the laws of the elements give one answer.
#include <algorithm>
#include <cmath>

#include "loop_method.hpp"
#include "plants.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr int plants = 200;
constexpr NetworkOptions tight{1e-13, 1e-8, 100};
constexpr double agreement_share = 1e-8;         // of the largest flow
constexpr double least_largest_m3_per_s = 1e-6;  // where nothing but a trickle flows

/// What the cases have met, so that none of it is missing by chance.
struct Met {
  int held_valves = 0, bypass_open = 0, reversed = 0, shut = 0, rings = 0;
};

double largest(const std::vector<double>& flows) {
  double most = 0.0;
  for (const double flow : flows) most = std::max(most, std::abs(flow));
  return most;
}

void count(const HydronicGraph& graph, const NetworkSolution& solved, Met& met) {
  met.held_valves += static_cast<int>(solved.checked.size());
  for (std::size_t k = 0; k < graph.branch_count(); ++k) {
    const std::string& name = graph.name(BranchId{k});
    const double flow = solved.flow_m3_per_s[k];
    met.bypass_open += name == "bypass" && flow > 1e-6 ? 1 : 0;
    met.reversed += name != "bypass" && flow < -1e-6 ? 1 : 0;
    met.rings += name == "ring" ? 1 : 0;
    met.shut += is_shut(graph, {k}) ? 1 : 0;
  }
}

NetworkSolution expect_agreement(const HydronicGraph& graph) {
  NetworkSolution solved = solve_network(graph, tight);
  REQUIRE(solved.stop == Stop::converged);
  const std::vector<double> second = flows_by_loops(graph);
  REQUIRE(second.size() == graph.branch_count());
  double apart = 0.0;
  for (std::size_t k = 0; k < second.size(); ++k) {
    apart = std::max(apart, std::abs(second[k] - solved.flow_m3_per_s[k]));
  }
  CHECK(apart <= agreement_share * std::max(largest(second), least_largest_m3_per_s));
  return solved;
}

template <class Draw>
Met met_by(const Draw& draw) {
  Met met;
  for (unsigned seed = 1; seed <= plants; ++seed) {
    CAPTURE(seed);
    Dice dice(seed);
    const HydronicGraph graph = draw(dice);
    count(graph, expect_agreement(graph), met);
  }
  return met;
}

}  // namespace

TEST_CASE("plants at random have the same flows by nodes and by loops") {
  const Met met = met_by([](Dice& dice) { return random_plant(dice); });
  CHECK(met.held_valves > 20);
  CHECK(met.bypass_open > 20);
  CHECK(met.reversed > 20);
  CHECK(met.shut > 20);
  CHECK(met.rings > 20);
}

TEST_CASE("tangles at random have the same flows by nodes and by loops") {
  const Met met = met_by([](Dice& dice) { return random_tangle(dice); });
  CHECK(met.held_valves > 100);
  CHECK(met.reversed > 100);
}

// No second answer to compare with: rounds that resist nothing let any flow pass. But an answer there must be.
TEST_CASE("tangles with rounds that resist nothing have an answer") {
  for (unsigned seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    Dice dice(seed);
    const NetworkSolution solved = solve_network(random_tangle(dice, true));
    CHECK(solved.stop == Stop::converged);
    CHECK(solved.rounds <= 200);
  }
}
