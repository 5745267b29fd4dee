// How many branches lie between nodes, along their directions and against them.
#include "slabwright/hydraulics_graph.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// 0 -> 1 -> 2 -> 3, a short cut 0 -> 2, and 4 alone.
struct Ways {
  HydronicGraph graph;
  std::vector<NodeId> node;
  std::vector<BranchId> branch;

  Ways() {
    for (int i = 0; i < 5; ++i) node.push_back(graph.add_node("n"));
    for (const auto& [a, b] : {std::pair{0, 1}, {1, 2}, {2, 3}, {0, 2}})
      branch.push_back(graph.add_branch(node[static_cast<std::size_t>(a)], node[static_cast<std::size_t>(b)], "b",
                                        {1000.0, 1e-3}, {}));
  }
};

using Steps = std::vector<std::optional<std::size_t>>;

}  // namespace

TEST_CASE("steps are the fewest branches, and none where no walk leads") {
  const Ways ways;
  CHECK(steps_from(ways.graph, {ways.node[0]}, {}, Walk::along) == Steps{0, 1, 1, 2, std::nullopt});
  CHECK(steps_from(ways.graph, {ways.node[3]}, {}, Walk::against) == Steps{2, 2, 1, 0, std::nullopt});
  CHECK(steps_from(ways.graph, {ways.node[3]}, {}, Walk::along) ==
        Steps{std::nullopt, std::nullopt, std::nullopt, 0, std::nullopt});
}

TEST_CASE("closed branches lead nowhere, and the nearest of several beginnings counts") {
  const Ways ways;
  CHECK(steps_from(ways.graph, {ways.node[0]}, {ways.branch[3]}, Walk::along) == Steps{0, 1, 2, 3, std::nullopt});
  CHECK(steps_from(ways.graph, {ways.node[0], ways.node[2], ways.node[2]}, {}, Walk::along) ==
        Steps{0, 1, 0, 1, std::nullopt});
}
