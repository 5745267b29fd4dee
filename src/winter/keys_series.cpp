#include "slabwright/key.hpp"
#include "slabwright/winter_series.hpp"

namespace slabwright {

Record record_of(SettingCost& x) {
  static constexpr Key keys[] = {
      key<&SettingCost::setting_degC>({.meaning = "The floor's setting, all winter."}),
      key<&SettingCost::use_J>({.meaning = "Electricity for heat in the year."}),
      key<&SettingCost::money>({.meaning = "What it costs; absent without a price."}),
      key<&SettingCost::keeps>({.meaning = "Whether it is no lower than the lowest setting."})};
  return {keys, &x};
}

Record record_of(OwnerCost& x) {
  static constexpr Key keys[] = {
      key<&OwnerCost::insulation>({.meaning = "What is added, or that nothing is."}),
      key<&OwnerCost::before_pour>({.meaning = "True where it is too late once the concrete is in."}),
      key<&OwnerCost::second_source>({.meaning = "Whether the second source warms working hours."}),
      key<&OwnerCost::air_degC>({.meaning = "The floor's wall thermostat, all winter."}),
      key<&OwnerCost::use_J>({.meaning = "Electricity for heat in the year."}),
      key<&OwnerCost::money>({.meaning = "What it costs; absent without a price."})};
  return {keys, &x};
}

Record record_of(WinterWeek& x) {
  static constexpr Key keys[] = {
      key<&WinterWeek::way>({.meaning = "The way of running."}),
      key<&WinterWeek::first_hour>({.meaning = "Hour of the year that it begins with, from 0."}),
      key<&WinterWeek::month>({.meaning = "The month of that hour, 1 to 12."}),
      key<&WinterWeek::day>({.meaning = "And the day of it."}),
      key<&WinterWeek::outdoor_degC>({.meaning = "Hour by hour: outdoors."}),
      key<&WinterWeek::air_degC>({.meaning = "Air of the main room."}),
      key<&WinterWeek::slab_degC>({.meaning = "Slab midway between two tubes."}),
      key<&WinterWeek::floor_degC>({.meaning = "The floor's face."}),
      key<&WinterWeek::boiler_W>({.meaning = "What the boiler draws, mean of the hour."}),
      key<&WinterWeek::source_W>({.meaning = "What the second source draws."}),
      key<&WinterWeek::floor_heat_W>({.meaning = "Heat that the water brings into the floor."}),
      key<&WinterWeek::source_heat_W>({.meaning = "Heat of the second source."}),
      key<&WinterWeek::locked_s>({.meaning = "The second source was wanted and too cold outdoors for it."}),
      key<&WinterWeek::lowest_outdoor_degC>({.meaning = "The coldest hour."}),
      key<&WinterWeek::lowest_air_degC>({.meaning = "The coldest air."}),
      key<&WinterWeek::lowest_slab_degC>({.meaning = "The coldest slab."}),
      key<&WinterWeek::use_J>({.meaning = "Electricity for heat in it."})};
  return {keys, &x};
}

Record record_of(WinterSeries& x) {
  static constexpr Key keys[] = {
      key<&WinterSeries::way>({.meaning = "The way that `air` and `slab` are of."}),
      key<&WinterSeries::air_lowest_degC>({.meaning = "Its frost hold by the wall thermostat."}),
      key<&WinterSeries::slab_lowest_degC>({.meaning = "And by the slab sensor."}),
      key<&WinterSeries::air>({.meaning = "By rising setting of the wall thermostat."}),
      key<&WinterSeries::slab>({.meaning = "By rising setting of the slab sensor."}),
      key<&WinterSeries::owner>({.meaning = "By insulation, without and with the second source, by rising setting."})};
  return {keys, &x};
}

}  // namespace slabwright
