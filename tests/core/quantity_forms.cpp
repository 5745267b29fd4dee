// What people write for a quantity, and what is refused.
#include <cmath>

#include "slabwright/units.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double inch = 0.0254, foot = 0.3048;

double read(std::string_view text, Dimension dimension) {
  const Reading reading = read_quantity(text, dimension);
  INFO(text);
  REQUIRE(reading.fault == Fault::none);
  return reading.si;
}

Fault fault(std::string_view text, Dimension dimension) { return read_quantity(text, dimension).fault; }

/// The same number reached in two ways of arithmetic: four roundings.
Approx near(double value) { return Approx(value).epsilon(4 * 2.3e-16).margin(1e-12); }

}  // namespace

TEST_CASE("lengths are read in every spelling of inches, feet and metres") {
  for (const char* text : {"12 in", "12in", "12\"", "12 inches", "12 inch", "12''", "12 IN", "12 in.", "12″", "12 ″",
                           "+12 in", " 12  in ", "12\u00A0in", "1e1 in"}) {
    const double expected = std::string_view(text).substr(0, 2) == "1e" ? 10 * inch : 12 * inch;
    CHECK(read(text, Dimension::length) == near(expected));
  }
  for (const char* text : {"120 mm", "120mm", "0.12 m", "12 cm", "0.12 metre", "0.12 meters"}) {
    CHECK(read(text, Dimension::length) == near(0.12));
  }
  for (const char* text : {"5'-6\"", "5' 6\"", "5'6", "5 ft 6 in", "5ft-6in", "5’ 6”", "66 in", "5.5 ft", "5 1/2 ft"}) {
    CHECK(read(text, Dimension::length) == near(66 * inch));
  }
  CHECK(read("5'", Dimension::length) == near(5 * foot));
  CHECK(read("3 1/2 in", Dimension::length) == near(3.5 * inch));
  CHECK(read("3-1/2\"", Dimension::length) == near(3.5 * inch));
  CHECK(read("3½ in", Dimension::length) == near(3.5 * inch));
  CHECK(read("1/2 in", Dimension::length) == near(0.5 * inch));
  CHECK(read("2 yd", Dimension::length) == near(6 * foot));
  CHECK(read(".5 m", Dimension::length) == 0.5);
  CHECK(read("5. m", Dimension::length) == 5.0);
}

TEST_CASE("areas are read with thousands commas and squares in any dress") {
  for (const char* text : {"1080 ft2", "1,080 ft2", "1,080 sq ft", "1080 sqft", "1080 ft^2", "1080 ft²",
                           "1,080 square feet", "1080 sq. ft."}) {
    CHECK(read(text, Dimension::area) == near(1080 * foot * foot));
  }
  CHECK(read("162 m²", Dimension::area) == 162.0);
  CHECK(read("162 sq m", Dimension::area) == 162.0);
  CHECK(read("1,234,567 m2", Dimension::area) == 1234567.0);
}

TEST_CASE("a temperature is a place on the scale or a difference, as the key asks") {
  CHECK(read("20 F", Dimension::degree) == near(-20.0 / 3.0));
  CHECK(read("20 F", Dimension::rise) == near(100.0 / 9.0));
  CHECK(read("20 C", Dimension::degree) == 20.0);
  CHECK(read("20 C", Dimension::rise) == 20.0);
  CHECK(read("20 K", Dimension::rise) == 20.0);
  CHECK(fault("20 K", Dimension::degree) == Fault::wrong_kind);
  for (const char* text : {"-17 F", "-17F", "-17 °F", "−17 F", "–17°F", "-17 degF", "-17 deg F", "-17 Fahrenheit"}) {
    CHECK(read(text, Dimension::degree) == near(-49.0 / 1.8));
  }
}

TEST_CASE("the letters ft are a length and a head, F belongs to two dimensions, and both are what was asked for") {
  CHECK(read("10 ft", Dimension::length) == near(10 * foot));
  CHECK(read("10 ft", Dimension::head) == near(10 * foot));
  CHECK(fault("10 ft", Dimension::pressure) == Fault::wrong_kind);
}

TEST_CASE("units that stand before their number") {
  for (const char* text : {"R10", "R-10", "R 10", "r-10"}) {
    CHECK(read(text, Dimension::insulance) == near(10 * 0.17611018368230584));
  }
  CHECK(read("Kv 1.0", Dimension::valve_coefficient) == 1.0);
  CHECK(read("Kv -1.0", Dimension::valve_coefficient) == -1.0);
  CHECK(read("Cv 1.2", Dimension::valve_coefficient) == near(1.2 * 0.8649776554423244));
  CHECK(fault("1.2", Dimension::valve_coefficient) == Fault::no_unit);
  CHECK(fault("R-10", Dimension::length) == Fault::wrong_kind);
  CHECK(fault("Kv 1,5", Dimension::valve_coefficient) == Fault::decimal_comma);
}

TEST_CASE("what is refused says why") {
  CHECK(fault("12", Dimension::length) == Fault::no_unit);
  CHECK(fault("0,30 m", Dimension::length) == Fault::decimal_comma);
  CHECK(fault("1,5 m", Dimension::length) == Fault::decimal_comma);
  CHECK(fault("12,34 m", Dimension::length) == Fault::decimal_comma);
  CHECK(fault("12 psi", Dimension::length) == Fault::wrong_kind);
  CHECK(fault("12 cubits", Dimension::length) == Fault::unknown_unit);
  CHECK(fault("twelve in", Dimension::length) == Fault::not_a_number);
  for (const char* text :
       {"", " ", "in", "nan m", "inf m", "-inf m", "0x10 in", "0X1p3 m", "--3 m", "- m", ".", ". m"}) {
    INFO(text);
    CHECK(fault(text, Dimension::length) == Fault::not_a_number);
  }
  for (const char* text : {"1e400 m", "-1e400 m"}) CHECK(fault(text, Dimension::length) == Fault::not_finite);
  CHECK(fault("R-1e400", Dimension::insulance) == Fault::not_finite);
  CHECK(fault("1e400 ft 3 in", Dimension::length) == Fault::not_finite);
  CHECK(fault("1/0 in", Dimension::length) != Fault::none);
  CHECK(fault("0.6", Dimension::air_change) == Fault::no_unit);
}

TEST_CASE("a plain number has no other notation") {
  CHECK(read_number("1080") == 1080.0);
  CHECK(read_number("-1.5e3") == -1500.0);
  CHECK(read_number("1,080") == 1080.0);
  for (const char* text : {"0x10", "nan", "inf", "1e400", "1,5", "12 in", "", "1_000", "true"}) {
    INFO(text);
    CHECK_FALSE(read_number(text));
  }
}

TEST_CASE("characters of word processors become plain ones") {
  CHECK(plain_characters("“12”") == "\"12\"");
  CHECK(plain_characters("5′ 6″") == "5' 6\"");
  CHECK(plain_characters("−17\u00A0°F") == "-17 F");
  CHECK(plain_characters("36 × 30 ft²") == "36 x 30 ft2");
  CHECK(plain_characters("grün") == "grün");
}
