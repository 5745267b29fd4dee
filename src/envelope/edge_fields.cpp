// The memory of solved edges.
#include <cmath>

#include "envelope/field_key.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/envelope.hpp"

namespace slabwright {
namespace {

/// For heat alone, with a second solve on every second line. Lines that halve take off three quarters of the error of a
/// smooth field: a third of the difference is what is left, and it is taken off too. Measured against cells of 1 mm:
/// within 0.15 %.
constexpr FieldOptions heat_grid{0.01, 1.4, 1.0, true};
constexpr double error_left_share = 1.0 / 3.0;
/// Share and lag of a yearly swing are ratios, in which most of a grid's error falls out: within 0.005 and a day.
constexpr FieldOptions swing_grid{0.04, 1.5, 2.0, true};
/// States keep steady answers exactly; what an hour and more does moves by less than 0.001 beside a grid of half the
/// cells, at half the cost. The coarse one is for differences.
constexpr FieldOptions states_grid{0.02, 1.5, 1.0, false}, coarse_states_grid{0.04, 1.7, 1.0, false};
constexpr double year_s = 365.0 * 86400.0;
/// Six days colder than the month, six warmer: spells that reach the 99.6 % hour last two to eight days.
constexpr double spell_s = 12.0 * 86400.0;

struct Steady {
  double all_W_per_mK;  ///< corrected
  double outdoor_share;
  double outdoor_on_grid_W_per_mK;  ///< as the grid has it
};

Steady steady_heat(const FieldSection& section, const FieldOptions& grid) {
  const UnitResponses found = by_driver(section, unit_responses(section, {}, grid));
  const double on_grid = found.heat_in[edge_row::indoor][edge_row::indoor];
  const double outdoor_on_grid = -found.heat_in[edge_row::outdoor][edge_row::indoor];
  const double error = found.heat_in_errors[edge_row::indoor][edge_row::indoor];
  return {on_grid - error_left_share * error, outdoor_on_grid / on_grid, outdoor_on_grid};
}

EdgeHeat heat_of(const FieldSection& section, bool differences_only) {
  const Steady coarse = steady_heat(section, swing_grid);
  const Steady steady = differences_only ? coarse : steady_heat(section, heat_grid);
  EdgeHeat heat;
  heat.outdoor_W_per_mK = steady.all_W_per_mK * steady.outdoor_share;
  heat.ground_W_per_mK = steady.all_W_per_mK - heat.outdoor_W_per_mK;
  // What the plane must give more when the air is a kelvin colder, as a share of what it gives in steady cold.
  const auto share_of = [&](const std::vector<std::vector<double>>& heat_in) {
    return -heat_by_driver(section, heat_in)[edge_row::indoor][edge_row::outdoor] / coarse.outdoor_on_grid_W_per_mK;
  };
  const SwingResponses year = swing_responses(section, {}, year_s, swing_grid);
  heat.year_with_W_per_mK = heat.outdoor_W_per_mK * share_of(year.heat_in_with);
  heat.year_behind_W_per_mK = heat.outdoor_W_per_mK * share_of(year.heat_in_behind);
  const SwingResponses spell = swing_responses(section, {}, spell_s, swing_grid);
  heat.spell_W_per_mK =
      heat.outdoor_W_per_mK * std::hypot(share_of(spell.heat_in_with), share_of(spell.heat_in_behind));
  return heat;
}

std::vector<FieldPoint> points_of(const EdgeDetail& detail, const std::vector<EdgePoint>& points) {
  std::vector<FieldPoint> found;
  for (const EdgePoint& point : points) found.push_back(point_of(detail, point));
  return found;
}

/// What was solved before under this key, or what `solve` makes of it now.
template <class Solved, class Solve>
const Solved& remembered(std::map<std::vector<double>, Solved>& memory, std::vector<double> key, Solve solve) {
  const auto found = memory.find(key);
  if (found != memory.end()) return found->second;
  return memory.emplace(std::move(key), solve()).first->second;
}

}  // namespace

UnitResponses EdgeFields::responses(const EdgeDetail& detail, const std::vector<EdgePoint>& points) {
  const std::vector<FieldPoint> watched = points_of(detail, points);
  const FieldSection section = edge_section(detail);
  return remembered(solved_, envelope::key_of(section, watched, options_),
                    [&] { return by_driver(section, unit_responses(section, watched, options_)); });
}

FewStates EdgeFields::states(const EdgeDetail& detail, const std::vector<EdgePoint>& points) {
  const std::vector<FieldPoint> watched = points_of(detail, points);
  const FieldSection section = edge_section(detail);
  return remembered(states_, envelope::key_of(section, watched, options_), [&] {
    StatesOptions options;
    options.grid = options_;
    options.grid_in_time = options_.first_cell_m > heat_grid.first_cell_m ? coarse_states_grid : states_grid;
    options.constant = {FieldDriverId{edge_row::ground}};
    return by_driver(section, few_states(section, watched, options));
  });
}

EdgeHeat EdgeFields::heat_down(const EdgeDetail& detail) {
  const FieldSection section = held_edge_section(detail);
  const bool differences_only = options_.first_cell_m > heat_grid.first_cell_m;
  return remembered(heat_, envelope::key_of(section, {}, heat_grid),
                    [&] { return heat_of(section, differences_only); });
}

}  // namespace slabwright
