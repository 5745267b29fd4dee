#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_star.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {

StarResistances star_resistances(const StarCircuit& c, double concrete_W_per_mK) {
  const double bore_m = c.outside_m - 2.0 * c.wall_m;
  expects(bore_m > 0.0 && c.wall_m > 0.0 && c.wall_W_per_mK > 0.0, "star: the tube has no bore");
  expects(c.water_kg_per_s > 0.0 && c.water_J_per_kgK > 0.0 && c.length_m > 0.0, "star: no water flows");
  expects(c.spacing_m > 0.0 && concrete_W_per_mK > 0.0, "star: no concrete");
  const double water_kg_per_sm2 = c.water_kg_per_s / (c.spacing_m * c.length_m);
  StarResistances r;
  r.flow_m2K_per_W = 1.0 / (2.0 * water_kg_per_sm2 * c.water_J_per_kgK);
  r.film_m2K_per_W =
      std::pow(c.spacing_m, 0.13) / (8.0 * pi) * std::pow(bore_m / (water_kg_per_sm2 * c.length_m), 0.87);
  r.wall_m2K_per_W = c.spacing_m * std::log(c.outside_m / bore_m) / (2.0 * pi * c.wall_W_per_mK);
  r.plain_m2K_per_W = c.spacing_m * std::log(c.spacing_m / (pi * c.outside_m)) / (2.0 * pi * concrete_W_per_mK);
  return r;
}

double star_transfer_units(const StarResistances& r) {
  return (r.film_m2K_per_W + r.wall_m2K_per_W + r.plain_m2K_per_W) / (2.0 * r.flow_m2K_per_W);
}

MadeFor made_for(const StarGeometry& g, const StarResistances& r) {
  MadeFor answer;
  const auto require = [&](bool inside, std::string_view why) {
    if (!inside) answer.why_not.push_back(why);
  };
  require(g.cover_above_m > 0.3 * g.spacing_m, "the concrete over the tubes is thinner than 0.3 of their spacing");
  require(g.cover_below_m > 0.3 * g.spacing_m, "the concrete under the tubes is thinner than 0.3 of their spacing");
  require(g.outside_m < 0.2 * g.spacing_m, "the tubes are thicker than 0.2 of their spacing");
  require(star_transfer_units(r) >= 0.5, "the circuit carries too little water for one straight mean: divide it");
  return answer;
}

}  // namespace slabwright
