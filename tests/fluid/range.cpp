// Where the sources end, and what is said and answered beyond.
#include <limits>

#include "slabwright/fluid.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {
Mixture propylene(double share) { return {FluidKind::propylene_glycol, share}; }
Mixture ethylene(double share) { return {FluidKind::ethylene_glycol, share}; }
}  // namespace

TEST_CASE("water is known from -20 to 110 degC") {
  CHECK(range_of({}, -20.1) == Range::too_cold);
  CHECK(range_of({}, -20.0) == Range::inside);
  CHECK(range_of({}, 110.0) == Range::inside);
  CHECK(range_of({}, 110.1) == Range::too_hot);
}

TEST_CASE("an inhibited glycol is known where both neighbouring columns are") {
  CHECK(window_of(propylene(0.3)).lowest_degC == -10.0);
  CHECK(window_of(propylene(0.4)).lowest_degC == -15.0);
  CHECK(window_of(propylene(0.35)).lowest_degC == -10.0);
  CHECK(window_of(ethylene(0.5)).lowest_degC == -35.0);
  CHECK(window_of(ethylene(0.45)).lowest_degC == -20.0);
  CHECK(window_of(ethylene(0.45)).highest_degC == 100.0);
}

TEST_CASE("a share that was computed finds its own column") {
  CHECK(window_of(propylene(0.1 + 0.2)).lowest_degC == -10.0);
  CHECK(window_of(propylene(0.3 - 1e-15)).lowest_degC == -10.0);
  CHECK(range_of(propylene(0.6 + 1e-15), 20.0) == Range::inside);
}

TEST_CASE("strength is judged before temperature") {
  CHECK(range_of(propylene(0.05), 20.0) == Range::too_weak);
  CHECK(range_of(propylene(0.05), 200.0) == Range::too_weak);
  CHECK(range_of(propylene(0.61), 20.0) == Range::too_strong);
  CHECK(range_of(propylene(0.3), -10.5) == Range::too_cold);
  CHECK(range_of(propylene(0.3), 100.5) == Range::too_hot);
  CHECK(range_of(propylene(0.3), 20.0) == Range::inside);
}

TEST_CASE("a pure glycol is known from its freezing point to 60 % by mass") {
  CHECK(range_of(ethylene(0.05), 20.0, Family::pure) == Range::inside);
  CHECK(range_of(ethylene(0.578), 20.0, Family::pure) == Range::inside);
  CHECK(range_of(ethylene(0.59), 20.0, Family::pure) == Range::too_strong);
  CHECK(range_of(propylene(0.60), 20.0, Family::pure) == Range::inside);
  CHECK(window_of(propylene(0.3), Family::pure).lowest_degC == freezing_point_degC(propylene(0.3), Family::pure));
}

TEST_CASE("the freezing point knows its own end") {
  CHECK(freezing_range_of(ethylene(0.578)) == Range::inside);
  CHECK(freezing_range_of(ethylene(0.59)) == Range::too_strong);
  CHECK(freezing_range_of(propylene(0.60)) == Range::inside);
  CHECK(freezing_point_degC(ethylene(0.7)) == freezing_point_degC(ethylene(0.578)));
  CHECK(freezing_range_of(ethylene(0.59), Family::pure) == Range::too_strong);
  CHECK(freezing_range_of({}) == Range::inside);
}

TEST_CASE("beyond its range a fluid answers for the nearest place inside") {
  const FluidProperties edge = properties_of(propylene(0.3), -10.0);
  CHECK(properties_of(propylene(0.3), -30.0).viscosity_Pa_s == edge.viscosity_Pa_s);
  CHECK(properties_of({}, 150.0).density_kg_per_m3 == properties_of({}, 110.0).density_kg_per_m3);
  CHECK(properties_of(propylene(0.9), 20.0).viscosity_Pa_s == properties_of(propylene(0.6), 20.0).viscosity_Pa_s);
  CHECK(properties_of(propylene(0.02), 20.0).viscosity_Pa_s == properties_of(propylene(0.1), 20.0).viscosity_Pa_s);
  CHECK(properties_of(propylene(0.3), 150.0, Family::pure).viscosity_Pa_s ==
        properties_of(propylene(0.3), 100.0, Family::pure).viscosity_Pa_s);
  CHECK(family_spread(propylene(0.3), -40.0).viscosity_share == family_spread(propylene(0.3), -10.0).viscosity_share);
}

TEST_CASE("what is no mixture and no temperature is refused") {
  CHECK_THROWS(properties_of(propylene(-0.1), 20.0));
  CHECK_THROWS(properties_of(propylene(1.1), 20.0));
  CHECK_THROWS(properties_of({FluidKind::water, 0.3}, 20.0));
  CHECK_THROWS(properties_of({}, std::numeric_limits<double>::quiet_NaN()));
  CHECK_THROWS(range_of({}, std::numeric_limits<double>::infinity()));
  CHECK_THROWS(mixture_by_mass(FluidKind::propylene_glycol, 1.2));
  CHECK_THROWS(mixture_by_mass(FluidKind::water, 0.2));
}
