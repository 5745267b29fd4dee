#include "freeze/shop.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {

double dial_mark_degC(double degC, System system) {
  constexpr double rounding = 1e-6;  // what stands on a mark stays there
  if (system == System::si) return std::ceil(2.0 * degC - rounding) / 2.0;
  return (std::ceil(1.8 * degC + 32.0 - rounding) - 32.0) / 1.8;
}

}  // namespace slabwright

namespace slabwright::freeze {
namespace {

/// Colder than any place on earth, and warmer than any winter.
constexpr double coldest_weather_degC = -90.0, warmest_weather_degC = 30.0;
/// Wider than anything that is looked for lies apart.
constexpr double search_K = 150.0;
/// A hundredth of what a thermometer shows.
const RootOptions to_a_hair{.x_tolerance = 1e-6};

/// Sensor at which a room's floor reaches its limit.
double warmest_slab_degC(const SlabHold& hold, double outdoor_degC) {
  const auto over_limit = [&](double sensor_degC) {
    return room_held_by(hold, sensor_degC, outdoor_degC).floor_over_tube_degC - warmest_floor_degC;
  };
  return root_in_bracket(over_limit, warmest_floor_degC - search_K, warmest_floor_degC + search_K, to_a_hair).x;
}

}  // namespace

std::optional<Shop> shop_of(const Design& design, const Envelope& envelope, const FloorPlan& floor) {
  expects(design.climate.coldest_degC.has_value(), "freeze: no coldest hour");
  Shop shop;
  shop.outdoor_degC = *design.climate.coldest_degC;
  shop.ground_degC = design.climate.mean_degC;
  std::optional<double> warmest_degC;
  for (std::size_t row = 0; row < envelope.room.size(); ++row) {
    const double heated_m2 = floor.room[row].heated_m2;
    shop.heated_m2.push_back(heated_m2);
    shop.hold.emplace_back();
    if (heated_m2 <= 0.0) continue;
    if (!warmest_degC) shop.first = row;
    shop.hold.back() = slab_hold(floor.section, envelope.room[row], heated_m2);
    const double own_degC = warmest_slab_degC(*shop.hold.back(), shop.outdoor_degC);
    warmest_degC = std::min(warmest_degC.value_or(own_degC), own_degC);
  }
  if (!warmest_degC) return std::nullopt;
  shop.warmest_slab_degC = *warmest_degC;
  return shop;
}

double temperature_of(const WatchedPlace& place, const HeldRoom& room, const Shop& shop, Tubes tubes) {
  const Drivers drivers{room.room_degC, shop.outdoor_degC, shop.ground_degC,
                        tubes == Tubes::running ? std::max(0.0, room.up_W_per_m2 + room.down_W_per_m2) : 0.0};
  return temperature_at(tubes == Tubes::running ? place.running : place.idle, drivers);
}

std::optional<double> asked_slab_degC(const WatchedPlace& place, const Shop& shop, Tubes tubes) {
  const SlabHold& hold = *shop.hold[place.room];
  const auto over_limit = [&](double room_degC) {
    return temperature_of(place, held_at(hold, room_degC, shop.outdoor_degC), shop, tubes) - place.limit_degC;
  };
  const double warmest_degC = air_degC(shop, place.room, shop.warmest_slab_degC);
  if (over_limit(warmest_degC) < 0.0) return std::nullopt;
  // Where the place keeps by itself the room asked for is colder than outdoors, and any setting will do.
  const Root room = root_in_bracket(over_limit, warmest_degC - search_K, warmest_degC, to_a_hair);
  return held_at(hold, room.stop == Stop::converged ? room.high : room.x, shop.outdoor_degC).sensor_degC;
}

double air_degC(const Shop& shop, std::size_t room, double slab_degC) {
  return room_held_by(*shop.hold[room], slab_degC, shop.outdoor_degC).room_degC;
}

double coldest_air_degC(const Shop& shop, double slab_degC) {
  double coldest_degC = air_degC(shop, shop.first, slab_degC);
  for (std::size_t room = 0; room < shop.hold.size(); ++room) {
    if (shop.hold[room]) coldest_degC = std::min(coldest_degC, air_degC(shop, room, slab_degC));
  }
  return coldest_degC;
}

std::optional<double> freezes_below_degC(const WatchedPlace& place, const Shop& shop, double slab_degC) {
  Shop weather = shop;
  const auto over_freezing = [&](double outdoor_degC) {
    weather.outdoor_degC = outdoor_degC;
    const HeldRoom room = room_held_by(*shop.hold[place.room], slab_degC, outdoor_degC);
    return temperature_of(place, room, weather, Tubes::idle) - place.freezes_degC;
  };
  const Root outdoor = root_in_bracket(over_freezing, coldest_weather_degC, warmest_weather_degC, to_a_hair);
  if (outdoor.stop != Stop::converged) return std::nullopt;
  return outdoor.x;
}

double hold_W(const Shop& shop, double slab_degC, double outdoor_degC) {
  double heat_W = 0.0;
  for (std::size_t row = 0; row < shop.hold.size(); ++row) {
    if (!shop.hold[row]) continue;
    const HeldRoom room = room_held_by(*shop.hold[row], slab_degC, outdoor_degC);
    heat_W += shop.heated_m2[row] * std::max(0.0, room.up_W_per_m2 + room.down_W_per_m2);
  }
  return heat_W;
}

std::optional<double> boiler_keeps_to_degC(const Shop& shop, double slab_degC, double boiler_W) {
  const auto spare_W = [&](double outdoor_degC) { return boiler_W - hold_W(shop, slab_degC, outdoor_degC); };
  const Root outdoor = root_in_bracket(spare_W, coldest_weather_degC, warmest_weather_degC, to_a_hair);
  if (outdoor.stop != Stop::converged) return std::nullopt;
  return outdoor.x;
}

}  // namespace slabwright::freeze
