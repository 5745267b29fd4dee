#include "winter/way_run.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

namespace slabwright::winter {
namespace {

/// Warmer than this outdoors nothing freezes that is not frozen already.
constexpr double watch_below_degC = 10.0;
/// A slab is slow: only after a day at its most may anybody say that a boiler is too small.
constexpr double settled_s = day_s;
constexpr double at_most_share = 0.999;
/// A water line in room air, or what stands in it, follows within so long (practice): a door that opens is no frost
/// yet.
constexpr double line_lag_s = 2.0 * hour_s;

/// What one step is decided to be.
struct Taken {
  double tube_W_per_m2 = 0.0, most_W_per_m2 = 0.0;
  HeatPumpHour source;
  double source_full_W = 0.0;  ///< electric, while it runs at its most
  bool on_after = false;
  bool calls_for_more = false;
  bool source_wanted = false;
};

class Runner {
 public:
  Runner(const WayCase& way, const ShopState& start, const Controls& controls)
      : way_(way), run_(way.shop, start), controls_(controls), now_(run_.now()) {}

  WayHour hour(std::size_t index, double outdoor_degC);
  void watch(std::vector<ColdestPlace>& coldest, std::size_t index);
  const ShopRun& run() const { return run_; }
  const Controls& controls() const { return controls_; }

 private:
  void find_drivers(std::size_t index, double outdoor_degC);
  /// What dries in the hour, kg/s; its heat goes into the drivers.
  double dry(std::size_t index);
  bool air_turned();
  Taken decide(std::size_t index, const StepEnds& reach, const ShopDrivers& drivers) const;
  HeatPumpHour source_for(std::size_t index, const StepEnds& reach, double outdoor_degC, double tube) const;
  bool calls(const StepEnds& reach, double tube, double source_W, double band_K) const;
  double stops_at(const StepEnds& reach, double source_W) const;
  void take(const Taken& taken, double dt_s, WayHour& hour);

