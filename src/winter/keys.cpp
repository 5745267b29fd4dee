// How a way and what came of it are shown. Hour by hour it goes into a table, not in here.
#include "slabwright/key.hpp"
#include "slabwright/winter_keys.hpp"

namespace slabwright {

Record record_of(PlaceInWinter& x) {
  static constexpr Key keys[] = {
      key<&PlaceInWinter::name>({.meaning = "Which place."}),
      key<&PlaceInWinter::decides>({.meaning = "False where it is only reported."}),
      key<&PlaceInWinter::coldest_degC>({.meaning = "This way for years, the cold snap in January."}),
      key<&PlaceInWinter::limit_degC>({.meaning = "What it must stay above."}),
      key<&PlaceInWinter::freezes_degC>({.meaning = "What it freezes at."}),
      key<&PlaceInWinter::month>({.meaning = "When it was coldest: the month, 1 to 12."}),
      key<&PlaceInWinter::day>({.meaning = "And the day of it."}),
      key<&PlaceInWinter::as_before_degC>({.meaning = "Coldest with the soil that the past way has left."}),
      key<&PlaceInWinter::new_building_degC>({.meaning = "Coldest in the first winter of a new building."})};
  return {keys, &x};
}

Record record_of(WayFails& x) {
  static constexpr Key keys[] = {key<&WayFails::comfort>({.meaning = "Too cold in too much of the working time."}),
                                 key<&WayFails::frost_hold>({.meaning = "A place that decides falls below its limit."}),
                                 key<&WayFails::boiler>({.meaning = "The boiler at its most cannot hold the floor."})};
  return {keys, &x};
}

Record record_of(WayMonth& x) {
  static constexpr Key keys[] = {
      key<&WayMonth::boiler_J>({.meaning = "Electricity of the boiler."}),
      key<&WayMonth::source_J>({.meaning = "Electricity of the second source."}),
      key<&WayMonth::pump_J>({.meaning = "Electricity of the pump."}),
      key<&WayMonth::use_J>({.meaning = "All three."}),
      key<&WayMonth::floor_heat_J>({.meaning = "Heat that the water brought into the floor."}),
      key<&WayMonth::source_heat_J>({.meaning = "Heat of the second source."}),
      key<&WayMonth::peak_W>({.meaning = "The highest demand, as a meter averages it."}),
      key<&WayMonth::money>({.meaning = "What it costs; absent without a price."})};
  return {keys, &x};
}

Record record_of(Comfort& x) {
  static constexpr Key keys[] = {
      key<&Comfort::worked_s>({.meaning = "Working time, October to April."}),
      key<&Comfort::below_s>({.meaning = "Of that below working temperature."}),
      key<&Comfort::below_Ks>({.meaning = "How far below, added up over that time."}),
      key<&Comfort::cold_s>({.meaning = "More than 2 K below."}),
      key<&Comfort::cold_below_degC>({.meaning = "Which is colder than this, as it feels."}),
      key<&Comfort::above_s>({.meaning = "More than 2 K above."}),
      key<&Comfort::mornings>({.meaning = "Mornings on which people came in."}),
      key<&Comfort::failed_mornings>({.meaning = "Those whose first hour was more than 2 K too cold."}),
      key<&Comfort::lowest_degC>({.meaning = "The coldest that it felt at work."}),
      key<&Comfort::air_swing_K>({.meaning = "Highest less lowest air of a day, mean of the season."}),
      key<&Comfort::slab_swing_K>({.meaning = "The same of the slab."})};
  return {keys, &x};
}

Record record_of(SourceWinter& x) {
  static constexpr Key keys[] = {
      key<&SourceWinter::ran_s>({.meaning = "How long the second source ran."}),
      key<&SourceWinter::locked_s>({.meaning = "Wanted, and too cold outdoors for it."}),
      key<&SourceWinter::longest_locked_s>({.meaning = "The longest of that at one stretch."}),
      key<&SourceWinter::cold_start_s>({.meaning = "Wanted, and the room too cold for it to start."}),
      key<&SourceWinter::short_s>({.meaning = "At work, locked out, the room more than 2 K too cold by the boiler."})};
  return {keys, &x};
}

Record record_of(Sweating& x) {
  static constexpr Key keys[] = {
      key<&Sweating::inside_known>({.meaning = "False: these are the outdoor dew points."}),
      key<&Sweating::wet_s>({.meaning = "By months: the dew point above the floor's face."}),
      key<&Sweating::damp_s>({.meaning = "By months: the air on the floor damper than 80 %."})};
  return {keys, &x};
}

Record record_of(TenWinters& x) {
  static constexpr Key keys[] = {
      key<&TenWinters::winters>({.meaning = "How many were run; 0: none."}),
      key<&TenWinters::below_limit>({.meaning = "In how many a place that decides fell below its limit."}),
      key<&TenWinters::coldest_outdoor_degC>({.meaning = "The coldest hour of them."}),
      key<&TenWinters::place>({.meaning = "What came nearest to its limit."}),
      key<&TenWinters::place_degC>({.meaning = "And how cold it got."}),
      key<&TenWinters::most_failed_mornings>({.meaning = "Cold mornings in the worst of them."}),
      key<&TenWinters::most_locked_s>({.meaning = "The second source locked out in the worst of them."}),
      key<&TenWinters::longest_locked_s>({.meaning = "The longest of that at one stretch."})};
  return {keys, &x};
}

Record record_of(WayResult& x) {
  static constexpr Key keys[] = {
      key<&WayResult::way>({.meaning = "The way of running."}),
      key<&WayResult::hold_degC>(
          {.meaning = "Frost hold that it runs with, by the wall thermostat; raised where the lowest is too low."}),
      key<&WayResult::floor_lead_h>({.meaning = "How many hours before work the floor starts."}),
      key<&WayResult::source_lead_h>({.meaning = "How many hours before work the second source starts."}),
      key<&WayResult::fails>({.meaning = "What it fails by."}),
      key<&WayResult::month>({.meaning = "January first."}),
      key<&WayResult::use_J>({.meaning = "Electricity for heat in the year."}),
      key<&WayResult::money>({.meaning = "What it costs; absent without a price."}),
      key<&WayResult::carbon_kg>({.meaning = "Carbon dioxide of it, where the file says how much it has."}),
      key<&WayResult::peak_W>({.meaning = "The highest demand of the year."}),
      key<&WayResult::worst_month>({.meaning = "The month that costs most, or uses most; 1 to 12."}),
      key<&WayResult::comfort>({.meaning = "Whether it is warm."}),
      key<&WayResult::source>({.meaning = "What the second source does."}),
      key<&WayResult::boiler_short_s>({.meaning = "The boiler at its most could not hold the floor."}),
      key<&WayResult::place>({.meaning = "Least to spare first, those that decide before the others."}),
      key<&WayResult::heat>({.meaning = "Where the year's heat came from and went."}),
      key<&WayResult::use_low_J>({.meaning = "Weather, leaks, walls and machines as they may be: 5 of 100 use less."}),
      key<&WayResult::use_high_J>({.meaning = "95 of 100 use less; 0: not worked out."}),
      key<&WayResult::low_money>({.meaning = "The same in money."}),
      key<&WayResult::high_money>({.meaning = "The same in money."}),
      key<&WayResult::ten>({.meaning = "Ten winters with cold snaps."}),
      key<&WayResult::sweating>({.meaning = "When the floor is wet."}),
      key<&WayResult::cold_floor_J>({.meaning = "What the floor takes out of the air in a day of work."})};
  return {keys, &x};
}

}  // namespace slabwright
