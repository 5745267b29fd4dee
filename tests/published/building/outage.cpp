// A shop of 30 x 40 ft without power, and warmed again: air and two halves of its slab. All figures computed by a
// second program from the same three equations.
#include <array>

#include "slabwright/maths_linear.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Vector = std::vector<double>;

// States: air, upper and lower half of the slab. Inputs: outdoors, ground, W into the lower half.
LinearSystem shop() {
  const double floor_m2 = 30.0 * 40.0 * 0.3048 * 0.3048;
  const double air_J_per_K = 3.0e6, half_J_per_K = 0.5 * 0.1524 * 2300.0 * 880.0 * floor_m2;
  const double out = 150.0, film_and_quarter = floor_m2 / (1.0 / 8.0 + 0.1524 / 4.0 / 1.75);
  const double halves = floor_m2 / (0.1524 / 2.0 / 1.75), down = floor_m2 / (1.76 + 1.0 + 0.1524 / 4.0 / 1.75);
  LinearSystem system;
  system.of_states = {
      {-(out + film_and_quarter) / air_J_per_K, film_and_quarter / air_J_per_K, 0.0},
      {film_and_quarter / half_J_per_K, -(film_and_quarter + halves) / half_J_per_K, halves / half_J_per_K},
      {0.0, halves / half_J_per_K, -(halves + down) / half_J_per_K}};
  system.of_inputs = {{out / air_J_per_K, 0.0, 0.0}, {0.0, 0.0, 0.0}, {0.0, down / half_J_per_K, 1.0 / half_J_per_K}};
  return system;
}

constexpr double ground_degC = 5.0;
const LinearOutput air{{1.0, 0.0, 0.0}, {}}, upper{{0.0, 1.0, 0.0}, {}};

double from_degF(double degF) { return (degF - 32.0) / 1.8; }

// Power that holds the air: the rest is a straight line in it.
double hold_W(const LinearSystem& system, double air_degC, double out_degC) {
  const double cold = steady_state(system, {out_degC, ground_degC, 0.0}).value()[0];
  const double with_1kW = steady_state(system, {out_degC, ground_degC, 1000.0}).value()[0];
  return 1000.0 * (air_degC - cold) / (with_1kW - cold);
}

std::string degF(double at) { return std::to_string(static_cast<int>(at)) + " F"; }

}  // namespace

TEST_CASE("an hour of the shop in matrices") {
  const Source source{"Shop of three states, computed by a second program", "hourly matrices", Oracle::derived};
  const Vector constants = time_constants_s(shop());
  CHECK_PUBLISHED(source, "shortest time constant, h", "0.695965", constants[0] / hour_s);
  CHECK_PUBLISHED(source, "middle time constant, h", "1.139015", constants[1] / hour_s);
  CHECK_PUBLISHED(source, "longest time constant, h", "61.549003", constants[2] / hour_s);
  const std::array<std::array<const char*, 3>, 3> keep{{{"0.36473723", "0.40580806", "0.11730172"},
                                                        {"0.07080522", "0.61020115", "0.30906414"},
                                                        {"0.02046676", "0.30906414", "0.66225378"}}};
  const std::array<std::array<const char*, 3>, 3> held{{{"0.111757431", "3.95553093e-4", "9.86995233e-6"},
                                                        {"8.37595575e-3", "1.55353068e-3", "3.87641358e-5"},
                                                        {"1.48049285e-3", "6.73482687e-3", "1.68049300e-4"}}};
  const LinearStep step = exact_step(shop(), hour_s);
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j) {
      const std::string at = std::to_string(i + 1) + std::to_string(j + 1);
      CHECK_PUBLISHED(source, "A " + at, keep[i][j], step.keep[i][j]);
      CHECK_PUBLISHED(source, "B " + at, held[i][j], step.held[i][j]);
    }
}

