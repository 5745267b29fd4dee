// An edge's section in one weather: what is drawn of it, and its temperatures on a raster.
#include "slabwright/building_section.hpp"

#include <algorithm>
#include <cmath>

#include "building/edge_heat.hpp"
#include "building/section_parts.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

using namespace building;

constexpr double cell_m = 0.0125;
/// Between the points that are told one by one.
constexpr std::size_t told_every = 8;
constexpr double freezing_degC = 0.0;
/// Cells that grow more slowly than those of single places, so that lines in the ground are smooth. Weights are within
/// this of a grid far finer, as those of EdgeFields are.
constexpr FieldOptions smooth_grid{0.005, 1.2, 0.5, false};
constexpr double weight_error_share = 0.001;
/// A kink between two points, f of the way from one to the other, leaves their straight line by f (1 - f) of what the
/// slope jumps in a cell; the second differences at the two are f and 1 - f of it. A bend leaves it by an eighth.
constexpr double of_second_difference = 0.5;

double temperature_of_row(const std::vector<double>& row, const Drivers& d, double near_air_degC) {
  const double near = row.size() > edge_row::near_air ? row[edge_row::near_air] : 0.0;
  return row[edge_row::indoor] * d.indoor_degC + row[edge_row::outdoor] * d.outdoor_degC +
         row[edge_row::ground] * d.ground_degC + row[edge_row::tube_heat] * d.tube_W_per_m2 + near * near_air_degC;
}

bool on_material(const FieldSection& section, FieldPoint p) {
  constexpr double touching_m = 1e-9;
  return std::any_of(section.materials.begin(), section.materials.end(), [&](const MaterialRectangle& r) {
    return r.x0_m - touching_m <= p.x_m && p.x_m <= r.x1_m + touching_m && r.y0_m - touching_m <= p.y_m &&
           p.y_m <= r.y1_m + touching_m;
  });
}

/// Points a cell apart that fill the window, one row on the floor and one column on the outer face.
SectionRaster raster_in(const SectionWindow& window, double outer_in_m) {
  const auto cells = [](double length_m) { return static_cast<std::size_t>(std::ceil(length_m / cell_m - 1e-9)); };
  const std::size_t outside = cells(outer_in_m - window.in_from_m), rows = cells(window.depth_to_m);
  SectionRaster raster;
  raster.cell_m = cell_m;
  raster.in_from_m = outer_in_m - static_cast<double>(outside) * cell_m;
  raster.depth_to_m = static_cast<double>(rows) * cell_m;
  // The last column does not reach beyond the line of symmetry.
  raster.columns = outside + 1 + static_cast<std::size_t>((window.in_to_m - outer_in_m) / cell_m + 1e-9);
  raster.rows = rows + 1;
  return raster;
}

EdgePoint point_in(const SectionRaster& raster, std::size_t i, std::size_t j) {
  // The row on the floor lies there to the last digit.
  const double depth_m = static_cast<double>(raster.rows - 1 - j) * raster.cell_m;
  return {raster.in_from_m + static_cast<double>(i) * raster.cell_m, depth_m};
}

/// The points of the raster that lie on material, in its order; `raster.material` says which.
std::vector<FieldPoint> material_points(SectionRaster& raster, const EdgeDetail& detail, const FieldSection& section) {
  std::vector<FieldPoint> points;
  for (std::size_t j = 0; j < raster.rows; ++j) {
    for (std::size_t i = 0; i < raster.columns; ++i) {
      const FieldPoint at = point_of(detail, point_in(raster, i, j));
      raster.material.push_back(on_material(section, at));
      if (raster.material.back()) points.push_back(at);
    }
  }
  return points;
}

std::vector<SectionPoint> told(const SectionRaster& raster) {
  std::vector<SectionPoint> points;
  for (std::size_t j = (raster.rows - 1) % told_every; j < raster.rows; j += told_every) {
    for (std::size_t i = 0; i < raster.columns; i += told_every) {
      const std::size_t at = j * raster.columns + i;
      if (!raster.material[at]) continue;
      const EdgePoint place = point_in(raster, i, j);
      points.push_back({place.in_m, place.depth_m, raster.degC[at]});
    }
  }
  return points;
}

/// Whether the uppermost part there is the slab's concrete, or what is cast with it.
bool in_slab(const SectionField& field, EdgePoint at) {
  if (at.depth_m > field.slab_m) return false;
  for (auto part = field.part.rbegin(); part != field.part.rend(); ++part) {
    const bool holds = part->in_from_m <= at.in_m && at.in_m <= part->in_to_m && part->depth_from_m <= at.depth_m &&
                       at.depth_m <= part->depth_to_m;
    if (holds) return part->material == "concrete";
  }
  return false;
}

/// The furthest in that a row of the slab crosses the freezing point; nothing where none is so cold.
std::optional<double> freezing_in_m(const SectionField& field) {
  const SectionRaster& raster = field.raster;
  std::optional<double> furthest_m;
  for (std::size_t j = 0; j < raster.rows; ++j) {
    for (std::size_t i = raster.columns; i-- > 0;) {
      const std::size_t at = j * raster.columns + i;
      if (!raster.material[at] || raster.degC[at] >= freezing_degC) continue;
      if (!in_slab(field, point_in(raster, i, j))) continue;
      double in_m = point_in(raster, i, j).in_m;
      if (i + 1 < raster.columns && raster.material[at + 1] && raster.degC[at + 1] >= freezing_degC) {
        in_m += raster.cell_m * (freezing_degC - raster.degC[at]) / (raster.degC[at + 1] - raster.degC[at]);
      }
      furthest_m = std::max(furthest_m.value_or(in_m), in_m);
      break;
    }
  }
  return furthest_m;
}

