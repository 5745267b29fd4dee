// The floor's film has one smooth, rising curve through both directions of heat.
#include <cmath>

#include "slabwright/handbook_floor_film.hpp"
#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("the film's laws away from no difference") {
  CHECK(floor_film(9.0).heat_W_per_m2 == Approx(8.92 * std::pow(9.0, 1.1)).epsilon(1e-14));
  CHECK(floor_film(9.0).coefficient_W_per_m2K == Approx(8.92 * std::pow(9.0, 0.1)).epsilon(1e-14));
  CHECK(floor_film(-4.0).heat_W_per_m2 == Approx(-26.0).epsilon(1e-14));
  CHECK(floor_film(0.0).heat_W_per_m2 == 0.0);
  CHECK(floor_film(0.0).coefficient_W_per_m2K == 6.0);
}

TEST_CASE("heat rises smoothly with the difference") {
  const double step_K = 1e-6;
  double last = floor_film(-0.3).heat_W_per_m2;
  for (double rise = -0.3 + 1e-3; rise < 0.3; rise += 1e-3) {
    const FloorFilm film = floor_film(rise);
    CAPTURE(rise);
    CHECK(film.heat_W_per_m2 > last);
    last = film.heat_W_per_m2;
    const double difference =
        (floor_film(rise + step_K).heat_W_per_m2 - floor_film(rise - step_K).heat_W_per_m2) / (2.0 * step_K);
    // At a joint the curvature jumps by some 40 W/m2K2: a quarter of it times the step.
    CHECK(film.slope_W_per_m2K == Approx(difference).epsilon(1e-5));
    CHECK(film.slope_W_per_m2K >= 6.0);
    CHECK(film.slope_W_per_m2K <= 8.92 * 1.1);
    CHECK(film.heat_W_per_m2 == Approx(film.coefficient_W_per_m2K * rise).margin(1e-12));
  }
}

TEST_CASE("value and slope agree on both sides of each joint") {
  for (const double joint : {-0.1, 0.0, 0.1}) {
    const FloorFilm before = floor_film(joint - 1e-9), after = floor_film(joint + 1e-9);
    CAPTURE(joint);
    CHECK(before.heat_W_per_m2 == Approx(after.heat_W_per_m2).margin(1e-7));
    CHECK(before.slope_W_per_m2K == Approx(after.slope_W_per_m2K).epsilon(1e-6));
  }
}

TEST_CASE("the joints move the heat by less than anyone can tell") {
  for (double rise = 0.001; rise < 0.1; rise += 0.001)
    CHECK(floor_film(rise).heat_W_per_m2 == Approx(8.92 * std::pow(rise, 1.1)).margin(0.03));
  for (double rise = -0.1; rise < 0.0; rise += 0.001)
    CHECK(floor_film(rise).heat_W_per_m2 == Approx(6.5 * rise).margin(0.03));
}

TEST_CASE("the rise for a heat is the film's inverse") {
  for (const double heat : {-100.0, -0.66, -0.64, -0.1, -1e-6, 0.0, 1e-6, 0.3, 0.70, 0.71, 0.72, 5.0, 100.0}) {
    CAPTURE(heat);
    CHECK(floor_film(floor_film_rise_K(heat)).heat_W_per_m2 == Approx(heat).epsilon(1e-12).margin(1e-15));
  }
}

TEST_CASE("the panel equations lie near the film") {
  // Recalled, not read: the tables of their author's own check, so a slip in a constant shows.
  const RadiantRoom even{29.0, 20.0, 20.0};
  CHECK(ashrae_panel_radiation_W_per_m2(even) == Approx(47.48).epsilon(1e-3));
  CHECK(ashrae_panel_convection_W_per_m2(even) == Approx(37.88).epsilon(1e-3));
  const double panel = ashrae_panel_radiation_W_per_m2(even) + ashrae_panel_convection_W_per_m2(even);
  CHECK(panel < floor_film(9.0).heat_W_per_m2);
  CHECK(panel > 0.8 * floor_film(9.0).heat_W_per_m2);
  CHECK(ashrae_panel_convection_W_per_m2({15.0, 20.0, 20.0}) < 0.0);
  // A floor of 5 m: the two forms of the convection agree within the spread of their constants.
  CHECK(ashrae_panel_convection_W_per_m2(even, 5.0) == Approx(ashrae_panel_convection_W_per_m2(even)).epsilon(0.01));
  CHECK(ashrae_panel_convection_W_per_m2(even, 20.0) < ashrae_panel_convection_W_per_m2(even, 5.0));
}
