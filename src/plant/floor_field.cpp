// The floor as it is felt: room by room, and before the manifolds.
#include "slabwright/plant_floor_field.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "plant/apron_sleeves.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace plant;

/// Left of the solution that films are taken from.
constexpr double rough_share = 1e-5;
constexpr int any_room = -1;
constexpr double cells_in_spacing = 4.0;  ///< what plan_slab() means, and wide_mean() averages over
/// Memory and time of a floor of 200 x 120 ft under tube every 9 in; larger ones have larger cells.
constexpr double most_cells = 700'000.0;
constexpr double sleeve_thickness_m = 0.009, sleeve_W_per_mK = 0.04;  ///< practice
/// A limit met to a thousandth of a kelvin is met.
constexpr double limit_tolerance_K = 1e-3, floor_limit_degC = 29.0;

using measured::degree;
using measured::length;
using measured::power;

/// Mean, spread and span of what is shown cell by cell.
struct Spread {
  double count = 0.0, sum = 0.0, squares = 0.0, low = 1e9, high = -1e9;
  void take(double value) {
    count += 1.0;
    sum += value;
    // About a temperature of floors, so that the square of the mean does not drown the rest.
    squares += (value - 20.0) * (value - 20.0);
    low = std::min(low, value);
    high = std::max(high, value);
  }
  double mean() const { return count > 0.0 ? sum / count : 0.0; }
  double deviation() const {
    const double off = mean() - 20.0;
    return count > 0.0 ? std::sqrt(std::max(0.0, squares / count - off * off)) : 0.0;
  }
  double span() const { return count > 0.0 ? high - low : 0.0; }
};

std::optional<FloorSpot> coldest_where(const FloorField& field, int room) {
  std::optional<FloorSpot> coldest;
  for (std::size_t i = 0; i < field.surface_degC.size(); ++i) {
    if (field.raster.room[i] < 0 || (room >= 0 && field.raster.room[i] != room)) continue;
    if (coldest && field.surface_degC[i] >= coldest->surface_degC) continue;
    const Point where = middle_of(field.raster, i);
    coldest = FloorSpot{where.x_m, where.y_m, field.surface_degC[i]};
  }
  return coldest;
}

int room_at(const FloorRaster& raster, Point where) {
  const std::size_t cell = cell_at(raster, where);
  return cell < raster.room.size() ? raster.room[cell] : -1;
}

/// Heat, tube and surface of each room.
std::vector<RoomField> rooms_of(const Plant& plant, const FloorPlanCells& cells, const PlanField& plan,
                                const FloorField& field) {
  std::vector<RoomField> rooms(plant.design.room.size());
  std::vector<Spread> narrow(rooms.size()), wide(rooms.size());
  for (std::size_t i = 0; i < field.surface_degC.size(); ++i) {
    if (field.raster.room[i] < 0) continue;
    const std::size_t room = static_cast<std::size_t>(field.raster.room[i]);
    rooms[room].up_W += plan.up_W[i];
    narrow[room].take(field.surface_degC[i]);
    wide[room].take(field.wide_degC[i]);
  }
  for (const PlanTubeState& tube : plan.tube) {
    for (const PlanPiece& piece : tube.piece) {
      const int room = room_at(field.raster, {piece.where.x_m, piece.where.y_m});
      if (room < 0) continue;
      rooms[static_cast<std::size_t>(room)].tube_m += piece.length_m;
      rooms[static_cast<std::size_t>(room)].tube_W += piece.heat_W;
    }
  }
  for (std::size_t i = 0; i < rooms.size(); ++i) {
    rooms[i].room = plant.design.room[i].name;
    rooms[i].floor_m2 = narrow[i].count * field.raster.cell_m * field.raster.cell_m;
    rooms[i].mean_degC = narrow[i].mean();
    rooms[i].evenness = {narrow[i].deviation(), narrow[i].span(), wide[i].deviation(), wide[i].span()};
    const int row = static_cast<int>(i);
    rooms[i].coldest = coldest_where(field, row).value_or(FloorSpot{});
    const auto here = [&](Point where) { return room_at(field.raster, where) == row; };
    rooms[i].warmest = warmest_where(cells, plan, here).value_or(FloorSpot{});
  }
  return rooms;
}

Diagnostic apron_too_warm(const ApronField& apron, std::size_t manifold) {
  Diagnostic said{Severity::warning,
                  "field.apron-too-warm",
                  fmt::format("manifold[{}]", manifold + 1),
                  "where leaders spread before manifold {} the floor reaches {}; where people stand it may be {} "
                  "(EN 1264-2). ",
                  {apron.manifold.empty() ? fmt::format("{}", manifold + 1) : apron.manifold,
                   degree(apron.warmest.surface_degC), degree(apron.limit_degC)}};
  if (!apron.sleeve_m) {
    said.sentence += "Foam sleeves as long as its leaders do not mend that: lower the supply or spread the leaders";
    return said;
  }
  said.sentence += "Foam sleeves on the first {} of each " +
                   std::string(apron.sleeve_both ? "leader" : "supply leader") + " keep it at {}";
  said.parts.push_back(length(*apron.sleeve_m));
  said.parts.push_back(degree(*apron.sleeved_degC));
  return said;
}

