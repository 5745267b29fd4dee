#include <fmt/format.h>

#include <array>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_calendar.hpp"

namespace slabwright {
namespace {

/// Days before 1 January of the year, from year 1 on.
int days_before_year(int year) {
  const int whole = year - 1;
  return 365 * whole + whole / 4 - whole / 100 + whole / 400;
}

}  // namespace

bool leap_year(int year) { return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0); }

int days_in_month(int year, int month) {
  constexpr std::array<int, 12> days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  expects(month >= 1 && month <= 12, "months are 1 to 12");
  return month == 2 && leap_year(year) ? 29 : days[static_cast<std::size_t>(month - 1)];
}

bool is_date(const CivilDate& date) {
  const bool month = date.year >= 1 && date.year <= 9999 && date.month >= 1 && date.month <= 12;
  return month && date.day >= 1 && date.day <= days_in_month(date.year, date.month);
}

int day_number(const CivilDate& date) {
  expects(is_date(date), "a day that the calendar has");
  int days = days_before_year(date.year) + date.day;
  for (int month = 1; month < date.month; ++month) days += days_in_month(date.year, month);
  return days;
}

CivilDate date_of(int day_number) {
  expects(day_number >= 1, "days are counted from 1");
  CivilDate date;
  // No year is longer than 366 days, so this one is not later than the date's.
  date.year = (day_number - 1) / 366 + 1;
  while (days_before_year(date.year + 1) < day_number) ++date.year;
  date.day = day_number - days_before_year(date.year);
  for (; date.day > days_in_month(date.year, date.month); ++date.month)
    date.day -= days_in_month(date.year, date.month);
  return date;
}

CivilDate days_after(const CivilDate& date, int days) { return date_of(day_number(date) + days); }

std::string_view weekday_of(const CivilDate& date) {
  constexpr std::array<std::string_view, 7> names{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                  "Friday", "Saturday", "Sunday"};
  return names[static_cast<std::size_t>((day_number(date) - 1) % 7)];
}

std::string iso_text(const CivilDate& date) {
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

}  // namespace slabwright
