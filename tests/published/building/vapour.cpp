// Sweating floors: worked amounts on a whole floor, from rates that a script made with a psychrometric library.
#include "slabwright/building_vapour.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("what settles on a cold floor in an hour") {
  const Source amounts{"ASHRAE Fundamentals, psychrometrics of a cold slab", "by a script, 150 m2 in an hour",
                       Oracle::derived};
  // Air held at 18 degC and 70 per cent by an exchange far larger than what settles.
  const double outdoor = humidity_ratio_of(18.0, 0.7, 101325.0);
  struct Row {
    double convection_W_per_m2K;
    const char *h, *settles_kg;
  };
  for (const Row& row : {Row{1.0, "1", "1.93"}, Row{3.0, "3", "5.79"}, Row{5.0, "5", "9.65"}}) {
    VapourRoom room;
    room.air_kg = 600.0;
    room.floor_m2 = 150.0;
    room.convection_W_per_m2K = row.convection_W_per_m2K;
    const VapourStep step = vapour_step(room, {outdoor, 1e4, 0.0, 18.0, 5.0}, {outdoor, 0.0});
    CHECK_PUBLISHED(amounts, std::string("18 degC, 70 % over 5 degC, h ") + row.h + ": settles, kg", row.settles_kg,
                    step.end.floor_kg);
  }
}
