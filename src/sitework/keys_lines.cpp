#include "slabwright/key.hpp"
#include "slabwright/sitework_lines.hpp"

namespace slabwright {

Record record_of(LaidPiece& x) {
  static constexpr Key keys[] = {
      key<&LaidPiece::from_x_m>({.meaning = "Where it begins, to the right of the form's corner."}),
      key<&LaidPiece::from_y_m>({.meaning = "And up from it."}),
      key<&LaidPiece::to_x_m>({.meaning = "Where it ends."}),
      key<&LaidPiece::to_y_m>({.meaning = "And up."}),
      key<&LaidPiece::radius_m>({.meaning = "Of an arc; a straight line has none."}),
      key<&LaidPiece::centre_x_m>({.meaning = "Middle of an arc."}),
      key<&LaidPiece::centre_y_m>({.meaning = "And up."}),
      key<&LaidPiece::turn>({.meaning = "To which side an arc bends on its way; empty: straight."})};
  return {keys, &x};
}

Record record_of(LaidCrossing& x) {
  static constexpr Key keys[] = {key<&LaidCrossing::joint>({.meaning = "The joint that it passes in a sleeve."}),
                                 key<&LaidCrossing::x_m>({.meaning = "Where, to the right of the form's corner."}),
                                 key<&LaidCrossing::y_m>({.meaning = "And up from it."}),
                                 key<&LaidCrossing::at_m>({.meaning = "Along the loop from its supply port."})};
  return {keys, &x};
}

Record record_of(LaidLoopLines& x) {
  static constexpr Key keys[] = {
      key<&LaidLoopLines::loop>({.meaning = "The loop."}),
      key<&LaidLoopLines::piece>({.meaning = "Its tube's axis from supply port to return port."}),
      key<&LaidLoopLines::crossing>({.meaning = "Where it passes joints."})};
  return {keys, &x};
}

Record record_of(LaidCorner& x) {
  static constexpr Key keys[] = {key<&LaidCorner::x_m>({.meaning = "To the right of the form's corner."}),
                                 key<&LaidCorner::y_m>({.meaning = "Up from it."})};
  return {keys, &x};
}

Record record_of(LaidApron& x) {
  static constexpr Key keys[] = {key<&LaidApron::manifold>({.meaning = "The manifold."}),
                                 key<&LaidApron::corner>({.meaning = "Corners of its outline."})};
  return {keys, &x};
}

Record record_of(LaidLines& x) {
  static constexpr Key keys[] = {
      key<&LaidLines::loop>({.meaning = "One row for each loop."}),
      key<&LaidLines::apron>({.meaning = "Of each manifold, the floor before it where leaders spread."})};
  return {keys, &x};
}

}  // namespace slabwright
