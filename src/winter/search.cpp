// What a degree of frost hold costs, which is best, and how flat it is round there.
#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "winter/scene.hpp"

namespace slabwright::winter {
namespace {

/// Frost holds that are shown, K over the lowest.
constexpr double holds_K[] = {0.0, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0};
/// Dry in spring: wet for less than this of March to May (practice).
constexpr double dry_share = 0.02, spring_s = 92.0 * 24.0 * hour_s;

bool leans_on_hold(const WayResult& result) { return result.way.floor == WayFloor::frost_hold && !result.way.charge; }

/// The best of those in which it matters when the second source starts; else of those that run one.
const WayResult* way_to_search(const Winter& winter) {
  const auto runs = [](const WayResult& result) {
    return leans_on_hold(result) && result.way.second_source != WaySource::off;
  };
  const WayResult* best = nullptr;
  for (const WayResult& result : winter.way) {
    if (!runs(result)) continue;
    if (source_starts_early(result.way)) return &result;
    if (!best) best = &result;
  }
  return best;
}

double spring_wet_s(const Sweating& sweating) { return sweating.wet_s[2] + sweating.wet_s[3] + sweating.wet_s[4]; }

TriedWay tried_way(const Scene& scene, const Settings& settings) {
  const Tried one = tried(scene, settings);
  TriedWay row;
  row.hold_degC = scene.hold.floor_air_degC + settings.hold_more_K;
  row.lead_h = settings.source_lead_h;
  row.source_degC = settings.way.source_degC.value_or(scene.work_degC);
  row.use_J = one.result.use_J;
  row.money = one.result.money;
  row.fails = one.result.fails;
  row.source_degC = std::max(row.source_degC, scene.machines.least_setting_degC);
  return row;
}

double cost_of(const TriedWay& row) { return row.money.value_or(row.use_J); }

bool row_before(const TriedWay& one, const TriedWay& other) {
  if (one.fails.any() != other.fails.any()) return other.fails.any();
  return cost_of(one) < cost_of(other);
}

/// What else passes for nearly the same.
void add_flatness(Search& search) {
  const TriedWay& best = search.tried[search.best];
  search.hold_low_degC = search.hold_high_degC = best.hold_degC;
  search.lead_low_h = search.lead_high_h = best.lead_h;
  for (const TriedWay& row : search.tried) {
    if (row.fails.any() != best.fails.any() || cost_of(row) > (1.0 + flat_share) * cost_of(best)) continue;
    search.hold_low_degC = std::min(search.hold_low_degC, row.hold_degC);
    search.hold_high_degC = std::max(search.hold_high_degC, row.hold_degC);
    search.lead_low_h = std::min(search.lead_low_h, row.lead_h);
    search.lead_high_h = std::max(search.lead_high_h, row.lead_h);
  }
}

}  // namespace

const WayResult* way_with_hold(const Winter& winter) {
  const auto found = std::find_if(winter.way.begin(), winter.way.end(), leans_on_hold);
  return found == winter.way.end() ? nullptr : &*found;
}

void add_holds(Winter& winter, const Scene& scene) {
  const WayResult* best = way_with_hold(winter);
  if (!best || scene.hold.floor_air_degC <= not_set_degC) return;
  winter.hold_way = best->way.name;
  for (const double more_K : holds_K) {
    if (scene.hold.floor_air_degC + more_K > scene.work_degC) break;
    const Settings settings{best->way, best->floor_lead_h, best->source_lead_h, more_K};
    const Tried one = tried(scene, settings);
    HoldCost row;
    row.air_degC = scene.hold.floor_air_degC + more_K;
    row.use_J = one.result.use_J;
    row.money = one.result.money;
    row.fails = one.result.fails;
    row.fails.frost_hold = (best->fails.frost_hold || best->hold_degC > scene.hold.floor_air_degC) &&
                           !keeps_frost_out(scene, case_of(scene, settings));
    row.sweating = sweating_of(scene, one.year);
    const bool dry = spring_wet_s(row.sweating) < dry_share * spring_s;
    if (dry && !winter.dry_hold_degC) winter.dry_hold_degC = row.air_degC;
    winter.hold.push_back(row);
  }
  if (winter.hold.size() < 3) return;
  const HoldCost& low = winter.hold.front();
  const HoldCost& high = winter.hold[2];
  const double span_K = high.air_degC - low.air_degC;
  winter.use_J_per_K = (high.use_J - low.use_J) / span_K;
  if (low.money && high.money) winter.money_per_K = (*high.money - *low.money) / span_K;
}

SearchGrid usual_grid() { return {{0.0, 1.0, 2.0, 4.0}, {0.0, 1.0, 2.0}, {0, 1, 2, 3, 4, 6, 8, 12}}; }

SearchGrid wide_grid() {
  return {{0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 7.0}, {0.0, 0.5, 1.0, 1.5, 2.0, 3.0}, {0, 1, 2, 3, 4, 5, 6, 8, 10, 12}};
}

void add_search(Winter& winter, const Scene& scene, const SearchGrid& grid, const Progress& progress) {
  const WayResult* best = way_to_search(winter);
  if (!best || scene.hold.floor_air_degC <= not_set_degC) return;
  Search search;
  search.way = best->way.name;
  std::size_t row = 0;
  for (const double hold_K : grid.hold_K) {
    for (const double source_K : grid.source_K) {
      Settings settings{best->way, best->floor_lead_h, 0, hold_K};
      settings.way.source_degC = best->way.source_degC.value_or(scene.work_degC) + source_K;
      for (const int lead_h : grid.lead_h) {
        settings.source_lead_h = lead_h;
        if (!source_starts_early(best->way) && lead_h > 0) continue;
        search.tried.push_back(tried_way(scene, settings));
        if (best->hold_degC > scene.hold.floor_air_degC)
          search.tried.back().fails.frost_hold = !keeps_frost_out(scene, case_of(scene, settings));
      }
    }
    tell(progress, static_cast<double>(++row) / static_cast<double>(grid.hold_K.size()));
  }
  for (std::size_t i = 1; i < search.tried.size(); ++i)
    if (row_before(search.tried[i], search.tried[search.best])) search.best = i;
  add_flatness(search);
  winter.search = std::move(search);
}

}  // namespace slabwright::winter
