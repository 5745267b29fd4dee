// What every use of readings begins with: whether they can be used, and what they are held against.
#pragma once
#include <optional>
#include <vector>

#include "balance/loop_returns.hpp"
#include "slabwright/balance_readings.hpp"

namespace slabwright {

/// Why they cannot be used; empty where they can.
std::vector<Diagnostic> faults_of(const Plant& plant, const Readings& readings);

/// Absent without a supply temperature, a floor or its rooms' temperatures; said where return temperatures were read.
std::optional<LoopReturns> returns_of(const Plant& plant, const Readings& readings, const Conditions& conditions,
                                      std::vector<Diagnostic>& said);

/// Water in each loop.
std::vector<double> volumes(const Plant& plant);

/// Mean of the ports; 0 where nothing moves.
double usual_m3_per_s(const std::vector<double>& flow);

Diagnostic no_water_moves();

}  // namespace slabwright
