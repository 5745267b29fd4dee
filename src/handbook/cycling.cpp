#include "slabwright/handbook_cycling.hpp"

#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

/// Through the swing, driven by so much power at its middle.
double through_s(const SwingingHeater& c, double drive_W, double capacity_J_per_K) {
  const double slab_W = 0.5 * c.slab_W_per_K * c.swing_K;
  if (drive_W <= slab_W) return HUGE_VAL;
  if (slab_W <= 0.0) return capacity_J_per_K * c.swing_K / drive_W;
  return capacity_J_per_K / c.slab_W_per_K * std::log1p(2.0 * slab_W / (drive_W - slab_W));
}

double surplus_W(const SwingingHeater& cycling) {
  expects(cycling.source_W > cycling.load_W && cycling.swing_K > 0.0, "a heater that never goes off");
  return cycling.source_W - cycling.load_W;
}

}  // namespace

double on_s(const SwingingHeater& cycling, double capacity_J_per_K) {
  return through_s(cycling, surplus_W(cycling), capacity_J_per_K);
}

double off_s(const SwingingHeater& cycling, double capacity_J_per_K) {
  return through_s(cycling, cycling.load_W, capacity_J_per_K);
}

double buffer_m3(const SwingingHeater& cycling, double least_on_s, double volumetric_J_per_m3K) {
  return least_on_s / on_s(cycling, 1.0) / volumetric_J_per_m3K;
}

}  // namespace slabwright
