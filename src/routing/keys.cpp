#include <array>

#include "slabwright/key.hpp"
#include "slabwright/routing.hpp"

namespace slabwright {

template <>
struct Choices<LengthFrom> {
  static constexpr auto names =
      std::to_array<std::string_view>({"file", "area and spacing", "count", "drawing", "path"});
};

Record record_of(Stretch& x) {
  static constexpr Key keys[] = {
      key<&Stretch::room>({.meaning = "Row of the room, from 0."}),
      key<&Stretch::start_m>({.meaning = "From the supply end of the loop."}),
      key<&Stretch::length_m>({.meaning = "Its length."}),
      key<&Stretch::leader>({.meaning = "On the way to or from the loop's own patch of floor."}),
      key<&Stretch::heating_share>({.meaning = "Heat it gives beside as much tube of the patch."})};
  return {keys, &x};
}

Record record_of(Loop& x) {
  static constexpr Key keys[] = {
      key<&Loop::name>({.meaning = "What it is called."}),
      key<&Loop::manifold>({.meaning = "Row of its manifold, from 0."}),
      key<&Loop::port>({.meaning = "Port on its manifold, from 1."}),
      key<&Loop::from>({.meaning = "How its length is known."}),
      key<&Loop::length_m>({.meaning = "From manifold to manifold, leaders included."}),
      key<&Loop::patch_m2>(
          {.meaning = "Floor it heats: as it is drawn, else its tube without leaders, times the spacing."}),
      key<&Loop::along>({.meaning = "Its stretches from supply to return."}),
      key<&Loop::bends_number>({.meaning = "Right angles that it turns, where it is drawn."})};
  return {keys, &x};
}

Record record_of(BetterPlace& x) {
  static constexpr Key keys[] = {key<&BetterPlace::manifold>({.meaning = "Row of the manifold, from 0."}),
                                 key<&BetterPlace::x_m>({.meaning = "On the plan, to the right."}),
                                 key<&BetterPlace::y_m>({.meaning = "On the plan, up."})};
  return {keys, &x};
}

Record record_of(LoopPlan& x) {
  static constexpr Key keys[] = {
      key<&LoopPlan::loop>({.meaning = "One row for each loop."}),
      key<&LoopPlan::room_tube_m>({.meaning = "Tube that heats each room, leaders by the heat they give."}),
      key<&LoopPlan::room_heated_m2>({.meaning = "Floor over that tube: no more than the room has."}),
      key<&LoopPlan::tube_m>({.meaning = "All tube, leaders included."}),
      key<&LoopPlan::limit_m>({.meaning = "Longest loop allowed for this tube."})};
  return {keys, &x};
}

}  // namespace slabwright
