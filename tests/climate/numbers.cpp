// Plain numbers as the C library reads them, to the last bit; anything else is no number.
#include <rapidcheck.h>

#include <cmath>
#include <cstdlib>
#include <random>

#include "climate/cells.hpp"
#include "support/catch.hpp"

using namespace slabwright::weather;

TEST_CASE("plain numbers are the nearest doubles") {
  for (const char* text : {"0", "-0.0", "7", "-18.0", "83700", "999999999", "0.0440", ".5", "5.", "1e3", "-2.5E-3",
                           "123456789012345", "1234567890123456789012345", "0.1234567890123456789",
                           "0.000000000000000000000000000123", "9007199254740993", "1e22", "1.7976931348623157e308"}) {
    CAPTURE(text);
    REQUIRE(plain_decimal(text).has_value());
    CHECK(*plain_decimal(text) == std::strtod(text, nullptr));
  }
  CHECK(std::signbit(*plain_decimal("-0")));
  CHECK(plain_decimal(" -\t5.5 \r") == -5.5);
}

TEST_CASE("what is no plain number") {
  for (const char* text :
       {"",     " ",   "-",   ".",   "+.",  "e5",    "1e",    "1e+", "nan",   "NaN",   "inf",    "-Infinity",
        "0x10", "1 2", "1,5", "1_0", "--1", "1.2.3", "12 in", "1/2", "3 1/2", "1e999", "-1e400", "5-"}) {
    CAPTURE(text);
    CHECK(!plain_decimal(text).has_value());
  }
  CHECK(plain_whole("24") == 24);
  for (const char* text : {"", "-1", "1.0", "12345678901", "a"}) CHECK(!plain_whole(text).has_value());
}

TEST_CASE("any decimal number of digits is what the C library reads") {
  CHECK(rc::check([] {
    const auto before = *rc::gen::container<std::string>(rc::gen::inRange('0', static_cast<char>('9' + 1)));
    const auto behind = *rc::gen::container<std::string>(rc::gen::inRange('0', static_cast<char>('9' + 1)));
    const std::string text = (*rc::gen::arbitrary<bool>() ? "-" : "") + before + "1." + behind;
    RC_ASSERT(plain_decimal(text) == std::strtod(text.c_str(), nullptr));
  }));
}

TEST_CASE("seventeen digits behind a point round once") {
  std::mt19937_64 engine(1);
  for (int n = 0; n < 2000; ++n) {
    const std::string text = "1." + std::to_string(10'000'000'000'000'000u + engine() % 90'000'000'000'000'000u);
    if (plain_decimal(text) != std::strtod(text.c_str(), nullptr)) FAIL(text);
  }
}
