#include "slabwright/key.hpp"
#include "slabwright/sitework_cure.hpp"

namespace slabwright {

Record record_of(CureDay& x) {
  static constexpr Key keys[] = {
      key<&CureDay::day>({.meaning = "Days after the pour."}),
      key<&CureDay::date>({.meaning = "Its date; empty where the day of the pour is not known."}),
      key<&CureDay::weekday>({.meaning = "Its day of the week."}),
      key<&CureDay::what>({.meaning = "What may or must be done."}),
      key<&CureDay::supply_degC>({.meaning = "Water out of the boiler from this day on."}),
      key<&CureDay::least_degC>({.meaning = "The concrete no colder than that."}),
      key<&CureDay::source>({.meaning = "A standard, or common practice."})};
  return {keys, &x};
}

Record record_of(CureCalendar& x) {
  static constexpr Key keys[] = {
      key<&CureCalendar::poured>({.meaning = "The day of the pour; empty where it is not known."}),
      key<&CureCalendar::poured_weekday>({.meaning = "Its day of the week."}),
      key<&CureCalendar::wait_days>({.meaning = "Days from the pour to the first heat."}),
      key<&CureCalendar::wait_source>({.meaning = "Who asks for that wait."}),
      key<&CureCalendar::heat_date>({.meaning = "First day of heat."}),
      key<&CureCalendar::heat_weekday>({.meaning = "Its day of the week."}),
      key<&CureCalendar::start_degC>({.meaning = "The first water."}),
      key<&CureCalendar::rise_K>({.meaning = "How much warmer it goes out each day."}),
      key<&CureCalendar::top_degC>({.meaning = "The supply temperature of the coldest day."}),
      key<&CureCalendar::top_is_ours>({.meaning = "Whether that is our guess."}),
      key<&CureCalendar::start_days>({.meaning = "Days at the first temperature."}),
      key<&CureCalendar::rise_days>({.meaning = "Days from there to the top."}),
      key<&CureCalendar::hold_days>({.meaning = "Days at the top."}),
      key<&CureCalendar::done_day>({.meaning = "Day after the pour on which the first heat is over."}),
      key<&CureCalendar::done_date>({.meaning = "Its date."}),
      key<&CureCalendar::done_weekday>({.meaning = "Its day of the week."}),
      key<&CureCalendar::judge_day>({.meaning = "Day from which the balance may be judged."}),
      key<&CureCalendar::judge_date>({.meaning = "Its date."}),
      key<&CureCalendar::judge_weekday>({.meaning = "Its day of the week."}),
      key<&CureCalendar::pour_month_degC>({.meaning = "Mean of the month of the pour."}),
      key<&CureCalendar::coldest_month_degC>({.meaning = "Mean of the coldest month from the pour to the first heat."}),
      key<&CureCalendar::row>({.meaning = "The calendar."}),
      key<&CureCalendar::log>({.meaning = "What to write down each day of the first heat."}),
      key<&CureCalendar::never>({.meaning = "What not to do."}),
      key<&CureCalendar::caution>({.meaning = "What the months of this pour ask for."})};
  return {keys, &x};
}

}  // namespace slabwright
