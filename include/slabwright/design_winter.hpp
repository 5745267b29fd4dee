// How the winter is worked, run and paid for: hours, ways, prices, vehicles, last winter's bill.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "design_words.hpp"
#include "fields.hpp"
#include "handbook_price.hpp"

namespace slabwright {

enum class WorkDays { monday_to_friday, monday_to_saturday, every_day, saturday_and_sunday };

/// When people work there, and what comes and goes with them.
struct Work {
  ClockSpan hours;
  WorkDays days = WorkDays::monday_to_friday;
  double people_number = 0.0;
  double wash_kg = 0.0;   ///< of water that dries off in the room, each day of work
  double dryer_kg = 0.0;  ///< that a dehumidifier takes out in a day
  friend bool operator==(const Work&, const Work&) = default;
};

/// A cold vehicle that comes in each day of work and stands until it is as warm as the room.
struct VehicleEntry {
  std::string name;
  std::string room;
  double mass_kg = 0.0;
  ClockTime arrives;
  std::optional<double> temperature_degC;  ///< outdoor air when absent
  double snow_kg = 0.0;                    ///< on it
  double evaporates_share = 0.0;           ///< of that snow; the rest runs off
  friend bool operator==(const VehicleEntry&, const VehicleEntry&) = default;
};

/// Money for an energy: "0.129 /kWh". Inside, money for a joule.
struct EnergyPrice {
  static constexpr std::string_view takes = "money for a kWh", example = "0.129 /kWh";
  double money_per_J = 0.0;
  friend bool operator==(const EnergyPrice&, const EnergyPrice&) = default;
};
std::string read_words(std::string_view text, EnergyPrice& price);
std::string write_words(const EnergyPrice& price, System system);

/// Money for a month: "18.50 a month".
struct MonthPrice {
  static constexpr std::string_view takes = "money for a month", example = "18.50 a month";
  double money = 0.0;
  friend bool operator==(const MonthPrice&, const MonthPrice&) = default;
};
std::string read_words(std::string_view text, MonthPrice& price);
std::string write_words(const MonthPrice& price, System system);

/// "0.058 /kWh, 22:00 to 6:00, every day, october to may": price first, the rest may be left out.
struct TimedPriceText {
  static constexpr std::string_view takes = "a price, and when it holds",
                                    example = "0.058 /kWh, 22:00 to 6:00, monday to friday, october to may";
  TimedPrice price;
  friend bool operator==(const TimedPriceText&, const TimedPriceText&) = default;
};
std::string read_words(std::string_view text, TimedPriceText& price);
std::string write_words(const TimedPriceText& price, System system);

/// "0.02 /kWh above 1500 kWh": on top of the price of the hour, for what a month takes beyond.
struct TierText {
  static constexpr std::string_view takes = "a price, and beyond how much", example = "0.02 /kWh above 1500 kWh";
  TierPrice price;
  friend bool operator==(const TierText&, const TierText&) = default;
};
std::string read_words(std::string_view text, TierText& tier);
std::string write_words(const TierText& tier, System system);

/// "10 /kW, 8:00 to 20:00, ratchet 70 %, at least 5 kW": what may follow the price in any order.
struct DemandText {
  static constexpr std::string_view takes = "a price for a month's highest power, and when it counts",
                                    example = "10 /kW, 8:00 to 20:00, ratchet 70 %";
  DemandPrice price;
  friend bool operator==(const DemandText&, const DemandText&) = default;
};
std::string read_words(std::string_view text, DemandText& demand);
std::string write_words(const DemandText& demand, System system);

/// What electricity costs. Nothing is known until `price` is given: then there is money, else kWh only.
struct Electricity {
  std::string currency;              ///< a label, put before amounts
  std::optional<EnergyPrice> price;  ///< in hours that no timed price covers
  std::optional<MonthPrice> standing;
  std::vector<TimedPriceText> timed;
  std::vector<TierText> tiers;
  std::vector<DemandText> demand;
  bool heat_meter = false;                ///< heat has a meter of its own
  std::optional<double> carbon_kg_per_J;  ///< of CO2; asked for when given
  friend bool operator==(const Electricity&, const Electricity&) = default;
};

/// What a floor is held at: as warm as work wants it; only above freezing; off; at a temperature of its own.
enum class WayFloor { work, frost_hold, off, setpoint };
enum class WaySensor { air, slab, both };
/// When the floor rests: whenever nobody works, or only where there is a whole day off.
enum class WayRest { nights_and_days_off, days_off };
enum class WaySource { off, in_working_hours, always };

/// One way to run the winter. Where none is given, the usual ones are compared.
struct WayEntry {
  std::string name;
  WayFloor floor = WayFloor::frost_hold;
  WaySensor sensor = WaySensor::air;
  std::optional<double> setpoint_degC;  ///< of the floor, by its sensor
  std::optional<double> rest_degC;      ///< of the floor outside working hours and days; none: as in them
  WayRest rest_when = WayRest::nights_and_days_off;
  std::optional<ClockSpan> charge;       ///< the floor is heated in these hours only ...
  std::optional<double> charge_to_degC;  ///< ... up to this slab temperature
  WaySource second_source = WaySource::off;
  std::optional<double> source_degC;       ///< its thermostat; the working temperature when absent
  std::optional<double> source_rest_degC;  ///< outside working hours, where it runs always; absent: as in them
  bool early_start = true;                 ///< starts before work so that it is warm by then
  bool outdoor_reset = false;              ///< water no warmer than the weather wants
  bool last_winter = false;                ///< this is how it was run before
  friend bool operator==(const WayEntry&, const WayEntry&) = default;
};

/// A month of a bill: "january 2140 kWh".
struct BillMonth {
  static constexpr std::string_view takes = "a month and what it used", example = "january 2140 kWh";
  int month = 1;
  double use_J = 0.0;
  friend bool operator==(const BillMonth&, const BillMonth&) = default;
};
std::string read_words(std::string_view text, BillMonth& month);
std::string write_words(const BillMonth& month, System system);

/// Last winter's bill, heat and what else is on the meter.
struct Bill {
  std::vector<BillMonth> months;
  double other_J = 0.0;  ///< a month, of what is not heat
  friend bool operator==(const Bill&, const Bill&) = default;
};

Record record_of(Work&);
Record record_of(VehicleEntry&);
Record record_of(Electricity&);
Record record_of(WayEntry&);
Record record_of(Bill&);

}  // namespace slabwright
