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
      key<&PlaceAtSetting::coldest_degC>({.meaning = "Through the snap, the wall thermostat at its best figure."}),
      key<&PlaceAtSetting::limit_degC>({.meaning = "What it must stay above."}),
      key<&PlaceAtSetting::freezes_degC>({.meaning = "What it freezes at."}),
      key<&PlaceAtSetting::spare_K>({.meaning = "Coldest less what it freezes at."}),
      key<&PlaceAtSetting::asks_air_degC>({.meaning = "Lowest wall thermostat that keeps it above its limit."}),
      key<&PlaceAtSetting::asks_slab_degC>({.meaning = "Lowest slab sensor reading that does."}),
      key<&PlaceAtSetting::shut_degC>(
          {.meaning = "Its loop shut for good, the coldest hour as if it lasted, the room at the setting."}),
      key<&PlaceAtSetting::ice_below_degC>({.meaning = "Outdoors below which it freezes at the setting."})};
  return {keys, &x};
}

Record record_of(UnknownPlace& x) {
  static constexpr Key keys[] = {key<&UnknownPlace::name>({.meaning = "A place that could not be computed."}),
                                 key<&UnknownPlace::why>({.meaning = "Why."})};
  return {keys, &x};
}

Record record_of(DriverWeights& x) {
  static constexpr Key keys[] = {key<&DriverWeights::indoor_share>({.meaning = "Of the room's air."}),
                                 key<&DriverWeights::outdoor_share>({.meaning = "Of the outdoor air."}),
                                 key<&DriverWeights::ground_share>({.meaning = "Of the deep ground."}),
                                 key<&DriverWeights::tube_m2K_per_W>({.meaning = "Kelvin per W/m2 of tube heat."})};
  return {keys, &x};
}

Record record_of(Explained& x) {
  static constexpr Key keys[] = {
      key<&Explained::idle>({.meaning = "Steady weights of the place without tube heat near it."}),
      key<&Explained::running>({.meaning = "The same with heat in the tubes."}),
      key<&Explained::after_s>({.meaning = "When it asks for most, since the lead of the snap began."}),
      key<&Explained::outdoor_degC>({.meaning = "Outdoors then."}),
      key<&Explained::gain_share>({.meaning = "Kelvin of the place per kelvin of the dial, then."}),
      key<&Explained::base_degC>({.meaning = "The place with the dial at 0 C, then."}),
      key<&Explained::limit_degC>({.meaning = "What it must stay above."}),
      key<&Explained::asks_degC>({.meaning = "(limit - base) / gain."}),
      key<&Explained::control_K>({.meaning = "Added for switching on and off."}),
      key<&Explained::sensor_error_K>({.meaning = "Added for a sensor that reads too high."}),
      key<&Explained::dial_degC>({.meaning = "The sum, rounded up to a mark of the dial."})};
  return {keys, &x};
}

Record record_of(DialSetting& x) {
  static constexpr Key keys[] = {
      key<&DialSetting::decides>({.meaning = "The place that sets it."}),
      key<&DialSetting::best_degC>({.meaning = "Best figure, before sensor error."}),
      key<&DialSetting::control_K>({.meaning = "What switching on and off adds; in the best figure."}),
      key<&DialSetting::wanted_degC>({.meaning = "With the sensor's error, or what the bands ask for."}),
      key<&DialSetting::dial_degC>({.meaning = "What the dial is set to."})};
  return {keys, &x};
}

Record record_of(Freeze& x) {
  static constexpr Key keys[] = {
      key<&Freeze::verdict>({.meaning = "Whether a setting keeps everything above its limit."}),
      key<&Freeze::reason>({.meaning = "Why not."}),
      key<&Freeze::tried>({.meaning = "The cold snap, in words."}),
      key<&Freeze::snap_hourly_degC>({.meaning = "The snap hour by hour, its lead first."}),
      key<&Freeze::outdoor_degC>({.meaning = "The coldest hour."}),
      key<&Freeze::air>({.meaning = "The wall thermostat."}),
      key<&Freeze::slab>({.meaning = "The slab sensor instead; absent where no setting of it is enough."}),
      key<&Freeze::slab_sensor>({.meaning = "Where the slab sensor sits."}),
      key<&Freeze::air_sensor>({.meaning = "Where the air sensor sits."}),
      key<&Freeze::lasting_air_dial_degC>(
          {.meaning = "Wall thermostat had the coldest hour always lasted, the pump kept running."}),
      key<&Freeze::lasting_slab_dial_degC>({.meaning = "Slab sensor then."}),
      key<&Freeze::shut_air_dial_degC>({.meaning = "Wall thermostat then with any one loop shut for good."}),
      key<&Freeze::shut_slab_dial_degC>({.meaning = "Slab sensor then."}),
      key<&Freeze::place>({.meaning = "What decides, and what would decide next."}),
      key<&Freeze::unknown>({.meaning = "What could not be computed."}),
      key<&Freeze::beyond_boiler>({.meaning = "A place that the boiler at full heat leaves too cold."}),
      key<&Freeze::hold_W>({.meaning = "Heat the water must give at the coldest."}),
      key<&Freeze::boiler_keeps_to_degC>({.meaning = "Outdoors below which the boiler cannot keep the slab dial."}),
      key<&Freeze::explained>({.meaning = "The arithmetic of the place that decides."})};
  return {keys, &x};
}

}  // namespace slabwright
