// The steady slab cases of NREL/TP-550-43388 by a plane section of half width area over perimeter. The cases are solid
// bodies of 12 x 12 m: that the plane section stands for them within 5 % is what is checked.
#include <variant>

#include "slabwright/conduction.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Row = std::map<std::string, std::string>;
using Kind = FieldDriver::Kind;
constexpr FieldDriverId room{0}, outdoor{1};
constexpr double area_m2 = 144.0, perimeter_m = 48.0, wall_m = 0.24, conductivity = 1.9, difference_K = 20.0;
constexpr double half_width_m = area_m2 / perimeter_m, outer_m = half_width_m + wall_m;
const Within plane{0.0, 0.05, "a plane section for a solid body: known to be 1 to 4 % high"};

struct Ground {
  double depth_m, far_m;
};

/// A film, or a surface at the air's own temperature where the case has no film.
std::variant<SurfaceFilm, FixedTemperature> surface(const std::string& coefficient, FieldDriverId driver) {
  if (coefficient == "inf") return FixedTemperature{driver, driver};
  return SurfaceFilm{std::stod(coefficient), driver};
}

FieldSection section_of(const Ground& ground, const std::string& inside, const std::string& outside) {
  const double far_m = outer_m + ground.far_m;
  FieldSection section;
  section.drivers = {{"room", Kind::temperature}, {"outdoor", Kind::temperature}};
  section.materials = {{0.0, far_m, -ground.depth_m, 0.0, conductivity}};
  section.boundaries = {{{{0.0, 0.0}, {half_width_m, 0.0}}, surface(inside, room)},
                        {{{outer_m, 0.0}, {far_m, 0.0}}, surface(outside, outdoor)},
                        {{{0.0, -ground.depth_m}, {far_m, -ground.depth_m}}, FixedTemperature{outdoor, outdoor}}};
  return section;
}

double heat_W(const FieldSection& section, double largest_cell_m) {
  const UnitResponses responses = unit_responses(section, {}, {0.005, 1.2, largest_cell_m, false});
  return perimeter_m * difference_K * responses.heat_in[0][room.at];
}

}  // namespace

TEST_CASE("heat from a floor on the ground, wall foot without heat, by area over perimeter") {
  for (const Row& row : read_table("ground_coupled_slab/cases.csv")) {
    const FieldSection section = section_of({number(row, "depth_m"), number(row, "far_m")}, row.at("inside_W_per_m2K"),
                                            row.at("outside_W_per_m2K"));
    CHECK_PUBLISHED(Source{"NREL/TP-550-43388", "case " + row.at("case") + ", mean of three verified models",
                           Oracle::reference_code},
                    "heat, W", row.at("mean_W"), heat_W(section, 1.0), plane);
  }
}

TEST_CASE("heat from a floor on endless ground, its temperature falling evenly under the walls") {
  constexpr double endless_m = 400.0;
  FieldSection section = section_of({endless_m, endless_m}, "inf", "inf");
  section.boundaries.push_back({{{half_width_m, 0.0}, {outer_m, 0.0}}, FixedTemperature{room, outdoor}});
  CHECK_PUBLISHED(Source{"NREL/TP-550-43388", "case GC10a, exact"}, "heat, W", "2432.597", heat_W(section, 10.0),
                  plane);
}
