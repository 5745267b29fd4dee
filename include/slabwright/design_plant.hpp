// What warms and moves the water, what protects it, and what feeds it with power.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "design_words.hpp"
#include "fields.hpp"
#include "fluid.hpp"

namespace slabwright {

struct FluidEntry {
  FluidKind kind = FluidKind::water;
  GlycolShare glycol;
  double start_degC = 0.0;  ///< slab and fluid when the system is filled and first fired
  friend bool operator==(const FluidEntry&, const FluidEntry&) = default;
};

enum class BoilerKind { electric_boiler, tank_heater, none };

/// How boiler and floor are joined: the floor's water through the boiler; two circuits that meet at closely spaced
/// tees, in a separator or in a buffer tank; a three-way valve that mixes return water in; a small pump that injects
/// boiler water into the floor's circuit.
enum class BoilerPiping { direct, tees, separator, buffer, mixing_valve, injection };

struct Boiler {
  BoilerKind kind = BoilerKind::electric_boiler;
  std::optional<double> power_W;  ///< sized by the answer when absent
  double hottest_degC = 0.0;      ///< the hottest water it can be set to
  BoilerPiping piping = BoilerPiping::direct;
  std::optional<double> least_flow_m3_per_s;  ///< P/(rho c 20 K) when absent
  double coefficient_kv = 0.0;                ///< its own resistance
  std::optional<double> stages_number;        ///< equal ones that it switches by itself; by its power when absent
  double differential_K = 0.0;                ///< of its water, from going off to coming on
  double least_on_s = 0.0;                    ///< shorter runs wear it out
  std::optional<double> rated_voltage_V;      ///< what its power is stated at; the service's when absent
  std::optional<double> flow_m3_per_s;        ///< of its own circuit, where it has one
  std::vector<PumpCurvePoint> pump_points;    ///< of its own pump; a generic one when empty
  std::optional<double> buffer_m3;            ///< what a buffer tank holds
  bool check_valve = false;
  friend bool operator==(const Boiler&, const Boiler&) = default;
};

/// What a pump's own control does: nothing; hold its head; let it fall to half with the flow.
enum class PumpMode { constant_speed, constant_pressure, proportional_pressure };

enum class Together { in_parallel, in_series };

struct PumpEntry {
  std::vector<PumpCurvePoint> points;   ///< highest head first; the duty to buy is computed when absent
  std::optional<double> flow_m3_per_s;  ///< the total aimed for; from heat and working drop when absent
  double drop_K = 0.0;                  ///< supply less return at design
  double efficiency_share = 0.0;        ///< water's power over electric power
  double season_s = 0.0;                ///< how long it runs in a winter
  PumpMode control = PumpMode::constant_speed;
  int pumps = 1;  ///< of one kind
  Together together = Together::in_parallel;
  std::vector<PumpCurvePoint> second_points;  ///< of the second of several, where it is another kind
  std::optional<double>
      bypass_opening_Pa;  ///< pressure at which a bypass from supply to return opens; none when absent
  std::optional<double> bypass_coefficient_kv;  ///< wide open
  friend bool operator==(const PumpEntry&, const PumpEntry&) = default;
};

enum class ValveShape { linear, equal_percentage };

struct Valve {
  double coefficient_kv = 0.0;  ///< wide open
  int turns = 5;
  ValveShape shape = ValveShape::linear;
  std::vector<ValvePoint> points;  ///< the maker's table; it wins over the three above
  double return_coefficient_kv = 0.0;
  std::optional<double> meter_most_m3_per_s;  ///< the highest mark of a port's flow meter; chosen when absent
  friend bool operator==(const Valve&, const Valve&) = default;
};

/// A heat pump warms the air; a water heat pump stands outdoors and carries the system's water.
enum class SecondSourceKind { none, heat_pump, water_heat_pump };

/// How its frost is paid for: in the points of its maker's table; when there is frost; by the clock.
enum class Defrost { in_table, on_demand, by_clock };

struct SecondSource {
  SecondSourceKind kind = SecondSourceKind::none;
  std::optional<double> cut_out_degC;  ///< colder than this outdoors and it stops
  std::optional<double> capacity_W;    ///< heat it gives at 8.3 degC (47 degF) outdoors
  std::optional<double> current_A;     ///< the most it takes
  std::vector<SourcePoint> points{};   ///< its maker's table, by rising outdoor temperature; it wins over `capacity`
  Defrost defrost = Defrost::on_demand;
  std::optional<double> cut_in_degC{};         ///< it starts again there; settled where there is a cut-out
  std::optional<double> start_above_degC{};    ///< it starts in no colder room
  std::optional<double> least_setting_degC{};  ///< of its thermostat
  double drain_pan_W = 0.0;                    ///< heaters of pan and crankcase while it is cold
  std::string room{};                          ///< it blows into; the first heated one when empty
  double gradient_K_per_m = 0.0;               ///< how much warmer the air gets with height while it blows
  friend bool operator==(const SecondSource&, const SecondSource&) = default;
};

struct Service {
  double voltage_V = 0.0;
  int phases = 1;
  std::optional<double> current_A;       ///< what is free for the boiler
  std::optional<double> main_breaker_A;  ///< the whole service's
  std::optional<double> other_loads_A;   ///< what else may run in the same hour
  friend bool operator==(const Service&, const Service&) = default;
};

struct Pressure {
  double fill_Pa = 0.0;    ///< gauge, when coldest
  double relief_Pa = 0.0;  ///< gauge
  double height_m = 0.0;   ///< highest pipe over the tank
  friend bool operator==(const Pressure&, const Pressure&) = default;
};

/// Margins of the frost hold.
struct FrostHold {
  double margin_K = 0.0;         ///< over the freezing point, for tube and slab
  double pipe_limit_degC = 0.0;  ///< coldest air that a water line in air may stand in
  double sensor_error_K = 0.0;   ///< added to what the sensor must read
  double door_air_share = 0.0;   ///< how far the air on the first metre at a big door stands on the way to outdoor air
  double deadband_K = 0.0;       ///< of either thermostat: on at half of it below the dial, off at half of it above
  double satisfied_s = 0.0;      ///< how long something warm may keep the floor off in the cold
  friend bool operator==(const FrostHold&, const FrostHold&) = default;
};

enum class WatchKind { wall_pipe, room_pipe, drain_trap, sprinkler, hose_bib, outdoor_line };

/// A place the user adds to the watched places.
struct WatchEntry {
  std::string name;
  WatchKind kind = WatchKind::wall_pipe;
  std::string room;
  std::optional<double> limit_degC;
  double toward_outdoor_share = 0.0;  ///< wall pipe, hose bib: how far on the way from room air to outdoor air
  friend bool operator==(const WatchEntry&, const WatchEntry&) = default;
};

Record record_of(FluidEntry&);
Record record_of(Boiler&);
Record record_of(PumpEntry&);
Record record_of(Valve&);
Record record_of(SecondSource&);
Record record_of(Service&);
Record record_of(Pressure&);
Record record_of(FrostHold&);
Record record_of(WatchEntry&);

}  // namespace slabwright
