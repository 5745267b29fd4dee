#include <array>

#include "slabwright/handbook_pressure_test.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

template <>
struct Choices<TestVerdict> {
  static constexpr auto names = std::to_array<std::string_view>({"holds", "cannot tell yet", "leaks"});
};

template <>
struct Choices<TestWhy> {
  static constexpr auto names =
      std::to_array<std::string_view>({"within", "fell", "in between", "rose", "too coarse", "unlike", "frozen"});
};

Record record_of(JudgedTest& x) {
  static constexpr Key keys[] = {
      key<&JudgedTest::expected_Pa>({.meaning = "What it reads now if nothing leaks."}),
      key<&JudgedTest::least_Pa>({.meaning = "A tight tube reads so much at least, errors counted."}),
      key<&JudgedTest::most_Pa>({.meaning = "And so much at most."}),
      key<&JudgedTest::off_Pa>({.meaning = "The second reading less what is expected."}),
      key<&JudgedTest::doubt_Pa>({.meaning = "What the errors come to together."}),
      key<&JudgedTest::tube_Pa>({.meaning = "What the tube, yielding, may take off."}),
      key<&JudgedTest::one_kelvin_Pa>({.meaning = "What a kelvin does to the reading."}),
      key<&JudgedTest::verdict>({.meaning = "Whether it holds."}),
      key<&JudgedTest::why>({.meaning = "Why that is the verdict."})};
  return {keys, &x};
}

}  // namespace slabwright
