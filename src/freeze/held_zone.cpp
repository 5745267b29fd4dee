#include "freeze/held_zone.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::freeze {
namespace {

/// Water that the pump moves.
bool moves(const WatchedPlace& place) { return place.kind == PlaceKind::tube || place.kind == PlaceKind::room_air; }

bool all_frozen(const HeldZone& held, const ZoneRow& row) {
  for (std::size_t i = 0; i < held.places.place.size(); ++i) {
    const WatchedPlace& place = held.places.place[i];
    const double warmest_degC = moves(place) ? std::max(row.place_degC[i], row.water_degC) : row.place_degC[i];
    if (place.decides && warmest_degC > place.freezes_degC) return false;
  }
  return true;
}

}  // namespace

WatchedPlaces in_heated_rooms(const WatchedPlaces& places, const Shop& shop, const Design& design) {
  WatchedPlaces sorted{{}, places.unknown};
  for (const WatchedPlace& place : places.place) {
    if (shop.hold[place.room])
      sorted.place.push_back(place);
    else
      sorted.unknown.push_back({place.name, "no tube lies in the floor of the " + design.room[place.room].name});
  }
  return sorted;
}

std::optional<HeldZone> held_zone(const HeldShop& held, EdgeFields& fields, FloorHeat heat) {
  auto shop = shop_of(held.design, held.envelope, held.floor);
  if (!shop) return std::nullopt;
  WatchedPlaces places = in_heated_rooms(held.watched, *shop, held.design);
  auto zone = heated_zone(held.design, held.envelope, held.floor, places, fields, heat);
  if (!zone) return std::nullopt;
  return HeldZone{std::move(*shop), std::move(places), std::move(*zone)};
}

double zone_air_degC(const Zone& zone, std::size_t room, double room_degC, double outdoor_degC) {
  return outdoor_degC + (room_degC - outdoor_degC) / zone.room_rise_share[room];
}

double sensor_room_degC(const HeldZone& held, const ZoneDrivers& at) {
  return room_air_degC(held.zone, held.shop.first, at.air_degC, at.outdoor_degC);
}

ZoneDrivers held_at_dial(const HeldZone& held, double air_degC, double outdoor_degC) {
  ZoneDrivers at = held_by_air(held.zone, needs_at_work(held.zone),
                               zone_air_degC(held.zone, held.shop.first, air_degC, outdoor_degC), outdoor_degC);
  at.tube_W_per_m2 = std::max(0.0, at.tube_W_per_m2);
  return at;
}

double true_air_degC(const Design& design, double air_dial_degC, double outdoor_degC) {
  return std::max(air_dial_degC - design.frost_hold.sensor_error_K, outdoor_degC);
}

std::optional<double> freezes_after_s(const HeldZone& held, std::size_t place, const std::vector<ZoneRow>& rows,
                                      Water water) {
  const WatchedPlace& watched = held.places.place[place];
  const bool moved = water == Water::moves && moves(watched);
  double before_K = 0.0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double above_K = (moved ? rows[i].water_degC : rows[i].place_degC[place]) - watched.freezes_degC;
    if (above_K <= 0.0 && i == 0) return 0.0;
    if (above_K <= 0.0)
      return rows[i - 1].time_s + (rows[i].time_s - rows[i - 1].time_s) * before_K / (before_K - above_K);
    before_K = above_K;
  }
  return std::nullopt;
}

std::vector<ZoneRow> run_until_frozen(const HeldZone& held, const ZoneDrivers& before, const Doing& doing,
                                      const RunOptions& options) {
  ZoneRun run(held.zone, steady_history(before), options.step_s);
  const auto steps = static_cast<std::size_t>(std::ceil(options.longest_s / options.step_s - 1e-9));
  std::vector<ZoneRow> rows{run.row()};
  while (rows.size() <= steps && !all_frozen(held, rows.back())) {
    run.step(doing(rows.back()));
    rows.push_back(run.row());
  }
  return rows;
}

ZoneStep without_power(const HeldZone& held, double outdoor_degC) {
  ZoneStep step;
  step.outdoor_degC = outdoor_degC;
  step.needs = needs_without_power(held.zone);
  return step;
}

FirstFrozen first_frozen(const HeldZone& held, const std::vector<ZoneRow>& rows, Water water) {
  FirstFrozen first;
  for (std::size_t i = 0; i < held.places.place.size(); ++i) {
    if (!held.places.place[i].decides) continue;
    const auto after_s = freezes_after_s(held, i, rows, water);
    if (after_s && (!first.after_s || *after_s < *first.after_s)) first = {held.places.place[i].name, after_s};
  }
  return first;
}

}  // namespace slabwright::freeze
