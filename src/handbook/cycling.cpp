#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_cycling.hpp"

namespace slabwright {
namespace {

double surplus_W(const Cycling& cycling) {
  expects(cycling.source_W > cycling.load_W && cycling.swing_K > 0.0, "a heater that never goes off");
  return cycling.source_W - cycling.load_W;
}

}  // namespace

double on_s(const Cycling& cycling, double capacity_J_per_K) {
  return capacity_J_per_K * cycling.swing_K / surplus_W(cycling);
}

double off_s(const Cycling& cycling, double capacity_J_per_K) {
  return cycling.load_W > 0.0 ? capacity_J_per_K * cycling.swing_K / cycling.load_W : HUGE_VAL;
}

double buffer_m3(const Cycling& cycling, double least_on_s, double volumetric_J_per_m3K) {
  return least_on_s * surplus_W(cycling) / (volumetric_J_per_m3K * cycling.swing_K);
}

}  // namespace slabwright
