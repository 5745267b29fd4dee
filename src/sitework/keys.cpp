#include "slabwright/key.hpp"
#include "slabwright/sitework.hpp"

namespace slabwright {

Record record_of(CutPiece& x) {
  static constexpr Key keys[] = {
      key<&CutPiece::loop>({.meaning = "Which loop."}),
      key<&CutPiece::length_m>({.meaning = "What is cut off for it, with what is left to work with at its ends."}),
      key<&CutPiece::from_m>({.meaning = "Where it begins on the coil, by the coil's own marks."}),
      key<&CutPiece::to_m>({.meaning = "Where it ends."})};
  return {keys, &x};
}

Record record_of(CutCoil& x) {
  static constexpr Key keys[] = {key<&CutCoil::number>({.meaning = "What is written on it."}),
                                 key<&CutCoil::length_m>({.meaning = "The coil as it is sold."}),
                                 key<&CutCoil::left_m>({.meaning = "What is left of it."}),
                                 key<&CutCoil::piece>({.meaning = "What is cut off it."})};
  return {keys, &x};
}

Record record_of(CutList& x) {
  static constexpr Key keys[] = {
      key<&CutList::coil>({.meaning = "The coils, longest first."}),
      key<&CutList::bought_m>({.meaning = "All of them together."}),
      key<&CutList::left_m>({.meaning = "What is left of all."}),
      key<&CutList::least>({.meaning = "Whether no other choice of coils leaves less."}),
      key<&CutList::gap_m>({.meaning = "How much less another choice could buy at most, where that is not known."})};
  return {keys, &x};
}

}  // namespace slabwright
