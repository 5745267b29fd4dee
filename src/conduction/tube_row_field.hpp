// The field around a row of tubes as a sum of multipoles: what each makes of itself at the tube, and at named places.
#pragma once
#include <Eigen/Core>
#include <cstddef>

#include "conduction/tube_row_sides.hpp"

namespace slabwright::conduction {

/// Rows of RowField::places.
namespace row_place {
constexpr Eigen::Index heat_up = 0, floor_mean = 1, floor_over = 2, floor_mid = 3, plane_mid = 4, under_mean = 5,
                       under_tube = 6, under_mid = 7, count = 8;
}

/// Causes are columns: heat of the tube (W/m), then multipoles n = 1, 2, ... as temperature cos(n phi) (radius / r)^n,
/// phi from straight up; then the temperatures above and below, in two columns of their own.
/// With fewer multipoles the leading rows and columns hold as they are.
struct RowField {
  /// [harmonic m][cause]: temperature cos(m phi) at the tube's outer face, all but the multipoles' own. Row 0 is the
  /// mean and has the heat's own part in it.
  Eigen::MatrixXd harmonics;
  Eigen::MatrixXd harmonics_of_ends;  ///< [harmonic m][above, below]
  /// [place][cause]: W/m upward, temperatures.
  Eigen::MatrixXd places;
  Eigen::MatrixXd places_of_ends;  ///< [place][above, below]
  double spacing_m;
};

RowField field_of(const TubeRow& row, const RowSides& sides, std::size_t multipoles);

}  // namespace slabwright::conduction
