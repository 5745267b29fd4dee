// Which test to make next.
#pragma once
#include <optional>

#include "balance/causes.hpp"

namespace slabwright {

struct TwoSuspects {
  Suspect first, second;
};
struct TwoStates {
  PortsUnder first, second;
};

/// The test that parts two suspects best: a front or a thermometer at a loop that has none yet, a bucket, all meters
/// read again, or with all ports open, where they are not. The easier one wins where two part them nearly alike.
NextTest next_test(const Evidence& evidence, const TwoSuspects& two, const TwoStates& now,
                   const std::optional<TwoStates>& open);

}  // namespace slabwright
