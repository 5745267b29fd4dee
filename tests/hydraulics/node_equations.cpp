// The linear algebra of a round by itself: series, parallel and a core against a dense matrix.
#include "hydraulics/node_equations.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "plants.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Wide = Eigen::Matrix<long double, Eigen::Dynamic, Eigen::Dynamic>;

struct Case {
  std::vector<Ends> branches;
  std::vector<double> conductance, source;
  std::vector<Node> nodes;
  std::vector<bool> held;
};

// `more` branches beyond a tree: none is a tree, many leave a core. Conductances differ by `decades`.
Case random_case(Dice& dice, std::size_t more, double decades) {
  Case made;
  const std::size_t nodes = 2 + dice.below(30);
  const auto add = [&](std::size_t from, std::size_t to) {
    made.branches.push_back({static_cast<std::uint32_t>(from), static_cast<std::uint32_t>(to)});
    made.conductance.push_back(std::pow(10.0, dice.between(-decades / 2, decades / 2)));
    made.source.push_back(dice.between(-1.0, 1.0));
  };
  for (std::size_t i = 1; i < nodes; ++i) add(dice.below(i), i);
  for (std::size_t k = 0; k < more; ++k) {
    const std::size_t to = 1 + dice.below(nodes - 1);
    add(dice.below(to), to);
  }
  for (std::size_t i = 0; i < nodes; ++i) made.nodes.push_back({"", dice.between(-1.0, 1.0), false, 0.0});
  made.held.assign(nodes, false);
  for (std::size_t held = 1 + dice.below(3); held > 0; --held) {
    const std::size_t at = dice.below(nodes);
    made.nodes[at].held = made.held[at] = true;
    made.nodes[at].held_pressure_Pa = dice.between(-10.0, 10.0);
  }
  return made;
}

std::vector<double> by_matrix(const Case& c) {
  const auto n = static_cast<Eigen::Index>(c.nodes.size());
  Wide matrix = Wide::Zero(n, n), right = Wide::Zero(n, 1);
  for (std::size_t k = 0; k < c.branches.size(); ++k) {
    const auto from = static_cast<Eigen::Index>(c.branches[k].from), to = static_cast<Eigen::Index>(c.branches[k].to);
    const long double g = c.conductance[k], source = c.source[k];
    matrix(from, from) += g;
    matrix(to, to) += g;
    matrix(from, to) -= g;
    matrix(to, from) -= g;
    right(from) -= source;
    right(to) += source;
  }
  for (Eigen::Index i = 0; i < n; ++i) {
    const auto at = static_cast<std::size_t>(i);
    right(i) -= c.nodes[at].demand_m3_per_s;
    if (!c.held[at]) continue;
    matrix.row(i).setZero();
    matrix(i, i) = 1.0L;
    right(i) = c.nodes[at].held_pressure_Pa;
  }
  const Wide found = matrix.fullPivLu().solve(right);
  std::vector<double> pressures;
  for (Eigen::Index i = 0; i < n; ++i) pressures.push_back(static_cast<double>(found(i)));
  return pressures;
}

double furthest(const Case& c) {
  NodeEquations equations(c.nodes.size(), c.branches);
  equations.give(c.nodes, c.held);
  equations.begin();
  for (std::size_t k = 0; k < c.branches.size(); ++k) equations.add(k, c.conductance[k], c.source[k]);
  REQUIRE(equations.solve());
  const std::vector<double> expected = by_matrix(c);
  double most = 0.0, size = 0.0;
  for (std::size_t i = 0; i < expected.size(); ++i) {
    most = std::max(most, std::abs(equations.pressure(i) - expected[i]));
    size = std::max(size, std::abs(expected[i]));
  }
  return most / size;
}

}  // namespace

TEST_CASE("node equations have the solution of their matrix") {
  for (unsigned seed = 1; seed <= 300; ++seed) {
    Dice dice(seed);
    CAPTURE(seed);
    CHECK(furthest(random_case(dice, dice.below(40), 2.0)) <= 1e-12);
  }
}

TEST_CASE("in trees and ladders no digit is lost, however unlike the branches") {
  for (unsigned seed = 1; seed <= 300; ++seed) {
    Dice dice(seed);
    CAPTURE(seed);
    CHECK(furthest(random_case(dice, dice.below(2), 6.0)) <= 1e-12);
  }
}

TEST_CASE("trees, ladders and rows of ladders come apart wholly; a reverse return keeps a core") {
  const auto core = [](std::size_t ports, bool reverse) {
    std::vector<Ends> branches{{0, 1}};
    std::uint32_t supply = 0, back = 1, nodes = 2;
    for (std::size_t i = 0; i < ports; ++i, nodes += 2) {
      branches.push_back({supply, nodes});
      branches.push_back({nodes, nodes + 1});
      if (i > 0 || !reverse) branches.push_back({nodes + 1, back});
      supply = nodes;
      back = nodes + 1;
    }
    if (reverse) branches.push_back({back, 1});
    const Elimination order = eliminate(nodes, branches);
    return nodes - order.steps.size();
  };
  CHECK(core(12, false) == 0);
  CHECK(core(12, true) > 0);
}
