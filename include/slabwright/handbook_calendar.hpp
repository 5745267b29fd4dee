// Days of the civil calendar: which dates there are, what comes so many days later, which day of the week it is.
#pragma once
#include <string>
#include <string_view>

namespace slabwright {

/// A day of the Gregorian calendar, carried back before its time as ISO 8601 does: years 1 to 9999, month 1 to 12.
struct CivilDate {
  int year = 1;
  int month = 1;
  int day = 1;
  friend bool operator==(const CivilDate&, const CivilDate&) = default;
};

/// Every fourth year, of full hundreds only every fourth.
bool leap_year(int year);
/// 28 to 31; months 1 to 12 only.
int days_in_month(int year, int month);
/// Whether the calendar has this day: 30 February it has not.
bool is_date(const CivilDate& date);

/// Days counted so that 1 January of year 1 is day 1. A date that is_date() only.
int day_number(const CivilDate& date);
/// The inverse; from 1 on.
CivilDate date_of(int day_number);
/// So many days later; earlier below 0.
CivilDate days_after(const CivilDate& date, int days);

/// "Monday" to "Sunday".
std::string_view weekday_of(const CivilDate& date);
/// "2026-09-14", the only form of ISO 8601 that is read and written here.
std::string iso_text(const CivilDate& date);

}  // namespace slabwright
