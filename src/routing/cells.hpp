// The floor as cells about two spacings wide: a loop's tube passes each of its cells along four quarter places.
#pragma once
#include <cstdint>
#include <vector>

#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// A cell, or a place in a row of them, as a list counts.
inline std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// East, north, west, south: 0 to 3. A turn to the left adds one.
using Way = int;
inline Way opposite(Way way) { return (way + 2) % 4; }

enum class Kind : std::uint8_t {
  outside,  ///< not floor
  blocked,  ///< floor where the tube of a cell does not fit
  free,
  apron
};

struct Cells {
  int columns = 0, rows = 0;
  std::vector<double> x_m, y_m;            ///< lines between cells; one more than columns and rows
  std::vector<double> tube_x_m, tube_y_m;  ///< the tubes of each column and row: two between its lines
  std::vector<Kind> kind;
  std::vector<std::uint8_t> open;   ///< a bit for each way: tube may pass to that neighbour
  std::vector<std::uint8_t> joint;  ///< the same: a joint lies between; empty where no cells have one

  std::vector<std::uint8_t> across;  ///< a bit for each way: it leads across a band; empty where there is none
  std::vector<double> loss;          ///< heat lost for each of the rest; empty where all floor is alike

  int size() const { return columns * rows; }
  int column(int cell) const { return cell % columns; }
  int row(int cell) const { return cell / columns; }
  int at(int i, int j) const { return i < 0 || j < 0 || i >= columns || j >= rows ? -1 : j * columns + i; }
  int next(int cell, Way way) const {
    const int i = column(cell) + (way == 0) - (way == 2), j = row(cell) + (way == 1) - (way == 3);
    return at(i, j);
  }
  bool passes(int cell, Way way) const { return (open[static_cast<std::size_t>(cell)] >> way & 1) != 0; }
  bool over_joint(int cell, Way way) const {
    return !joint.empty() && (joint[static_cast<std::size_t>(cell)] >> way & 1) != 0;
  }
  Kind is(int cell) const { return cell < 0 ? Kind::outside : kind[static_cast<std::size_t>(cell)]; }
  double width_m(int cell) const;
  double depth_m(int cell) const;
  /// Tube in a cell before its corners are rounded: exact for square cells, whatever the tree.
  double tube_m(int cell) const { return width_m(cell) + depth_m(cell); }
  Point middle(int cell) const {
    const Point a = quarter(cell, 0), b = quarter(cell, 2);
    return {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
  }
  /// What a cell counts for when floor is shared out: its tube, times what the floor there loses.
  double share_m(int cell) const { return tube_m(cell) * (loss.empty() ? 1.0 : loss[static_cast<std::size_t>(cell)]); }
  /// Quarter places: south-west, south-east, north-east, north-west: 0 to 3.
  Point quarter(int cell, int corner) const;
};

/// A task seen from its manifold: that lies at zero and faces north.
LayoutTask seen_from_manifold(const LayoutTask& task);
/// Back from there.
Point seen_from_outside(Point point, const LayoutTask& task);

/// Whether a straight tube line keeps the clearances, and off joints where it lies along one. It looks at distances
/// only: a line wholly outside passes.
bool keeps_clear(const LayoutTask& task, Point a, Point b);

/// Whether all lines within the box of a and b are sure to keep clear; quick, and false where it takes a closer look.
bool is_far_from_all(const LayoutTask& task, Point a, Point b);

/// How far cells may be squeezed or stretched to fill what lies between two walls.
struct Fit {
  double squeezed = 0.96, stretched = 1.08;
  bool about_axis = false;  ///< of a symmetric task: columns are their own mirror image, none of them on the axis
};

/// Cells of a task seen from its manifold. Lines fall so that the outermost tubes lie at the clearance from the walls.
Cells cells_of(const LayoutTask& task, const Fit& fit);

}  // namespace slabwright::routing
