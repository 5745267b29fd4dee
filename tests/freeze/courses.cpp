// Power cuts and recoveries as curves, held against the tables that tell their hours.
#include "holds.hpp"
#include "slabwright/freeze_courses.hpp"
#include "slabwright/freeze_recovery.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double boiler_W = 20e3;

struct Told {
  Line line;
  Freeze freeze;
  Outage outage;
  FreezeCourses courses;
};

Told told(const Design& design) {
  Told one{line_of(design), {}, {}, {}};
  const auto freeze = checked_hold(one.line, boiler_W);
  REQUIRE(freeze);
  one.freeze = *freeze.value;
  const auto outage = outage_clock(one.line.held(), one.freeze, coarse_fields(), boiler_W);
  const auto courses = freeze_courses(one.line.held(), one.freeze, coarse_fields(), boiler_W);
  REQUIRE((outage && courses));
  one.outage = *outage;
  one.courses = *courses;
  return one;
}

double hours_of(const std::optional<double>& lasts_s) { return lasts_s ? *lasts_s / 3600.0 : 1000.0; }

/// Where a course comes down through what its place freezes at, by straight lines between its hours.
std::optional<double> falls_through_s(const OutageCourse& course) {
  for (std::size_t i = 1; i < course.place_degC.size(); ++i) {
    const double before_K = course.place_degC[i - 1] - course.freezes_degC;
    const double after_K = course.place_degC[i] - course.freezes_degC;
    if (before_K > 0.0 && after_K <= 0.0)
      return course.every_s * (static_cast<double>(i - 1) + before_K / (before_K - after_K));
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("hours at the table's settings are the table's, and rise with the setting") {
  for (const Design& design : {bare_shop(), door_shop()}) {
    const Told one = told(design);
    std::size_t met = 0;
    for (const OutageCase& row : one.outage.row) {
      for (const HoursAtSetting& at : one.courses.setting) {
        if (at.outdoor_degC != row.outdoor_degC || std::abs(at.air_dial_degC - row.air_dial_degC) > 1e-9) continue;
        ++met;
        CHECK(hours_of(at.lasts_s) == hours_of(row.lasts_s));
        CHECK(at.first == row.first);
      }
    }
    // The dial and the working temperature at least, in every weather.
    CHECK(met >= 2 * one.outage.row.size() / 3);
    for (std::size_t i = 1; i < one.courses.setting.size(); ++i) {
      const HoursAtSetting &low = one.courses.setting[i - 1], &high = one.courses.setting[i];
      if (low.outdoor_degC != high.outdoor_degC) continue;
      CHECK(high.air_dial_degC > low.air_dial_degC);
      CHECK(high.slab_degC > low.slab_degC);
      CHECK(hours_of(high.lasts_s) >= hours_of(low.lasts_s));
    }
  }
}

TEST_CASE("a power cut begins at the dial and comes through freezing at the table's hours") {
  for (const Design& design : {bare_shop(), door_shop()}) {
    const Told one = told(design);
    REQUIRE(one.courses.outage.size() == 2);
    for (const OutageCourse& course : one.courses.outage) {
      INFO(course.outdoor_degC);
      // The room is colder than the dial by what the sensor may read too high.
      CHECK(course.air_degC.front() == Approx(course.air_dial_degC - design.frost_hold.sensor_error_K));
      CHECK(course.air_dial_degC == one.freeze.air->dial_degC);
      CHECK(course.every_s == 3600.0);
      CHECK(course.air_degC.size() >= 49);
      CHECK(course.slab_degC.size() == course.air_degC.size());
      CHECK(course.slab_degC.back() < course.slab_degC.front());
      CHECK(course.air_degC.back() > course.outdoor_degC);
      for (const OutageCase& row : one.outage.row) {
        if (row.outdoor_degC != course.outdoor_degC || row.air_dial_degC != course.air_dial_degC) continue;
        CHECK(course.lasts_s == row.lasts_s);
        REQUIRE(row.lasts_s);
        CHECK(course.first == row.first);
        // Straight lines between hours, against straight lines between thirds of them.
        CHECK(falls_through_s(course).value_or(0.0) == Approx(*row.lasts_s).margin(900.0));
      }
    }
  }
}

TEST_CASE("recoveries as curves begin where the room was and end when it is warm") {
  const Told one = told(bare_shop());
  const auto rows = recoveries(one.line.held(), one.freeze, coarse_fields(), boiler_W);
  REQUIRE(one.courses.recovery.size() == rows.size());
  REQUIRE(!rows.empty());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const RecoveryCourse& course = one.courses.recovery[i];
    CHECK(course.outdoor_degC == rows[i].outdoor_degC);
    CHECK(course.takes_s == rows[i].takes_s);
    REQUIRE(course.takes_s);
    CHECK(course.air_degC.front() == Approx(rows[i].from_air_degC));
    const double shown_s = course.every_s * static_cast<double>(course.air_degC.size() - 1);
    CHECK(shown_s <= *course.takes_s + 600.0);
    CHECK(shown_s > *course.takes_s - course.every_s);
    // In the first minutes the air may still fall: heat is on its way through the slab.
    for (std::size_t k = 2; k < course.air_degC.size(); ++k) CHECK(course.air_degC[k] > course.air_degC[k - 1]);
    CHECK(course.air_degC.back() < course.to_air_degC + 0.5);
    CHECK(course.air_degC.back() > course.air_degC.front());
    CHECK(course.slab_degC.back() > course.slab_degC.front());
    CHECK(course.floor_degC.size() == course.air_degC.size());
  }
}

TEST_CASE("nothing is told without a setting") {
  const Line line = line_of(bare_shop());
  Freeze none = hold_of(bare_shop());
  none.air.reset();
  CHECK_FALSE(freeze_courses(line.held(), none, coarse_fields(), boiler_W));
  const auto courses = freeze_courses(line.held(), hold_of(bare_shop()), coarse_fields(), std::nullopt);
  REQUIRE(courses);
  CHECK(courses->recovery.empty());
}
