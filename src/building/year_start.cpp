// Where a year begins: after years of one wave, before anything was built, or where the last one ended.
#include <cmath>

#include "building/year_strip.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {

using namespace building;

namespace {

constexpr double whole_turn = 2.0 * pi;

ShopState rooms_at(const YearShop& shop, const ZoneDrivers& at) {
  ShopState state;
  state.outdoor_degC = at.outdoor_degC;
  state.tube_W_per_m2 = state.sensed_W_per_m2 = at.tube_W_per_m2;
  state.air_degC.assign(shop.room.size(), at.air_degC);
  state.faces_degC = state.air_degC;
  state.effective_degC.assign(shop.zone.floor.size(), at.air_degC);
  state.tubes_over_K.assign(shop.zone.floor.size(), 0.0);
  return state;
}

/// Strips under a cosine of the year between mean and coldest, the floor's own film left out of it.
void add_strips(ShopState& state, const YearShop& shop, const ZoneHistory& history, double since_coldest_s) {
  for (const FloorStrip& strip : shop.zone.floor) {
    const auto drivers = [&](const ZoneDrivers& at, double ground_degC) {
      return drivers_of(strip, {at.air_degC, at.outdoor_degC}, ground_degC, at.tube_W_per_m2);
    };
    PeriodicDrivers year{common_year_s,
                         drivers(history.mean, shop.zone.ground_degC),
                         drivers(history.coldest_month, shop.zone.ground_degC),
                         {}};
    for (std::size_t i = 0; i < year.mean.size(); ++i) year.cosine[i] -= year.mean[i];
    year.sine.assign(year.mean.size(), 0.0);
    const StateValues now = swinging_state(strip.states, year, since_coldest_s);
    state.strip.insert(state.strip.end(), now.begin(), now.end());
    PeriodicDrivers tubes{common_year_s, drivers({0.0, 0.0, history.mean.tube_W_per_m2}, 0.0),
                          drivers({0.0, 0.0, history.coldest_month.tube_W_per_m2 - history.mean.tube_W_per_m2}, 0.0),
                          year.sine};
    const StateValues of_tubes = swinging_state(strip.states, tubes, since_coldest_s);
    state.of_tubes.insert(state.of_tubes.end(), of_tubes.begin(), of_tubes.end());
  }
}

}  // namespace

ShopState begun(const YearShop& shop, const ZoneHistory& history, double since_coldest_s) {
  const double c = std::cos(whole_turn * since_coldest_s / common_year_s);
  const auto between = [c](double mean, double coldest) { return mean + c * (coldest - mean); };
  const ZoneDrivers& mean = history.mean;
  const ZoneDrivers& cold = history.coldest_month;
  ShopState state =
      rooms_at(shop, {between(mean.air_degC, cold.air_degC), between(mean.outdoor_degC, cold.outdoor_degC),
                      between(mean.tube_W_per_m2, cold.tube_W_per_m2)});
  add_strips(state, shop, history, since_coldest_s);
  return state;
}

ShopState unbuilt(const YearShop& shop, double mean_degC, double half_swing_K, double since_coldest_s) {
  const double coldest_degC = mean_degC - half_swing_K;
  return begun(shop, {{mean_degC, mean_degC, 0.0}, {coldest_degC, coldest_degC, 0.0}}, since_coldest_s);
}

ShopState carried_on(const YearShop& shop, const ShopState& began, const ShopState& ended, double year_s) {
  expects(began.strip.size() == ended.strip.size(), "year: two shops");
  ShopState state = ended;
  std::size_t row = 0;
  for (const FloorStrip& strip : shop.zone.floor) {
    for (const double decay_per_s : strip.states.decay_per_s) {
      // x(end) = exp(-z) x(begin) + what the year brought; at rest both are one.
      const double left = -std::expm1(-decay_per_s * year_s);
      state.strip[row] = began.strip[row] + (ended.strip[row] - began.strip[row]) / left;
      state.of_tubes[row] = began.of_tubes[row] + (ended.of_tubes[row] - began.of_tubes[row]) / left;
      ++row;
    }
  }
  return state;
}

}  // namespace slabwright
