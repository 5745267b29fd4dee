// Flow meters at the ports: their scale, and what they cannot be read at.
#pragma once
#include <vector>

#include "slabwright/balance.hpp"

namespace slabwright {

/// The highest mark: the file's, or the smallest as sold that shows all that will be read; the largest sold where none
/// does.
double meter_most_m3_per_s(const Design& design, const Balance& balance);

/// Design flows, flows after setting and all readings on the way that lie outside 20 to 90 % of
/// `balance.meter_most_m3_per_s`.
void say_meters(const Balance& balance, std::vector<Diagnostic>& said);

}  // namespace slabwright
