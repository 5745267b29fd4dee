// The vapour of a well-mixed room, from one change of floor or dryer to the next.
#include "slabwright/building_vapour.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"

namespace slabwright {
namespace {

constexpr double no_end_s = std::numeric_limits<double>::infinity();

/// What stays the same through a step.
struct VapourStage {
  const VapourRoom& room;
  const VapourHour& hour;
  double face_ratio;      ///< saturated at the floor
  double dryer_ratio;     ///< at which the dryer starts
  double film_kg_per_s;   ///< onto the floor for each unit of ratio
  double fresh_kg_per_s;  ///< vapour in with the air, and from the sources
};

enum class Drying { off, on, holding };

/// Between two changes: d ratio / dt = rise - speed ratio.
struct VapourPiece {
  bool wet = false;
  Drying drying = Drying::off;
  double from = 0.0, rise_per_s = 0.0, speed_per_s = 0.0;

  /// (1 - exp(-k t)) / k, which is t where nothing draws the air back.
  double span_s(double time_s) const {
    return speed_per_s > 0.0 ? -std::expm1(-speed_per_s * time_s) / speed_per_s : time_s;
  }
  double slope_per_s() const { return rise_per_s - speed_per_s * from; }
  double at(double time_s) const { return from + slope_per_s() * span_s(time_s); }
  /// Integral of the ratio. Where little draws the air back the difference of two spans would be rounding.
  double integral_s(double time_s) const {
    const double x = speed_per_s * time_s;
    constexpr double small = 1e-3;
    const double by_slope_s2 = x < small
                                   ? time_s * time_s * (1.0 / 2.0 - x * (1.0 / 6.0 - x * (1.0 / 24.0 - x / 120.0)))
                                   : (time_s - span_s(time_s)) / speed_per_s;
    return from * time_s + slope_per_s() * by_slope_s2;
  }
  /// When it comes to a level; infinite where it never does or stands there.
  double reaches_s(double level) const {
    const double slope = slope_per_s(), way = level - from;
    if (way * slope <= 0.0) return no_end_s;
    if (speed_per_s <= 0.0) return way / slope;
    const double done = way * speed_per_s / slope;
    return done < 1.0 ? -std::log1p(-done) / speed_per_s : no_end_s;
  }
};

VapourStage stage_of(const VapourRoom& room, const VapourHour& hour) {
  expects(room.air_kg > 0.0 && room.floor_m2 >= 0.0 && room.convection_W_per_m2K >= 0.0, "a room with air and floor");
  expects(room.dryer_kg_per_s >= 0.0 && room.dryer_above_share >= 0.0, "a dryer takes water");
  expects(hour.exchange_kg_per_s >= 0.0 && hour.source_kg_per_s >= 0.0 && hour.outdoor_ratio >= 0.0,
          "flows and sources are not negative");
  const double film = settling_kg_per_sm2(room.convection_W_per_m2K, 1.0, 0.0) * room.floor_m2;
  return {room,
          hour,
          humidity_ratio(saturation_Pa(hour.floor_degC), room.pressure_Pa),
          humidity_ratio_of(hour.air_degC, room.dryer_above_share, room.pressure_Pa),
          film,
          hour.exchange_kg_per_s * hour.outdoor_ratio + hour.source_kg_per_s};
}

/// What the air gains in kg/s at a ratio without the dryer.
double gain_kg_per_s(const VapourStage& stage, double ratio, bool wet) {
  const double floor = wet ? stage.film_kg_per_s * (ratio - stage.face_ratio) : 0.0;
  return stage.fresh_kg_per_s - stage.hour.exchange_kg_per_s * ratio - floor;
}

Drying drying_at(const VapourStage& stage, double ratio, bool wet) {
  const double most = stage.room.dryer_kg_per_s;
  if (most == 0.0 || ratio < stage.dryer_ratio) return Drying::off;
  if (ratio > stage.dryer_ratio) return Drying::on;
  const double gain = gain_kg_per_s(stage, ratio, wet);
  if (gain <= 0.0) return Drying::off;
  return gain >= most ? Drying::on : Drying::holding;
}

VapourPiece piece_from(const VapourStage& stage, const RoomVapour& from) {
  VapourPiece out;
  out.from = from.ratio;
  out.wet = from.floor_kg > 0.0 || from.ratio > stage.face_ratio;
  out.drying = drying_at(stage, from.ratio, out.wet);
  const double dryer = out.drying == Drying::on ? stage.room.dryer_kg_per_s : 0.0;
  // Air that is just as rich as the face wets a dry floor when it goes on rising.
  const bool rises = out.drying != Drying::holding && gain_kg_per_s(stage, from.ratio, false) > dryer;
  out.wet = out.wet || (from.ratio == stage.face_ratio && rises);
  if (out.drying == Drying::holding) return out;
  const double film = out.wet ? stage.film_kg_per_s : 0.0;
  out.rise_per_s = (stage.fresh_kg_per_s + film * stage.face_ratio - dryer) / stage.room.air_kg;
  out.speed_per_s = (stage.hour.exchange_kg_per_s + film) / stage.room.air_kg;
  return out;
}

double settled_in_kg(const VapourStage& stage, const VapourPiece& piece, double time_s) {
  return piece.wet ? stage.film_kg_per_s * (piece.integral_s(time_s) - stage.face_ratio * time_s) : 0.0;
}

/// When the last water has left the floor; infinite where some is left at `within_s`.
double dry_after_s(const VapourStage& stage, const VapourPiece& piece, double floor_kg, double within_s) {
  if (!piece.wet) return no_end_s;
  // The air passes the face's ratio once at most: water goes before that or after it.
  const double passes_s = piece.reaches_s(stage.face_ratio);
  const bool from_above = piece.from > stage.face_ratio;
  const bool stays = from_above ? passes_s >= within_s : piece.from == stage.face_ratio && piece.slope_per_s() >= 0.0;
  if (stays) return no_end_s;
  double low = from_above ? passes_s : 0.0, high = from_above ? within_s : std::min(within_s, passes_s);
  const auto left = [&](double time_s) { return floor_kg + settled_in_kg(stage, piece, time_s); };
  if (left(high) > 0.0) return no_end_s;
  constexpr int halvings = 60;
  for (int n = 0; n < halvings; ++n) {
    const double middle = (low + high) / 2.0;
    (left(middle) > 0.0 ? low : high) = middle;
  }
  return high;
}

void add_amounts(VapourAmounts& sum, const VapourAmounts& more) {
  sum.in_kg += more.in_kg;
  sum.out_kg += more.out_kg;
  sum.source_kg += more.source_kg;
  sum.dried_kg += more.dried_kg;
  sum.settled_kg += more.settled_kg;
  sum.fallen_kg += more.fallen_kg;
}

/// Up to the next change, at most `left_s`; gives how long that took.
double advance_vapour(const VapourStage& stage, VapourStep& step, double left_s) {
  RoomVapour& at = step.end;
  const VapourPiece piece = piece_from(stage, at);
  const double wets_s = piece.wet ? no_end_s : piece.reaches_s(stage.face_ratio);
  const double dryer_s = stage.room.dryer_kg_per_s > 0.0 ? piece.reaches_s(stage.dryer_ratio) : no_end_s;
  const double until_s = std::min({left_s, wets_s, dryer_s});
  const double dries_s = dry_after_s(stage, piece, at.floor_kg, until_s);
  const double time_s = std::min(until_s, dries_s);

  const double integral_s = piece.integral_s(time_s), settled = settled_in_kg(stage, piece, time_s);
  VapourAmounts amounts;
  amounts.in_kg = stage.hour.exchange_kg_per_s * stage.hour.outdoor_ratio * time_s;
  amounts.out_kg = stage.hour.exchange_kg_per_s * integral_s;
  amounts.source_kg = stage.hour.source_kg_per_s * time_s;
  amounts.settled_kg = settled;
  if (piece.drying == Drying::on) amounts.dried_kg = stage.room.dryer_kg_per_s * time_s;
  if (piece.drying == Drying::holding) amounts.dried_kg = gain_kg_per_s(stage, at.ratio, piece.wet) * time_s;
  add_amounts(step.amounts, amounts);

  at.floor_kg = dries_s <= until_s ? 0.0 : std::max(0.0, at.floor_kg + settled);
  // At a change the air stands on its level, not a rounding beside it.
  at.ratio = time_s == wets_s ? stage.face_ratio : time_s == dryer_s ? stage.dryer_ratio : piece.at(time_s);
  return time_s;
}

}  // namespace

VapourStep vapour_step(const VapourRoom& room, const VapourHour& hour, const RoomVapour& from, double step_s) {
  expects(step_s > 0.0 && from.ratio >= 0.0 && from.floor_kg >= 0.0, "a step from a state that can be");
  const VapourStage stage = stage_of(room, hour);
  VapourStep step{from, {}};
  for (double left_s = step_s; left_s > 0.0;) left_s -= advance_vapour(stage, step, left_s);
  const double full_ratio = humidity_ratio(saturation_Pa(hour.air_degC), room.pressure_Pa);
  if (step.end.ratio > full_ratio) {
    step.amounts.fallen_kg = room.air_kg * (step.end.ratio - full_ratio);
    step.end.ratio = full_ratio;
  }
  return step;
}

IndoorYear vapour_year(const VapourRoom& room, const std::vector<VapourHour>& hours) {
  // Less vapour than ice at -99.6 degC has is as good as none.
  constexpr double none_degC = -100.0, least_Pa = 0.0015;
  IndoorYear year;
  year.hour.reserve(hours.size());
  RoomVapour at;
  if (!hours.empty()) at.ratio = hours.front().outdoor_ratio;
  for (const VapourHour& hour : hours) {
    const VapourStep step = vapour_step(room, hour, at);
    at = step.end;
    add_amounts(year.amounts, step.amounts);
    IndoorVapour out;
    out.at = at;
    const double vapour_Pa = vapour_of_ratio_Pa(at.ratio, room.pressure_Pa);
    out.dew_point_degC = vapour_Pa < least_Pa ? none_degC : dew_point_degC(vapour_Pa);
    out.face_share = surface_humidity_share(vapour_Pa, hour.floor_degC);
    out.sweats = out.face_share > 1.0;
    out.damp = out.face_share > damp_share;
    year.hour.push_back(out);
  }
  return year;
}

std::vector<double> outdoor_ratios(const WeatherYear& year, double pressure_Pa) {
  std::vector<double> out;
  out.reserve(year.dew_point_degC.size());
  for (std::size_t hour = 0; hour < year.dew_point_degC.size(); ++hour) {
    const double total_Pa = year.pressure_Pa.empty() ? pressure_Pa : year.pressure_Pa[hour];
    out.push_back(humidity_ratio(saturation_Pa(year.dew_point_degC[hour]), total_Pa));
  }
  return out;
}

}  // namespace slabwright
