// Mixing valve, hydraulic separator and a run that cools: exact balances worked by hand.
#include "slabwright/handbook_mixing.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("mixing valve") {
  const Source balance{"Heat balance", "mixing valve 45/37/70 degC, 1.2 m3/h", Oracle::derived};
  const double share = mixing_share(45.0, 37.0, 70.0).value();
  CHECK_PUBLISHED(balance, "share of boiler water", "0.2424242", share);
  CHECK_PUBLISHED(balance, "boiler water, m3/h", "0.2909091", 1.2 * share);
}

TEST_CASE("hydraulic separator") {
  const Source balance{"Heat balance", "hydraulic separator 55/35 degC", Oracle::derived};
  CHECK_PUBLISHED(balance, "0.6 against 1.2: floor supply, degC", "45.0",
                  separate({0.6, 1.2, 55.0, 35.0}).floor_supply_degC);
  CHECK_PUBLISHED(balance, "1.5 against 1.2: boiler return, degC", "39.0",
                  separate({1.5, 1.2, 55.0, 35.0}).boiler_return_degC);
}

TEST_CASE("a run that cools") {
  const Source loop{"Exponential decline", "0.2 m3/h at 40 degC, UA 12 W/K, 45 degC into 20 degC", Oracle::derived};
  const double capacity = 0.2 / 3600.0 * 992.216353 * 4179.4148;  // IAPWS-95 water at 40 degC
  const double end = run_end_degC(45.0, 20.0, 12.0, capacity);
  CHECK_PUBLISHED(loop, "end, degC", "43.73114971", end);
  CHECK_PUBLISHED(loop, "heat, W", "292.32081", capacity * (45.0 - end));
  const Source pipe{"Open pipe-network library, reference case of one pipe", "100 m, 75 mm, 3 kg/s, exact plug flow",
                    Oracle::derived};
  const double loss = 100.0 * 3.14159265358979 * 0.075 * 100.0;
  CHECK_PUBLISHED(pipe, "end, K", "351.2033", 273.15 + run_end_degC(90.0, 20.0, loss, 3.0 * 4197.0));
}
