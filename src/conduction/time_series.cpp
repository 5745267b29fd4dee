#include "conduction/time_series.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

void expect_fits(const DriverValues& row, std::size_t drivers) {
  const bool finite = std::all_of(row.begin(), row.end(), [](double number) { return std::isfinite(number); });
  expects(row.size() == drivers && finite, "conduction: a row needs a finite number for each driver");
}

}  // namespace

void expect_sound(const DriverSeries& series, const PeriodicDrivers& before, std::size_t drivers) {
  expects(!series.times_s.empty() && series.drivers.size() == series.times_s.size(),
          "conduction: a series needs a row for each of its times");
  for (const DriverValues& row : series.drivers) expect_fits(row, drivers);
  for (std::size_t row = 1; row < series.times_s.size(); ++row)
    expects(series.times_s[row] >= series.times_s[row - 1], "conduction: times of a series must not fall");
  for (const DriverValues* row : {&before.mean, &before.cosine, &before.sine}) expect_fits(*row, drivers);
  expects(std::isfinite(before.period_s) && before.period_s > 0.0, "conduction: a period must be above 0");
}

Eigen::VectorXd row_of(const DriverSeries& series, std::size_t row) {
  const DriverValues& values = series.drivers[row];
  return Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

}  // namespace slabwright::conduction
