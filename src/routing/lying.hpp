// Loops as they lie, while single lines of them are still moved: a change is taken only if it holds.
#pragma once
#include "finish.hpp"
#include "tube_map.hpp"

namespace slabwright::routing {

/// Tube that is moved keeps this far from other tube, in spacings, as lines and as arcs.
constexpr double nearest_line = 0.95, nearest_arc = 0.94;

/// Strands, their tube and the map of it, always of one mind.
class Lying {
 public:
  Lying(const LayoutTask& task, std::vector<Strand>& strands, std::vector<Path>& paths);

  const LayoutTask& task() const { return task_; }
  double spacing_m() const { return task_.spacing_m; }
  std::size_t size() const { return strands_.size(); }
  const std::vector<Point>& corners(std::size_t loop) const { return strands_[loop].corner; }
  const TubeMap& map() const { return map_; }

  /// Takes these corners for a loop if less floor is bare then, and if all tube that is new keeps the radius, the
  /// clearances and `least_gap_m` to other tube.
  bool take(std::size_t loop, Strand strand, double least_gap_m);

 private:
  bool holds(std::size_t loop, const Path& path, double least_gap_m) const;
  bool clear(std::size_t loop, const Piece& piece, double least_gap_m) const;
  bool was_there(std::size_t loop, Point a, Point b) const;
  bool own_apart(const Path& path, std::size_t n, double at_m, double least_gap_m) const;
  std::vector<Point> parts_of(const Piece& piece) const;

  const LayoutTask& task_;
  std::vector<Strand>& strands_;
  std::vector<Path>& paths_;
  TubeMap map_;
};

/// Bare spots that touch each other.
struct Bare {
  std::vector<int> spot;
  Point low, high, middle;
};

/// A stretch of a tube line moved towards bare floor.
bool bump_into(Lying& lying, const Bare& bare);

/// Tube beside bare floor laid along the wall instead of in steps.
bool follow_wall(Lying& lying, const Bare& bare);

/// The outermost leaders led along the wall first, round bare floor in the corner.
bool lead_round(Lying& lying, const Bare& bare);

}  // namespace slabwright::routing
