// Outdoor air that passes through the shop, and how much washing water leaves with it.
#include <algorithm>

#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "slabwright/units_exact.hpp"
#include "winter/season.hpp"

namespace slabwright::winter {
namespace {

/// A building that is not described: so much of its loss goes with the air (practice).
constexpr double leak_share = 0.35;

}  // namespace

double ratio_outdoors(double outdoor_degC, double dew_point_degC, double pressure_Pa) {
  return humidity_ratio(saturation_Pa(std::min(dew_point_degC, outdoor_degC)), pressure_Pa);
}

double leaks_kg_per_s(const WinterShop& shop, const YearShop& year) {
  double W_per_K = 0.0;
  for (const ShopRoom& room : year.room) {
    const RoomLoss& loss = shop.envelope.room[room.of];
    W_per_K += loss.air_W_per_K + leak_share * loss.by_area_W_per_K;
  }
  return W_per_K / air_J_per_kgK;
}

double open_kg_per_s(const SeasonHour& hour, const std::vector<double>& more_W_per_K) {
  double W_per_K = 0.0;
  for (const double more : more_W_per_K) W_per_K += more;
  return W_per_K / air_J_per_kgK + hour.tempered_kg_per_s;
}

std::vector<double> ratios_outdoors(const Season& season, double pressure_Pa) {
  std::vector<double> ratios;
  ratios.reserve(season.hour.size());
  for (const SeasonHour& hour : season.hour)
    ratios.push_back(ratio_outdoors(hour.outdoor_degC, hour.dew_point_degC, pressure_Pa));
  return ratios;
}

void add_washing(Season& season, const WinterShop& shop, const YearShop& year) {
  const Work& work = shop.design.work;
  if (work.wash_kg == 0.0) return;
  double worked_s_of_day = 0.0;
  for (int clock = 0; clock < 24; ++clock) worked_s_of_day += in_span(work.hours, clock) ? hour_s : 0.0;
  SeasonWashing washing;
  washing.kg_per_s = work.wash_kg / worked_s_of_day;
  washing.dryer_kg_per_s = work.dryer_kg / day_s;
  washing.leaks_kg_per_s = leaks_kg_per_s(shop, year);
  washing.pressure_Pa = air_pressure_Pa(shop.design.climate.altitude_m);
  washing.outdoor_ratio = ratios_outdoors(season, washing.pressure_Pa);
  season.washing = std::move(washing);
}

Drying drying(const SeasonWashing& washing, const AirThrough& air, double wet_kg) {
  const auto full_ratio = [&](double degC) { return humidity_ratio_of(degC, 1.0, washing.pressure_Pa); };
  constexpr double step_K = 0.1;
  const double at_degC = std::clamp(air.indoor_degC, coldest_air_degC, hottest_air_degC), full = full_ratio(at_degC);
  const double leaves_kg_per_s = air.exchange_kg_per_s * std::max(0.0, full - air.outdoor_ratio);
  Drying drying;
  drying.dries_kg_per_s = std::min(wet_kg / hour_s, leaves_kg_per_s + washing.dryer_kg_per_s);
  drying.heat_W = std::min(drying.dries_kg_per_s, leaves_kg_per_s) * vaporisation_J_per_kg;
  if (leaves_kg_per_s > 0.0 && drying.dries_kg_per_s >= leaves_kg_per_s)
    drying.heat_W_per_K =
        air.exchange_kg_per_s * (full - full_ratio(at_degC - step_K)) / step_K * vaporisation_J_per_kg;
  return drying;
}

}  // namespace slabwright::winter
