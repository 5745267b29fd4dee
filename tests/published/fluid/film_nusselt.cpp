// The film inside a tube: the exact series for developed laminar flow with uniform heat flux, Gnielinski's formula, and
// the tube's wall and film together.
#include <cmath>
#include <numbers>

#include "published/fluid/worst.hpp"
#include "slabwright/tube.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source graetz{"Graetz's problem, uniform heat flux", "mean Nusselt number, 60 terms by mpmath", Oracle::derived};
const Source gnielinski{"Gnielinski 1976, friction after Filonenko", "Nusselt number, 30 digits by mpmath",
                        Oracle::derived};
const Source rows{"Exact rows of tubes in a slab", "resistance of wall and film of one metre of tube", Oracle::derived};

constexpr double diameter = 0.01;

// A fluid of unit conductivity and this Prandtl number, and the flow for a Reynolds number.
FluidProperties fluid_of(double prandtl) { return {1000.0, 1000.0, prandtl / 1000.0, 1.0}; }

double nusselt(double reynolds, double prandtl, double length_m) {
  const FluidProperties fluid = fluid_of(prandtl);
  const double flow = reynolds * std::numbers::pi * diameter * fluid.viscosity_Pa_s / (4.0 * fluid.density_kg_per_m3);
  return inside_film({length_m, diameter, 0.0}, fluid, flow).coefficient_W_per_m2K * diameter;
}

double wall_and_film(double outside_m, double inside_m, double conductivity) {
  TubeSize tube;
  tube.outside_diameter_m = outside_m;
  tube.inside_diameter_m = inside_m;
  tube.conductivity_W_per_mK = conductivity;
  return wall_resistance_mK_per_W(tube) + film_resistance_mK_per_W({2000.0, Regime::turbulent, 1e4}, inside_m);
}

}  // namespace

TEST_CASE("laminar film with its entrance against the exact series") {
  for (auto& row : read_table("graetz_uniform_flux/mean_nusselt.csv")) {
    const double length = number(row, "x_star") * diameter * 1000.0 * 5.0;
    CHECK_PUBLISHED(graetz, fmt::format("L / (d Re Pr) = {}", row["x_star"]), row["mean_nusselt"],
                    nusselt(1000.0, 5.0, length), {0.0, 0.01, "two asymptotes joined, not the series"});
  }
}

TEST_CASE("Gnielinski's formula") {
  CHECK_PUBLISHED(gnielinski, "Re 4000, Pr 5", "28.1395607", nusselt(4000.0, 5.0, 90.0));
  CHECK_PUBLISHED(gnielinski, "Re 5000, Pr 30", "67.0188017", nusselt(5000.0, 30.0, 90.0));
  CHECK_PUBLISHED(gnielinski, "Re 10 000, Pr 5", "69.8462369", nusselt(10000.0, 5.0, 90.0));
  CHECK_PUBLISHED(gnielinski, "Re 30 000, Pr 3", "147.113628", nusselt(30000.0, 3.0, 90.0));
  CHECK_PUBLISHED(gnielinski, "Re 100 000, Pr 0.7", "178.376968", nusselt(100000.0, 0.7, 90.0));
}

TEST_CASE("wall and film in series") {
  CHECK_PUBLISHED(rows, "20/16 mm, 0.35 W/(m K), film 2000 W/(m2 K)", "0.111417", wall_and_film(0.020, 0.016, 0.35));
  CHECK_PUBLISHED(rows, "15.875 mm, wall 1.778 mm, 0.38 W/(m K), film 2000 W/(m2 K)", "0.119136",
                  wall_and_film(0.015875, 0.015875 - 2.0 * 0.001778, 0.38));
}
