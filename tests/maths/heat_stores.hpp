// Systems of heat stores as they are drawn for properties.
#pragma once
#include <rapidcheck.h>

#include <cmath>

#include "slabwright/maths_linear.hpp"

namespace slabwright::test {

using Vector = std::vector<double>;

inline double drawn(double low, double high) {
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

// Heat stores tied to each other and some to two inputs, a third input heating the last: what every use looks like.
inline LinearSystem drawn_system() {
  const auto n = static_cast<std::size_t>(*rc::gen::inRange(1, 7));
  LinearSystem system{MatrixRows(n, Vector(n, 0.0)), MatrixRows(n, Vector(3, 0.0))};
  Vector capacity(n);
  for (double& c : capacity) c = std::pow(10.0, drawn(4.0, 8.0));
  const auto tie = [&](std::size_t i, std::size_t j, double conductance) {
    system.of_states[i][i] -= conductance / capacity[i];
    system.of_states[i][j] += conductance / capacity[i];
  };
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const double conductance = drawn(0.1, 3000.0);
      tie(i, j, conductance);
      tie(j, i, conductance);
    }
    for (std::size_t input = 0; input < 2; ++input) {
      const double conductance = drawn(1.0, 200.0);
      system.of_states[i][i] -= conductance / capacity[i];
      system.of_inputs[i][input] = conductance / capacity[i];
    }
  }
  system.of_inputs[n - 1][2] = 1.0 / capacity[n - 1];
  return system;
}

inline Vector drawn_state(std::size_t n) {
  Vector state(n);
  for (double& x : state) x = drawn(-20.0, 40.0);
  return state;
}

inline Vector drawn_inputs() { return {drawn(-40.0, 20.0), drawn(2.0, 12.0), drawn(0.0, 2e4)}; }

}  // namespace slabwright::test
