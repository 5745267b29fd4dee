// The two-loop network of Alperovits and Shamir (1977, DOI 10.1029/WR013i006p00885) with the diameters of its
// least-cost design, Hazen-Williams friction with C = 130: open, fed by a reservoir at 210 m.
#include <fmt/format.h>

#include <cmath>
#include <map>

#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;

namespace {

const Source engine{"EPANET 2.3.5 (epanet-js 0.9.0)", "two-loop network, C 130", Oracle::reference_code};
const Source heads{"Alperovits and Shamir 1977", "two-loop network, pressure heads, from memory", Oracle::derived};

constexpr double foot_m = 0.3048, inch_flow_m3_per_h = 101.94;  // the engine's foot-second: 1 ft3/s = 101.94 m3/h
constexpr double water_kg_per_m3 = 1000.0, gravity = 9.80665;
constexpr double weight = water_kg_per_m3 * gravity;  // Pa in a metre of head; it cancels

// Hazen and Williams as the engine has it: 4.727 C^-1.852 d^-4.871 L Q^1.852, in feet and cubic feet a second.
PowerLaw hazen_williams(double c, double diameter_m, double length_m) {
  const double per_flow = 4.727 * std::pow(c, -1.852) * std::pow(diameter_m / foot_m, -4.871) * (length_m / foot_m);
  const double cubic_feet = 3600.0 / inch_flow_m3_per_h;
  return {weight * foot_m * per_flow * std::pow(cubic_feet, 1.852), 1.852};
}

}  // namespace

TEST_CASE("the two-loop network") {
  HydronicGraph graph;
  std::map<std::string, NodeId> node;
  for (const auto& row : test::read_table("water_network_engine/nodes.csv")) {
    if (row.at("case") != "T2") continue;
    const NodeId at = graph.add_node(row.at("id"));
    node[row.at("id")] = at;
    graph.set_demand(at, test::number(row, "demand_m3_per_s"));
    if (!row.at("held_head_m").empty()) graph.hold_pressure(at, weight * test::number(row, "held_head_m"));
  }
  std::vector<std::pair<std::string, std::string>> printed;
  for (const auto& row : test::read_table("water_network_engine/pipes.csv")) {
    if (row.at("case") != "T2") continue;
    const PowerLaw law = hazen_williams(test::number(row, "hazen_williams_c"), test::number(row, "inside_diameter_m"),
                                        test::number(row, "length_m"));
    graph.add_branch(node.at(row.at("from")), node.at(row.at("to")), row.at("id"), {water_kg_per_m3, 1e-3},
                     {{Part::mains, law}});
    printed.emplace_back(row.at("id"), fmt::format("{:.4f}", test::number(row, "flow_m3_per_h")));
  }
  const NetworkSolution solved = solve_network(graph);
  REQUIRE(solved.stop == Stop::converged);
  for (std::size_t k = 0; k < printed.size(); ++k) {
    CHECK_PUBLISHED(engine, "flow of " + printed[k].first + ", m3/h", printed[k].second,
                    3600.0 * solved.flow_m3_per_s[k]);
  }
  const double ground_m[] = {150.0, 160.0, 155.0, 150.0, 165.0, 160.0};
  const char* engine_heads[] = {"53.247", "30.462", "43.449", "33.803", "30.445", "30.552"};
  const char* remembered[] = {"53.25", "30.46", "43.45", "33.81", "30.44", "30.55"};
  for (std::size_t i = 0; i < 6; ++i) {
    const double head = solved.pressure_Pa[i + 1] / weight - ground_m[i];
    CHECK_PUBLISHED(engine, fmt::format("pressure head of node {}, m", i + 2), engine_heads[i], head);
    CHECK_PUBLISHED(heads, fmt::format("pressure head of node {}, m", i + 2), remembered[i], head,
                    {0.01, 0.0, "a figure from memory, no oracle"});
  }
}
