#include <array>

#include "slabwright/key.hpp"
#include "slabwright/sitework_plan.hpp"

namespace slabwright {

template <>
struct Choices<PlanSide> {
  static constexpr auto names = std::to_array<std::string_view>({"below", "left", "above", "right", "slanting"});
};

Record record_of(PlanDimension& x) {
  static constexpr Key keys[] = {
      key<&PlanDimension::side>({.meaning = "Beyond which side of the floor it stands."}),
      key<&PlanDimension::whole>({.meaning = "Across all of the floor."}),
      key<&PlanDimension::from_x_m>({.meaning = "Where the tape begins, to the right of the form's corner."}),
      key<&PlanDimension::from_y_m>({.meaning = "And up from it."}),
      key<&PlanDimension::to_x_m>({.meaning = "Where it ends."}),
      key<&PlanDimension::to_y_m>({.meaning = "And up."}),
      key<&PlanDimension::length_m>({.meaning = "What it reads, along that side."})};
  return {keys, &x};
}

Record record_of(PlanDoor& x) {
  static constexpr Key keys[] = {key<&PlanDoor::name>({.meaning = "The door."}),
                                 key<&PlanDoor::opening>({.meaning = "Row of its opening, from 0."}),
                                 key<&PlanDoor::width_m>({.meaning = "From jamb to jamb."})};
  return {keys, &x};
}

Record record_of(NumberedSleeve& x) {
  static constexpr Key keys[] = {key<&NumberedSleeve::number>({.meaning = "From 1, along one joint after the other."}),
                                 key<&NumberedSleeve::joint>({.meaning = "Row of its joint, from 0."}),
                                 key<&NumberedSleeve::loop>({.meaning = "Whose tube it is on."}),
                                 key<&NumberedSleeve::x_m>({.meaning = "To the right of the form's corner."}),
                                 key<&NumberedSleeve::y_m>({.meaning = "Up from it."})};
  return {keys, &x};
}

Record record_of(PlanLoop& x) {
  static constexpr Key keys[] = {key<&PlanLoop::loop>({.meaning = "The loop."}),
                                 key<&PlanLoop::number>({.meaning = "What it goes by on the plan."})};
  return {keys, &x};
}

Record record_of(PlanFigures& x) {
  static constexpr Key keys[] = {
      key<&PlanFigures::width_m>({.meaning = "Of the floor, along x."}),
      key<&PlanFigures::height_m>({.meaning = "Of the floor, along y."}),
      key<&PlanFigures::tube_depth_m>({.meaning = "From the top of the floor to the tube's axis."}),
      key<&PlanFigures::dimension>({.meaning = "What a tape reads along the walls."}),
      key<&PlanFigures::door>({.meaning = "Doors whose place is known."}),
      key<&PlanFigures::sleeve>({.meaning = "Where tube passes joints."}),
      key<&PlanFigures::loop>({.meaning = "One row for each loop."})};
  return {keys, &x};
}

}  // namespace slabwright
