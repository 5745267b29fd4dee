// How cold it gets once in n years, from the mean and the spread of yearly minima.
#pragma once
#include <array>

namespace slabwright {

/// F = -(sqrt 6 / pi) (0.5772 + ln ln(n/(n-1))) of the extreme-value law, ASHRAE Fundamentals, climate chapter
/// (formula from memory, its values computed). `years` above 1.
double n_year_factor(double years);

/// The minimum reached once in `years` years: mean - F s of the yearly minima.
double n_year_minimum_degC(double mean_degC, double deviation_K, double years);

/// The lowest hours of ten winters, coldest first, where one of them is the n-year minimum: the others stand where the
/// second to tenth of ten years do on the mean by the same law (return period 10.12 / (rank - 0.44), Gringorten 1963,
/// from memory), and none is below it. `years` above 1, deviation not negative.
std::array<double, 10> ten_minima_degC(double n_year_minimum_degC, double years, double deviation_K);

}  // namespace slabwright
