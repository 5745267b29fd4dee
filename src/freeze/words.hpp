// What the frost hold says, in the reader's units.
#pragma once
#include "freeze/shop.hpp"

namespace slabwright::freeze {

/// "49 F".
std::string shown_degC(double degC, System system);

/// Which places no setting keeps, what else can be done, and what is enough everywhere else.
std::string why_no_setting(const Design& design, const Freeze& freeze);

/// Which places could not be computed, and what is enough for the others.
std::string why_not_called(const Design& design, const Freeze& freeze);

/// Which place a setting lets fall below its limit.

/// Everything worth saying beside the numbers.
std::vector<Diagnostic> remarks(const Freeze& freeze, const Shop& shop, std::optional<double> boiler_W);

}  // namespace slabwright::freeze
