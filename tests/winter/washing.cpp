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

winter::Season season_with(double wash_kg, double dryer_kg = 0.0) {
  WinterLine line = shop_with(wash_kg, 0.0);
  line.design.work.dryer_kg = dryer_kg;
  const WinterShop shop = line.shop();
  const auto year = year_shop(shop.design, shop.envelope, shop.floor, shop.watched, coarse_fields());
  REQUIRE(year);
  return winter::season_of(shop, *year);
}

}  // namespace

TEST_CASE("washing dries wholly where the air carries it away, and no faster than that where it does not") {
  const winter::Season some = season_with(5.0);
  // But for an hour of summer or two, as damp outdoors as in.
  CHECK(some.wash_dries_kg == Approx(some.wash_stated_kg).epsilon(1e-3));
  const winter::Season much = season_with(2000.0), flood = season_with(100000.0);
  CHECK(much.wash_dries_kg < 0.2 * much.wash_stated_kg);
  CHECK(flood.wash_dries_kg == Approx(much.wash_dries_kg));
  // A dryer takes its own share beside the air.
  const double days = much.wash_stated_kg / 2000.0, dryer_kg = 24.0;
  const double more_kg = season_with(2000.0, dryer_kg).wash_dries_kg - much.wash_dries_kg;
  double worked_h = 0.0;
  for (const winter::SeasonHour& hour : much.hour) worked_h += hour.worked ? 1.0 : 0.0;
  CHECK(more_kg == Approx(worked_h * dryer_kg / 24.0));
  CHECK(days > 200.0);
}

TEST_CASE("each hour's drying takes its heat, and full air at the sea holds 14.7 g/kg at 20 C") {
  // ASHRAE Handbook of Fundamentals, psychrometrics, saturated air at 20 C: 14.7 g to a kg of dry air (from memory).
  CHECK(humidity_ratio_of(20.0, 1.0, standard_atmosphere_Pa) == Approx(0.0147).epsilon(0.01));
  const winter::Season dry = season_with(0.0), wet = season_with(2000.0);
  for (std::size_t i = 0; i < winter::hours_of_year; i += 7) {
    double heat_W = 0.0;
    for (std::size_t room = 0; room < wet.drivers[i].air_W.size(); ++room)
      heat_W += dry.drivers[i].air_W[room] - wet.drivers[i].air_W[room] + dry.drivers[i].faces_W[room] -
                wet.drivers[i].faces_W[room];
    const double dries_kg_per_s = wet.hour[i].vapour_kg_per_s - dry.hour[i].vapour_kg_per_s;
    CHECK(heat_W == Approx(dries_kg_per_s * vaporisation_J_per_kg).margin(1e-6));
    if (!wet.hour[i].worked) CHECK(dries_kg_per_s == 0.0);
  }
}

TEST_CASE("a flood of washing water leaves a shop that can be, and is said") {
  CHECK(!says(shop_with(5.0, 0.0), "winter.washing"));
  const WinterLine flooded = shop_with(35000.0, 0.0);
  CHECK(says(flooded, "winter.washing"));
  const WayResult result = result_of_way(flooded, off);
  for (std::size_t hour = 0; hour < result.air_degC.size(); ++hour)
    CHECK(result.air_degC[hour] > result.outdoor_degC[hour] - 40.0);
}

TEST_CASE("a shop full of people beyond all measure is run to its end, and said") {
  CHECK(!says(shop_with(0.0, 4.0), "winter.too-hot"));
  const WinterLine crowded = shop_with(0.0, 900.0);
  const WayResult result = result_of_way(crowded, off);
  CHECK(*std::max_element(result.air_degC.begin(), result.air_degC.end()) > winter::hottest_air_degC);
  CHECK(says(crowded, "winter.too-hot"));
}
