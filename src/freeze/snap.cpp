// The zone through a cold snap, held by either dial.
#include "slabwright/freeze_snap.hpp"

#include <algorithm>
#include <deque>
#include <functional>
#include <numeric>

#include "freeze/held_zone.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr std::size_t steps_per_hour = 3;
constexpr double step_s = hour_s / static_cast<double>(steps_per_hour);
constexpr std::size_t day_steps = 24 * steps_per_hour;
/// Two dials far enough apart that rounding does not show.
constexpr double low_dial_degC = 5.0, high_dial_degC = 15.0;

/// Outdoors at the end of each step, and whether the floor is kept off through it.
struct Course {
  std::vector<double> outdoor_degC, day_mean_degC;
  std::vector<char> satisfied, second_source;
};

double mean_of(const std::deque<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

Course course_of(const SnapCase& snap) {
  Course course;
  std::deque<double> day(day_steps, snap.coldest_month_degC);
  for (std::size_t hour = 0; hour < snap.hourly_degC.size(); ++hour)
    for (std::size_t part = 1; part <= steps_per_hour; ++part) {
      const double before_degC = hour > 0 ? snap.hourly_degC[hour - 1] : snap.coldest_month_degC;
      const double share = static_cast<double>(part) / static_cast<double>(steps_per_hour);
      const double outdoor_degC = before_degC + share * (snap.hourly_degC[hour] - before_degC);
      day.pop_front();
      day.push_back(outdoor_degC);
      const double to_coldest_s = hour_s * (static_cast<double>(snap.coldest_hour) - static_cast<double>(hour));
      course.outdoor_degC.push_back(outdoor_degC);
      course.day_mean_degC.push_back(mean_of(day));
      course.satisfied.push_back(to_coldest_s >= 0.0 && to_coldest_s < snap.satisfied_s);
      course.second_source.push_back(snap.second_source_above_degC && outdoor_degC > *snap.second_source_above_degC);
    }
  return course;
}

ZoneDrivers held(const Zone& zone, const SnapCase& snap, DialKind kind, double dial_degC, double outdoor_degC) {
  const ZoneNeeds needs = needs_at_work(zone);
  if (kind == DialKind::slab) return held_by_sensor(zone, needs, dial_degC, outdoor_degC);
  return held_by_air(zone, needs, freeze::zone_air_degC(zone, snap.sensor_room, dial_degC, outdoor_degC), outdoor_degC);
}

ZoneHistory history_of(const Zone& zone, const SnapCase& snap, DialKind kind, double dial_degC) {
  return {held(zone, snap, kind, dial_degC, snap.mean_degC),
          held(zone, snap, kind, dial_degC, snap.coldest_month_degC)};
}

/// [moment][place]
using Moments = std::vector<std::vector<double>>;

/// What is done in step i, but for the weather.
using Doing = std::function<ZoneStep(std::size_t i, const ZoneRun& run)>;

/// Every moment.
std::vector<ZoneRow> rows_of(const Zone& zone, const Course& course, const ZoneHistory& history, const Doing& doing) {
  ZoneRun run(zone, history, step_s);
  std::vector<ZoneRow> rows;
  for (std::size_t i = 0; i < course.outdoor_degC.size(); ++i) {
    ZoneStep step = doing(i, run);
    step.outdoor_degC = course.outdoor_degC[i];
    run.step(step);
    rows.push_back(run.row());
  }
  return rows;
}

Moments moments_of(const std::vector<ZoneRow>& rows) {
  Moments moments;
  for (const ZoneRow& row : rows) moments.push_back(row.place_degC);
  return moments;
}

Moments air_held(const Zone& zone, const SnapCase& snap, const Course& course, double dial_degC) {
  ZoneHistory history = history_of(zone, snap, DialKind::air, dial_degC);
  if (snap.second_source_above_degC) history.mean.tube_W_per_m2 = history.coldest_month.tube_W_per_m2 = 0.0;
  // Straight in the weather.
  const double at_zero = held(zone, snap, DialKind::air, dial_degC, 0.0).tube_W_per_m2;
  const double per_K = held(zone, snap, DialKind::air, dial_degC, 1.0).tube_W_per_m2 - at_zero;
  return moments_of(rows_of(zone, course, history, [&](std::size_t i, const ZoneRun&) {
    ZoneStep step;
    step.air_degC = freeze::zone_air_degC(zone, snap.sensor_room, dial_degC, course.outdoor_degC[i]);
    if (!course.satisfied[i] && !course.second_source[i])
      step.tube_W_per_m2 = at_zero + per_K * course.day_mean_degC[i];
    return step;
  }));
}

Moments slab_held(const Zone& zone, const SnapCase& snap, const Course& course, double dial_degC) {
  const ZoneHistory history = history_of(zone, snap, DialKind::slab, dial_degC);
  return moments_of(rows_of(zone, course, history, [&](std::size_t i, const ZoneRun& run) {
    ZoneStep step;
    step.outdoor_degC = course.outdoor_degC[i];
    step.needs = needs_at_work(zone);
    if (!course.satisfied[i]) step.tube_W_per_m2 = run.tube_heat_for_sensor(step, dial_degC);
    return step;
  }));
}

/// Straight lines through two dials, a moment each.
void add_moments(std::vector<PlaceCurve>& curves, const Moments& low, const Moments& high) {
  for (std::size_t place = 0; place < curves.size(); ++place)
    for (std::size_t i = 0; i < low.size(); ++i) {
      const double gain = (high[i][place] - low[i][place]) / (high_dial_degC - low_dial_degC);
      curves[place].gain_share.push_back(gain);
      curves[place].base_degC.push_back(low[i][place] - gain * low_dial_degC);
    }
}

/// The moments in which a second source keeps the floor off.
Moments while_off(const Moments& moments, const Course& course) {
  Moments off;
  for (std::size_t i = 0; i < moments.size(); ++i)
    if (course.second_source[i]) off.push_back(moments[i]);
  return off;
}

}  // namespace

