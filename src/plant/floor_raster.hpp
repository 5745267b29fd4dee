// Rooms as cells, and means over squares of cells.
#pragma once
#include <optional>

#include "slabwright/plant_floor_field.hpp"

namespace slabwright::plant {

/// Larger cells where there would be more than `most_cells`. Absent where neither rooms nor slab have a shape.
std::optional<FloorRaster> raster_of(const Design& design, double cell_m, double most_cells);

/// The cell that a point lies in; the number of cells where it lies in none.
std::size_t cell_at(const FloorRaster& raster, Point where);
Point middle_of(const FloorRaster& raster, std::size_t cell);

/// [cell]: means over squares of four cells' width, half of the outermost counted; of floor only.
std::vector<double> wide_mean(const FloorRaster& raster, const std::vector<double>& of_cell);

}  // namespace slabwright::plant
