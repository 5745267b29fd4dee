// Single loops of tube, and the straight line between laminar and turbulent friction.
#include "published/fluid/worst.hpp"
#include "slabwright/tube.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source blend{"Straight line in f, 64/2300 to Colebrook at 4000", "smooth tube", Oracle::derived};
const Source loops{"Single loops, water at 40 degC, roughness 1.5 um", "Colebrook-White by fluids 1.0.22",
                   Oracle::reference_code};

constexpr Liquid water{992.216353, 652.728727e-6};
constexpr double foot_m = 0.3048;
constexpr double gpm_m3_per_s = 6.30901964e-5;

struct LoopCase {
  const char* name;
  Bore bore;
  double flow_m3_per_s;
  const char* velocity;
  const char* reynolds;
  const char* darcy;
  const char* pressure;
};

constexpr double drawn_m = 1.5e-6;
constexpr LoopCase cases[] = {
    {"12.319 mm, 300 ft, 0.8 gpm",
     {300 * foot_m, 0.012319, drawn_m},
     0.8 * gpm_m3_per_s,
     "0.4234587143",
     "7929.76256",
     "0.0330351566",
     "21814.018"},
    {"12.319 mm, 300 ft, 0.5 gpm",
     {300 * foot_m, 0.012319, drawn_m},
     0.5 * gpm_m3_per_s,
     "0.2646616964",
     "4956.10160",
     "0.0376232817",
     "9704.563"},
    {"12.319 mm, 100 ft, 1 gpm",
     {100 * foot_m, 0.012319, drawn_m},
     gpm_m3_per_s,
     "0.5293233928",
     "9912.20320",
     "0.0311421019",
     "10710.407"},
    {"14.8336 mm, 400 ft, 1.2 gpm",
     {400 * foot_m, 0.0148336, drawn_m},
     1.2 * gpm_m3_per_s,
     "0.4380867485",
     "9878.25730",
     "0.0311384394",
     "24368.110"},
    {"12 mm, 90 m, 2 L/min",
     {90.0, 0.012, drawn_m},
     2e-3 / 60.0,
     "0.2947313761",
     "5376.27248",
     "0.0367681514",
     "11883.988"},
};

}  // namespace

TEST_CASE("friction between laminar and turbulent") {
  const char* printed[][2] = {
      {"2000", "0.032"}, {"2500", "0.0292474"}, {"3000", "0.0328006"}, {"3500", "0.0363538"}, {"4000", "0.0399070"}};
  for (const auto& [reynolds, darcy] : printed)
    CHECK_PUBLISHED(blend, fmt::format("Re {}", reynolds), darcy, friction_factor(std::stod(reynolds), 0.0).darcy);
}

TEST_CASE("loops of tube with water at 40 degC") {
  std::vector<Compared> velocities, reynolds_numbers;
  for (const LoopCase& one : cases) {
    const double diameter = one.bore.inside_diameter_m;
    const double reynolds = reynolds_number(diameter, water, one.flow_m3_per_s);
    velocities.push_back(
        {fmt::format("{}, velocity, m/s", one.name), one.velocity, velocity_m_per_s(diameter, one.flow_m3_per_s)});
    reynolds_numbers.push_back({fmt::format("{}, Reynolds number", one.name), one.reynolds, reynolds});
    CHECK_PUBLISHED(loops, fmt::format("{}, friction factor", one.name), one.darcy,
                    friction_factor(reynolds, one.bore.roughness_m / diameter).darcy);
    CHECK_PUBLISHED(loops, fmt::format("{}, loss, Pa", one.name), one.pressure,
                    tube_loss(one.bore, water, one.flow_m3_per_s).pressure_Pa);
  }
  CHECK_WORST_PUBLISHED(loops, velocities, {0.500001e-10, 0.0, "half a unit of its last digit"});
  CHECK_WORST_PUBLISHED(loops, reynolds_numbers, {0.500001e-5, 0.0, "half a unit of its last digit"});
}
