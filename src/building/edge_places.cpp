#include "building/edge_places.hpp"

#include <algorithm>

#include "building/corners.hpp"
#include "building/edge_heat.hpp"
#include "slabwright/fluid.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::building {
namespace {

constexpr double water_freezes_degC = 0.0;
/// At a corner of material the temperature is asked for a little inside it.
constexpr double inside_corner_m = 0.005;

std::string distance(double length_m, System system) {
  return show_as(length_m, Dimension::length, system == System::us ? "in" : "mm", 0);
}

/// An inch or 25 mm: where the floor line is looked at a second time.
double step_in_m(System system) { return system == System::us ? inch_m : 0.025; }

struct Weighed {
  DriverWeights idle, running;
};

/// The near air stands this far on the way from room air to outdoor air.
DriverWeights weights_of(const std::vector<double>& row, double near_air_share) {
  const double near = row.size() > edge_row::near_air ? row[edge_row::near_air] : 0.0;
  return {row[edge_row::indoor] + (1.0 - near_air_share) * near, row[edge_row::outdoor] + near_air_share * near,
          row[edge_row::ground], row[edge_row::tube_heat]};
}

/// One solve a state.
std::vector<Weighed> weighed(const Design& design, const EdgeDetail& detail, const std::vector<EdgePoint>& points,
                             EdgeFields& fields) {
  const auto idle = fields.responses(detail, points).weights;
  const auto running = fields.responses(with_heat_going_up(detail, design), points).weights;
  std::vector<Weighed> all;
  for (std::size_t i = 0; i < points.size(); ++i)
    all.push_back({weights_of(idle[i], design.frost_hold.door_air_share),
                   weights_of(running[i], design.frost_hold.door_air_share)});
  return all;
}

double wall_m(const EdgeDetail& detail) { return std::get<WallEdge>(detail.kind).width_m; }

/// The line of symmetry.
double middle_in_m(const EdgeDetail& detail) { return detail.half_width_m - wall_m(detail); }

/// What carries a wall's edge, and the middle of it.
struct Foot {
  std::string name;
  double in_m = 0.0;
};

Foot foot_of(const Design& design, const EdgeDetail& detail) {
  const Edge& edge = design.edge;
  const double wall = wall_m(detail);
  if (edge.stem_wall_m && edge.footing_depth_m) return {"footing", -wall / 2.0};
  if (edge.thickened_depth_m && edge.thickened_width_m && *edge.thickened_depth_m > design.slab.thickness_m)
    return {"thickened edge", std::min(*edge.thickened_width_m, detail.half_width_m) / 2.0 - wall};
  return {"slab's rim", -wall / 2.0};
}

/// Of concrete and foam, one under the other.
double underside_m(const EdgeDetail& detail, double in_m) {
  constexpr double touching_m = 1e-6;
  const auto carries = [&](const EdgePart& part, double depth_m) {
    const bool built =
        part.heat_capacity_J_per_m3K == concrete_J_per_m3K || part.heat_capacity_J_per_m3K == board_J_per_m3K;
    return built && part.in_from_m < in_m && in_m < part.in_to_m && part.depth_from_m < depth_m + touching_m &&
           part.depth_to_m > depth_m + touching_m;
  };
  double depth_m = detail.slab_thickness_m;
  for (bool deeper = true; deeper;) {
    deeper = false;
    for (const EdgePart& part : detail.parts) {
      if (!carries(part, depth_m)) continue;
      depth_m = part.depth_to_m;
      deeper = true;
    }
  }
  return std::min(depth_m, detail.domain_depth_m);
}

/// Everything that is asked of a wall's section, so that it is solved once for all of it.
struct WallPoints {
  enum : std::size_t { tube, corner_tube, middle, slab_corner, soil, first_door };
  std::vector<EdgePoint> point;
};

/// The doors' tubes stand last, in the order of the edges.
WallPoints wall_points(const Design& design, const Envelope& envelope, const EdgeStretch& wall) {
  const EdgeDetail& detail = wall.detail;
  const double middle_m = middle_in_m(detail), foot_m = foot_of(design, detail).in_m;
  WallPoints points{{{wall.tube_in_m, detail.tube_depth_m},
                     {std::min(corner_tube_in_m(design), middle_m), detail.tube_depth_m},
                     {middle_m, detail.tube_depth_m},
                     {inside_corner_m - wall_m(detail), detail.slab_thickness_m - inside_corner_m},
                     {foot_m, underside_m(detail, foot_m)}}};
  for (const EdgeStretch& door : envelope.edge)
    if (door.kind == EdgeKind::big_door && door.room == wall.room)
      points.point.push_back({std::min(door.tube_in_m, middle_m), detail.tube_depth_m});
  return points;
}

WatchedPlace at_point(const EdgeStretch& edge, std::size_t row, EdgePoint at, const Weighed& weights) {
  WatchedPlace place;
  place.room = edge.room;
  place.edge = row;
  place.at = at;
  place.freezes_degC = place.limit_degC = water_freezes_degC;
  place.idle = weights.idle;
  place.running = weights.running;
  return place;
}

WatchedPlace tube_at(const Design& design, WatchedPlace place, std::string name) {
  place.name = std::move(name);
  place.kind = PlaceKind::tube;
  place.freezes_degC = freezing_point_degC(mixture_of(design.fluid));
  place.limit_degC = place.freezes_degC + design.frost_hold.margin_K;
  return place;
}

WatchedPlace reported(WatchedPlace place, PlaceKind kind, std::string name) {
  place.kind = kind;
  place.name = std::move(name);
  place.decides = false;
  return place;
}

std::string nearest_tube(const Design& design, const EdgeStretch& edge) {
  return "tube " + distance(edge.tube_in_m, design.units) + " inside the " + edge.name;
}

/// The two walls that meet are of one section.
WatchedPlace with_corner(WatchedPlace place, const Weighed& middle) {
  const double lacks_share = 1.0 - place.idle.indoor_share;
  place.idle = corner_weights(place.idle, place.idle, middle.idle.tube_m2K_per_W);
  place.running = corner_weights(place.running, place.running, middle.running.tube_m2K_per_W);
  if (lacks_share > 0.0) place.corner_share = (1.0 - place.idle.indoor_share) / lacks_share;
  return place;
}

std::vector<WatchedPlace> wall_places(const Design& design, const Envelope& envelope, std::size_t row,
                                      EdgeFields& fields) {
  using P = WallPoints;
  const EdgeStretch& wall = envelope.edge[row];
  const std::vector<EdgePoint> points = wall_points(design, envelope, wall).point;
  const std::vector<Weighed> weights = weighed(design, wall.detail, points, fields);
  const auto at = [&](std::size_t which) { return at_point(wall, row, points[which], weights[which]); };
  std::vector<WatchedPlace> places{tube_at(design, at(P::tube), nearest_tube(design, wall))};
  places.front().length_m = wall.length_m;
  if (has_outer_corner(design, wall.room)) {
    places.push_back(tube_at(design, with_corner(at(P::corner_tube), weights[P::middle]),
                             "tube at the corners of the " + wall.name));
  }
  places.push_back(
      reported(at(P::slab_corner), PlaceKind::slab_corner, "bottom corner of the slab at the " + wall.name));
  places.push_back(reported(at(P::soil), PlaceKind::soil,
                            "soil under the " + foot_of(design, wall.detail).name + " at the " + wall.name));
  return places;
}

std::optional<std::size_t> wall_of(const Envelope& envelope, std::size_t room) {
  for (std::size_t row = 0; row < envelope.edge.size(); ++row)
    if (envelope.edge[row].kind == EdgeKind::wall && envelope.edge[row].room == room) return row;
  return std::nullopt;
}

/// The door's tube as the wall beside it has it, where that is colder: it takes less of the room's air.
WatchedPlace colder_of_wall(WatchedPlace tube, const Design& design, const Envelope& envelope, EdgeFields& fields) {
  const auto row = wall_of(envelope, tube.room);
  if (!row) return tube;
  const EdgeStretch& wall = envelope.edge[*row];
  const std::vector<EdgePoint> points = wall_points(design, envelope, wall).point;
  std::size_t which = WallPoints::first_door;
  for (std::size_t other = 0; other < *tube.edge; ++other)
    if (envelope.edge[other].kind == EdgeKind::big_door && envelope.edge[other].room == tube.room) ++which;
  const Weighed weights = weighed(design, wall.detail, points, fields)[which];
  if (weights.idle.indoor_share >= tube.idle.indoor_share) return tube;
  return at_point(wall, *row, points[which], weights);
}

std::vector<WatchedPlace> door_places(const Design& design, const Envelope& envelope, std::size_t row,
                                      EdgeFields& fields) {
  const EdgeStretch& door = envelope.edge[row];
  const double step_m = step_in_m(design.units);
  const std::vector<EdgePoint> points{{door.tube_in_m, door.detail.tube_depth_m}, {0.0, 0.0}, {step_m, 0.0}};
  const std::vector<Weighed> weights = weighed(design, door.detail, points, fields);
  const auto at = [&](std::size_t which) { return at_point(door, row, points[which], weights[which]); };
  std::vector<WatchedPlace> places{
      tube_at(design, colder_of_wall(at(0), design, envelope, fields), nearest_tube(design, door)),
      reported(at(1), PlaceKind::floor_line, "floor line at the " + door.name),
      reported(at(2), PlaceKind::floor_line, "floor " + distance(step_m, design.units) + " inside the " + door.name)};
  for (WatchedPlace& place : places) place.length_m = door.length_m;
  return places;
}

}  // namespace

std::vector<WatchedPlace> edge_places(const Design& design, const Envelope& envelope, std::size_t row,
                                      EdgeFields& fields) {
  return envelope.edge[row].kind == EdgeKind::wall ? wall_places(design, envelope, row, fields)
                                                   : door_places(design, envelope, row, fields);
}

}  // namespace slabwright::building
