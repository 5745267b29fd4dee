// Properties as functions of temperature and strength.
#include <rapidcheck.h>

#include <algorithm>

#include "slabwright/fluid.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr FluidKind glycols[] = {FluidKind::propylene_glycol, FluidKind::ethylene_glycol};

double drawn(double low, double high) { return low + (high - low) * *rc::gen::inRange(0, 100'001) / 100'000.0; }

Mixture drawn_mixture(double weakest, double strongest) {
  return {glycols[*rc::gen::inRange(0, 2)], drawn(weakest, strongest)};
}

Family drawn_family() { return *rc::gen::inRange(0, 2) == 0 ? Family::inhibited : Family::pure; }

bool lies_between(double value, double one, double other) {
  const double rounding = 1e-14 * value;
  return std::min(one, other) - rounding <= value && value <= std::max(one, other) + rounding;
}

}  // namespace

TEST_CASE("viscosity falls as a mixture warms") {
  CHECK(rc::check("two temperatures", [] {
    const Mixture mixture = drawn_mixture(0.1, 0.6);
    const Family family = drawn_family();
    const Window window = window_of(mixture, family);
    const double cold = drawn(window.lowest_degC, window.highest_degC - 0.1);
    const double warm = drawn(cold + 0.1, window.highest_degC);
    RC_ASSERT(properties_of(mixture, cold, family).viscosity_Pa_s >
              properties_of(mixture, warm, family).viscosity_Pa_s);
  }));
}

TEST_CASE("viscosity of water falls from end to end of its window") {
  for (double temperature = -20.0; temperature < 109.5; temperature += 0.5)
    CHECK(properties_of({}, temperature).viscosity_Pa_s > properties_of({}, temperature + 0.5).viscosity_Pa_s);
}

TEST_CASE("an inhibited mixture lies between its neighbours in the table") {
  CHECK(rc::check("columns and rows", [] {
    const double weaker = 0.1 * *rc::gen::inRange(1, 6);
    const Mixture mixture{glycols[*rc::gen::inRange(0, 2)], drawn(weaker, weaker + 0.1)};
    const double temperature = drawn(0.0, 100.0);
    const FluidProperties it = properties_of(mixture, temperature);
    const FluidProperties low = properties_of({mixture.kind, weaker}, temperature);
    const FluidProperties high = properties_of({mixture.kind, weaker + 0.1}, temperature);
    RC_ASSERT(lies_between(it.density_kg_per_m3, low.density_kg_per_m3, high.density_kg_per_m3));
    RC_ASSERT(lies_between(it.specific_heat_J_per_kgK, low.specific_heat_J_per_kgK, high.specific_heat_J_per_kgK));
    RC_ASSERT(lies_between(it.viscosity_Pa_s, low.viscosity_Pa_s, high.viscosity_Pa_s));
    RC_ASSERT(lies_between(it.conductivity_W_per_mK, low.conductivity_W_per_mK, high.conductivity_W_per_mK));
  }));
}

TEST_CASE("more glycol is thicker, denser, holds less heat and freezes later") {
  CHECK(rc::check("two strengths", [] {
    const Family family = drawn_family();
    const Mixture weak = drawn_mixture(0.12, 0.5);
    const Mixture strong{weak.kind, weak.glycol_volume_share + 0.05};
    const double temperature = drawn(0.0, 80.0);
    const FluidProperties a = properties_of(weak, temperature, family);
    const FluidProperties b = properties_of(strong, temperature, family);
    RC_ASSERT(b.viscosity_Pa_s > a.viscosity_Pa_s);
    RC_ASSERT(b.density_kg_per_m3 > a.density_kg_per_m3);
    RC_ASSERT(b.specific_heat_J_per_kgK < a.specific_heat_J_per_kgK);
    RC_ASSERT(b.conductivity_W_per_mK < a.conductivity_W_per_mK);
    RC_ASSERT(freezing_point_degC(strong, family) < freezing_point_degC(weak, family));
  }));
}

