// Regulation (EC) 641/2009 as amended by (EU) 622/2012: the reference circulator and the index; suction heads.
#include "slabwright/fluid.hpp"
#include "slabwright/handbook_circulator.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("reference circulator") {
  const Source rule{"Regulation (EU) 622/2012", "P_ref = 1.7 P + 17 (1 - exp(-0.3 P)), worked out", Oracle::derived};
  CHECK_PUBLISHED(rule, "1 W to the water, W", "6.10609025", reference_circulator_W(1.0));
  CHECK_PUBLISHED(rule, "5 W, W", "21.70678728", reference_circulator_W(5.0));
  CHECK_PUBLISHED(rule, "10 W, W", "33.15361984", reference_circulator_W(10.0));
  CHECK_PUBLISHED(rule, "20 W, W", "50.95786121", reference_circulator_W(20.0));
  CHECK_PUBLISHED(rule, "50 W, W", "101.9999948", reference_circulator_W(50.0));
}

TEST_CASE("energy efficiency index") {
  const Source rule{"Regulation (EU) 622/2012", "weights, control line and 0.49, worked by hand", Oracle::derived};
  // On the line: 4, 3.5, 3, 2.5 m. 0.06 x 20 + 0.15 x 14 + 0.35 x 9 + 0.44 x 6 = 9.09 W; over 33.15362 W, times 0.49.
  CHECK_PUBLISHED(rule, "heads on the control line", "0.134347",
                  energy_efficiency_index({{{20, 4}, {14, 3.5}, {9, 3}, {6, 2.5}}}, 10.0));
  // A head of 2 m where the line asks for 2.5 counts 6 W as 7.5 W: 9.75 W.
  CHECK_PUBLISHED(rule, "a head below it", "0.144102",
                  energy_efficiency_index({{{20, 4}, {14, 3.5}, {9, 3}, {6, 2}}}, 10.0));
  // A head above the line earns nothing.
  CHECK_PUBLISHED(rule, "a head above it", "0.134347",
                  energy_efficiency_index({{{20, 4}, {14, 3.8}, {9, 3}, {6, 2.5}}}, 10.0));
}

TEST_CASE("suction head of a closed system") {
  const Source hand{"Net positive suction head", "101.325 + 82.737 kPa at 50 degC, 0.5 m/s, by hand", Oracle::derived};
  // (184.062 - 12.352) kPa / (988.035 x 9.80665) + 0.25 / 19.6133.
  CHECK_PUBLISHED(hand, "head, m", "17.734", suction_head_m({184062.0, 12352.0, 988.035, 0.5}));
  CHECK(water_vapour_pressure_Pa(50.0) == Approx(12352.0).epsilon(1e-3));
}
