// A pump curve through three points, and the power a pump gives to the water.
#include <cmath>

#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;

namespace {

const Source curve{"EPANET 2.2 User Manual", "pump curve A - B Q^C through (0, 6) (1, 5.2) (2, 2.8)", Oracle::derived};
const Source power{"Hydraulic power rho g Q H", "1.2 m3/h, 4.848 m, 992.216 kg/m3", Oracle::derived};

}  // namespace

TEST_CASE("three points") {
  const auto law = pump_law_through({0.0, 6.0}, {1.0 / 3600.0, 5.2}, {2.0 / 3600.0, 2.8});
  REQUIRE(law);
  const PumpLaw& found = *law.value;
  const double fall = found.no_flow_head_m / std::pow(3600.0 * found.no_head_flow_m3_per_s, found.exponent);
  CHECK_PUBLISHED(curve, "A, m", "6.000000", found.no_flow_head_m);
  CHECK_PUBLISHED(curve, "B, m per (m3/h)^C", "0.800000", fall);
  CHECK_PUBLISHED(curve, "C", "2.000000", found.exponent);
}

TEST_CASE("power given to the water") {
  const double flow = 1.2 / 3600.0, rise = 992.216 * 9.80665 * 4.848;
  CHECK_PUBLISHED(power, "W", "15.7242", hydraulic_power_W(flow, rise));
}
