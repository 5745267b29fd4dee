// The pressure test before the pour: how high by which code, what the gauge reads as the air warms and cools, what is
// held while concrete is placed. The local authority and the tube's maker stand above all of it.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/design.hpp"
#include "slabwright/handbook_pressure_test.hpp"

namespace slabwright {

/// What one code, or practice, asks of a test.
struct TestRule {
  TestMedium medium = TestMedium::water;
  double least_Pa = 0.0;          ///< gauge
  std::optional<double> most_Pa;  ///< gauge; where none is stated the tube's maker has one
  std::string how_long;           ///< "15 minutes or longer"
  std::string source;
  std::string provided;  ///< what else it asks; empty for nothing
};

/// What a tight test reads at one temperature of the air in the tube.
struct TestAt {
  double air_degC = 0.0;
  double test_Pa = 0.0;  ///< pumped up to the test's pressure
  double pour_Pa = 0.0;  ///< pumped up to what is held during the pour
};

struct PressureTest {
  std::vector<TestRule> rule;  ///< of the design's codes, then practice
  TestMedium medium = TestMedium::water;
  std::string because;         ///< why that medium
  double pumped_Pa = 0.0;      ///< gauge: what the test on the sheet is pumped to, on air
  double pumped_degC = 0.0;    ///< air then
  double allowed_Pa = 0.0;     ///< fall at like temperature that practice lets pass in 24 hours
  double pour_least_Pa = 0.0;  ///< held while concrete is placed and for days after: practice, from ...
  double pour_most_Pa = 0.0;   ///< ... to
  double pour_Pa = 0.0;        ///< of them, what the table below is for
  std::vector<TestAt> at;      ///< by rising temperature
  std::vector<std::string> care;
};

/// `month_degC` are the means of the months.
PressureTest pressure_test(const Design&, const std::array<double, 12>& month_degC);

Record record_of(TestRule&);
Record record_of(TestAt&);
Record record_of(PressureTest&);

}  // namespace slabwright
