// Air of a workshop: worked examples by hand by the forms of ASHRAE Fundamentals.
#include "slabwright/handbook_air.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double foot_m = 0.3048;
constexpr double cubic_foot_m3 = foot_m * foot_m * foot_m;
constexpr double cfm_m3_per_s = cubic_foot_m3 / 60.0;
constexpr double btu_per_h_degF_W_per_K = 1055.05585262 / 3600.0 * 1.8;

}  // namespace

TEST_CASE("infiltration of a shop of 30 x 40 x 12 ft") {
  const Source worked{"ASHRAE Fundamentals, infiltration load", "1.08 cfm, shop of 14 400 ft3", Oracle::derived};
  struct Case {
    double changes_per_h;
    const char *cfm, *us, *si;
  };
  for (const Case& c :
       {Case{0.25, "60", "64.8", "34.18"}, Case{0.5, "120", "129.6", "68.37"}, Case{1.0, "240", "259.2", "136.74"}}) {
    const double flow_m3_per_s = 14400.0 * cubic_foot_m3 * c.changes_per_h / 3600.0;
    const double conductance = air_stream_cfm_form_W_per_K(flow_m3_per_s);
    const std::string at = std::string(c.cfm) + " cfm: ";
    CHECK_PUBLISHED(worked, at + "air, cfm", c.cfm, flow_m3_per_s / cfm_m3_per_s);
    CHECK_PUBLISHED(worked, at + "conductance, Btu/h degF", c.us, conductance / btu_per_h_degF_W_per_K);
    CHECK_PUBLISHED(worked, at + "conductance, W/K", c.si, conductance);
  }
}

TEST_CASE("exhaust fan and open door") {
  const Source arithmetic{"Arithmetic of workshop loads", "worked by hand", Oracle::derived};
  CHECK_PUBLISHED(arithmetic, "1200 cfm at 70 degF, kW", "27",
                  exhaust_heat_W(1200.0 * cfm_m3_per_s, 70.0 / 1.8) / 1000.0);
  CHECK_PUBLISHED(arithmetic, "door of 3.66 x 3.05 m at 25 K, kW", "117", door_heat_W({3.66, 3.05}, 25.0) / 1000.0);
}
