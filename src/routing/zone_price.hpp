// What a border between zones is worth.
#pragma once
#include <array>
#include <map>

#include "zone_cut.hpp"
#include "zone_field.hpp"

namespace slabwright::routing {

/// Floor with the manifolds that stand on it, and the loops they are to lay on it.
struct ZonePiece {
  Zone zone;
  std::vector<std::size_t> manifold;
  int loops = 0;
};
struct ZoneSplit {
  ZonePiece first, second;
  double share = 0.0;  ///< of the heat, on the first side
};

/// What was learnt from zones laid before, by manifold.
struct ZoneNotes {
  std::vector<double> tube_ratio;  ///< loops came out so much longer than the floor had said
  std::vector<double> room_ratio;  ///< its apron wants so much more room than usual
  explicit ZoneNotes(std::size_t manifolds) : tube_ratio(manifolds, 1.0), room_ratio(manifolds, 1.0) {}
};

/// The direction of the longest walls, square corners counted together.
Point main_direction(const Polygon& outline);

/// A place as it is seen from `origin` looking north.
Point seen_along(Point place, Point origin, Point north);

/// The task with its first manifold turned that way: what `seen_from_manifold` goes by.
LayoutTask facing(LayoutTask task, Point north);

class ZonePrices {
 public:
  /// `north`: the direction of the main walls. All that is said here of places is seen from the first manifold, looking
  /// that way.
  ZonePrices(const LayoutTask& task, Point north, const ZoneNotes& notes);

  const Cells& cells() const { return cells_; }
  /// Lines that a border might well lie on: joints, partitions, half way between manifolds.
  std::vector<double> marks(bool upright) const;
  double spacing_m() const { return seen_.spacing_m; }
  /// Of each line of a border: half a spacing, or what the partition asks for that it lies in.
  std::vector<double> border_clearance_m(const Chord& chord) const;
  double tube_m() const { return tube_m_; }
  ZonePiece whole() const;
  int most_loops(const std::vector<std::size_t>& manifold) const;
  bool stands_on_floor(std::size_t manifold) const;

  /// Tube, weighted by heat lost.
  double heat(const Zone& zone) const { return heat_.within(zone.corner); }
  /// Manifolds and loops on each side. Absent where a side has none, or too few ports, or must take more than it can.
  std::optional<ZoneSplit> split(const ZonePiece& piece, const std::pair<Zone, Zone>& sides) const;
  /// How much of a chord lies on joints and in partitions.
  double on_lines_ratio(const Chord& chord) const;
  /// In half per cents of unequal length, about.
  double price(const ZonePiece& piece, const ZoneSplit& split, const Chord& chord) const;
  /// What the cells of both sides add to it or take from it: they do not fill every floor evenly.
  double close_price(const ZoneSplit& split) const;

 private:
  int least_loops(const std::vector<std::size_t>& manifold) const;
  double uneven_price(const std::array<double, 2>& floor, const std::array<double, 2>& tube_m,
                      const ZoneSplit& split) const;
  double heat(const ZonePiece& side, double of_floor) const;
  double uneven_price(const ZoneSplit& split) const;
  double crowding(const ZonePiece& side, const Chord& chord) const;
  double in_partition_m(Point a, Point b, const NoTubeArea& area) const;
  int areas_cut(const Chord& chord) const;
  double way_m(const ZonePiece& side) const;
  bool is_partition(const NoTubeArea& area, bool upright) const;

  ZoneNotes notes_;
  LayoutTask seen_;
  Cells cells_;
  std::vector<Point> probe_;  ///< a little before each manifold
  std::vector<Point> place_;
  double tube_m_ = 0.0;
  FloorField tube_, heat_;
  std::vector<std::vector<double>> way_;  ///< by manifold and cell: heat times the way
  /// The same summed over floors, from the nearest of several manifolds: made when first asked for.
  mutable std::map<std::vector<std::size_t>, FloorField> nearest_way_;
};

}  // namespace slabwright::routing
