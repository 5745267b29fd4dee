#include "plant/floor_edges.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::plant {
namespace {

/// However much the edges take, so much of the lower side stays spread.
constexpr double least_spread_share = 0.05;

/// What edges take of a cell: as their sections have it, and as the plate must have it.
struct Taken {
  double W_per_m2K = 0.0, W_per_m2 = 0.0;
  double plate_W_per_m2K = 0.0;
};

/// A strip in whole cells, so that each line of cells along the wall counts once.
struct Strip {
  double from_m, to_m;
  Taken taken;
};

std::vector<Strip> strips_of(const ColdEdge& cold, const PlanSlab& slab, double zone_m) {
  std::vector<Strip> strips;
  for (const ColdStrip& one : cold.strip) {
    const bool rim = one.from_m <= 0.0;
    const double cell_m = slab.cell_m, more = cold.length_share * one.more_W_per_mK;
    const double from_m = rim ? 0.0 : cell_m * std::round(one.from_m / cell_m);
    const double to_m = rim ? zone_m : std::max(from_m + cell_m, cell_m * std::round(one.to_m / cell_m));
    Strip strip{from_m, to_m, {}};
    strip.taken.W_per_m2K = strip.taken.plate_W_per_m2K = more / (to_m - from_m);
    strip.taken.W_per_m2 = strip.taken.W_per_m2K * one.to_degC;
    if (rim) strip.taken.plate_W_per_m2K = rim_W_per_m2K(slab, {zone_m, cold.held_m, cold.indoor_film_m2K_per_W, more});
    strips.push_back(strip);
  }
  return strips;
}

/// Cells from the edge's line to a distance, each told its own distance.
template <class Use>
void each_along(const FloorRaster& raster, const LaidEdge& edge, double reach_m, Use use) {
  const double length = distance_m(edge.from, edge.to);
  if (length <= 0.0) return;
  const Point along{(edge.to.x_m - edge.from.x_m) / length, (edge.to.y_m - edge.from.y_m) / length};
  const double low_x = std::min(edge.from.x_m, edge.to.x_m) - reach_m;
  const double high_x = std::max(edge.from.x_m, edge.to.x_m) + reach_m;
  const double low_y = std::min(edge.from.y_m, edge.to.y_m) - reach_m;
  const double high_y = std::max(edge.from.y_m, edge.to.y_m) + reach_m;
  const auto index = [&](double offset_m, std::size_t count) {
    return static_cast<std::size_t>(std::clamp(std::floor(offset_m / raster.cell_m), 0.0, static_cast<double>(count)));
  };
  const std::size_t first = index(low_x - raster.corner.x_m, raster.columns);
  const std::size_t last = std::min(raster.columns, index(high_x - raster.corner.x_m, raster.columns) + 1);
  const std::size_t top = std::min(raster.rows, index(high_y - raster.corner.y_m, raster.rows) + 1);
  for (std::size_t j = index(low_y - raster.corner.y_m, raster.rows); j < top; ++j) {
    for (std::size_t i = first; i < last; ++i) {
      const std::size_t cell = j * raster.columns + i;
      if (raster.room[cell] < 0) continue;
      const Point at = middle_of(raster, cell);
      const double x = at.x_m - edge.from.x_m, y = at.y_m - edge.from.y_m;
      const double ahead_m = x * along.x_m + y * along.y_m, in_m = y * along.x_m - x * along.y_m;
      if (ahead_m >= 0.0 && ahead_m < length && in_m >= 0.0 && in_m < reach_m) use(cell, in_m);
    }
  }
}

std::vector<Taken> taken_by(const std::vector<LaidEdge>& edges, const FloorPlanCells& cells, double thickness_m) {
  std::vector<Taken> taken(cells.raster.room.size());
  const double cell_m = cells.raster.cell_m;
  const double zone_m = cell_m * std::max(1.0, std::round(thickness_m / cell_m));
  for (const LaidEdge& edge : edges) {
    const std::vector<Strip> strips = strips_of(edge.cold, cells.slab, zone_m);
    double reach_m = 0.0;
    for (const Strip& strip : strips) reach_m = std::max(reach_m, strip.to_m);
    each_along(cells.raster, edge, reach_m, [&](std::size_t cell, double in_m) {
      for (const Strip& strip : strips) {
        if (in_m < strip.from_m || in_m >= strip.to_m) continue;
        taken[cell].W_per_m2K += strip.taken.W_per_m2K;
        taken[cell].W_per_m2 += strip.taken.W_per_m2;
        taken[cell].plate_W_per_m2K += strip.taken.plate_W_per_m2K;
      }
    });
  }
  return taken;
}

}  // namespace

void share_out_lower_side(FloorPlanCells& cells, const Section& section, const std::vector<LaidEdge>& edges) {
  if (edges.empty() || section.underside_W_per_m2K <= 0.0) return;
  const std::vector<Taken> taken = taken_by(edges, cells, section.cover_above_m + section.cover_below_m);
  double floor_number = 0.0, all = 0.0, all_heat = 0.0;
  for (std::size_t i = 0; i < taken.size(); ++i) {
    if (cells.raster.room[i] < 0) continue;
    floor_number += 1.0;
    all += taken[i].W_per_m2K;
    all_heat += taken[i].W_per_m2;
  }
  if (floor_number <= 0.0 || all <= 0.0) return;
  const double even = 1.0 / (cells.slab.down_m2K_per_W + 1.0 / section.underside_W_per_m2K);
  const double part = std::min(1.0, (1.0 - least_spread_share) * even * floor_number / all);
  const double rest = even - part * all / floor_number;
  const double rest_degC = (even * section.below_degC - part * all_heat / floor_number) / rest;
  const double below = 1.0 / (1.0 / rest - cells.slab.down_m2K_per_W);
  for (std::size_t i = 0; i < taken.size(); ++i) {
    if (cells.raster.room[i] < 0) continue;
    PlanCell& cell = cells.floor.cell[i];
    cell.below_W_per_m2K = below;
    cell.below_degC = rest_degC;
    if (taken[i].W_per_m2K <= 0.0) continue;
    cell.edge_W_per_m2K = part * taken[i].plate_W_per_m2K;
    cell.edge_degC = taken[i].W_per_m2 / taken[i].W_per_m2K;
  }
}

}  // namespace slabwright::plant
