// How cold it gets once in n years, from the mean and the spread of yearly minima.
#pragma once

namespace slabwright {

/// F = -(sqrt 6 / pi) (0.5772 + ln ln(n/(n-1))) of the extreme-value law, ASHRAE Fundamentals, climate chapter
/// (formula from memory, its values computed). `years` above 1.
double n_year_factor(double years);

/// The minimum reached once in `years` years: mean - F s of the yearly minima.
double n_year_minimum_degC(double mean_degC, double deviation_K, double years);

}  // namespace slabwright
