#include "slabwright/key.hpp"
#include "slabwright/sitework_control.hpp"

namespace slabwright {

Record record_of(ControlCorner& x) {
  static constexpr Key keys[] = {key<&ControlCorner::letter>({.meaning = "Its letter on the drawing."}),
                                 key<&ControlCorner::x_m>({.meaning = "Where it is, to the right ..."}),
                                 key<&ControlCorner::y_m>({.meaning = "... and up."})};
  return {keys, &x};
}

Record record_of(ControlPoint& x) {
  static constexpr Key keys[] = {key<&ControlPoint::name>({.meaning = "Its name on the drawing."}),
                                 key<&ControlPoint::loop>({.meaning = "Whose tube it is."}),
                                 key<&ControlPoint::along_m>({.meaning = "Tube from the supply port to it."}),
                                 key<&ControlPoint::x_m>({.meaning = "Where it is, to the right ..."}),
                                 key<&ControlPoint::y_m>({.meaning = "... and up."}),
                                 key<&ControlPoint::from_a_m>({.meaning = "From corner A, straight."}),
                                 key<&ControlPoint::from_b_m>({.meaning = "From corner B, straight."}),
                                 key<&ControlPoint::from_first_m>({.meaning = "Square off the first wall."}),
                                 key<&ControlPoint::from_second_m>({.meaning = "Square off the second wall."})};
  return {keys, &x};
}

Record record_of(ControlPoints& x) {
  static constexpr Key keys[] = {
      key<&ControlPoints::wall>({.meaning = "The wall that both corners lie on."}),
      key<&ControlPoints::a>({.meaning = "Corner A."}),
      key<&ControlPoints::b>({.meaning = "Corner B."}),
      key<&ControlPoints::first_wall>({.meaning = "The first wall measured from."}),
      key<&ControlPoints::second_wall>({.meaning = "The second."}),
      key<&ControlPoints::tolerance_m>({.meaning = "Within which 19 of 20 places of tube lie."}),
      key<&ControlPoints::point>({.meaning = "Points, loop by loop."})};
  return {keys, &x};
}

Record record_of(DrillBands& x) {
  static constexpr Key keys[] = {
      key<&DrillBands::diameter_m>({.meaning = "The widest hole that is planned, or a usual one (practice)."}),
      key<&DrillBands::tolerance_m>({.meaning = "Within which 19 of 20 places of tube lie."}),
      key<&DrillBands::do_not_m>({.meaning = "Nearer to the tube's centre line than that: do not drill."}),
      key<&DrillBands::doubt_m>({.meaning = "Nearer than that: in doubt."}),
      key<&DrillBands::concrete_above_m>({.meaning = "Concrete above the tube, as drawn."}),
      key<&DrillBands::depth_tolerance_m>({.meaning = "Within which 19 of 20 places of tube lie, up or down."})};
  return {keys, &x};
}

}  // namespace slabwright
