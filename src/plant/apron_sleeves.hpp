// The floor before manifolds: how warm it gets, and what sleeves on leaders do about it.
#pragma once
#include "plant/floor_solve.hpp"

namespace slabwright::plant {

/// A row for each apron of `laid`. `field` is the floor solved as it is laid.
std::vector<ApronField> aprons_of(const Plant& plant, const FloorPlanCells& cells, const LaidFloor& laid,
                                  const PlanField& field);

/// The warmest place of the face among pieces and cells that `counts(place)` holds for; absent where it holds for none.
template <class Counts>
std::optional<FloorSpot> warmest_where(const FloorPlanCells& cells, const PlanField& field, const Counts& counts) {
  std::optional<FloorSpot> warmest;
  const auto take = [&](Point where, std::size_t cell, double top_degC) {
    const double face = face_degC(cells, cell, top_degC);
    if (warmest && face <= warmest->surface_degC) return;
    if (counts(where)) warmest = FloorSpot{where.x_m, where.y_m, face};
  };
  for (const PlanTubeState& tube : field.tube) {
    for (const PlanPiece& piece : tube.piece) {
      const Point where{piece.where.x_m, piece.where.y_m};
      const std::size_t cell = cell_at(cells.raster, where);
      if (cell < cells.raster.room.size() && cells.raster.room[cell] >= 0) take(where, cell, piece.over_degC);
    }
  }
  for (std::size_t i = 0; i < cells.raster.room.size(); ++i) {
    if (cells.raster.room[i] >= 0) take(middle_of(cells.raster, i), i, field.top_degC[i]);
  }
  return warmest;
}

}  // namespace slabwright::plant
