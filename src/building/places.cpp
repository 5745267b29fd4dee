// The places that are watched without being asked, and the user's own.
#include <numeric>

#include "building/edge_heat.hpp"
#include "slabwright/building.hpp"
#include "slabwright/fluid.hpp"

namespace slabwright {
namespace {

constexpr double water_freezes_degC = 0.0;
constexpr DriverWeights room_air_itself{1.0, 0.0, 0.0, 0.0};

std::string distance(double length_m, System system) {
  return system == System::us ? show_as(length_m, Dimension::length, "in", 0)
                              : show_as(length_m, Dimension::length, "mm", 0);
}

/// An inch or 25 mm: where the floor line is looked at a second time.
double step_in_m(System system) { return system == System::us ? 0.0254 : 0.025; }

/// The near air stands this far on the way from room air to outdoor air.
DriverWeights weights_of(const std::vector<double>& row, double near_air_share) {
  const double near = row.size() > edge_row::near_air ? row[edge_row::near_air] : 0.0;
  return {row[edge_row::indoor] + (1.0 - near_air_share) * near, row[edge_row::outdoor] + near_air_share * near,
          row[edge_row::ground], row[edge_row::tube_heat]};
}

/// Tube, floor line and one step in from it, at one edge: one solve a state.
std::vector<WatchedPlace> places_at(const Envelope& envelope, std::size_t row, const Design& design,
                                    EdgeFields& fields) {
  const EdgeStretch& edge = envelope.edge[row];
  const double step_m = step_in_m(design.units);
  const bool door = edge.kind == EdgeKind::big_door;
  std::vector<EdgePoint> points{{edge.tube_in_m, edge.detail.tube_depth_m}};
  if (door) points.insert(points.end(), {{0.0, 0.0}, {step_m, 0.0}});
  const auto idle = fields.responses(edge.detail, points).weights;
  const auto running = fields.responses(building::with_heat_going_up(edge.detail, design), points).weights;

  WatchedPlace tube;
  tube.name = "tube " + distance(edge.tube_in_m, design.units) + " inside the " + edge.name;
  tube.room = edge.room;
  tube.edge = row;
  tube.freezes_degC = freezing_point_degC(mixture_of(design.fluid));
  tube.limit_degC = tube.freezes_degC + design.frost_hold.margin_K;
  tube.length_m = edge.length_m;
  std::vector<WatchedPlace> places{tube};
  if (door) {
    WatchedPlace line = tube;
    line.kind = PlaceKind::floor_line;
    line.freezes_degC = line.limit_degC = water_freezes_degC;
    line.decides = false;
    line.name = "floor line at the " + edge.name;
    places.push_back(line);
    line.name = "floor " + distance(step_m, design.units) + " inside the " + edge.name;
    places.push_back(line);
  }
  for (std::size_t i = 0; i < places.size(); ++i) {
    places[i].at = points[i];
    places[i].idle = weights_of(idle[i], design.frost_hold.door_air_share);
    places[i].running = weights_of(running[i], design.frost_hold.door_air_share);
  }
  return places;
}

WatchedPlace air_place(PlaceKind kind, std::string name, std::size_t room) {
  WatchedPlace place;
  place.kind = kind;
  place.name = std::move(name);
  place.room = room;
  place.freezes_degC = water_freezes_degC;
  place.idle = place.running = room_air_itself;
  return place;
}

WatchedPlace air_at_manifold(const Design& design, std::size_t room) {
  WatchedPlace place = air_place(PlaceKind::room_air, "air round manifold and boiler", room);
  place.decides = design.fluid.kind == FluidKind::water;
  place.limit_degC = place.decides ? design.frost_hold.pipe_limit_degC : water_freezes_degC;
  return place;
}

std::string_view words_of(WatchKind kind) {
  switch (kind) {
    case WatchKind::wall_pipe: return "water line in the wall";
    case WatchKind::room_pipe: return "water line in the room";
    case WatchKind::drain_trap: return "drain trap";
  }
  return "water line";
}

WatchedPlace own_place(const WatchEntry& entry, const Design& design, std::size_t room) {
  const double over_freezing_degC = water_freezes_degC + design.frost_hold.margin_K;
  WatchedPlace place = air_place(PlaceKind::drain_trap, entry.name, room);
  if (place.name.empty()) place.name = std::string(words_of(entry.kind));
  place.limit_degC = entry.limit_degC.value_or(over_freezing_degC);
  if (entry.kind == WatchKind::room_pipe) {
    place.kind = PlaceKind::room_pipe;
    place.limit_degC = entry.limit_degC.value_or(design.frost_hold.pipe_limit_degC);
  } else if (entry.kind == WatchKind::wall_pipe) {
    place.kind = PlaceKind::wall_pipe;
    place.idle = place.running = {1.0 - entry.toward_outdoor_share, entry.toward_outdoor_share, 0.0, 0.0};
  }
  return place;
}

std::optional<std::size_t> first_heated_room(const Design& design) {
  for (std::size_t row = 0; row < design.room.size(); ++row) {
    if (design.room[row].heated_floor) return row;
  }
  return std::nullopt;
}

}  // namespace

double temperature_at(const DriverWeights& w, const Drivers& d) {
  return w.indoor_share * d.indoor_degC + w.outdoor_share * d.outdoor_degC + w.ground_share * d.ground_degC +
         w.tube_m2K_per_W * d.tube_W_per_m2;
}

WatchedPlaces watched_places(const Design& design, const Envelope& envelope, EdgeFields& fields) {
  const auto first = first_heated_room(design);
  WatchedPlaces found;
  for (std::size_t row = 0; row < envelope.edge.size(); ++row) {
    if (!design.room[envelope.edge[row].room].heated_floor) continue;
    const std::vector<WatchedPlace> places = places_at(envelope, row, design, fields);
    found.place.insert(found.place.end(), places.begin(), places.end());
  }
  if (first) found.place.push_back(air_at_manifold(design, *first));
  for (const WatchEntry& entry : design.watch) {
    const std::size_t room = room_row(design, entry.room);
    WatchedPlace place = own_place(entry, design, room);
    if (design.room[room].heated_floor)
      found.place.push_back(std::move(place));
    else {
      found.unknown.push_back({place.name, "the air of the " + design.room[room].name +
                                               " cannot be computed: no tube lies there, and no other heat is known"});
    }
  }
  return found;
}

}  // namespace slabwright
