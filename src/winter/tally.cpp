#include "winter/tally.hpp"

#include <algorithm>

#include "slabwright/units_exact.hpp"

#include "winter/money.hpp"

namespace slabwright::winter {
namespace {

void add_energy(WayResult& result, const WayCase& way, const WayYear& year) {
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const WayHour& hour = year.hour[i];
    WayMonth& month = result.month[static_cast<std::size_t>(way.season.hour[i].month - 1)];
    month.boiler_J += hour.boiler_J;
    month.source_J += hour.source_J;
    month.pump_J += hour.pump_J;
    month.use_J += hour.boiler_J + hour.source_J + hour.pump_J;
    month.floor_heat_J += hour.floor_heat_J;
    month.source_heat_J += hour.source_heat_J;
    result.boiler_short_s += hour.boiler_short_s;
  }
}

void add_money(WayResult& result, const WayYear& year, const Design& design) {
  const Electricity& electricity = design.electricity;
  const YearBill bill = heat_bill(meter_of(year.hour), electricity, design.bill.other_J);
  result.use_J = bill.use_J();
  result.peak_W = bill.peak_W();
  if (const auto money = bill.money()) result.money = money->total();
  if (electricity.carbon_kg_per_J) result.carbon_kg = *electricity.carbon_kg_per_J * result.use_J;
  double worst = -1.0;
  for (std::size_t month = 0; month < 12; ++month) {
    const MonthBill& of = bill.months[month];
    result.month[month].peak_W = of.peak_W;
    if (of.money) result.month[month].money = of.money->total();
    const double costs = of.money ? of.money->total() : of.use_J;
    if (costs > worst) result.worst_month = static_cast<int>(month) + 1;
    worst = std::max(worst, costs);
  }
}

/// Highest less lowest of the day that ends with this hour.
template <class Of>
double day_swing_K(const WayYear& year, std::size_t last, Of of) {
  double low = of(year.hour[last]), high = low;
  for (std::size_t i = last - 23; i <= last; ++i) {
    low = std::min(low, of(year.hour[i]));
    high = std::max(high, of(year.hour[i]));
  }
  return high - low;
}

void add_comfort(WayResult& result, const WayCase& way, const WayYear& year) {
  Comfort& comfort = result.comfort;
  comfort.cold_below_degC = way.work_degC - cold_K;
  comfort.lowest_degC = 1e9;
  double days = 0.0, worked_days = 0.0;
  std::size_t last_day = hours_of_year;
  for (std::size_t i = 1; i < hours_of_year; ++i) {
    const SeasonHour& at = way.season.hour[i];
    if (!in_season(way.season, at.month)) continue;
    const WayHour& hour = year.hour[i];
    if (at.clock == 23) {
      days += 1.0;
      comfort.air_swing_K += day_swing_K(year, i, [](const WayHour& of) { return of.air_degC; });
      comfort.slab_swing_K += day_swing_K(year, i, [](const WayHour& of) { return of.sensor_degC; });
    }
    if (!at.worked) continue;
    const bool morning = !way.season.hour[i - 1].worked;
    const double before_degC = year.hour[i - 1].operative_degC;
    const double short_K = way.work_degC - 0.5 * (before_degC + hour.operative_degC);
    const bool cold = short_K > cold_K;
    comfort.worked_s += hour_s;
    comfort.below_s += short_K > 0.0 ? hour_s : 0.0;
    comfort.below_Ks += std::max(0.0, short_K) * hour_s;
    comfort.cold_s += cold ? hour_s : 0.0;
    comfort.above_s += short_K < -warm_K ? hour_s : 0.0;
    comfort.mornings += morning;
    comfort.failed_mornings += morning && way.work_degC - before_degC > cold_K;
    comfort.lowest_degC = std::min(comfort.lowest_degC, hour.operative_degC);
    worked_days += last_day != i / 24 ? 1.0 : 0.0;
    last_day = i / 24;
    result.cold_floor_J += std::max(0.0, -hour.up_W) * hour_s;
    if (hour.locked_s > 0.0 && cold) result.source.short_s += hour_s;
  }
  comfort.air_swing_K /= std::max(1.0, days);
  comfort.slab_swing_K /= std::max(1.0, days);
  result.cold_floor_J /= std::max(1.0, worked_days);
  if (comfort.worked_s == 0.0) comfort.lowest_degC = 0.0;
}

void add_source(WayResult& result, const WayYear& year) {
  double run_s = 0.0;
  for (const WayHour& hour : year.hour) {
    result.source.ran_s += hour.ran_s;
    result.source.cold_start_s += hour.cold_start_s;
    result.source.locked_s += hour.locked_s;
    run_s = hour.locked_s > 0.0 ? run_s + hour.locked_s : 0.0;
    result.source.longest_locked_s = std::max(result.source.longest_locked_s, run_s);
  }
}

void add_hours(WayResult& result, const WayCase& way, const WayYear& year) {
  for (auto* series :
       {&result.outdoor_degC, &result.air_degC, &result.floor_degC, &result.slab_degC, &result.use_hour_J})
    series->resize(hours_of_year);
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const WayHour& hour = year.hour[i];
    const std::size_t at = of_year(i);
    result.outdoor_degC[at] = way.season.hour[i].outdoor_degC;
    result.air_degC[at] = hour.air_degC;
    result.floor_degC[at] = hour.floor_degC;
    result.slab_degC[at] = hour.sensor_degC;
    result.dries_kg += hour.dries_kg_per_s * hour_s;
    result.use_hour_J[at] = hour.boiler_J + hour.source_J + hour.pump_J;
  }
}

}  // namespace

WayResult tally(const WayCase& way, const WayYear& year, const Design& design) {
  WayResult result;
  add_energy(result, way, year);
  add_money(result, year, design);
  add_comfort(result, way, year);
  add_source(result, year);
  add_hours(result, way, year);
  result.heat = year.heat;
  const Comfort& comfort = result.comfort;
  result.fails.comfort = comfort.cold_s > most_cold_share * comfort.worked_s ||
                         comfort.failed_mornings > most_cold_share * comfort.mornings;
  result.fails.boiler = result.boiler_short_s > most_short_s;
  return result;
}

double price_of(const WayResult& result) { return result.money.value_or(result.use_J); }

bool ranks_before(const WayResult& one, const WayResult& other) {
  if (one.fails.any() != other.fails.any()) return other.fails.any();
  if (one.fails.frost_hold != other.fails.frost_hold) return other.fails.frost_hold;
  if (one.fails.comfort != other.fails.comfort) return other.fails.comfort;
  if (one.fails.comfort && one.comfort.cold_s != other.comfort.cold_s) return one.comfort.cold_s < other.comfort.cold_s;
  return price_of(one) < price_of(other);
}

}  // namespace slabwright::winter
