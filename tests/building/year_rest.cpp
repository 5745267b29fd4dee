// The shop at rest, and against the one zone that frost holds are found with.
#include "slabwright/building_snap.hpp"
#include "year_shop.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double strips_made_for_W_per_m2 = 50.0;

double floor_m2(const YearShop& shop) {
  double sum = 0.0;
  for (const ShopRoom& room : shop.room) sum += room.floor_m2;
  return sum;
}

/// Outdoors under which a floor that holds the air at this gives so much upward.
double outdoors_for(const Zone& zone, double floor, double air_degC, double up_W_per_m2) {
  return air_degC - up_W_per_m2 * floor / zone.loss_W_per_K;
}

void run_hours(ShopRun& run, const ShopDrivers& drivers, double tube_W_per_m2, int hours) {
  for (int hour = 0; hour < hours; ++hour) {
    run.reach(drivers, StepLength::hour);
    run.take(tube_W_per_m2, 0.0);
  }
}

struct Worst {
  double air_K = 0.0, most_colder_K = -1e9, most_warmer_K = -1e9, place_K = 0.0, up_share = 0.0;
};

/// Both under the same tube heat through the design's snap.
Worst against_zone(const ZoneShop& of, const YearShop& shop) {
  const Climate& climate = of.design.climate;
  const ZoneNeeds needs = needs_without_power(of.zone);
  const double month_degC = climate.mean_degC - climate.half_swing_K;
  const ZoneHistory history{held_by_air(of.zone, needs, 8.0, climate.mean_degC),
                            held_by_air(of.zone, needs, 8.0, month_degC)};
  ZoneRun zone(of.zone, history, hour_s);
  ShopRun run(shop, begun(shop, history, 0.0));
  Worst worst;
  std::vector<double> places;
  double zone_up_J = 0.0, hours = 0.0;
  for (const double outdoor_degC : snap_of(of.design).hourly_degC) {
    ZoneStep step;
    step.outdoor_degC = outdoor_degC;
    step.needs = needs;
    step.tube_W_per_m2 = held_by_air(of.zone, needs, 8.0, month_degC).tube_W_per_m2;
    zone.step(step);
    run.reach(outdoors(outdoor_degC), StepLength::hour);
    run.take(step.tube_W_per_m2, 0.0);
    const ZoneRow row = zone.row();
    run.places(places);
    worst.air_K = std::max(worst.air_K, std::abs(row.at.air_degC - run.now().air_degC));
    worst.most_colder_K = std::max(worst.most_colder_K, row.at.air_degC - run.now().air_degC);
    worst.most_warmer_K = std::max(worst.most_warmer_K, run.now().air_degC - row.at.air_degC);
    for (std::size_t i = 0; i < places.size(); ++i)
      worst.place_K = std::max(worst.place_K, std::abs(row.place_degC[i] - places[i]));
    if (++hours > 1.0) zone_up_J += row.up_W * hour_s;
  }
  worst.up_share = std::abs(run.heat().floor_up_J / zone_up_J - 1.0);
  return worst;
}

}  // namespace

TEST_CASE("a room of one node under the film that its strips were made with rests where its zone does") {
  for (const Design& design : {bare_shop(), described_shop()}) {
    const BuiltShop built = built_shop(design);
    const YearShop shop = with_one_node(built.year);
    const double outdoor_degC = outdoors_for(shop.zone, floor_m2(shop), 9.0, strips_made_for_W_per_m2);
    const ZoneNeeds needs = needs_without_power(shop.zone);
    const ZoneDrivers by_air = held_by_air(shop.zone, needs, 9.0, outdoor_degC);
    ShopRun run(shop, settled(shop, 9.0, outdoor_degC, by_air.tube_W_per_m2));
    run_hours(run, outdoors(outdoor_degC), by_air.tube_W_per_m2, 240);
    const ZoneRow zone = ZoneRun(shop.zone, steady_history(by_air), hour_s).row();
    CHECK(run.now().air_degC == Approx(9.0).margin(1e-6));
    CHECK(run.now().up_W == Approx(zone.up_W).epsilon(1e-6));
    CHECK(run.now().sensor_degC == Approx(zone.sensor_degC).margin(1e-6));
    std::vector<double> places;
    run.places(places);
    for (std::size_t i = 0; i < places.size(); ++i) CHECK(places[i] == Approx(zone.place_degC[i]).margin(1e-6));
    const ZoneDrivers by_sensor = held_by_sensor(shop.zone, needs, zone.sensor_degC, outdoor_degC);
    CHECK(run.now().air_degC == Approx(by_sensor.air_degC).margin(1e-6));
    CHECK(by_sensor.tube_W_per_m2 == Approx(by_air.tube_W_per_m2).epsilon(1e-8));
  }
}

TEST_CASE("floor and air as warm as each other, a shop loses what its envelope says") {
  for (const Design& design : {bare_shop(), described_shop()}) {
    const BuiltShop built = built_shop(design);
    // The second source holds the air, tubes the floor's face.
    const YearShop& shop = built.year;
    ShopRun run(shop, settled(shop, 10.0, -15.0, 20.0));
    double source_W = 0.0, tubes = 0.0;
    for (int hour = 0; hour < 200 * 24; ++hour) {
      const StepEnds reach = run.reach(outdoors(-15.0), StepLength::hour);
      tubes = std::max(0.0, tubes + 0.02 * (10.0 - run.now().floor_degC));
      source_W = (10.0 - reach.air_degC.at(tubes, 0.0)) / reach.air_degC.per_source_K_per_W;
      run.take(tubes, source_W);
    }
    CAPTURE(tubes, run.now().up_W, run.now().floor_degC, run.now().faces_degC);
    CHECK(run.now().floor_degC == Approx(10.0).margin(0.01));
    CHECK(source_W + run.now().up_W == Approx(built.of.envelope.total_W_per_K * 25.0).epsilon(1e-3));
  }
}

// What differs: the zone has one node of air and contents, and one film for 50 W/m2. With faces that are one with the
// air only the film is left, a tenth of a kelvin. The year's own faces store as much again and more: as the snap falls
// the air stays up to 0.8 K warmer. And the floor warms them over the air, so that more leaves through walls and roof:
// at rest, for the same heat, the air is 0.3 K colder.
TEST_CASE("the same snap and the same heat: as cold as in the zone, but for walls that store and are radiated at") {
  for (const Design& design : {bare_shop(), described_shop()}) {
    const BuiltShop built = built_shop(design);
    const Worst one_node = against_zone(built.of, with_one_node(built.year)), own = against_zone(built.of, built.year);
    CAPTURE(one_node.air_K, one_node.place_K, one_node.up_share);
    CAPTURE(own.air_K, own.most_colder_K, own.most_warmer_K, own.place_K, own.up_share);
    CHECK(one_node.air_K < 0.2);
    CHECK(one_node.place_K < 0.2);
    CHECK(one_node.up_share < 1e-3);
    CHECK(own.most_warmer_K < 1.0);
    CHECK(own.most_colder_K < 0.5);
    CHECK(own.most_colder_K > 0.1);
    CHECK(own.up_share < 0.01);
  }
}
