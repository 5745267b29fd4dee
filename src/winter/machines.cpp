#include "winter/machines.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "slabwright/heater_curves.hpp"

namespace slabwright::winter {
namespace {

/// The curve of capacity over indoor temperature was made for rooms down to this; a colder one counts as this.
constexpr double rated_room_degC = 21.1, coldest_room_degC = 16.0;
/// Warmer again by so much, and it starts: where the maker says nothing (practice).
constexpr double usual_differential_K = 3.0;

/// Warmer than this no ice grows on a coil.
constexpr double ice_below_degC = 5.0;
/// Over what steady weather asks for: doors, cold mornings and thermostats that have been off (practice).
constexpr double reset_share = 1.3;
/// A room whose roof takes more than this of what blows under it has no business with such a source.
constexpr double most_layered_share = 0.5;

DefrostShares iced(Defrost defrost, double outdoor_degC, double dew_point_degC) {
  const double air = ratio_outdoors(outdoor_degC, dew_point_degC, standard_atmosphere_Pa);
  const double coil = humidity_ratio(saturation_Pa(frosting_coil_degC(outdoor_degC)), standard_atmosphere_Pa);
  // In air as dry as the coil no ice grows, and nothing is melted.
  if (air <= coil) return {1.0, 1.0, 0.0};
  return defrost == Defrost::by_clock ? defrost_by_clock(air - coil) : defrost_on_demand(air - coil);
}

std::vector<HeatPumpRow> rows_of(const SecondSource& source) {
  std::vector<HeatPumpRow> rows;
  for (const SourcePoint& point : source.points)
    rows.push_back({point.outdoor_degC, point.capacity_W, point.cop_number});
  if (rows.empty() && source.capacity_W) rows = cold_climate_rows(*source.capacity_W);
  return rows;
}

std::optional<BoilerStages> boiler_of(const WinterShop& shop) {
  if (!shop.boiler_W || *shop.boiler_W <= 0.0) return std::nullopt;
  BoilerStages boiler;
  const double stages =
      shop.design.boiler.stages_number.value_or(std::max(1.0, std::ceil(*shop.boiler_W / boiler_stage_W.value)));
  boiler.stage_W.assign(static_cast<std::size_t>(stages), *shop.boiler_W / stages);
  boiler.least_on_s = shop.design.boiler.least_on_s;
  return boiler;
}

std::vector<TablePoint> water_table(const WaterCurve& water, const YearShop& year, double tubes_m2) {
  std::vector<TablePoint> table;
  for (const WaterRow& row : water.row) {
    const double up_W_per_m2 = row.up_W / tubes_m2;
    const double film_m2K_per_W = floor_film_rise_K(up_W_per_m2) / std::max(up_W_per_m2, 1e-9);
    const double below_m2K_per_W = year.zone.plane_m2K_per_W - 1.0 / year.film_W_per_m2K;
    const double plane_degC = water.room_degC + up_W_per_m2 * (film_m2K_per_W + below_m2K_per_W);
    if (row.water_W > 0.0 && row.supply_degC > plane_degC)
      table.push_back({row.supply_degC, row.water_W / tubes_m2 / (row.supply_degC - plane_degC)});
  }
  return table;
}

}  // namespace

std::optional<HeatPump> heat_pump_of(const SecondSource& source) {
  if (source.kind != SecondSourceKind::heat_pump) return std::nullopt;
  HeatPump pump;
  pump.row = rows_of(source);
  if (pump.row.size() < 2) return std::nullopt;
  pump.part_load = {PartLoadLaw::straight, 0.25};
  if (source.cut_out_degC)
    pump.cut_out = {*source.cut_out_degC, source.cut_in_degC.value_or(*source.cut_out_degC + usual_differential_K)};
  pump.least_indoor_start_degC = source.start_above_degC;
  return pump;
}

SourceHour source_hour(const Machines& machines, double outdoor_degC, double dew_point_degC) {
  SourceHour hour;
  hour.full = full_load(*machines.source, outdoor_degC);
  if (outdoor_degC < ice_below_degC && machines.defrost != Defrost::in_table) {
    const DefrostShares left = iced(machines.defrost, outdoor_degC, dew_point_degC);
    hour.full.capacity_W *= left.capacity_share;
    hour.full.cop *= std::min(1.0, left.capacity_share / left.power_share);
  }
  if (hour.full.capacity_W > 0.0)
    hour.layered_share = std::min(most_layered_share, machines.layered_W / hour.full.capacity_W);
  const HeatPumpShares rated = single_speed_heat_pump(rated_room_degC, outdoor_degC);
  const HeatPumpShares cold = single_speed_heat_pump(coldest_room_degC, outdoor_degC);
  const double span_K = rated_room_degC - coldest_room_degC;
  hour.capacity_per_K = (cold.capacity_share / rated.capacity_share - 1.0) / span_K;
  hour.cop_per_K = (cold.cop_share / rated.cop_share - 1.0) / span_K;
  return hour;
}

Machines machines_of(const WinterShop& shop, const YearShop& year, const Season& season) {
  Machines machines;
  machines.tubes_m2 = tubes_m2(year);
  machines.water_W_per_m2K = water_table(shop.water, year, machines.tubes_m2);
  if (is_table(machines.water_W_per_m2K)) machines.boiler = boiler_of(shop);
  if (!shop.water.row.empty()) {
    machines.hottest_degC = std::min(shop.design.boiler.hottest_degC, shop.water.row.back().supply_degC);
    machines.reset_supply_degC = shop.reset_supply_degC.value_or(machines.hottest_degC);
  }
  machines.reset_at_degC = shop.envelope.outdoor_degC;
  machines.pump_W = shop.pump_W;
  machines.source = heat_pump_of(shop.design.second_source);
  if (!machines.source) return machines;
  machines.least_setting_degC = shop.design.second_source.least_setting_degC.value_or(machines.least_setting_degC);
  machines.drain_pan_W = shop.design.second_source.drain_pan_W;
  machines.defrost = shop.design.second_source.defrost;
  machines.layered_W = shop.design.second_source.gradient_K_per_m * year.room[year.main].layered_Wm_per_K;
  for (const SeasonHour& hour : season.hour)
    machines.source_hour.push_back(source_hour(machines, hour.outdoor_degC, hour.dew_point_degC));
  return machines;
}

double most_tube_heat(const Machines& machines, double supply, double plane_degC) {
  if (!machines.boiler) return 0.0;
  const double by_water = linear_in_table(machines.water_W_per_m2K, supply).value * std::max(0.0, supply - plane_degC);
  return std::min(by_water, most_heat_W(*machines.boiler) / machines.tubes_m2);
}

double supply_degC(const Machines& machines, bool reset, double outdoor_degC, double room_degC) {
  if (!reset || room_degC <= machines.reset_at_degC) return machines.hottest_degC;
  const double share = reset_share * (room_degC - outdoor_degC) / (room_degC - machines.reset_at_degC);
  return std::min(machines.hottest_degC, room_degC + std::max(0.0, share) * (machines.reset_supply_degC - room_degC));
}

FullLoad in_room(const SourceHour& hour, double room_degC) {
  const double colder_K = rated_room_degC - std::clamp(room_degC, coldest_room_degC, rated_room_degC);
  FullLoad full = hour.full;
  full.capacity_W *= 1.0 + hour.capacity_per_K * colder_K;
  full.cop *= 1.0 + hour.cop_per_K * colder_K;
  return full;
}

}  // namespace slabwright::winter
