#include "slabwright/key.hpp"
#include "slabwright/sitework_materials.hpp"

namespace slabwright {

Record record_of(LoopTies& x) {
  static constexpr Key keys[] = {key<&LoopTies::loop>({.meaning = "Which loop."}),
                                 key<&LoopTies::ties_number>({.meaning = "Its ties."})};
  return {keys, &x};
}

Record record_of(Materials& x) {
  static constexpr Key keys[] = {
      key<&Materials::tube_m>({.meaning = "Tube cut off coils, with what is left over at the ends of loops."}),
      key<&Materials::ties_number>({.meaning = "Ties."}),
      key<&Materials::foam_m2>({.meaning = "Foam under the slab, waste counted."}),
      key<&Materials::edge_foam_m2>({.meaning = "Boards outside the slab's edge, waste counted."}),
      key<&Materials::waste_share>({.meaning = "Waste counted with foam."}),
      key<&Materials::manifolds_number>({.meaning = "Manifolds."}),
      key<&Materials::loops_number>({.meaning = "Loops."}),
      key<&Materials::ports_number>({.meaning = "Ports, spares counted; each a supply and a return."}),
      key<&Materials::sleeves_number>({.meaning = "Sleeves, one where a loop crosses a joint."}),
      key<&Materials::sleeve_m>({.meaning = "Length of a sleeve."}),
      key<&Materials::bend_supports_number>({.meaning = "Bend supports, where tube turns up to its port."}),
      key<&Materials::drawn>({.meaning = "Whether ties and sleeves were counted on drawn loops."}),
      key<&Materials::tie_m>({.meaning = "From tie to tie on straight tube."}),
      key<&Materials::loop>({.meaning = "Ties loop by loop."})};
  return {keys, &x};
}

}  // namespace slabwright
