#include "winter/season.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/building_sun.hpp"
#include "slabwright/climate_winter.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::winter {
namespace {

constexpr double leap_from = 59 * 24, day_hours = 24;
/// Of what comes through a window: ISO 52016-1 has a tenth in the air; the rest falls half on the floor (practice).
constexpr double sun_to_air_share = 0.1, sun_to_floor_share = 0.45, sun_to_faces_share = 0.45;
/// Of machines and people: to the air at once (ISO 52016-1 has 0.4 of internal gains, 0.5 in its predecessor).
constexpr double gains_to_air_share = 0.5;
/// Of room air at the sea, as the heat loss has it.
constexpr double usual_air_kg_per_m3 = 1.2;

/// A typical winter's lowest hour lies between the 99.6 % hour and the n-year minimum (practice).
std::optional<ColdSpell> typical_spell(const Climate& climate) {
  ColdSpell spell;
  spell.first_day = 19;
  spell.days = climate.snap_days;
  spell.lowest_degC = 0.5 * (*climate.outdoor_degC + *climate.coldest_degC);
  spell.swing_K = climate.snap_swing_K;
  return spell;
}

WeatherYear made_up(const Climate& climate) {
  MadeUpWinter of;
  of.station.latitude_deg = climate.latitude_deg.value_or(45.0);
  of.dry_bulb.normals = usual_normals(climate.mean_degC, climate.half_swing_K);
  of.dry_bulb.spell = typical_spell(climate);
  auto year = made_up_winter(of);
  // Where a month has no room for the spell among its days, it goes without: the snap is run apart in any case.
  if (!year) {
    of.dry_bulb.spell.reset();
    year = made_up_winter(of);
  }
  if (!climate.latitude_deg)
    for (auto* series : {&year.value->global_W_per_m2, &year.value->direct_W_per_m2, &year.value->diffuse_W_per_m2})
      series->clear();
  return std::move(*year.value);
}

/// Without 29 February, so that every year has the same hours.
void drop_leap_day(std::vector<double>& series) {
  if (series.size() <= hours_of_year) return;
  const auto from = series.begin() + static_cast<std::ptrdiff_t>(leap_from);
  series.erase(from, from + static_cast<std::ptrdiff_t>(day_hours));
}

double value_or(const std::vector<double>& series, std::size_t hour, double otherwise) {
  return series.empty() ? otherwise : series[hour];
}

bool is_work_day(WorkDays days, int weekday) {
  switch (days) {
    case WorkDays::monday_to_friday: return weekday < 5;
    case WorkDays::monday_to_saturday: return weekday < 6;
    case WorkDays::saturday_and_sunday: return weekday >= 5;
    case WorkDays::every_day: break;
  }
  return true;
}

void add_calendar(Season& season, const Work& work, const WeatherYear& weather, double wind_m_per_s) {
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const std::size_t hour = of_year(i);
    SeasonHour one;
    // What a file has for an hour is its mean; air goes straight from one hour's end to the next.
    one.outdoor_degC = weather.dry_bulb_degC[hour];
    one.dew_point_degC = value_or(weather.dew_point_degC, hour, one.outdoor_degC);
    one.wind_m_per_s = value_or(weather.wind_m_per_s, hour, wind_m_per_s);
    one.month = calendar_hour(hour, false).month;
    one.clock = static_cast<int>(hour % 24);
    one.weekday = static_cast<int>(hour / 24 % 7);
    // Work that goes over midnight counts to the day on which it begins.
    const bool after_midnight = work.hours.to_s <= work.hours.from_s && one.clock * hour_s < work.hours.to_s;
    one.work_day = is_work_day(work.days, (one.weekday + (after_midnight ? 6 : 0)) % 7);
    one.worked = one.work_day && in_span(work.hours, one.clock);
    season.hour.push_back(one);
  }
  int until = 0;
  for (std::size_t i = 2 * hours_of_year; i-- > 0;) {
    SeasonHour& one = season.hour[i % hours_of_year];
    until = one.worked ? 0 : until + 1;
    one.until_work = until;
  }
  int gap = 0;
  for (std::size_t i = 0; i < 2 * hours_of_year; ++i) {
    SeasonHour& one = season.hour[i % hours_of_year];
    gap = one.worked ? 0 : std::max(gap, one.until_work);
    one.gap = gap;
  }
}

bool active(const std::optional<ClockSpan>& hours, const SeasonHour& hour, bool otherwise) {
  return hours ? hour.work_day && in_span(*hours, hour.clock) : otherwise;
}

void add_fans(Season& season, const WinterShop& shop, const YearShop& year) {
  const double density = usual_air_kg_per_m3 * pressure_share(shop.design.climate.altitude_m);
  for (const Exhaust& fan : shop.design.exhaust) {
    const auto room = shop_room(shop, year, fan.room);
    for (std::size_t i = 0; room && i < hours_of_year; ++i) {
      SeasonHour& hour = season.hour[i];
      if (!active(fan.hours, hour, hour.worked)) continue;
      if (fan.makeup == Makeup::untempered)
        season.drivers[i].more_W_per_K[*room] += air_stream_W_per_K(fan.flow_m3_per_s, density);
      else
        hour.tempered_kg_per_s += density * fan.flow_m3_per_s;
    }
  }
}

