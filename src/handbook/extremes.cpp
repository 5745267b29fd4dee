#include <cmath>
#include <numbers>

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

}  // namespace slabwright
