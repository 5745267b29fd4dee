// Five resistances and one store, EN ISO 13790:2008, Annex C: six results of an open program's own tests, for a room of
// 7 x 4.9 x 3.1 m. Through the equations that the year's rooms are solved with: air, surfaces and mass as three nodes.
// Where that program departs from the standard (real inner surface in place of 4.5 floor areas, the opaque wall's
// conductance without the mass's own film) so does the room here.
#include <algorithm>
#include <string>

#include "building/year_system.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::building;
using namespace slabwright::test;

namespace {

constexpr double floor_m2 = 34.3, inner_m2 = 142.38, mass_m2 = 2.5 * floor_m2;
constexpr double window_W_per_K = 1.1 * 13.5, wall_W_per_K = 0.2 * 1.69;
constexpr double mass_film_W_per_K = 9.1 * mass_m2, air_film_W_per_K = 3.45 * inner_m2;
constexpr double mass_J_per_K = 165e3 * floor_m2, most_W = 12.0 * floor_m2, gains_W = 10.0;
constexpr double volume_m3 = 7.0 * 4.9 * 3.1, fan_changes = 1.5, leak_changes = 0.5;

struct Case {
  double outdoor_degC, mass_degC, sun_W, recovered_share;
  const char *demand, *mass;
};

double air_W_per_K(double recovered_share) {
  return 1200.0 * volume_m3 / 3600.0 * (fan_changes * (1.0 - recovered_share) + leak_changes);
}

enum Node : std::size_t { air, surfaces, mass };

/// The three nodes as three rooms without inner faces of their own; only the mass stores.
YearSystem system_of(const Case& given) {
  YearShop shop;
  shop.room.resize(3);
  shop.link = {{air, surfaces, air_film_W_per_K}, {surfaces, mass, mass_film_W_per_K}};
  shop.main = air;
  YearSystem system = year_system(shop);
  for (RoomStep& room : system.room) room.faces_J_per_K = 1.0;
  system.room[mass].air_J_per_K = mass_J_per_K;
  system.room[air].air_out_W_per_K = air_W_per_K(given.recovered_share);
  system.room[surfaces].air_out_W_per_K = window_W_per_K;
  system.room[mass].air_out_W_per_K = wall_W_per_K;
  const double spread_W = 0.5 * gains_W + given.sun_W;
  system.room[air].air_W = 0.5 * gains_W;
  system.room[mass].air_W = mass_m2 / inner_m2 * spread_W;
  system.room[surfaces].air_W = (1.0 - mass_m2 / inner_m2 - window_W_per_K / (9.1 * inner_m2)) * spread_W;
  return system;
}

struct Hour {
  double demand_W = 0.0, mass_degC = 0.0, air_degC = 0.0;
};

/// Means over the hour: what stores nothing has no other, so that where it began says nothing.
Hour hour_of(const Case& given) {
  YearSystem system = system_of(given);
  ShopState from;
  from.outdoor_degC = given.outdoor_degC;
  from.air_degC = {0.0, 0.0, given.mass_degC};
  from.faces_degC = {0.0, 0.0, 0.0};
  ShopDrivers drivers;
  drivers.outdoor_degC = given.outdoor_degC;
  solve(system, from, drivers, 3600.0);
  const auto mean = [&](Node node, double source_W) {
    return 0.5 * (from.air_degC[node] + system.solved.air[node].at(0.0, source_W));
  };
  const double idle_degC = mean(air, 0.0), per_W = mean(air, 1.0) - idle_degC;
  Hour hour;
  if (idle_degC < 20.0) hour.demand_W = std::min(most_W, (20.0 - idle_degC) / per_W);
  if (idle_degC > 26.0) hour.demand_W = std::max(-most_W, (26.0 - idle_degC) / per_W);
  hour.mass_degC = mean(mass, hour.demand_W);
  hour.air_degC = mean(air, hour.demand_W);
  return hour;
}

constexpr Case cases[] = {{10.0, 22.0, 2000.0, 0.0, "0.00", "22.33"},    {10.0, 22.0, 2000.0, 0.66, "0.00", "22.44"},
                          {10.0, 20.0, 2000.0, 0.0, "328.09", "20.46"},  {5.0, 19.0, 2000.0, 0.0, "411.60", "19.39"},
                          {25.0, 24.0, 4000.0, 0.0, "-264.75", "25.15"}, {30.0, 25.0, 5000.0, 0.0, "-411.60", "26.49"}};

}  // namespace

TEST_CASE("an hour of five resistances and one store, six times") {
  const Source source{"EN ISO 13790:2008, Annex C", "tests of an open program, its own surfaces",
                      Oracle::reference_code};
  for (const Case& given : cases) {
    const Hour hour = hour_of(given);
    const auto whole = [](double value) { return std::to_string(static_cast<int>(value)); };
    const std::string name = "outdoors " + whole(given.outdoor_degC) + ", mass " + whole(given.mass_degC) + " degC, " +
                             whole(given.sun_W) + " W of sun" + (given.recovered_share > 0.0 ? ", heat recovered" : "");
    CHECK_PUBLISHED(source, name + ": demand, W", given.demand, hour.demand_W);
    CHECK_PUBLISHED(source, name + ": mass, degC", given.mass, hour.mass_degC);
  }
  const Source ours{"EN ISO 13790:2008, Annex C", "the same equations by a second program", Oracle::derived};
  CHECK_PUBLISHED(ours, "heater at its most: air, degC", "18.3522", hour_of(cases[3]).air_degC);
  CHECK_PUBLISHED(ours, "cooler at its most: air, degC", "28.0961", hour_of(cases[5]).air_degC);
}
