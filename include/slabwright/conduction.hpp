// Steady heat flow in a flat section, per metre of its third direction, as weights of its drivers.
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

/// Axis-parallel, of some length, in either direction.
struct FieldSegment {
  FieldPoint from, to;
};

/// Later rectangles cover earlier ones. Where no rectangle lies there is nothing, and no heat passes.
struct MaterialRectangle {
  double x0_m, x1_m, y0_m, y1_m;  ///< x0 < x1, y0 < y1
  double conductivity_W_per_mK;   ///< above 0
};

/// What the section answers to, linearly: temperatures in °C and heat let free inside it.
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

/// A temperature on the surface itself, or anywhere inside; linear between two drivers where they differ.
struct FixedTemperature {
  FieldDriverId at_from, at_to;
};

/// Lies on material over its whole length, a film on the outside of it. No two may cover the same place.
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

/// Heat let free along a line through a point; its driver is in W per m of line. The field near it is right from
/// about two cells away; at the point itself the temperature depends on the cell and means nothing.
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

/// Cells start small at every named line (edge of a material, end of a stretch, source) and grow away from it.
/// An outermost line counts as named only where a stretch ends on its way: elsewhere the field is smooth there.
struct FieldOptions {
  /// The field has corners of the kind r^(1/2) where a film ends; with 5 mm at them the tabulated weights of floor
  /// edges are met within 0.001 inside the slab and 0.003 on the face line.
  double first_cell_m = 0.005;
  /// Above 1.3 the smooth part of the field loses more than the corners do; below 1.15 cells are spent for nothing.
  double growth = 1.2;
  /// Two metres is a seventh of the usual ground depth, where the field is close to linear.
  double largest_cell_m = 2.0;
  /// Solves once more on every second line. Costs a quarter more.
  bool with_error_estimate = false;
};

/// What each driver does by itself, the others at 0.
struct UnitResponses {
  /// [point][driver]: K per K for temperatures (they add up to 1), K per W/m2 or per W/m for heat.
  std::vector<std::vector<double>> weights;
  /// [point][driver]: the change from the grid of every second line to the full one, which is at least the error left
  /// for any order of convergence from one upward. Empty unless asked for.
  std::vector<std::vector<double>> weight_errors;
  /// [boundary][driver]: heat entering through a stretch, W/m per K for temperatures, W/m per W/m2 or W/m for heat.
  std::vector<std::vector<double>> heat_in;
  /// Largest over the drivers: heat that enters and does not leave, as a share of all that enters.
  double imbalance_share = 0.0;
  std::size_t cells = 0;
};

/// Solves the section by finite volumes around the corners of a graded rectangular grid: surfaces, material edges and
/// named points carry temperatures of their own, so nothing is extrapolated to a surface, and unlike materials
/// meet between volumes in series and parallel exactly as they lie. Between grid lines weights are interpolated
/// linearly. Broken contracts (std::logic_error): a rectangle or segment without size or askew, a stretch or source off
/// the material, two stretches on one place, a driver of the wrong kind, a piece of material that no temperature
/// reaches, a watched point off the material.
UnitResponses unit_responses(const FieldSection& section, const std::vector<FieldPoint>& watched,
                             const FieldOptions& options = {});

}  // namespace slabwright
