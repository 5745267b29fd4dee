// Each part of a bill by itself, and what must hold between bills.
#include "slabwright/handbook_price.hpp"

#include <stdexcept>

#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double kWh_J = 3.6e6, kW_W = 1e3;

MeterUse steady(double kW, std::size_t hours = 8760) {
  MeterUse use;
  use.hourly_J.assign(hours, kW * kWh_J);
  return use;
}

}  // namespace

TEST_CASE("what never runs costs the charge a month, and without a tariff there are kWh only") {
  Tariff tariff;
  tariff.standing_money = 18.5;
  tariff.money_per_J = 0.05595 / kWh_J;
  tariff.demand = {{PriceTimes{}, 10.0 / kW_W}};
  const YearBill nothing = electricity_bill(steady(0.0), tariff);
  CHECK(nothing.money()->total() == Approx(12.0 * 18.5));
  CHECK(nothing.months[3].money->total() == 18.5);
  const YearBill kWh_only = electricity_bill(steady(2.0), std::nullopt);
  CHECK(kWh_only.use_J() == Approx(2.0 * 8760.0 * kWh_J));
  CHECK(kWh_only.months[1].use_J == Approx(2.0 * 28.0 * 24.0 * kWh_J));
  CHECK(kWh_only.peak_W() == 2.0 * kW_W);
  CHECK_FALSE(kWh_only.money());
  CHECK(electricity_bill(steady(2.0, 8784), std::nullopt).months[1].use_J == Approx(2.0 * 29.0 * 24.0 * kWh_J));
  CHECK(electricity_bill(steady(2.0, 8784), std::nullopt).months[11].use_J == Approx(2.0 * 31.0 * 24.0 * kWh_J));
}

TEST_CASE("times go over midnight and over the new year, and know the days of the week") {
  const PriceTimes night{1, 12, PriceDays::every, 22, 6};
  for (int hour = 0; hour < 24; ++hour) CHECK(price_holds(night, 5, 2, hour) == (hour >= 22 || hour < 6));
  const PriceTimes winter{10, 5};
  for (int month = 1; month <= 12; ++month) CHECK(price_holds(winter, month, 0, 0) == (month >= 10 || month <= 5));
  const PriceTimes work{1, 12, PriceDays::monday_to_friday, 7, 17}, off{1, 12, PriceDays::saturday_and_sunday, 0, 24};
  for (int day = 0; day < 7; ++day) {
    CHECK(price_holds(work, 1, day, 7) == (day < 5));
    CHECK(price_holds(off, 1, day, 23) == (day >= 5));
    CHECK_FALSE(price_holds(work, 1, day, 17));
  }
}

TEST_CASE("weekdays run on through the year from the first of January") {
  Tariff tariff;
  tariff.money_per_J = 1.0 / kWh_J;
  tariff.timed = {{{1, 12, PriceDays::saturday_and_sunday}, 0.0}};
  MeterUse use = steady(1.0);
  for (int first = 0; first < 7; ++first) {
    use.first_weekday = first;
    // 365 days are 52 weeks and the first weekday once more.
    const int working_days = 52 * 5 + (first < 5 ? 1 : 0);
    CHECK(electricity_bill(use, tariff).money()->energy_money == Approx(24.0 * working_days));
  }
  // From a Thursday on, January has five Saturdays and, with the 4th, 11th, 18th and 25th, four Sundays.
  use.first_weekday = 3;
  CHECK(electricity_bill(use, tariff).months[0].money->energy_money == Approx(24.0 * (31 - 9)));
}

TEST_CASE("the first timed price that holds counts") {
  Tariff tariff;
  tariff.money_per_J = 0.30 / kWh_J;
  tariff.timed = {{{1, 12, PriceDays::every, 22, 6}, 0.05 / kWh_J}, {{6, 8}, 0.50 / kWh_J}};
  const YearBill bill = electricity_bill(steady(1.0), tariff);
  CHECK(bill.months[0].money->energy_money == Approx(31.0 * (8.0 * 0.05 + 16.0 * 0.30)));
  CHECK(bill.months[6].money->energy_money == Approx(31.0 * (8.0 * 0.05 + 16.0 * 0.50)));
}

