// Outdoor air that passes through the shop, and how much washing water can leave with it.
#include <algorithm>

#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "winter/season.hpp"

namespace slabwright::winter {
namespace {

/// A building that is not described: so much of its loss goes with the air (practice).
constexpr double leak_share = 0.35;

double leaks_kg_per_s(const WinterShop& shop, const YearShop& year) {
  double W_per_K = 0.0;
  for (const ShopRoom& room : year.room) {
    const RoomLoss& loss = shop.envelope.room[room.of];
    W_per_K += loss.air_W_per_K + leak_share * loss.by_area_W_per_K;
  }
  return W_per_K / air_J_per_kgK;
}

/// Fans and open doors of an hour.
double open_kg_per_s(const Season& season, std::size_t hour, double rise_K) {
  double W_per_K = 0.0;
  for (const double more : season.drivers[hour].more_W_per_K) W_per_K += more;
  const SeasonHour& at = season.hour[hour];
  for (const SeasonDoor& door : season.door) W_per_K += opened_W_per_K(door, at, rise_K);
  return W_per_K / air_J_per_kgK + at.tempered_kg_per_s;
}

}  // namespace

std::vector<SeasonAir> season_air(const Season& season, const WinterShop& shop, const YearShop& year,
                                  const std::vector<double>& air_degC) {
  const double leaks = leaks_kg_per_s(shop, year), pressure_Pa = air_pressure_Pa(shop.design.climate.altitude_m);
  std::vector<SeasonAir> out;
  out.reserve(hours_of_year);
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const SeasonHour& at = season.hour[i];
    const double dew_degC = std::min(at.dew_point_degC, at.outdoor_degC);
    out.push_back({leaks + open_kg_per_s(season, i, air_degC[i] - at.outdoor_degC),
                   humidity_ratio(saturation_Pa(dew_degC), pressure_Pa)});
  }
  return out;
}

void add_washing(Season& season, const WinterShop& shop, const YearShop& year) {
  const Work& work = shop.design.work;
  if (work.wash_kg == 0.0) return;
  double worked_s_of_day = 0.0;
  for (int clock = 0; clock < 24; ++clock) worked_s_of_day += in_span(work.hours, clock) ? an_hour_s : 0.0;
  const double room_degC = indoor_of(shop.design, shop.design.room[year.room[year.main].of]);
  const double pressure_Pa = air_pressure_Pa(shop.design.climate.altitude_m);
  const std::vector<double> air_degC(hours_of_year, room_degC);
  const std::vector<SeasonAir> air = season_air(season, shop, year, air_degC);
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    SeasonHour& hour = season.hour[i];
    if (!hour.worked) continue;
    const double full_ratio = humidity_ratio_of(std::max(room_degC, hour.outdoor_degC), 1.0, pressure_Pa);
    const double leaves_kg_per_s = air[i].exchange_kg_per_s * std::max(0.0, full_ratio - air[i].outdoor_ratio);
    const double most_kg_per_s = leaves_kg_per_s + work.dryer_kg / day_s;
    const double stated_kg_per_s = work.wash_kg / worked_s_of_day;
    const double dries_kg_per_s = std::min(stated_kg_per_s, most_kg_per_s);
    add_heat(season.drivers[i], year.main, -dries_kg_per_s * vaporisation_J_per_kg);
    hour.vapour_kg_per_s += dries_kg_per_s;
    season.wash_stated_kg += stated_kg_per_s * an_hour_s;
    season.wash_dries_kg += dries_kg_per_s * an_hour_s;
  }
}

}  // namespace slabwright::winter
