#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "slabwright/climate.hpp"
#include "slabwright/climate_statistics.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

double mean_of(const double* first, std::size_t count) {
  return std::accumulate(first, first + count, 0.0) / static_cast<double>(count);
}

/// Where each month begins in a series with `per_day` values a day, and where the year ends.
std::array<std::size_t, 13> month_starts(bool leap, std::size_t per_day) {
  std::array<std::size_t, 13> starts{};
  for (std::size_t month = 0; month < 12; ++month)
    starts[month + 1] =
        starts[month] + per_day * static_cast<std::size_t>(days_of_month(static_cast<int>(month) + 1, leap));
  return starts;
}

/// The mean of each month's values.
Monthly month_means(const std::vector<double>& values, const std::array<std::size_t, 13>& starts) {
  Monthly out{};
  for (std::size_t month = 0; month < 12; ++month)
    out[month] = mean_of(values.data() + starts[month], starts[month + 1] - starts[month]);
  return out;
}

template <class Of>
std::vector<double> by_day(const Hourly& hourly_degC, Of of) {
  is_leap_year(hourly_degC.size());
  std::vector<double> out;
  for (std::size_t at = 0; at < hourly_degC.size(); at += 24) out.push_back(of(hourly_degC.data() + at));
  return out;
}

double lack_K(const std::vector<double>& values_degC, double base_degC) {
  double sum = 0.0;
  for (const double value : values_degC) sum += std::max(0.0, base_degC - value);
  return sum;
}

}  // namespace

double year_mean_degC(const Hourly& hourly_degC) {
  is_leap_year(hourly_degC.size());
  return mean_of(hourly_degC.data(), hourly_degC.size());
}

Monthly month_means_degC(const Hourly& hourly_degC) {
  return month_means(hourly_degC, month_starts(is_leap_year(hourly_degC.size()), 24));
}

double half_swing_K(const Monthly& mean_degC) {
  const auto [low, high] = std::minmax_element(mean_degC.begin(), mean_degC.end());
  return (*high - *low) / 2.0;
}

std::size_t lowest_hour(const Hourly& hourly_degC) {
  is_leap_year(hourly_degC.size());
  return static_cast<std::size_t>(std::min_element(hourly_degC.begin(), hourly_degC.end()) - hourly_degC.begin());
}

double reached_degC(const Hourly& hourly_degC, double share) {
  is_leap_year(hourly_degC.size());
  expects(share >= 0.0 && share <= 1.0, "a share of the hours");
  Hourly sorted = hourly_degC;
  const auto colder = static_cast<std::size_t>((1.0 - share) * static_cast<double>(sorted.size()));
  const std::size_t at = std::min(colder, sorted.size() - 1);
  std::nth_element(sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(at), sorted.end());
  return sorted[at];
}

std::vector<double> day_means_degC(const Hourly& hourly_degC) {
  return by_day(hourly_degC, [](const double* day) { return mean_of(day, 24); });
}

std::vector<double> day_swings_K(const Hourly& hourly_degC) {
  return by_day(hourly_degC, [](const double* day) {
    const auto [low, high] = std::minmax_element(day, day + 24);
    return *high - *low;
  });
}

double degree_days_Kd(const Hourly& hourly_degC, double base_degC, DegreeDays way) {
  if (way == DegreeDays::day_mean) return lack_K(day_means_degC(hourly_degC), base_degC);
  if (way == DegreeDays::hourly) {
    is_leap_year(hourly_degC.size());
    return lack_K(hourly_degC, base_degC) / 24.0;
  }
  const auto middle = [](const double* day) {
    const auto [low, high] = std::minmax_element(day, day + 24);
    return (*high + *low) / 2.0;
  };
  return lack_K(by_day(hourly_degC, middle), base_degC);
}

