// The rim of a plate: how much it must lose for its edge to pass what the edge's section passes.
#include <algorithm>
#include <cmath>

#include "slabwright/conduction_plan.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

/// No rim of concrete under a film passes as much; what asks for more has this.
constexpr double most_W_per_m2K = 1e4;

}  // namespace

double rim_W_per_m2K(const PlanSlab& slab, const PlanRim& rim) {
  expects(rim.zone_m > 0.0 && rim.film_m2K_per_W > 0.0, "plan rim: a zone and a film");
  expects(rim.W_per_mK >= 0.0, "plan rim: heat leaves");
  if (rim.W_per_mK <= 0.0) return 0.0;
  const double up = 1.0 / (slab.up_m2K_per_W + rim.film_m2K_per_W);
  const double m = std::sqrt(up / slab.along_W_per_K);
  // The plane is held from `held_m` in: what of the zone lies there is at 1, the rest of it a fin beyond.
  const double fin_m = std::min(rim.zone_m, rim.held_m), between_m = std::max(0.0, rim.held_m - rim.zone_m);
  // Both at 1, what takes the heat at 0. In the fin, from the rim in, the plate lacks far (1 - a cosh(n x)); from there
  // to the held plane c sinh(m (held - x)). Temperature and heat go over into each other where they meet.
  const auto lost_W_per_mK = [&](double loss) {
    const double n = std::sqrt((up + loss) / slab.along_W_per_K), far = loss / (up + loss);
    const double a = 1.0 / (std::cosh(n * fin_m) + n / m * std::sinh(n * fin_m) * std::tanh(m * between_m));
    return loss * (rim.zone_m - far * (fin_m - a * std::sinh(n * fin_m) / n));
  };
  return root_in_bracket([&](double loss) { return lost_W_per_mK(loss) - rim.W_per_mK; }, 0.0, most_W_per_m2K).x;
}

}  // namespace slabwright
