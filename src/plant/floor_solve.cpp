#include "plant/floor_solve.hpp"

#include <algorithm>
#include <cmath>

#include "plant/floor_edges.hpp"
#include "slabwright/handbook_floor_film.hpp"

namespace slabwright::plant {
namespace {

/// Bends as straight lines that leave them by this: far less than a cell, and short enough for its pieces.
constexpr double sag_m = 0.002;

/// What lies over the top face: bare floor and mats side by side, as one coefficient that gives the same heat.
struct Over {
  double above_W_per_m2K;
  double face_share;  ///< of the rise of a top face under that coefficient, the rise of the bare floor's own face
};

Over over(const Section& section, double film_W_per_m2K, double up_m2K_per_W) {
  const double bare = 1.0 / film_W_per_m2K + section.covering_m2K_per_W;
  const double from_bare = 1.0 / (bare + up_m2K_per_W);
  const double from_matted = 1.0 / (bare + section.mat_m2K_per_W + up_m2K_per_W);
  const double both = (1.0 - section.matted_share) * from_bare + section.matted_share * from_matted;
  const double above = 1.0 / (1.0 / both - up_m2K_per_W);
  return {above, from_bare / film_W_per_m2K * above / both};
}

void set_film(FloorPlanCells& cells, std::size_t cell, const Section& section, double film_W_per_m2K) {
  const Over lies = over(section, film_W_per_m2K, cells.slab.up_m2K_per_W);
  cells.floor.cell[cell].above_W_per_m2K = lies.above_W_per_m2K;
  cells.face_share[cell] = lies.face_share;
}

std::vector<double> room_films(const Conditions& conditions, const OperatingPoint& point) {
  std::vector<double> films;
  for (std::size_t i = 0; i < conditions.room_degC.size(); ++i) {
    const bool known = i < point.room_floor_degC.size() && point.room_up_W[i] > 0.0;
    films.push_back(floor_film(known ? point.room_floor_degC[i] - conditions.room_degC[i] : 0.0).coefficient_W_per_m2K);
  }
  return films;
}

PlanTube tube_of_loop(const Plant& plant, const OperatingPoint& point, std::size_t loop, const Path& path) {
  const LoopState& state = point.loop[loop];
  const FluidProperties fluid =
      properties_of(mixture_of(plant.design.fluid), 0.5 * (point.supply_degC + state.return_degC));
  const Film film{state.film_W_per_m2K, state.regime, state.reynolds_number};
  PlanTube tube;
  for (const Point corner : flattened(path, sag_m)) tube.line.push_back({corner.x_m, corner.y_m});
  tube.supply_degC = point.supply_degC;
  tube.capacity_W_per_K = std::max(0.0, state.flow_m3_per_s * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK);
  tube.tube_mK_per_W = plant.floor->section.wall_mK_per_W;
  if (film.coefficient_W_per_m2K > 0.0)
    tube.tube_mK_per_W += film_resistance_mK_per_W(film, tube_of(plant.design).inside_diameter_m);
  return tube;
}

}  // namespace

FloorPlanCells cells_of(const Plant& plant, const Conditions& conditions, const OperatingPoint& point,
                        const LaidFloor& laid, FloorRaster raster) {
  const Section& section = plant.floor->section;
  FloorPlanCells cells;
  const std::vector<double> films = room_films(conditions, point);
  double usual_film = 0.0;
  for (const double film : films) usual_film += film / static_cast<double>(films.size());
  for (std::size_t i = 0; i < laid.tube.size(); ++i)
    cells.tube.push_back(tube_of_loop(plant, point, i, laid.tube[i].path));
  cells.slab = plan_slab(tube_row_of(section, usual_film), cells.tube.front().tube_mK_per_W, raster.cell_m);
  cells.sleeve_mK_per_W = leader_sleeve_mK_per_W(section.outside_diameter_m);
  cells.floor.corner = {raster.corner.x_m, raster.corner.y_m};
  cells.floor.cell_m = raster.cell_m;
  cells.floor.columns = raster.columns;
  cells.floor.rows = raster.rows;
  cells.floor.cell.resize(raster.room.size());
  cells.face_share.assign(raster.room.size(), 1.0);
  for (std::size_t i = 0; i < raster.room.size(); ++i) {
    if (raster.room[i] < 0) continue;
    const std::size_t room = static_cast<std::size_t>(raster.room[i]);
    cells.floor.cell[i] = {0.0, conditions.room_degC[room], section.underside_W_per_m2K, section.below_degC, 0.0, 0.0};
    set_film(cells, i, section, films[room]);
  }
  cells.raster = std::move(raster);
  share_out_lower_side(cells, section, laid.edge);
  return cells;
}

void set_films(FloorPlanCells& cells, const Section& section, const std::vector<double>& up_W) {
  const double cell_m2 = cells.raster.cell_m * cells.raster.cell_m;
  const std::vector<double> wide_W = wide_mean(cells.raster, up_W);
  for (std::size_t i = 0; i < wide_W.size(); ++i) {
    if (cells.raster.room[i] < 0) continue;
    set_film(cells, i, section, floor_film(floor_film_rise_K(wide_W[i] / cell_m2)).coefficient_W_per_m2K);
  }
}

PlanField solve(const FloorPlanCells& cells, const std::vector<TubeOnFloor>& sleeves, const PlanOptions& options) {
  std::vector<PlanTube> tubes = cells.tube;
  for (std::size_t i = 0; i < tubes.size(); ++i) {
    const double whole_m = length_m(sleeves[i].path);
    if (sleeves[i].sleeved_supply_m > 0.0)
      tubes[i].sleeve.push_back({0.0, sleeves[i].sleeved_supply_m, cells.sleeve_mK_per_W});
    if (sleeves[i].sleeved_return_m > 0.0)
      tubes[i].sleeve.push_back({whole_m - sleeves[i].sleeved_return_m, whole_m, cells.sleeve_mK_per_W});
  }
  return plan_field(cells.slab, cells.floor, tubes, options);
}

double face_degC(const FloorPlanCells& cells, std::size_t cell, double top_degC) {
  const double room_degC = cells.floor.cell[cell].room_degC;
  return room_degC + cells.face_share[cell] * (top_degC - room_degC);
}

}  // namespace slabwright::plant
