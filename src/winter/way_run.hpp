// A way of running, hour by hour: thermostats, machines and the shop together.
#pragma once
#include <optional>
#include <vector>

#include "winter/plan.hpp"

namespace slabwright::winter {

/// What is remembered beside the shop's heat: controls, and washing water on the floor.
struct Controls {
  bool floor_on = false;
  HeatPumpState source;
  double wet_kg = 0.0;
};

/// A way made ready: its thermostats and what it runs with.
struct WayCase {
  const YearShop& shop;
  const Season& season;
  const Machines& machines;
  std::vector<Dials> dials;  ///< [hour]
  double deadband_K = 1.0;
  bool reset = false;
  double work_degC = 0.0;
  bool has_source = false;  ///< the second source stands ready
};

/// An hour as it went; energies over the hour, temperatures at its end.
struct WayHour {
  double boiler_J = 0.0, source_J = 0.0, pump_J = 0.0;  ///< electric
  double floor_heat_J = 0.0, source_heat_J = 0.0;
  double peak_W = 0.0;
  double air_degC = 0.0, operative_degC = 0.0, floor_degC = 0.0, sensor_degC = 0.0;
  double boiler_short_s = 0.0;  ///< the boiler at its most could not hold what the floor had been set to for a day
  double locked_s = 0.0;        ///< the second source was wanted and too cold outdoors
  double cold_start_s = 0.0;    ///< it was wanted and the room too cold for it
  double ran_s = 0.0;
  double up_W = 0.0;            ///< from the floor, at its end
  double dries_kg_per_s = 0.0;  ///< of washing water
};

struct ColdestPlace {
  double degC = 1e9;
  std::size_t hour = 0;  ///< of the season
};

struct WayYear {
  std::vector<WayHour> hour;
  std::vector<ColdestPlace> place;  ///< [zone.place]
  ShopState end;
  ShopHeat heat;
};

/// Hours from `from` on, `count` of them. `outdoor_degC`, where given, stands in place of the season's air.
struct RunSpan {
  std::size_t from = 0, count = hours_of_year;
  const std::vector<double>* outdoor_degC = nullptr;
  bool places = true;
};
WayYear run_way(const WayCase& way, const ShopState& start, Controls controls = {}, const RunSpan& span = {});

/// The same with what the controls and the shop remember at one hour kept, to go on from there in other weather.
struct Kept {
  std::size_t hour = 0;
  Controls controls;
  ShopState state;
};
WayYear run_way(const WayCase& way, const ShopState& start, Kept& kept);

}  // namespace slabwright::winter
