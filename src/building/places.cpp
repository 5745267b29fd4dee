// The places that are watched without being asked, and the user's own.
#include "building/edge_places.hpp"
#include "slabwright/building.hpp"
#include "slabwright/fluid.hpp"

namespace slabwright {
namespace {

constexpr double water_freezes_degC = 0.0;
constexpr DriverWeights room_air_itself{1.0, 0.0, 0.0, 0.0}, outdoor_air_itself{0.0, 1.0, 0.0, 0.0};

std::optional<std::size_t> first_heated_room(const Design& design) {
  for (std::size_t row = 0; row < design.room.size(); ++row) {
    if (design.room[row].heated_floor) return row;
  }
  return std::nullopt;
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
    case WatchKind::sprinkler: return "sprinkler line";
    case WatchKind::hose_bib: return "hose bib";
    case WatchKind::outdoor_line: return "outdoor line";
  }
  return "water line";
}

/// Holds what the loops hold. No setting warms it, so that it decides nothing where the weather leaves it alone.
WatchedPlace outdoor_line(const Design& design, std::string name, std::optional<double> limit_degC) {
  WatchedPlace place = air_place(PlaceKind::outdoor_line, std::move(name), first_heated_room(design).value_or(0));
  place.freezes_degC = freezing_point_degC(mixture_of(design.fluid));
  place.limit_degC = limit_degC.value_or(place.freezes_degC + design.frost_hold.margin_K);
  place.idle = place.running = outdoor_air_itself;
  place.decides = !design.climate.coldest_degC || *design.climate.coldest_degC < place.limit_degC;
  return place;
}

WatchedPlace own_place(const WatchEntry& entry, const Design& design) {
  const std::string name = entry.name.empty() ? std::string(words_of(entry.kind)) : entry.name;
  if (entry.kind == WatchKind::outdoor_line) return outdoor_line(design, name, entry.limit_degC);
  const double over_freezing_degC = water_freezes_degC + design.frost_hold.margin_K;
  WatchedPlace place = air_place(PlaceKind::drain_trap, name, room_row(design, entry.room));
  place.limit_degC = entry.limit_degC.value_or(over_freezing_degC);
  if (entry.kind == WatchKind::room_pipe || entry.kind == WatchKind::sprinkler) {
    place.kind = PlaceKind::room_pipe;
    place.limit_degC = entry.limit_degC.value_or(design.frost_hold.pipe_limit_degC);
  } else if (entry.kind == WatchKind::wall_pipe || entry.kind == WatchKind::hose_bib) {
    place.kind = PlaceKind::wall_pipe;
    place.idle = place.running = {1.0 - entry.toward_outdoor_share, entry.toward_outdoor_share, 0.0, 0.0};
  }
  return place;
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
    const std::vector<WatchedPlace> places = building::edge_places(design, envelope, row, fields);
    found.place.insert(found.place.end(), places.begin(), places.end());
  }
  if (first) found.place.push_back(air_at_manifold(design, *first));
  if (first && design.second_source.kind == SecondSourceKind::water_heat_pump)
    found.place.push_back(outdoor_line(design, "outdoor lines of the heat pump", {}));
  for (const WatchEntry& entry : design.watch) {
    WatchedPlace place = own_place(entry, design);
    const std::size_t room = place.room;
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
