// Ties, sleeves, foam.
#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/sitework_materials.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double wide_m = 1.0;

}  // namespace

LayingPractice laying_practice(System system) {
  if (system == System::si) return {0.6, 0.65};
  return {2.0 * foot_m, 2.0 * foot_m};
}

int ties_along(const Path& path, double tie_m) {
  expects(tie_m > 0.0, "ties_along: ties have a distance");
  // A straight piece that is a whole number of ties long to rounding has no tie more.
  constexpr double rounding_ratio = 1e-9;
  int ties = 0;
  for (const Piece& piece : path) {
    if (piece.radius_m > 0.0 && piece.radius_m < wide_m) continue;
    const double length = length_m(piece);
    if (length <= 0.0) continue;
    ties += length < 0.5 * tie_m ? 1 : 1 + static_cast<int>(std::ceil(length / tie_m - rounding_ratio));
  }
  return ties;
}

int ties_by_length(double length_m, double patch_m2, double spacing_m, double tie_m) {
  expects(tie_m > 0.0 && spacing_m > 0.0, "ties_by_length: ties and rows have a distance");
  const double half_turns = std::round(std::sqrt(std::max(patch_m2, 0.0)) / spacing_m);
  return static_cast<int>(std::ceil(std::max(length_m, 0.0) / tie_m) + half_turns);
}

}  // namespace slabwright
