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

TEST_CASE("sizes read as a rule or a drill bit has them") {
  CHECK(rule(0.75 * 0.0254, System::us) == "3/4 in");
  CHECK(rule(2.75 * 0.0254, System::us) == "2 3/4 in");
  CHECK(rule(0.875 * 0.0254, System::us) == "7/8 in");
  CHECK(rule(1.0625 * 0.0254, System::us) == "1 1/16 in");
  CHECK(rule(3.0 * 0.0254, System::us) == "3 in");
  CHECK(rule(0.99 * 0.0254, System::us) == "1 in");
  CHECK(rule(0.0, System::us) == "0 in");
  CHECK(rule(0.016, System::si) == "16 mm");
  CHECK(rule(0.0065, System::si) == "6.5 mm");
  CHECK_THROWS_AS(rule(-0.01, System::us), std::logic_error);
}

TEST_CASE("chances keep two digits that mean something") {
  CHECK(chance(0.0) == "under 0.1 %");
  CHECK(chance(0.0123) == "1.2 %");
  CHECK(chance(0.0996) == "10 %");
  CHECK(chance(0.377) == "38 %");
  CHECK(chance(1.0) == "100 %");
}