TEST_CASE("hours without power") {
  const Source source{"Shop of three states, computed by a second program", "outage, ground 5 degC", Oracle::derived};
  struct Row {
    double hold_degF, out_degF;
    const char *power, *upper, *lower, *air_h, *upper_h, *after_12h, *after_24h;
  };
  const LinearSystem system = shop();
  for (const Row& r : {Row{40, -20, "5320", "11.03", "12.98", "13.12", "27.14", "0.41", "-3.58"},
                       Row{40, 0, "3539", "8.83", "10.13", "19.69", "34.19", "1.76", "-0.89"},
                       Row{45, -20, "5876", "14.35", "16.47", "19.25", "33.26", "2.76", "-1.64"},
                       Row{45, 0, "4096", "12.16", "13.62", "28.68", "43.18", "4.11", "1.04"}}) {
    const double out = from_degF(r.out_degF), power = hold_W(system, from_degF(r.hold_degF), out);
    const Vector before = steady_state(system, {out, ground_degC, power}).value();
    const std::string at = "held at " + degF(r.hold_degF) + ", " + degF(r.out_degF) + " outdoors: ";
    CHECK_PUBLISHED(source, at + "heat to hold, W", r.power, power);
    CHECK_PUBLISHED(source, at + "upper half before, degC", r.upper, before[1]);
    CHECK_PUBLISHED(source, at + "lower half before, degC", r.lower, before[2]);
    const Vector off{out, ground_degC, 0.0};
    const auto hours = [&](const LinearOutput& output) {
      return first_reach(system, before, {off, {}}, {output, 0.0, 100.0 * hour_s}).value().time_s / hour_s;
    };
    CHECK_PUBLISHED(source, at + "air at 0 degC, h", r.air_h, hours(air));
    CHECK_PUBLISHED(source, at + "upper half at 0 degC, h", r.upper_h, hours(upper));
    const LinearStep half_day = exact_step(system, 12.0 * hour_s);
    const Vector noon = after_step(half_day, before, off);
    CHECK_PUBLISHED(source, at + "air after 12 h, degC", r.after_12h, noon[0]);
    CHECK_PUBLISHED(source, at + "air after 24 h, degC", r.after_24h, after_step(half_day, noon, off)[0]);
  }
}

TEST_CASE("hours from 45 to 60 F") {
  const Source source{"Shop of three states, computed by a second program", "recovery, 45 to 60 F, ground 5 degC",
                      Oracle::derived};
  struct Row {
    double out_degF;
    const char *hold_45, *hold_60;
    std::array<const char*, 3> hours;
  };
  const LinearSystem system = shop();
  for (const Row& r :
       {Row{20, "2315", "3984", {"23.25", "13.49", "8.77"}}, Row{0, "4096", "5765", {"36.19", "16.45", "9.72"}},
        Row{-20, "5876", "7546", {"96.78", "21.44", "10.97"}}}) {
    const double out = from_degF(r.out_degF), low = hold_W(system, from_degF(45.0), out);
    const std::string at = degF(r.out_degF) + " outdoors: ";
    CHECK_PUBLISHED(source, at + "hold 45 F, W", r.hold_45, low);
    CHECK_PUBLISHED(source, at + "hold 60 F, W", r.hold_60, hold_W(system, from_degF(60.0), out));
    const Vector before = steady_state(system, {out, ground_degC, low}).value();
    const std::array<double, 3> powers{8000.0, 12000.0, 18000.0};
    for (std::size_t i = 0; i < 3; ++i) {
      const SoughtLevel warm{air, from_degF(60.0), 500.0 * hour_s};
      const auto reached = first_reach(system, before, {{out, ground_degC, powers[i]}, {}}, warm);
      REQUIRE(reached);
      CHECK_PUBLISHED(source, at + std::to_string(static_cast<int>(powers[i] / 1000.0)) + " kW, h", r.hours[i],
                      reached->time_s / hour_s);
    }
  }
}
