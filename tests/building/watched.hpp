// The places of a shop.
#pragma once
#include "envelope/coarse_fields.hpp"
#include "envelope/shops.hpp"
#include "slabwright/building.hpp"
#include "support/catch.hpp"

namespace slabwright::test {

inline WatchedPlaces watched_in(const Design& design) {
  const auto envelope = envelope_of(design);
  REQUIRE(envelope);
  return watched_places(design, *envelope.value, coarse_fields());
}

}  // namespace slabwright::test
