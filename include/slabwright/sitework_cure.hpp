// From the pour to the floor at work: when heat may come on, how it is brought up day by day, what never to do. Waits
// are a standard's or common practice; the concrete's supplier stands above both.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/design.hpp"
#include "slabwright/handbook_calendar.hpp"

namespace slabwright {

/// A day on which something changes.
struct CureDay {
  int day = 0;          ///< after the pour, which is day 0
  std::string date;     ///< "2026-10-12"; empty where the day of the pour is not known
  std::string weekday;  ///< "Monday"
  std::string what;
  std::optional<double> supply_degC;  ///< water out of the boiler from this day on
  std::optional<double> least_degC;   ///< the concrete no colder than that, from this day on
  std::string source;                 ///< a standard, or "common practice"
};

struct CureCalendar {
  std::string poured;  ///< "2026-09-14", with its weekday; empty where it is not known, and then all dates are
  std::string poured_weekday;
  int wait_days = 0;  ///< from the pour to the first heat
  std::string wait_source;
  std::string heat_date, heat_weekday;  ///< the first day of heat
  double start_degC = 0.0;              ///< first water
  double rise_K = 0.0;                  ///< a day
  double top_degC = 0.0;                ///< the supply temperature of the coldest day
  bool top_is_ours = false;             ///< a guess: no operating point is known
  int start_days = 1;                   ///< at the first temperature
  int rise_days = 0;                    ///< from the first temperature to the top
  int hold_days = 0;                    ///< at the top
  int done_day = 0;                     ///< the first heat is over
  std::string done_date, done_weekday;
  int judge_day = 0;  ///< the manifold's balance may be judged
  std::string judge_date, judge_weekday;
  std::optional<double> pour_month_degC;     ///< mean of the month of the pour
  std::optional<double> coldest_month_degC;  ///< of the months from the pour to the first heat
  std::vector<CureDay> row;
  std::vector<std::string> log;      ///< what to write down each day of the first heat
  std::vector<std::string> never;    ///< what not to do
  std::vector<std::string> caution;  ///< of this pour: cold months
};

/// What a calendar follows from.
struct CureTask {
  std::optional<CivilDate> poured;
  std::optional<int> wait_days;       ///< as the supplier says; else 28 (practice), or 21 for a topping (EN 1264-4)
  double rise_K = 5.0;                ///< above 0
  std::optional<double> supply_degC;  ///< of the operating point; else 40 degC
  bool topping = false;               ///< the tube lies in a screed, which EN 1264-4 is for
  std::array<double, 12> month_degC{};
};
CureCalendar cure_calendar(const CureTask&);

/// The same of a design.
CureCalendar cure_calendar(const Design&, std::optional<double> supply_degC, const std::array<double, 12>& month_degC);

Record record_of(CureDay&);
Record record_of(CureCalendar&);

}  // namespace slabwright
