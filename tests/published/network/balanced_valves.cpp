// Case M2: six loops brought to 0.200 m3/h by valves that take what the hardest loop needs more than they do.
#include <fmt/format.h>

#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;
using slabwright::test::Within;

namespace {

const Source m2{"EPANET 2.3.5 (epanet-js 0.9.0)", "case M2, balancing", Oracle::reference_code};
constexpr Within rounded{0.0, 4e-4, "the source's K = 1.6e9 D^4/Kv^2 is rounded from 1.59888e9"};
constexpr double engine_gravity = 9.81456;

}  // namespace

TEST_CASE("M2: the Kv that takes what the hardest loop needs more") {
  const Liquid water{992.216353, 652.728727e-6};
  const double head_m[] = {2.305474, 2.531575, 2.780975, 2.965900, 3.147212, 3.237149};
  const char* printed[] = {"0.566972", "0.625433", "0.717045", "0.818813", "0.977314", "1.100000"};
  const double flow = 0.2 / 3600.0, open_valve_Pa = valve_loss(1.1, water, flow).pressure_Pa;
  for (std::size_t i = 0; i < 6; ++i) {
    const double to_take_Pa = (head_m[5] - head_m[i]) * engine_gravity * water.density_kg_per_m3;
    const double kv = kv_for(flow, to_take_Pa + open_valve_Pa, water);
    CHECK_PUBLISHED(m2, fmt::format("Kv of the valve of loop {}", i + 1), printed[i], kv, rounded);
  }
}

TEST_CASE("M2: K of the added throttles as Kv") {
  // Of the loop's K in the engine's file, 4.8 is for bends and the rest for the two valves.
  const double k_of_return = loss_coefficient_from_kv(2.0, 0.012319) * 1.6e9 / 1.59888e9;
  CHECK_PUBLISHED(m2, "Kv of the valve of loop 1, from its K", "0.566972",
                  kv_from_loss_coefficient(128.64230279260653 - 4.8 - k_of_return, 0.012319), rounded);
  CHECK_PUBLISHED(m2, "Kv of the throttle in the mains, from its K", "3.904273",
                  kv_from_loss_coefficient(25.60983116655927, 0.022225), rounded);
}
