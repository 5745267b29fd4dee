#include "slabwright/contract.hpp"
#include "slabwright/handbook_tank.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {}  // namespace

double expansion_m3(double system_m3, double growth_share, double pipe_per_K, double rise_K) {
  return system_m3 * (growth_share - 3.0 * pipe_per_K * rise_K);
}

double expansion_share(double cold_kg_per_m3, double hot_kg_per_m3) {
  expects(cold_kg_per_m3 > 0.0 && hot_kg_per_m3 > 0.0, "a fluid without density");
  return cold_kg_per_m3 / hot_kg_per_m3 - 1.0;
}

std::optional<double> diaphragm_tank_m3(double grown_m3, const TankPressures& p) {
  if (!(p.fill_Pa > 0.0) || !(p.most_Pa > p.fill_Pa)) return std::nullopt;
  return grown_m3 / (1.0 - p.fill_Pa / p.most_Pa);
}

std::optional<double> closed_tank_m3(double grown_m3, const TankPressures& p) {
  if (!(p.air_Pa > 0.0) || !(p.fill_Pa >= p.air_Pa) || !(p.most_Pa > p.fill_Pa)) return std::nullopt;
  return grown_m3 / (p.air_Pa / p.fill_Pa - p.air_Pa / p.most_Pa);
}

double open_tank_m3(double grown_m3) { return 2.0 * grown_m3; }

double fill_gauge_Pa(double height_m) { return (height_m / foot_m / 2.31 + 4.0) * psi_Pa; }

double planned_most_gauge_Pa(double relief_gauge_Pa) { return 0.9 * relief_gauge_Pa; }

}  // namespace slabwright
