// Steady heat flow in a flat section, per metre of its third direction, as weights of what drives it.
#pragma once
#include <cstddef>
#include <string>
#include <variant>
#include <vector>

#include "slabwright/ids.hpp"

namespace slabwright {

struct FieldPoint {
  double x_m, y_m;
};

/// Along x or along y, in either direction.
struct FieldSegment {
  FieldPoint from, to;
};

/// Later rectangles cover earlier ones. Where no rectangle lies there is nothing, and no heat passes.
struct MaterialRectangle {
  double x0_m, x1_m, y0_m, y1_m;  ///< x0 < x1, y0 < y1
  double conductivity_W_per_mK;   ///< above 0
  /// Density times specific heat; what stores no heat follows at once. Steady fields do not look at it.
  double heat_capacity_J_per_m3K = 0.0;
};

/// What the section answers to, linearly: temperatures (°C) and heat let free inside it.
struct FieldDriver {
  enum class Kind { temperature, heat };
  std::string name;
  Kind kind;
};
using FieldDriverId = Id<struct FieldDriverTag>;  ///< row in FieldSection::drivers

/// A temperature beyond a surface film.
struct SurfaceFilm {
  double coefficient_W_per_m2K;  ///< above 0
  FieldDriverId driver;
};

/// The temperature of a surface, or of a plane inside; linear from one driver to the other where they differ.
struct FixedTemperature {
  FieldDriverId at_from, at_to;
};

/// Lies on material over its whole length, a film on the outside of it. No two may lie on one place.
/// Whatever no stretch covers passes no heat.
struct BoundaryStretch {
  FieldSegment where;
  std::variant<SurfaceFilm, FixedTemperature> condition;
};

/// Heat let free evenly along a plane; its driver is in W per m2 of plane.
struct HeatPlane {
  FieldSegment where;
  FieldDriverId driver;
};

/// Heat let free along a line through a point; its driver is in W per m of line. Temperatures are right from a few
/// cells away onward; at the point itself they grow without limit as cells shrink, and mean nothing.
struct HeatLine {
  FieldPoint where;
  FieldDriverId driver;
};

struct FieldSection {
  std::vector<MaterialRectangle> materials;
  std::vector<BoundaryStretch> boundaries;
  std::vector<HeatPlane> planes;
  std::vector<HeatLine> lines;
  std::vector<FieldDriver> drivers;
};

/// Cells start small at every named line (side of a material, end of a stretch, source) and grow away from it.
/// The outermost lines get small cells only where a stretch ends on its way along them or a line of heat lies on them:
/// elsewhere the field is smooth there.
struct FieldOptions {
  /// Decides at corners and at ends of films, where the field is not smooth: weights of a floor's surface beside the
  /// end of its film are within 0.0006 with 5 mm, within 0.002 with 10 mm.
  double first_cell_m = 0.005;
  /// Decides in the ground: the heat from a room is 0.05 % high with 1.1, 0.2 % with 1.2, 0.35 % with 1.3.
  double growth = 1.2;
  /// Against the usual 15 m of ground; 2 m would cost another 0.03 % of the heat.
  double largest_cell_m = 1.0;
  /// Solves once more on every second line, for a quarter more time.
  bool with_error_estimate = false;
};

/// What each driver does alone, the others at 0.
struct UnitResponses {
  /// [point][driver]: K per K for temperatures (these add up to 1), K per W/m2 or per W/m for heat.
  std::vector<std::vector<double>> weights;
  /// [boundary][driver]: heat entering through a stretch, W/m per K for temperatures, W/m per W/m2 or W/m for heat.
  std::vector<std::vector<double>> heat_in;
  /// Of both, in the same shapes: the change from every second line to all lines, an estimate and no bound. What is
  /// left after it is about as much where the field has corners, a third where it is smooth. Empty unless asked for.
  std::vector<std::vector<double>> weight_errors, heat_in_errors;
  /// Heat that enters and does not leave, as a share of all that enters: the worst driver. Rounding, about 1e-12.
  double imbalance_share = 0.0;
  std::size_t unknowns = 0;  ///< temperatures solved for
};

/// Solves the section by finite volumes around the crossings of a graded rectangular grid. Surfaces, sides of materials
/// and ends of stretches have temperatures of their own there, so that nothing is extrapolated to a surface; between
/// grid lines weights are interpolated linearly within one material. conduction_within.hpp refines to a tolerance.
/// Broken contracts (std::logic_error): a rectangle or segment without size, a segment askew, a stretch or source off
/// the material, a film inside it, two stretches on one place, a driver of the wrong kind, a piece of material that no
/// temperature reaches, a watched point off the material, a number that is not finite.
UnitResponses unit_responses(const FieldSection& section, const std::vector<FieldPoint>& watched,
                             const FieldOptions& options = {});

}  // namespace slabwright
