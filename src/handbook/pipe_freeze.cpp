#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_pipe_freeze.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

double shell_mK_per_W(double inside_m, double outside_m, double W_per_mK) {
  expects(W_per_mK > 0.0, "a shell of a pipe that conducts nothing");
  return std::log(outside_m / inside_m) / (2.0 * pi * W_per_mK);
}

// Seconds for each J/kg that the water gives up, and each 1/K: mass of a metre times what is in its way.
double kg_K_per_W(const StandingPipe& pipe, const FreezingWater& water) {
  expects(water.kg_per_m3 > 0.0 && water.J_per_kgK > 0.0 && water.fusion_J_per_kg > 0.0, "water without heat");
  const double area_m2 = pi / 4.0 * pipe.inside_diameter_m * pipe.inside_diameter_m;
  return water.kg_per_m3 * area_m2 * standing_pipe_mK_per_W(pipe);
}

}  // namespace

double standing_pipe_mK_per_W(const StandingPipe& pipe) {
  expects(pipe.inside_diameter_m > 0.0 && pipe.outside_diameter_m > pipe.inside_diameter_m, "diameters of no pipe");
  expects(pipe.insulation_m >= 0.0, "insulation thinner than nothing");
  const double outermost_m = pipe.outside_diameter_m + 2.0 * pipe.insulation_m;
  double sum = 0.0;
  if (pipe.wall_W_per_mK) sum += shell_mK_per_W(pipe.inside_diameter_m, pipe.outside_diameter_m, *pipe.wall_W_per_mK);
  if (pipe.insulation_m > 0.0) sum += shell_mK_per_W(pipe.outside_diameter_m, outermost_m, pipe.insulation_W_per_mK);
  if (pipe.film_W_per_m2K) {
    expects(*pipe.film_W_per_m2K > 0.0, "a film that carries nothing");
    sum += 1.0 / (pi * outermost_m * *pipe.film_W_per_m2K);
  }
  expects(sum > 0.0, "a pipe that nothing keeps from the air");
  return sum;
}

std::optional<double> time_to_freezing_s(const StandingPipe& pipe, double start_degC, double air_degC,
                                         const FreezingWater& water) {
  const double s_per_unit = water.J_per_kgK * kg_K_per_W(pipe, water);
  if (!(air_degC < water.freezes_degC)) return std::nullopt;
  if (start_degC <= water.freezes_degC) return 0.0;
  return s_per_unit * std::log((start_degC - air_degC) / (water.freezes_degC - air_degC));
}

std::optional<double> time_to_ice_s(const StandingPipe& pipe, double air_degC, const FreezingWater& water) {
  const double s_K = water.fusion_J_per_kg * kg_K_per_W(pipe, water);
  if (!(air_degC < water.freezes_degC)) return std::nullopt;
  return s_K / (water.freezes_degC - air_degC);
}

}  // namespace slabwright