void add_gains(Season& season, const WinterShop& shop, const YearShop& year) {
  for (const Gains& gains : shop.design.gains) {
    const auto room = shop_room(shop, year, gains.room);
    for (std::size_t i = 0; room && i < hours_of_year; ++i)
      if (active(gains.hours, season.hour[i], true)) add_heat(season.drivers[i], *room, gains.power_W);
  }
}

void add_people(Season& season, const Work& work, std::size_t main) {
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    SeasonHour& hour = season.hour[i];
    if (!hour.worked) continue;
    add_heat(season.drivers[i], main, work.people_number * person_W);
    hour.vapour_kg_per_s += work.people_number * person_vapour_kg_per_s;
  }
}

/// Months that are warmer than so much below working temperature want no heat worth speaking of (practice).
constexpr double heated_below_K = 6.0;

void add_months(Season& season, double work_degC) {
  std::array<double, 12> sum_degC{}, hours{};
  for (const SeasonHour& hour : season.hour) {
    sum_degC[static_cast<std::size_t>(hour.month - 1)] += hour.outdoor_degC;
    hours[static_cast<std::size_t>(hour.month - 1)] += 1.0;
  }
  for (std::size_t month = 0; month < 12; ++month)
    season.heated[month] = sum_degC[month] / hours[month] < work_degC - heated_below_K;
}

/// The way from a room's air to a vehicle, snow and all, that came in at so many degrees: what it takes at working
/// temperature over how much warmer the room then is. To a vehicle that is as warm as the room snow is melted all the
/// same.
double to_vehicle_W_per_K(double heat_W, double room_degC, double arrives_degC) {
  const double over_K = room_degC - arrives_degC;
  return std::max(0.0, heat_W / (over_K < -1.0 ? over_K : std::max(1.0, over_K)));
}

/// Vehicles come in at their time on each day of work and take their heat through the hours after: from air that is
/// colder than it should be less, and air colder than themselves they warm.
void add_vehicles(Season& season, const WinterShop& shop, const YearShop& year) {
  for (const VehicleEntry& vehicle : shop.design.vehicle) {
    const auto room = shop_room(shop, year, vehicle.room);
    if (!room) continue;
    const double room_degC = indoor_of(shop.design, shop.design.room[year.room[*room].of]);
    for (std::size_t i = 0; i < hours_of_year; ++i) {
      const SeasonHour& hour = season.hour[i];
      const bool comes = hour.work_day && hour.clock == static_cast<int>(vehicle.arrives.after_midnight_s / hour_s);
      if (!comes || !in_season(season, hour.month)) continue;
      const double arrives_degC = vehicle.temperature_degC.value_or(hour.outdoor_degC);
      const VehicleHours after =
          vehicle_hours({vehicle.mass_kg, arrives_degC, vehicle.snow_kg, vehicle.evaporates_share}, room_degC);
      for (std::size_t k = 0; k < after.heat_W.size(); ++k) {
        const std::size_t at = (i + k) % hours_of_year;
        const double W_per_K = to_vehicle_W_per_K(after.heat_W[k], room_degC, arrives_degC);
        season.drivers[at].beside_W_per_K[*room] += W_per_K;
        season.drivers[at].beside_W[*room] += W_per_K * arrives_degC;
        season.hour[at].vapour_kg_per_s += after.vapour_kg_per_s[k];
      }
    }
  }
}

double window_m2(const WinterShop& shop, const YearShop& year, std::size_t row) {
  double area_m2 = 0.0;
  for (const Opening& opening : shop.design.opening)
    if (opening.sun_share > 0.0 && shop_room(shop, year, opening.room) == row)
      area_m2 += opening.sun_share * opening.size.width_m * opening.size.depth_m;
  return area_m2;
}

void add_sun(Season& season, const WinterShop& shop, const YearShop& year, const WeatherYear& weather) {
  const BuildingSun sun = building_sun(weather);
  const SolAir excess = sol_air_of(weather, sun);
  season.sun = !sun.wall_W_per_m2.empty();
  for (std::size_t row = 0; row < year.room.size(); ++row) {
    const ShopRoom& room = year.room[row];
    const RoomLoss& loss = shop.envelope.room[room.of];
    const double known_W_per_K = loss.walls_W_per_K + loss.roof_W_per_K;
    const double roof_share = known_W_per_K > 0.0 ? loss.roof_W_per_K / known_W_per_K : 0.5;
    const double through_m2 = window_m2(shop, year, row);
    for (std::size_t i = 0; i < hours_of_year; ++i) {
      const std::size_t hour = of_year(i);
      ShopDrivers& drivers = season.drivers[i];
      const double excess_K = roof_share * excess.roof_K[hour] + (1.0 - roof_share) * excess.wall_K[hour];
      const double window_W = season.sun ? through_m2 * sun.wall_W_per_m2[hour] : 0.0;
      drivers.faces_W[row] += room.opaque_W_per_K * excess_K + sun_to_faces_share * window_W;
      drivers.air_W[row] += sun_to_air_share * window_W;
      drivers.floor_W_per_m2[row] += sun_to_floor_share * window_W / room.floor_m2;
    }
  }
}

