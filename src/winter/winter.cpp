// The stage: every way through the same year, ranked.
#include "slabwright/winter.hpp"

#include <algorithm>
#include <cmath>

#include "winter/bill_fit.hpp"
#include "winter/bill_words.hpp"
#include "winter/judge.hpp"
#include "winter/scene.hpp"

namespace slabwright {
namespace {

using namespace winter;

std::vector<PlaceInWinter> places_of(const Scene& scene, const WayCase& way) {
  const Climate& climate = scene.shop.design.climate;
  const auto this_way = coldest_from(scene, way, for_years(scene, way, scene.before));
  const auto as_before = coldest_from(scene, way, scene.before);
  const ShopState unheated = unbuilt(scene.year, climate.mean_degC, climate.half_swing_K, since_coldest_s);
  const auto new_building = coldest_from(scene, way, unheated);
  std::vector<PlaceInWinter> places;
  for (std::size_t i = 0; i < this_way.size(); ++i) {
    const WatchedPlace& of = scene.shop.watched.place[i];
    const CalendarHour at = calendar_hour(of_year(this_way[i].hour), false);
    places.push_back({of.name, of.decides, this_way[i].degC, of.limit_degC, of.freezes_degC, at.month, at.day,
                      as_before[i].degC, new_building[i].degC});
  }
  std::stable_sort(places.begin(), places.end(), [](const PlaceInWinter& a, const PlaceInWinter& b) {
    if (a.decides != b.decides) return a.decides;
    return a.coldest_degC - a.limit_degC < b.coldest_degC - b.limit_degC;
  });
  return places;
}

/// Frost holds over the lowest that a way is tried with where the lowest is too low for it.
constexpr double raises_K[] = {0.0, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0};

/// With the lowest frost hold under which nothing comes too near freezing in this way; the lowest of all where none is.
Tried with_hold(const Scene& scene, const WayEntry& way, bool raises) {
  const Tried least = tuned(scene, way, 0.0);
  if (!raises || scene.hold.floor_air_degC <= not_set_degC || keeps_frost_out(scene, case_of(scene, least.settings)))
    return least;
  for (const double raised_K : raises_K) {
    if (scene.hold.floor_air_degC + raised_K > scene.work_degC) break;
    Settings settings = least.settings;
    settings.hold_more_K = raised_K;
    if (raised_K > 0.0 && keeps_frost_out(scene, case_of(scene, settings))) return tuned(scene, way, raised_K);
  }
  return least;
}

WayResult result_of(const Scene& scene, const WayEntry& way, bool raises) {
  Tried best = with_hold(scene, way, raises);
  WayResult result = std::move(best.result);
  result.sweating = sweating_of(scene, best.year);
  if (scene.hold.floor_air_degC > not_set_degC)
    result.hold_degC = scene.hold.floor_air_degC + best.settings.hold_more_K;
  result.place = places_of(scene, case_of(scene, best.settings));
  result.fails.frost_hold = std::any_of(result.place.begin(), result.place.end(), [](const PlaceInWinter& place) {
    return place.decides && place.coldest_degC < place.limit_degC;
  });
  return result;
}

std::vector<DoorInWinter> doors_of(const Scene& scene) {
  const Climate& climate = scene.shop.design.climate;
  const double outdoor_degC = climate.mean_degC - climate.half_swing_K;
  std::vector<DoorInWinter> doors;
  for (const Opening& opening : scene.shop.design.opening) {
    const auto row = shop_room(scene.shop, scene.year, opening.room);
    if (!row || !is_opened(opening)) continue;
    DoorRoom room = door_room(scene.year.room[*row]);
    room.surfaces_degC = scene.work_degC;
    room.heat_W = room.loss_W_per_K * (scene.work_degC - outdoor_degC);
    const DoorOpening one = door_opening({opening.size.width_m, opening.size.depth_m}, room, scene.work_degC,
                                         outdoor_degC, opening.open_s, climate.wind_m_per_s);
    doors.push_back({opening.name, opening.open_s, one.lost_J, one.coldest_degC, {}});
    if (std::isfinite(one.recovers_s)) doors.back().recovers_s = one.recovers_s;
  }
  return doors;
}

/// Last winter's bill, where a way says how that was run.
void add_bill(Winter& winter, const Scene& scene, std::vector<Diagnostic>& said) {
  const Bill& bill = scene.shop.design.bill;
  if (bill.months.empty() || !scene.machines.boiler) return;
  const auto last =
      std::find_if(winter.way.begin(), winter.way.end(), [](const auto& way) { return way.way.last_winter; });
  if (last == winter.way.end()) {
    said.push_back(
        {Severity::warning,
         "bill.no-way",
         "bill",
         "nobody says how last winter was run: set last_winter = true in the [[way]] that the bill is of. It "
         "is left out.",
         {}});
    return;
  }
  const auto range = ground_range(scene.shop, scene.year);
  if (!range) return;
  const WayCase way = case_of(scene, settings_of(scene, *last));
  const BillCase billed{*range, way, past_guess(scene)};
  const BillModel model = bill_model(billed);
  auto read = read_bill({billed, model, bill, {}, {}});
  said.insert(said.end(), read.said.begin(), read.said.end());
  if (!read) return;
  constexpr double hopeless_share = 0.25;
  if (read.value->fit.misfit_share > hopeless_share) {
    said.push_back({Severity::warning,
                    "bill.no-fit",
                    "bill",
                    "last winter's bill fits no shop like this one: its months do not go together, or it was run in "
                    "another way than the one with last_winter. It is left out.",
                    {}});
    return;
  }
  winter.fit = read.value->fit;
  winter.fit->ridge = ridge_words(*read.value, {}, scene.shop.design.units);
  winter.fit->implies = implied_words(*winter.fit, scene.shop.design);
  winter.fit->paste = lines_to_paste(*winter.fit, scene.shop, *range);
}

void add_doubt(Winter& winter, const Scene& scene, const Progress& progress) {
  const std::vector<HardWinter> hard = hard_winters(scene);
  std::vector<Settings> settings;
  for (WayResult& result : winter.way) {
    settings.push_back(settings_of(scene, result));
    result.ten = ten_winters(scene, settings.back(), hard);
    tell(progress, 0.5 * static_cast<double>(settings.size()) / static_cast<double>(winter.way.size()));
  }
  add_bands(winter.way, scene, settings);
  tell(progress, 1.0);
}

}  // namespace

Checked<Winter> winter_of(const WinterShop& shop, EdgeFields& fields, const WinterWishes& wishes) {
  std::optional<Scene> begun_scene = scene_of(shop, fields);
  if (!begun_scene) return {std::nullopt, {}};
  const Scene& scene = *begun_scene;
  const std::vector<WayEntry> ways = ways_of(scene);
  Winter winter;
  winter.weather = scene.season.weather;
  winter.sun = scene.season.sun;
  winter.door = doors_of(scene);
  const Progress running = part_of(wishes.progress, 0.0, wishes.extras ? 0.3 : 1.0);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    winter.way.push_back(result_of(scene, ways[i], wishes.raises_hold));
    tell(running, static_cast<double>(i + 1) / static_cast<double>(ways.size()));
  }
  std::stable_sort(winter.way.begin(), winter.way.end(), ranks_before);
  std::vector<Diagnostic> said = judged(scene, winter);
  add_bill(winter, scene, said);
  if (wishes.series) add_series(winter, scene);
  if (!wishes.extras) return {std::move(winter), std::move(said)};
  add_holds(winter, scene);
  add_search(winter, scene, wishes.wide ? wide_grid() : usual_grid(), part_of(wishes.progress, 0.3, 0.7));
  add_doubt(winter, scene, part_of(wishes.progress, 0.7, 1.0));
  return {std::move(winter), std::move(said)};
}

}  // namespace slabwright
