#include <array>

#include "slabwright/key.hpp"
#include "slabwright/sitework_stakes.hpp"

namespace slabwright {

template <>
struct Choices<StakeTurn> {
  static constexpr auto names =
      std::to_array<std::string_view>({"left", "right", "back left", "back right", "bears", "end"});
};

Record record_of(StakeLine& x) {
  static constexpr Key keys[] = {
      key<&StakeLine::name>({.meaning = "A and its number from the first wall, or B from the second."}),
      key<&StakeLine::at_m>({.meaning = "From the wall's inner face, square off it."}),
      key<&StakeLine::off_m>({.meaning = "The farthest that tube drawn on it lies from there."}),
      key<&StakeLine::from_m>({.meaning = "Where tube on it begins, from the other wall."}),
      key<&StakeLine::to_m>({.meaning = "Where it ends."}),
      key<&StakeLine::turns_end>({.meaning = "Tubes turn back here: the tips of their turns touch this line."}),
      key<&StakeLine::carries>({.meaning = "Tube lies along it."})};
  return {keys, &x};
}

Record record_of(StakeTable& x) {
  static constexpr Key keys[] = {key<&StakeTable::wall>({.meaning = "The wall measured from."}),
                                 key<&StakeTable::line>({.meaning = "Its lines in the order of their distance."})};
  return {keys, &x};
}

Record record_of(StakePlace& x) {
  static constexpr Key keys[] = {key<&StakePlace::first_m>({.meaning = "From the first wall."}),
                                 key<&StakePlace::second_m>({.meaning = "From the second wall."})};
  return {keys, &x};
}

Record record_of(StakeStep& x) {
  static constexpr Key keys[] = {
      key<&StakeStep::line>({.meaning = "The line walked along, or several walked to and fro; none on a slant."}),
      key<&StakeStep::from_line>({.meaning = "The line that it begins at, where there is one."}),
      key<&StakeStep::to_line>({.meaning = "The line that it, or the first of several, ends at."}),
      key<&StakeStep::from>({.meaning = "Where it begins, before tube rounds the corner."}),
      key<&StakeStep::to>({.meaning = "Where it ends."}),
      key<&StakeStep::radius_m>({.meaning = "Of a curve."}),
      key<&StakeStep::then>({.meaning = "What follows."}),
      key<&StakeStep::at_end_m>({.meaning = "Tube laid when it is done, from the supply port."})};
  return {keys, &x};
}

Record record_of(StakeWalk& x) {
  static constexpr Key keys[] = {key<&StakeWalk::loop>({.meaning = "Which loop."}),
                                 key<&StakeWalk::step>({.meaning = "Its steps from the supply port."})};
  return {keys, &x};
}

Record record_of(StakeOut& x) {
  static constexpr Key keys[] = {
      key<&StakeOut::step_m>({.meaning = "What places are rounded to."}),
      key<&StakeOut::first>({.meaning = "Lines parallel to the first wall."}),
      key<&StakeOut::second>({.meaning = "Lines parallel to the second wall."}),
      key<&StakeOut::off_m>({.meaning = "The farthest that tube lies from a line it is said to lie on."}),
      key<&StakeOut::walk>({.meaning = "Each loop as a walk along the lines."})};
  return {keys, &x};
}

}  // namespace slabwright
