// A shop whose power goes off.
#pragma once
#include "envelope/shops.hpp"
#include "slabwright/building_time.hpp"
#include "support/catch.hpp"

namespace slabwright::test {

inline constexpr double hour_s = 3600.0;

/// Coarse cells: signs and sums are held here.
inline EdgeFields& coarse_fields() {
  static EdgeFields fields({.first_cell_m = 0.02, .growth = 1.4});
  return fields;
}

struct CutShop {
  CoolingBuilding building;
  WatchedPlaces places;
  PowerCut cut;
};

/// Held at this air until the cut, gains and fans aside.
inline CutShop cut_shop(const Design& design, double air_degC, double outdoor_degC) {
  EdgeFields& fields = coarse_fields();
  const auto envelope = envelope_of(design, fields);
  REQUIRE(envelope);
  const auto building = cooling_building(design, *envelope.value, fields);
  REQUIRE(building);
  PowerCut cut;
  cut.air_degC = air_degC;
  cut.outdoor_degC = outdoor_degC;
  cut.ground_degC = design.climate.mean_degC;
  cut.room_rise_share.assign(design.room.size(), 1.0);
  cut.tube_W_per_m2 = tube_heat_that_gives(*building, cut, building->loss_W_per_K * (air_degC - outdoor_degC));
  return {*building, watched_places(design, *envelope.value, fields), cut};
}

/// Hours until the place with this word in its name freezes; 1000 where it does not within the run.
inline double hours_of(const CutShop& shop, const std::string& word, double step_s = 600.0) {
  const auto rows = cool_down(shop.building, shop.cut, {step_s, 96.0 * hour_s});
  for (const WatchedPlace& place : shop.places.place) {
    if (place.name.find(word) == std::string::npos || !place.decides) continue;
    const auto lasts_s = freezes_after_s(place, shop.building, shop.cut, rows);
    return lasts_s ? *lasts_s / hour_s : 1000.0;
  }
  throw std::logic_error("no such place: " + word);
}

}  // namespace slabwright::test
