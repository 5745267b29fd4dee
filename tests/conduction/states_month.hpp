// A month of weather on the edge of a floor, by few states and by the whole field in small steps.
#pragma once
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "published/ground/edge_in_time.hpp"
#include "slabwright/conduction_states.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::test {

struct Weather {
  std::vector<double> hourly_degC;     ///< of the month
  double mean_degC, cosine_K, sine_K;  ///< the year's wave at its period of 8760 h, time 0 at the year's first hour
  double first_hour;                   ///< of the month in the year
};

struct MonthErrors {
  double worst_K = 0.0;     ///< at any watched point, any hour
  double heat_share = 0.0;  ///< of the month's heat from the room
  std::size_t states = 0;
};

inline std::vector<FieldPoint> edge_points(const std::string& detail) {
  std::vector<FieldPoint> points{edge_point(detail, 0.0, 0.0),
                                 edge_point(detail, 0.005, 0.0),
                                 edge_point(detail, 0.15, 0.075),
                                 edge_point(detail, 0.30, 0.075),
                                 {0.0, -0.075}};
  if (detail == "wall_under_edge") points.push_back({6.0, -0.15});
  return points;
}

/// Room at 10 degC, ground at 8; tubes at 40 W/m2 for the more hours of a day the colder it is. Outdoors straight from
/// hour to hour, tubes on and off on the hour.
inline MonthErrors month_errors(const std::string& detail, const Weather& weather, const StatesOptions& states_options,
                                const TimeOptions& time_options) {
  const double room_degC = 10.0, ground_degC = 8.0, on_W_per_m2 = 40.0;
  DriverSeries series;
  for (std::size_t hour = 0; hour + 1 < weather.hourly_degC.size(); ++hour) {
    const double hours_on = std::clamp((10.0 - weather.hourly_degC[hour]) * 0.5, 0.0, 24.0);
    const double heat = static_cast<double>(hour % 24) < hours_on ? on_W_per_m2 : 0.0;
    for (const std::size_t end : {hour, hour + 1}) {
      series.times_s.push_back((weather.first_hour + static_cast<double>(end)) * hour_s);
      series.drivers.push_back({room_degC, weather.hourly_degC[end], ground_degC, heat});
    }
  }
  const PeriodicDrivers before{8760.0 * hour_s,
                               {room_degC, weather.mean_degC, ground_degC, 5.0},
                               {0.0, weather.cosine_K, 0.0, 0.0},
                               {0.0, weather.sine_K, 0.0, 0.0}};
  const FieldSection section = edge_in_time(detail);
  const std::vector<FieldPoint> points = edge_points(detail);
  const FewStates states = few_states(section, points, states_options);
  const FieldRun run = field_run(section, points, before, series, time_options);
  StateValues state = swinging_state(states, before, series.times_s[0]);
  MonthErrors errors;
  errors.states = states.decay_per_s.size();
  double heat = 0.0, heat_apart = 0.0;
  for (std::size_t row = 0; row < series.times_s.size(); ++row) {
    if (row > 0)
      state = after_straight(states, state, series.drivers[row - 1], series.drivers[row],
                             series.times_s[row] - series.times_s[row - 1]);
    const std::vector<double> values = watched_values(states, state, series.drivers[row]);
    heat += run.heat_in_W_per_m[row][edge_driver::indoor.at];
    heat_apart += values[points.size()] - run.heat_in_W_per_m[row][edge_driver::indoor.at];
    if (row % 2 == 0) continue;  // at the jump itself: judged an hour after it
    for (std::size_t point = 0; point < points.size(); ++point)
      errors.worst_K = std::max(errors.worst_K, std::abs(values[point] - run.temperatures_degC[row][point]));
  }
  errors.heat_share = std::abs(heat_apart / heat);
  return errors;
}

}  // namespace slabwright::test
