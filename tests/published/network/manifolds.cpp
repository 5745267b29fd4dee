// Three manifolds of six loops, solved by a general water-network engine, and by a second program with the exact
// Colebrook friction. The engine's friction is Swamee and Jain's with Dunlop's cubic below Reynolds 4000, and its g is
// 9.81456 m/s2, so that it can only agree to a part in three hundred.
#include <fmt/format.h>

#include <cmath>
#include <map>

#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;
using slabwright::test::Within;

namespace {

constexpr double per_hour = 3600.0;

struct Manifold {
  HydronicGraph graph;
  std::map<std::string, BranchId> branch;
  std::map<std::string, NodeId> node;
};

// The engine's reservoir at the pump's suction stands open; here the circuit simply closes there.
Manifold manifold(const std::string& name, const Liquid& liquid) {
  Manifold made;
  for (const auto& row : test::read_table("water_network_engine/nodes.csv")) {
    if (row.at("case") == name) made.node[row.at("id")] = made.graph.add_node(row.at("id"));
  }
  for (const auto& row : test::read_table("water_network_engine/pipes.csv")) {
    if (row.at("case") != name) continue;
    const double bore = test::number(row, "inside_diameter_m");
    const Bore run{test::number(row, "length_m"), bore, test::number(row, "roughness_m")};
    const Fitting fittings{test::number(row, "loss_coefficient"), bore};
    made.branch[row.at("id")] =
        made.graph.add_branch(made.node.at(row.at("from")), made.node.at(row.at("to")), row.at("id"), liquid,
                              {{Part::tube, run}, {Part::bend, fittings}});
  }
  const auto pump = pump_law_through({0.0, 6.0}, {1.0 / per_hour, 5.2}, {2.0 / per_hour, 2.8});
  made.branch["pump"] =
      made.graph.add_branch(made.node.at("RES"), made.node.at("P"), "pump", liquid, {{Part::pump, Pump{*pump.value}}});
  return made;
}

Liquid liquid(double density, double kinematic_viscosity) { return {density, density * kinematic_viscosity}; }

const Liquid warm_water = liquid(992.216353, 6.578491928967431e-07);
const Liquid cold_glycol = liquid(1036.24, 4.410175248977071e-06);

struct Printed {
  const char *loop1, *loop6, *pump;
};

void check(const std::string& name, const Liquid& filled, const Printed& exact) {
  const Manifold made = manifold(name, filled);
  const NetworkSolution solved = solve_network(made.graph);
  REQUIRE(solved.stop == Stop::converged);
  const auto hourly = [&](const std::string& id) { return per_hour * solved.flow_m3_per_s[made.branch.at(id).at]; };

  const std::string place = fmt::format("case {}, exact Colebrook, g 9.80665", name);
  const Source second{"Second program for six-loop manifolds (Newton, mpmath-checked friction)", place,
                      Oracle::reference_code};
  CHECK_PUBLISHED(second, "flow of loop 1, m3/h", exact.loop1, hourly("loop1"));
  CHECK_PUBLISHED(second, "flow of loop 6, m3/h", exact.loop6, hourly("loop6"));
  CHECK_PUBLISHED(second, "flow of the pump, m3/h", exact.pump, hourly("pump"));

  const Source engine{"EPANET 2.3.5 (epanet-js 0.9.0)", place.substr(0, 7), Oracle::reference_code};
  const Within friction{0.0, 3e-3, "another friction law and g 9.81456"};
  for (const auto& row : test::read_table("water_network_engine/pipes.csv")) {
    if (row.at("case") != name || row.at("id").substr(0, 4) != "loop") continue;
    const std::string printed = fmt::format("{:.6f}", test::number(row, "flow_m3_per_h"));
    CHECK_PUBLISHED(engine, "flow of " + row.at("id") + ", m3/h", printed, hourly(row.at("id")), friction);
  }
}

}  // namespace

TEST_CASE("M1: warm water, loops of 61 to 91 m, nothing balanced") {
  check("M1", warm_water, {"0.257143", "0.213188", "1.387418"});
}

TEST_CASE("M2: the same, balanced") { check("M2", warm_water, {"0.200110", "0.200351", "1.201452"}); }

TEST_CASE("M3: cold glycol, laminar in the loops") { check("M3", cold_glycol, {"0.237733", "0.173707", "1.199269"}); }
