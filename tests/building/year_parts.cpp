// Rooms of a shop and what acts on them: links, sun, the second source, what leaves more.
#include "year_shop.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// The same heat and weather for so many hours.
ShopRun& run_on(ShopRun& run, const ShopDrivers& drivers, double tube_W_per_m2, double source_W, int hours) {
  for (int hour = 0; hour < hours; ++hour) {
    run.reach(drivers, StepLength::hour);
    run.take(tube_W_per_m2, source_W);
  }
  return run;
}

const BuiltShop& two_rooms() {
  static const BuiltShop built = built_shop(shop_with_store());
  return built;
}

double missing_share(const ShopRun& run) { return std::abs(run.heat().missing_J()) / run.heat().in_J(); }

}  // namespace

TEST_CASE("rooms cover their floors, and are joined where they touch") {
  const YearShop& shop = two_rooms().year;
  REQUIRE(shop.room.size() == 2);
  REQUIRE(shop.link.size() == 1);
  CHECK(shop.room[0].floor_m2 == Approx(81.0));
  CHECK(shop.room[1].floor_m2 == Approx(27.0));
  CHECK(shop.link[0].W_per_K > 10.0);
  double covered_m2[2] = {0.0, 0.0};
  for (std::size_t i = 0; i < shop.zone.floor.size(); ++i)
    covered_m2[shop.strip_room[i]] += shop.zone.floor[i].length_m * shop.zone.floor[i].width_m;
  CHECK(covered_m2[0] == Approx(81.0));
  CHECK(covered_m2[1] == Approx(27.0));
  CHECK(shop.slab_J_per_K == Approx(108.0 * 0.12 * 2300.0 * 880.0));
}

TEST_CASE("a link carries heat from the warm room to the cold one, and makes them one when it is wide") {
  YearShop shop = two_rooms().year;
  const auto difference_K = [&](double W_per_K) {
    shop.link[0].W_per_K = W_per_K;
    ShopRun run(shop, settled(shop, 10.0, -10.0, 20.0));
    run_on(run, outdoors(-10.0), 20.0, 5000.0, 30 * 24);
    CHECK(missing_share(run) < 1e-9);
    return run.state().air_degC[0] - run.state().air_degC[1];
  };
  const double apart = difference_K(0.0), usual = difference_K(two_rooms().year.link[0].W_per_K);
  CHECK(apart > usual + 0.5);
  CHECK(usual > 0.0);
  CHECK(std::abs(difference_K(1e7)) < 0.01);
}

TEST_CASE("what stands in the air takes it towards its own temperature and never past it") {
  const BuiltShop built = built_shop(described_shop());
  const ShopState start = settled(built.year, 10.0, 0.0, 10.0);
  constexpr double vehicle_degC = -30.0;
  double before_degC = 1e9;
  for (const double W_per_K : {10.0, 1e3, 1e6, 1e9}) {
    CAPTURE(W_per_K);
    ShopDrivers drivers = outdoors(0.0);
    drivers.beside_W_per_K = {W_per_K};
    drivers.beside_W = {W_per_K * vehicle_degC};
    ShopRun run(built.year, start);
    for (int hour = 0; hour < 5; ++hour) {
      run_on(run, drivers, 10.0, 0.0, 1);
      CHECK(run.state().air_degC[0] > vehicle_degC);
    }
    CHECK(run.state().air_degC[0] < before_degC);
    CHECK(missing_share(run) < 1e-9);
    before_degC = run.state().air_degC[0];
  }
  CHECK(before_degC == Approx(vehicle_degC).margin(1e-3));
}

