// The shop in its coldest hour: every heated room over a slab of one temperature.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "slabwright/freeze.hpp"

namespace slabwright::freeze {

/// Whether the tubes near a place carry heat.
enum class Tubes { idle, running };

struct Shop {
  std::vector<std::optional<SlabHold>> hold;  ///< a row for each Design::room; empty where no tube lies
  std::vector<double> heated_m2;              ///< floor over tubes
  std::size_t first = 0;                      ///< the room with the sensors
  double outdoor_degC = 0.0;                  ///< coldest
  double ground_degC = 0.0;                   ///< deep, the yearly mean
  double warmest_slab_degC = 0.0;             ///< sensor at which the warmest floor of all reaches its limit
};
/// `climate.coldest` must be there. Absent where no room has tube in its floor.
std::optional<Shop> shop_of(const Design& design, const Envelope& envelope, const FloorPlan& floor);

/// A place over a room in balance with its slab.
double temperature_of(const WatchedPlace& place, const HeldRoom& room, const Shop& shop, Tubes tubes);

/// Lowest slab sensor reading that keeps a place above its limit; absent where none up to the warmest does.
std::optional<double> asked_slab_degC(const WatchedPlace& place, const Shop& shop, Tubes tubes);

/// Air of a room over a slab of this temperature.
double air_degC(const Shop& shop, std::size_t room, double slab_degC);
double coldest_air_degC(const Shop& shop, double slab_degC);

/// Outdoors below which a place freezes over a slab held at this temperature; absent where no weather does it.
std::optional<double> freezes_below_degC(const WatchedPlace& place, const Shop& shop, double slab_degC);

/// Heat that the water gives while the slab is held at this temperature.
double hold_W(const Shop& shop, double slab_degC, double outdoor_degC);

/// Outdoors below which a boiler cannot keep the slab; absent where it can in any weather, or in none.
std::optional<double> boiler_keeps_to_degC(const Shop& shop, double slab_degC, double boiler_W);

}  // namespace slabwright::freeze
