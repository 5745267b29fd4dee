// A plant's floor as a plan of cells and tubes, solved.
#pragma once
#include "plant/floor_raster.hpp"
#include "slabwright/conduction_plan.hpp"

namespace slabwright::plant {

/// What stays the same while films and sleeves are tried.
struct FloorPlanCells {
  FloorRaster raster;
  PlanSlab slab;
  PlanFloor floor;
  std::vector<double> face_share;  ///< [cell]: the face's rise over the room, of the top face's
  std::vector<PlanTube> tube;      ///< a row for each loop, without sleeves
  double sleeve_mK_per_W = 0.0;
};

/// With each room's mean film.
FloorPlanCells cells_of(const Plant& plant, const Conditions& conditions, const OperatingPoint& point,
                        const LaidFloor& laid, FloorRaster raster);

/// Films anew, from the heat of each place.
void set_films(FloorPlanCells& cells, const Section& section, const std::vector<double>& up_W);

PlanField solve(const FloorPlanCells& cells, const std::vector<TubeOnFloor>& sleeves, const PlanOptions& options);

/// The floor's own face for the plan's top face, at a cell.
double face_degC(const FloorPlanCells& cells, std::size_t cell, double top_degC);

}  // namespace slabwright::plant
