#include <array>

#include "slabwright/key.hpp"
#include "slabwright/plant.hpp"

namespace slabwright {

template <>
struct Choices<Part> {
  static constexpr auto names = std::to_array<std::string_view>(
      {"pump", "boiler", "mixing valve", "mains", "bar", "balancing valve", "return valve", "leader", "tube", "bend"});
};
template <>
struct Choices<Stop> {
  static constexpr auto names =
      std::to_array<std::string_view>({"converged", "rounds spent", "no solution", "not finite"});
};
template <>
struct Choices<Regime> {
  static constexpr auto names = std::to_array<std::string_view>({"laminar", "blended", "turbulent"});
};
template <>
struct Choices<BoilerKind> {
  static constexpr auto names = std::to_array<std::string_view>({"electric boiler", "tank heater", "none"});
};

Record record_of(PartLoss& x) {
  static constexpr Key keys[] = {key<&PartLoss::part>({.meaning = "Which part."}),
                                 key<&PartLoss::pressure_Pa>({.meaning = "Pressure lost in it."})};
  return {keys, &x};
}

Record record_of(LoopState& x) {
  static constexpr Key keys[] = {
      key<&LoopState::flow_m3_per_s>({.meaning = "Flow."}),
      key<&LoopState::return_degC>({.meaning = "Water coming back."}),
      key<&LoopState::up_W>({.meaning = "Heat to the room."}),
      key<&LoopState::down_W>({.meaning = "Heat to ground and edge."}),
      key<&LoopState::velocity_m_per_s>({.meaning = "Velocity in the tube."}),
      key<&LoopState::reynolds_number>({.meaning = "Reynolds number."}),
      key<&LoopState::regime>({.meaning = "How the water moves; `blended` is uncertain by about 20 % in pressure."}),
      key<&LoopState::film_W_per_m2K>({.meaning = "Film inside the tube."}),
      key<&LoopState::loss_Pa>({.meaning = "Pressure lost from port to port."}),
      key<&LoopState::part>({.meaning = "The same by part."})};
  return {keys, &x};
}

Record record_of(OperatingPoint& x) {
  static constexpr Key keys[] = {
      key<&OperatingPoint::stop>({.meaning = "How the coupling loop ended."}),
      key<&OperatingPoint::worst>({.meaning = "Loop that moved most in its last round."}),
      key<&OperatingPoint::rounds>({.meaning = "Rounds of the coupling loop."}),
      key<&OperatingPoint::supply_degC>({.meaning = "Water to the floor."}),
      key<&OperatingPoint::return_degC>({.meaning = "Water back, mixed."}),
      key<&OperatingPoint::flow_m3_per_s>({.meaning = "Flow of all loops."}),
      key<&OperatingPoint::pump_Pa>({.meaning = "What the pump overcomes round the hardest loop."}),
      key<&OperatingPoint::up_W>({.meaning = "Heat to the rooms."}),
      key<&OperatingPoint::down_W>({.meaning = "Heat to ground and edge."}),
      key<&OperatingPoint::water_W>({.meaning = "Heat the water gives up."}),
      key<&OperatingPoint::loop>({.meaning = "Loop by loop."}),
      key<&OperatingPoint::room_up_W>({.meaning = "Heat to each room."}),
      key<&OperatingPoint::room_floor_degC>({.meaning = "Each room's floor surface, on average."}),
      key<&OperatingPoint::room_floor_peak_degC>({.meaning = "The warmest place of each room's floor."}),
      key<&OperatingPoint::hardest_loop>({.meaning = "Row of the hardest loop, from 0."}),
      key<&OperatingPoint::hardest_part>({.meaning = "The hardest loop's whole round by part."}),
      key<&OperatingPoint::source>({.meaning = "What runs and mixes between boiler and mains."})};
  return {keys, &x};
}

Record record_of(PumpState& x) {
  static constexpr Key keys[] = {key<&PumpState::name>({.meaning = "Which pump."}),
                                 key<&PumpState::flow_m3_per_s>({.meaning = "Flow it runs at."}),
                                 key<&PumpState::pressure_Pa>({.meaning = "Pressure it gives."}),
                                 key<&PumpState::stands>({.meaning = "Whether its check valve is shut."}),
                                 key<&PumpState::outside>({.meaning = "Whether it runs beyond its curve as known."})};
  return {keys, &x};
}

Record record_of(SourceState& x) {
  static constexpr Key keys[] = {
      key<&SourceState::boiler_m3_per_s>({.meaning = "Flow through the boiler."}),
      key<&SourceState::boiler_degC>({.meaning = "Water that the boiler must give."}),
      key<&SourceState::boiler_in_degC>({.meaning = "Water that comes back to it."}),
      key<&SourceState::mixed_in_m3_per_s>({.meaning = "Return water that joins the supply past the boiler."}),
      key<&SourceState::straight_back_m3_per_s>({.meaning = "Boiler water that goes back past the floor."}),
      key<&SourceState::bypass_m3_per_s>({.meaning = "Flow through the bypass valve."}),
      key<&SourceState::hot_share>({.meaning = "Boiler water in the supply, where something mixes to a temperature."}),
      key<&SourceState::setting_share>({.meaning = "Place of its stem, or speed of its pump."}),
      key<&SourceState::reached>({.meaning = "Whether this piping can make the supply that is asked for."}),
      key<&SourceState::pump>({.meaning = "Pump by pump, the floor's first."})};
  return {keys, &x};
}

Record record_of(PumpSize& x) {
  static constexpr Key keys[] = {key<&PumpSize::flow_m3_per_s>({.meaning = "Flow to buy."}),
                                 key<&PumpSize::head_m>({.meaning = "Head to buy."}),
                                 key<&PumpSize::hydraulic_W>({.meaning = "Power given to the water at that duty."}),
                                 key<&PumpSize::tried_on>({.meaning = "The pump that the floor was tried on."}),
                                 key<&PumpSize::runs_m3_per_s>({.meaning = "Flow it then runs at."}),
                                 key<&PumpSize::runs_head_m>({.meaning = "Head it then runs at."})};
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
      key<&BoilerSize::mixing_share>({.meaning = "Boiler water in the supply, where a mixing valve stands."}),
      key<&BoilerSize::mains_loss_W>({.meaning = "Loss of mains outside the heated space."})};
  return {keys, &x};
}

