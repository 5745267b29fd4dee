// Counts as the matrix package's indices.
#pragma once
#include <Eigen/Core>
#include <cstddef>

namespace slabwright::conduction {

using Index = Eigen::Index;
inline Index at(std::size_t number) { return static_cast<Index>(number); }

/// In a list of unknowns by node: this node's temperature is known.
inline constexpr Index known = -1;

}  // namespace slabwright::conduction
