// ASHRAE HVAC Systems and Equipment, hydronic system design chapter: expansion tanks. Results worked out by a second
// program from the example's figures.
#include "slabwright/handbook_tank.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double psi_Pa = 6894.757293168;
constexpr double gallon_m3 = 3.785411784e-3;
constexpr double printed_air_psi = 14.7;

TankPressures between(double fill_psig, double most_psig) {
  return {(fill_psig + printed_air_psi) * psi_Pa, (most_psig + printed_air_psi) * psi_Pa, printed_air_psi * psi_Pa};
}

}  // namespace

TEST_CASE("expansion tank of the worked example") {
  const Source example{"ASHRAE HVAC Systems and Equipment (2000)",
                       "hydronic chapter, 3000 gal, 40 to 220 degF (10 and 25 psig from memory)", Oracle::derived};
  const double grown = expansion_m3(3000.0 * gallon_m3, 0.01677 / 0.01602 - 1.0, steel_expansion_per_K, 180.0 / 1.8);
  CHECK_PUBLISHED(example, "expansion, gal", "129.919", grown / gallon_m3);
  const TankPressures p = between(10.0, 25.0);
  CHECK_PUBLISHED(example, "diaphragm tank, gal", "343.85", diaphragm_tank_m3(grown, p).value() / gallon_m3);
  CHECK_PUBLISHED(example, "plain closed tank, gal", "577.77", closed_tank_m3(grown, p).value() / gallon_m3);
  CHECK_PUBLISHED(example, "open tank, gal", "259.84", open_tank_m3(grown) / gallon_m3);
}

TEST_CASE("expansion tank of a workshop") {
  const Source example{"ASHRAE HVAC Systems and Equipment (2000)", "eq. 14, 40 gal, 40 to 120 degF, 12 and 27 psig",
                       Oracle::derived};
  const double grown = expansion_m3(40.0 * gallon_m3, expansion_share(1.0 / 0.01602, 1.0 / 0.01620), 0.0, 0.0);
  CHECK_PUBLISHED(example, "expansion, gal", "0.449438", grown / gallon_m3);
  CHECK_PUBLISHED(example, "diaphragm tank, gal", "1.249438",
                  diaphragm_tank_m3(grown, between(12.0, 27.0)).value() / gallon_m3);
  CHECK_PUBLISHED(example, "plain closed tank, gal", "2.269388",
                  closed_tank_m3(grown, between(12.0, 27.0)).value() / gallon_m3);
}

TEST_CASE("fill pressure from the height of the system") {
  const Source manual{"Trade manual on hydronic fill pressure", "height / 2.31 + 4 psi", Oracle::derived};
  CHECK_PUBLISHED(manual, "12 ft, psig", "9.19", fill_gauge_Pa(12.0 * 0.3048) / psi_Pa);
  CHECK_PUBLISHED(manual, "40 ft, psig", "21.32", fill_gauge_Pa(40.0 * 0.3048) / psi_Pa);
}
