// The friction factor and the loss of a straight tube as functions of the flow.
#include <rapidcheck.h>

#include <cmath>

#include "slabwright/tube.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr Liquid warm_water{992.2, 652.7e-6};
constexpr Bore loop{90.0, 0.012065, 7e-6};
constexpr double pi = 3.14159265358979323846;

double flow_at(double reynolds, const Bore& bore = loop, const Liquid& liquid = warm_water) {
  return reynolds * pi * bore.inside_diameter_m * liquid.viscosity_Pa_s / (4.0 * liquid.density_kg_per_m3);
}

// A number between the two, evenly in its logarithm.
double drawn(double low, double high) {
  const double share = static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
  return low * std::pow(high / low, share);
}

}  // namespace

TEST_CASE("Colebrook's equation holds to rounding") {
  CHECK(rc::check("residual", [] {
    const double reynolds = drawn(2300.0, 1e8);
    const double roughness = *rc::gen::inRange(0, 4) == 0 ? 0.0 : drawn(1e-7, 0.05);
    const double x = 1.0 / std::sqrt(colebrook(reynolds, roughness));
    const double right = -2.0 * std::log10(roughness / 3.7 + 2.51 * x / reynolds);
    RC_ASSERT(std::abs(x - right) <= 4e-15 * x);  // 16 roundings of 2.2e-16 on the way there and back
  }));
}

TEST_CASE("the friction factor is continuous at both ends of the blend") {
  for (const double roughness : {0.0, 1e-4, 5.7e-4, 1e-2, 0.05}) {
    const double step = 1e-9;
    for (const double kink : {laminar_up_to_reynolds, turbulent_from_reynolds}) {
      const double below = friction_factor(kink * (1.0 - step), roughness).darcy;
      const double above = friction_factor(kink * (1.0 + step), roughness).darcy;
      CHECK(std::abs(above - below) <= 4.0 * step * above);  // |d ln f / d ln Re| stays under 2 on either side
    }
  }
}

TEST_CASE("the regimes meet where they are said to meet") {
  CHECK(friction_factor(2300.0, 0.0).regime == Regime::laminar);
  CHECK(friction_factor(2300.1, 0.0).regime == Regime::blended);
  CHECK(friction_factor(3999.9, 0.0).regime == Regime::blended);
  CHECK(friction_factor(4000.0, 0.0).regime == Regime::turbulent);
  CHECK(friction_factor(1000.0, 0.0).darcy == Approx(0.064).epsilon(1e-15));
  CHECK(friction_factor(1000.0, 0.05).darcy == friction_factor(1000.0, 0.0).darcy);
}

TEST_CASE("the slope of the friction factor is its derivative") {
  CHECK(rc::check("central difference", [] {
    const double reynolds = drawn(100.0, 1e7);
    const double roughness = drawn(1e-6, 0.05);
    const double step = 1e-5 * reynolds;
    for (const double kink : {2300.0, 4000.0}) RC_PRE(std::abs(reynolds - kink) > 2.0 * step);
    const double difference =
        (friction_factor(reynolds + step, roughness).darcy - friction_factor(reynolds - step, roughness).darcy) /
        (2.0 * step);
    const FrictionFactor f = friction_factor(reynolds, roughness);
    // Rounding 2.2e-16 f over the step, and the third derivative's share.
    RC_ASSERT(std::abs(f.slope_per_reynolds - difference) <= 1e-9 * f.darcy / reynolds);
  }));
}

TEST_CASE("the loss is odd in the flow") {
  CHECK(rc::check("odd", [] {
    const double flow = flow_at(drawn(1.0, 1e6));
    const Loss there = tube_loss(loop, warm_water, flow);
    const Loss back = tube_loss(loop, warm_water, -flow);
    RC_ASSERT(there.pressure_Pa == -back.pressure_Pa);
    RC_ASSERT(there.slope_Pa_s_per_m3 == back.slope_Pa_s_per_m3);
  }));
}

