// What is shown of the sizes.
#include <array>

#include "slabwright/key.hpp"
#include "slabwright/plant_sizes.hpp"

namespace slabwright {

template <>
struct Choices<BoilerKind> {
  static constexpr auto names = std::to_array<std::string_view>({"electric boiler", "tank heater", "none"});
};

Record record_of(PumpSize& x) {
  static constexpr Key keys[] = {
      key<&PumpSize::flow_m3_per_s>({.meaning = "Flow to buy."}),
      key<&PumpSize::head_m>({.meaning = "Head to buy."}),
      key<&PumpSize::added_head_m>({.meaning = "All loops' heads added up: the wrong head to buy."}),
      key<&PumpSize::hydraulic_W>({.meaning = "Power given to the water at that duty."}),
      key<&PumpSize::tried_on>({.meaning = "The pump that the floor was tried on."}),
      key<&PumpSize::runs_m3_per_s>({.meaning = "Flow it then runs at."}),
      key<&PumpSize::runs_head_m>({.meaning = "Head it then runs at."}),
      key<&PumpSize::runs_share>({.meaning = "That flow over the one where its curve ends."}),
      key<&PumpSize::electric_W>({.meaning = "Power from the wall as it runs."}),
      key<&PumpSize::season_J>({.meaning = "The same over a winter."}),
      key<&PumpSize::suction_m>({.meaning = "Net positive suction head that it has."})};
  return {keys, &x};
}

Record record_of(BoilerSize& x) {
  static constexpr Key keys[] = {
      key<&BoilerSize::kind>({.meaning = "What warms the water."}),
      key<&BoilerSize::floor_W>({.meaning = "Heat of the floor at design, second source locked out."}),
      key<&BoilerSize::pickup_W>({.meaning = "For warming up a cold slab."}),
      key<&BoilerSize::wanted_W>({.meaning = "Floor and pick-up."}),
      key<&BoilerSize::power_W>({.meaning = "The file's, or the next size up."}),
      key<&BoilerSize::from_file>({.meaning = "Whether the file gave it."}),
      key<&BoilerSize::spare_share>({.meaning = "Power over floor, less 1."}),
      key<&BoilerSize::fails_working_degC>({.meaning = "Outdoors, below this the working air cannot be kept."}),
      key<&BoilerSize::least_flow_m3_per_s>({.meaning = "Least flow through the boiler."}),
      key<&BoilerSize::flow_enough>({.meaning = "Whether the floor gives it that."}),
      key<&BoilerSize::mains_loss_W>({.meaning = "Loss of mains outside the heated space."})};
  return {keys, &x};
}

Record record_of(TankSize& x) {
  static constexpr Key keys[] = {
      key<&TankSize::fluid_m3>({.meaning = "Fluid in all."}),
      key<&TankSize::glycol_m3>({.meaning = "Pure glycol in it."}),
      key<&TankSize::expansion_m3>({.meaning = "What it grows by."}),
      key<&TankSize::tank_m3>({.meaning = "Expansion tank, at least."}),
      key<&TankSize::coldest_degC>({.meaning = "Coldest standing fluid."}),
      key<&TankSize::hottest_degC>({.meaning = "Hottest fluid."}),
      key<&TankSize::fill_Pa>({.meaning = "Least at the tank, when coldest, gauge."}),
      key<&TankSize::start_degC>({.meaning = "Water when the system is filled."}),
      key<&TankSize::start_Pa>({.meaning = "What it is filled to then, gauge."}),
      key<&TankSize::most_Pa>({.meaning = "Most when hot, gauge."}),
      key<&TankSize::top_Pa>({.meaning = "At the highest pipe, when coldest, gauge."}),
      key<&TankSize::relief_W>({.meaning = "Heat the relief valve is rated for, at least."})};
  return {keys, &x};
}

Record record_of(ElectricSize& x) {
  static constexpr Key keys[] = {
      key<&ElectricSize::power_W>({.meaning = "Electric power."}),
      key<&ElectricSize::voltage_V>({.meaning = "Voltage."}),
      key<&ElectricSize::phases>({.meaning = "Phases."}),
      key<&ElectricSize::current_A>({.meaning = "Current, a phase."}),
      key<&ElectricSize::demand_share>(
          {.meaning = "Of it, what wire and breaker are sized for, where the code family says."}),
      key<&ElectricSize::demand_A>({.meaning = "That current."}),
      key<&ElectricSize::device_A>({.meaning = "Next standard protective device, indicative."}),
      key<&ElectricSize::free_A>({.meaning = "What the service has free."}),
      key<&ElectricSize::fits>({.meaning = "Whether the service has that free."}),
      key<&ElectricSize::together_A>({.meaning = "Boiler, second source and all else at once."}),
      key<&ElectricSize::one_heats_A>({.meaning = "The same where boiler and second source never heat at once."}),
      key<&ElectricSize::main_breaker_A>({.meaning = "The main breaker."}),
      key<&ElectricSize::stages_number>({.meaning = "Stages of the boiler."}),
      key<&ElectricSize::room_stages_number>({.meaning = "How many of them it leaves room for beside the rest."})};
  return {keys, &x};
}

Record record_of(StartUp& x) {
  static constexpr Key keys[] = {
      key<&StartUp::water_degC>({.meaning = "Slab and water at first."}),
      key<&StartUp::flow_m3_per_s>({.meaning = "Flow through the loops then."}),
      key<&StartUp::boiler_m3_per_s>({.meaning = "Flow through the boiler then."}),
      key<&StartUp::flow_share>({.meaning = "The same over the flow at the operating point."}),
      key<&StartUp::laminar_share>({.meaning = "Loops whose water then moves laminar."}),
      key<&StartUp::frozen>({.meaning = "Whether it stands below its freezing point: nothing moves."}),
      key<&StartUp::flow_enough>({.meaning = "Whether the boiler gets the flow it needs."}),
      key<&StartUp::fires_from_degC>({.meaning = "Warmer than this, the boiler gets the flow it needs."}),
      key<&StartUp::until_flow_s>({.meaning = "Until 95 % of the operating point's flow, boiler at full power."})};
  return {keys, &x};
}

Record record_of(BoilerCycle& x) {
  static constexpr Key keys[] = {
      key<&BoilerCycle::stages_number>({.meaning = "Stages of the boiler."}),
      key<&BoilerCycle::stage_W>({.meaning = "Power of one."}),
      key<&BoilerCycle::taken_W>({.meaning = "What the floor takes in mild weather."}),
      key<&BoilerCycle::least_on_s>({.meaning = "How long a stage should run."}),
      key<&BoilerCycle::short_runs>({.meaning = "Whether it runs shorter than it should."}),
      key<&BoilerCycle::on_s>({.meaning = "How long a stage runs; absent where it stays on."}),
      key<&BoilerCycle::off_s>({.meaning = "How long it then rests."}),
      key<&BoilerCycle::buffer_m3>({.meaning = "Water to add so that runs are long enough."})};
  return {keys, &x};
}

Record record_of(Purge& x) {
  static constexpr Key keys[] = {
      key<&Purge::loop>({.meaning = "Loop."}),
      key<&Purge::port>({.meaning = "Its port."}),
      key<&Purge::flow_m3_per_s>({.meaning = "Flow at which bubbles go along for certain, through it alone."}),
      key<&Purge::loss_Pa>({.meaning = "Pressure that the loop then asks for."}),
      key<&Purge::least_m3_per_s>({.meaning = "Slower, and bubbles stay behind."}),
      key<&Purge::for_s>({.meaning = "Until its water has been changed twice."})};
  return {keys, &x};
}

Record record_of(PlantSizes& x) {
  static constexpr Key keys[] = {key<&PlantSizes::pump>({.meaning = "Pump."}),
                                 key<&PlantSizes::boiler>({.meaning = "Boiler."}),
                                 key<&PlantSizes::tank>({.meaning = "Expansion tank and fluid."}),
                                 key<&PlantSizes::electric>({.meaning = "Electric supply."}),
                                 key<&PlantSizes::start>({.meaning = "The first start, all of it cold."}),
                                 key<&PlantSizes::cycle>({.meaning = "Boiler stages against what is taken."}),
                                 key<&PlantSizes::purge>({.meaning = "Air out of each loop alone."})};
  return {keys, &x};
}

}  // namespace slabwright
