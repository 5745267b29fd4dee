// Sentences without units until they are printed.
#include "slabwright/diagnostics.hpp"

#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("the same diagnostic speaks each reader's units") {
  const Diagnostic d{Severity::failure,
                     "loop.too-long",
                     "loop[3].length",
                     "{} is {} long; the limit is {}",
                     {std::string("Loop 3"), Measured{103.0, Dimension::length}, Measured{91.44, Dimension::length}}};
  CHECK(say(d, System::us) == "Loop 3 is 337.9 ft long; the limit is 300.0 ft");
  CHECK(say(d, System::si) == "Loop 3 is 103.00 m long; the limit is 91.44 m");
}

TEST_CASE("braces of a user's own text are left alone") {
  CHECK(say({Severity::problem, "x", "y", "no key {} here", {}}, System::us) == "no key {} here");
  CHECK(say({Severity::problem, "x", "y", "{} and {", {std::string("{}")}}, System::us) == "{} and {");
}

TEST_CASE("gravity is ordered") {
  const std::vector<Diagnostic> said{{Severity::note, "a", "", "", {}}, {Severity::warning, "b", "", "", {}}};
  CHECK(any(said, Severity::note));
  CHECK(any(said, Severity::warning));
  CHECK_FALSE(any(said, Severity::failure));
}
