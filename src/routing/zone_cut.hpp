// A floor cut in two along straight lines, and along ones with one bend.
#pragma once
#include <optional>
#include <utility>

#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// The floor of one manifold or of several. Counter-clockwise.
struct Zone {
  struct Edge {
    double clearance_m = 0.0;
    bool is_border = false;  ///< to another zone's floor, where no wall stands
    friend bool operator==(const Edge&, const Edge&) = default;
  };
  Polygon corner;
  std::vector<Edge> edge;  ///< from each corner to the next
  friend bool operator==(const Zone&, const Zone&) = default;
};

/// The whole floor. Corners that repeat are left out.
Zone zone_of(const LayoutTask& task);
/// The task with this floor for its outline.
LayoutTask on_zone(const LayoutTask& task, const Zone& zone);

/// Where a chord ends: on which edge, and where.
struct ChordEnd {
  std::size_t edge = 0;
  Point at;
};
/// A line through the inside of a zone, from its outline to its outline.
struct Chord {
  ChordEnd from, to;
  std::vector<Point> bend;  ///< none or one
  std::vector<Point> corners() const;
};

/// All chords on an upright or level line. A line through corners of the zone runs on one side of them: `beyond` says
/// on the right or above.
std::vector<Chord> chords_on(const Zone& zone, bool upright, double at_m, bool beyond);
/// The chord from the outline to the bend and on, its arms pointing east or west and north or south of it. Absent
/// where the bend lies off the floor or an arm touches a corner.
std::optional<Chord> bent_chord(const Zone& zone, Point bend, bool east, bool north);

/// Both sides, the border's edges with these clearances, in the order of the chord. Absent where one of them would be
/// no floor.
std::optional<std::pair<Zone, Zone>> cut(const Zone& zone, const Chord& chord, const std::vector<double>& clearance_m);

}  // namespace slabwright::routing
