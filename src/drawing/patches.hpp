// Which floor belongs to which loop: the nearest tube's, on a raster.
#pragma once
#include <cstddef>
#include <vector>

#include "slabwright/drawing_plan.hpp"

namespace slabwright {

/// Square cells over the box round the floor. `loop` holds the row of the loop whose tube is nearest, -1 where none is
/// near.
struct Raster {
  Point low;
  double cell_m = 0.0;
  int columns = 0, rows = 0;
  std::vector<int> loop;

  int at(int column, int row) const {
    if (column < 0 || row < 0 || column >= columns || row >= rows) return -1;
    return loop[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column)];
  }
  Point middle(int column, int row) const {
    return {low.x_m + (column + 0.5) * cell_m, low.y_m + (row + 0.5) * cell_m};
  }
};

/// Each cell's nearest loop, no farther than `reach_m`. Patches run on beyond the walls, to where a clip ends them.
Raster nearest_loops(const DrawnFloor& plan, double cell_m, double reach_m);
/// The same with nobody's cells off the floor.
Raster cut_to(const Floor& floor, Raster raster);

/// The outlines of one loop's cells, steps along slanting borders smoothed away.
std::vector<Polygon> patch_rings(const Raster& raster, int loop);

/// Pairs of loops whose patches share a border, the lower row first.
std::vector<std::pair<int, int>> neighbours(const Raster& raster);

/// A number below `colours` for each loop, unlike for neighbours where that can be done at all.
std::vector<int> unlike(std::size_t loops, const std::vector<std::pair<int, int>>& pairs, int colours);

/// A place in a patch, with the radius of the circle that fits there.
struct WidePlace {
  Point middle;
  double radius_m = 0.0;
};
/// Of each loop's patch some places, the widest first; among those wider than enough, what is nearest to its middle.
std::vector<std::vector<WidePlace>> wide_places(const Raster& raster, std::size_t loops, double enough_m);

}  // namespace slabwright
