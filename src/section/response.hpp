// The first opinion, between the section and the handbook's star.
#pragma once
#include "slabwright/section.hpp"

namespace slabwright::section {

/// Whether the tube lies wholly in the concrete, so that there is a star.
bool tube_fits(const Section& section);

/// respond() without its error estimate, at half the price.
SectionResponse star_response(const Section& section, double film_W_per_m2K);

}  // namespace slabwright::section
