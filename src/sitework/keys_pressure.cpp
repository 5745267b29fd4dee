#include <array>

#include "slabwright/key.hpp"
#include "slabwright/sitework_pressure.hpp"

namespace slabwright {

template <>
struct Choices<TestMedium> {
  static constexpr auto names = std::to_array<std::string_view>({"air", "water"});
};

Record record_of(TestRule& x) {
  static constexpr Key keys[] = {key<&TestRule::medium>({.meaning = "What the tube is filled with."}),
                                 key<&TestRule::least_Pa>({.meaning = "Test pressure, at least."}),
                                 key<&TestRule::most_Pa>({.meaning = "And at most."}),
                                 key<&TestRule::how_long>({.meaning = "For how long."}),
                                 key<&TestRule::source>({.meaning = "The code, or common practice."}),
                                 key<&TestRule::provided>({.meaning = "What else it asks."})};
  return {keys, &x};
}

Record record_of(TestAt& x) {
  static constexpr Key keys[] = {
      key<&TestAt::air_degC>({.meaning = "Air in the tube."}),
      key<&TestAt::test_Pa>({.meaning = "What a tight test reads then."}),
      key<&TestAt::pour_Pa>({.meaning = "The same at the pressure that is held during the pour."})};
  return {keys, &x};
}

Record record_of(PressureTest& x) {
  static constexpr Key keys[] = {
      key<&PressureTest::rule>({.meaning = "What the codes and practice ask."}),
      key<&PressureTest::medium>({.meaning = "What is advised for this pour."}),
      key<&PressureTest::because>({.meaning = "Why."}),
      key<&PressureTest::pumped_Pa>({.meaning = "What the table's test is pumped to, on air."}),
      key<&PressureTest::pumped_degC>({.meaning = "Air then."}),
      key<&PressureTest::allowed_Pa>({.meaning = "Fall at like temperature that practice lets pass in 24 hours."}),
      key<&PressureTest::pour_least_Pa>({.meaning = "Held while concrete is placed, at least (practice)."}),
      key<&PressureTest::pour_most_Pa>({.meaning = "And at most."}),
      key<&PressureTest::pour_Pa>({.meaning = "Of them, what the table is for."}),
      key<&PressureTest::at>({.meaning = "What a tight test reads by temperature."}),
      key<&PressureTest::care>({.meaning = "What to mind."})};
  return {keys, &x};
}

}  // namespace slabwright
