// The floor shared out among manifolds: a zone for each, cut off along straight borders.
#pragma once
#include "zone_price.hpp"

namespace slabwright::routing {

struct ZoneShare {
  Zone zone;
  std::size_t manifold = 0;
  int loops = 0;  ///< so many make all loops of the floor about equally long
  friend bool operator==(const ZoneShare&, const ZoneShare&) = default;
};

/// A zone for each manifold, in their order. Borders are parallel to the main walls, straight or with one bend; tube
/// keeps half a spacing from them. Chosen so that loops come out equally long with as few as the limit allows, ways to
/// the manifolds are short, and joints and partitions lie on borders rather than in zones. Absent, with the reason,
/// where a manifold has no floor before it, where ports do not suffice, or where no border parts two manifolds.
Checked<std::vector<ZoneShare>> zones_of(const LayoutTask& task, const ZoneNotes& notes);

}  // namespace slabwright::routing
