// What nobody can know, and how wide it makes the settings.
#include <algorithm>
#include <cmath>

#include "freeze/holds.hpp"
#include "slabwright/freeze_bands.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const BandOptions few_draws{40, 20, 4096, 1};

Bands bands_of(const Line& line, const Freeze& freeze, const Unknowns& unknowns) {
  const auto bands = freeze_bands(line.held(), freeze, unknowns, few_draws);
  REQUIRE(bands);
  return *bands;
}

}  // namespace

TEST_CASE("with nothing unknown the band is the best figure", "[whole]") {
  const Line line = line_of(door_shop());
  const Freeze freeze = *checked_hold(line).value;
  const Bands bands = bands_of(line, freeze, {0.0, 0.0, 0.0, 0.0, 0.0, 0.0});
  constexpr double rounding = 1e-9;
  for (const double degC : {bands.air_low_degC, bands.air_middle_degC, bands.air_high_degC})
    CHECK(degC == Approx(freeze.air->best_degC).margin(rounding));
  for (const auto& degC : {bands.slab_low_degC, bands.slab_middle_degC, bands.slab_high_degC})
    CHECK(degC.value() == Approx(freeze.slab->best_degC).margin(rounding));
  CHECK(bands.lasts_low_s == Approx(bands.lasts_high_s));
  CHECK(bands.air_error_K < rounding);
  CHECK(bands.input.empty());
}

TEST_CASE("what is not known widens the band, and the surface says how far it is off", "[whole]") {
  const Line line = line_of(door_shop());
  const Freeze freeze = *checked_hold(line).value;
  const Unknowns usual = usual_unknowns(line.design);
  const Bands bands = bands_of(line, freeze, usual);
  CHECK(bands.samples == 4096);
  CHECK(bands.solves >= 30);
  CHECK(bands.checks == 20);
  CHECK(bands.air_low_degC < bands.air_middle_degC);
  CHECK(bands.air_middle_degC < bands.air_high_degC);
  CHECK(bands.lasts_low_s < bands.lasts_high_s);
  CHECK(bands.air_error_K < 0.5);
  CHECK(bands.lasts_error_share < 0.1);
  REQUIRE(bands.input.size() == 6);
  CHECK(bands.input[0].what == "where the tubes lie");  // the bare door decides
  Unknowns surer = usual;
  surer.tube_m = 0.01;
  const Bands narrow = bands_of(line, freeze, surer);
  CHECK(narrow.air_high_degC - narrow.air_low_degC < bands.air_high_degC - bands.air_low_degC);
}

TEST_CASE("the same seed draws the same band, and a dial that covers it is no lower", "[whole]") {
  const Line line = line_of(bare_shop());
  const Freeze freeze = *checked_hold(line).value;
  const Unknowns usual = usual_unknowns(line.design);
  const Bands once = bands_of(line, freeze, usual), again = bands_of(line, freeze, usual);
  CHECK(once.air_high_degC == again.air_high_degC);
  CHECK(once.lasts_low_s == again.lasts_low_s);
  const Freeze covered = *with_dials(line.held(), freeze, covering(once), std::nullopt).value;
  CHECK(covered.air->dial_degC >= freeze.air->dial_degC);
  CHECK(covered.slab->dial_degC >= once.slab_high_degC.value() - 1e-6);
  CHECK(covered.slab->dial_degC < std::max(*once.slab_high_degC, freeze.slab->dial_degC) + 0.5 + 1e-6);
}

TEST_CASE("where no slab setting is enough the wall thermostat's band is the same", "[whole]") {
  const Line line = line_of(bare_shop());
  Freeze freeze = *checked_hold(line).value;
  const Unknowns usual = usual_unknowns(line.design);
  const Bands both = bands_of(line, freeze, usual);
  freeze.slab.reset();
  const Bands wall = bands_of(line, freeze, usual);
  CHECK(wall.air_high_degC == both.air_high_degC);
  CHECK(wall.lasts_low_s == both.lasts_low_s);
  CHECK_FALSE(wall.slab_high_degC);
  REQUIRE(wall.input.size() == both.input.size());
  CHECK_FALSE(wall.input[0].slab_K);
  const Freeze covered = *with_dials(line.held(), freeze, covering(wall), std::nullopt).value;
  CHECK(covered.air->dial_degC >= wall.air_high_degC - 1e-6);
  CHECK_FALSE(covered.slab);
}