  const WayCase& way_;
  ShopRun run_;
  Controls controls_;
  ShopDrivers drivers_;
  std::vector<double> more_W_per_K_;  ///< of the hour before
  Dials dials_{};
  double at_most_s_ = 0.0;  ///< for how long the boiler has been at its most, and too little
  ShopNow now_;
  std::vector<double> places_, lagged_;
};

void Runner::find_drivers(std::size_t index, double outdoor_degC) {
  ShopDrivers& drivers = drivers_;
  drivers = way_.season.drivers[index];
  drivers.outdoor_degC = outdoor_degC;
  if (way_.machines.source) drivers.layered_share = way_.machines.source_hour[index].layered_share;
  const std::vector<double>& air_degC = run_.state().air_degC;
  const SeasonHour& hour = way_.season.hour[index];
  for (const SeasonDoor& door : way_.season.door)
    drivers.more_W_per_K[door.room] += opened_W_per_K(door, hour, air_degC[door.room] - outdoor_degC);
}

double Runner::dry(std::size_t index) {
  if (!way_.season.washing) return 0.0;
  const SeasonWashing& washing = *way_.season.washing;
  const std::vector<SeasonHour>& hours = way_.season.hour;
  const bool begins = hours[index].worked && !hours[(index + hours_of_year - 1) % hours_of_year].worked;
  if (begins) controls_.wet_kg = 0.0;
  if (hours[index].worked) controls_.wet_kg += washing.kg_per_s * hour_s;
  const std::size_t room = way_.shop.main;
  const double air_degC = run_.state().air_degC[room];
  const double exchange_kg_per_s = washing.leaks_kg_per_s + open_kg_per_s(hours[index], drivers_.more_W_per_K);
  const Drying now = drying(washing, {exchange_kg_per_s, washing.outdoor_ratio[index], air_degC}, controls_.wet_kg);
  controls_.wet_kg = std::max(0.0, controls_.wet_kg - now.dries_kg_per_s * hour_s);
  add_heat(drivers_, room, -now.heat_W);
  drivers_.beside_W_per_K[room] += now.heat_W_per_K;
  drivers_.beside_W[room] += now.heat_W_per_K * air_degC;
  return now.dries_kg_per_s;
}

/// Whether so much more or less air goes through some room than an hour ago that an hour is too long a step for it.
bool Runner::air_turned() {
  bool turned = false;
  more_W_per_K_.resize(drivers_.more_W_per_K.size(), 0.0);
  for (std::size_t room = 0; room < more_W_per_K_.size(); ++room) {
    const ShopRoom& of = way_.shop.room[room];
    const double stores_W_per_K = 2.0 * (of.air_J_per_K + of.contents_J_per_K) / hour_s;
    turned = turned || std::abs(drivers_.more_W_per_K[room] - more_W_per_K_[room]) > stores_W_per_K;
    more_W_per_K_[room] = drivers_.more_W_per_K[room];
  }
  return turned;
}

/// Whether any of the floor's thermostats reads less than so much over its setting at the end of the step.
bool Runner::calls(const StepEnds& reach, double tube, double source_W, double band_K) const {
  const auto below = [&](double dial_degC, const StepEnd& reads) {
    return dial_degC > not_set_degC && reads.at(tube, source_W) < dial_degC + band_K;
  };
  return below(dials_.floor_air_degC, reach.air_degC) || below(dials_.floor_slab_degC, reach.sensor_degC);
}

/// Tube heat that takes every thermostat just to where it stops.
double Runner::stops_at(const StepEnds& reach, double source_W) const {
  const double band_K = 0.5 * way_.deadband_K;
  double tube = 0.0;
  const auto asked = [&](double dial_degC, const StepEnd& reads) {
    if (dial_degC > not_set_degC)
      tube = std::max(tube, (dial_degC + band_K - reads.at(0.0, source_W)) / reads.per_tube_m2K_per_W);
  };
  asked(dials_.floor_air_degC, reach.air_degC);
  asked(dials_.floor_slab_degC, reach.sensor_degC);
  return tube;
}

HeatPumpHour Runner::source_for(std::size_t index, const StepEnds& reach, double outdoor_degC, double tube) const {
  const Machines& machines = way_.machines;
  if (!machines.source || dials_.source_degC <= not_set_degC) {
    HeatPumpHour off;
    // It stands, and yet it must know when it has been too cold.
    if (machines.source && machines.source->cut_out) {
      const CutOut& out = *machines.source->cut_out;
      off.after.outdoors_allow = outdoor_degC >= (controls_.source.outdoors_allow ? out.out_degC : out.in_degC);
    }
    return off;
  }
  const double room_degC = run_.state().air_degC[way_.shop.main];
  const double wanted_W = (dials_.source_degC - reach.air_degC.at(tube, 0.0)) / reach.air_degC.per_source_K_per_W;
  const HeatPumpConditions conditions{outdoor_degC, room_degC, std::max(0.0, wanted_W)};
  return heat_pump_hour(*machines.source, in_room(machines.source_hour[index], room_degC), conditions,
                        controls_.source);
}

Taken Runner::decide(std::size_t index, const StepEnds& reach, const ShopDrivers& drivers) const {
  const double band_K = 0.5 * way_.deadband_K;
  const double room_degC = run_.state().air_degC[way_.shop.main];
  Taken taken;
  taken.source = source_for(index, reach, drivers.outdoor_degC, 0.0);
  taken.source_wanted = dials_.source_degC > reach.air_degC.idle_degC;
  const bool on = controls_.floor_on ? calls(reach, 0.0, taken.source.heat_W, band_K)
                                     : calls(reach, 0.0, taken.source.heat_W, -band_K);
  if (!on || !way_.machines.boiler) return taken;
  const double supply = supply_degC(way_.machines, way_.reset, drivers.outdoor_degC, room_degC);
  taken.most_W_per_m2 = most_tube_heat(way_.machines, supply, now_.plane_degC);
  taken.tube_W_per_m2 = taken.most_W_per_m2;
  taken.source = source_for(index, reach, drivers.outdoor_degC, taken.tube_W_per_m2);
  taken.on_after = calls(reach, taken.tube_W_per_m2, taken.source.heat_W, band_K);
  taken.calls_for_more = calls(reach, taken.tube_W_per_m2, taken.source.heat_W, -band_K);
  if (taken.on_after) return taken;
  // It is warm enough before the step ends.
  taken.tube_W_per_m2 = std::clamp(stops_at(reach, taken.source.heat_W), 0.0, taken.most_W_per_m2);
  taken.source = source_for(index, reach, drivers.outdoor_degC, taken.tube_W_per_m2);
  return taken;
}

void Runner::take(const Taken& taken, double dt_s, WayHour& hour) {
  const Machines& machines = way_.machines;
  run_.take(taken.tube_W_per_m2, taken.source.heat_W);
  controls_.floor_on = taken.on_after;
  controls_.source = taken.source.after;
  const double floor_W = taken.tube_W_per_m2 * machines.tubes_m2;
  double peak_W = taken.source.electric_W;
  if (taken.source.heat_W > 0.0)
    peak_W = std::max(peak_W, taken.source.full_load.capacity_W / taken.source.full_load.cop);
  if (floor_W > 0.0) {
    const BoilerHour boiler = boiler_hour(*machines.boiler, taken.most_W_per_m2 * machines.tubes_m2);
    hour.boiler_J += dt_s * floor_W / machines.boiler->heat_share;
    hour.pump_J += dt_s * machines.pump_W * taken.tube_W_per_m2 / taken.most_W_per_m2;
    peak_W += boiler.highest_W + machines.pump_W;
  }
  hour.peak_W = std::max(hour.peak_W, peak_W);
  hour.floor_heat_J += dt_s * floor_W;
  hour.source_J += dt_s * taken.source.electric_W;
  if (way_.has_source && run_.state().outdoor_degC < drain_pan_below_degC)
    hour.source_J += dt_s * machines.drain_pan_W * (1.0 - taken.source.load_share);
  hour.source_heat_J += dt_s * taken.source.heat_W;
  // Water that is too cool for the floor is no fault of the boiler's size.
  const bool at_most = taken.calls_for_more && machines.boiler &&
                       taken.most_W_per_m2 * machines.tubes_m2 > at_most_share * most_heat_W(*machines.boiler);
  at_most_s_ = at_most ? at_most_s_ + dt_s : 0.0;
  if (at_most_s_ > settled_s) hour.boiler_short_s += dt_s;
  const HeatPumpRun run = taken.source.run;
  if (taken.source_wanted && (run == HeatPumpRun::below_cut_out || run == HeatPumpRun::before_cut_in))
    hour.locked_s += dt_s;
  if (run == HeatPumpRun::indoors_too_cold) hour.cold_start_s += dt_s;
  if (run == HeatPumpRun::ran) hour.ran_s += dt_s * taken.source.load_share;
  now_ = run_.now();
}

/// Whole where nothing switches; in quarters where a thermostat is turned, a heater comes or goes, or a door opens.
WayHour Runner::hour(std::size_t index, double outdoor_degC) {
  WayHour hour;
  const double before_degC = run_.state().outdoor_degC;
  find_drivers(index, outdoor_degC);
  hour.dries_kg_per_s = dry(index);
  const bool turned = !(dials_ == way_.dials[index]) || air_turned();
  dials_ = way_.dials[index];
  bool whole = !turned;
  if (whole) {
    const StepEnds& reach = run_.reach(drivers_, StepLength::hour);
    const Taken taken = decide(index, reach, drivers_);
    whole = taken.on_after == controls_.floor_on && taken.source.after.running == controls_.source.running;
    if (whole) take(taken, hour_s, hour);
  }
  for (int quarter = 1; !whole && quarter <= 4; ++quarter) {
    drivers_.outdoor_degC = before_degC + 0.25 * quarter * (outdoor_degC - before_degC);
    const StepEnds& reach = run_.reach(drivers_, StepLength::quarter);
    take(decide(index, reach, drivers_), 0.25 * hour_s, hour);
  }
  hour.air_degC = now_.air_degC;
  hour.operative_degC = now_.operative_degC;
  hour.floor_degC = now_.floor_degC;
  hour.sensor_degC = now_.sensor_degC;
  hour.up_W = now_.up_W;
  return hour;
}

void Runner::watch(std::vector<ColdestPlace>& coldest, std::size_t index) {
  run_.places(places_);
  coldest.resize(places_.size());
  if (lagged_.size() != places_.size()) lagged_ = places_;
  const std::vector<ZonePlace>& zone = way_.shop.zone.place;
  const double follows = -std::expm1(-hour_s / line_lag_s);
  for (std::size_t i = 0; i < places_.size(); ++i) {
    if (zone[i].strip) continue;
    lagged_[i] += follows * (places_[i] - lagged_[i]);
    places_[i] = lagged_[i];
  }
  for (std::size_t i = 0; i < places_.size(); ++i)
    if (places_[i] < coldest[i].degC) coldest[i] = {places_[i], index};
}

WayYear run_span(const WayCase& way, const ShopState& start, const Controls& controls, const RunSpan& span,
                 Kept* kept) {
  Runner runner(way, start, controls);
  WayYear year;
  year.hour.reserve(span.count);
  for (std::size_t i = 0; i < span.count; ++i) {
    const std::size_t index = span.from + i;
    const double outdoor_degC = span.outdoor_degC ? (*span.outdoor_degC)[i] : way.season.hour[index].outdoor_degC;
    if (kept && kept->hour == index) {
      kept->controls = runner.controls();
      kept->state = runner.run().state();
    }
    year.hour.push_back(runner.hour(index, outdoor_degC));
    if (span.places && (outdoor_degC < watch_below_degC || year.place.empty())) runner.watch(year.place, index);
  }
  year.end = runner.run().state();
  year.heat = runner.run().heat();
  return year;
}

}  // namespace

WayYear run_way(const WayCase& way, const ShopState& start, Controls controls, const RunSpan& span) {
  return run_span(way, start, controls, span, nullptr);
}

WayYear run_way(const WayCase& way, const ShopState& start, Kept& kept) { return run_span(way, start, {}, {}, &kept); }

}  // namespace slabwright::winter
