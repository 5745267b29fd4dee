// A deep body under a surface that swings: amplitude exp(-x/d) and lag x P / (2 pi d), d = sqrt(alpha P / pi).
#include <cmath>

#include "slabwright/conduction_time.hpp"
#include "slabwright/units_exact.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Kind = FieldDriver::Kind;
constexpr double year_s = 3.15e7;
constexpr double high_m = 0.01;

FieldSection deep_body(double diffusivity_m2_per_s, double deep_m) {
  FieldSection section;
  section.drivers = {{"surface", Kind::temperature}};
  section.materials = {{0.0, deep_m, 0.0, high_m, 1.0, 1.0 / diffusivity_m2_per_s}};
  section.boundaries = {{{{0.0, 0.0}, {0.0, high_m}}, FixedTemperature{{0}, {0}}}};
  return section;
}

struct Material {
  const char* name;
  double diffusivity_m2_per_s;
  const char* yearly[3];  ///< amplitude at 0.5, 1, 2 m
  const char* lag_days;   ///< at 1 m
  const char* daily;      ///< amplitude at 0.10 m, empty where there is none
};

const Material materials[] = {{"concrete", 1.75 / (2300.0 * 880.0), {"0.8438", "0.7120", "0.5070"}, "19.71", "0.5228"},
                              {"clay or silt", 5e-7, {"0.7999", "0.6398", "0.4093"}, "25.92", "0.4262"},
                              {"sand", 1e-6, {"0.8539", "0.7292", "0.5317"}, "18.32", "0.5472"},
                              {"benchmark soil", 1.9 / (1490.0 * 1800.0), {"0.8289", "0.6871", "0.4722"}, "21.77", ""}};

Source swinging(const char* place) { return {"Deep body under a swinging surface", place, Oracle::derived}; }
const Within cells{0.0005, 0.0, "20 cells and more to a radian of the wave"};

double amplitude(const SwingResponses& swing, std::size_t point) {
  return std::hypot(swing.weights_with[point][0], swing.weights_behind[point][0]);
}

}  // namespace

TEST_CASE("how deep a yearly and a daily swing go") {
  for (const Material& material : materials) {
    const std::string name = material.name;
    const SwingResponses year = swing_responses(deep_body(material.diffusivity_m2_per_s, 30.0),
                                                {{0.5, 0.0}, {1.0, 0.0}, {2.0, 0.0}}, year_s, {0.1, 1.0, 0.1, false});
    const char* depths[] = {"0.5", "1", "2"};
    for (std::size_t i = 0; i < 3; ++i)
      CHECK_PUBLISHED(swinging("yearly"), name + ", amplitude at " + depths[i] + " m", material.yearly[i],
                      amplitude(year, i), cells);
    const double lag_s = std::atan2(year.weights_behind[1][0], year.weights_with[1][0]) / (2.0 * pi) * year_s;
    CHECK_PUBLISHED(swinging("yearly"), name + ", lag at 1 m, days", material.lag_days, lag_s / day_s,
                    Within{0.02, 0.0, "0.1 % of the lag"});
    if (material.daily[0] == '\0') continue;
    const SwingResponses day =
        swing_responses(deep_body(material.diffusivity_m2_per_s, 2.0), {{0.1, 0.0}}, day_s, {0.005, 1.0, 0.005, false});
    CHECK_PUBLISHED(swinging("daily"), name + ", amplitude at 0.10 m", material.daily, amplitude(day, 0), cells);
  }
}

TEST_CASE("a long run from rest comes to the daily swing") {
  const FieldSection section = deep_body(1e-6, 1.0);
  DriverSeries series;
  const int per_day = 48, days = 12;
  for (int i = 0; i <= days * per_day; ++i) {
    series.times_s.push_back(i * day_s / per_day);
    series.drivers.push_back({std::sin(2.0 * pi * i / per_day)});
  }
  const FieldRun run =
      field_run(section, {{0.1, 0.0}}, steady_drivers({0.0}), series, {{0.005, 1.0, 0.005, false}, 1e-5, 1e-4});
  double highest = 0.0;
  for (std::size_t i = static_cast<std::size_t>((days - 1) * per_day); i < run.temperatures_degC.size(); ++i)
    highest = std::max(highest, run.temperatures_degC[i][0]);
  CHECK_PUBLISHED(swinging("daily, a run of 12 days"), "sand, amplitude at 0.10 m", "0.5472", highest,
                  Within{0.002, 0.0, "read every half hour: 0.2 %; driver straight between: 0.1 %"});
}
