// The coldest weeks of a winter in the way "frost hold, second source in working hours": the hours of the year against
// the whole shop by steps of five minutes, its thermostats, its machines and its full fields.
//
// Under the same heat both are as warm, hour by hour. Left to their own thermostats they are not, and cannot be: the
// floor goes on and off every half day, the air falls by a tenth of a kelvin in an hour before it comes on, and so a
// tenth of a kelvin moves the hour at which it does. Then it is heat and starts that must agree, over some twenty runs
// of the boiler: in a week there are seven, and where the last of them falls is 3 % of all.
#include <algorithm>
#include <cmath>

#include "slow/stepped_shop.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"
#include "winter/way_run.hpp"

#include "slabwright/units_exact.hpp"

using namespace slabwright;
using namespace slabwright::test;
using namespace slabwright::winter;

namespace {

constexpr double step_s = 300.0;
constexpr std::size_t week_h = 168, span_h = 4 * week_h, lead_h = 30 * 24;
constexpr double air_bar_K = 0.3, floor_bar_share = 0.02, source_bar_share = 0.03, starts_bar_share = 0.2;

struct Scene {
  Design design;
  Envelope envelope;
  FloorPlan floor;
  WatchedPlaces places;
  Snap snap;
  WaterCurve water;
};

Scene scene_of(const std::string& name) {
  static EdgeFields fields;
  const Design design = layout(name).file.design;
  const auto envelope = envelope_of(design, fields);
  const auto loops = plan_loops(design);
  const auto floor = floor_of(design, *loops.value, *envelope.value);
  const auto plant = pipe_up(design, *loops.value, &*floor.value);
  Conditions conditions;
  conditions.outdoor_degC = envelope.value->outdoor_degC;
  for (const RoomLoss& room : envelope.value->room) conditions.room_degC.push_back(room.indoor_degC);
  return {design,          *envelope.value,
          *floor.value,    watched_places(design, *envelope.value, fields),
          snap_of(design), curve_of(*plant.value, conditions, design.boiler.hottest_degC)};
}

/// Where the coldest weeks begin, at midnight.
std::size_t coldest_weeks(const Season& season) {
  std::size_t coldest = lead_h;
  double least = 1e9, sum = 0.0;
  for (std::size_t i = lead_h; i < hours_of_year; ++i) {
    sum += season.hour[i].outdoor_degC;
    if (i >= lead_h + span_h) sum -= season.hour[i - span_h].outdoor_degC;
    if (i + 1 < lead_h + span_h || season.hour[i].clock != 23 || sum >= least) continue;
    least = sum;
    coldest = i + 1 - span_h;
  }
  return coldest;
}

/// What came of it, by hours, and the heat of each step of five minutes.
struct Weeks {
  std::vector<double> air_degC, tube_W_per_m2, source_W;
  double floor_J = 0.0, source_J = 0.0, source_heat_J = 0.0;
  int floor_starts = 0, source_starts = 0;
};

/// Whether something begins, from one step to the next.
struct Starts {
  bool on = false;
  int count = 0;
  void step(bool now) {
    count += now && !on;
    on = now;
  }
};

Weeks weeks_of(const WayYear& year) {
  Weeks weeks;
  Starts floor, source;
  for (std::size_t i = lead_h - 1; i < year.hour.size(); ++i) {
    const WayHour& hour = year.hour[i];
    floor.step(hour.floor_heat_J > 0.0);
    source.step(hour.ran_s > 0.0);
    if (i < lead_h) {
      floor.count = source.count = 0;
      continue;
    }
    weeks.air_degC.push_back(hour.air_degC);
    weeks.floor_J += hour.floor_heat_J;
    weeks.source_J += hour.source_J;
    weeks.source_heat_J += hour.source_heat_J;
  }
  weeks.floor_starts = floor.count;
  weeks.source_starts = source.count;
  return weeks;
}

/// Loads of an hour of the season, doors among them, at a moment in it.
ShopDrivers drivers_in(const WayCase& way, std::size_t index, double share, const std::vector<double>& air_degC) {
  const SeasonHour& hour = way.season.hour[index];
  const double before_degC = way.season.hour[index - 1].outdoor_degC;
  ShopDrivers drivers = way.season.drivers[index];
  drivers.outdoor_degC = before_degC + share * (hour.outdoor_degC - before_degC);
  for (const SeasonDoor& door : way.season.door)
    if (hour.worked)
      drivers.more_W_per_K[door.room] +=
          door_W_per_K(door.use, door.per_hour, air_degC[door.room] - drivers.outdoor_degC, hour.wind_m_per_s);
  return drivers;
}

/// The year's steps under the heat of another run, by quarters.
std::vector<double> air_under(const WayCase& way, const ShopState& start, std::size_t from, const Weeks& as) {
  ShopRun run(way.shop, start);
  std::vector<double> air_degC;
  for (std::size_t step = 0; step < as.source_W.size(); step += 3) {
    const std::size_t hour = step / 12;
    const double share = static_cast<double>(step % 12 + 3) / 12.0;
    run.reach(drivers_in(way, from + hour, share, run.state().air_degC), StepLength::quarter);
    const auto mean = [&](const std::vector<double>& of) { return (of[step] + of[step + 1] + of[step + 2]) / 3.0; };
    run.take(mean(as.tube_W_per_m2), mean(as.source_W));
    if (step % 12 == 9) air_degC.push_back(run.now().air_degC);
  }
  return air_degC;
}

/// The thermostats of the way. They look all the time: in steps of five minutes they switch at the step that lies
/// nearest to where the air crosses their limit, half a step ahead by the way it is going.
class WholeWay {
 public:
  WholeWay(const WayCase& way, SteppedShop& shop) : way_(way), shop_(shop) {}

