// Back to working temperature.
#include "slabwright/freeze_recovery.hpp"

#include <algorithm>

#include "freeze/recovery_run.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/heater_curves.hpp"

namespace slabwright {
namespace {

using namespace freeze;

/// See recoveries().
constexpr double floor_view_share = 0.4, inner_face_share = 0.05;

/// What the second source gives in this weather; 0 where it stands or nobody knows what it gives.
double second_source_W(const Design& design, double outdoor_degC) {
  const SecondSource& source = design.second_source;
  if (source.kind != SecondSourceKind::heat_pump || !source.capacity_W) return 0.0;
  if (source.cut_out_degC && outdoor_degC < *source.cut_out_degC) return 0.0;
  return full_load({cold_climate_rows(*source.capacity_W)}, outdoor_degC).capacity_W;
}

double feels_like_degC(const ZoneRow& row, double floor_degC) {
  const double faces_degC = row.at.air_degC - inner_face_share * (row.at.air_degC - row.at.outdoor_degC);
  return 0.5 * row.at.air_degC + 0.5 * (floor_view_share * floor_degC + (1.0 - floor_view_share) * faces_degC);
}

RecoveryRun recovery_at(const HeldShop& shop, const HeldZone& held, const Freeze& freeze, double outdoor_degC,
                        double boiler_W) {
  const double to_degC = indoor_of(shop.design, shop.design.room[held.shop.first]);
  RecoveryRun whole;
  Recovery& recovery = whole.recovery;
  recovery.outdoor_degC = outdoor_degC;
  recovery.from_air_degC = std::max(freeze.air->dial_degC, outdoor_degC);
  recovery.to_air_degC = to_degC;
  ZoneStep full;
  full.outdoor_degC = outdoor_degC;
  full.needs = needs_at_work(held.zone);
  full.tube_W_per_m2 = boiler_W / tubes_m2(held.zone);
  full.source_W = second_source_W(shop.design, outdoor_degC);
  recovery.source_runs = full.source_W > 0.0;
  const RunOptions options{recovery_step_s};
  ZoneRun run(held.zone, steady_history(held_at_dial(held, recovery.from_air_degC, outdoor_degC)), options.step_s);
  whole.rows.push_back(run.row());
  double before_degC = sensor_room_degC(held, run.now());
  for (double time_s = 0.0; time_s < options.longest_s; time_s += options.step_s) {
    run.step(full);
    whole.rows.push_back(run.row());
    const double air_degC = sensor_room_degC(held, run.now());
    if (air_degC >= to_degC) {
      recovery.takes_s = time_s + options.step_s * (to_degC - before_degC) / (air_degC - before_degC);
      break;
    }
    before_degC = air_degC;
  }
  const ZoneRow& row = whole.rows.back();
  recovery.floor_degC = floor_face_degC(held, row);
  recovery.operative_degC = feels_like_degC(row, recovery.floor_degC);
  if (!recovery.takes_s) return whole;
  recovery.boiler_J = boiler_W * *recovery.takes_s;
  recovery.source_J = full.source_W * *recovery.takes_s;
  recovery.starts_at_s = shop.design.work.hours.from_s - *recovery.takes_s;
  return whole;
}

}  // namespace

double freeze::floor_face_degC(const HeldZone& held, const ZoneRow& row) {
  double floor_m2 = 0.0;
  for (const FloorStrip& strip : held.zone.floor) floor_m2 += strip.length_m * strip.width_m;
  const double up_W_per_m2 = row.up_W / floor_m2;
  const double film =
      up_W_per_m2 > 0.0 ? floor_film(floor_film_rise_K(up_W_per_m2)).coefficient_W_per_m2K : floor_film_down_W_per_m2K;
  return row.at.air_degC + up_W_per_m2 / film;
}

std::vector<RecoveryRun> freeze::recovery_runs(const HeldShop& held, const HeldZone& zone, const Freeze& freeze,
                                               double boiler_W) {
  const Climate& climate = held.design.climate;
  std::vector<RecoveryRun> all;
  for (const double outdoor_degC : {climate.mean_degC - climate.half_swing_K, *climate.outdoor_degC})
    if (freeze.air->dial_degC < indoor_of(held.design, held.design.room[zone.shop.first]))
      all.push_back(recovery_at(held, zone, freeze, outdoor_degC, boiler_W));
  return all;
}

std::vector<Recovery> recoveries(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                 std::optional<double> boiler_W) {
  if (!freeze.air || !boiler_W || !held.design.climate.outdoor_degC) return {};
  const auto zone = held_zone(held, fields);
  if (!zone) return {};
  std::vector<Recovery> all;
  for (const RecoveryRun& run : recovery_runs(held, *zone, freeze, *boiler_W)) all.push_back(run.recovery);
  return all;
}

}  // namespace slabwright
