// What all ways of one winter are run in: the shop, its season and machines, and the soil that the past has left.
#include <algorithm>

#include "winter/scene.hpp"

namespace slabwright::winter {
namespace {

/// Years of the past way: as the design says it was run, else at work all winter.
ShopState past_state(const Scene& scene, const std::vector<WayEntry>& ways) {
  const auto past = std::find_if(ways.begin(), ways.end(), [](const WayEntry& way) { return way.last_winter; });
  const WayEntry way = past != ways.end() ? *past : usual_ways(false, {}).front();
  const WayCase one = case_of(scene, {way});
  const ShopState once = for_years(scene, one, begun(scene.year, past_guess(scene), since_coldest_s));
  return for_years(scene, one, once);
}

std::size_t main_room(const WinterShop& shop, const YearShop& year) {
  const std::string& name = shop.design.second_source.room;
  if (name.empty()) return year.main;
  return shop_room(shop, year, name).value_or(year.main);
}

}  // namespace

std::vector<WayEntry> ways_of(const Scene& scene) {
  std::vector<WayEntry> ways = scene.shop.design.way;
  const bool own = std::any_of(ways.begin(), ways.end(), [](const WayEntry& way) { return !way.last_winter; });
  if (own) return ways;
  for (WayEntry& usual : usual_ways(scene.machines.source.has_value(), scene.shop.hold_air_degC)) {
    if (usual.last_winter && !ways.empty()) continue;
    // Where every day is worked there is no day off.
    if (usual.rest_degC && usual.rest_when == WayRest::days_off && scene.shop.design.work.days == WorkDays::every_day)
      continue;
    ways.push_back(std::move(usual));
  }
  return ways;
}

ZoneHistory past_guess(const Scene& scene) {
  const Climate& climate = scene.shop.design.climate;
  return {{scene.work_degC, climate.mean_degC, 0.0}, {scene.work_degC, climate.mean_degC - climate.half_swing_K, 0.0}};
}

std::optional<Scene> scene_of(const WinterShop& shop, EdgeFields& fields) {
  auto year = year_shop(shop.design, shop.envelope, shop.floor, shop.watched, fields);
  if (!year) return std::nullopt;
  Scene scene{shop, std::move(*year), {}, {}, {}, 0.0, {}, {}};
  scene.year.main = main_room(shop, scene.year);
  scene.season = season_of(shop, scene.year);
  scene.machines = machines_of(shop, scene.year, scene.season);
  scene.in_snap = in_weather(scene.machines, snap_from, shop.snap.hourly_degC);
  scene.work_degC = indoor_of(shop.design, shop.design.room[scene.year.room[scene.year.main].of]);
  scene.hold = {shop.hold_air_degC.value_or(not_set_degC), shop.hold_slab_degC.value_or(not_set_degC), not_set_degC};
  scene.before = past_state(scene, ways_of(scene));
  return scene;
}

}  // namespace slabwright::winter