TEST_CASE("sun on the floor warms the floor first, and gives all it brings") {
  const BuiltShop built = built_shop(described_shop());
  const YearShop& shop = built.year;
  const ShopState start = settled(shop, 10.0, 0.0, 10.0);
  ShopDrivers sunny = outdoors(0.0), warmed = outdoors(0.0);
  sunny.floor_W_per_m2 = {50.0};
  warmed.air_W = {50.0 * shop.room[0].floor_m2};
  ShopRun plain(shop, start), sun(shop, start), air(shop, start);
  run_on(plain, outdoors(0.0), 10.0, 0.0, 1);
  run_on(sun, sunny, 10.0, 0.0, 1);
  run_on(air, warmed, 10.0, 0.0, 1);
  CHECK(sun.heat().sun_J == Approx(50.0 * 108.0 * hour_s));
  CHECK(sun.now().floor_degC > plain.now().floor_degC + 1.0);
  CHECK(sun.now().floor_degC > air.now().floor_degC);
  CHECK(sun.now().air_degC > plain.now().air_degC);
  CHECK(sun.now().air_degC < air.now().air_degC);
  CHECK(missing_share(sun) < 1e-9);
  // In the long run it does not matter where in the room it arrives, but for what faces and floor lose.
  run_on(sun, sunny, 10.0, 0.0, 90 * 24);
  run_on(air, warmed, 10.0, 0.0, 90 * 24);
  CHECK(sun.heat().light_J + sun.heat().opaque_J + sun.heat().ground_J ==
        Approx(air.heat().light_J + air.heat().opaque_J + air.heat().ground_J).epsilon(0.1));
}

TEST_CASE("what of the second source lies under the roof is lost") {
  const BuiltShop built = built_shop(described_shop());
  const YearShop& shop = built.year;
  const ShopState start = settled(shop, 10.0, -10.0, 20.0);
  ShopDrivers layered = outdoors(-10.0);
  layered.layered_share = 0.2;
  ShopRun all(shop, start), part(shop, start), less(shop, start);
  const double whole = all.reach(outdoors(-10.0), StepLength::hour).air_degC.per_source_K_per_W;
  CHECK(part.reach(layered, StepLength::hour).air_degC.per_source_K_per_W == Approx(0.8 * whole));
  run_on(part, layered, 20.0, 5000.0, 240);
  run_on(less, outdoors(-10.0), 20.0, 4000.0, 240);
  CHECK(part.now().air_degC == Approx(less.now().air_degC).margin(1e-9));
  CHECK(part.heat().layered_J == Approx(0.2 * part.heat().source_J));
  CHECK(missing_share(part) < 1e-9);
}

TEST_CASE("what leaves more cools its own room most, and shows in its own account") {
  const YearShop& shop = two_rooms().year;
  const ShopState start = settled(shop, 10.0, -10.0, 25.0);
  ShopDrivers open = outdoors(-10.0);
  open.more_W_per_K = {0.0, 200.0};
  ShopRun shut(shop, start), door(shop, start);
  run_on(shut, outdoors(-10.0), 25.0, 0.0, 6);
  run_on(door, open, 25.0, 0.0, 6);
  CHECK(shut.heat().more_J == 0.0);
  CHECK(door.heat().more_J > 6 * hour_s * 200.0 * 5.0);
  const auto colder_K = [&](std::size_t room) { return shut.state().air_degC[room] - door.state().air_degC[room]; };
  CHECK(colder_K(1) > 4.0 * colder_K(0));
  CHECK(colder_K(0) > 0.0);
}

TEST_CASE("a cold floor takes heat out of warm air, less with every hour once the walls are warm") {
  const BuiltShop built = built_shop(described_shop());
  const YearShop& shop = built.year;
  ShopRun run(shop, settled(shop, 3.0, -5.0, 0.0));
  double last_W = 0.0;
  for (int hour = 0; hour < 10; ++hour) {
    const StepEnds& reach = run.reach(outdoors(-5.0), StepLength::hour);
    run.take(0.0, (16.0 - reach.air_degC.idle_degC) / reach.air_degC.per_source_K_per_W);
    CHECK(run.now().air_degC == Approx(16.0));
    CHECK(run.now().up_W < 0.0);
    if (hour > 6) CHECK(run.now().up_W > last_W);
    last_W = run.now().up_W;
  }
}