  /// Heat as it came to in another run, hour by hour.
  void forced(std::size_t index, const WayHour& as) {
    through(index, hour_s, [&](SteppedDrivers& drivers) {
      drivers.tube_W_per_m2 = as.floor_heat_J / hour_s / way_.machines.tubes_m2;
      shop_.reach(drivers, hour_s);
      shop_.take(as.source_heat_J / hour_s);
    });
    floor_.on = as.floor_heat_J > 0.0;
    source_.on = as.ran_s > 0.0;
    floor_.count = source_.count = 0;
    before_degC_ = shop_.air_degC()[way_.shop.main];
  }

  void hour(std::size_t index, Weeks& weeks) {
    const Dials& dials = way_.dials[index];
    through(index, step_s, [&](SteppedDrivers& drivers) {
      floor_.step(floor_calls(dials));
      if (floor_.on) drivers.tube_W_per_m2 = tubes_at_most(drivers.outdoor_degC);
      before_degC_ = shop_.air_degC()[way_.shop.main];
      const StepEnd air = shop_.reach(drivers, step_s);
      const HeatPumpHour source = source_for(index, drivers.outdoor_degC, dials, air);
      source_.step(source.heat_W > 0.0);
      state_ = source.after;
      shop_.take(source.heat_W);
      weeks.tube_W_per_m2.push_back(drivers.tube_W_per_m2);
      weeks.source_W.push_back(source.heat_W);
      weeks.floor_J += step_s * drivers.tube_W_per_m2 * way_.machines.tubes_m2;
      if (source.heat_W > 0.0) weeks.source_J += step_s * source.electric_W;
      weeks.source_heat_J += step_s * source.heat_W;
    });
    weeks.air_degC.push_back(shop_.air_degC()[way_.shop.main]);
    weeks.floor_starts = floor_.count;
    weeks.source_starts = source_.count;
  }

 private:
  template <class Step>
  void through(std::size_t index, double dt_s, Step step) {
    const int parts = static_cast<int>(hour_s / dt_s + 0.5);
    for (int part = 1; part <= parts; ++part) {
      const ShopDrivers of = drivers_in(way_, index, static_cast<double>(part) / parts, shop_.air_degC());
      SteppedDrivers drivers{of.outdoor_degC, of.more_W_per_K, of.air_W, of.faces_W, of.floor_W_per_m2, 0.0};
      step(drivers);
    }
  }
  bool floor_calls(const Dials& dials) const {
    const double room_degC = shop_.air_degC()[way_.shop.main];
    const double over_K = room_degC + 0.5 * (room_degC - before_degC_) - dials.floor_air_degC,
                 band_K = 0.5 * way_.deadband_K;
    return floor_.on ? over_K < band_K : over_K < -band_K;
  }
  double tubes_at_most(double outdoor_degC) const {
    const double supply = supply_degC(way_.machines, way_.reset, outdoor_degC, shop_.air_degC()[way_.shop.main]);
    return most_tube_heat(way_.machines, supply, shop_.sensor_degC());
  }
  HeatPumpHour source_for(std::size_t index, double outdoor_degC, const Dials& dials, const StepEnd& air) const {
    const double room_degC = shop_.air_degC()[way_.shop.main];
    const double wanted_W = dials.source_degC > not_set_degC
                                ? std::max(0.0, (dials.source_degC - air.idle_degC) / air.per_source_K_per_W)
                                : 0.0;
    return heat_pump_hour(*way_.machines.source, in_room(way_.machines.source_hour[index], room_degC),
                          {outdoor_degC, room_degC, wanted_W}, state_);
  }