TEST_CASE("properties do not jump between the rows of a table") {
  CHECK(rc::check("continuity", [] {
    const Mixture mixture = drawn_mixture(0.1, 0.6);
    const double temperature = drawn(0.0, 99.0);
    const double here = properties_of(mixture, temperature).viscosity_Pa_s;
    const double there = properties_of(mixture, temperature + 1e-6).viscosity_Pa_s;
    RC_ASSERT(std::abs(there - here) < 1e-6 * here);  // viscosity moves by less than 10 % in a kelvin
  }));
}

TEST_CASE("the short way to density and viscosity gives the same") {
  CHECK(rc::check("liquid", [] {
    const Mixture mixture = *rc::gen::inRange(0, 4) == 0 ? Mixture{} : drawn_mixture(0.1, 0.6);
    const Family family = drawn_family();
    const double temperature = drawn(-40.0, 120.0);
    const Liquid brief = liquid(mixture, temperature, family);
    const FluidProperties full = properties_of(mixture, temperature, family);
    RC_ASSERT(brief.density_kg_per_m3 == full.density_kg_per_m3);
    RC_ASSERT(brief.viscosity_Pa_s == full.viscosity_Pa_s);
  }));
}

TEST_CASE("a glycol share of zero is water") {
  const FluidProperties water = properties_of({}, 40.0);
  const FluidProperties none = properties_of({FluidKind::ethylene_glycol, 0.0}, 40.0, Family::pure);
  CHECK(none.density_kg_per_m3 == water.density_kg_per_m3);
  CHECK(none.viscosity_Pa_s == water.viscosity_Pa_s);
  CHECK(freezing_point_degC({FluidKind::ethylene_glycol, 0.0}) == 0.0);
}

TEST_CASE("the pure family's weakest end is near water") {
  for (const FluidKind kind : glycols) {
    const FluidProperties water = properties_of({}, 25.0);
    const FluidProperties weak = properties_of({kind, 1e-9}, 25.0, Family::pure);
    CHECK(weak.density_kg_per_m3 == Approx(water.density_kg_per_m3).epsilon(1e-3));
    CHECK(weak.specific_heat_J_per_kgK == Approx(water.specific_heat_J_per_kgK).epsilon(0.01));
    CHECK(weak.conductivity_W_per_mK == Approx(water.conductivity_W_per_mK).epsilon(0.02));
    CHECK(weak.viscosity_Pa_s == Approx(water.viscosity_Pa_s).epsilon(0.04));
    CHECK(freezing_point_degC({kind, 1e-9}, Family::pure) == Approx(0.0).margin(0.2));
  }
}

TEST_CASE("the spread between the families is what they differ by") {
  const Mixture mixture{FluidKind::propylene_glycol, 0.4};
  const FamilySpread spread = family_spread(mixture, 30.0);
  const FluidProperties inhibited = properties_of(mixture, 30.0);
  const FluidProperties pure = properties_of(mixture, 30.0, Family::pure);
  CHECK(inhibited.viscosity_Pa_s * (1.0 + spread.viscosity_share) == Approx(pure.viscosity_Pa_s).epsilon(1e-14));
  CHECK(inhibited.density_kg_per_m3 * (1.0 + spread.density_share) == Approx(pure.density_kg_per_m3).epsilon(1e-14));
  CHECK(spread.viscosity_share != 0.0);
  CHECK(spread.freezing_K ==
        Approx(freezing_point_degC(mixture, Family::pure) - freezing_point_degC(mixture, Family::inhibited)));
  CHECK(family_spread({}, 30.0).viscosity_share == 0.0);
}

TEST_CASE("a warmer fluid fills more") {
  const Mixture glycol{FluidKind::propylene_glycol, 0.4};
  CHECK(volume_ratio(glycol, 10.0, 50.0) > volume_ratio({}, 10.0, 50.0));
  CHECK(volume_ratio({}, 10.0, 50.0) > 1.0);
  CHECK(volume_ratio(glycol, 10.0, 50.0) * volume_ratio(glycol, 50.0, 10.0) == Approx(1.0).epsilon(1e-15));
}
