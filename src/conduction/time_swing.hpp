// The section when its drivers have swung for ever.
#pragma once
#include <Eigen/Dense>

#include "conduction/time_field.hpp"
#include "slabwright/conduction_time.hpp"

namespace slabwright::conduction {

/// Temperatures T with drivers u = cos(w t) follow as with cos(w t) + behind sin(w t). [unknown][driver]
struct Swing {
  Eigen::MatrixXd with, behind;
};
Swing swing_of(const TimeField& field, double period_s);

/// Drivers at a time, and the temperatures they have brought about by then.
Eigen::VectorXd drivers_at(const PeriodicDrivers& drivers, double time_s);
Eigen::VectorXd temperatures_at(const TimeField& field, const PeriodicDrivers& drivers, double time_s);

}  // namespace slabwright::conduction
