// Which way a setting moves when one thing changes.
#include "freeze/holds.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// The lowest air that keeps everything, at the first room's sensor.
double air_of(const Design& d) {
  const Freeze freeze = hold_of(d);
  REQUIRE(freeze.verdict == FreezeVerdict::found);
  return asked_air_degC(freeze);
}

}  // namespace

TEST_CASE("colder outdoors never lowers a setting") {
  for (Design d : {bare_shop(), door_shop(), shop_with_store()}) {
    double last_air = -100.0, last_slab = -100.0;
    for (double coldest_degC = 8.0; coldest_degC >= -27.0; coldest_degC -= 2.5) {
      d.climate.coldest_degC = coldest_degC;
      const Freeze freeze = hold_of(d);
      REQUIRE(freeze.verdict == FreezeVerdict::found);
      CHECK(asked_air_degC(freeze) >= last_air - 1e-4);
      CHECK(asked_slab_degC(freeze) >= last_slab - 1e-4);
      last_air = asked_air_degC(freeze);
      last_slab = asked_slab_degC(freeze);
    }
  }
}

TEST_CASE("warmer ground never raises a setting") {
  Design d = door_shop();
  double last = 100.0;
  for (const double mean_degC : {-5.0, 0.0, 5.0, 10.0, 15.0}) {
    d.climate.mean_degC = mean_degC;
    const double now = air_of(d);
    CHECK(now < last);
    last = now;
  }
}

TEST_CASE("more insulation at the edge, in the strip or under the slab never raises what a place asks for") {
  const auto asks = [](const Design& d, const std::string& word) {
    const Freeze freeze = hold_of(d);
    for (const PlaceAtSetting& place : freeze.place)
      if (place.decides && place.name.find(word) != std::string::npos) return place.asks_air_degC.value_or(100.0);
    throw std::logic_error("no such place: " + word);
  };
  Design d = door_shop();
  double last = 200.0, last_corner = 200.0;
  for (const double edge_m2K_per_W : {0.0, 0.5, 1.8, 3.5}) {
    d.edge.insulation = {edge_m2K_per_W};
    CHECK(asks(d, "inside the outer wall") < last);
    CHECK(asks(d, "corners") < last_corner);
    last = asks(d, "inside the outer wall");
    last_corner = asks(d, "corners");
  }
  d = door_shop();
  last = 200.0;
  for (const double strip_m2K_per_W : {0.0, 0.5, 1.8, 4.0}) {
    d.edge.door_strip = {strip_m2K_per_W};
    CHECK(asks(d, "big door") < last);
    last = asks(d, "big door");
  }
}

TEST_CASE("a tube further in never raises a setting") {
  Design d = door_shop();
  double last = 100.0;
  for (const double distance_m : {0.2, 0.3, 0.45, 0.7}) {
    d.opening[0].tube_distance_m = distance_m;
    const double now = air_of(d);
    CHECK(now <= last + 1e-5);  // the search's own tolerance, once the corners decide
    last = now;
  }
  CHECK(last < air_of(door_shop()) - 2.0);
}

TEST_CASE("a leakier building needs a warmer slab for the same air") {
  Design d = bare_shop();
  d.edge.insulation = {1.8};  // a corner without foam would ask a poor building for too warm a floor
  d.building.quality = Quality::tight;
  const Freeze tight = hold_of(d);
  d.building.quality = Quality::poor;
  const Freeze poor = hold_of(d);
  REQUIRE(tight.verdict == FreezeVerdict::found);
  REQUIRE(poor.verdict == FreezeVerdict::found);
  CHECK(asked_air_degC(poor) == Approx(asked_air_degC(tight)).margin(1e-4));
  CHECK(poor.slab->best_degC > tight.slab->best_degC + 3.0);
  CHECK(poor.hold_W > 1.5 * tight.hold_W);
}

TEST_CASE("margins, door air and own limits move the setting their way") {
  const double plain = air_of(door_shop());
  Design d = door_shop();
  d.frost_hold.margin_K = 3.0;
  CHECK(air_of(d) > plain + 1.0);
  d = door_shop();
  d.frost_hold.door_air_share = 0.0;
  double last = air_of(d);
  CHECK(last < plain - 1.0);
  for (const double share : {0.02, 0.05, 0.1, 0.2}) {
    d.frost_hold.door_air_share = share;
    const double now = air_of(d);
    CHECK(now > last + 0.1);
    last = now;
  }
  d = door_shop();
  d.frost_hold.pipe_limit_degC = 13.5;
  CHECK(air_of(d) == Approx(13.5).margin(1e-4));
  d = door_shop();
  d.watch = {{"tap", WatchKind::wall_pipe, "shop", 5.5, 0.2}};
  CHECK(air_of(d) == Approx((5.5 + 0.2 * 27.0) / 0.8).margin(1e-4));
}
