#include "slabwright/answer_sums.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/answer.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

ManifoldSum manifold_sum(const Answer& answer, std::size_t row) {
  const Manifold& manifold = answer.file.design.manifold[row];
  ManifoldSum sum;
  sum.name = manifold.name;
  for (std::size_t i = 0; i < answer.loops->loop.size(); ++i) {
    if (answer.loops->loop[i].manifold != row) continue;
    ++sum.loops;
    sum.tube_m += answer.loops->loop[i].length_m;
    if (answer.point) sum.flow_m3_per_s += answer.point->loop[i].flow_m3_per_s;
  }
  sum.ports = static_cast<int>(manifold.ports_number.value_or(sum.loops + 1.0));
  sum.spare = std::max(0, sum.ports - sum.loops);
  return sum;
}

LoopSum loop_sum(const Answer& answer, std::size_t row) {
  const Loop& loop = answer.loops->loop[row];
  LoopSum sum;
  sum.loop = loop.name;
  for (const Stretch& stretch : loop.along) sum.leader_m += stretch.leader ? stretch.length_m : 0.0;
  sum.heating_m = loop.length_m - sum.leader_m;
  if (answer.point) sum.drop_K = answer.point->supply_degC - answer.point->loop[row].return_degC;
  return sum;
}

/// Of the same winter, against the way it was run before.
void add_saved(WaySum& sum, const WayResult& way, const WayResult& before) {
  sum.saved_J = before.use_J - way.use_J;
  if (before.money && way.money) sum.saved_money = *before.money - *way.money;
  const double all = before.money && way.money ? *before.money : before.use_J;
  if (all > 0.0) sum.saved_share = sum.saved_money.value_or(*sum.saved_J) / all;
}

WaySum way_sum(const WayResult& way) {
  WaySum sum;
  sum.way = way.way.name;
  for (const WayMonth& month : way.month) {
    sum.boiler_J += month.boiler_J;
    sum.source_J += month.source_J;
    sum.pump_J += month.pump_J;
    sum.floor_heat_J += month.floor_heat_J;
    sum.source_heat_J += month.source_heat_J;
  }
  if (sum.source_heat_J > 0.0 && sum.source_J > 0.0) sum.source_cop_number = sum.source_heat_J / sum.source_J;
  const Comfort& comfort = way.comfort;
  if (comfort.worked_s > 0.0) sum.warm_share = 1.0 - comfort.cold_s / comfort.worked_s;
  for (const double s : way.sweating.wet_s) sum.wet_s += s;
  for (const std::size_t month : {2U, 3U, 4U}) sum.spring_wet_s += way.sweating.wet_s[month];
  for (const PlaceInWinter& place : way.place) {
    const double spare_K = place.coldest_degC - place.limit_degC;
    if (!place.decides || (sum.spare_K && *sum.spare_K <= spare_K)) continue;
    sum.spare_K = spare_K;
    sum.nearest = place.name;
  }
  return sum;
}

void add_heat(AnswerSums& sums, const Answer& answer) {
  if (answer.envelope)
    for (const RoomLoss& room : answer.envelope->room) sums.wanted_W += room.wanted_W;
  if (!answer.point) return;
  sums.drop_K = answer.point->supply_degC - answer.point->return_degC;
  if (sums.wanted_W > 0.0) sums.more_share = answer.point->up_W / sums.wanted_W - 1.0;
}

}  // namespace

std::optional<AnswerSums> sums_of(const Answer& answer) {
  if (!answer.loops) return std::nullopt;
  AnswerSums sums;
  add_heat(sums, answer);
  if (answer.sizes) {
    double longest_s = 0.0;
    for (const Purge& purge : answer.sizes->purge) longest_s = std::max(longest_s, purge.for_s);
    sums.purge_s = minute_s * std::ceil(longest_s / minute_s);
  }
  for (std::size_t i = 0; i < answer.file.design.manifold.size(); ++i) sums.manifold.push_back(manifold_sum(answer, i));
  for (std::size_t i = 0; i < answer.loops->loop.size(); ++i) sums.loop.push_back(loop_sum(answer, i));
  if (!answer.winter) return sums;
  const auto& ways = answer.winter->way;
  const auto before = std::find_if(ways.begin(), ways.end(), [](const WayResult& way) { return way.way.last_winter; });
  for (const WayResult& way : ways) {
    sums.way.push_back(way_sum(way));
    if (before != ways.end() && &way != &*before) add_saved(sums.way.back(), way, *before);
  }
  return sums;
}

}  // namespace slabwright
