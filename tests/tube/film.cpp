// The film between the water and the wall as a function of the flow.
#include <rapidcheck.h>

#include <cmath>
#include <numbers>

#include "slabwright/tube.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const Bore loop = bore_of(*find_tube("16 x 2 mm"), 90.0);
const FluidProperties warm_water = properties_of({}, 35.0);
const FluidProperties cold_glycol = properties_of({FluidKind::propylene_glycol, 0.4}, 5.0);

double flow_at(double reynolds, const FluidProperties& fluid) {
  return reynolds * std::numbers::pi * loop.inside_diameter_m * fluid.viscosity_Pa_s / (4.0 * fluid.density_kg_per_m3);
}

double coefficient_at(double reynolds, const FluidProperties& fluid) {
  return inside_film(loop, fluid, flow_at(reynolds, fluid)).coefficient_W_per_m2K;
}

}  // namespace

TEST_CASE("at rest the film is the developed laminar one") {
  const Film film = inside_film(loop, warm_water, 0.0);
  CHECK(film.coefficient_W_per_m2K == Approx(48.0 / 11.0 * warm_water.conductivity_W_per_mK / 0.012).epsilon(1e-14));
  CHECK(film.regime == Regime::laminar);
  CHECK(film.reynolds == 0.0);
}

TEST_CASE("the film never weakens as the flow grows") {
  for (const FluidProperties& fluid : {warm_water, cold_glycol}) {
    double last = 0.0;
    for (double reynolds = 0.0; reynolds <= 20000.0; reynolds += 20.0) {
      const double now = coefficient_at(reynolds, fluid);
      CHECK(now > last);
      last = now;
    }
  }
}

TEST_CASE("the film is continuous at both ends of the blend") {
  for (const FluidProperties& fluid : {warm_water, cold_glycol}) {
    for (const double kink : {laminar_up_to_reynolds, turbulent_from_reynolds}) {
      const double below = coefficient_at(kink * (1.0 - 1e-9), fluid);
      const double above = coefficient_at(kink * (1.0 + 1e-9), fluid);
      CHECK(above == Approx(below).epsilon(2e-8));  // the steepest side rises as the fourth power or so
    }
  }
}

TEST_CASE("the film and the friction change their regime together") {
  CHECK(rc::check("regime", [] {
    const double reynolds = *rc::gen::inRange(1, 9000);
    const Film film = inside_film(loop, warm_water, flow_at(reynolds, warm_water));
    RC_ASSERT(std::abs(film.reynolds / reynolds - 1.0) < 1e-14);
    RC_ASSERT(film.regime == friction_factor(film.reynolds, 0.0).regime);
  }));
}

TEST_CASE("backwards makes no difference to the film") {
  const double flow = flow_at(6000.0, warm_water);
  CHECK(inside_film(loop, warm_water, -flow).coefficient_W_per_m2K ==
        inside_film(loop, warm_water, flow).coefficient_W_per_m2K);
}

TEST_CASE("a short laminar piece has the stronger film") {
  const double flow = flow_at(1500.0, warm_water);
  const Bore piece{1.0, loop.inside_diameter_m, loop.roughness_m};
  CHECK(inside_film(piece, warm_water, flow).coefficient_W_per_m2K >
        1.5 * inside_film(loop, warm_water, flow).coefficient_W_per_m2K);
}

TEST_CASE("the film of a metre resists by its area") {
  CHECK(film_resistance_mK_per_W({2000.0, Regime::turbulent, 1e4}, 0.016) ==
        Approx(1.0 / (std::numbers::pi * 0.016 * 2000.0)).epsilon(1e-15));
  CHECK_THROWS(film_resistance_mK_per_W({}, 0.016));
}

TEST_CASE("a fluid without properties has no film") {
  CHECK_THROWS(inside_film(loop, {}, 1e-5));
  CHECK_THROWS(inside_film({0.0, 0.012, 0.0}, warm_water, 1e-5));
}
