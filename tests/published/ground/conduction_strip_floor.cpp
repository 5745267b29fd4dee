// An endless floor strip on open ground: heat flow (data of case GC10a, NREL/TP-550-43388) and temperatures, both
// exact.
#include <cmath>

#include "slabwright/conduction.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Kind = FieldDriver::Kind;
constexpr FieldDriverId room{0}, outdoor{1};
constexpr double pi = 3.14159265358979323846;
constexpr double half_width_m = 6.0, strip_m = 0.24, conductivity = 1.9, difference_K = 20.0;
/// The open ground is cut off where it is even to 1e-4: a strip of 12 m is felt as its angle over pi.
constexpr double far_m = 400.0;

FieldSection floor_on_ground(double wall_m) {
  FieldSection section;
  section.drivers = {{"room", Kind::temperature}, {"outdoor", Kind::temperature}};
  section.materials = {{0.0, far_m, -far_m, 0.0, conductivity}};
  const FixedTemperature outside{outdoor, outdoor};
  const double outer_m = half_width_m + wall_m;
  section.boundaries = {{{{0.0, 0.0}, {half_width_m, 0.0}}, FixedTemperature{room, room}},
                        {{{outer_m, 0.0}, {far_m, 0.0}}, outside},
                        {{{0.0, -far_m}, {far_m, -far_m}}, outside},
                        {{{far_m, -far_m}, {far_m, 0.0}}, outside}};
  if (wall_m > 0.0) {
    section.boundaries.push_back({{{half_width_m, 0.0}, {outer_m, 0.0}}, FixedTemperature{room, outdoor}});
  }
  return section;
}

}  // namespace

TEST_CASE("heat from a strip floor, its temperature falling evenly under the walls") {
  const double width = 2.0 * half_width_m / strip_m;
  const double exact =
      2.0 * conductivity * difference_K / pi * (std::log(1.0 + width) + width * std::log(1.0 + 1.0 / width));
  const UnitResponses responses = unit_responses(floor_on_ground(strip_m), {}, {0.005, 1.1, 10.0, false});
  CHECK_PUBLISHED(
      Source{"Strip floor on a half-space, exact",
             "q = (2 k dT / pi) (ln(1 + L/W) + (L/W) ln(1 + W/L)), L 12 m, W 0.24 m, 1.9 W/mK, 20 K", Oracle::derived},
      "heat flow, W/m", "119.070", 2.0 * difference_K * responses.heat_in[0][room.at],
      Within{0.0, 0.002, "ground cut off at 400 m, first cell 5 mm: 0.1 % each"});
  CHECK(exact == Approx(119.06978).margin(5e-6));
}

TEST_CASE("temperatures below a strip floor that meets the cold without a wall") {
  std::vector<FieldPoint> points;
  const auto rows = read_table("strip_floor_exact/half_space.csv");
  for (const auto& row : rows) points.push_back({number(row, "x_m"), -number(row, "z_m")});
  const UnitResponses responses = unit_responses(floor_on_ground(0.0), points, {0.01, 1.1, 10.0, false});
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK_PUBLISHED(Source{"Strip floor on a half-space, exact", "T = (atan((a-x)/z) + atan((a+x)/z)) / pi, a = 6 m",
                           Oracle::derived},
                    "temperature at x " + rows[i].at("x_m") + " m, depth " + rows[i].at("z_m") + " m",
                    rows[i].at("temperature"), responses.weights[i][room.at],
                    Within{0.0005, 0.0, "ground cut off at 400 m: 1e-4; linear between grid lines: 3e-4"});
  }
}