  const WayCase& way_;
  SteppedShop& shop_;
  Starts floor_, source_;
  HeatPumpState state_;
  double before_degC_ = 0.0;  ///< air a step ago
};

double worst_K(const std::vector<double>& one, const std::vector<double>& other) {
  REQUIRE(one.size() == other.size());
  double worst = 0.0;
  for (std::size_t i = 0; i < one.size(); ++i) worst = std::max(worst, std::abs(one[i] - other[i]));
  return worst;
}

/// Frost hold at 8 degC by the wall thermostat; the second source two hours before work.
WayCase way_of(const Scene& of, const YearShop& shop, const Season& season, const Machines& machines) {
  WayEntry entry;
  entry.second_source = WaySource::in_working_hours;
  PlanInputs inputs;
  inputs.work_degC = 16.7;
  inputs.hold.floor_air_degC = 8.0;
  inputs.least_source_degC = machines.least_setting_degC;
  inputs.source_lead_h = 2;
  return {shop, season, machines, plan_of(entry, season, inputs), of.design.frost_hold.deadband_K, false, 16.7};
}

}  // namespace

TEST_CASE("the coldest weeks on frost hold with the second source at work are the whole shop's") {
  const Scene of = scene_of("frame-shop");
  EdgeFields fields;
  const auto shop = year_shop(of.design, of.envelope, of.floor, of.places, fields);
  REQUIRE(shop);
  const WinterShop winter{of.design, of.envelope, of.floor, of.places, of.snap, of.water, 12e3, 0.0, {}, {}, nullptr};
  const Season season = season_of(winter, *shop);
  const Machines machines = machines_of(winter, *shop, season);
  const WayCase way = way_of(of, *shop, season, machines);

  const std::size_t from = coldest_weeks(season), first = from - lead_h;
  const Climate& climate = of.design.climate;
  const ZoneHistory history{{10.0, climate.mean_degC, 8.0}, {8.0, climate.mean_degC - climate.half_swing_K, 20.0}};
  const double since_s = since_coldest_s + static_cast<double>(first) * hour_s;
  const ShopState start = begun(*shop, history, since_s);
  const WayYear year = run_way(way, start, {}, {first, lead_h + span_h, nullptr, false});
  const Weeks fast = weeks_of(year);

  SteppedShop stepped(*shop, of.design, of.envelope, history, since_s);
  WholeWay whole(way, stepped);
  for (std::size_t i = 0; i < lead_h; ++i) whole.forced(first + i, year.hour[i]);
  Weeks slow;
  for (std::size_t i = from; i < from + span_h; ++i) whole.hour(i, slow);

  const ShopState led = run_way(way, start, {}, {first, lead_h, nullptr, false}).end;
  const double air_K = worst_K(air_under(way, led, from, slow), slow.air_degC);
  CAPTURE(air_K, fast.floor_J / 3.6e6, slow.floor_J / 3.6e6, fast.source_J / 3.6e6, slow.source_J / 3.6e6);
  CAPTURE(fast.floor_starts, slow.floor_starts, fast.source_starts, slow.source_starts);
  CHECK(air_K < air_bar_K);
  CHECK(fast.floor_J == Approx(slow.floor_J).epsilon(floor_bar_share));
  CHECK(fast.source_J == Approx(slow.source_J).epsilon(source_bar_share));
  CHECK(fast.source_heat_J == Approx(slow.source_heat_J).epsilon(source_bar_share));
  CHECK(std::abs(fast.floor_starts - slow.floor_starts) <= starts_bar_share * slow.floor_starts);
  CHECK(std::abs(fast.source_starts - slow.source_starts) <= starts_bar_share * slow.source_starts);
  CHECK(slow.floor_starts > 10);
}
