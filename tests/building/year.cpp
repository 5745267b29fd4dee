// The shop through years: every joule is accounted for, whatever acts on it.
#include <rapidcheck.h>

#include "year_shop.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Of all that went in through a year: some 9000 sums of rounded numbers, each about 1e-16 of what it adds to.
constexpr double balance_share = 1e-9;

Design undescribed_with_store() {
  Design design = shop_with_store();
  design.building.described = false;
  return design;
}

/// Built once: some hundred runs share them.
const std::vector<BuiltShop>& all_shops() {
  static const std::vector<BuiltShop> shops = [] {
    std::vector<BuiltShop> built;
    for (const Design& design : {bare_shop(), described_shop(), shop_with_store(), undescribed_with_store()})
      built.push_back(built_shop(design));
    return built;
  }();
  return shops;
}

double between(double least, double most) {
  return least + (most - least) * static_cast<double>(*rc::gen::inRange(0, 1001)) / 1000.0;
}

bool finite(const ShopState& state) {
  const auto all = [](const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
  };
  return all(state.air_degC) && all(state.faces_degC) && all(state.strip) && all(state.of_tubes) &&
         all(state.effective_degC) && std::isfinite(state.sensed_W_per_m2);
}

/// What one year hands over, by size: a year in which more is lost than brought in balances against what was lost.
double turned_over_J(const ShopHeat& heat) {
  return std::abs(heat.tubes_J) + std::abs(heat.source_J) + std::abs(heat.air_gains_J) + std::abs(heat.faces_gains_J) +
         std::abs(heat.sun_J) + std::abs(heat.light_J) + std::abs(heat.more_J) + std::abs(heat.opaque_J) +
         std::abs(heat.ground_J);
}

ShopDrivers workshop_hour(const YearShop& shop, int hour) {
  const int clock = hour % 24;
  const std::size_t rooms = shop.room.size();
  ShopDrivers drivers = weather_at(hour + 1.0);
  drivers.layered_share = 0.05;
  drivers.air_W.assign(rooms, 100.0);
  drivers.faces_W.assign(rooms, clock > 9 && clock < 15 ? 400.0 : -20.0);
  drivers.floor_W_per_m2.assign(rooms, clock == 12 ? 30.0 : 0.0);
  drivers.more_W_per_K.assign(rooms, clock == 9 ? 300.0 : 0.0);
  drivers.beside_W_per_K.assign(rooms, clock == 14 ? 200.0 : 0.0);
  drivers.beside_W.assign(rooms, clock == 14 ? -10.0 * 200.0 : 0.0);
  return drivers;
}

/// Steps of an hour, but quarters in the first hour of work.
ShopHeat year_of_work(const YearShop& shop) {
  ShopRun run(shop, begun(shop, {{10.0, 5.0, 10.0}, {10.0, -9.0, 25.0}}, 0.0));
  for (int hour = 0; hour < year_h; ++hour) {
    const bool quarters = hour % 24 == 8;
    for (int part = 0; part < (quarters ? 4 : 1); ++part) {
      const ShopDrivers drivers = workshop_hour(shop, hour);
      const StepEnds& reach = run.reach(drivers, quarters ? StepLength::quarter : StepLength::hour);
      run.take(tube_heat_for(reach, 10.0), hour % 24 > 7 && hour % 24 < 17 ? 3000.0 : 0.0);
    }
    if (!finite(run.state())) throw std::logic_error("a state that is no number");
  }
  return run.heat();
}

ShopDrivers any_drivers(std::size_t rooms) {
  ShopDrivers drivers;
  drivers.outdoor_degC = between(-45.0, 35.0);
  for (std::size_t room = 0; room < rooms; ++room) {
    drivers.more_W_per_K.push_back(between(0.0, 5000.0));
    drivers.air_W.push_back(between(-2e4, 2e4));
    drivers.beside_W_per_K.push_back(between(0.0, 1e4));
    drivers.beside_W.push_back(between(-40.0, 20.0) * drivers.beside_W_per_K.back());
    drivers.faces_W.push_back(between(-1e4, 1e4));
    drivers.floor_W_per_m2.push_back(between(0.0, 400.0));
  }
  drivers.layered_share = between(0.0, 0.3);
  return drivers;
}

}  // namespace

TEST_CASE("a year's heat is accounted for to rounding, in every shop") {
  for (const BuiltShop& shop : all_shops()) {
    const ShopHeat heat = year_of_work(shop.year);
    CAPTURE(shop.year.room.size(), heat.in_J(), heat.missing_J());
    CHECK(std::abs(heat.missing_J()) < balance_share * heat.in_J());
    CHECK(heat.tubes_J > 1e10);
    CHECK(heat.source_J == Approx(9.0 * 365.0 * 3000.0 * 3600.0));
    CHECK(heat.layered_J == Approx(0.05 * heat.source_J));
    CHECK(heat.ground_J > 0.0);
  }
}

TEST_CASE("heat that nobody would bring is accounted for too, and no state is ever no number") {
  CHECK(rc::check("balance", [] {
    const auto& shops = all_shops();
    const YearShop& shop = shops[*rc::gen::inRange<std::size_t>(0, shops.size())].year;
    ShopRun run(shop, settled(shop, between(-10.0, 30.0), between(-40.0, 20.0), between(0.0, 80.0)));
    const int steps = *rc::gen::inRange(1, 100);
    for (int i = 0; i < steps; ++i) {
      run.reach(any_drivers(shop.room.size()), *rc::gen::arbitrary<bool>() ? StepLength::hour : StepLength::quarter);
      run.take(between(0.0, 200.0), between(0.0, 3e4));
      RC_ASSERT(finite(run.state()));
      RC_ASSERT(std::abs(run.heat().missing_J()) < balance_share * turned_over_J(run.heat()));
    }
  }));
}

TEST_CASE("what reach() says of a step is where take() brings it") {
  CHECK(rc::check("reach", [] {
    const auto& shops = all_shops();
    const YearShop& shop = shops[*rc::gen::inRange<std::size_t>(0, shops.size())].year;
    ShopRun run(shop, settled(shop, between(0.0, 20.0), between(-30.0, 10.0), between(0.0, 60.0)));
    for (int i = 0; i < 5; ++i) {
      const StepEnds reach = run.reach(any_drivers(shop.room.size()),
                                       *rc::gen::arbitrary<bool>() ? StepLength::hour : StepLength::quarter);
      const double tubes = between(0.0, 200.0), source_W = between(0.0, 3e4);
      run.take(tubes, source_W);
      RC_ASSERT(std::abs(run.now().air_degC - reach.air_degC.at(tubes, source_W)) < 1e-8);
      RC_ASSERT(std::abs(run.now().sensor_degC - reach.sensor_degC.at(tubes, source_W)) < 1e-8);
    }
  }));
}

TEST_CASE("rows that do not fit a shop are refused") {
  const YearShop& shop = all_shops()[2].year;
  ShopState state = settled(shop, 10.0, 0.0, 10.0);
  state.air_degC.pop_back();
  CHECK_THROWS_AS(ShopRun(shop, state), std::logic_error);
  ShopState other = settled(shop, 10.0, 0.0, 10.0);
  other.strip.pop_back();
  CHECK_THROWS_AS(ShopRun(shop, other), std::logic_error);
  CHECK_THROWS_AS(carried_on(shop, other, settled(shop, 10.0, 0.0, 10.0), 1.0), std::logic_error);
}
