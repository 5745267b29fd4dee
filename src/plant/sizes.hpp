// Parts of size_plant().
#pragma once
#include "slabwright/plant_sizes.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {

/// Duty to buy, what it then runs at, takes and has at its suction. Said: a pump that is far too strong, above all one
/// as strong as all loops one after another; the end of a curve; water that may boil in the pump.
PumpSize pump_size(const Plant& plant, const OperatingPoint& point, const FlowTarget& target, double duty_Pa,
                   std::vector<Diagnostic>& said);

/// What the boiler asks of the electric service, alone and with all else that runs in the same hour.
ElectricSize electric_size(const Plant& plant, const BoilerSize& boiler, std::vector<Diagnostic>& said);

/// Water inside a heater.
double heater_content_m3(BoilerKind kind);

/// From water to a slab that stands still at one temperature: W for each kelvin that all water is warmer. 0 without a
/// floor.
double water_to_slab_W_per_K(const Plant& plant, const OperatingPoint& point);

/// Stages of a boiler of so much power: the file's, or as many as keep each within what is sold.
int boiler_stages(const Boiler& boiler, double power_W);

}  // namespace slabwright
