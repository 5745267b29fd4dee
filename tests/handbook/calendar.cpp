// The calendar: which days there are, and what comes after them.
#include "slabwright/handbook_calendar.hpp"

#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("months have the days they have, February one more in leap years") {
  CHECK(days_in_month(2026, 2) == 28);
  CHECK(days_in_month(2028, 2) == 29);
  CHECK(days_in_month(2000, 2) == 29);
  CHECK(days_in_month(1900, 2) == 28);
  CHECK(days_in_month(2100, 2) == 28);
  CHECK(days_in_month(2026, 4) == 30);
  CHECK_THROWS(days_in_month(2026, 13));
  int year = 0;
  for (int month = 1; month <= 12; ++month) year += days_in_month(2026, month);
  CHECK(year == 365);
}

TEST_CASE("days that the calendar has not") {
  CHECK(is_date({2028, 2, 29}));
  CHECK_FALSE(is_date({2026, 2, 29}));
  CHECK_FALSE(is_date({2026, 2, 30}));
  CHECK_FALSE(is_date({2026, 4, 31}));
  CHECK_FALSE(is_date({2026, 0, 1}));
  CHECK_FALSE(is_date({2026, 13, 1}));
  CHECK_FALSE(is_date({2026, 1, 0}));
  CHECK_THROWS(day_number({2026, 2, 30}));
}

TEST_CASE("every day of four hundred years has its number and comes back from it, a weekday further each time") {
  // The calendar repeats after 400 years, 146 097 days or 20 871 weeks.
  CHECK(day_number({2401, 1, 1}) - day_number({2001, 1, 1}) == 146097);
  CivilDate date{2001, 1, 1};
  const int first = day_number(date);
  int wrong = 0;
  for (int number = first; number < first + 146097; ++number) {
    if (day_number(date) != number || !(date_of(number) == date) || !is_date(date)) ++wrong;
    // The day after, without arithmetic of days.
    if (++date.day > days_in_month(date.year, date.month)) date = {date.year, date.month + 1, 1};
    if (date.month > 12) date = {date.year + 1, 1, 1};
  }
  CHECK(wrong == 0);
  CHECK(weekday_of({2001, 1, 1}) == weekday_of({2401, 1, 1}));
  CHECK(weekday_of({2026, 9, 14}) == "Monday");
  CHECK(weekday_of({2026, 9, 20}) == "Sunday");
}

TEST_CASE("days later over months' ends, years' ends and 29 February") {
  CHECK(iso_text(days_after({2026, 9, 14}, 28)) == "2026-10-12");
  CHECK(iso_text(days_after({2026, 12, 31}, 1)) == "2027-01-01");
  CHECK(iso_text(days_after({2028, 2, 1}, 28)) == "2028-02-29");
  CHECK(iso_text(days_after({2027, 2, 1}, 28)) == "2027-03-01");
  CHECK(iso_text(days_after({2028, 3, 1}, -1)) == "2028-02-29");
  CHECK(iso_text(days_after({2026, 9, 14}, 0)) == "2026-09-14");
}