double degree_days_of_normals_Kd(double base_degC, double mean_degC, double deviation_K, double days) {
  expects(deviation_K > 0.0 && days >= 0.0, "days with a spread");
  const double z = (base_degC - mean_degC) / deviation_K;
  const double below = 0.5 * std::erfc(-z / std::numbers::sqrt2);
  const double density = std::exp(-0.5 * z * z) / std::sqrt(2.0 * pi);
  return deviation_K * days * (z * below + density);
}

HoursBelow hours_below(const Hourly& hourly_degC, double limit_degC) {
  is_leap_year(hourly_degC.size());
  HoursBelow out;
  int run = 0;
  for (std::size_t hour = 0; hour < hourly_degC.size(); ++hour) {
    run = hourly_degC[hour] < limit_degC ? run + 1 : 0;
    if (run == 0) continue;
    ++out.hours;
    if (run == 1) ++out.runs;
    if (run <= out.longest) continue;
    out.longest = run;
    out.first_hour = hour + 1 - static_cast<std::size_t>(run);
  }
  return out;
}

ColdRun coldest_run(const Hourly& hourly_degC, int days) {
  is_leap_year(hourly_degC.size());
  expects(days >= 1 && days <= 365, "a run of 1 to 365 days");
  const std::size_t hours = static_cast<std::size_t>(days) * 24;
  // Differences of running sums from the first window's, so that no rounding of a long sum decides.
  double change = 0.0, best = 0.0;
  ColdRun run{0, hours, 0.0, 0.0};
  for (std::size_t first = 1; first + hours <= hourly_degC.size(); ++first) {
    change += hourly_degC[first + hours - 1] - hourly_degC[first - 1];
    if (change >= best) continue;
    best = change;
    run.first_hour = first;
  }
  const double* begin = hourly_degC.data() + run.first_hour;
  run.mean_degC = mean_of(begin, hours);
  run.lowest_degC = *std::min_element(begin, begin + hours);
  return run;
}

MonthlyNormals normals_of(const Hourly& hourly_degC) {
  const auto starts = month_starts(is_leap_year(hourly_degC.size()), 1);
  const std::vector<double> means = day_means_degC(hourly_degC);
  MonthlyNormals out;
  out.mean_degC = month_means(means, starts);
  out.swing_K = month_means(day_swings_K(hourly_degC), starts);
  for (std::size_t month = 0; month < 12; ++month) {
    double squares = 0.0;
    for (std::size_t day = starts[month]; day < starts[month + 1]; ++day)
      squares += (means[day] - out.mean_degC[month]) * (means[day] - out.mean_degC[month]);
    out.deviation_K[month] = std::sqrt(squares / static_cast<double>(starts[month + 1] - starts[month] - 1));
  }
  return out;
}

double day_persistence(const Hourly& hourly_degC) {
  const auto starts = month_starts(is_leap_year(hourly_degC.size()), 1);
  const std::vector<double> means = day_means_degC(hourly_degC);
  const Monthly month_mean = month_means(means, starts);
  double products = 0.0, squares = 0.0;
  for (const std::size_t month : {0u, 1u, 2u, 10u, 11u}) {
    const auto off = [&](std::size_t day) { return means[day] - month_mean[month]; };
    const double days = static_cast<double>(starts[month + 1] - starts[month]);
    for (std::size_t day = starts[month]; day < starts[month + 1]; ++day) {
      squares += off(day) * off(day) / days;
      if (day + 1 < starts[month + 1]) products += off(day) * off(day + 1) / (days - 1.0);
    }
  }
  return squares > 0.0 ? products / squares : 0.0;
}

Monthly usual_day_deviation_K(const Monthly& mean_degC) {
  const double year = mean_of(mean_degC.data(), 12);
  double squares = 0.0;
  for (const double mean : mean_degC) squares += (mean - year) * (mean - year) / 12.0;
  Monthly out{};
  for (std::size_t month = 0; month < 12; ++month) {
    const double days = days_of_month(static_cast<int>(month) + 1, false);
    out[month] = 0.534 * std::sqrt(days) * (1.45 - 0.0290 * mean_degC[month] + 0.0664 * std::sqrt(squares));
  }
  return out;
}

}  // namespace slabwright
