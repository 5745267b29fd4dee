// Networks for the tests: manifolds by their loops, meshes at random, and the same network told in another order.
#pragma once
#include <rapidcheck.h>

#include <string>
#include <vector>

#include "slabwright/hydraulics.hpp"

namespace slabwright::test {

constexpr double per_hour = 3600.0;  ///< m3/h in a m3/s
constexpr Liquid warm_water{992.2, 652.7e-6};
constexpr Liquid cold_glycol{1036.2, 4.57e-3};
/// Tight enough that a flow compared to `flow_digits` tells a difference of networks, not of rounds.
constexpr NetworkOptions tight{1e-12, 1e-7, 100};
constexpr double flow_digits_m3_per_s = 1e-9;

struct LoopSpec {
  double length_m = 80.0;
  double kv = 1.1;
};

struct ManifoldSpec {
  std::vector<LoopSpec> loops;
  Liquid liquid = warm_water;
  PumpLaw pump{6.0, 3.5 / per_hour, 2.0};
  double mains_m = 12.0;
  bool port_by_port = true;  ///< else each bar is one node
};

struct Manifold {
  HydronicGraph graph;
  BranchId pump;
  std::vector<BranchId> loop;
};

/// Pump and mains on one branch, the two bars, and a branch for each loop.
Manifold manifold(const ManifoldSpec& spec);

/// Pump, water or glycol, two to nine loops of 15 to 120 m, at random.
ManifoldSpec random_manifold();

/// Tubes between nodes at random, some of them doubled, pumps and valves in some; fed from two held nodes and with
/// demands, or closed, with check valves.
HydronicGraph random_mesh(bool open);

/// The same network with nodes and branches in another order, and some branches told from end to start.
struct Retold {
  HydronicGraph graph;
  std::vector<std::size_t> node, branch;  ///< where each now stands
  std::vector<double> sign;               ///< -1 where a branch was turned
};
Retold retold(const HydronicGraph& graph);

double drawn(double low, double high);

}  // namespace slabwright::test
