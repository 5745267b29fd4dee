// Currents of electric boilers and the standard device under the NEC.
#include "slabwright/handbook_electrical.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Case {
  double kW, V;
  Phases phases;
  const char *what, *current, *demand, *device;
};

}  // namespace

TEST_CASE("an example of the code's own commentary") {
  const Source commentary{"NEC 424.3(B), worked example in an electricians' reference", "9600 W, 240 V, 3 A blower"};
  const double current = electric_current_A(9600.0, 240.0, Phases::one) + 3.0;
  const NorthAmericanSupply supply = north_american_supply(current);
  CHECK_PUBLISHED(commentary, "current, A", "43", current);
  CHECK_PUBLISHED(commentary, "125 %, A", "53.75", supply.demand_A);
  CHECK_PUBLISHED(commentary, "device, A", "60", supply.device_A.value());
}

TEST_CASE("boilers by size and voltage") {
  const Source table{"Table of boiler currents, NEC 210.20(A) and 240.6(A)", "computed", Oracle::derived};
  const Case cases[] = {
      {9, 240, Phases::one, "9 kW 240 V", "37.5", "46.875", "50"},
      {9.6, 240, Phases::one, "9.6 kW 240 V", "40.0", "50.0", "50"},
      {12, 240, Phases::one, "12 kW 240 V", "50.0", "62.5", "70"},
      {14.4, 240, Phases::one, "14.4 kW 240 V", "60.00", "75.00", "80"},
      {18, 240, Phases::one, "18 kW 240 V", "75.0", "93.75", "100"},
      {24, 240, Phases::one, "24 kW 240 V", "100.0", "125.0", "125"},
      {9, 208, Phases::one, "9 kW 208 V", "43.2692", "54.0865", "60"},
      {18, 208, Phases::three, "18 kW 208 V three-phase", "49.963", "62.4538", "70"},
      {27, 208, Phases::three, "27 kW 208 V three-phase", "74.9445", "93.6806", "100"},
      {24, 208, Phases::three, "24 kW 208 V three-phase", "66.62", "83.27", "90"},
  };
  for (const Case& c : cases) {
    const double current = electric_current_A(1000.0 * c.kW, c.V, c.phases);
    const NorthAmericanSupply supply = north_american_supply(current);
    const std::string what = std::string(c.what) + ": ";
    CHECK_PUBLISHED(table, what + "current, A", c.current, current);
    CHECK_PUBLISHED(table, what + "125 %, A", c.demand, supply.demand_A);
    CHECK_PUBLISHED(table, what + "device, A", c.device, supply.device_A.value());
  }
  CHECK_PUBLISHED(table, "24 kW 480 V three-phase: current, A", "28.87",
                  electric_current_A(24000.0, 480.0, Phases::three));
  CHECK_PUBLISHED(table, "9 kW 400 V three-phase: current, A", "13", electric_current_A(9000.0, 400.0, Phases::three));
}

TEST_CASE("a 240 V element on 208 V") {
  const Source ratio{"Ohm's law", "resistance at another voltage", Oracle::derived};
  CHECK_PUBLISHED(ratio, "share of its power", "0.751111", element_power_W(1.0, 240.0, 208.0));
  CHECK_PUBLISHED(ratio, "12 kW, kW", "9.013", element_power_W(12.0, 240.0, 208.0));
  CHECK_PUBLISHED(ratio, "14.4 kW, kW", "10.816", element_power_W(14.4, 240.0, 208.0));
}
