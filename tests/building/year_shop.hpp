// A shop made ready for years, and weather that can be written down.
#pragma once
#include <algorithm>
#include <cmath>

#include "slabwright/building_year.hpp"
#include "zone_shop.hpp"

namespace slabwright::test {

inline constexpr int year_h = 8760;

struct BuiltShop {
  ZoneShop of;
  YearShop year;
};

inline BuiltShop built_shop(const Design& design) {
  ZoneShop of = zone_shop(design);
  auto year = year_shop(of.design, of.envelope, of.floor, of.places, coarse_fields());
  REQUIRE(year);
  return {std::move(of), std::move(*year)};
}

/// Foam across the slab under the leaf of the big door, and air near it that is colder than the room's.
inline Design shop_with_strip() {
  Design design = described_shop();
  design.opening[0].strip = {1.8};
  return design;
}

/// A year's wave and a day's; 15 January is coldest.
inline double outdoor_at(double hours) {
  const double turn = 6.283185307179586;
  return 5.0 - 14.0 * std::cos(turn * (hours - 336.0) / year_h) - 4.0 * std::cos(turn * hours / 24.0);
}

inline ShopDrivers weather_at(double hours) {
  ShopDrivers drivers;
  drivers.outdoor_degC = outdoor_at(hours);
  return drivers;
}

inline ShopDrivers outdoors(double outdoor_degC) {
  ShopDrivers drivers;
  drivers.outdoor_degC = outdoor_degC;
  return drivers;
}

/// Where nothing has ever moved.
inline ShopState settled(const YearShop& shop, double air_degC, double outdoor_degC, double tube_W_per_m2) {
  return begun(shop, steady_history({air_degC, outdoor_degC, tube_W_per_m2}), 0.0);
}

/// Tube heat that brings the main room's air to so much, within what a boiler could.
inline double tube_heat_for(const StepEnds& reach, double air_degC, double most_W_per_m2 = 60.0) {
  return std::clamp((air_degC - reach.air_degC.idle_degC) / reach.air_degC.per_tube_m2K_per_W, 0.0, most_W_per_m2);
}

/// Inner faces that are one with the air, which alone stores and loses: the room of a zone.
inline YearShop with_one_node(YearShop shop) {
  REQUIRE(shop.room.size() == 1);
  ShopRoom& room = shop.room[0];
  room.air_J_per_K = shop.zone.capacity_J_per_K;
  room.contents_J_per_K = 0.0;
  room.faces_J_per_K = 1e-3;
  room.light_W_per_K = shop.zone.loss_W_per_K;
  room.opaque_W_per_K = 0.0;
  room.air_faces_W_per_K = 1e9;
  return shop;
}

}  // namespace slabwright::test
