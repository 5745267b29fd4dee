// Curves of heat pumps over outdoor temperature, and what ice takes. Coefficients as open programs carry them; values
// by a second program.
#include <tuple>

#include "slabwright/heater_curves.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

double from_degF(double degF) { return (degF - 32.0) / 1.8; }

std::string at(double outdoor, const char* unit) {
  return std::to_string(static_cast<int>(outdoor)) + " " + unit + " outdoors: ";
}

}  // namespace

TEST_CASE("single-speed air to air in a room of 70 F") {
  const Source source{"NREL/TP-5500-56354", "heating curves as open programs carry them", Oracle::derived};
  struct Row {
    double out_degF;
    const char *capacity, *cop;
  };
  for (const Row& r : {Row{62, "1.2127", "1.0964"}, Row{47, "0.9958", "1.0063"}, Row{35, "0.8387", "0.9052"},
                       Row{17, "0.6304", "0.7423"}, Row{5, "0.5097", "0.6412"}, Row{0, "0.4638", "0.6024"},
                       Row{-5, "0.4203", "0.5657"}, Row{-13, "0.3561", "0.5117"}}) {
    const HeatPumpShares shares = single_speed_heat_pump(from_degF(70.0), from_degF(r.out_degF));
    CHECK_PUBLISHED(source, at(r.out_degF, "F") + "capacity over rated", r.capacity, shares.capacity_share);
    CHECK_PUBLISHED(source, at(r.out_degF, "F") + "COP over rated", r.cop, shares.cop_share);
  }
}

TEST_CASE("air to water by its lift") {
  const Source source{"Scientific Data 6:189 (2019)", "COP of air to water by lift", Oracle::derived};
  const Source exact{"Carnot", "water of 35 degC", Oracle::derived};
  struct Row {
    double out_degC;
    const char *floor, *house, *water_35, *carnot;
  };
  for (const Row& r : {Row{7, "4.5151", "3.8379", "3.9520", "11.005"}, Row{2, "4.0145", "3.4123", "3.6545", "9.338"},
                       Row{-7, "3.2551", "2.7669", "3.1820", "7.337"}, Row{-15, "2.7331", "2.3232", "2.8300", "6.163"},
                       Row{-20, "2.4800", "2.1080", "2.6425", "5.603"}}) {
    const double floor = air_to_water_cop(air_to_water_floor_degC(r.out_degC) - r.out_degC);
    CHECK_PUBLISHED(source, at(r.out_degC, "degC") + "into a floor", r.floor, floor);
    CHECK_PUBLISHED(source, at(r.out_degC, "degC") + "into a floor, in houses", r.house, real_life_share * floor);
    CHECK_PUBLISHED(source, at(r.out_degC, "degC") + "into 35 degC", r.water_35, air_to_water_cop(35.0 - r.out_degC));
    CHECK_PUBLISHED(exact, at(r.out_degC, "degC") + "COP", r.carnot, carnot_cop(35.0, r.out_degC));
  }
}

TEST_CASE("what ice on a coil takes") {
  const Source source{"US DOE engineering reference for building simulation", "defrost of air-to-air heat pumps",
                      Oracle::derived};
  const Within ice{5e-7 * 107.33 + 5e-5, 0.0, "ice is stated to 1e-6"};
  struct Row {
    const char* name;
    double ice;
    const char *capacity, *power;
  };
  for (const Row& r :
       {Row{"1.667 degC, 80 %", 0.001361, "0.7630", "0.8504"}, Row{"-5 degC, 80 %", 0.000723, "0.8314", "0.8736"},
        Row{"-10 degC, 80 %", 0.000418, "0.8641", "0.8847"}, Row{"-20 degC, 80 %", 0.000118, "0.8963", "0.8957"}}) {
    const DefrostShares shares = defrost_by_clock(r.ice);
    CHECK_PUBLISHED(source, std::string(r.name) + ", by the clock: capacity kept", r.capacity, shares.capacity_share,
                    ice);
    CHECK_PUBLISHED(source, std::string(r.name) + ", by the clock: power kept", r.power, shares.power_share, ice);
  }
  const Within time{5e-7 / 0.01446 + 5e-5, 0.0, "ice is stated to 1e-6"};
  for (const auto& [name, share, printed] :
       {std::tuple{"1.667 degC, 80 %", 0.001361, "0.0860"}, std::tuple{"-5 degC, 80 %", 0.000723, "0.0476"},
        std::tuple{"-10 degC, 80 %", 0.000418, "0.0281"}, std::tuple{"-20 degC, 80 %", 0.000118, "0.0081"}})
    CHECK_PUBLISHED(source, std::string(name) + ", on demand: time", printed, defrost_on_demand(share).time_share,
                    time);
  CHECK_PUBLISHED(source, "1.667 degC, 80 %, on demand: capacity kept", "0.7998",
                  defrost_on_demand(0.001361).capacity_share, time);
  CHECK_PUBLISHED(source, "1.667 degC, 80 %, on demand: power kept", "0.8720", defrost_on_demand(0.001361).power_share,
                  time);
  CHECK_PUBLISHED(source, "-5 degC, 80 %, on demand: capacity kept", "0.8333",
                  defrost_on_demand(0.000723).capacity_share, time);
  CHECK_PUBLISHED(source, "-5 degC, 80 %, on demand: power kept", "0.9086", defrost_on_demand(0.000723).power_share,
                  time);
}
