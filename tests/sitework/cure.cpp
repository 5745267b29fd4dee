// From the pour to the floor at work: dates, the rise of the water, and what months ask for.
#include "slabwright/sitework_cure.hpp"

#include <algorithm>

#include "support/catch.hpp"

using namespace slabwright;

namespace {

CureTask task(const CivilDate& poured = {2026, 9, 14}) {
  CureTask all;
  all.poured = poured;
  all.supply_degC = 37.0;
  all.month_degC.fill(15.0);
  return all;
}

std::vector<CureDay> with_water(const CureCalendar& calendar) {
  std::vector<CureDay> days;
  for (const CureDay& day : calendar.row)
    if (day.supply_degC) days.push_back(day);
  return days;
}

}  // namespace

TEST_CASE("heat comes on four weeks after the pour, on the same day of the week") {
  const CureCalendar calendar = cure_calendar(task());
  CHECK(calendar.poured == "2026-09-14");
  CHECK(calendar.poured_weekday == "Monday");
  CHECK(calendar.wait_days == 28);
  CHECK(calendar.heat_date == "2026-10-12");
  CHECK(calendar.heat_weekday == "Monday");
  CHECK(calendar.wait_source == "common practice");
}

TEST_CASE("dates go over months' ends, leap days and years' ends") {
  CHECK(cure_calendar(task({2028, 2, 1})).heat_date == "2028-02-29");
  CHECK(cure_calendar(task({2027, 2, 1})).heat_date == "2027-03-01");
  CHECK(cure_calendar(task({2026, 12, 14})).heat_date == "2027-01-11");
  CHECK(cure_calendar(task({2100, 2, 15})).heat_date == "2100-03-15");
}

TEST_CASE("the water rises by the day's step to the design's supply and never past it") {
  for (const double rise_K : {1.0, 3.0, 5.0, 8.5})
    for (const double top_degC : {15.0, 20.0, 25.0, 36.9, 60.0}) {
      CureTask of = task();
      of.rise_K = rise_K;
      of.supply_degC = top_degC;
      const CureCalendar calendar = cure_calendar(of);
      const std::vector<CureDay> days = with_water(calendar);
      INFO(rise_K << " " << top_degC);
      REQUIRE(days.size() == static_cast<std::size_t>(calendar.rise_days) + 1);
      CHECK(days.front().day == calendar.wait_days);
      CHECK(*days.front().supply_degC == Approx(std::min(20.0, top_degC)));
      CHECK(*days.back().supply_degC == Approx(top_degC));
      for (std::size_t i = 1; i < days.size(); ++i) {
        CHECK(days[i].day == days[i - 1].day + 1);
        CHECK(*days[i].supply_degC - *days[i - 1].supply_degC <= rise_K * (1.0 + 1e-9));
        CHECK(*days[i].supply_degC > *days[i - 1].supply_degC);
      }
      CHECK(calendar.done_day == days.back().day + calendar.hold_days);
      CHECK(calendar.judge_day >= calendar.wait_days + 7);
    }
}

TEST_CASE("a rise that fits a whole number of times takes no day more") {
  CureTask of = task();
  of.supply_degC = 40.0;
  CHECK(cure_calendar(of).rise_days == 4);
  of.supply_degC = 40.0 + 1e-9;
  CHECK(cure_calendar(of).rise_days == 4);
  of.supply_degC = 40.1;
  CHECK(cure_calendar(of).rise_days == 5);
}

TEST_CASE("a screed follows its standard, and what the supplier says goes before both") {
  CureTask of = task();
  of.topping = true;
  const CureCalendar screed = cure_calendar(of);
  CHECK(screed.wait_days == 21);
  CHECK(screed.start_days == 3);
  CHECK(screed.wait_source.find("EN 1264-4") == 0);
  const std::vector<CureDay> days = with_water(screed);
  CHECK(days[1].day == screed.wait_days + 3);
  of.wait_days = 35;
  const CureCalendar told = cure_calendar(of);
  CHECK(told.heat_date == "2026-10-19");
  CHECK(told.wait_source.find("supplier") != std::string::npos);
}

TEST_CASE("every wait has its source, and rows go by day") {
  const CureCalendar calendar = cure_calendar(task());
  for (std::size_t i = 0; i < calendar.row.size(); ++i) {
    CHECK_FALSE(calendar.row[i].source.empty());
    CHECK(calendar.row[i].date == iso_text(days_after({2026, 9, 14}, calendar.row[i].day)));
    if (i > 0) CHECK(calendar.row[i].day >= calendar.row[i - 1].day);
  }
}

TEST_CASE("without a date days are counted, and no month is judged") {
  CureTask of = task();
  of.poured.reset();
  of.month_degC.fill(-20.0);
  const CureCalendar calendar = cure_calendar(of);
  CHECK(calendar.heat_date.empty());
  CHECK(calendar.caution.empty());
  CHECK_FALSE(calendar.pour_month_degC);
  for (const CureDay& day : calendar.row) CHECK(day.date.empty());
  CHECK(calendar.row.size() == cure_calendar(task()).row.size());
}

TEST_CASE("cold months are said: that of the pour, and those before there is heat") {
  CureTask of = task({2026, 10, 20});
  of.month_degC[9] = 8.0;
  of.month_degC[10] = 2.0;
  const CureCalendar before_heat = cure_calendar(of);
  CHECK(before_heat.pour_month_degC == 8.0);
  CHECK(before_heat.coldest_month_degC == 2.0);
  REQUIRE(before_heat.caution.size() == 1);
  CHECK(before_heat.caution[0].find("Frost") == 0);
  of.month_degC[9] = 4.0;
  const CureCalendar cold = cure_calendar(of);
  REQUIRE(cold.caution.size() == 2);
  CHECK(cold.caution[0].find("ACI 306") != std::string::npos);
  of.month_degC.fill(10.0);
  CHECK(cure_calendar(of).caution.empty());
}

TEST_CASE("no operating point, no supply of its own: a guess that says so") {
  CureTask of = task();
  of.supply_degC.reset();
  const CureCalendar calendar = cure_calendar(of);
  CHECK(calendar.top_is_ours);
  CHECK(calendar.top_degC == 40.0);
  CHECK_FALSE(cure_calendar(task()).top_is_ours);
}
