#include "slabwright/freeze.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

template <>
struct Choices<PlaceKind> {
  static constexpr auto names =
      std::to_array<std::string_view>({"tube", "floor line", "room air", "room pipe", "wall pipe", "drain trap",
                                       "slab corner", "soil", "outdoor line"});
};

template <>
struct Choices<FreezeVerdict> {
  static constexpr auto names =
      std::to_array<std::string_view>({"found", "no setting is safe", "cannot be called safe"});
};

Record record_of(PlaceAtSetting& x) {
  static constexpr Key keys[] = {
      key<&PlaceAtSetting::name>({.meaning = "Which place."}),
      key<&PlaceAtSetting::kind>({.meaning = "What it is."}),
      key<&PlaceAtSetting::decides>({.meaning = "False where it is only reported."}),
      key<&PlaceAtSetting::coldest_degC>({.meaning = "At the setting, no heat in the tubes near it."}),
      key<&PlaceAtSetting::running_degC>({.meaning = "The same with the pump running."}),
      key<&PlaceAtSetting::limit_degC>({.meaning = "What it must stay above."}),
      key<&PlaceAtSetting::freezes_degC>({.meaning = "What it freezes at."}),
      key<&PlaceAtSetting::spare_K>({.meaning = "Coldest less what it freezes at."}),
      key<&PlaceAtSetting::asks_slab_degC>({.meaning = "Lowest slab sensor reading that keeps it above its limit."}),
      key<&PlaceAtSetting::asks_air_degC>({.meaning = "The air at the air sensor then."}),
      key<&PlaceAtSetting::ice_below_degC>({.meaning = "Outdoors below which it freezes at the setting."})};
  return {keys, &x};
}

Record record_of(UnknownPlace& x) {
  static constexpr Key keys[] = {key<&UnknownPlace::name>({.meaning = "A place that could not be computed."}),
                                 key<&UnknownPlace::why>({.meaning = "Why."})};
  return {keys, &x};
}

Record record_of(Freeze& x) {
  static constexpr Key keys[] = {
      key<&Freeze::verdict>({.meaning = "Whether a setting keeps everything above its limit."}),
      key<&Freeze::reason>({.meaning = "Why not."}),
      key<&Freeze::decides>({.meaning = "The place that sets the number."}),
      key<&Freeze::outdoor_degC>({.meaning = "The coldest hour, as if it lasted."}),
      key<&Freeze::slab_degC>({.meaning = "Best figure for the slab, before sensor error."}),
      key<&Freeze::air_degC>({.meaning = "The air that the slab then holds."}),
      key<&Freeze::slab_dial_degC>({.meaning = "What a slab sensor's dial is set to."}),
      key<&Freeze::air_dial_degC>({.meaning = "What a wall thermostat is set to instead."}),
      key<&Freeze::slab_sensor>({.meaning = "Where the slab sensor sits."}),
      key<&Freeze::air_sensor>({.meaning = "Where the air sensor sits."}),
      key<&Freeze::pump_kept_slab_dial_degC>({.meaning = "Slab dial while the pump is kept running in the cold."}),
      key<&Freeze::pump_kept_air_dial_degC>({.meaning = "Air dial while the pump is kept running in the cold."}),
      key<&Freeze::place>({.meaning = "What decides, and what would decide next."}),
      key<&Freeze::unknown>({.meaning = "What could not be computed."}),
      key<&Freeze::hold_W>({.meaning = "Heat the water must give at the coldest."}),
      key<&Freeze::boiler_keeps_to_degC>({.meaning = "Outdoors below which the boiler cannot keep the slab dial."})};
  return {keys, &x};
}

Record record_of(OutagePlace& x) {
  static constexpr Key keys[] = {
      key<&OutagePlace::name>({.meaning = "Which place."}),
      key<&OutagePlace::lasts_s>({.meaning = "From the cut until it freezes; absent: longer than the clock runs."})};
  return {keys, &x};
}

Record record_of(OutageCase& x) {
  static constexpr Key keys[] = {
      key<&OutageCase::outdoor_degC>({.meaning = "Outdoors, before and after the cut."}),
      key<&OutageCase::air_dial_degC>({.meaning = "The wall thermostat's dial until the cut."}),
      key<&OutageCase::first>({.meaning = "What freezes first."}),
      key<&OutageCase::lasts_s>({.meaning = "From the cut until it freezes; absent: longer than the clock runs."}),
      key<&OutageCase::place>({.meaning = "Every place that decides, soonest first."}),
      key<&OutageCase::pump_first>({.meaning = "What freezes first while a generator keeps the pump alone running."}),
      key<&OutageCase::pump_lasts_s>(
          {.meaning = "From the cut until that freezes; absent: longer than the clock runs."})};
  return {keys, &x};
}

Record record_of(Outage& x) {
  static constexpr Key keys[] = {
      key<&Outage::longest_s>({.meaning = "How long the clock runs."}),
      key<&Outage::floor_cools_air>({.meaning = "Whether the floor took heat from the air in any case."}),
      key<&Outage::row>({.meaning = "One for each weather and setting."})};
  return {keys, &x};
}

}  // namespace slabwright
