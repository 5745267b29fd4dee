// The plant as a scheme: every element of the graph under one word, sides and columns that follow from the graph.
#include "slabwright/plant_scheme.hpp"

#include <map>
#include <set>

#include "plant/plants.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Schemed {
  Piped piped;
  OperatingPoint point;
  PipingScheme scheme;
};

Schemed schemed(const std::string& name, const Keys& keys) {
  Schemed one{piped(with_keys(layout(name).file, keys).design), {}, {}};
  one.point = operate(one.piped.plant, one.piped.conditions, 40.0);
  one.scheme = piping_scheme(one.piped.plant, &one.point, nullptr);
  return one;
}

/// Every way of joining boiler and floor, with one pump and two, with and without a bypass, and mains of all kinds.
std::vector<std::pair<std::string, Keys>> arrangements() {
  std::vector<std::pair<std::string, Keys>> all;
  for (const char* piping : {"direct", "closely spaced tees", "separator", "buffer", "mixing valve", "injection"}) {
    for (const char* pumps : {"1", "2"}) {
      all.push_back({"ten-lines", {{"boiler.piping", piping}, {"pump.pumps", pumps}}});
      all.push_back(
          {"ten-lines", {{"boiler.piping", piping}, {"pump.pumps", pumps}, {"pump.bypass_opening", "2 psi"}}});
    }
  }
  for (const char* way : {"each its own", "direct", "reverse"})
    all.push_back({"county-garage", {{"mains.return_way", way}}});
  all.push_back({"ten-lines", {{"pump.pumps", "2"}, {"pump.together", "in series"}, {"boiler.check_valve", "true"}}});
  return all;
}

bool crosses(const PipingScheme& scheme, const SchemeBranch& branch) {
  return scheme.node[branch.from].side != scheme.node[branch.to].side;
}

}  // namespace

TEST_CASE("each element of the graph stands under one word of its branch") {
  for (const auto& [name, keys] : arrangements()) {
    INFO(name << " " << keys[0].second);
    const Schemed one = schemed(name, keys);
    const HydronicGraph& graph = one.piped.plant.graph;
    REQUIRE(one.scheme.branch.size() == graph.branch_count());
    REQUIRE(one.scheme.node.size() == graph.node_count());
    for (std::size_t i = 0; i < graph.branch_count(); ++i) {
      int stands_for = 0;
      for (const SchemeElement& element : one.scheme.branch[i].element) stands_for += element.stands_for_number;
      CHECK(stands_for == static_cast<int>(graph.elements(BranchId{i}).size()));
    }
  }
}

TEST_CASE("supply is what lies on a way to a loop, and all that joins the sides has a column") {
  for (const auto& [name, keys] : arrangements()) {
    INFO(name << " " << keys[0].second);
    const Schemed one = schemed(name, keys);
    const PipingScheme& scheme = one.scheme;
    const Plant& plant = one.piped.plant;
    for (const BranchId loop : plant.loop_branch) {
      CHECK(scheme.node[scheme.branch[loop.at].from].side == SchemeSide::supply);
      CHECK(scheme.node[scheme.branch[loop.at].to].side == SchemeSide::return_side);
    }
    CHECK(scheme.node[plant.source.out.at].side == SchemeSide::supply);
    CHECK(scheme.node[plant.source.back.at].side == SchemeSide::return_side);
    CHECK(scheme.branch[plant.source.boiler.at].column_number == 1);
    std::set<int> columns;
    for (const SchemeBranch& branch : scheme.branch) {
      CHECK((branch.column_number > 0) == crosses(scheme, branch));
      if (branch.column_number > 0) CHECK(columns.insert(branch.column_number).second);
      CHECK(branch.column_number <= scheme.columns_number);
    }
    for (const SchemeDevice& device : scheme.device) CHECK(columns.insert(device.column_number).second);
    for (const SchemeNode& node : scheme.node) {
      if (node.column_number > 0) CHECK(columns.count(node.column_number) == 0);
    }
  }
}

TEST_CASE("ranks grow by one along a side from the source outward") {
  const Schemed one = schemed("county-garage", {{"mains.return_way", "direct"}});
  for (const SchemeBranch& branch : one.scheme.branch) {
    if (crosses(one.scheme, branch)) continue;
    const SchemeNode &from = one.scheme.node[branch.from], &to = one.scheme.node[branch.to];
    CHECK((from.side == SchemeSide::supply ? to.rank_number - from.rank_number : from.rank_number - to.rank_number) ==
          1);
  }
}

TEST_CASE("loops of one manifold stand side by side, manifold after manifold") {
  for (const char* way : {"each its own", "direct", "reverse"}) {
    INFO(way);
    const Schemed one = schemed("county-garage", {{"mains.return_way", way}});
    std::map<int, std::size_t> manifold_at;
    for (std::size_t k = 0; k < one.piped.loops.loop.size(); ++k) {
      const SchemeBranch& branch = one.scheme.branch[one.piped.plant.loop_branch[k].at];
      CHECK(branch.loop_name == one.piped.loops.loop[k].name);
      manifold_at[branch.column_number] = one.piped.loops.loop[k].manifold;
    }
    int changes = 0;
    std::size_t last = manifold_at.begin()->second;
    for (const auto& [column, manifold] : manifold_at) {
      changes += manifold != last;
      last = manifold;
    }
    CHECK(changes == 2);
  }
}

TEST_CASE("what comes to a meeting leaves it") {
  for (const auto& [name, keys] : arrangements()) {
    INFO(name << " " << keys[0].second);
    const Schemed one = schemed(name, keys);
    std::vector<double> left(one.scheme.node.size(), 0.0);
    for (const SchemeBranch& branch : one.scheme.branch) {
      REQUIRE(branch.flow_m3_per_s);
      CHECK(*branch.flow_m3_per_s >= 0.0);
      const double flow = branch.runs_back ? -*branch.flow_m3_per_s : *branch.flow_m3_per_s;
      left[branch.from] -= flow;
      left[branch.to] += flow;
    }
    // What the network leaves over at its own nodes, some of them added up.
    for (const double rest : left) CHECK(std::abs(rest) < 1e-7);
  }
}

TEST_CASE("shut zones have their valve, and devices of others say so") {
  const Schemed one = schemed("frame-shop", {{"room[1].shut", "true"}});
  int shut = 0, relief = 0, others = 0;
  for (const SchemeBranch& branch : one.scheme.branch) {
    for (const SchemeElement& element : branch.element) {
      shut += element.kind == SchemeKind::zone_valve;
      relief += element.kind == SchemeKind::relief_valve;
      others += element.by_others;
    }
  }
  CHECK(shut == static_cast<int>(loops_shut(one.piped.plant.design, one.piped.loops).size()));
  CHECK(shut > 0);
  CHECK(relief == 1);
  CHECK(others == 2);
  REQUIRE(one.scheme.device.size() == 2);
  CHECK_FALSE(one.scheme.device[0].element.by_others);
  CHECK(one.scheme.device[1].element.by_others);
}

TEST_CASE("the tank hangs on the suction side of the floor's pump") {
  for (const auto& [name, keys] : arrangements()) {
    const Schemed one = schemed(name, keys);
    for (const SchemeDevice& device : one.scheme.device)
      CHECK(device.node == one.piped.plant.graph.from(one.piped.plant.source.pump.front()).at);
  }
}
