// What to buy, and how it will behave: pump, boiler, tank and electric service; filled, freed of air, started cold.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/plant.hpp"

namespace slabwright {

struct PumpSize {
  double flow_m3_per_s = 0.0;  ///< duty to buy
  double head_m = 0.0;
  double added_head_m = 0.0;  ///< of all loops one after another, which is the wrong head to buy
  double hydraulic_W = 0.0;
  std::string tried_on;  ///< the curve the operating point was found on
  double runs_m3_per_s = 0.0;
  double runs_head_m = 0.0;
  double runs_share = 0.0;  ///< of the flow where its curve ends
  double electric_W = 0.0;  ///< from the wall, as it runs
  double season_J = 0.0;    ///< the same for a winter
  double suction_m = 0.0;   ///< net positive suction head it has, hottest water, fill pressure
};
struct BoilerSize {
  BoilerKind kind = BoilerKind::electric_boiler;
  double floor_W = 0.0;  ///< up + down at design, second source locked out
  double pickup_W = 0.0;
  double wanted_W = 0.0;  ///< floor + pick-up
  double power_W = 0.0;   ///< the file's at the service's voltage, or the next size up
  bool from_file = false;
  double spare_share = 0.0;                  ///< power over floor, less 1
  std::optional<double> fails_working_degC;  ///< outdoors, below this the working air cannot be kept
  double least_flow_m3_per_s = 0.0;
  bool flow_enough = true;
  double mains_loss_W = 0.0;  ///< of mains outside the heated space; 0 where they lie inside
};
struct TankSize {
  double fluid_m3 = 0.0;
  double glycol_m3 = 0.0;  ///< pure glycol to buy
  double expansion_m3 = 0.0;
  double tank_m3 = 0.0;
  double coldest_degC = 0.0;
  double hottest_degC = 0.0;
  double fill_Pa = 0.0;   ///< gauge, at the tank, when coldest
  double start_Pa = 0.0;  ///< gauge, to fill to at `start_degC`, so that it does not fall below `fill_Pa`
  double start_degC = 0.0;
  double most_Pa = 0.0;
  double top_Pa = 0.0;    ///< gauge, at the highest pipe, when coldest
  double relief_W = 0.0;  ///< heat that the relief valve must be rated for, at least
};
struct ElectricSize {
  double power_W = 0.0;
  double voltage_V = 0.0;
  int phases = 1;
  double current_A = 0.0;
  std::optional<double> demand_share;  ///< of the current that wire and breaker are sized for: 125 % where the file
                                       ///< declares the code family that asks for it
  std::optional<double> demand_A;      ///< that current
  std::optional<double> device_A;
  std::optional<double> free_A;  ///< the service's
  bool fits = true;
  std::optional<double> together_A;   ///< boiler, second source and all else, where the file tells of them
  std::optional<double> one_heats_A;  ///< the same if boiler and second source never run together
  std::optional<double> main_breaker_A;
  int stages_number = 1;       ///< of the boiler
  int room_stages_number = 0;  ///< that the main breaker leaves room for beside all else, where one is given
};
/// Everything at the temperature of a cold slab: thick water, little flow.
struct StartUp {
  double water_degC = 0.0;
  double flow_m3_per_s = 0.0;  ///< of all loops
  double boiler_m3_per_s = 0.0;
  double flow_share = 0.0;                ///< of the flow at the operating point
  double laminar_share = 0.0;             ///< of the loops
  bool frozen = false;                    ///< no water moves: it stands below its freezing point
  bool flow_enough = true;                ///< for the boiler
  std::optional<double> fires_from_degC;  ///< warmer than this, the boiler gets its flow; absent where it never does
  /// Until the water is warm enough for 95 % of the operating point's flow, boiler at full power; absent where it is
  /// never.
  std::optional<double> until_flow_s;
};
/// Water warms as one mass that gives heat to the slab, which warms as another: both too coarse for the first minute
/// and good to some minutes after; what room and ground take meanwhile is left out. Said: a boiler that gets less flow
/// than it needs, water that freezes in the tubes.
Checked<StartUp> start_up(const Plant& plant, const OperatingPoint& point, const BoilerSize& boiler);

/// How a boiler's smallest stage gets along with what floor, slab and water take. Behind a mixing valve its own water
/// swings alone.
struct BoilerCycle {
  int stages_number = 1;
  double stage_W = 0.0;
  double taken_W = 0.0;     ///< by the floor in mild weather, when runs are shortest
  double least_on_s = 0.0;  ///< how long a run should last
  bool short_runs = false;
  std::optional<double> on_s;   ///< absent where floor and slab take all that the stage gives: it stays on
  std::optional<double> off_s;  ///< absent where the slab keeps the water warm
  double buffer_m3 = 0.0;       ///< water to add so that it stays on as long as it should; 0 where none is needed
};
/// Said: runs shorter than `boiler.least_on`.
Checked<BoilerCycle> boiler_cycle(const Plant& plant, const OperatingPoint& point, const BoilerSize& boiler);

/// Water to add so that a heater of so much power in the boiler's place stays on for `boiler.least_on` while the floor
/// takes so much; 0 where none is needed, and where it never goes off.
double water_to_add_m3(const Plant& plant, const OperatingPoint& point, double heater_W, double taken_W);

/// Air driven out of one loop alone, all others shut.
struct Purge {
  std::string loop;
  int port = 0;
  double flow_m3_per_s = 0.0;   ///< at which bubbles go along for certain
  double loss_Pa = 0.0;         ///< that the loop then asks for
  double least_m3_per_s = 0.0;  ///< slower, and bubbles stay behind
  double for_s = 0.0;           ///< until the loop's water has been changed twice
};
std::vector<Purge> purge_loops(const Plant& plant);

/// All water in tubes, mains and heater.
double plant_content_m3(const Plant& plant);

struct PlantSizes {
  PumpSize pump;
  BoilerSize boiler;
  TankSize tank;
  ElectricSize electric;
  StartUp start;
  BoilerCycle cycle;
  std::vector<Purge> purge;
};
/// `duty_Pa` is what the hardest loop asks for at the target flows (from balance).
Checked<PlantSizes> size_plant(const Plant& plant, const Envelope& envelope, const OperatingPoint& point,
                               const FlowTarget& target, double duty_Pa);

Record record_of(PumpSize&);
Record record_of(BoilerSize&);
Record record_of(TankSize&);
Record record_of(ElectricSize&);
Record record_of(StartUp&);
Record record_of(BoilerCycle&);
Record record_of(Purge&);
Record record_of(PlantSizes&);

}  // namespace slabwright
