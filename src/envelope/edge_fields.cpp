// The memory of solved edges.
#include <cmath>

#include "envelope/field_key.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/units_exact.hpp"

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
/// Six days colder than the month, six warmer: spells that reach the 99.6 % hour last two to eight days.
constexpr double spell_s = 12.0 * day_s;

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
  const SwingResponses year = swing_responses(section, {}, common_year_s, swing_grid);
  heat.year_with_W_per_mK = heat.outdoor_W_per_mK * share_of(year.heat_in_with);
  heat.year_behind_W_per_mK = heat.outdoor_W_per_mK * share_of(year.heat_in_behind);
  const SwingResponses spell = swing_responses(section, {}, spell_s, swing_grid);
  heat.spell_W_per_mK =
      heat.outdoor_W_per_mK * std::hypot(share_of(spell.heat_in_with), share_of(spell.heat_in_behind));
  return heat;
}

/// Rows of heat by boundary, what is not the tube plane's put to its outermost piece. All is heat out, by one driver.
std::vector<double> by_piece(const FieldSection& section, const std::vector<std::vector<double>>& heat_in,
                             std::size_t pieces, std::size_t driver) {
  const std::size_t first = section.boundaries.size() - pieces;
  std::vector<double> out(pieces, 0.0);
  for (std::size_t piece = 0; piece < pieces; ++piece) out[piece] = heat_in[first + piece][driver];
  double all = 0.0;
  for (const double heat : out) all += heat;
  out.front() += heat_by_driver(section, heat_in)[edge_row::indoor][driver] - all;
  return out;
}

/// Turned to heat out, and made to add up to `whole`.
std::vector<double> adding_up_to(std::vector<double> heat, double whole) {
  double sum = 0.0;
  for (const double one : heat) sum += one;
  for (double& one : heat) one = sum != 0.0 ? one * whole / sum : 0.0;
  return heat;
}

/// The parts of two waves that are in step with their sum.
std::vector<double> in_step(const std::vector<double>& with, const std::vector<double>& behind) {
  double all_with = 0.0, all_behind = 0.0;
  for (std::size_t i = 0; i < with.size(); ++i) all_with += with[i], all_behind += behind[i];
  std::vector<double> parts;
  for (std::size_t i = 0; i < with.size(); ++i) parts.push_back(with[i] * all_with + behind[i] * all_behind);
  return parts;
}

std::vector<EdgeHeat> strips_of(const FieldSection& section, std::size_t pieces, const EdgeHeat& whole) {
  const auto steady = unit_responses(section, {}, swing_grid).heat_in;
  const SwingResponses year = swing_responses(section, {}, common_year_s, swing_grid);
  const SwingResponses spell = swing_responses(section, {}, spell_s, swing_grid);
  const auto of = [&](const auto& heat_in, std::size_t driver) { return by_piece(section, heat_in, pieces, driver); };
  const std::vector<double> outdoor = adding_up_to(of(steady, edge_row::outdoor), whole.outdoor_W_per_mK);
  const std::vector<double> ground = adding_up_to(of(steady, edge_row::ground), whole.ground_W_per_mK);
  const std::vector<double> with = adding_up_to(of(year.heat_in_with, edge_row::outdoor), whole.year_with_W_per_mK);
  const std::vector<double> behind =
      adding_up_to(of(year.heat_in_behind, edge_row::outdoor), whole.year_behind_W_per_mK);
  const std::vector<double> cold =
      adding_up_to(in_step(of(spell.heat_in_with, edge_row::outdoor), of(spell.heat_in_behind, edge_row::outdoor)),
                   whole.spell_W_per_mK);
  std::vector<EdgeHeat> strips;
  for (std::size_t i = 0; i < pieces; ++i) strips.push_back({outdoor[i], ground[i], with[i], behind[i], cold[i]});
  return strips;
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

std::vector<EdgeHeat> EdgeFields::heat_down(const EdgeDetail& detail, const std::vector<double>& cut_in_m) {
  const FieldSection section = held_edge_section(detail, cut_in_m);
  return remembered(strips_, envelope::key_of(section, {}, swing_grid),
                    [&] { return strips_of(section, cut_in_m.size() + 1, heat_down(detail)); });
}

}  // namespace slabwright
