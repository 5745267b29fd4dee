// How tube is fed to the cells of a plan and read from them: quadratic splines over three by three cells, so that a
// line's answer hardly depends on where among the cells it lies.
#pragma once
#include <cmath>

namespace slabwright::conduction {

/// Its wave at half the phase from one cell to the next: a spline is three boxes folded together.
inline double plan_shape_wave(double half_phase) {
  if (std::abs(half_phase) < 1e-9) return 1.0;
  const double box = std::sin(half_phase) / half_phase;
  return box * box * box;
}

/// Of a straight line fed and read, on average over its places: the spline of sixth order at its middle, 11/20.
inline constexpr double plan_own_ratio = 0.55;

/// Shares of the cell before, at and after `place`, which lies `off` (-0.5 to 0.5) from the middle of its own.
struct PlanShape {
  double before, at, after;
};
inline PlanShape plan_shape(double off) {
  return {0.5 * (0.5 - off) * (0.5 - off), 0.75 - off * off, 0.5 * (0.5 + off) * (0.5 + off)};
}

}  // namespace slabwright::conduction
