// A way's year added up.
#pragma once
#include "winter/way_run.hpp"

namespace slabwright::winter {

/// Energy, money and comfort of a year; nothing of what freezes. Of the design prices and other use are looked at.
WayResult tally(const WayCase& way, const WayYear& year, const Design& design);

/// A way that fails comes after one that does not; among those that fail, what comes too near freezing after what is
/// too cold, the coldest last; then by what it costs, or uses.
double price_of(const WayResult& result);
bool ranks_before(const WayResult& one, const WayResult& other);

}  // namespace slabwright::winter
