// Between the section and its field.
#pragma once
#include "slabwright/section.hpp"

namespace slabwright::section {

/// Whether the tube lies wholly in its layer, clear of its neighbours.
bool tube_fits(const Section& section);

/// Of the gradient across itself, the part that a tube evens out: 1 for a face of one temperature, 0 where wall and
/// film resist just as much as the concrete that the tube takes the place of, negative beyond.
double evened_share(const Section& section, double tube_mK_per_W);
/// Its inverse.
double tube_mK_per_W_for(const Section& section, double evened_share);

/// From the tube's plane to the floor's film: what the film stands in series with.
double plane_m2K_per_W(const Section& section);

/// The section as a row of tubes under a film, with or without mats on it.
TubeRow tube_row(const Section& section, double film_W_per_m2K, double mat_m2K_per_W = 0.0);

/// A resistance put in at the tube or, where it is negative, taken away again.
SectionResponse with_resistance(const SectionResponse& response, double tube_mK_per_W);

}  // namespace slabwright::section
