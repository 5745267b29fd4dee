#include "slabwright/answer_sums.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(ManifoldSum& x) {
  static constexpr Key keys[] = {key<&ManifoldSum::name>({.meaning = "Which manifold."}),
                                 key<&ManifoldSum::loops>({.meaning = "Loops that leave it."}),
                                 key<&ManifoldSum::ports>({.meaning = "Its ports."}),
                                 key<&ManifoldSum::spare>({.meaning = "Those that stay free."}),
                                 key<&ManifoldSum::tube_m>({.meaning = "Tube of its loops, leaders included."}),
                                 key<&ManifoldSum::flow_m3_per_s>({.meaning = "Flow of its loops as they run."})};
  return {keys, &x};
}

Record record_of(LoopSum& x) {
  static constexpr Key keys[] = {key<&LoopSum::loop>({.meaning = "Which loop."}),
                                 key<&LoopSum::leader_m>({.meaning = "Its leaders, both ways together."}),
                                 key<&LoopSum::heating_m>({.meaning = "The rest of it."}),
                                 key<&LoopSum::drop_K>({.meaning = "Supply less its return."})};
  return {keys, &x};
}

Record record_of(WaySum& x) {
  static constexpr Key keys[] = {
      key<&WaySum::way>({.meaning = "The way of running."}),
      key<&WaySum::boiler_J>({.meaning = "Electricity of the boiler in the year."}),
      key<&WaySum::source_J>({.meaning = "Electricity of the second source."}),
      key<&WaySum::pump_J>({.meaning = "Electricity of the pump."}),
      key<&WaySum::floor_heat_J>({.meaning = "Heat that the water brought into the floor."}),
      key<&WaySum::source_heat_J>({.meaning = "Heat of the second source."}),
      key<&WaySum::source_cop_number>({.meaning = "Its heat over its electricity."}),
      key<&WaySum::saved_J>({.meaning = "Electricity saved against the way it was run before."}),
      key<&WaySum::saved_money>({.meaning = "The same in money."}),
      key<&WaySum::saved_share>({.meaning = "Share of money saved, or of electricity without a price."}),
      key<&WaySum::warm_share>({.meaning = "Share of working time that is no more than 2 K too cold."}),
      key<&WaySum::wet_s>({.meaning = "The floor sweats, in the year."}),
      key<&WaySum::spring_wet_s>({.meaning = "And from March to May."}),
      key<&WaySum::nearest>({.meaning = "The deciding place with the least to spare."}),
      key<&WaySum::spare_K>({.meaning = "What it has over its limit."})};
  return {keys, &x};
}

Record record_of(AnswerSums& x) {
  static constexpr Key keys[] = {
      key<&AnswerSums::wanted_W>({.meaning = "Asked of all floors, upward."}),
      key<&AnswerSums::drop_K>({.meaning = "Supply less mixed return in the weather planned for."}),
      key<&AnswerSums::more_share>({.meaning = "What floors give over what is asked."}),
      key<&AnswerSums::purge_s>({.meaning = "The longest that a loop's air takes, in whole minutes."}),
      key<&AnswerSums::manifold>({.meaning = "Row for row of the design's manifolds."}),
      key<&AnswerSums::loop>({.meaning = "Row for row of the loops."}),
      key<&AnswerSums::way>({.meaning = "Row for row of the winter's ways."})};
  return {keys, &x};
}

}  // namespace slabwright
