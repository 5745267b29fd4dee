// Lengths as a tape measure has them.
#include "report/tape.hpp"

#include <cmath>

#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::report;
using namespace slabwright::test;

TEST_CASE("feet, inches and quarters") {
  const double in = 0.0254;
  CHECK(tape(12.0 * ft + 4.25 * in, System::us) == "12 ft 4 1/4 in");
  CHECK(tape(12.0 * ft, System::us) == "12 ft");
  CHECK(tape(12.0 * ft + 0.5 * in, System::us) == "12 ft 1/2 in");
  CHECK(tape(7.5 * in, System::us) == "7 1/2 in");
  CHECK(tape(-0.25 * in, System::us) == "-1/4 in");
  CHECK(tape(11.95 * in, System::us) == "1 ft");
  CHECK(tape(0.0, System::us) == "0 in");
  CHECK(tape(-1e-6, System::us) == "0 in");
}

TEST_CASE("metres to 5 mm, short ones in millimetres") {
  CHECK(tape(3.7561, System::si) == "3.755 m");
  CHECK(tape(0.9926, System::si) == "995 mm");
  CHECK(tape(0.9976, System::si) == "1.000 m");
  CHECK(tape(-0.052, System::si) == "-50 mm");
  CHECK(tape(0.0, System::si) == "0 mm");
}

TEST_CASE("every rounded length reads back to within half a step") {
  for (int i = 0; i < 400; ++i) {
    const double m = 0.0137 * i;
    for (const System system : {System::us, System::si}) {
      const Reading reading = read_quantity(tape(m, system), Dimension::length);
      REQUIRE(reading.fault == Fault::none);
      CHECK(std::abs(reading.si - m) <= (system == System::us ? 0.0254 / 8.0 : 0.0025) + 1e-9);
    }
  }
}

TEST_CASE("chances keep two digits that mean something") {
  CHECK(chance(0.0) == "under 0.1 %");
  CHECK(chance(0.0123) == "1.2 %");
  CHECK(chance(0.0996) == "10 %");
  CHECK(chance(0.377) == "38 %");
  CHECK(chance(1.0) == "100 %");
}
