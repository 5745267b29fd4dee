// A slab sensor at 40 F over a leaky building: the room that follows, by the two resistances between them. And a tube
// at an uninsulated door as the weighted sum of what drives it.
#include "slabwright/building.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("a slab held at 4.444 degC in hard frost") {
  // Rows so dense that the sensor's plane is even: only film and concrete lie above it.
  SlabHold hold;
  hold.section.spacing_m = 1e-4;
  hold.section.outside_diameter_m = 5e-5;
  hold.section.cover_above_m = hold.section.cover_below_m = 0.0635;
  hold.section.concrete_W_per_mK = 1.75;
  hold.loss_W_per_m2K = 1.70;
  const HeldRoom held = room_held_by(hold, 4.444, -20.0, 9.5);
  const Source source{"Series resistances of floor film, concrete and building",
                      "R = 1/9.5 + 0.0635/1.75 m2K/W, 1.70 W/m2K, -20 degC outdoors", Oracle::derived};
  CHECK_PUBLISHED(source, "room over a slab at 4.444 degC, degC", "-0.30", held.room_degC);
  CHECK_PUBLISHED(source, "heat upward, W/m2", "33.5", held.up_W_per_m2);
}

TEST_CASE("a tube at a door in a shop held at 45 F") {
  const DriverWeights tube{0.664, 0.322, 0.014, 0.077};
  CHECK_PUBLISHED({"Weights of a floor's edge by finite elements", "door, foam under the slab only, tube 0.15 m in",
                   Oracle::derived},
                  "tube at 7.2 inside, -28.9 outside, 5 degC deep, 53 W/m2, degC", "-0.4",
                  temperature_at(tube, {7.2, -28.9, 5.0, 53.0}));
}
