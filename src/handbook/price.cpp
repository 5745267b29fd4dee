#include <algorithm>
#include <cstddef>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_price.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double peak_rounding = 1e-12;  ///< of a peak against the mean it was made of
constexpr std::size_t common_year_h = 8760, leap_year_h = 8784;

bool in_ring(int at, int first, int last) {
  return first <= last ? at >= first && at <= last : at >= first || at <= last;
}

bool covers_month(const PriceTimes& times, int month) { return in_ring(month, times.first_month, times.last_month); }

void check_times(const PriceTimes& times) {
  const auto month = [](int at) { return at >= 1 && at <= 12; };
  expects(month(times.first_month) && month(times.last_month), "months from 1 to 12");
  expects(times.from_hour >= 0 && times.from_hour < 24, "a price begins at an hour from 0 to 23");
  expects(times.to_hour >= 1 && times.to_hour <= 24 && times.to_hour != times.from_hour, "and ends at another, to 24");
}

void check_tariff(const Tariff& tariff) {
  for (const TimedPrice& price : tariff.timed) check_times(price.when);
  double before_J = -1.0;
  for (const TierPrice& tier : tariff.tiers) {
    expects(tier.from_J > before_J && tier.from_J >= 0.0, "tiers follow each other");
    before_J = tier.from_J;
  }
  for (const DemandPrice& price : tariff.demand) {
    check_times(price.when);
    expects(price.least_W >= 0.0, "demand is not negative");
    expects(price.ratchet_share >= 0.0 && price.ratchet_share <= 1.0, "a ratchet is a share");
  }
}

void check_use(const MeterUse& use) {
  const std::size_t hours = use.hourly_J.size();
  const auto not_negative = [](double value) { return value >= 0.0; };
  expects(hours == common_year_h || hours == leap_year_h, "the hours of a year");
  expects(use.peak_W.empty() || use.peak_W.size() == hours, "a peak for each hour, or none");
  expects(std::all_of(use.hourly_J.begin(), use.hourly_J.end(), not_negative), "use is not negative");
  for (std::size_t hour = 0; hour < use.peak_W.size(); ++hour)
    expects(use.peak_W[hour] >= use.hourly_J[hour] / hour_s * (1.0 - peak_rounding),
            "an hour's peak is not below its mean");
  expects(use.first_weekday >= 0 && use.first_weekday < 7, "a weekday from 0 to 6");
}

/// Calls `visit(hour of the year, month from 1, weekday, hour of the day)` for every hour.
template <class Visit>
void walk_year(const MeterUse& use, Visit visit) {
  const bool leap = use.hourly_J.size() == leap_year_h;
  const std::array<int, 12> days{31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  int month = 1, day = 0;
  for (std::size_t hour = 0; hour < use.hourly_J.size(); ++hour) {
    const int today = static_cast<int>(hour / 24);
    if (today - day >= days[static_cast<std::size_t>(month - 1)]) day += days[static_cast<std::size_t>(month++ - 1)];
    visit(hour, month, (use.first_weekday + today) % 7, static_cast<int>(hour % 24));
  }
}

double demand_W(const MeterUse& use, std::size_t hour) {
  return use.peak_W.empty() ? use.hourly_J[hour] / hour_s : use.peak_W[hour];
}

double hour_price(const Tariff& tariff, int month, int weekday, int hour) {
  for (const TimedPrice& price : tariff.timed) {
    if (price_holds(price.when, month, weekday, hour)) return price.money_per_J;
  }
  return tariff.money_per_J;
}

double tiers_cost(const std::vector<TierPrice>& tiers, double month_J) {
  double sum = 0.0;
  for (std::size_t at = 0; at < tiers.size(); ++at) {
    const double end = at + 1 < tiers.size() ? std::min(month_J, tiers[at + 1].from_J) : month_J;
    sum += tiers[at].money_per_J * std::max(0.0, end - tiers[at].from_J);
  }
  return sum;
}

/// What each demand price bills in each month before money is made of it.
void bill_demand(YearBill& bill, const DemandPrice& price, const std::array<double, 12>& highest_W) {
  const double bound = price.ratchet_share * *std::max_element(highest_W.begin(), highest_W.end());
  for (std::size_t month = 0; month < 12; ++month) {
    const bool held = covers_month(price.when, static_cast<int>(month) + 1);
    const double billed = held ? std::max({highest_W[month], bound, price.least_W}) : 0.0;
    bill.months[month].billed_W.push_back(billed);
    bill.months[month].money->demand_money += price.money_per_W * billed;
  }
}

std::array<double, 12> highest_of_months_W(const MeterUse& use, const PriceTimes& when) {
  std::array<double, 12> highest{};
  walk_year(use, [&](std::size_t at, int month, int weekday, int hour) {
    double& so_far = highest[static_cast<std::size_t>(month - 1)];
    if (price_holds(when, month, weekday, hour)) so_far = std::max(so_far, demand_W(use, at));
  });
  return highest;
}

}  // namespace

