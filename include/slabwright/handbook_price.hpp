// What a year of electricity costs on one meter: by hours, tiers, the highest demand, and a charge a month.
//
// Money is in whatever currency the prices are in. No price of anybody's is known; all come from the caller.
#pragma once
#include <array>
#include <optional>
#include <vector>

namespace slabwright {

enum class PriceDays { every, monday_to_friday, saturday_and_sunday };

/// When a price holds, by the clock of the series (standard time; where the meter's clock is put forward in summer, one
/// hour off then). Both months included, and October to May goes over the new year. From `from_hour`, 0 to 23, to
/// `to_hour`, 1 to 24; 22 to 6 goes over midnight, and each hour counts to the day that it lies in.
struct PriceTimes {
  int first_month = 1, last_month = 12;
  PriceDays days = PriceDays::every;
  int from_hour = 0, to_hour = 24;
  friend bool operator==(const PriceTimes&, const PriceTimes&) = default;
};
/// `month` 1 to 12, `weekday` 0 for Monday to 6, `hour` 0 to 23 for the hour that begins then.
bool price_holds(const PriceTimes& times, int month, int weekday, int hour);

struct TimedPrice {
  PriceTimes when;
  double money_per_J = 0.0;
  friend bool operator==(const TimedPrice&, const TimedPrice&) = default;
};
/// For what a month takes beyond `from_J`, until the next tier begins; it comes on top of the price of the hour.
struct TierPrice {
  double from_J = 0.0;
  double money_per_J = 0.0;
  friend bool operator==(const TierPrice&, const TierPrice&) = default;
};
/// For the highest demand in a month's hours `when`, in the months of `when` only.
struct DemandPrice {
  PriceTimes when;
  double money_per_W = 0.0;
  double least_W = 0.0;  ///< billed in any case
  /// Billed at least: this share of the highest such demand of twelve months. The year counts as one of many alike, so
  /// a peak of December binds in January.
  double ratchet_share = 0.0;
  friend bool operator==(const DemandPrice&, const DemandPrice&) = default;
};

struct Tariff {
  double standing_money = 0.0;      ///< a month, used or not
  double money_per_J = 0.0;         ///< in hours that no timed price covers
  std::vector<TimedPrice> timed;    ///< the first that holds counts
  std::vector<TierPrice> tiers;     ///< by growing `from_J`
  std::vector<DemandPrice> demand;  ///< all that hold are added up
};

/// A year on one meter. `peak_W` is the highest demand of each hour, averaged as the meter averages (mostly over 15
/// minutes), and not below the hour's mean; empty where nobody knows, and then the hour's mean stands, which is too low
/// for what cycles.
struct MeterUse {
  std::vector<double> hourly_J;  ///< 8760 or 8784, not negative
  std::vector<double> peak_W;    ///< as many, or none
  int first_weekday = 0;         ///< of 1 January, Monday 0 to Sunday 6
};

/// The most that a heater of `full_W` can show on a meter that averages over `averaged_s`, in an hour in which it takes
/// `hour_J`: as much as if all of that came at once.
double most_demand_W(double hour_J, double full_W, double averaged_s = 900.0);

struct Money {
  double energy_money = 0.0, demand_money = 0.0, standing_money = 0.0;
  double total() const { return energy_money + demand_money + standing_money; }
};

struct MonthBill {
  double use_J = 0.0;
  double peak_W = 0.0;           ///< at any hour
  std::vector<double> billed_W;  ///< for each demand price; 0 in a month without it
  std::optional<Money> money;    ///< absent without a tariff
};

struct YearBill {
  std::array<MonthBill, 12> months;
  double use_J() const;
  double peak_W() const;
  std::optional<Money> money() const;  ///< of the year, by parts; absent where a month has none
};

/// Without a tariff use and peaks only. Contract: whole year, nothing negative, hours and months as above, tiers
/// growing.
YearBill electricity_bill(const MeterUse& use, const std::optional<Tariff>& tariff);

/// What a use adds on a meter that others use too: the bill with it less the bill without it, of one tariff. The charge
/// a month falls out, a peak in the shadow of another costs nothing.
YearBill bill_added_by(const YearBill& with_it, const YearBill& without_it);

}  // namespace slabwright
