// What a heat pump loses by running for a part of the time.
#include <algorithm>
#include <cmath>

#include "heater/part_load.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

// Starts are as many as the thermostat's law says for the time that the machine is on, which is the load over the very
// share sought.
double share_of_starting(const PartLoad& law, double load_share) {
  const auto left_over = [&](double share) {
    const double on = load_share > 0.0 ? load_share / share : 0.0;
    const double k = 4.0 * law.start_s * law.most_cycles_per_s * (1.0 - on);
    const double lost = k > 0.0 ? -k * std::expm1(-1.0 / k) : 0.0;
    return 1.0 - lost - share;
  };
  return root_in_bracket(left_over, load_share, 1.0).x;
}

}  // namespace

bool is_part_load(const PartLoad& law) {
  return law.coefficient >= 0.0 && law.coefficient <= 1.0 && std::isfinite(law.start_s) && law.start_s > 0.0 &&
         std::isfinite(law.most_cycles_per_s) && law.most_cycles_per_s > 0.0;
}

double part_load_share(const PartLoad& law, double load_share) {
  expects(is_part_load(law), "no law of part load");
  expects(load_share >= 0.0 && load_share <= 1.0, "a load share not from 0 to 1");
  if (load_share == 1.0) return 1.0;
  switch (law.law) {
    case PartLoadLaw::straight: return 1.0 - law.coefficient * (1.0 - load_share);
    case PartLoadLaw::hyperbola: return load_share / (law.coefficient * load_share + 1.0 - law.coefficient);
    case PartLoadLaw::starting: return share_of_starting(law, load_share);
    case PartLoadLaw::none: break;
  }
  return 1.0;
}

}  // namespace slabwright
