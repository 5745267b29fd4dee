// The linear system of one Newton round: what flows into each node flows out of it.
#pragma once
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <cstdint>
#include <vector>

#include "hydraulics/elimination.hpp"

namespace slabwright {

/// Every branch is a straight line here: Q = source + conductance (p_from - p_to). Nodes with two neighbours go by
/// adding resistances in series and conductances in parallel, which only ever adds, multiplies and divides positive
/// numbers: no digit is lost, whatever wide mains and narrow loops stand side by side (Grassmann, Taksar and Heyman
/// 1985 for Markov chains). What is left, in rings and reverse returns, is symmetric and positive definite and goes to
/// the package's sparse Cholesky. How nodes go depends on the layout alone and is found once.
class NodeEquations {
 public:
  NodeEquations(std::size_t nodes, const std::vector<Ends>& branches);

  /// Which pressures are given, for all rounds until told anew: those the graph holds, and zero at those that are only
  /// `held` here. Every part that open branches join needs one.
  void give(const std::vector<Node>& nodes, const std::vector<bool>& held);

  /// A round: begin, add each open branch, solve, read. `solve` is false where the system has no solution in numbers;
  /// the pressures then stay as they were.
  void begin();
  void add(std::size_t branch, double conductance, double source_m3_per_s) {
    const Place& at = places_[branch];
    rows_[at.from].inflow -= source_m3_per_s;
    rows_[at.to].inflow += source_m3_per_s;
    if (at.beside_given)
      add_beside_given(at, conductance);
    else
      conductance_[at.slot] += conductance;
  }
  bool solve();

  double pressure(std::size_t node) const { return rows_[row_[node]].pressure; }
  double drop(std::size_t branch) const {
    return rows_[places_[branch].from].pressure - rows_[places_[branch].to].pressure;
  }

 private:
  using Matrix = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;
  struct Place {
    std::uint32_t from = 0, to = 0, slot = 0;  ///< rows, and the slot of the link
    bool beside_given = false;                 ///< the pressure of a node at its ends is given
  };
  struct Row {
    double to_given = 0.0;  ///< conductance towards given pressures
    double inflow = 0.0;
    double pressure = 0.0;
  };
  struct GivenAt {
    std::uint32_t row = 0;
    double amount = 0.0;
  };
  void prepare_core(int rows);
  void add_beside_given(const Place& at, double conductance);
  bool eliminate_steps();
  bool solve_core();
  void substitute_back();

  std::vector<std::uint32_t> row_;  ///< by node
  std::vector<bool> held_;          ///< by row; the pressure of a held row stands in it
  std::vector<GivenAt> holds_, demands_;
  std::vector<Place> places_;  ///< by branch
  std::vector<Step> steps_;
  std::vector<CoreLink> core_;
  std::vector<Row> rows_;                        ///< one more than nodes: steps with a neighbour too few point there
  std::vector<double> conductance_;              ///< by slot
  std::vector<std::size_t> diagonal_, between_;  ///< where among the core's values a row and a link stand
  Matrix core_matrix_;                           ///< upper triangle
  Eigen::VectorXd core_inflow_;
  Eigen::SimplicialLDLT<Matrix, Eigen::Upper, Eigen::NaturalOrdering<int>> factors_;
};

}  // namespace slabwright
