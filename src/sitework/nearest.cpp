// The place of a path that is nearest to a point.
#include "sitework/nearest.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright::sitework {
namespace {

Foot at_place(Point point, Point place, Point ahead, double along_m) {
  return {place, ahead, along_m, distance_m(point, place)};
}

Foot foot_on_line(Point point, const Piece& piece) {
  const Point along = minus(piece.to, piece.from);
  const double square = dot(along, along);
  const double share = square > 0.0 ? std::clamp(dot(minus(point, piece.from), along) / square, 0.0, 1.0) : 0.0;
  const Point place{piece.from.x_m + share * along.x_m, piece.from.y_m + share * along.y_m};
  return at_place(point, place, unit(along), share * length_m(piece));
}

/// Along an arc, a quarter turn from the arm to the side it bends to.
Point ahead_on(const Piece& piece, Point place) {
  const Point arm = unit(minus(place, piece.centre));
  return piece.turn == Side::left ? Point{-arm.y_m, arm.x_m} : Point{arm.y_m, -arm.x_m};
}

Foot foot_on_arc(Point point, const Piece& piece) {
  const Point arm = minus(point, piece.centre);
  if (arm.x_m != 0.0 || arm.y_m != 0.0) {
    const Point way = unit(arm);
    const Point place{piece.centre.x_m + piece.radius_m * way.x_m, piece.centre.y_m + piece.radius_m * way.y_m};
    const double turned = sweep_rad({piece.from, place, piece.radius_m, piece.centre, piece.turn});
    if (turned <= sweep_rad(piece)) return at_place(point, place, ahead_on(piece, place), turned * piece.radius_m);
  }
  const bool first = distance_m(point, piece.from) <= distance_m(point, piece.to);
  const Point end = first ? piece.from : piece.to;
  return at_place(point, end, ahead_on(piece, end), first ? 0.0 : length_m(piece));
}

/// No foot of the piece is nearer than this.
double least_distance_m(Point point, const Piece& piece) {
  const Point middle{0.5 * (piece.from.x_m + piece.to.x_m), 0.5 * (piece.from.y_m + piece.to.y_m)};
  if (piece.radius_m > 0.0) return distance_m(point, piece.centre) - piece.radius_m;
  return distance_m(point, middle) - 0.5 * distance_m(piece.from, piece.to);
}

}  // namespace

Point unit(Point direction) {
  const double length = std::sqrt(dot(direction, direction));
  return length > 0.0 ? Point{direction.x_m / length, direction.y_m / length} : Point{1.0, 0.0};
}

Foot foot_on(Point point, const Piece& piece) {
  return piece.radius_m > 0.0 ? foot_on_arc(point, piece) : foot_on_line(point, piece);
}

std::vector<Foot> passes_of(Point point, std::span<const Piece> path, double reach_m) {
  // Two pieces that meet share a place, whose distance rounding gives twice.
  constexpr double same_m = 1e-9;
  std::vector<Foot> passes;
  double before_m = 0.0, last_m = 0.0;
  bool in_reach = false, falling = false;
  for (const Piece& piece : path) {
    const double length = length_m(piece);
    if (least_distance_m(point, piece) > reach_m) {
      in_reach = false;
      before_m += length;
      continue;
    }
    Foot foot = foot_on(point, piece);
    foot.along_m += before_m;
    before_m += length;
    if (foot.distance_m > reach_m) {
      in_reach = false;
      continue;
    }
    if (!in_reach || (!falling && foot.distance_m < last_m - same_m)) {
      passes.push_back(foot);
      falling = true;
    } else if (foot.distance_m > last_m + same_m) {
      falling = false;
    } else if (foot.distance_m < passes.back().distance_m) {
      passes.back() = foot;
    }
    in_reach = true;
    last_m = foot.distance_m;
  }
  return passes;
}

NearestFoot nearest_of(Point point, const std::vector<Path>& loops) {
  NearestFoot best;
  best.foot.distance_m = HUGE_VAL;
  for (std::size_t loop = 0; loop < loops.size(); ++loop) {
    double before_m = 0.0;
    for (const Piece& piece : loops[loop]) {
      if (least_distance_m(point, piece) < best.foot.distance_m) {
        Foot foot = foot_on(point, piece);
        foot.along_m += before_m;
        if (foot.distance_m < best.foot.distance_m) best = {loop, foot};
      }
      before_m += length_m(piece);
    }
  }
  expects(best.foot.distance_m < HUGE_VAL, "sitework: no tube to be near to");
  return best;
}

}  // namespace slabwright::sitework