bool price_holds(const PriceTimes& times, int month, int weekday, int hour) {
  const bool weekend = weekday >= 5;
  if (!covers_month(times, month)) return false;
  if (times.days == PriceDays::monday_to_friday && weekend) return false;
  if (times.days == PriceDays::saturday_and_sunday && !weekend) return false;
  return in_ring(hour, times.from_hour, times.to_hour - 1);
}

double most_demand_W(double hour_J, double full_W, double averaged_s) {
  expects(hour_J >= 0.0 && full_W >= hour_J / hour_s * (1.0 - peak_rounding), "a heater takes what it can");
  expects(averaged_s > 0.0 && averaged_s <= hour_s, "averaged within the hour");
  return std::max(hour_J / hour_s, std::min(full_W, hour_J / averaged_s));
}

double YearBill::use_J() const {
  double sum = 0.0;
  for (const MonthBill& month : months) sum += month.use_J;
  return sum;
}

double YearBill::peak_W() const {
  double highest = 0.0;
  for (const MonthBill& month : months) highest = std::max(highest, month.peak_W);
  return highest;
}

std::optional<Money> YearBill::money() const {
  Money sum;
  for (const MonthBill& month : months) {
    if (!month.money) return std::nullopt;
    sum.energy_money += month.money->energy_money;
    sum.demand_money += month.money->demand_money;
    sum.standing_money += month.money->standing_money;
  }
  return sum;
}

YearBill electricity_bill(const MeterUse& use, const std::optional<Tariff>& tariff) {
  check_use(use);
  if (tariff) check_tariff(*tariff);
  YearBill bill;
  for (MonthBill& month : bill.months) {
    if (tariff) month.money = Money{0.0, 0.0, tariff->standing_money};
  }
  walk_year(use, [&](std::size_t at, int number, int weekday, int hour) {
    MonthBill& month = bill.months[static_cast<std::size_t>(number - 1)];
    month.use_J += use.hourly_J[at];
    month.peak_W = std::max(month.peak_W, demand_W(use, at));
    if (tariff) month.money->energy_money += use.hourly_J[at] * hour_price(*tariff, number, weekday, hour);
  });
  if (!tariff) return bill;
  for (MonthBill& month : bill.months) month.money->energy_money += tiers_cost(tariff->tiers, month.use_J);
  for (const DemandPrice& price : tariff->demand) bill_demand(bill, price, highest_of_months_W(use, price.when));
  return bill;
}

YearBill bill_added_by(const YearBill& with_it, const YearBill& without_it) {
  YearBill out = with_it;
  for (std::size_t at = 0; at < 12; ++at) {
    MonthBill& month = out.months[at];
    const MonthBill& before = without_it.months[at];
    expects(month.billed_W.size() == before.billed_W.size(), "two bills of one tariff");
    month.use_J -= before.use_J;
    month.peak_W -= before.peak_W;
    for (std::size_t price = 0; price < month.billed_W.size(); ++price) month.billed_W[price] -= before.billed_W[price];
    if (!month.money || !before.money) {
      month.money.reset();
      continue;
    }
    month.money->energy_money -= before.money->energy_money;
    month.money->demand_money -= before.money->demand_money;
    month.money->standing_money -= before.money->standing_money;
  }
  return out;
}

}  // namespace slabwright