TEST_CASE("the loss rises strictly with the flow, whatever the roughness") {
  for (const double roughness : {0.0, 7e-6, 6e-4}) {
    const Bore bore{90.0, 0.012, roughness};
    double last = tube_loss(bore, warm_water, flow_at(-20000.0, bore)).pressure_Pa;
    for (double reynolds = -19990.0; reynolds <= 20000.0; reynolds += 10.0) {
      const Loss loss = tube_loss(bore, warm_water, flow_at(reynolds, bore));
      CHECK(loss.pressure_Pa > last);
      CHECK(loss.slope_Pa_s_per_m3 > 0.0);
      last = loss.pressure_Pa;
    }
  }
}

TEST_CASE("the slope of the loss is its derivative") {
  CHECK(rc::check("central difference", [] {
    const double reynolds = drawn(10.0, 1e6);
    const double step = 1e-5;
    for (const double kink : {2300.0, 4000.0}) RC_PRE(std::abs(reynolds / kink - 1.0) > 2.0 * step);
    const double flow = flow_at(reynolds);
    const double rise = tube_loss(loop, warm_water, flow * (1.0 + step)).pressure_Pa -
                        tube_loss(loop, warm_water, flow * (1.0 - step)).pressure_Pa;
    const double slope = tube_loss(loop, warm_water, flow).slope_Pa_s_per_m3;
    RC_ASSERT(std::abs(rise / (2.0 * step * flow) - slope) <= 1e-9 * slope);
  }));
}

TEST_CASE("water at rest loses nothing and resists as laminar water does") {
  const Loss rest = tube_loss(loop, warm_water, 0.0);
  CHECK(rest.pressure_Pa == 0.0);
  CHECK(rest.slope_Pa_s_per_m3 == tube_loss(loop, warm_water, flow_at(500.0)).slope_Pa_s_per_m3);
  CHECK(rest.slope_Pa_s_per_m3 == Approx(128.0 * 652.7e-6 * 90.0 / (pi * std::pow(0.012065, 4.0))).epsilon(1e-14));
}

TEST_CASE("twice the length, twice the loss") {
  const Bore twice{2.0 * loop.length_m, loop.inside_diameter_m, loop.roughness_m};
  for (const double reynolds : {900.0, 3000.0, 9000.0}) {
    const double flow = flow_at(reynolds);
    CHECK(tube_loss(twice, warm_water, flow).pressure_Pa ==
          Approx(2.0 * tube_loss(loop, warm_water, flow).pressure_Pa).epsilon(1e-14));
  }
}

TEST_CASE("a fitting loses K velocity pressures") {
  const double area = 0.25 * pi * 0.012 * 0.012;
  const Loss loss = fitting_loss(1.5, 0.012, warm_water, -0.5 * area);  // 0.5 m/s backwards
  CHECK(loss.pressure_Pa == Approx(-1.5 * 992.2 * 0.5 * 0.5 / 2.0).epsilon(1e-14));
  CHECK(loss.slope_Pa_s_per_m3 == Approx(1.5 * 992.2 * 0.5 / area).epsilon(1e-14));
  CHECK(fitting_loss(1.5, 0.012, warm_water, 0.0).slope_Pa_s_per_m3 == 0.0);
}

TEST_CASE("what makes no sense is refused") {
  CHECK_THROWS(colebrook(0.0, 1e-4));
  CHECK_THROWS(colebrook(5000.0, -1e-4));
  CHECK_THROWS(friction_factor(0.0, 0.0));
  CHECK_THROWS(tube_loss({0.0, 0.012, 0.0}, warm_water, 1e-5));
  CHECK_THROWS(tube_loss({10.0, 0.0, 0.0}, warm_water, 1e-5));
  CHECK_THROWS(tube_loss(loop, {1000.0, 0.0}, 1e-5));
  CHECK_THROWS(fitting_loss(-0.1, 0.012, warm_water, 1e-5));
}
