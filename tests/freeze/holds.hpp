// The whole line from a design to its frost hold.
#pragma once
#include "envelope/shops.hpp"
#include "slabwright/freeze.hpp"
#include "support/catch.hpp"

namespace slabwright::test {

struct Line {
  Design design;
  Envelope envelope;
  FloorPlan floor;
  WatchedPlaces places;
};

/// Coarse cells: what is held here is logic and signs, the fields have tests of their own.
inline Line line_of(const Design& design) {
  static EdgeFields fields({.first_cell_m = 0.02, .growth = 1.4});
  const auto envelope = envelope_of(design);
  const auto loops = plan_loops(design);
  REQUIRE((envelope && loops));
  const auto floor = floor_of(design, *loops.value, *envelope.value);
  REQUIRE(floor);
  return {design, *envelope.value, *floor.value, watched_places(design, *envelope.value, fields)};
}

inline Checked<Freeze> checked_hold(const Line& line, std::optional<double> boiler_W = std::nullopt) {
  return lowest_setting(line.design, line.envelope, line.floor, line.places, boiler_W);
}

inline Freeze hold_of(const Design& design, std::optional<double> boiler_W = std::nullopt) {
  const auto checked = checked_hold(line_of(design), boiler_W);
  REQUIRE(checked);
  return *checked.value;
}

inline Judged judged(const Design& design, double slab_degC) {
  const Line line = line_of(design);
  return judge_slab_setting(design, line.envelope, line.floor, line.places, slab_degC);
}

inline const PlaceAtSetting& row(const Freeze& freeze, const std::string& name) {
  for (const PlaceAtSetting& place : freeze.place) {
    if (place.name == name) return place;
  }
  throw std::logic_error("no such place: " + name);
}

/// A shop whose walls are insulated to the edge, so that its bare door is what decides.
inline Design door_shop() {
  Design d = bare_shop();
  d.edge.insulation = {1.8};
  d.opening[0].tube_distance_m = 0.2;
  return d;
}

}  // namespace slabwright::test
