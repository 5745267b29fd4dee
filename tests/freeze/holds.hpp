// The whole line from a design to its frost hold.
#pragma once
#include "envelope/coarse_fields.hpp"
#include "envelope/shops.hpp"
#include "slabwright/freeze_outage.hpp"
#include "support/catch.hpp"

namespace slabwright::test {

struct Line {
  Design design;
  Envelope envelope;
  FloorPlan floor;
  WatchedPlaces places;
  Snap snap;

  HeldShop held() const { return {design, envelope, floor, places, snap}; }
};

inline Line line_of(const Design& design) {
  const auto envelope = envelope_of(design);
  const auto loops = plan_loops(design);
  REQUIRE((envelope && loops));
  const auto floor = floor_of(design, *loops.value, *envelope.value);
  REQUIRE(floor);
  return {design, *envelope.value, *floor.value, watched_places(design, *envelope.value, coarse_fields()),
          snap_of(design)};
}

inline Checked<Freeze> checked_hold(const Line& line, std::optional<double> boiler_W = std::nullopt) {
  return lowest_setting(line.held(), coarse_fields(), boiler_W);
}

inline Freeze hold_of(const Design& design, std::optional<double> boiler_W = std::nullopt) {
  const auto checked = checked_hold(line_of(design), boiler_W);
  REQUIRE(checked);
  return *checked.value;
}

/// What the places ask of each dial, without what switching on and off adds.
inline double asked_air_degC(const Freeze& freeze) { return freeze.air->best_degC - freeze.air->control_K; }
inline double asked_slab_degC(const Freeze& freeze) { return freeze.slab->best_degC - freeze.slab->control_K; }

inline const PlaceAtSetting& row(const Freeze& freeze, const std::string& name) {
  for (const PlaceAtSetting& place : freeze.place) {
    if (place.name == name) return place;
  }
  throw std::logic_error("no such place: " + name);
}

/// A shop whose walls are insulated to the edge and whose floor a second source can keep off in any weather, so that
/// its bare door is what decides.
inline Design door_shop() {
  Design d = bare_shop();
  d.edge.insulation = {1.8};
  d.opening[0].tube_distance_m = 0.2;
  d.second_source.kind = SecondSourceKind::heat_pump;
  return d;
}

}  // namespace slabwright::test
