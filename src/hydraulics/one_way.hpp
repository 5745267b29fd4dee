// Which check valves and bypass valves let water pass.
#pragma once
#include <vector>

#include "hydraulics/newton.hpp"

namespace slabwright {

/// The one-way branches that stand wrong, by number: those open through which water runs back, and those shut that the
/// pressure would open. Pressures that have not converged open nothing; but water that runs back may be why they have
/// not (a spring in a round without resistance).
std::vector<std::size_t> standing_wrong(const Task& task, const NodeEquations& equations, const NetworkOptions& options,
                                        Stop stop);

/// Turns valves until none stands wrong. All that stand wrong turn together while that leaves fewer than ever before,
/// or at least has not failed to for long; after that only the first of them, which cannot go round in circles (block
/// pivoting: Judice and Pires 1994, Computers and Operations Research 21, from memory). Where water is taken out, one
/// at a time from the start: several that turn together could cut a demand off. One after the other they may do so too,
/// and are opened again then: a bypass that pumps cannot open, thought open, drives water back through all of them.
class Turns {
 public:
  explicit Turns(const Task& task);
  void turn(Task& task, const std::vector<std::size_t>& wrong);

 private:
  std::size_t fewest_;
  int patience_;
};

}  // namespace slabwright
