// Power cuts and recoveries as curves: the runs of the clock and of the way back to work, told step by step.
#include "slabwright/freeze_courses.hpp"
#include "slabwright/units_exact.hpp"

#include <algorithm>
#include <cmath>

#include "freeze/recovery_run.hpp"

namespace slabwright {
namespace {

using namespace freeze;

/// What takes no longer is shown step by step, else by the hour.
constexpr double soon_back_s = 12.0 * hour_s;
/// How long an outage is shown, and how far beyond the first place to freeze.
constexpr double shown_s = 48.0 * hour_s, beyond_s = 6.0 * hour_s;

/// One power cut under the film in which a place freezes soonest.
struct DarkRun {
  const HeldZone* held = nullptr;
  FirstFrozen first;
  double slab_degC = 0.0;  ///< at the cut
  ZoneDrivers before;
  ZoneStep dark;
};

class DarkShop {
 public:
  DarkShop(const HeldShop& shop, HeldZone held, EdgeFields& fields)
      : shop_(shop), fields_(fields), up_(std::move(held)) {}

  DarkRun at(double outdoor_degC, double dial_degC) {
    bool cools_air = false;
    const double air_degC = true_air_degC(shop_.design, dial_degC, outdoor_degC);
    const DarkRun up = run_in(up_, air_degC, outdoor_degC, cools_air);
    if (!cools_air) return up;
    if (!down_) down_ = held_zone(shop_, fields_, FloorHeat::down);
    const DarkRun down = run_in(*down_, air_degC, outdoor_degC, cools_air);
    if (!down.first.after_s) return up;
    return up.first.after_s && *up.first.after_s <= *down.first.after_s ? up : down;
  }

 private:
  static DarkRun run_in(const HeldZone& held, double air_degC, double outdoor_degC, bool& cools_air) {
    DarkRun run{&held, {}, 0.0, held_at_dial(held, air_degC, outdoor_degC), without_power(held, outdoor_degC)};
    const std::vector<ZoneRow> rows = run_until_frozen(held, run.before, [&](const ZoneRow&) { return run.dark; });
    cools_air = std::any_of(rows.begin() + 1, rows.end(), [](const ZoneRow& row) { return row.up_W < 0.0; });
    run.first = first_frozen(held, rows, Water::stands);
    run.slab_degC = rows.front().sensor_degC;
    return run;
  }

  const HeldShop& shop_;
  EdgeFields& fields_;
  HeldZone up_;
  std::optional<HeldZone> down_;  ///< only made where it is needed
};

/// From the dial to the working temperature, which is the last.
std::vector<double> settings_between(const Design& design, double dial_degC) {
  const double step_K = design.units == System::us ? 3.0 / 1.8 : 1.5;
  std::vector<double> settings;
  for (double i = 0.0; dial_degC + i * step_K < design.climate.indoor_degC - 0.1 * step_K; i += 1.0)
    settings.push_back(dial_degC + i * step_K);
  settings.push_back(std::max(dial_degC, design.climate.indoor_degC));
  return settings;
}

/// The place that freezes first; else the deciding one that comes nearest.
std::size_t shown_place(const DarkRun& run, const std::vector<ZoneRow>& rows) {
  const std::vector<WatchedPlace>& places = run.held->places.place;
  std::size_t nearest = 0;
  double least_K = HUGE_VAL;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i].decides) continue;
    if (places[i].name == run.first.name) return i;
    for (const ZoneRow& row : rows) {
      const double over_K = row.place_degC[i] - places[i].freezes_degC;
      if (over_K >= least_K) continue;
      least_K = over_K;
      nearest = i;
    }
  }
  return nearest;
}

OutageCourse course_of(const DarkRun& run, double outdoor_degC, double dial_degC) {
  const RunOptions options;
  const double until_s = std::min(options.longest_s, std::max(shown_s, run.first.after_s.value_or(0.0) + beyond_s));
  ZoneRun cut(run.held->zone, steady_history(run.before), options.step_s);
  const int every = static_cast<int>(std::lround(hour_s / options.step_s));
  std::vector<ZoneRow> rows{cut.row()};
  for (int i = 1; i * options.step_s <= until_s; ++i) {
    cut.step(run.dark);
    if (i % every == 0) rows.push_back(cut.row());
  }
  const std::size_t place = shown_place(run, rows);
  OutageCourse course;
  course.outdoor_degC = outdoor_degC;
  course.air_dial_degC = dial_degC;
  course.first = run.held->places.place[place].name;
  course.lasts_s = run.first.after_s;
  course.freezes_degC = run.held->places.place[place].freezes_degC;
  course.every_s = hour_s;
  for (const ZoneRow& row : rows) {
    course.air_degC.push_back(sensor_room_degC(*run.held, row.at));
    course.slab_degC.push_back(row.sensor_degC);
    course.place_degC.push_back(row.place_degC[place]);
  }
  return course;
}

RecoveryCourse course_of(const RecoveryRun& run, const HeldZone& held) {
  RecoveryCourse course;
  course.outdoor_degC = run.recovery.outdoor_degC;
  course.from_air_degC = run.recovery.from_air_degC;
  course.to_air_degC = run.recovery.to_air_degC;
  course.takes_s = run.recovery.takes_s;
  course.every_s = run.recovery.takes_s.value_or(HUGE_VAL) <= soon_back_s ? recovery_step_s : hour_s;
  const auto every = static_cast<std::size_t>(std::lround(course.every_s / recovery_step_s));
  for (std::size_t i = 0; i < run.rows.size(); i += every) {
    course.air_degC.push_back(sensor_room_degC(held, run.rows[i].at));
    course.slab_degC.push_back(run.rows[i].sensor_degC);
    course.floor_degC.push_back(floor_face_degC(held, run.rows[i]));
  }
  return course;
}

}  // namespace

std::optional<FreezeCourses> freeze_courses(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                            std::optional<double> boiler_W) {
  const Climate& climate = held.design.climate;
  if (!freeze.air || !climate.coldest_degC) return std::nullopt;
  auto zone = held_zone(held, fields);
  if (!zone) return std::nullopt;
  FreezeCourses all;
  if (boiler_W && climate.outdoor_degC)
    for (const RecoveryRun& run : recovery_runs(held, *zone, freeze, *boiler_W))
      all.recovery.push_back(course_of(run, *zone));
  DarkShop dark(held, std::move(*zone), fields);
  for (const double outdoor_degC : cut_weathers_degC(held.design)) {
    for (const double dial_degC : settings_between(held.design, freeze.air->dial_degC)) {
      const DarkRun run = dark.at(outdoor_degC, dial_degC);
      all.setting.push_back({outdoor_degC, dial_degC, run.slab_degC, run.first.name, run.first.after_s});
    }
    // What is milder than planned for is in the hours, and worth no curve.
    if (outdoor_degC <= climate.outdoor_degC.value_or(outdoor_degC))
      all.outage.push_back(
          course_of(dark.at(outdoor_degC, freeze.air->dial_degC), outdoor_degC, freeze.air->dial_degC));
  }
  return all;
}

}  // namespace slabwright
