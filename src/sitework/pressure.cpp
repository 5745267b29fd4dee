#include "slabwright/sitework_pressure.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/handbook_air.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double bar_Pa = 1e5, degF_K = 5.0 / 9.0;
constexpr double cold_month_mean_degC = 5.0;  // its nights freeze
constexpr int rows_each_way = 3;

/// IRC M2101.10: one and a half times the design pressure, 100 psi at least, for a quarter of an hour.
constexpr double irc_share = 1.5, irc_least_Pa = 100.0 * psi_Pa;
constexpr const char* irc = "IRC M2101.10 as code commentaries have it; see your edition";
constexpr const char* en = "EN 1264-4:2021";

std::vector<TestRule> of_north_america(const Design& design) {
  // A closed system can be no higher than its relief valve lets it.
  const double least_Pa = std::max(irc_share * design.pressure.relief_Pa, irc_least_Pa);
  return {{TestMedium::water, least_Pa, {}, "15 minutes or longer", irc, "before anything is covered"},
          {TestMedium::air,
           least_Pa,
           {},
           "15 minutes or longer",
           irc,
           "only where the tube's maker and the authority allow compressed gas"}};
}

std::vector<TestRule> of_europe() {
  return {{TestMedium::water, 4.0 * bar_Pa, 6.0 * bar_Pa, "until it is covered", en, "written down"},
          {TestMedium::air, 2.0 * bar_Pa, 3.0 * bar_Pa, "until it is covered", en, "written down"}};
}

TestRule of_practice(bool us) {
  return {TestMedium::air,   us ? 50.0 * psi_Pa : 3.5 * bar_Pa, us ? 100.0 * psi_Pa : 7.0 * bar_Pa, "24 hours",
          "common practice", "judged at like temperature"};
}

void add_rules(PressureTest& test, const Design& design) {
  if (design.codes == Codes::north_america) test.rule = of_north_america(design);
  if (design.codes == Codes::europe) test.rule = of_europe();
  test.rule.push_back(of_practice(design.units == System::us));
  // On air, as high as the code lets it where it says so, else as high as it asks.
  const TestRule& on_air = test.rule[design.codes == Codes::none ? 0 : 1];
  test.pumped_Pa = design.codes == Codes::europe ? *on_air.most_Pa : on_air.least_Pa;
}

void add_medium(PressureTest& test, const Design& design, const std::optional<double>& month_degC) {
  const bool cold = month_degC && *month_degC < cold_month_mean_degC;
  test.medium = cold ? TestMedium::air : TestMedium::water;
  if (cold)
    test.because = "The month of the pour is cold: water could freeze in the tubes before there is heat.";
  else
    test.because =
        "Water stores little energy and shows where it leaks. On air where frost may come before heat does, and where "
        "the code allows it.";
  if (design.fluid.kind != FluidKind::water) test.because += " No glycol before the last test is passed.";
}

/// Rows in steps of 10 F or 5 K about a round temperature.
void add_readings(PressureTest& test, const Design& design, const std::optional<double>& month_degC) {
  const bool us = design.units == System::us;
  const double step_K = us ? 10.0 * degF_K : 5.0, zero_degC = us ? -32.0 * degF_K : 0.0;
  const double usual_degC = us ? 60.0 * degF_K + zero_degC : 15.0;
  const double middle = std::round((month_degC.value_or(usual_degC) - zero_degC) / step_K);
  test.pumped_degC = zero_degC + middle * step_K;
  const double atmosphere_Pa = air_pressure_Pa(design.climate.altitude_m);
  for (int i = -rows_each_way; i <= rows_each_way; ++i) {
    const double degC = zero_degC + (middle + i) * step_K;
    test.at.push_back({degC, air_reading_Pa({test.pumped_Pa, test.pumped_degC}, degC, atmosphere_Pa),
                       air_reading_Pa({test.pour_Pa, test.pumped_degC}, degC, atmosphere_Pa)});
  }
}

}  // namespace

PressureTest pressure_test(const Design& design, const std::array<double, 12>& month_degC) {
  const bool us = design.units == System::us;
  std::optional<double> month;
  if (design.project.poured) month = month_degC[static_cast<std::size_t>(design.project.poured->on.month - 1)];
  PressureTest test;
  add_rules(test, design);
  add_medium(test, design, month);
  test.allowed_Pa = us ? 5.0 * psi_Pa : 0.3 * bar_Pa;
  test.pour_least_Pa = us ? 25.0 * psi_Pa : 2.0 * bar_Pa;
  test.pour_most_Pa = us ? 60.0 * psi_Pa : 4.0 * bar_Pa;
  test.pour_Pa = us ? 50.0 * psi_Pa : 3.0 * bar_Pa;
  add_readings(test, design, month);
  test.care = {
      "The local authority and the tube's maker come before every figure here.",
      "Air under pressure stores energy: keep people away, pump slowly, and never above what is allowed.",
      "Shut off boiler, tank and relief valve before the test if they are not made for its pressure; never plug "
      "a relief valve that stays in use.",
      "Tube of plastic yields for hours: pump it up again after half an hour and again after an hour before the "
      "time counts."};
  return test;
}

}  // namespace slabwright
