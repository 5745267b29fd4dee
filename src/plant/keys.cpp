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

}  // namespace slabwright
