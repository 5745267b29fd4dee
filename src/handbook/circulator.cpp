#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_circulator.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double flow_share[] = {1.0, 0.75, 0.5, 0.25};
constexpr double weight[] = {0.06, 0.15, 0.35, 0.44};
/// Makes the best circulators of the year the rule was written come out at 0.2.
constexpr double calibration = 0.49;

}  // namespace

double reference_circulator_W(double hydraulic_W) {
  return 1.7 * hydraulic_W + 17.0 * (1.0 - std::exp(-0.3 * hydraulic_W));
}

double energy_efficiency_index(const std::array<RatedPoint, 4>& points, double rated_hydraulic_W) {
  expects(rated_hydraulic_W > 0.0, "a circulator that moves nothing");
  double mean_W = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double line_m = points[0].head_m * (0.5 + 0.5 * flow_share[i]);
    const double short_by = points[i].head_m < line_m ? line_m / points[i].head_m : 1.0;
    mean_W += weight[i] * points[i].electric_W * short_by;
  }
  return calibration * mean_W / reference_circulator_W(rated_hydraulic_W);
}

double suction_head_m(const Suction& s) {
  expects(s.density_kg_per_m3 > 0.0, "a liquid without density");
  return (s.absolute_Pa - s.vapour_Pa) / (s.density_kg_per_m3 * gravity_m_per_s2) +
         s.velocity_m_per_s * s.velocity_m_per_s / (2.0 * gravity_m_per_s2);
}

}  // namespace slabwright
