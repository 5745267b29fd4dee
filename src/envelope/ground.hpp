// The floor of a design as ISO 13370 sees it.
#pragma once
#include "slabwright/design.hpp"
#include "slabwright/handbook_iso13370.hpp"

namespace slabwright::envelope {

/// Soil, shape and edge; the layers of the floor are the caller's.
Iso13370Floor iso13370_floor(const Design& design);

}  // namespace slabwright::envelope
