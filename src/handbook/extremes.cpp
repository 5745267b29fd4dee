#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_extremes.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {

double n_year_factor(double years) {
  expects(years > 1.0, "a return period is longer than one year");
  return -std::sqrt(6.0) / pi * (0.5772 + std::log(std::log(years / (years - 1.0))));
}

double n_year_minimum_degC(double mean_degC, double deviation_K, double years) {
  return mean_degC - n_year_factor(years) * deviation_K;
}

std::array<double, 10> ten_minima_degC(double coldest_degC, double years, double deviation_K) {
  expects(deviation_K >= 0.0, "a spread is not negative");
  constexpr double shift = 0.44, winters = 10.0;
  const double mean_degC = coldest_degC + n_year_factor(years) * deviation_K;
  std::array<double, 10> out{};
  out.front() = coldest_degC;
  for (std::size_t at = 1; at < out.size(); ++at) {
    const double rank = static_cast<double>(at + 1), returns_in_years = (winters + 1.0 - 2.0 * shift) / (rank - shift);
    out[at] = std::max(coldest_degC, n_year_minimum_degC(mean_degC, deviation_K, returns_in_years));
  }
  return out;
}

}  // namespace slabwright