/// Whether the point and its four neighbours lie in the slab, inside wall or leaf.
bool deep_in_slab(const SectionField& field, std::size_t i, std::size_t j) {
  const EdgePoint at = point_in(field.raster, i, j);
  const double cell = field.raster.cell_m;
  return at.in_m >= cell && at.depth_m >= cell && in_slab(field, {at.in_m, at.depth_m + cell}) &&
         in_slab(field, {at.in_m - cell, at.depth_m}) && in_slab(field, {at.in_m + cell, at.depth_m});
}

double interpolation_error_K(const SectionField& field) {
  const SectionRaster& raster = field.raster;
  double most = 0.0;
  for (std::size_t j = 1; j + 1 < raster.rows; ++j) {
    for (std::size_t i = 1; i + 1 < raster.columns; ++i) {
      if (!deep_in_slab(field, i, j)) continue;
      const std::size_t at = j * raster.columns + i;
      const double middle = 2.0 * raster.degC[at];
      const double along = raster.degC[at - 1] - middle + raster.degC[at + 1];
      const double up = raster.degC[at - raster.columns] - middle + raster.degC[at + raster.columns];
      most = std::max(most, std::abs(along) + std::abs(up));
    }
  }
  return of_second_difference * most;
}

void set_extremes(SectionField& field) {
  const SectionRaster& raster = field.raster;
  field.coldest_floor_degC = field.coldest_slab_degC = field.room_degC;
  for (std::size_t j = 0; j < raster.rows; ++j) {
    for (std::size_t i = 0; i < raster.columns; ++i) {
      const EdgePoint at = point_in(raster, i, j);
      if (at.in_m < 0.0 || !in_slab(field, at)) continue;
      const double degC = raster.degC[j * raster.columns + i];
      field.coldest_slab_degC = std::min(field.coldest_slab_degC, degC);
      if (j + 1 == raster.rows) field.coldest_floor_degC = std::min(field.coldest_floor_degC, degC);
    }
  }
  field.freezing_in_m = freezing_in_m(field);
  const double least = std::min({field.outdoor_degC, field.room_degC, field.ground_degC});
  const double most = std::max({field.outdoor_degC, field.room_degC, field.ground_degC});
  field.error_K = weight_error_share * (most - least) + interpolation_error_K(field);
}

void set_weather(SectionField& field, const Design& design, const Drivers& drivers, bool door) {
  field.outdoor_degC = drivers.outdoor_degC;
  field.room_degC = drivers.indoor_degC;
  field.ground_degC = drivers.ground_degC;
  field.tube_W_per_m2 = drivers.tube_W_per_m2;
  if (!door) return;
  const double colder_K = design.frost_hold.door_air_share * (drivers.indoor_degC - drivers.outdoor_degC);
  field.near_air_degC = drivers.indoor_degC - colder_K;
}

void set_tubes(SectionField& field, const Design& design, const EdgeStretch& edge, double in_to_m) {
  const TubeSize* tube = find_tube(design.tube.size.name);
  field.tube_diameter_m = tube ? tube->outside_diameter_m : 0.0;
  field.tube_spacing_m = design.tube.spacing_m;
  field.tube_depth_m = edge.detail.tube_depth_m;
  field.concrete_above_tube_m = field.tube_depth_m - 0.5 * field.tube_diameter_m;
  for (double in_m = edge.tube_in_m; in_m + 0.5 * field.tube_diameter_m < in_to_m; in_m += design.tube.spacing_m)
    field.tube.push_back({in_m});
}

}  // namespace

SectionField section_field(const Design& design, const Envelope& envelope, const WatchedPlaces& watched,
                           std::size_t row, const Drivers& drivers) {
  const EdgeStretch& edge = envelope.edge.at(row);
  expects(design.room[edge.room].heated_floor, "section_field: an edge of a floor without tube");
  const EdgeDetail detail = with_heat_going_up(edge.detail, design);
  SectionField field;
  field.name = edge.name;
  field.edge = row;
  set_weather(field, design, drivers, edge.kind == EdgeKind::big_door);
  set_build(field, design, edge);
  const SectionWindow window = window_of(field, edge, design.tube.spacing_m);
  set_tubes(field, design, edge, window.in_to_m);
  const double outer_in_m = -(field.face_m + field.nose_m);
  field.part = parts_in(window, detail, outer_in_m);
  field.place = places_at(edge, row, watched);

  const FieldSection section = edge_section(detail);
  field.raster = raster_in(window, outer_in_m);
  std::vector<FieldPoint> points = material_points(field.raster, detail, section);
  for (const SectionPlace& place : field.place) points.push_back(point_of(detail, {place.in_m, place.depth_m}));
  const auto weights = unit_responses(section, points, smooth_grid).weights;
  const double near_air_degC = field.near_air_degC.value_or(field.room_degC);
  std::size_t next = 0;
  for (const bool material : field.raster.material)
    field.raster.degC.push_back(material ? temperature_of_row(weights[next++], drivers, near_air_degC) : 0.0);
  for (SectionPlace& place : field.place)
    place.temperature_degC = temperature_of_row(weights[next++], drivers, near_air_degC);
  field.point = told(field.raster);
  set_extremes(field);
  return field;
}

}  // namespace slabwright