Diagnostic warm_place(const FloorSpot& spot) {
  return {Severity::note,
          "field.warm-place",
          "",
          "with the water at its warmest the floor reaches {} at {} from the left and {} up; where people stand it may "
          "be {} (EN 1264-2)",
          {degree(spot.surface_degC), length(spot.x_m), length(spot.y_m), degree(floor_limit_degC)}};
}

Diagnostic no_shape() {
  return {Severity::note, "field.no-outline", "slab.outline", "the floor's temperatures in plan need its outline", {}};
}

/// Two opinions on one floor; 5 % is what tube beyond or short of the floor's need, and leaders side by side, explain.
constexpr double known_difference_share = 0.05;

Diagnostic heat_differs(double field_W, double point_W) {
  return {Severity::note,
          "field.heat-differs",
          "",
          "tube as it lies gives the rooms {}; counted by its length it gives {}",
          {power(field_W), power(point_W)}};
}

bool in_apron(const LaidFloor& laid, Point where) {
  return std::any_of(laid.apron.begin(), laid.apron.end(), [&](const Polygon& apron) {
    return apron.size() >= 3 && where_is(where, apron) != Where::outside;
  });
}

std::vector<Diagnostic> remarks_on(const FloorPlanCells& cells, const LaidFloor& laid, const PlanField& plan,
                                   const FloorField& field) {
  std::vector<Diagnostic> said;
  for (std::size_t i = 0; i < field.apron.size(); ++i) {
    if (field.apron[i].warmest.surface_degC > field.apron[i].limit_degC + limit_tolerance_K)
      said.push_back(apron_too_warm(field.apron[i], i));
  }
  const auto spot = warmest_where(cells, plan, [&](Point where) { return !in_apron(laid, where); });
  if (spot && spot->surface_degC > floor_limit_degC + limit_tolerance_K) said.push_back(warm_place(*spot));
  return said;
}

/// Once with each room's film, once with each place's: the film moves by a tenth power of the heat.
PlanField solved(FloorPlanCells& cells, const Section& section, const LaidFloor& laid) {
  const PlanField first = solve(cells, laid.tube, {.with_top = false, .left_share = rough_share});
  set_films(cells, section, first.up_W);
  return solve(cells, laid.tube, {.start = &first});
}

FloorField shown(const Plant& plant, const FloorPlanCells& cells, const PlanField& plan) {
  FloorField field;
  field.raster = cells.raster;
  field.surface_degC.assign(plan.top_degC.size(), 0.0);
  for (std::size_t i = 0; i < plan.top_degC.size(); ++i) {
    if (field.raster.room[i] >= 0) field.surface_degC[i] = face_degC(cells, i, plan.top_degC[i]);
  }
  field.wide_degC = wide_mean(field.raster, field.surface_degC);
  field.up_W = plan.up_total_W;
  field.down_W = plan.down_total_W;
  field.cold_W = plan.edge_total_W;
  for (std::size_t i = 0; i < plan.tube.size(); ++i) {
    field.loop.push_back({plant.loops.loop[i].name, plan.tube[i].return_degC, plan.tube[i].heat_W});
    field.water_W += plan.tube[i].heat_W;
  }
  field.room = rooms_of(plant, cells, plan, field);
  field.coldest = coldest_where(field, any_room).value_or(FloorSpot{});
  field.warmest = warmest_where(cells, plan, [](Point) { return true; }).value_or(FloorSpot{});
  field.left_share = plan.left_share;
  return field;
}

}  // namespace

double leader_sleeve_mK_per_W(double outside_diameter_m) {
  return std::log(1.0 + 2.0 * sleeve_thickness_m / outside_diameter_m) / (2.0 * pi * sleeve_W_per_mK);
}

Checked<FloorField> floor_field(const Plant& plant, const Conditions& conditions, const OperatingPoint& point,
                                const LaidFloor& laid) {
  expects(plant.floor.has_value(), "floor_field: a plant without a floor");
  expects(!laid.tube.empty() && laid.tube.size() == plant.loops.loop.size() && point.loop.size() == laid.tube.size(),
          "floor_field: a path for each loop");
  expects(conditions.room_degC.size() == plant.design.room.size(), "floor_field: a temperature for each room");
  expects(laid.apron.size() <= plant.design.manifold.size(), "floor_field: more aprons than manifolds");
  const Section& section = plant.floor->section;
  std::optional<FloorRaster> raster = raster_of(plant.design, section.spacing_m / cells_in_spacing, most_cells);
  if (!raster) return {std::nullopt, {no_shape()}};
  FloorPlanCells cells = cells_of(plant, conditions, point, laid, std::move(*raster));
  const PlanField plan = solved(cells, section, laid);
  FloorField field = shown(plant, cells, plan);
  field.apron = aprons_of(plant, cells, laid, plan);
  std::vector<Diagnostic> said = remarks_on(cells, laid, plan, field);
  if (std::abs(field.up_W - point.up_W) > known_difference_share * std::abs(point.up_W))
    said.push_back(heat_differs(field.up_W, point.up_W));
  return {std::move(field), std::move(said)};
}

}  // namespace slabwright
