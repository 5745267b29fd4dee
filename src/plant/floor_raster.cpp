#include "plant/floor_raster.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::plant {
namespace {

Polygon polygon_of(const FloorShape& shape) {
  Polygon polygon;
  for (const Place& corner : shape.outline) polygon.push_back({corner.x_m, corner.y_m});
  return polygon;
}

/// A row for each room; without corners where it has no shape of its own. One room alone has the slab's.
std::vector<Polygon> outlines(const Design& design) {
  std::vector<Polygon> rooms;
  const FloorShape slab = floor_shape(design.slab);
  for (const Room& room : design.room) {
    const FloorShape own = floor_shape(room);
    // A size without a place is a place only where it stands alone.
    const bool placed = !room.outline.empty() || design.room.size() == 1;
    rooms.push_back(placed ? polygon_of(own.shape_known ? own : slab) : Polygon());
  }
  return rooms;
}

/// Cells of one row whose middles lie in a polygon: between its edges' crossings of the row, in pairs.
void fill(FloorRaster& raster, const Polygon& polygon, int room) {
  std::vector<double> at;
  for (std::size_t j = 1; j + 1 < raster.rows; ++j) {
    const double y = raster.corner.y_m + raster.cell_m * (static_cast<double>(j) + 0.5);
    at.clear();
    for (std::size_t n = 0; n < polygon.size(); ++n) {
      const Point a = polygon[n], b = polygon[(n + 1) % polygon.size()];
      if ((a.y_m > y) != (b.y_m > y)) at.push_back(a.x_m + (y - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m));
    }
    std::sort(at.begin(), at.end());
    for (std::size_t n = 0; n + 1 < at.size(); n += 2) {
      const auto column = [&](double x) { return std::ceil((x - raster.corner.x_m) / raster.cell_m - 0.5); };
      for (double i = column(at[n]); i < column(at[n + 1]); i += 1.0) {
        int& cell = raster.room[j * raster.columns + static_cast<std::size_t>(i)];
        if (cell < 0) cell = room;
      }
    }
  }
}

std::vector<double> mean_along(const FloorRaster& raster, const std::vector<double>& of_cell, std::size_t step) {
  constexpr double shares[] = {0.5, 1.0, 1.0, 1.0, 0.5};
  const std::size_t cells = of_cell.size();
  std::vector<double> means(cells, 0.0);
  for (std::size_t i = 0; i < cells; ++i) {
    if (raster.room[i] < 0) continue;
    double sum = 0.0, weight = 0.0;
    for (std::size_t n = 0; n < 5; ++n) {
      // A ring without floor goes round: what runs over a row's end meets none.
      if (i + n * step < 2 * step || i + n * step - 2 * step >= cells) continue;
      const std::size_t other = i + n * step - 2 * step;
      if (raster.room[other] < 0) continue;
      sum += shares[n] * of_cell[other];
      weight += shares[n];
    }
    means[i] = sum / weight;
  }
  return means;
}

}  // namespace

std::optional<FloorRaster> raster_of(const Design& design, double cell_m, double most_cells) {
  const std::vector<Polygon> rooms = outlines(design);
  std::vector<Point> corners;
  for (const Polygon& room : rooms) corners.insert(corners.end(), room.begin(), room.end());
  if (corners.empty()) return std::nullopt;
  Point low = corners.front(), high = corners.front();
  for (const Point corner : corners) {
    low = {std::min(low.x_m, corner.x_m), std::min(low.y_m, corner.y_m)};
    high = {std::max(high.x_m, corner.x_m), std::max(high.y_m, corner.y_m)};
  }
  cell_m = std::max(cell_m, std::sqrt((high.x_m - low.x_m) * (high.y_m - low.y_m) / most_cells));
  FloorRaster raster;
  raster.cell_m = cell_m;
  const auto count = [&](double length_m) { return std::ceil(length_m / cell_m - 1e-6) + 2.0; };
  raster.columns = static_cast<std::size_t>(count(high.x_m - low.x_m));
  raster.rows = static_cast<std::size_t>(count(high.y_m - low.y_m));
  // In the middle, so that a floor that is its own mirror image has such cells.
  raster.corner = {0.5 * (low.x_m + high.x_m - cell_m * static_cast<double>(raster.columns)),
                   0.5 * (low.y_m + high.y_m - cell_m * static_cast<double>(raster.rows))};
  raster.room.assign(raster.columns * raster.rows, -1);
  for (std::size_t i = 0; i < rooms.size(); ++i) {
    if (rooms[i].size() >= 3) fill(raster, rooms[i], static_cast<int>(i));
  }
  return raster;
}

std::size_t cell_at(const FloorRaster& raster, Point where) {
  const double i = std::floor((where.x_m - raster.corner.x_m) / raster.cell_m);
  const double j = std::floor((where.y_m - raster.corner.y_m) / raster.cell_m);
  const bool on =
      i >= 0.0 && j >= 0.0 && i < static_cast<double>(raster.columns) && j < static_cast<double>(raster.rows);
  return on ? static_cast<std::size_t>(j) * raster.columns + static_cast<std::size_t>(i) : raster.room.size();
}

Point middle_of(const FloorRaster& raster, std::size_t cell) {
  return {raster.corner.x_m + raster.cell_m * (static_cast<double>(cell % raster.columns) + 0.5),
          raster.corner.y_m + raster.cell_m * (static_cast<double>(cell / raster.columns) + 0.5)};
}

std::vector<double> wide_mean(const FloorRaster& raster, const std::vector<double>& of_cell) {
  return mean_along(raster, mean_along(raster, of_cell, 1), raster.columns);
}

}  // namespace slabwright::plant