void add_doors(Season& season, const WinterShop& shop, const YearShop& year) {
  double work_hours = 0.0, days = 0.0;
  for (const SeasonHour& hour : season.hour) {
    work_hours += hour.worked ? 1.0 : 0.0;
    days += hour.clock == 12 && hour.work_day ? 1.0 : 0.0;
  }
  if (work_hours == 0.0) return;
  for (const Opening& opening : shop.design.opening) {
    const auto room = shop_room(shop, year, opening.room);
    if (!room || !is_opened(opening)) continue;
    SeasonDoor door;
    door.room = *room;
    door.use = door_use({opening.size.width_m, opening.size.depth_m}, door_room(year.room[door.room]), opening.open_s);
    door.per_hour = opening.opened_number * days / work_hours;
    season.door.push_back(door);
  }
}

}  // namespace

WeatherYear common_year(WeatherYear year) {
  for (auto* series : {&year.dry_bulb_degC, &year.dew_point_degC, &year.humidity_share, &year.pressure_Pa,
                       &year.global_W_per_m2, &year.direct_W_per_m2, &year.diffuse_W_per_m2, &year.wind_m_per_s,
                       &year.wind_direction_deg, &year.snow_depth_m, &year.sky_infrared_W_per_m2, &year.opaque_share})
    drop_leap_day(*series);
  return year;
}

void add_heat(ShopDrivers& drivers, std::size_t room, double heat_W) {
  drivers.air_W[room] += gains_to_air_share * heat_W;
  drivers.faces_W[room] += (1.0 - gains_to_air_share) * heat_W;
}

bool in_span(const ClockSpan& span, int clock) {
  const double from_s = clock * hour_s, to_s = from_s + hour_s;
  if (span.from_s < span.to_s) return to_s > span.from_s && from_s < span.to_s;
  return to_s > span.from_s || from_s < span.to_s;
}

std::optional<std::size_t> shop_room(const WinterShop& shop, const YearShop& year, const std::string& name) {
  const std::size_t row = room_row(shop.design, name);
  if (!shop.envelope.room[row].heated_floor) return std::nullopt;
  std::size_t largest = 0;
  for (std::size_t i = 0; i < year.room.size(); ++i) {
    if (year.room[i].of == row) return i;
    if (year.room[i].floor_m2 > year.room[largest].floor_m2) largest = i;
  }
  return largest;
}

bool is_opened(const Opening& opening) {
  return opening.kind != OpeningKind::window && opening.opened_number > 0.0 && opening.open_s > 0.0;
}

double opened_W_per_K(const SeasonDoor& door, const SeasonHour& hour, double rise_K) {
  return hour.worked ? door_W_per_K(door.use, door.per_hour, rise_K, hour.wind_m_per_s) : 0.0;
}

DoorRoom door_room(const ShopRoom& room) {
  DoorRoom at;
  at.air_J_per_K = room.air_J_per_K;
  at.surfaces_W_per_K =
      room.air_faces_W_per_K + room.floor_m2 * (floor_film_down_W_per_m2K - floor_radiative_W_per_m2K);
  at.loss_W_per_K = room.light_W_per_K;
  return at;
}

Season season_of(const WinterShop& shop, const YearShop& year) {
  const Climate& climate = shop.design.climate;
  const WeatherYear weather = shop.weather ? common_year(*shop.weather) : made_up(climate);
  Season season;
  season.weather = shop.weather ? shop.weather->station.name : "made up from its mean, its swing and its coldest hour";
  add_calendar(season, shop.design.work, weather, climate.wind_m_per_s);
  ShopDrivers empty;
  for (auto* values : {&empty.more_W_per_K, &empty.air_W, &empty.beside_W_per_K, &empty.beside_W, &empty.faces_W,
                       &empty.floor_W_per_m2})
    values->assign(year.room.size(), 0.0);
  season.drivers.assign(hours_of_year, empty);
  add_months(season, indoor_of(shop.design, shop.design.room[year.room[year.main].of]));
  add_fans(season, shop, year);
  add_gains(season, shop, year);
  add_people(season, shop.design.work, year.main);
  add_vehicles(season, shop, year);
  add_sun(season, shop, year, weather);
  add_doors(season, shop, year);
  add_washing(season, shop, year);
  return season;
}

}  // namespace slabwright::winter
