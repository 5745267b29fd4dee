#include "joints.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::routing {
namespace {

/// The sine of the angle below which tube lies along a joint.
constexpr double along_sine = 0.35;

/// A joint as a place, a direction of length 1, and its length.
struct Straight {
  Point from, along;
  double length_m = 0.0;
  double off_m(Point p) const { return (p.x_m - from.x_m) * along.y_m - (p.y_m - from.y_m) * along.x_m; }
  double at_m(Point p) const { return (p.x_m - from.x_m) * along.x_m + (p.y_m - from.y_m) * along.y_m; }
};

Straight straight(const JointLine& joint) {
  const double length = distance_m(joint.from, joint.to);
  return {joint.from, {(joint.to.x_m - joint.from.x_m) / length, (joint.to.y_m - joint.from.y_m) / length}, length};
}

struct Meeting {
  Point place;
  double from_start_m = 0.0;  ///< along the piece
};

/// How far round an arc a place on its circle lies, from its beginning.
double arc_to_m(const Piece& piece, Point p) {
  Piece part = piece;
  part.to = p;
  return length_m(std::span<const Piece>(&part, 1));
}

/// Where an arc's whole circle meets the line, as far as that lies on the arc; in order along it.
std::vector<Meeting> on_arc(const Piece& piece, const Straight& line) {
  const double off = line.off_m(piece.centre);
  if (std::abs(off) >= piece.radius_m) return {};
  const double half = std::sqrt(piece.radius_m * piece.radius_m - off * off);
  const Point foot{piece.centre.x_m - off * line.along.y_m, piece.centre.y_m + off * line.along.x_m};
  std::vector<Meeting> all;
  const double whole_m = length_m(std::span<const Piece>(&piece, 1));
  for (const double sign : {-1.0, 1.0}) {
    const Point p{foot.x_m + sign * half * line.along.x_m, foot.y_m + sign * half * line.along.y_m};
    const double at_m = arc_to_m(piece, p);
    if (at_m <= whole_m) all.push_back({p, at_m});
  }
  std::sort(all.begin(), all.end(), [](const Meeting& a, const Meeting& b) { return a.from_start_m < b.from_start_m; });
  return all;
}

/// Where a piece changes sides of the line, given the side it begins on: what lies on the line counts as left of it.
std::vector<Meeting> passes(const Piece& piece, const Straight& line, bool begins_left) {
  const bool ends_left = line.off_m(piece.to) >= 0.0;
  if (piece.radius_m > 0.0) {
    std::vector<Meeting> met = on_arc(piece, line);
    const bool odd = begins_left != ends_left;
    // An arc that begins or ends on the line meets it there by a hair, or does not.
    if (odd && met.empty()) {
      const bool at_end = std::abs(line.off_m(piece.to)) < std::abs(line.off_m(piece.from));
      return {{at_end ? piece.to : piece.from, at_end ? length_m(std::span<const Piece>(&piece, 1)) : 0.0}};
    }
    if (odd && met.size() == 1) return met;
    // Twice, if what lies between is on the other side; ends that lie on the line are no such meetings.
    const auto between = [&] {
      const double at_m = 0.5 * (met.front().from_start_m + met.back().from_start_m);
      return line.off_m(point_at(std::span<const Piece>(&piece, 1), at_m)) >= 0.0;
    };
    if (!odd && met.size() == 2 && between() != begins_left) return met;
    if (!odd) return {};
    const bool first = std::abs(line.off_m(piece.from)) > std::abs(line.off_m(piece.to));
    return {first ? met.back() : met.front()};
  }
  if (begins_left == ends_left) return {};
  const double a = std::abs(line.off_m(piece.from)), b = std::abs(line.off_m(piece.to));
  const double share = a + b > 0.0 ? a / (a + b) : 0.0;
  return {{{piece.from.x_m + share * (piece.to.x_m - piece.from.x_m),
            piece.from.y_m + share * (piece.to.y_m - piece.from.y_m)},
           share * distance_m(piece.from, piece.to)}};
}

}  // namespace

std::vector<JointCrossing> crossings_of(const Path& path, const std::vector<JointLine>& joints) {
  std::vector<JointCrossing> all;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    if (path.empty() || joints[j].from == joints[j].to) continue;
    const Straight line = straight(joints[j]);
    bool left = line.off_m(path.front().from) >= 0.0;
    double at_m = 0.0;
    for (const Piece& piece : path) {
      for (const Meeting& met : passes(piece, line, left)) {
        const double along_m = line.at_m(met.place);
        if (along_m >= 0.0 && along_m <= line.length_m) all.push_back({j, met.place, at_m + met.from_start_m});
      }
      left = line.off_m(piece.to) >= 0.0;
      at_m += length_m(std::span<const Piece>(&piece, 1));
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const JointCrossing& a, const JointCrossing& b) { return a.at_m < b.at_m; });
  return all;
}

bool lies_along(const JointLine& joint, Point a, Point b) {
  const double across =
      (joint.to.x_m - joint.from.x_m) * (b.y_m - a.y_m) - (joint.to.y_m - joint.from.y_m) * (b.x_m - a.x_m);
  const double lengths = distance_m(a, b) * distance_m(joint.from, joint.to);
  return std::abs(across) < along_sine * lengths && distance_of_edges_m(a, b, joint.from, joint.to) < off_joint_m;
}

}  // namespace slabwright::routing
