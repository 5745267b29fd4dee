#include "slabwright/freeze_outage.hpp"
#include "slabwright/freeze_recovery.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(OutagePlace& x) {
  static constexpr Key keys[] = {
      key<&OutagePlace::name>({.meaning = "Which place."}),
      key<&OutagePlace::lasts_s>({.meaning = "From the cut until it freezes; absent: longer than the clock runs."}),
      key<&OutagePlace::whole_s>({.meaning = "The same in whole hours, rounded down."})};
  return {keys, &x};
}

Record record_of(OutageCase& x) {
  static constexpr Key keys[] = {
      key<&OutageCase::outdoor_degC>({.meaning = "Outdoors, before and after the cut."}),
      key<&OutageCase::air_dial_degC>({.meaning = "The wall thermostat's dial until the cut."}),
      key<&OutageCase::first>({.meaning = "What freezes first."}),
      key<&OutageCase::lasts_s>({.meaning = "From the cut until it freezes; absent: longer than the clock runs."}),
      key<&OutageCase::whole_s>({.meaning = "The same in whole hours, rounded down."}),
      key<&OutageCase::place>({.meaning = "Every place that decides, soonest first."}),
      key<&OutageCase::pump_first>({.meaning = "What freezes first while a generator keeps the pump alone running."}),
      key<&OutageCase::pump_lasts_s>(
          {.meaning = "From the cut until that freezes; absent: longer than the clock runs."}),
      key<&OutageCase::pump_whole_s>({.meaning = "The same in whole hours, rounded down."}),
      key<&OutageCase::stage_first>({.meaning = "What freezes first while it also feeds one element of the boiler."}),
      key<&OutageCase::stage_lasts_s>(
          {.meaning = "From the cut until that freezes; absent: longer than the clock runs."}),
      key<&OutageCase::stage_whole_s>({.meaning = "The same in whole hours, rounded down."})};
  return {keys, &x};
}

Record record_of(Outage& x) {
  static constexpr Key keys[] = {
      key<&Outage::longest_s>({.meaning = "How long the clock runs."}),
      key<&Outage::floor_cools_air>({.meaning = "Whether the floor took heat from the air in any case."}),
      key<&Outage::stage_W>({.meaning = "One element of the boiler."}),
      key<&Outage::line_ice_s>({.meaning = "A bare 1/2 in line in the coldest air, from freezing to solid ice."}),
      key<&Outage::row>({.meaning = "One for each weather and setting."})};
  return {keys, &x};
}

Record record_of(SingleFault& x) {
  static constexpr Key keys[] = {
      key<&SingleFault::what>({.meaning = "What fails."}),
      key<&SingleFault::first>({.meaning = "The first place to freeze."}),
      key<&SingleFault::lasts_s>({.meaning = "Until it freezes; absent: nothing freezes within the clock."}),
      key<&SingleFault::means>({.meaning = "What is left, or what it costs."})};
  return {keys, &x};
}

Record record_of(TurnOff& x) {
  static constexpr Key keys[] = {
      key<&TurnOff::yes>({.meaning = "Whether everything may be switched off for the winter."}),
      key<&TurnOff::freezes>({.meaning = "What would freeze, coldest first."}),
      key<&TurnOff::coldest_tube_degC>({.meaning = "The coldest tube then."}),
      key<&TurnOff::coldest_air_degC>({.meaning = "The coldest air at manifold and boiler then."}),
      key<&TurnOff::glycol_share>({.meaning = "Glycol by volume that keeps what the loops hold liquid."})};
  return {keys, &x};
}

Record record_of(Recovery& x) {
  static constexpr Key keys[] = {
      key<&Recovery::outdoor_degC>({.meaning = "Outdoors."}),
      key<&Recovery::from_air_degC>({.meaning = "The room before."}),
      key<&Recovery::to_air_degC>({.meaning = "The room wanted."}),
      key<&Recovery::takes_s>({.meaning = "How long it takes; absent: longer than four days."}),
      key<&Recovery::starts_at_s>({.meaning = "When to start, from midnight of the day it opens."}),
      key<&Recovery::boiler_J>({.meaning = "Heat of the boiler on the way."}),
      key<&Recovery::source_J>({.meaning = "Heat of the second source on the way."}),
      key<&Recovery::floor_degC>({.meaning = "The floor's face then."}),
      key<&Recovery::operative_degC>({.meaning = "What it feels like then."}),
      key<&Recovery::source_runs>({.meaning = "Whether the second source can run in that weather."})};
  return {keys, &x};
}

Record record_of(SensorCase& x) {
  static constexpr Key keys[] = {
      key<&SensorCase::where>({.meaning = "Where the slab sensor sits, or what is wrong with it."}),
      key<&SensorCase::reads_off_K>({.meaning = "More than in the right place, in the coldest hour."}),
      key<&SensorCase::dial_degC>({.meaning = "What its dial would have to be set to."}),
      key<&SensorCase::coldest_spare_K>(
          {.meaning = "Left at the right place's dial: the coldest place above what it freezes at."})};
  return {keys, &x};
}

}  // namespace slabwright
