// What an owner chooses between: how the floor is set, what is insulated, whether a second source runs.
#include <algorithm>

#include "answer/pass.hpp"

namespace slabwright {
namespace {

/// The shop as it is, a board along the edge, foam under the slab: each better than what is there, where it can be.
std::vector<Candidate> insulations(const Design& design) {
  const System system = design.units;
  const std::string board = insulation_text(system), thick = thick_insulation_text(system);
  const double edge_m2K_per_W = design.edge.insulation.resistance_m2K_per_W;
  constexpr double board_m2K_per_W = 1.0, thick_m2K_per_W = 3.4;
  std::vector<Candidate> all{{"as it is", false, {}}};
  if (edge_m2K_per_W < thick_m2K_per_W) {
    const std::string text = edge_m2K_per_W < board_m2K_per_W ? board : thick;
    all.push_back({text + " board outside along the slab's edge", false, {{"edge.insulation", text}}});
  }
  if (design.insulation.under.resistance_m2K_per_W < thick_m2K_per_W)
    all.push_back({thick + " foam under the slab", true, {{"insulation.under", thick}}});
  return all;
}

/// The lowest setting, the working temperature and a mark half way between.
std::vector<double> owner_settings_degC(const Answer& answer) {
  const double low_degC = answer.freeze->air->dial_degC, high_degC = answer.file.design.climate.indoor_degC;
  const double middle_degC = dial_mark_degC(0.5 * (low_degC + high_degC), answer.file.design.units);
  std::vector<double> settings{low_degC};
  for (const double degC : {middle_degC, high_degC})
    if (degC > settings.back()) settings.push_back(degC);
  return settings;
}

/// As the best of the ways that start it early.
int source_lead_h_of(const Winter& winter) {
  for (const WayResult& result : winter.way)
    if (result.way.second_source == WaySource::in_working_hours) return result.source_lead_h;
  return 0;
}

}  // namespace

void add_owner_costs(Answer& answer, const WeatherYear* weather) {
  if (!answer.winter || !answer.winter->series || !answer.freeze || !answer.freeze->air) return;
  const OwnerAsked asked{owner_settings_degC(answer), source_lead_h_of(*answer.winter)};
  for (const Candidate& insulation : insulations(answer.file.design)) {
    const auto file = with_all(answer.file, insulation.settings);
    if (!file) continue;
    Passing passing{EdgeFields(coarse_edges()), weather};
    passing.draws = false;
    passing.runs_winter = true;
    Answer other = pass(*file, Question::winter, passing, Reach::no_frost_hold);
    // Thermostats stay as they are, so that only the insulation differs.
    other.freeze = answer.freeze;
    for (OwnerCost& cost : owner_costs_of(other, passing, asked)) {
      cost.insulation = insulation.what;
      cost.before_pour = insulation.before_pour;
      answer.winter->series->owner.push_back(std::move(cost));
    }
  }
}

}  // namespace slabwright
