// Steps of the year: quarters against hours, one film in place of another, a year that begins as it ends.
#include "slabwright/building_snap.hpp"
#include "year_shop.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double year_s = 365.0 * 86400.0;

/// A month under straight weather from hour to hour; the floor holds the air.
ShopRun& run_month(ShopRun& run, StepLength length, const std::vector<double>& tubes,
                   const std::vector<double>& source) {
  const int parts = length == StepLength::hour ? 1 : 4;
  for (std::size_t hour = 0; hour < tubes.size(); ++hour) {
    const double from = outdoor_at(static_cast<double>(hour)), to = outdoor_at(static_cast<double>(hour) + 1.0);
    for (int part = 1; part <= parts; ++part) {
      run.reach(outdoors(from + (to - from) * part / parts), length);
      run.take(tubes[hour], source[hour]);
    }
  }
  return run;
}

/// Strips made with the film of a floor that takes heat.
YearShop with_strips_for_cold_floor(const BuiltShop& built) {
  auto zone = heated_zone(built.of.design, built.of.envelope, built.of.floor, built.of.places, coarse_fields(),
                          FloorHeat::down);
  REQUIRE(zone);
  YearShop shop = built.year;
  for (std::size_t i = 0; i < zone->floor.size(); ++i) zone->floor[i].length_m = shop.zone.floor[i].length_m;
  zone->midway_m2K_per_W = shop.zone.midway_m2K_per_W;
  shop.zone = *zone;
  shop.film_W_per_m2K = floor_film_down_W_per_m2K;
  return shop;
}

struct Apart {
  double air_K = 0.0, sensor_K = 0.0, place_K = 0.0, corner_K = 0.0, up_share = 0.0;
};

/// Weeks in which the floor is warm, then cold under air that the second source warms.
Apart apart(const YearShop& one, const YearShop& other) {
  const ShopState start = settled(one, 8.0, -5.0, 25.0);
  ShopRun a(one, start), b(other, settled(other, 8.0, -5.0, 25.0));
  const auto take = [](ShopRun& run, int hour) {
    run.reach(outdoors(-5.0 + 5.0 * std::sin(hour / 20.0)), StepLength::hour);
    const bool cold_floor = hour >= 6 * 168;
    run.take(cold_floor ? 0.0 : 30.0, cold_floor ? 6000.0 : 0.0);
  };
  // Before the comparison both find their own rest: how each begins is a matter of `begun`.
  for (int hour = 0; hour < 4 * 168; ++hour) {
    take(a, hour);
    take(b, hour);
  }
  Apart worst;
  std::vector<double> places_a, places_b;
  const double up_a = a.heat().floor_up_J, up_b = b.heat().floor_up_J;
  double turned_J = 0.0;
  for (int hour = 4 * 168; hour < 8 * 168; ++hour) {
    take(a, hour);
    take(b, hour);
    a.places(places_a);
    b.places(places_b);
    worst.air_K = std::max(worst.air_K, std::abs(a.now().air_degC - b.now().air_degC));
    worst.sensor_K = std::max(worst.sensor_K, std::abs(a.now().sensor_degC - b.now().sensor_degC));
    for (std::size_t i = 0; i < places_a.size(); ++i) {
      double& place_K = one.zone.place[i].cold_share == 1.0 ? worst.place_K : worst.corner_K;
      place_K = std::max(place_K, std::abs(places_a[i] - places_b[i]));
    }
    turned_J += std::abs(a.now().up_W) * hour_s;
  }
  worst.up_share = std::abs((a.heat().floor_up_J - up_a) - (b.heat().floor_up_J - up_b)) / turned_J;
  return worst;
}

/// A year whose heat does not ask for the state: on in the cold months.
ShopRun& run_year(ShopRun& run) {
  for (int hour = 0; hour < year_h; ++hour) {
    run.reach(weather_at(hour + 1.0), StepLength::hour);
    run.take(outdoor_at(hour) < 4.0 ? 30.0 : 0.0, hour % 24 > 7 && hour % 24 < 17 ? 1000.0 : 0.0);
  }
  return run;
}

double farthest_K(const ShopState& one, const ShopState& other) {
  double farthest = std::abs(one.air_degC[0] - other.air_degC[0]);
  for (std::size_t k = 0; k < one.strip.size(); ++k)
    farthest = std::max(farthest, std::abs(one.strip[k] - other.strip[k]));
  return farthest;
}

}  // namespace

