// Other opinions on the slab's way down.
#pragma once
#include "slabwright/envelope.hpp"

namespace slabwright::envelope {

/// ISO 13370, with the layers below the tube plane as its floor (an adaptation of ours), beside the field's
/// conductance.
GroundOpinion iso13370_opinion(const Design& design, double plane_W_per_m2K);

}  // namespace slabwright::envelope
