#include <array>

#include "slabwright/climate.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {

bool is_leap_year(std::size_t hours) {
  expects(hours == 8760 || hours == 8784, "a year has 8760 hours, or 8784");
  return hours == 8784;
}

int days_of_month(int month, bool leap) {
  constexpr std::array<int, 12> days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  expects(month >= 1 && month <= 12, "months are 1 to 12");
  return days[static_cast<std::size_t>(month - 1)] + (leap && month == 2 ? 1 : 0);
}

CalendarHour calendar_hour(std::size_t hour, bool leap) {
  expects(hour < (leap ? 8784u : 8760u), "hours of a year only");
  CalendarHour at;
  at.hour = static_cast<int>(hour % 24) + 1;
  int day = static_cast<int>(hour / 24);
  for (; day >= days_of_month(at.month, leap); ++at.month) day -= days_of_month(at.month, leap);
  at.day = day + 1;
  return at;
}

std::size_t hour_of_year(CalendarHour at, bool leap) {
  expects(at.day >= 1 && at.day <= days_of_month(at.month, leap) && at.hour >= 1 && at.hour <= 24,
          "an hour that is in the calendar");
  int day = at.day - 1;
  for (int month = 1; month < at.month; ++month) day += days_of_month(month, leap);
  return static_cast<std::size_t>(day * 24 + at.hour - 1);
}

}  // namespace slabwright
