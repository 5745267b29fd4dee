#include "conduction/solve.hpp"

#include <Eigen/SparseCholesky>

#include "slabwright/contract.hpp"

namespace slabwright::conduction {

Eigen::MatrixXd steady_temperatures(const Assembly& assembly) {
  // The unknowns come in an order of their own already.
  using Cholesky = Eigen::SimplicialLLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>>;
  Eigen::MatrixXd temperatures = assembly.fixed_temperatures;
  if (assembly.unknown_nodes.empty()) return temperatures;
  const Cholesky factor(assembly.conductance);
  expects(factor.info() == Eigen::Success, "conduction: the conductance matrix is not positive definite");
  const Eigen::MatrixXd unknown = factor.solve(assembly.drive);
  for (std::size_t u = 0; u < assembly.unknown_nodes.size(); ++u) {
    temperatures.row(static_cast<Eigen::Index>(assembly.unknown_nodes[u])) = unknown.row(static_cast<Eigen::Index>(u));
  }
  return temperatures;
}

}  // namespace slabwright::conduction
