// What a circulator takes from the wall, how it is rated, and the pressure it wants at its suction.
#pragma once
#include <array>

namespace slabwright {

/// Power of the reference circulator, W, that gives the water `hydraulic_W` at its best point: 1.7 P + 17 (1 - e^(-0.3
/// P)). Regulation (EC) 641/2009 as amended by (EU) 622/2012, for 1 to 2500 W.
double reference_circulator_W(double hydraulic_W);

/// What a circulator takes and gives at a share of its rated flow.
struct RatedPoint {
  double electric_W = 0.0;
  double head_m = 0.0;
};

/// Energy efficiency index by the same regulation (EN 16297): points at 100, 75, 50 and 25 % of the rated flow, weighed
/// 0.06, 0.15, 0.35, 0.44. A head below the control line, which falls straight from the rated head to half of it at no
/// flow, counts as if the power grew with it. `rated_hydraulic_W` > 0.
double energy_efficiency_index(const std::array<RatedPoint, 4>& points, double rated_hydraulic_W);

/// Net positive suction head available: (absolute pressure - vapour pressure) / (density g) + v^2 / 2g.
/// Density greater than zero.
struct Suction {
  double absolute_Pa = 0.0;
  double vapour_Pa = 0.0;
  double density_kg_per_m3 = 0.0;
  double velocity_m_per_s = 0.0;
};
double suction_head_m(const Suction& suction);

}  // namespace slabwright
