// A symmetric floor: its left half is shared out and laid, the right one is the mirror image.
#pragma once
#include "draft.hpp"

namespace slabwright::routing {

/// Whether cells and apron are their own mirror image; the gates on the right are then made those on the left.
bool make_symmetric(const Cells& cells, Apron& apron);

/// Leaves the left half of a draft's cells and loops.
void fold(Draft& draft);

/// The other half of a draft that is laid.
void unfold(Draft& draft);

}  // namespace slabwright::routing