TEST_CASE("tiers take the kWh of each month in turn, on top of the hour's price") {
  Tariff tariff;
  tariff.tiers = {{0.0, 0.10 / kWh_J}, {500.0 * kWh_J, 0.08 / kWh_J}, {1000.0 * kWh_J, 0.06 / kWh_J}};
  const double april = electricity_bill(steady(2.0), tariff).months[3].money->energy_money;  // 1440 kWh
  CHECK(april == Approx(500.0 * 0.10 + 500.0 * 0.08 + 440.0 * 0.06));
  CHECK(electricity_bill(steady(0.5), tariff).months[3].money->energy_money == Approx(360.0 * 0.10));
  tariff.money_per_J = 0.02 / kWh_J;
  CHECK(electricity_bill(steady(0.5), tariff).months[3].money->energy_money == Approx(360.0 * 0.12));
}

TEST_CASE("a demand price looks at its own hours, and a ratchet at the whole year") {
  MeterUse use = steady(1.0);
  use.peak_W.assign(8760, 2000.0);
  use.peak_W[9] = 20000.0;            // January, 9 to 10
  use.peak_W[31 * 24 + 3] = 50000.0;  // February, by night
  Tariff tariff;
  tariff.demand = {{{1, 12, PriceDays::every, 7, 21}, 10.0 / kW_W}};
  const YearBill plain = electricity_bill(use, tariff);
  CHECK(plain.months[0].billed_W[0] == 20000.0);
  CHECK(plain.months[1].billed_W[0] == 2000.0);
  CHECK(plain.months[1].peak_W == 50000.0);
  CHECK(plain.money()->demand_money == Approx(10.0 * (20.0 + 11.0 * 2.0)));
  tariff.demand[0].ratchet_share = 0.8;
  CHECK(electricity_bill(use, tariff).money()->demand_money == Approx(10.0 * (20.0 + 11.0 * 16.0)));
  tariff.demand[0].ratchet_share = 0.0;
  tariff.demand[0].least_W = 5000.0;
  CHECK(electricity_bill(use, tariff).money()->demand_money == Approx(10.0 * (20.0 + 11.0 * 5.0)));
  tariff.demand[0].when.first_month = 11;
  tariff.demand[0].when.last_month = 3;
  const YearBill season = electricity_bill(use, tariff);
  CHECK(season.money()->demand_money == Approx(10.0 * (20.0 + 4.0 * 5.0)));
  CHECK(season.months[6].billed_W[0] == 0.0);
}

TEST_CASE("a quarter of an hour shows at the most what the heater can and what the hour has") {
  CHECK(most_demand_W(1.0 * kWh_J, 14400.0) == Approx(4000.0));
  CHECK(most_demand_W(9.0 * kWh_J, 14400.0) == 14400.0);
  CHECK(most_demand_W(1.0 * kWh_J, 14400.0, 3600.0) == Approx(1000.0));
  CHECK(most_demand_W(0.0, 14400.0) == 0.0);
}

TEST_CASE("on a meter that others use too heat costs what it adds") {
  Tariff house;
  house.standing_money = 20.0;
  house.money_per_J = 0.12 / kWh_J;
  house.demand = {{PriceTimes{}, 10.0 / kW_W}};
  const YearBill shop = electricity_bill(steady(3.0), house);
  const YearBill added = bill_added_by(electricity_bill(steady(5.0), house), shop);
  CHECK(added.money()->standing_money == Approx(0.0));
  CHECK(added.money()->energy_money == Approx(2.0 * 8760.0 * 0.12));
  CHECK(added.money()->demand_money == Approx(12.0 * 10.0 * 2.0));
  CHECK(added.months[7].billed_W[0] == Approx(2000.0));
}

TEST_CASE("what makes no sense is refused") {
  CHECK_THROWS_AS(electricity_bill(steady(1.0, 100), std::nullopt), std::logic_error);
  CHECK_THROWS_AS(electricity_bill(steady(-1.0), std::nullopt), std::logic_error);
  MeterUse low = steady(2.0);
  low.peak_W.assign(8760, 1000.0);
  CHECK_THROWS_AS(electricity_bill(low, std::nullopt), std::logic_error);
  Tariff tariff;
  tariff.tiers = {{500.0, 0.1}, {500.0, 0.2}};
  CHECK_THROWS_AS(electricity_bill(steady(1.0), tariff), std::logic_error);
  tariff.tiers.clear();
  tariff.timed = {{{1, 12, PriceDays::every, 6, 6}, 0.1}};
  CHECK_THROWS_AS(electricity_bill(steady(1.0), tariff), std::logic_error);
}
