// Which test to make next.
#pragma once
#include "balance/causes.hpp"

namespace slabwright {

/// The test that parts two suspects best: a front or a thermometer at a loop that has none yet, a bucket, or all meters
/// read again. The easier one wins where two part them nearly alike.
NextTest next_test(ReadNetwork& network, const Evidence& evidence, const Suspect& first, const Suspect& second);

}  // namespace slabwright
