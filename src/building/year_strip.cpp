#include "building/year_strip.hpp"

#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::building {
namespace {

/// A row over few_states' drivers, folded onto what drives a strip. The air near a door lies between the two.
Straight folded(const FloorStrip& strip, const std::vector<double>& row, double ground_degC) {
  Straight straight{row[edge_row::indoor], row[edge_row::outdoor], row[edge_row::ground] * ground_degC,
                    row[edge_row::tube_heat]};
  if (!strip.near_air_share) return straight;
  straight.per_over += (1.0 - *strip.near_air_share) * row[edge_row::near_air];
  straight.per_outdoor += *strip.near_air_share * row[edge_row::near_air];
  return straight;
}

Straight sum_of(const Straight& a, const Straight& b) {
  return {a.per_over + b.per_over, a.per_outdoor + b.per_outdoor, a.fixed + b.fixed, a.per_tube + b.per_tube};
}

/// Output rows added up, states and drivers.
struct Rows {
  std::vector<double> of_states, of_drivers;
};
Rows added(const FewStates& states, const std::vector<std::size_t>& outputs) {
  Rows rows{std::vector<double>(states.decay_per_s.size(), 0.0),
            std::vector<double>(states.direct.front().size(), 0.0)};
  for (const std::size_t output : outputs) {
    for (std::size_t k = 0; k < rows.of_states.size(); ++k) rows.of_states[k] += states.output[output][k];
    for (std::size_t i = 0; i < rows.of_drivers.size(); ++i) rows.of_drivers[i] += states.direct[output][i];
  }
  return rows;
}

std::vector<double> over_decay(const FewStates& states, std::vector<double> row) {
  for (std::size_t k = 0; k < row.size(); ++k) row[k] /= states.decay_per_s[k];
  return row;
}

/// At rest each state is its input.
Straight at_rest(const FloorStrip& strip, const Rows& rows, double ground_degC) {
  Straight rest = folded(strip, rows.of_drivers, ground_degC);
  for (std::size_t k = 0; k < rows.of_states.size(); ++k) {
    const Straight input = folded(strip, strip.states.input[k], ground_degC);
    const double c = rows.of_states[k];
    rest = sum_of(rest, {c * input.per_over, c * input.per_outdoor, c * input.fixed, c * input.per_tube});
  }
  return rest;
}

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

StripStep step_of(const FloorStrip& strip, const YearStrip& year, double dt_s, double ground_degC) {
  const StatesStep exact = states_step(strip.states, dt_s);
  StripStep step;
  step.dt_s = dt_s;
  step.keep = exact.keep_share;
  for (std::size_t k = 0; k < year.states; ++k) {
    const Straight input = folded(strip, strip.states.input[k], ground_degC);
    const double start = exact.start_share[k], end = exact.end_share[k];
    step.over_start.push_back(start * input.per_over);
    step.over_end.push_back(end * input.per_over);
    step.outdoor_start.push_back(start * input.per_outdoor);
    step.outdoor_end.push_back(end * input.per_outdoor);
    step.fixed.push_back((start + end) * input.fixed);
    step.tube.push_back((start + end) * input.per_tube);
  }
  for (std::size_t which = 0; which < year.sum.size(); ++which) {
    step.per_over[which] = dot(year.sum[which], step.over_end);
    step.per_tube[which] = dot(year.sum[which], step.tube);
  }
  const std::vector<double> plane(year.watched.begin(),
                                  year.watched.begin() + static_cast<std::ptrdiff_t>(year.states));
  step.plane_per_over = year.straight[0].per_over + dot(plane, step.over_end);
  step.plane_per_tube = year.straight[0].per_tube + dot(plane, step.tube);
  return step;
}

}  // namespace

DriverValues drivers_of(const FloorStrip& strip, const Pulls& pulls, double ground_degC, double tube_W_per_m2) {
  DriverValues drivers{pulls.over_degC, pulls.outdoor_degC, ground_degC, tube_W_per_m2};
  if (strip.near_air_share)
    drivers.push_back(pulls.over_degC + *strip.near_air_share * (pulls.outdoor_degC - pulls.over_degC));
  return drivers;
}

YearStrip year_strip(const FloorStrip& strip, std::size_t room, double ground_degC) {
  const FewStates& states = strip.states;
  const std::size_t first = states.points;
  expects(states.output.size() == states.direct.size() && first < states.direct.size(), "year: no heat by driver");
  YearStrip year;
  year.room = room;
  year.length_m = strip.length_m;
  year.width_m = strip.width_m;
  year.tubes_m = strip.tubes_m;
  year.states = states.decay_per_s.size();
  std::vector<std::size_t> in{first + edge_row::indoor}, all;
  if (strip.near_air_share) in.push_back(first + edge_row::near_air_heat);
  for (std::size_t output = first; output < states.direct.size(); ++output) all.push_back(output);
  const Rows entering_rows = added(states, in);
  const Rows leaving = added(states, {first + edge_row::outdoor, first + edge_row::ground});
  year.sum = {entering_rows.of_states, over_decay(states, entering_rows.of_states),
              over_decay(states, leaving.of_states)};
  year.into_floor = folded(strip, entering_rows.of_drivers, ground_degC);
  year.steady_in = at_rest(strip, entering_rows, ground_degC);
  year.steady_out = at_rest(strip, leaving, ground_degC);
  // What enters is what the store takes up, so that of the states in all sums is what they lag behind.
  year.store = over_decay(states, added(states, all).of_states);
  for (double& store : year.store) store = -store;
  year.points = states.points;
  for (std::size_t point = 0; point < year.points; ++point) {
    year.watched.insert(year.watched.end(), states.output[point].begin(), states.output[point].end());
    year.straight.push_back(folded(strip, states.direct[point], ground_degC));
  }
  for (const double dt_s : {hour_s, 900.0}) year.step[dt_s < hour_s] = step_of(strip, year, dt_s, ground_degC);
  return year;
}

}  // namespace slabwright::building
