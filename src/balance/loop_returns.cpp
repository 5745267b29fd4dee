#include "balance/loop_returns.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace slabwright {
namespace {

// Speeds of the pump, over its own: loops from a fifth of their flow to a third more.
constexpr std::array<double, 8> speeds = {0.2, 0.3, 0.4, 0.5, 0.62, 0.78, 1.0, 1.35};
// The balance of floor and ground hardly sees either of these.
constexpr double usual_film_W_per_m2K = 9.5, usual_water_film_mK_per_W = 0.02;
// A loop that drops this near to rest says no more about its conductance.
constexpr double most_share_of_rest = 0.98;

/// Where the loop's water would come to rest, room by room as its tube lies.
double rest_degC(const Plant& plant, const Conditions& conditions, const Loop& loop, double supply_degC) {
  const Section& section = plant.floor->section;
  const SectionResponse r = respond(section, usual_film_W_per_m2K, section.wall_mK_per_W + usual_water_film_mK_per_W);
  const double both = r.room_W_per_m_K + r.below_W_per_m_K;
  double sum = 0.0, metres = 0.0;
  for (const Stretch& s : loop.along) {
    const double rest =
        (r.room_W_per_m_K * conditions.room_degC[s.room] + r.below_W_per_m_K * section.below_degC) / both;
    sum += heating_m(s) * rest;
    metres += heating_m(s);
  }
  return metres > 0.0 ? sum / metres : supply_degC;
}

}  // namespace

LoopReturns::LoopReturns(const Plant& plant, const Conditions& conditions, double supply_degC)
    : supply_degC_(supply_degC), point_(operate(plant, conditions, supply_degC)) {
  const std::size_t loops = plant.loops.loop.size();
  for (const Loop& loop : plant.loops.loop)
    most_drop_K_.push_back(supply_degC - rest_degC(plant, conditions, loop, supply_degC));
  std::vector<std::vector<TablePoint>> rows(loops);
  for (const double speed : speeds) {
    const Plant at = with_settings(plant, plant.turns, speed * plant.pump_speed_share);
    const OperatingPoint point = speed == 1.0 ? point_ : operate(at, conditions, supply_degC, &point_);
    for (std::size_t i = 0; i < loops; ++i) {
      const double flow = point.loop[i].flow_m3_per_s;
      const double share = most_drop_K_[i] == 0.0 ? 0.0 : (supply_degC - point.loop[i].return_degC) / most_drop_K_[i];
      const double fallen = std::clamp(share, 0.0, most_share_of_rest);
      if (rows[i].empty() || flow > rows[i].back().at) rows[i].push_back({flow, -flow * std::log1p(-fallen)});
    }
  }
  for (std::vector<TablePoint>& row : rows) {
    // Two rows make a table, also of a loop that stands still at every speed.
    while (row.size() < 2) row.push_back({row.empty() ? 0.0 : row.back().at + 1.0, row.empty() ? 0.0 : row[0].value});
    table_.emplace_back(row);
  }
}

double LoopReturns::drop_K(std::size_t loop, double flow_m3_per_s, double length_share) const {
  const double conductance = table_[loop].at(flow_m3_per_s).value * length_share;
  if (flow_m3_per_s <= 0.0) return most_drop_K_[loop];
  return most_drop_K_[loop] * -std::expm1(-conductance / flow_m3_per_s);
}

}  // namespace slabwright
