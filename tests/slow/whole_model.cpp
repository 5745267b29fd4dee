#include "slow/whole_model.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <variant>

#include "slabwright/contract.hpp"

namespace slabwright::test {
namespace {

/// Its rise where a stretch meets the air, or nothing.
std::optional<double> air_rise_share(const WholeEdge& edge, const BoundaryStretch& stretch) {
  for (const AirOver& air : edge.air) {
    if (const auto* film = std::get_if<SurfaceFilm>(&stretch.condition)) {
      if (film->driver == air.driver) return air.rise_share;
      continue;
    }
    const auto& fixed = std::get<FixedTemperature>(stretch.condition);
    expects(!(fixed.at_from == air.driver) && !(fixed.at_to == air.driver), "whole model: a fixed surface at the air");
  }
  return std::nullopt;
}

/// What all films to the air pass per kelvin of the zone's air.
double film_W_per_K(const std::vector<WholeEdge>& edges) {
  double sum = 0.0;
  for (const WholeEdge& edge : edges)
    for (const BoundaryStretch& stretch : edge.section.boundaries)
      if (const auto rise_share = air_rise_share(edge, stretch))
        sum += *rise_share * edge.length_m * std::get<SurfaceFilm>(stretch.condition).coefficient_W_per_m2K *
               std::hypot(stretch.where.to.x_m - stretch.where.from.x_m, stretch.where.to.y_m - stretch.where.from.y_m);
  return sum;
}

void expects_fit(const WholeBuilding& building, const WholeOptions& options) {
  const std::size_t times = building.times_s.size();
  expects(times > 0 && building.outdoor_degC.size() == times && building.gain_W.size() == times,
          "whole model: a row for each time");
  expects(options.air_guess_degC.empty() || options.air_guess_degC.size() == times, "whole model: a guess for each");
  expects(building.capacity_J_per_K > 0.0, "whole model: air and contents must store heat");
  for (const WholeEdge& edge : building.edges) {
    expects(edge.drivers.size() == times && edge.length_m > 0.0, "whole model: an edge has drivers and length");
    for (const AirOver& air : edge.air)
      expects(air.driver.at < edge.section.drivers.size(), "whole model: no such driver");
    for (const DriverValues& row : edge.drivers)
      expects(row.size() == edge.section.drivers.size(), "whole model: a value for each driver");
  }
}

FieldRun run_under(const WholeEdge& edge, const WholeBuilding& building, const std::vector<double>& air_degC,
                   const TimeOptions& options) {
  DriverSeries series{building.times_s, edge.drivers};
  for (std::size_t i = 0; i < air_degC.size(); ++i)
    for (const AirOver& air : edge.air)
      series.drivers[i][air.driver.at] =
          building.outdoor_degC[i] + air.rise_share * (air_degC[i] - building.outdoor_degC[i]);
  return field_run(edge.section, edge.watched, edge.before, series, options);
}

void add_up_W(std::vector<double>& up_W, const WholeEdge& edge, const FieldRun& run) {
  for (std::size_t b = 0; b < edge.section.boundaries.size(); ++b)
    if (air_rise_share(edge, edge.section.boundaries[b]))
      for (std::size_t i = 0; i < up_W.size(); ++i) up_W[i] -= edge.length_m * run.heat_in_W_per_m[i][b];
}

/// The air balanced against heat from fields that ran under `guess`: where it comes out warmer, films give less.
std::vector<double> balanced_air(const WholeBuilding& building, const std::vector<double>& up_W,
                                 const std::vector<double>& guess_degC) {
  const double film = film_W_per_K(building.edges), follows_W_per_K = film + building.loss_W_per_K;
  // Heat into the air, were it at 0.
  const auto free_W = [&](std::size_t i) {
    return up_W[i] + film * guess_degC[i] + building.gain_W[i] + building.loss_W_per_K * building.outdoor_degC[i];
  };
  std::vector<double> air_degC{building.start_degC};
  for (std::size_t i = 1; i < building.times_s.size(); ++i) {
    const double half_s = 0.5 * (building.times_s[i] - building.times_s[i - 1]);
    const double before_J = building.capacity_J_per_K * air_degC.back() +
                            half_s * (free_W(i - 1) + free_W(i) - follows_W_per_K * air_degC.back());
    air_degC.push_back(before_J / (building.capacity_J_per_K + half_s * follows_W_per_K));
  }
  return air_degC;
}

double largest_move_K(const std::vector<double>& from, const std::vector<double>& to) {
  double largest = 0.0;
  for (std::size_t i = 0; i < from.size(); ++i) largest = std::max(largest, std::abs(to[i] - from[i]));
  return largest;
}

}  // namespace

WholeRun whole_run(const WholeBuilding& building, const WholeOptions& options) {
  expects_fit(building, options);
  const std::size_t times = building.times_s.size();
  std::vector<double> next =
      options.air_guess_degC.empty() ? std::vector<double>(times, building.start_degC) : options.air_guess_degC;
  WholeRun run;
  do {
    run.air_degC = next;
    run.up_W.assign(times, 0.0);
    run.edges.clear();
    for (const WholeEdge& edge : building.edges) {
      run.edges.push_back(run_under(edge, building, run.air_degC, options.fields));
      add_up_W(run.up_W, edge, run.edges.back());
    }
    next = balanced_air(building, run.up_W, run.air_degC);
    run.moved_K = largest_move_K(run.air_degC, next);
  } while (++run.rounds < options.most_rounds && run.moved_K > options.air_K);
  return run;
}

}  // namespace slabwright::test
