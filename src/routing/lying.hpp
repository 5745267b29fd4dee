// Loops as they lie, while single lines of them are still moved: a change is taken only if it holds.
#pragma once
#include "finish.hpp"

namespace slabwright::routing {

/// Tube that is moved keeps this far from other tube, in spacings, as lines and as arcs.
constexpr double nearest_line = 0.95, nearest_arc = 0.94;

/// Strands, their tube and the map of it, always of one mind.
class Lying {
 public:
  Lying(const LayoutTask& task, TubeMap without_tube, std::vector<Strand>& strands, std::vector<Path>& paths);
  /// Corners of the strands that were tried so far: what it costs to try them.
  long tried_number() const { return tried_number_; }
  Lying(const LayoutTask& task, std::vector<Strand>& strands, std::vector<Path>& paths)
      : Lying(task, TubeMap(task), strands, paths) {}

  const LayoutTask& task() const { return task_; }
  double spacing_m() const { return task_.spacing_m; }
  std::size_t size() const { return strands_.size(); }
  const std::vector<Point>& corners(std::size_t loop) const { return strands_[loop].corner; }
  const TubeMap& map() const { return map_; }

  /// What new tube must keep: its distance to other tube, and clearances. Round a port there is less room.
  struct Rule {
    double least_gap_m = 0.0;
    Point port;
    double port_gap_m = 0.0;     ///< this near to other tube
    double crowded_m = 0.0;      ///< as far from the port as this
    double beside_wall_m = 0.0;  ///< clearances do not count as far from it as this
  };
  Rule rule() const { return {nearest_arc * task_.spacing_m, {}, 0.0, 0.0, 0.0}; }

  /// Takes these corners for a loop if no more spots than `most_far` are bare then, and if all tube that is new keeps
  /// the radius and the rule.
  bool take(std::size_t loop, Strand strand, const Rule& rule, int most_far);
  /// The same if fewer spots are bare than before.
  bool take(std::size_t loop, Strand strand, const Rule& rule) {
    return take(loop, std::move(strand), rule, map_.far_number() - 1);
  }

 private:
  static double gap_m(Point at, const Rule& rule) {
    return distance_m(at, rule.port) < rule.crowded_m ? rule.port_gap_m : rule.least_gap_m;
  }
  bool holds(std::size_t loop, const Path& path, const Rule& rule) const;
  bool clear(std::size_t loop, const Piece& piece, const Rule& rule) const;
  bool was_there(std::size_t loop, Point a, Point b) const;
  /// A path and how far along it each of its pieces begins.
  struct Measured {
    const Path& path;
    std::vector<double> at_m;
  };
  bool own_apart(std::size_t loop, const Measured& measured, std::size_t n, const Rule& rule) const;
  std::vector<Point> parts_of(const Piece& piece) const;

  const LayoutTask& task_;
  std::vector<Strand>& strands_;
  std::vector<Path>& paths_;
  TubeMap map_;
  long tried_number_ = 0;
};

/// Bare spots that touch each other.
struct Bare {
  std::vector<int> spot;
  Point low, high, middle;
};

/// Lines that step aside slant over instead where no floor is bare for it.
void ease_jogs(Lying& lying);

/// An end pushed out or a corner moved along its line, if that heats at least this share of the bare floor.
bool nudge_into(Lying& lying, const Bare& bare, double least_share);

/// A stretch of a tube line moved towards bare floor.
bool bump_into(Lying& lying, const Bare& bare);

/// Tube beside bare floor laid along the wall instead of in steps.
bool follow_wall(Lying& lying, const Bare& bare);

/// The outermost leaders led along the wall first, round bare floor in the corner.
bool lead_round(Lying& lying, const Bare& bare);

}  // namespace slabwright::routing
