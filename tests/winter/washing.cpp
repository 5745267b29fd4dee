// Heat and water in the shop that nobody has: how much can dry, and what is said of either.
#include <algorithm>

#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "winter/season.hpp"
#include "winter_shops.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const WayEntry off = plain_way("off", WayFloor::off);

WinterLine shop_with(double wash_kg, double people_number) {
  Design design = priced_shop();
  design.work.wash_kg = wash_kg;
  design.work.people_number = people_number;
  design.way = {off};
  return winter_line(design);
}

bool says(const WinterLine& line, const std::string& code) {
  WinterWishes wishes;
  wishes.raises_hold = false;
  const auto winter = winter_of(line.shop(), coarse_fields(), wishes);
  REQUIRE(winter);
  return std::any_of(winter.said.begin(), winter.said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

constexpr double through_kg_per_s = 0.2, indoor_degC = 20.0, dry_outdoors = 0.002;

winter::Drying dried(double wet_kg, double dryer_kg_per_s = 0.0) {
  winter::SeasonWashing washing;
  washing.dryer_kg_per_s = dryer_kg_per_s;
  washing.pressure_Pa = standard_atmosphere_Pa;
  return winter::drying(washing, {through_kg_per_s, dry_outdoors, indoor_degC}, wet_kg);
}

}  // namespace

TEST_CASE("a wet floor dries as fast as the air carries it away, and takes the heat of that") {
  // ASHRAE Handbook of Fundamentals, psychrometrics, saturated air at 20 C: 14.7 g to a kg of dry air (from memory).
  const double leaves_kg_per_s = through_kg_per_s * (0.0147 - dry_outdoors);
  const winter::Drying flood = dried(1e4);
  CHECK(flood.dries_kg_per_s == Approx(leaves_kg_per_s).epsilon(0.01));
  CHECK(flood.heat_W == Approx(flood.dries_kg_per_s * vaporisation_J_per_kg));
  // Colder air by 2 K, as the line from here says: the curve of saturation bends up from it.
  winter::SeasonWashing washing;
  washing.pressure_Pa = standard_atmosphere_Pa;
  const double cold_W = winter::drying(washing, {through_kg_per_s, dry_outdoors, indoor_degC - 2.0}, 1e4).heat_W;
  CHECK(flood.heat_W - 2.0 * flood.heat_W_per_K == Approx(cold_W).epsilon(0.02));
  CHECK(flood.heat_W - 2.0 * flood.heat_W_per_K < cold_W);
}

TEST_CASE("a little water dries within the hour, whatever the air could take") {
  const winter::Drying little = dried(1.8);
  CHECK(little.dries_kg_per_s == Approx(1.8 / 3600.0));
  CHECK(little.heat_W == Approx(1.8 / 3600.0 * vaporisation_J_per_kg));
  CHECK(little.heat_W_per_K == 0.0);
}

TEST_CASE("what a dryer takes out dries too, and gives its heat back") {
  const winter::Drying alone = dried(1e4), with = dried(1e4, 0.01);
  CHECK(with.dries_kg_per_s == Approx(alone.dries_kg_per_s + 0.01));
  CHECK(with.heat_W == Approx(alone.heat_W));
}

TEST_CASE("what is wet when work ends dries on, until the next washing") {
  const auto dries_kg = [](double from_h, double to_h) {
    WinterLine line = shop_with(150.0, 0.0);
    line.design.work.hours = {from_h * 3600.0, to_h * 3600.0};
    return result_of_way(line, off).dries_kg;
  };
  const double short_kg = dries_kg(8.0, 9.0), long_kg = dries_kg(8.0, 20.0);
  CHECK(short_kg > 0.7 * long_kg);
  CHECK(result_of_way(shop_with(5.0, 0.0), off).dries_kg > 0.9 * 5.0 * 250.0);
}

TEST_CASE("no flood of washing water takes a shop far below the air outdoors, and it is said") {
  CHECK(!says(shop_with(5.0, 0.0), "winter.washing"));
  for (const double fan_m3_per_s : {0.0, 0.8, 15.0}) {
    CAPTURE(fan_m3_per_s);
    WinterLine flooded = shop_with(35000.0, 0.0);
    flooded.design.work.dryer_kg = fan_m3_per_s > 0.0 ? 0.0 : 35000.0;
    Exhaust fan;
    fan.flow_m3_per_s = fan_m3_per_s;
    if (fan_m3_per_s > 0.0) flooded.design.exhaust = {fan};
    CHECK(says(flooded, "winter.washing") == (fan_m3_per_s > 0.0));
    const WayResult result = result_of_way(flooded, off);
    // The floor is wet through and through: its air comes to the wet bulb, some kelvin under the coldest of three days.
    constexpr std::size_t days_h = 72;
    for (std::size_t hour = days_h; hour < result.air_degC.size(); ++hour) {
      const auto from = result.outdoor_degC.begin() + static_cast<std::ptrdiff_t>(hour - days_h);
      REQUIRE(result.air_degC[hour] > *std::min_element(from, from + static_cast<std::ptrdiff_t>(days_h)) - 10.0);
    }
  }
}

TEST_CASE("a shop full of people beyond all measure is run to its end, and said") {
  CHECK(!says(shop_with(0.0, 4.0), "winter.too-hot"));
  const WinterLine crowded = shop_with(0.0, 900.0);
  const WayResult result = result_of_way(crowded, off);
  CHECK(*std::max_element(result.air_degC.begin(), result.air_degC.end()) > winter::hottest_air_degC);
  CHECK(says(crowded, "winter.too-hot"));
}
