// Ways of running: what each costs, in what order they come, and that every joule of each is accounted for.
#include <algorithm>
#include <cmath>

#include "winter/tally.hpp"
#include "winter_shops.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Of what a year's heat comes to.
constexpr double balance_share = 1e-9;

bool same(const WayResult& one, const WayResult& other) {
  bool places = one.place.size() == other.place.size();
  for (std::size_t i = 0; places && i < one.place.size(); ++i)
    places = one.place[i].name == other.place[i].name && one.place[i].coldest_degC == other.place[i].coldest_degC;
  return places && one.way == other.way && one.use_J == other.use_J && one.money == other.money &&
         one.peak_W == other.peak_W && one.air_degC == other.air_degC && one.floor_degC == other.floor_degC &&
         one.use_hour_J == other.use_hour_J && one.comfort.below_Ks == other.comfort.below_Ks &&
         one.source.locked_s == other.source.locked_s && one.floor_lead_h == other.floor_lead_h &&
         one.source_lead_h == other.source_lead_h;
}

/// Parts that must add up, whatever the way.
void check_sums(const WayResult& way) {
  CAPTURE(way.way.name);
  CHECK(std::abs(way.heat.missing_J()) < balance_share * (way.heat.in_J() + std::abs(way.heat.light_J)));
  double use_J = 0.0, floor_J = 0.0, source_J = 0.0, hours_J = 0.0, money = 0.0;
  for (const WayMonth& month : way.month) {
    use_J += month.boiler_J + month.source_J + month.pump_J;
    CHECK(month.use_J == Approx(month.boiler_J + month.source_J + month.pump_J));
    floor_J += month.floor_heat_J;
    source_J += month.source_heat_J;
    money += month.money.value_or(0.0);
    CHECK(month.peak_W <= way.peak_W * (1.0 + 1e-12));
  }
  for (const double hour_J : way.use_hour_J) hours_J += hour_J;
  CHECK(use_J == Approx(way.use_J).epsilon(1e-9));
  CHECK(hours_J == Approx(way.use_J).epsilon(1e-9));
  CHECK(floor_J == Approx(way.heat.tubes_J).epsilon(1e-9));
  CHECK(source_J == Approx(way.heat.source_J).epsilon(1e-9));
  if (way.money) CHECK(money == Approx(*way.money).epsilon(1e-9));
  CHECK(way.comfort.below_s <= way.comfort.worked_s);
  CHECK(way.comfort.cold_s <= way.comfort.below_s);
  CHECK(way.comfort.failed_mornings <= way.comfort.mornings);
  CHECK(way.source.longest_locked_s <= way.source.locked_s);
  for (const double air_degC : way.air_degC) REQUIRE(std::isfinite(air_degC));
}

/// A way that fails any of the three comes after all that fail none. Of those that pass the cheaper is first; of those
/// that fail one that keeps frost out, then one that is warm.
void check_order(const Winter& winter) {
  for (std::size_t i = 1; i < winter.way.size(); ++i) {
    const WayResult &before = winter.way[i - 1], &after = winter.way[i];
    CHECK(before.fails.any() <= after.fails.any());
    if (after.fails.any()) {
      if (before.fails.any()) CHECK(before.fails.frost_hold <= after.fails.frost_hold);
      if (before.fails.any() && before.fails.frost_hold == after.fails.frost_hold)
        CHECK(before.fails.comfort <= after.fails.comfort);
      continue;
    }
    if (before.money && after.money) CHECK(*before.money <= *after.money);
    if (!before.money && !after.money) CHECK(before.use_J <= after.use_J);
  }
}

}  // namespace

TEST_CASE("every way of every layout: heat balances, parts add up, what fails comes last") {
  for (const Layout& of : layouts()) {
    CAPTURE(of.name);
    if (!of.file.design.climate.outdoor_degC) continue;
    const WinterLine line = winter_line(of.file.design);
    const Winter winter = winter_in(line);
    REQUIRE(!winter.way.empty());
    for (const WayResult& way : winter.way) check_sums(way);
    check_order(winter);
  }
}

