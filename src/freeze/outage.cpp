// The clock of a power cut: settings against weather.
#include "slabwright/freeze_outage.hpp"

#include <algorithm>
#include <cmath>

#include "freeze/held_zone.hpp"
#include "slabwright/handbook_pipe_freeze.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace freeze;

/// 1/2 in polymer tube, bare in still air: what most lines to a sink are.
constexpr StandingPipe half_inch_line{0.475 * inch_m, 0.625 * inch_m, 2.6 * 0.1442279, 0.0, 0.0, 1.65 * 5.678263};

/// "Three hours" are three at least.
std::optional<double> whole_s(std::optional<double> lasts_s) {
  return lasts_s ? std::optional<double>(hour_s * std::floor(*lasts_s / hour_s)) : std::nullopt;
}

bool sooner(const OutagePlace& a, const OutagePlace& b) {
  if (a.lasts_s.has_value() != b.lasts_s.has_value()) return a.lasts_s.has_value();
  return a.lasts_s && *a.lasts_s < *b.lasts_s;
}

/// One building, one cut, in the order in which places are watched: water at rest, moved by the pump, and warmed too.
struct CutRun {
  std::vector<OutagePlace> rests, pumped, staged;
  bool floor_cools_air = false;
};

CutRun run_of(const HeldZone& held, double air_degC, double outdoor_degC, double stage_W) {
  const ZoneDrivers before = held_at_dial(held, air_degC, outdoor_degC);
  const ZoneStep dark = without_power(held, outdoor_degC);
  const std::vector<ZoneRow> rows = run_until_frozen(held, before, [&](const ZoneRow&) { return dark; });
  ZoneStep one_stage = dark;
  one_stage.tube_W_per_m2 = stage_W / tubes_m2(held.zone);
  std::vector<ZoneRow> warmed;
  if (stage_W > 0.0) warmed = run_until_frozen(held, before, [&](const ZoneRow&) { return one_stage; });
  CutRun run;
  run.floor_cools_air = std::any_of(rows.begin() + 1, rows.end(), [](const ZoneRow& row) { return row.up_W < 0.0; });
  for (std::size_t i = 0; i < held.places.place.size(); ++i) {
    const WatchedPlace& place = held.places.place[i];
    if (!place.decides) continue;
    run.rests.push_back({place.name, freezes_after_s(held, i, rows, Water::stands), {}});
    run.pumped.push_back({place.name, freezes_after_s(held, i, rows, Water::moves), {}});
    run.staged.push_back({place.name, freezes_after_s(held, i, warmed, Water::moves), {}});
  }
  return run;
}

/// The shorter of both times, place by place.
std::vector<OutagePlace> worse_of(const std::vector<OutagePlace>& a, const std::vector<OutagePlace>& b) {
  std::vector<OutagePlace> worse;
  for (std::size_t i = 0; i < a.size(); ++i) worse.push_back(std::min(a[i], b[i], sooner));
  return worse;
}

/// The first, or nothing where none freezes.
OutagePlace soonest(const std::vector<OutagePlace>& places) {
  const auto first = std::min_element(places.begin(), places.end(), sooner);
  return first == places.end() || !first->lasts_s ? OutagePlace{} : *first;
}

std::vector<double> settings_degC(const Design& design, double dial_degC) {
  const double step_K = design.units == System::us ? 6.0 / 1.8 : 3.0;
  std::vector<double> settings{dial_degC};
  for (const double steps : {1.0, 2.0}) {
    const double next_degC = std::min(dial_degC + steps * step_K, design.climate.indoor_degC);
    if (next_degC > settings.back() + 0.1 * step_K) settings.push_back(next_degC);
  }
  return settings;
}

double stage_of_W(std::optional<double> boiler_W) {
  if (!boiler_W || *boiler_W <= 0.0) return 0.0;
  return *boiler_W / std::ceil(*boiler_W / largest_element_W - 1e-9);
}

/// The clock with everything that does not change from case to case.
class Clock {
 public:
  Clock(const HeldShop& shop, HeldZone held, EdgeFields& fields, double stage_W)
      : shop_(shop), up_(std::move(held)), fields_(fields), stage_W_(stage_W) {}

  OutageCase at(double outdoor_degC, double dial_degC) {
    CutRun run = worst_of_films(true_air_degC(shop_.design, dial_degC, outdoor_degC), outdoor_degC);
    const OutagePlace first = soonest(run.rests), pumped = soonest(run.pumped), staged = soonest(run.staged);
    std::stable_sort(run.rests.begin(), run.rests.end(), sooner);
    for (OutagePlace& place : run.rests) place.whole_s = whole_s(place.lasts_s);
    return {outdoor_degC,
            dial_degC,
            first.name,
            first.lasts_s,
            whole_s(first.lasts_s),
            std::move(run.rests),
            pumped.name,
            pumped.lasts_s,
            whole_s(pumped.lasts_s),
            staged.name,
            staged.lasts_s,
            whole_s(staged.lasts_s)};
  }
  bool floor_cools_air() const { return floor_cools_air_; }

 private:
  CutRun worst_of_films(double air_degC, double outdoor_degC) {
    CutRun run = run_of(up_, air_degC, outdoor_degC, stage_W_);
    if (!run.floor_cools_air) return run;
    floor_cools_air_ = true;
    if (!down_) down_ = held_zone(shop_, fields_, FloorHeat::down);
    const CutRun other = run_of(*down_, air_degC, outdoor_degC, stage_W_);
    return {worse_of(run.rests, other.rests), worse_of(run.pumped, other.pumped), worse_of(run.staged, other.staged),
            true};
  }

  const HeldShop& shop_;
  HeldZone up_;
  std::optional<HeldZone> down_;  ///< only made where it is needed
  EdgeFields& fields_;
  double stage_W_;
  bool floor_cools_air_ = false;
};

}  // namespace

std::vector<double> freeze::cut_weathers_degC(const Design& design) {
  const Climate& climate = design.climate;
  const bool us = design.units == System::us;
  const double month_degC = climate.mean_degC - climate.half_swing_K;
  const double mild_degC =
      us ? (10.0 * std::floor((1.8 * month_degC + 32.0) / 10.0) - 32.0) / 1.8 : 5.0 * std::floor(month_degC / 5.0);
  std::vector<double> outdoors{*climate.coldest_degC};
  for (const double degC : {climate.outdoor_degC.value_or(*climate.coldest_degC), mild_degC})
    if (degC > outdoors.back() + 1.0) outdoors.push_back(degC);
  std::reverse(outdoors.begin(), outdoors.end());
  return outdoors;
}

std::optional<Outage> outage_clock(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                   std::optional<double> boiler_W) {
  if (!freeze.air || !held.design.climate.coldest_degC) return std::nullopt;
  auto zone = held_zone(held, fields);
  if (!zone) return std::nullopt;
  Outage outage;
  outage.longest_s = RunOptions{}.longest_s;
  outage.stage_W = stage_of_W(boiler_W);
  outage.line_ice_s = time_to_ice_s(half_inch_line, *held.design.climate.coldest_degC).value_or(0.0);
  Clock clock(held, std::move(*zone), fields, outage.stage_W);
  for (const double outdoor_degC : cut_weathers_degC(held.design))
    for (const double dial_degC : settings_degC(held.design, freeze.air->dial_degC))
      outage.row.push_back(clock.at(outdoor_degC, dial_degC));
  outage.floor_cools_air = clock.floor_cools_air();
  return outage;
}

}  // namespace slabwright
