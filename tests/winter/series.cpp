// What sheets draw of a winter, held against the winter that it is of.
#include <algorithm>

#include "winter_shops.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Winter with_series(const WinterLine& line) {
  WinterWishes wishes;
  wishes.raises_hold = false;
  wishes.series = true;
  const auto winter = winter_of(line.shop(), coarse_fields(), wishes);
  REQUIRE(winter);
  REQUIRE(winter.value->series);
  return *winter.value;
}

WinterLine held_line() {
  WinterLine line = winter_line(priced_shop());
  line.design.way = {plain_way("frost hold", WayFloor::frost_hold, WaySource::in_working_hours)};
  return line;
}

void check_costs(const std::vector<SettingCost>& costs, double lowest_degC) {
  CHECK(costs.size() >= 8);
  for (std::size_t i = 0; i < costs.size(); ++i) {
    CHECK(costs[i].keeps == (costs[i].setting_degC >= lowest_degC - 1e-9));
    REQUIRE(costs[i].money);
    if (i == 0) continue;
    CHECK(costs[i].setting_degC > costs[i - 1].setting_degC);
    CHECK(costs[i].use_J >= costs[i - 1].use_J);
  }
  CHECK_FALSE(costs.front().keeps);
  CHECK(costs.back().keeps);
}

double sum_J(const std::vector<double>& hourly_W) {
  double sum = 0.0;
  for (const double W : hourly_W) sum += 3600.0 * W;
  return sum;
}

}  // namespace

TEST_CASE("a winter costs more the warmer the floor is held, by either sensor") {
  const WinterLine line = held_line();
  const Winter winter = with_series(line);
  const WinterSeries& series = *winter.series;
  CHECK(series.way == "frost hold");
  CHECK(series.air_lowest_degC == line.hold_air_degC);
  REQUIRE(series.slab_lowest_degC);
  check_costs(series.air, *series.air_lowest_degC);
  check_costs(series.slab, *series.slab_lowest_degC);
  // At the lowest setting it is the way itself, and the row of `hold`.
  const auto lowest = std::find_if(series.air.begin(), series.air.end(), [](const SettingCost& c) { return c.keeps; });
  CHECK(lowest->use_J == winter.way.front().use_J);
  CHECK(lowest->use_J == winter.hold.front().use_J);
  CHECK(lowest->money == winter.way.front().money);
}

TEST_CASE("no series where none was wished for, and none of settings where no way holds frost") {
  CHECK_FALSE(winter_in(held_line()).series);
  WinterLine line = winter_line(priced_shop());
  line.design.way = {plain_way("work", WayFloor::work)};
  const Winter winter = with_series(line);
  CHECK(winter.series->way.empty());
  CHECK(winter.series->air.empty());
  CHECK(winter.series->slab.empty());
  CHECK(winter.series->week);
}

TEST_CASE("the coldest week is the end of the snap, named by its hour, and its energy adds up") {
  const WinterLine line = held_line();
  const Winter winter = with_series(line);
  REQUIRE(winter.series->week);
  const WinterWeek& week = *winter.series->week;
  CHECK(week.way == winter.way.front().way.name);
  REQUIRE(week.outdoor_degC.size() == 168);
  for (const auto* of : {&week.air_degC, &week.slab_degC, &week.floor_degC, &week.boiler_W, &week.source_W,
                         &week.floor_heat_W, &week.source_heat_W})
    CHECK(of->size() == 168);
  const std::vector<double>& snap = line.snap.hourly_degC;
  CHECK(std::equal(week.outdoor_degC.begin(), week.outdoor_degC.end(), snap.end() - 168));
  CHECK(week.lowest_outdoor_degC == line.snap.coldest_degC);
  // 8 January is where the snap with its lead is laid in.
  CHECK(week.first_hour == 7 * 24 + static_cast<int>(snap.size()) - 168);
  CHECK(week.month == 1);
  CHECK(week.day == 1 + week.first_hour / 24);
  CHECK(week.lowest_air_degC == *std::min_element(week.air_degC.begin(), week.air_degC.end()));
  // What the pump draws is in the sum alone.
  const double boiler_J = sum_J(week.boiler_W), source_J = sum_J(week.source_W);
  CHECK(week.use_J > boiler_J + source_J);
  CHECK(week.use_J < boiler_J + source_J + 168.0 * 3600.0 * 60.0);
  CHECK(week.locked_s > 0.0);
  CHECK(sum_J(week.source_heat_W) > source_J);
}

TEST_CASE("an owner's choices: warmer costs more, a second source and foam cost less") {
  WinterLine line = held_line();
  const std::vector<double> settings{7.0, 11.0, 15.0};
  const auto bare = owner_costs(line.shop(), coarse_fields(), settings, 2);
  REQUIRE(bare.size() == 6);
  for (std::size_t i = 0; i < bare.size(); ++i) {
    CHECK(bare[i].second_source == (i >= 3));
    CHECK(bare[i].air_degC == settings[i % 3]);
    if (i % 3 > 0) CHECK(bare[i].use_J > bare[i - 1].use_J);
  }
  Design insulated = line.design;
  insulated.insulation.under.resistance_m2K_per_W = 3.6;
  WinterLine warm = winter_line(insulated);
  const auto foamed = owner_costs(warm.shop(), coarse_fields(), settings, 2);
  REQUIRE(foamed.size() == 6);
  for (std::size_t i = 0; i < foamed.size(); ++i) CHECK(foamed[i].use_J < bare[i].use_J);
  line.design.second_source = {};
  CHECK(owner_costs(line.shop(), coarse_fields(), settings, 2).size() == 3);
}