Record record_of(TankSize& x) {
  static constexpr Key keys[] = {key<&TankSize::fluid_m3>({.meaning = "Fluid in all."}),
                                 key<&TankSize::glycol_m3>({.meaning = "Pure glycol in it."}),
                                 key<&TankSize::expansion_m3>({.meaning = "What it grows by."}),
                                 key<&TankSize::tank_m3>({.meaning = "Expansion tank, at least."}),
                                 key<&TankSize::coldest_degC>({.meaning = "Coldest standing fluid."}),
                                 key<&TankSize::hottest_degC>({.meaning = "Hottest fluid."}),
                                 key<&TankSize::fill_Pa>({.meaning = "Cold fill, gauge."}),
                                 key<&TankSize::most_Pa>({.meaning = "Most when hot, gauge."})};
  return {keys, &x};
}

Record record_of(ElectricSize& x) {
  static constexpr Key keys[] = {
      key<&ElectricSize::power_W>({.meaning = "Electric power."}),
      key<&ElectricSize::voltage_V>({.meaning = "Voltage."}),
      key<&ElectricSize::phases>({.meaning = "Phases."}),
      key<&ElectricSize::current_A>({.meaning = "Current, a phase."}),
      key<&ElectricSize::demand_A>({.meaning = "125 % of it, where the code family asks for that."}),
      key<&ElectricSize::device_A>({.meaning = "Next standard protective device, indicative."}),
      key<&ElectricSize::free_A>({.meaning = "What the service has free."}),
      key<&ElectricSize::fits>({.meaning = "Whether the service has that free."})};
  return {keys, &x};
}

Record record_of(PlantSizes& x) {
  static constexpr Key keys[] = {key<&PlantSizes::pump>({.meaning = "Pump."}),
                                 key<&PlantSizes::boiler>({.meaning = "Boiler."}),
                                 key<&PlantSizes::tank>({.meaning = "Expansion tank and fluid."}),
                                 key<&PlantSizes::electric>({.meaning = "Electric supply."})};
  return {keys, &x};
}

}  // namespace slabwright
