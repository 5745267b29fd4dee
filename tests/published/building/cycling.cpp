// Buffer tanks: trade pages on hydronics print V = t (Q source - Q load) / (500 dT) in gallons, minutes and Btu/h.
#include "slabwright/handbook_cycling.hpp"

#include <cmath>

#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double btuh_W = 0.29307107, gallon_m3 = 3.785411784e-3;
/// What the page's round 500 Btu/h per gpm and degF means.
constexpr double page_J_per_m3K = 500.0 * btuh_W * 60.0 * 1.8 / gallon_m3;

double gallons(double source_btuh, double load_btuh, double swing_degF) {
  return buffer_m3({source_btuh * btuh_W, load_btuh * btuh_W, swing_degF / 1.8}, 600.0, page_J_per_m3K) / gallon_m3;
}

}  // namespace

TEST_CASE("buffer tank of a trade page") {
  const Source page{"Trade page on buffer tanks", "10 min, 68 000 and 5 000 Btu/h, 20 degF"};
  CHECK_PUBLISHED(page, "volume, gal", "63.0", gallons(68000, 5000, 20));
  const Source worked{"Trade page on buffer tanks", "its formula worked out", Oracle::derived};
  CHECK_PUBLISHED(worked, "8 000 and 2 000 Btu/h, 20 degF, gal", "6.0", gallons(8000, 2000, 20));
  CHECK_PUBLISHED(worked, "8 kW more than is taken, 10 min, 5.556 K, litres", "208.47",
                  1e3 * buffer_m3({12e3, 4e3, 5.556}, 600.0, 990.0 * 4186.0));
}

TEST_CASE("a buffer makes the heater run as long as asked") {
  const SwingingHeater cycling{9e3, 2.5e3, 8.0};
  const double water_J_per_m3K = 4.15e6, volume_m3 = buffer_m3(cycling, 480.0, water_J_per_m3K);
  CHECK(on_s(cycling, volume_m3 * water_J_per_m3K) == Approx(480.0));
  // Over a whole cycle the heater gives what is taken.
  const double on = on_s(cycling, 1e6), off = off_s(cycling, 1e6);
  CHECK(cycling.source_W * on == Approx(cycling.load_W * (on + off)));
}

TEST_CASE("a slab that takes part of the surplus lengthens runs as a walk in small steps does") {
  const SwingingHeater cycling{9e3, 2.5e3, 6.0, 900.0};
  const double water_J_per_K = 2e5, step_s = 0.01;
  double above_K = -3.0, t_s = 0.0;
  for (; above_K < 3.0; t_s += step_s)
    above_K += step_s * (cycling.source_W - cycling.load_W - cycling.slab_W_per_K * above_K) / water_J_per_K;
  CHECK(on_s(cycling, water_J_per_K) == Approx(t_s).epsilon(1e-3));
  CHECK(on_s(cycling, water_J_per_K) > on_s({9e3, 2.5e3, 6.0}, water_J_per_K));
  // 900 x 3 = 2700 W are more than is taken, so the water never cools to the lower end; a surplus of less never warms
  // it.
  CHECK(std::isinf(off_s(cycling, water_J_per_K)));
  CHECK(std::isinf(on_s({5e3, 2.5e3, 6.0, 900.0}, water_J_per_K)));
  const double long_enough = buffer_m3(cycling, 480.0, 4.15e6);
  CHECK(on_s(cycling, long_enough * 4.15e6) == Approx(480.0));
}
