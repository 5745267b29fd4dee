// Division by conductance + rate * capacity, for steps, steady fields and expansions about a rate.
#pragma once
#include <Eigen/Dense>
#include <Eigen/SparseCholesky>
#include <cstddef>
#include <map>
#include <memory>

#include "conduction/assembly.hpp"

namespace slabwright::conduction {

/// Keeps its factorisations: a step of one size costs one.
class ShiftedSystem {
 public:
  ShiftedSystem(const Assembly& assembly, const Eigen::VectorXd& capacity);

  Eigen::MatrixXd solve(double rate_per_s, const Eigen::MatrixXd& right);
  Eigen::MatrixXd conductance_times(const Eigen::MatrixXd& temperatures) const;
  std::size_t factorisations() const { return factorisations_; }

 private:
  // The unknowns come in an order of their own already.
  using Cholesky = Eigen::SimplicialLLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>>;
  const Cholesky& factor(double rate_per_s);

  const Eigen::SparseMatrix<double>& conductance_;
  const Eigen::VectorXd& capacity_;
  std::map<double, std::unique_ptr<Cholesky>> factors_;
  std::size_t factorisations_ = 0;
};

}  // namespace slabwright::conduction
