// Bills of electricity, arithmetic worked by hand at prices that stand in real schedules.
#include "slabwright/handbook_price.hpp"

#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source worked{"Arithmetic of electricity bills", "worked by hand", Oracle::derived};

constexpr double kWh_J = 3.6e6, kW_W = 1e3;
constexpr PriceTimes heating_season{10, 4};  // seven months

/// All at one power in the hours that `runs` picks, so that they come to `year_kWh`.
template <class Runs>
MeterUse steady(double year_kWh, Runs runs) {
  MeterUse use;
  int hours = 0;
  for (int hour = 0; hour < 8760; ++hour) hours += runs(hour) ? 1 : 0;
  for (int hour = 0; hour < 8760; ++hour) use.hourly_J.push_back(runs(hour) ? kWh_J * year_kWh / hours : 0.0);
  return use;
}

/// Hours 0 to 2879 are January to April, from 6552 on October to December.
bool in_season(int hour) { return hour < 2880 || hour >= 6552; }

}  // namespace

TEST_CASE("a boiler of 14.4 kW that fires in seven months, at a demand price") {
  MeterUse use = steady(9000.0, in_season);
  for (const double taken : use.hourly_J) use.peak_W.push_back(taken > 0.0 ? 14400.0 : 0.0);
  Tariff tariff;
  tariff.money_per_J = 0.0726 / kWh_J;
  tariff.demand = {{heating_season, 10.0 / kW_W}};
  const YearBill bill = electricity_bill(use, tariff);
  const Money money = *bill.money();
  CHECK_PUBLISHED(worked, "14.4 kW in 7 months, 9000 kWh, 10 a kW and 7.26 c: demand", "1008.00", money.demand_money);
  CHECK_PUBLISHED(worked, "14.4 kW in 7 months, 9000 kWh, 10 a kW and 7.26 c: energy", "653.40", money.energy_money);
  CHECK_PUBLISHED(worked, "14.4 kW in 7 months, 9000 kWh, 10 a kW and 7.26 c: total", "1661.40", money.total());
  CHECK_PUBLISHED(worked, "14.4 kW in 7 months, 9000 kWh, 10 a kW and 7.26 c: c/kWh", "18.46",
                  100.0 * money.total() / (bill.use_J() / kWh_J));
}

TEST_CASE("what a demand price makes of a kilowatt-hour at a low load factor") {
  struct Row {
    double load_factor;
    const char* cents;
  };
  Tariff tariff;
  tariff.money_per_J = 0.0726 / kWh_J;
  tariff.demand = {{PriceTimes{}, 10.0 / kW_W}};
  for (const Row& row :
       {Row{0.05, "34.66"}, Row{0.1, "20.96"}, Row{0.2, "14.11"}, Row{0.4, "10.68"}, Row{0.8, "8.97"}}) {
    MeterUse use = steady(8760.0 * row.load_factor, [](int) { return true; });
    use.peak_W.assign(8760, 1.0 * kW_W);
    const YearBill bill = electricity_bill(use, tariff);
    CHECK_PUBLISHED(worked,
                    "10 a kW and 7.26 c, load factor " + std::to_string(row.load_factor).substr(0, 4) + ": c/kWh",
                    row.cents, 100.0 * bill.money()->total() / (bill.use_J() / kWh_J));
  }
}

TEST_CASE("night price and day price") {
  const auto at_night = [](int hour) { return hour % 24 < 6 || hour % 24 >= 22; };
  MeterUse use = steady(6000.0, at_night);
  const MeterUse day = steady(3000.0, [&](int hour) { return !at_night(hour); });
  for (std::size_t hour = 0; hour < 8760; ++hour) use.hourly_J[hour] += day.hourly_J[hour];
  Tariff tariff;
  tariff.money_per_J = 0.1239 / kWh_J;
  tariff.timed = {{{1, 12, PriceDays::every, 22, 6}, 0.0574 / kWh_J}};
  CHECK_PUBLISHED(worked, "6000 kWh at 5.74 c by night and 3000 kWh at 12.39 c by day", "716.10",
                  electricity_bill(use, tariff).money()->total());
}