TEST_CASE("a way that never runs costs the standing charge, and nothing without one") {
  WinterLine line = winter_line(priced_shop());
  const WayEntry off = plain_way("off", WayFloor::off);
  const WayResult result = result_of_way(line, off);
  CHECK(result.use_J == 0.0);
  CHECK(result.peak_W == 0.0);
  CHECK(result.heat.tubes_J == 0.0);
  CHECK(*result.money == Approx(12.0 * 15.0));
  for (const WayMonth& month : result.month) CHECK(*month.money == Approx(15.0));
  CHECK(result.fails.comfort);
  line.design.electricity.standing.reset();
  CHECK(*result_of_way(line, off).money == 0.0);
  line.design.electricity.price.reset();
  CHECK(!result_of_way(line, off).money);
}

TEST_CASE("a way that fails anything never comes before one that fails nothing, however cheap") {
  WayResult sound;
  sound.use_J = 1e10;
  sound.money = 900.0;
  for (const WayFails fails :
       {WayFails{true, false, false}, WayFails{false, true, false}, WayFails{false, false, true}}) {
    WayResult cheap = sound;
    cheap.fails = fails;
    cheap.money = 1.0;
    CHECK(winter::ranks_before(sound, cheap));
    CHECK(!winter::ranks_before(cheap, sound));
  }
  WayResult cheaper = sound;
  cheaper.money = 899.0;
  cheaper.use_J = 2e10;
  CHECK(winter::ranks_before(cheaper, sound));
  cheaper.money.reset();
  sound.money.reset();
  CHECK(winter::ranks_before(sound, cheaper));
}

TEST_CASE("a floor that stays off costs little and comes last") {
  WinterLine line = winter_line(priced_shop());
  line.boiler_W = 30e3;
  line.design.way = {plain_way("off", WayFloor::off), plain_way("work", WayFloor::work)};
  const Winter winter = winter_in(line);
  REQUIRE(winter.way.size() == 2);
  const bool off_first = winter.way[0].way.name == "off";
  const WayResult &off = winter.way[off_first ? 0 : 1], &work = winter.way[off_first ? 1 : 0];
  CHECK(off.fails.comfort);
  CHECK(off.fails.frost_hold);
  CHECK(!work.fails.comfort);
  CHECK(!work.fails.frost_hold);
  CHECK(*off.money < *work.money);
  CHECK(off_first == work.fails.any());
}

TEST_CASE("the same shop, the same bytes") {
  const WinterLine line = winter_line(priced_shop());
  const Winter once = winter_in(line), again = winter_in(line);
  REQUIRE(once.way.size() == again.way.size());
  CHECK(once.way.size() == 5);
  for (std::size_t i = 0; i < once.way.size(); ++i) CHECK(same(once.way[i], again.way[i]));
}

TEST_CASE("what a way is worth does not hang on the others it stands beside") {
  WinterLine line = winter_line(priced_shop());
  WayEntry past = plain_way("past", WayFloor::work);
  past.last_winter = true;
  const WayEntry hold = plain_way("hold", WayFloor::frost_hold, WaySource::in_working_hours);
  line.design.way = {past, hold};
  const Winter two = winter_in(line);
  line.design.way = {past, plain_way("off", WayFloor::off), hold};
  const Winter three = winter_in(line);
  const auto find = [](const Winter& winter, const std::string& name) {
    return *std::find_if(winter.way.begin(), winter.way.end(), [&](const auto& way) { return way.way.name == name; });
  };
  CHECK(same(find(two, "hold"), find(three, "hold")));
  CHECK(same(find(two, "past"), find(three, "past")));
}

TEST_CASE("the floor at work all winter is warm, and holds what it is set to") {
  const WinterLine line = winter_line(priced_shop());
  const WayResult work = result_of_way(line, plain_way("work", WayFloor::work));
  CHECK(work.comfort.failed_mornings == 0);
  CHECK(!work.fails.comfort);
  // Air by the thermostat: within its deadband through the coldest months, but for what sun and people bring.
  double lowest_degC = 100.0;
  for (int hour = 0; hour < 59 * 24; ++hour)
    lowest_degC = std::min(lowest_degC, work.air_degC[static_cast<std::size_t>(hour)]);
  CHECK(lowest_degC > 16.0 - 1.0);
  CHECK(work.source.ran_s == 0.0);
  CHECK(work.month[6].boiler_J == 0.0);
}
