// A heater that gives more than is taken: how long it runs, and the water that makes it run long enough.
#pragma once

namespace slabwright {

/// Heat of so much water over one kelvin is `capacity_J_per_K`; it may swing by `swing_K` between the heater's coming
/// on and its going off. All greater than zero, and the load smaller than the source.
struct Cycling {
  double source_W = 0.0;  ///< the least the heater gives when it is on
  double load_W = 0.0;
  double swing_K = 0.0;
};

/// Minutes on: C dT / (source - load), seconds. Two trade pages print it the other way round, as the buffer below.
double on_s(const Cycling& cycling, double capacity_J_per_K);
/// Minutes off: C dT / load, seconds; endless without a load.
double off_s(const Cycling& cycling, double capacity_J_per_K);

/// Volume of water that keeps a heater on for `least_on_s`: t (source - load) / (rho c dT), m3. What stands in the
/// system already counts towards it. `volumetric_J_per_m3K` is rho c.
double buffer_m3(const Cycling& cycling, double least_on_s, double volumetric_J_per_m3K);

}  // namespace slabwright