SnapCase snap_case(const Design& design, const Snap& snap, std::size_t sensor_room) {
  SnapCase one;
  one.hourly_degC = snap.hourly_degC;
  const auto last_coldest = std::min_element(snap.hourly_degC.rbegin(), snap.hourly_degC.rend());
  one.coldest_hour = static_cast<std::size_t>(snap.hourly_degC.rend() - last_coldest) - 1;
  one.mean_degC = design.climate.mean_degC;
  one.coldest_month_degC = design.climate.mean_degC - design.climate.half_swing_K;
  one.sensor_room = sensor_room;
  one.satisfied_s = design.frost_hold.satisfied_s;
  constexpr double any_weather_degC = -100.0;
  if (design.second_source.kind != SecondSourceKind::none)
    one.second_source_above_degC = design.second_source.cut_out_degC.value_or(any_weather_degC);
  return one;
}

double coldest_degC(const PlaceCurve& curve, double dial_degC) {
  double coldest = curve.gain_share.front() * dial_degC + curve.base_degC.front();
  for (std::size_t i = 1; i < curve.gain_share.size(); ++i)
    coldest = std::min(coldest, curve.gain_share[i] * dial_degC + curve.base_degC[i]);
  return coldest;
}

std::size_t asking_moment(const PlaceCurve& curve, double limit_degC) {
  std::size_t most = 0;
  double most_degC = -1e300;
  for (std::size_t i = 0; i < curve.gain_share.size(); ++i) {
    const double gain = std::max(curve.gain_share[i], least_gain_share);
    if ((limit_degC - curve.base_degC[i]) / gain <= most_degC) continue;
    most_degC = (limit_degC - curve.base_degC[i]) / gain;
    most = i;
  }
  return most;
}

double moment_s(std::size_t moment) { return static_cast<double>(moment + 1) * step_s; }

std::optional<double> asked_dial_degC(const PlaceCurve& curve, double limit_degC) {
  std::optional<double> asked;
  for (std::size_t i = 0; i < curve.gain_share.size(); ++i) {
    if (curve.gain_share[i] < least_gain_share) {
      if (curve.base_degC[i] < limit_degC) return std::nullopt;
      continue;
    }
    const double dial_degC = (limit_degC - curve.base_degC[i]) / curve.gain_share[i];
    asked = std::max(asked.value_or(dial_degC), dial_degC);
  }
  return asked;
}

SnapCurves snap_curves(const Zone& zone, const SnapCase& snap) {
  expects(!snap.hourly_degC.empty(), "snap: no hour");
  const Course course = course_of(snap);
  const Moments air_low = air_held(zone, snap, course, low_dial_degC);
  const Moments air_high = air_held(zone, snap, course, high_dial_degC);
  SnapCurves curves;
  curves.air.resize(zone.place.size());
  curves.slab.resize(zone.place.size());
  add_moments(curves.air, air_low, air_high);
  add_moments(curves.slab, slab_held(zone, snap, course, low_dial_degC), slab_held(zone, snap, course, high_dial_degC));
  add_moments(curves.slab, while_off(air_low, course), while_off(air_high, course));
  return curves;
}

std::vector<ZoneRow> controlled_snap(const Zone& zone, const SnapCase& snap, const RealControl& control) {
  const Course course = course_of(snap);
  const ZoneHistory history = history_of(zone, snap, control.kind, control.dial_degC);
  bool on = false;
  return rows_of(zone, course, history, [&](std::size_t, const ZoneRun& run) {
    const double reading_degC = control.kind == DialKind::slab
                                    ? run.sensor_degC()
                                    : room_air_degC(zone, snap.sensor_room, run.now().air_degC, run.now().outdoor_degC);
    if (reading_degC < control.dial_degC - 0.5 * control.deadband_K) on = true;
    if (reading_degC > control.dial_degC + 0.5 * control.deadband_K) on = false;
    ZoneStep step;
    step.needs = needs_at_work(zone);
    if (on) step.tube_W_per_m2 = control.most_W_per_m2;
    return step;
  });
}

std::vector<ZoneRow> unheated_snap(const Zone& zone, const SnapCase& snap) {
  const ZoneNeeds needs = needs_without_power(zone);
  const ZoneHistory history{unheated(zone, needs, snap.mean_degC), unheated(zone, needs, snap.coldest_month_degC)};
  return rows_of(zone, course_of(snap), history, [&](std::size_t, const ZoneRun&) {
    ZoneStep step;
    step.needs = needs;
    return step;
  });
}

}  // namespace slabwright
