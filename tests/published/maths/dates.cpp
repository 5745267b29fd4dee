// Dates against the calendar of a general-purpose scripting language (its ordinal of a day counts 1 January of year 1
// as 1, its weekday Monday as 0).
#include "slabwright/handbook_calendar.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr std::string_view weekdays[] = {"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"};

}  // namespace

TEST_CASE("numbers of days and weekdays") {
  const Source calendar{"proleptic Gregorian calendar (ISO 8601)", "ordinals of a scripting language's date library",
                        Oracle::reference_code};
  CHECK_PUBLISHED(calendar, "day number of 1582-10-15", "577736", day_number({1582, 10, 15}));
  CHECK_PUBLISHED(calendar, "day number of 1900-03-01", "693655", day_number({1900, 3, 1}));
  CHECK_PUBLISHED(calendar, "day number of 1970-01-01", "719163", day_number({1970, 1, 1}));
  CHECK_PUBLISHED(calendar, "day number of 2000-02-29", "730179", day_number({2000, 2, 29}));
  CHECK_PUBLISHED(calendar, "day number of 2026-09-14", "739873", day_number({2026, 9, 14}));
  CHECK_PUBLISHED(calendar, "day number of 2100-03-01", "766704", day_number({2100, 3, 1}));
  CHECK(weekday_of({2000, 2, 29}) == weekdays[1]);
  CHECK(weekday_of({1970, 1, 1}) == weekdays[3]);
  CHECK(weekday_of({2100, 3, 1}) == weekdays[0]);
}
