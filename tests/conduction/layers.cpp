// Fields that depend on one coordinate only, where the method has no error but rounding.
#include "slabwright/conduction.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

using Kind = FieldDriver::Kind;
constexpr FieldDriverId warm{0}, cold{1}, heat{2};
constexpr double rounding = 1e-10;

/// A wall 0.3 m thick along x, 0.5 m high: 0.2 m of 1.75 W/mK, 0.1 m of 0.035, films 8 and 25 W/m2K.
FieldSection wall() {
  FieldSection section;
  section.drivers = {{"warm", Kind::temperature}, {"cold", Kind::temperature}, {"heat", Kind::heat}};
  section.materials = {{0.0, 0.3, 0.0, 0.5, 1.75}, {0.2, 0.3, 0.0, 0.5, 0.035}};
  section.boundaries = {{{{0.0, 0.0}, {0.0, 0.5}}, SurfaceFilm{8.0, warm}},
                        {{{0.3, 0.5}, {0.3, 0.0}}, SurfaceFilm{25.0, cold}}};
  return section;
}

constexpr double inner_film = 1.0 / 8.0, concrete = 0.2 / 1.75, foam = 0.1 / 0.035, outer_film = 1.0 / 25.0;
constexpr double whole = inner_film + concrete + foam + outer_film;

}  // namespace

TEST_CASE("layers and films in series share the temperature by their resistances") {
  const UnitResponses responses = unit_responses(wall(), {{0.0, 0.25}, {0.1, 0.31}, {0.2, 0.5}, {0.3, 0.0}});
  CHECK(responses.weights[0][warm.at] == Approx(1.0 - inner_film / whole).epsilon(rounding));
  CHECK(responses.weights[1][warm.at] == Approx(1.0 - (inner_film + concrete / 2.0) / whole).epsilon(rounding));
  CHECK(responses.weights[2][warm.at] == Approx((foam + outer_film) / whole).epsilon(rounding));
  CHECK(responses.weights[3][cold.at] == Approx(1.0 - outer_film / whole).epsilon(rounding));
  CHECK(responses.heat_in[0][warm.at] == Approx(0.5 / whole).epsilon(rounding));
  CHECK(responses.heat_in[1][warm.at] == Approx(-0.5 / whole).epsilon(rounding));
  CHECK(responses.heat_in[0][cold.at] == Approx(-0.5 / whole).epsilon(rounding));
}

TEST_CASE("heat let free in a plane leaves on both sides by the resistances") {
  FieldSection section = wall();
  section.planes = {{{{0.1, 0.0}, {0.1, 0.5}}, heat}};
  const UnitResponses responses = unit_responses(section, {{0.1, 0.2}});
  const double inward = inner_film + concrete / 2.0, outward = whole - inward;
  CHECK(responses.weights[0][heat.at] == Approx(inward * outward / whole).epsilon(rounding));
  CHECK(responses.heat_in[0][heat.at] == Approx(-0.5 * outward / whole).epsilon(rounding));
  CHECK(responses.heat_in[1][heat.at] == Approx(-0.5 * inward / whole).epsilon(rounding));
}

TEST_CASE("layers side by side conduct in parallel") {
  FieldSection section = wall();
  section.materials = {{0.0, 0.3, 0.0, 0.2, 230.0}, {0.0, 0.3, 0.2, 0.5, 0.029}};
  section.boundaries[0].condition = FixedTemperature{warm, warm};
  section.boundaries[1].condition = FixedTemperature{cold, cold};
  const UnitResponses responses = unit_responses(section, {{0.15, 0.2}});
  CHECK(responses.heat_in[0][warm.at] == Approx((0.2 * 230.0 + 0.3 * 0.029) / 0.3).epsilon(rounding));
  CHECK(responses.weights[0][warm.at] == Approx(0.5).epsilon(rounding));
}

TEST_CASE("a temperature fixed on a plane inside parts the wall") {
  FieldSection section = wall();
  section.drivers.push_back({"plane", Kind::temperature});
  constexpr FieldDriverId plane{3};
  section.boundaries.push_back({{{0.1, 0.0}, {0.1, 0.5}}, FixedTemperature{plane, plane}});
  const UnitResponses responses = unit_responses(section, {{0.1, 0.3}, {0.2, 0.3}});
  const double inward = inner_film + concrete / 2.0, outward = whole - inward;
  CHECK(responses.weights[0][plane.at] == Approx(1.0).epsilon(rounding));
  CHECK(responses.weights[1][warm.at] == Approx(0.0).margin(rounding));
  CHECK(responses.weights[1][plane.at] == Approx((foam + outer_film) / outward).epsilon(rounding));
  CHECK(responses.heat_in[2][plane.at] == Approx(0.5 / inward + 0.5 / outward).epsilon(rounding));
}

TEST_CASE("a temperature that runs from one driver to another along a side") {
  FieldSection section = wall();
  section.materials = {{0.0, 0.3, 0.0, 0.5, 1.0}};
  section.boundaries = {{{{0.3, 0.0}, {0.0, 0.0}}, FixedTemperature{warm, cold}},
                        {{{0.0, 0.5}, {0.3, 0.5}}, FixedTemperature{cold, warm}}};
  const UnitResponses responses = unit_responses(section, {{0.3, 0.0}, {0.1, 0.0}, {0.2, 0.5}, {0.1, 0.25}});
  CHECK(responses.weights[0][warm.at] == Approx(1.0).epsilon(rounding));
  CHECK(responses.weights[1][warm.at] == Approx(1.0 / 3.0).epsilon(rounding));
  CHECK(responses.weights[2][warm.at] == Approx(2.0 / 3.0).epsilon(rounding));
  // The sides x = 0 and x = 0.3 pass no heat, so that the middle is warmer than the straight line at the cold end.
  CHECK(responses.weights[3][warm.at] > 1.0 / 3.0);
}

TEST_CASE("nothing passes where nothing is") {
  FieldSection section = wall();
  section.materials = {{0.0, 0.1, 0.0, 0.5, 1.0}, {0.2, 0.3, 0.0, 0.5, 1.0}, {0.1, 0.2, 0.4, 0.5, 1.0}};
  section.boundaries[0].condition = FixedTemperature{warm, warm};
  section.boundaries[1].condition = FixedTemperature{cold, cold};
  const UnitResponses bridged = unit_responses(section, {{0.1, 0.1}, {0.2, 0.1}});
  // Only the bridge at the top carries heat, less than if it had plates of perfect conductors at its ends.
  CHECK(bridged.heat_in[0][warm.at] > 0.0);
  CHECK(bridged.heat_in[0][warm.at] < 0.1 * 1.0 / 0.1);
  CHECK(bridged.weights[0][warm.at] > 0.5);
  CHECK(bridged.weights[1][warm.at] < 0.5);

  section.materials.pop_back();
  const UnitResponses parted = unit_responses(section, {{0.1, 0.1}, {0.2, 0.1}});
  CHECK(parted.heat_in[0][warm.at] == Approx(0.0).margin(rounding));
  CHECK(parted.weights[0][warm.at] == Approx(1.0).epsilon(rounding));
  CHECK(parted.weights[1][warm.at] == Approx(0.0).margin(rounding));
}
