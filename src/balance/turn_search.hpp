// Settings searched together, where rounding each by itself does not do.
#pragma once
#include "slabwright/balance.hpp"

namespace slabwright {

/// Steps that a hand can tell, from one step open to wide open.
struct TurnSteps {
  double step = 0.25;
  double most = 5.0;
};

/// From `balance.turns`: one port after the other a step up or down, the one that brings all loops nearest to the
/// middle of their bands, until all are inside or no step helps. The hardest loop stays as it is.
ValveTurns search_turns(const Plant& plant, const Balance& balance, const TurnSteps& steps, double water_degC);

}  // namespace slabwright
