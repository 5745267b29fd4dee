#include "winter/money.hpp"

#include "slabwright/units_exact.hpp"

namespace slabwright::winter {

std::optional<Tariff> tariff_of(const Electricity& electricity) {
  if (!electricity.price) return std::nullopt;
  Tariff tariff;
  tariff.money_per_J = electricity.price->money_per_J;
  if (electricity.standing) tariff.standing_money = electricity.standing->money;
  for (const TimedPriceText& timed : electricity.timed) tariff.timed.push_back(timed.price);
  for (const TierText& tier : electricity.tiers) tariff.tiers.push_back(tier.price);
  for (const DemandText& demand : electricity.demand) tariff.demand.push_back(demand.price);
  return tariff;
}

MeterUse meter_of(const std::vector<WayHour>& hours) {
  MeterUse use;
  use.hourly_J.resize(hours_of_year);
  use.peak_W.resize(hours_of_year);
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const WayHour& hour = hours[i];
    const double use_J = hour.boiler_J + hour.source_J + hour.pump_J;
    use.hourly_J[of_year(i)] = use_J;
    use.peak_W[of_year(i)] = std::max(hour.peak_W, use_J / hour_s);
  }
  return use;
}

YearBill heat_bill(const MeterUse& heat, const Electricity& electricity, double other_J) {
  const auto tariff = tariff_of(electricity);
  const YearBill alone = electricity_bill(heat, tariff);
  if (!tariff || electricity.heat_meter || other_J <= 0.0) return alone;
  // What else there is comes evenly: nobody has said when.
  const double other_W = other_J * 12.0 / year_long_s;
  MeterUse other, both = heat;
  other.hourly_J.assign(hours_of_year, other_W * hour_s);
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    both.hourly_J[i] += other.hourly_J[i];
    both.peak_W[i] += other_W;
  }
  YearBill added = bill_added_by(electricity_bill(both, tariff), electricity_bill(other, tariff));
  for (std::size_t month = 0; month < 12; ++month) {
    added.months[month].use_J = alone.months[month].use_J;
    added.months[month].peak_W = alone.months[month].peak_W;
    if (added.months[month].money) added.months[month].money->standing_money = tariff->standing_money;
  }
  return added;
}

}  // namespace slabwright::winter
