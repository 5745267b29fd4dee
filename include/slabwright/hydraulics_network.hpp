// Flows and pressures of a hydronic graph.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "slabwright/hydraulics_graph.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {

struct NetworkOptions {
  /// A 50 000th of the flow of a small loop: up to here flows may be off before nodes are closed, after which each
  /// passes on what it gets to the last digits of the flows.
  double imbalance_m3_per_s = 1e-9;
  double head_Pa = 1e-3;  ///< a tenth of a thousandth of a millimetre of water
  int most_rounds = 60;   ///< a cold start needs 5 to 8
};

/// How a solve ended, and what it found. With any other `stop` than converged the figures are the last ones tried:
/// `no_solution` means demands that no held pressure can serve (the imbalance says how much), `not_finite` a law that
/// left the numbers.
struct NetworkSolution {
  Stop stop = Stop::rounds_spent;
  int rounds = 0;                         ///< linear systems solved
  double worst_imbalance_m3_per_s = 0.0;  ///< most water that a node gains or loses
  double worst_head_Pa = 0.0;             ///< most that a branch's loss differs from the pressures at its ends
  std::string worst_name;                 ///< the node or branch that is worst, measured by the tolerances
  std::vector<double> flow_m3_per_s;      ///< by branch
  std::vector<double> pressure_Pa;        ///< by node
  std::vector<BranchId> checked;          ///< branches whose check or bypass valve is shut by the pressure
  std::vector<BranchId> outside_curve;    ///< branches whose pump runs beyond its curve as known
};

/// Solves graphs of one layout: what is in the branches may change from call to call, not which nodes they join. How
/// nodes are eliminated is found once, here.
///
/// Pressures count from the node whose pressure is held; in a connected part with none, from its first node.
class NetworkSolver {
 public:
  explicit NetworkSolver(const HydronicGraph& graph);
  NetworkSolver(NetworkSolver&&) noexcept;
  NetworkSolver& operator=(NetworkSolver&&) noexcept;
  ~NetworkSolver();

  /// `warm_flow_m3_per_s`: flows to begin with, by branch; empty for a cold start.
  NetworkSolution solve(const HydronicGraph& graph, const std::vector<double>& warm_flow_m3_per_s = {},
                        const NetworkOptions& options = {});

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// One solve of one graph.
NetworkSolution solve_network(const HydronicGraph& graph, const NetworkOptions& options = {});

/// Pressure lost along a branch at a flow, and its slope. What is shut counts as nothing, and a check valve against the
/// flow as no more than its spring: whether they let water pass is the solver's business.
Loss branch_loss(const HydronicGraph& graph, BranchId branch, double flow_m3_per_s);

/// What a part of a branch loses; below zero for a pump, which adds.
struct PartLoss {
  Part part = Part::tube;
  double pressure_Pa = 0.0;
};

/// The loss of a branch part by part, in the order in which the parts first appear.
std::vector<PartLoss> losses_by_part(const HydronicGraph& graph, BranchId branch, double flow_m3_per_s);

}  // namespace slabwright