TEST_CASE("four quarters are an hour, but for the air between") {
  for (const Design& design : {described_shop(), shop_with_store()}) {
    const BuiltShop built = built_shop(design);
    std::vector<double> tubes(720, 0.0), source(720, 0.0);
    for (std::size_t hour = 0; hour < tubes.size(); ++hour) {
      tubes[hour] = hour / 36 % 2 == 0 ? 50.0 : 10.0;
      source[hour] = hour % 24 > 7 && hour % 24 < 17 ? 3000.0 : 0.0;
    }
    const ShopState start = settled(built.year, 10.0, outdoor_at(0.0), 30.0);
    ShopRun hours(built.year, start), quarters(built.year, start);
    run_month(hours, StepLength::hour, tubes, source);
    run_month(quarters, StepLength::quarter, tubes, source);
    CAPTURE(hours.now().air_degC, quarters.now().air_degC);
    CHECK(hours.now().air_degC == Approx(quarters.now().air_degC).margin(0.05));
    CHECK(hours.now().sensor_degC == Approx(quarters.now().sensor_degC).margin(0.02));
    CHECK(hours.heat().tubes_J == Approx(quarters.heat().tubes_J));
    CHECK(hours.heat().floor_up_J == Approx(quarters.heat().floor_up_J).epsilon(0.002));
    CHECK(hours.heat().light_J == Approx(quarters.heat().light_J).epsilon(0.002));
  }
}

// What the extra resistance cannot know is how heat differs across a strip: it is taken as if all of the floor gave its
// mean. For the whole way from the film of 50 W/m2 upward, 10.4 W/m2K, to that of a cold floor, 6.5, this moves the air
// by 0.17 K, the slab's middle by 0.4 K, tubes at the edge by 0.8 K and, times their share, those at corners by 1.6 K;
// between 50 and 15 W/m2 upward, as floors run that hold a shop, it is a fifth of that.
TEST_CASE("strips made with one film stand in for those made with another") {
  for (const Design& design : {described_shop(), shop_with_store()}) {
    const BuiltShop built = built_shop(design);
    const Apart worst = apart(built.year, with_strips_for_cold_floor(built));
    CAPTURE(worst.air_K, worst.sensor_K, worst.place_K, worst.corner_K, worst.up_share);
    CHECK(worst.air_K < 0.2);
    CHECK(worst.sensor_K < 0.5);
    CHECK(worst.place_K < 0.9);
    CHECK(worst.corner_K < 1.8);
    CHECK(worst.up_share < 0.015);
  }
}

TEST_CASE("a year carried on ends as it began") {
  for (const Design& design : {described_shop(), shop_with_store()}) {
    const BuiltShop built = built_shop(design);
    const YearShop& shop = built.year;
    const ShopState far = unbuilt(shop, 7.0, 12.0, 0.0);
    ShopRun first(shop, far);
    const ShopState after = run_year(first).state();
    const ShopState guess = carried_on(shop, far, after, year_s);
    ShopRun second(shop, guess);
    const ShopState once = run_year(second).state();
    ShopRun third(shop, carried_on(shop, guess, once, year_s));
    const ShopState began = third.state(), ended = run_year(third).state();
    CAPTURE(farthest_K(far, after), farthest_K(guess, once), farthest_K(began, ended));
    CHECK(farthest_K(guess, once) < 0.1 * farthest_K(far, after));
    CHECK(farthest_K(began, ended) < 0.02);
    // And it is where year after year leads to by itself.
    ShopRun patient(shop, far);
    for (int year = 0; year < 40; ++year) run_year(patient);
    CHECK(farthest_K(patient.state(), ended) < 0.02);
  }
}

TEST_CASE("a building not begun is as warm as its year, and warms when it is heated") {
  const BuiltShop built = built_shop(described_shop());
  const ShopState state = unbuilt(built.year, 7.0, 12.0, 0.0);
  CHECK(state.air_degC[0] == Approx(-5.0));
  CHECK(state.tube_W_per_m2 == 0.0);
  ShopRun run(built.year, state);
  CHECK(run.now().sensor_degC > -5.0);
  CHECK(run.now().sensor_degC < 7.0);
  const double before_degC = run.now().sensor_degC;
  for (int hour = 0; hour < 240; ++hour) {
    run.reach(outdoors(-5.0), StepLength::hour);
    run.take(40.0, 0.0);
  }
  CHECK(run.now().sensor_degC > before_degC + 5.0);
}
