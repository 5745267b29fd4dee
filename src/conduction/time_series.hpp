// Rows of drivers in time, and what must hold of them.
#pragma once
#include <Eigen/Dense>
#include <cstddef>

#include "slabwright/conduction_time.hpp"

namespace slabwright::conduction {

void expect_sound(const DriverSeries& series, const PeriodicDrivers& before, std::size_t drivers);
Eigen::VectorXd row_of(const DriverSeries& series, std::size_t row);

}  // namespace slabwright::conduction
