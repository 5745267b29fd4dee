// Every unit of the table there and back, and texts that read back to the same double.
#include <rapidcheck.h>

#include <cmath>
#include <map>
#include <set>

#include "slabwright/units.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

double drawn() {
  const double mantissa = *rc::gen::inRange(-999999, 1000000) / 1000.0;
  return mantissa * std::pow(10.0, *rc::gen::inRange(-6, 7));
}

std::string with_unit(const std::string& number, const Unit& unit) {
  if (unit.before) return std::string(unit.text) + " " + number;
  return unit.text.empty() ? number : number + " " + std::string(unit.text);
}

}  // namespace

TEST_CASE("every unit converts there and back") {
  for (const Unit& unit : units()) {
    INFO(unit.text);
    for (const double value : {0.0, 1.0, -40.0, 123.456}) {
      const double back = in_unit(from_unit(value, unit.text, unit.dimension), unit.text, unit.dimension);
      CHECK(back == Approx(value).epsilon(4e-16).margin(1e-13));  // a shift of 32 F costs digits near zero
    }
  }
}

TEST_CASE("every unit of the table is read as it is written in the table") {
  for (const Unit& unit : units()) {
    const Reading reading = read_quantity(with_unit("7.5", unit), unit.dimension);
    INFO(unit.text << " " << name_of(unit.dimension));
    CHECK(reading.fault == Fault::none);
    CHECK(reading.si == (7.5 + unit.shift) * unit.scale);
  }
}

TEST_CASE("a text stands for one unit in each dimension, and each dimension has one SI row and a name") {
  std::set<std::pair<Dimension, std::string_view>> texts;
  std::map<Dimension, int> si_rows;
  for (const Unit& unit : units()) {
    CHECK(texts.insert({unit.dimension, unit.text}).second);
    si_rows[unit.dimension] += !unit.suffix.empty() && unit.scale == 1.0 && unit.shift == 0.0;
    CHECK_FALSE(name_of(unit.dimension).empty());
  }
  for (const auto& [dimension, rows] : si_rows) {
    INFO(name_of(dimension));
    CHECK(rows == (dimension == Dimension::head ? 0 : 1));  // a head's SI unit is the metre, whose suffix is length's
  }
}

TEST_CASE("what is written reads back to the same double") {
  CHECK(rc::check("write and read", [] {
    const auto& unit = units()[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(units().size())))];
    const double si = from_unit(drawn(), unit.text, unit.dimension);
    for (const System system : {System::us, System::si}) {
      const Reading reading = read_quantity(write_quantity(si, unit.dimension, system), unit.dimension);
      RC_ASSERT(reading.fault == Fault::none);
      RC_ASSERT(reading.si == si);
    }
  }));
}

TEST_CASE("the shortest text in the user's own unit") {
  const auto written = [](std::string_view text, Dimension dimension, System system) {
    return write_quantity(read_quantity(text, dimension).si, dimension, system);
  };
  CHECK(written("12 in", Dimension::length, System::us) == "12 in");
  CHECK(written("300 ft", Dimension::length, System::us) == "300 ft");
  CHECK(written("5'-6\"", Dimension::length, System::us) == "5.5 ft");
  CHECK(written("300 mm", Dimension::length, System::si) == "300 mm");
  CHECK(written("300 mm", Dimension::length, System::us) == "300 mm");
  CHECK(written("9 m", Dimension::length, System::si) == "9 m");
  CHECK(written("1,080 sq ft", Dimension::area, System::us) == "1080 ft2");
  CHECK(written("-12 °F", Dimension::degree, System::us) == "-12 F");
  CHECK(written("R10", Dimension::insulance, System::us) == "R-10");
  CHECK(written("0 ft", Dimension::length, System::us) == "0 ft");
}

TEST_CASE("what is shown is rounded, with its unit, and never minus nothing") {
  CHECK(show(84.1248, Dimension::length, System::us) == "276.0 ft");
  CHECK(show(84.1248, Dimension::length, System::si) == "84.12 m");
  CHECK(show(36.667, Dimension::degree, System::us) == "98 F");
  CHECK(show(1.7611018, Dimension::insulance, System::us) == "R-10.0");
  CHECK(show(-0.001, Dimension::length, System::si) == "0.00 m");
  CHECK(show_as(0.0555625, Dimension::length, "in", 2) == "2.19 in");
  CHECK(show_as(10.0, Dimension::rise, "F", 0) == "18 F");
}

TEST_CASE("a unit that the table does not have is a fault of ours") {
  CHECK_THROWS_AS(in_unit(1.0, "psi", Dimension::length), std::logic_error);
  CHECK_THROWS_AS(from_unit(1.0, "cubit", Dimension::length), std::logic_error);
}
