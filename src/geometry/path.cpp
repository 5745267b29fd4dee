// Lengths, places and broken lines along paths of lines and arcs.
#include "slabwright/geometry_path.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/plane.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

double norm(Point a) { return std::sqrt(dot(a, a)); }

/// Arc tangent of 0 to 1: the angle is halved until a short series holds. tan(a/2) = t / (1 + sqrt(1 + t^2)).
double arc_tangent(double t) {
  double scale = 1.0;
  while (t > 0.03) {
    t /= 1.0 + std::sqrt(1.0 + t * t);
    scale *= 2.0;
  }
  double sum = 0.0;
  for (int k = 13; k >= 1; k -= 2) sum = (k % 4 == 1 ? 1.0 : -1.0) / k + t * t * sum;
  return scale * t * sum;
}

/// The place of an arc that lies at this share of its sweep: halving with square roots only.
Point on_arc(const Piece& piece, double share) {
  const double angle = share * sweep_rad(piece) * (piece.turn == Side::left ? 1.0 : -1.0);
  // Sine and cosine of a small part by series, doubled back.
  int halvings = 0;
  double small = angle;
  while (std::abs(small) > 0.03) {
    small *= 0.5;
    ++halvings;
  }
  const double q = small * small;
  double s = small * (1.0 - q / 6.0 * (1.0 - q / 20.0 * (1.0 - q / 42.0)));
  double c = 1.0 - q / 2.0 * (1.0 - q / 12.0 * (1.0 - q / 30.0 * (1.0 - q / 56.0)));
  for (; halvings > 0; --halvings) {
    const double twice = 2.0 * s * c;
    c = c * c - s * s;
    s = twice;
  }
  const Point arm = minus(piece.from, piece.centre);
  return {piece.centre.x_m + c * arm.x_m - s * arm.y_m, piece.centre.y_m + s * arm.x_m + c * arm.y_m};
}

Point on_piece(const Piece& piece, double share) {
  if (share <= 0.0) return piece.from;
  if (share >= 1.0) return piece.to;
  if (piece.radius_m > 0.0) return on_arc(piece, share);
  const Point along = minus(piece.to, piece.from);
  return {piece.from.x_m + share * along.x_m, piece.from.y_m + share * along.y_m};
}

}  // namespace

Piece line(Point from, Point to) { return {from, to, 0.0, {}, Side::on}; }

Piece arc(Point from, Point to, Point centre, Side turn) { return {from, to, distance_m(from, centre), centre, turn}; }

double angle_between_rad(Point a, Point b) {
  const double along = dot(a, b), across = std::abs(cross(a, b));
  if (along == 0.0 && across == 0.0) return 0.0;
  if (across <= std::abs(along)) {
    const double acute = arc_tangent(across / std::abs(along));
    return along > 0.0 ? acute : pi - acute;
  }
  const double rest = arc_tangent(std::abs(along) / across);
  return along > 0.0 ? pi / 2.0 - rest : pi / 2.0 + rest;
}

double sweep_rad(const Piece& piece) {
  if (piece.radius_m <= 0.0) return 0.0;
  const Point a = minus(piece.from, piece.centre), b = minus(piece.to, piece.centre);
  const double angle = angle_between_rad(a, b);
  const bool short_way = piece.turn == Side::left ? cross(a, b) >= 0.0 : cross(a, b) <= 0.0;
  return short_way ? angle : 2.0 * pi - angle;
}

double length_m(const Piece& piece) {
  return piece.radius_m > 0.0 ? piece.radius_m * sweep_rad(piece) : distance_m(piece.from, piece.to);
}

double length_m(std::span<const Piece> path) {
  double sum = 0.0;
  for (const Piece& piece : path) sum += length_m(piece);
  return sum;
}

Point point_at(std::span<const Piece> path, double distance_m) {
  expects(!path.empty(), "point_at: a path without pieces");
  for (const Piece& piece : path) {
    const double length = length_m(piece);
    if (distance_m <= length && length > 0.0) return on_piece(piece, distance_m / length);
    distance_m -= length;
  }
  return path.back().to;
}

std::vector<Point> flattened(std::span<const Piece> path, double sag_m) {
  expects(!path.empty() && sag_m > 0.0, "flattened: a path without pieces or no sag");
  std::vector<Point> corners{path[0].from};
  for (const Piece& piece : path) {
    // A chord over the angle a leaves its arc by r (1 - cos(a/2)), at most r a^2 / 8.
    const double step = piece.radius_m > 0.0 ? std::sqrt(8.0 * sag_m / piece.radius_m) : 1.0;
    const int parts = std::max(1, static_cast<int>(std::ceil(sweep_rad(piece) / step)));
    for (int k = 1; k <= parts; ++k) corners.push_back(on_piece(piece, static_cast<double>(k) / parts));
  }
  return corners;
}

Path reversed(std::span<const Piece> path) {
  Path back(path.rbegin(), path.rend());
  for (Piece& piece : back) {
    std::swap(piece.from, piece.to);
    if (piece.turn != Side::on) piece.turn = piece.turn == Side::left ? Side::right : Side::left;
  }
  return back;
}

double distance_to_piece_m(Point point, const Piece& piece) {
  if (piece.radius_m <= 0.0) return distance_to_edge_m(point, piece.from, piece.to);
  const Piece part = arc(piece.from, point, piece.centre, piece.turn);
  const double ends = std::min(distance_m(point, piece.from), distance_m(point, piece.to));
  if (part.to == piece.centre) return piece.radius_m;
  const Point a = minus(piece.from, piece.centre), p = minus(point, piece.centre);
  const double angle = angle_between_rad(a, p);
  const bool short_way = piece.turn == Side::left ? cross(a, p) >= 0.0 : cross(a, p) <= 0.0;
  const double at = short_way ? angle : 2.0 * pi - angle;
  return at <= sweep_rad(piece) ? std::abs(norm(p) - piece.radius_m) : ends;
}

}  // namespace slabwright
