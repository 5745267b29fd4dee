// Where the star refuses, and what it says of a covering and of the plain form's range.
#include <limits>

#include "slabwright/handbook_star.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

StarGeometry slab() { return {0.30, 0.020, 0.075, 0.075, 1.8, 10.8, 0.5, 0.0}; }

template <class Change>
bool answers(Change change) {
  StarGeometry g = slab();
  change(g);
  return star_section(g).has_value();
}

}  // namespace

TEST_CASE("no answer where the tube does not fit or a number is not one") {
  CHECK(answers([](StarGeometry&) {}));
  CHECK_FALSE(answers([](StarGeometry& g) { g.cover_above_m = 0.009; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.cover_below_m = 0.009; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.spacing_m = 0.020; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.outside_m = 0.0; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.concrete_W_per_mK = 0.0; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.above_W_per_m2K = -1.0; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.tube_mK_per_W = -0.1; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.above_W_per_m2K = g.below_W_per_m2K = 0.0; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.spacing_m = 1000.0; }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.spacing_m = std::numeric_limits<double>::quiet_NaN(); }));
  CHECK_FALSE(answers([](StarGeometry& g) { g.cover_above_m = std::numeric_limits<double>::quiet_NaN(); }));
}

TEST_CASE("an adiabatic underside takes no heat and a held top keeps its temperature") {
  StarGeometry g = slab();
  g.below_W_per_m2K = 0.0;
  g.above_W_per_m2K = std::numeric_limits<double>::infinity();
  for (const TubeField field : {TubeField::line, TubeField::dipole}) {
    const StarSection s = star_section(g, field).value();
    CHECK(s.down_W_per_m2K == 0.0);
    CHECK(s.through_W_per_m2K == 0.0);
    CHECK(s.up_W_per_m2K > 0.0);
    CHECK(s.top_over_tube.tube_share == Approx(0.0).margin(1e-12));
    CHECK(s.top_mean.room_share == Approx(1.0).epsilon(1e-12));
    CHECK(s.bottom_under_tube.below_share == Approx(0.0).margin(1e-12));
  }
}

TEST_CASE("a tube that lies on the insulation still has an answer") {
  CHECK(answers([](StarGeometry& g) { g.cover_below_m = 0.010; }));
}

TEST_CASE("a covering lumped into the film") {
  CHECK(lumped_coefficient_W_per_m2K(10.8, 0.10) == Approx(1.0 / (1.0 / 10.8 + 0.10)));
  CHECK(temperature_degC({0.5, 0.3, 0.2}, 40.0, 20.0, 10.0) == Approx(28.0));
}

TEST_CASE("the plain star says why it was not made for a thin slab") {
  const StarResistances enough = star_resistances({0.20, 0.025, 0.0025, 0.45, 120.0, 0.2}, 1.8);
  StarGeometry thick{0.20, 0.025, 0.10, 0.20, 1.8, 10.8, 5.8824};
  CHECK(made_for(thick, enough).holds());
  StarGeometry thin{0.30, 0.020, 0.05, 0.05, 1.8, 10.8, 0.5};
  CHECK(made_for(thin, enough).why_not.size() == 2);
  const StarResistances slow = star_resistances({0.15, 0.020, 0.0023, 0.35, 120.0, 0.05}, 1.9);
  REQUIRE(made_for(thick, slow).why_not.size() == 1);
  CHECK(made_for(thick, slow).why_not.front().find("divide") != std::string_view::npos);
}
