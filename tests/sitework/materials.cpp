// Ties by hand.
#include <cmath>

#include "floor.hpp"
#include "slabwright/sitework_materials.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("ties at both ends of straight tube and no farther apart than asked") {
  CHECK(ties_along({line({0.0, 0.0}, {6.0, 0.0})}, 0.6) == 11);
  CHECK(ties_along({line({0.0, 0.0}, {6.1, 0.0})}, 0.6) == 12);
  CHECK(ties_along({line({0.0, 0.0}, {0.2, 0.0})}, 0.6) == 1);
  CHECK(ties_along({}, 0.6) == 0);
  CHECK(ties_along({arc({0.0, 0.0}, {0.3, 0.0}, {0.15, 0.0}, Side::left)}, 0.6) == 0);
  // A quarter of a round wall of 4 m is tied like straight tube.
  CHECK(ties_along({arc({4.0, 0.0}, {0.0, 4.0}, {0.0, 0.0}, Side::left)}, 0.6) ==
        1 + static_cast<int>(std::ceil(2.0 * 3.14159265 / 0.6)));
  // Ten rows of 6 m every 0.3 m; the turns take half a spacing off each end that has one.
  const Path rows = to_and_fro(10, 6.0, 0.3);
  CHECK(ties_along(rows, 0.6) == 2 * 11 + 8 * 11);
}

TEST_CASE("where only the length is known, a few ties more than its parts") {
  const Path rows = to_and_fro(20, 6.0, 0.3);
  const int drawn = ties_along(rows, 0.6), counted = ties_by_length(length_m(rows), 36.0, 0.3, 0.6);
  CHECK(counted == Approx(drawn).epsilon(0.1));
  CHECK(ties_by_length(0.0, 0.0, 0.3, 0.6) == 0);
}

TEST_CASE("practice is round in the reader's units") {
  CHECK(laying_practice(System::us).tie_m == Approx(24 * 0.0254));
  CHECK(laying_practice(System::si).tie_m == 0.6);
  // 12 in on each side of a joint: California Mechanical Code 1217.5.
  for (const System system : {System::us, System::si})
    CHECK(laying_practice(system).sleeve_m >= 2 * 12 * 0.0254 - 1e-12);
  CHECK(laying_practice(System::si).waste_share >= 0.05);
  CHECK(laying_practice(System::si).waste_share <= 0.10);
}
