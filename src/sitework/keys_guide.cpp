#include <array>

#include "slabwright/key.hpp"
#include "slabwright/sitework_guide.hpp"

namespace slabwright {

template <>
struct Choices<Drilling> {
  static constexpr auto names = std::to_array<std::string_view>({"likely clear", "in doubt", "do not drill"});
};

std::string_view drilling_words(Drilling word) { return Choices<Drilling>::names[static_cast<std::size_t>(word)]; }

Record record_of(GuidePlace& x) {
  static constexpr Key keys[] = {
      key<&GuidePlace::x_m>({.meaning = "To the right on the plan."}),
      key<&GuidePlace::y_m>({.meaning = "Up on the plan."}),
      key<&GuidePlace::from_first_m>({.meaning = "From the first wall's inner face, square off it."}),
      key<&GuidePlace::from_second_m>({.meaning = "From the second wall's."})};
  return {keys, &x};
}

Record record_of(GuideHole& x) {
  static constexpr Key keys[] = {
      key<&GuideHole::place>({.meaning = "Where it is."}),
      key<&GuideHole::loop>({.meaning = "The loop whose tube is nearest."}),
      key<&GuideHole::along_m>({.meaning = "How far along that loop from its supply port."}),
      key<&GuideHole::distance_m>({.meaning = "From the hole's middle to that tube's centre line."}),
      key<&GuideHole::clear_m>({.meaning = "Between the hole's edge and the tube's; below 0 where they overlap."}),
      key<&GuideHole::depth_margin_m>({.meaning = "Concrete above the tube, less the hole's depth."}),
      key<&GuideHole::sideways_m>({.meaning = "Standard deviation of the tube's place there."}),
      key<&GuideHole::over_share>({.meaning = "Chance that it lies over tube."}),
      key<&GuideHole::deep_share>({.meaning = "Chance that it goes as deep as tube."}),
      key<&GuideHole::strike_share>({.meaning = "Chance of a strike."}),
      key<&GuideHole::word>({.meaning = "What that chance is called."})};
  return {keys, &x};
}

Record record_of(GuideMove& x) {
  static constexpr Key keys[] = {
      key<&GuideMove::right_m>({.meaning = "To the right on the plan."}),
      key<&GuideMove::up_m>({.meaning = "Up on the plan."}),
      key<&GuideMove::moved_m>({.meaning = "How far the hole moves that moves farthest."}),
      key<&GuideMove::hole>({.meaning = "Where the holes are then, turned with the rest where a turn helps."}),
      key<&GuideMove::strike_share>({.meaning = "Chance of a strike there."}),
      key<&GuideMove::clear>({.meaning = "Whether all is likely clear there."})};
  return {keys, &x};
}

Record record_of(GuideAnchor& x) {
  static constexpr Key keys[] = {
      key<&GuideAnchor::name>({.meaning = "What it holds."}),
      key<&GuideAnchor::diameter_m>({.meaning = "Of its holes."}),
      key<&GuideAnchor::depth_m>({.meaning = "Of its holes."}),
      key<&GuideAnchor::hole>({.meaning = "Each hole."}),
      key<&GuideAnchor::strike_share>({.meaning = "Chance that one of them strikes."}),
      key<&GuideAnchor::word>({.meaning = "What that chance is called."}),
      key<&GuideAnchor::move>(
          {.meaning = "The nearest move that makes it likely clear, or the one with least chance."})};
  return {keys, &x};
}

Record record_of(GuideFound& x) {
  static constexpr Key keys[] = {key<&GuideFound::place>({.meaning = "Where tube was found."}),
                                 key<&GuideFound::off_m>({.meaning = "From the nearest tube of the drawing."}),
                                 key<&GuideFound::left_m>({.meaning = "From it after the drawing was re-fitted."}),
                                 key<&GuideFound::left_out>({.meaning = "Does not fit the other places."})};
  return {keys, &x};
}

Record record_of(DrillGuide& x) {
  static constexpr Key keys[] = {
      key<&DrillGuide::first_wall>({.meaning = "The first wall that places are told from."}),
      key<&DrillGuide::second_wall>({.meaning = "The second one."}),
      key<&DrillGuide::outside_diameter_m>({.meaning = "Of the tube."}),
      key<&DrillGuide::concrete_above_m>({.meaning = "From the top of the floor to the top of the tube."}),
      key<&DrillGuide::tolerance_m>({.meaning = "19 of 20 places of tube lie within this of their drawing."}),
      key<&DrillGuide::depth_tolerance_m>({.meaning = "The same of the tube's depth."}),
      key<&DrillGuide::tolerance_is_ours>({.meaning = "Whether that tolerance is our guess."}),
      key<&DrillGuide::hole_is_ours>({.meaning = "Whether a hole's diameter or depth is our guess."}),
      key<&DrillGuide::may_move_m>({.meaning = "How far a machine may be moved each way."}),
      key<&DrillGuide::anchor>({.meaning = "Each machine, or the hole asked about."}),
      key<&DrillGuide::found>({.meaning = "Places where tube was found."}),
      key<&DrillGuide::shift_right_m>({.meaning = "What was found moves the whole drawing to the right by this."}),
      key<&DrillGuide::shift_up_m>({.meaning = "And up by this."})};
  return {keys, &x};
}

}  // namespace slabwright
