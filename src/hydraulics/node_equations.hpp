// The linear system of one Newton round: what flows into each node flows out of it.
#pragma once
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <vector>

namespace slabwright {

struct Ends {
  std::size_t from = 0;
  std::size_t to = 0;
  friend bool operator==(const Ends& a, const Ends& b) { return a.from == b.from && a.to == b.to; }
};

/// A branch is a conductance between its two nodes, so the matrix is symmetric, and positive definite once every
/// connected part has a node whose pressure is given. The pattern is ordered (minimum degree) and analysed once; nodes
/// with given pressure and branches that carry nothing keep their places in it, with ones and zeros there.
class NodeEquations {
 public:
  NodeEquations(std::size_t nodes, const std::vector<Ends>& branches);

  /// Finds the pressures from the conductances by branch. `right` holds the pressure of a node that is held, and the
  /// net flow into any other. False where the system cannot be solved in numbers; the pressures then stay as they were.
  bool solve(const std::vector<double>& conductance, const std::vector<bool>& held, const std::vector<double>& right);

  double pressure(std::size_t node) const { return pressures_[node]; }

 private:
  using Matrix = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;
  double& value(std::size_t slot) { return matrix_.valuePtr()[slot]; }
  std::size_t slot_of(int row, int other_row) const;

  std::vector<Ends> branches_;
  std::vector<int> row_;                         ///< by node: its row, in the order of elimination
  std::vector<std::size_t> diagonal_, between_;  ///< where among the matrix's values a node and a branch stand
  Matrix matrix_;                                ///< upper triangle
  Eigen::VectorXd flow_in_;                      ///< by row
  std::vector<double> pressures_;                ///< by node
  Eigen::SimplicialLDLT<Matrix, Eigen::Upper, Eigen::NaturalOrdering<int>> factors_;
};

}  // namespace slabwright
