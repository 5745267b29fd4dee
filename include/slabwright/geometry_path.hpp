// Paths of straight lines and arcs, as a tube lies on a floor, and straight lines that meet. Metres.
#pragma once
#include <optional>
#include <span>
#include <vector>

#include "slabwright/geometry.hpp"

namespace slabwright {

/// A straight line, or an arc of less than a full turn about `centre`.
struct Piece {
  Point from;
  Point to;
  double radius_m = 0.0;  ///< 0: a straight line
  Point centre;           ///< of an arc; both ends lie `radius_m` from it
  Side turn = Side::on;   ///< of an arc: to which side it bends on the way from `from`
};

/// Pieces that follow one another, each from where the last one ended.
using Path = std::vector<Piece>;

Piece line(Point from, Point to);
Piece arc(Point from, Point to, Point centre, Side turn);

/// The angle from direction a to direction b, 0 to pi, with + - * / and sqrt only: the same on every machine. Zero for
/// a direction without length.
double angle_between_rad(Point a, Point b);

/// How far an arc turns, 0 to 2 pi; zero for a line.
double sweep_rad(const Piece& piece);
double length_m(const Piece& piece);
double length_m(std::span<const Piece> path);

/// The place this far along the path; its ends for what lies beyond them. Asks for a piece at least.
Point point_at(std::span<const Piece> path, double distance_m);

/// Corners of a broken line along the path that leaves no arc by more than `sag_m` (> 0) and keeps the ends of all
/// pieces. Asks for a piece at least.
std::vector<Point> flattened(std::span<const Piece> path, double sag_m);

/// The same path walked the other way.
Path reversed(std::span<const Piece> path);

/// From a point to the nearest place of a piece.
double distance_to_piece_m(Point point, const Piece& piece);

/// A broken line with its corners rounded. Where a corner asks for more of its two lines than they have, its radius is
/// as large as fits: half of a line that it shares with another corner. Corners that repeat or lie on a straight line
/// are left out. Asks for two corners or more.
Path rounded(std::span<const Point> corners, double radius_m);
/// The same with a radius for each corner; the first and the last are not used.
Path rounded(std::span<const Point> corners, std::span<const double> radius_m);

/// Whether two straight lines between points share a place, ends included. Exact.
bool meet(Point a, Point b, Point c, Point d);
/// Between the nearest places of two straight lines; 0 where they meet.
double distance_of_edges_m(Point a, Point b, Point c, Point d);

/// A polygon with holes in it. The outline and each hole are simple; holes lie inside and apart.
struct Floor {
  Polygon outline;
  std::vector<Polygon> hole;
};
double area_m2(const Floor& floor);
Where where_is(Point point, const Floor& floor);
double distance_to_boundary_m(Point point, const Floor& floor);

/// The parts of the straight line a-b that lie on the floor, boundary included, as shares of it, in order.
struct Share {
  double from_ratio = 0.0;
  double to_ratio = 0.0;
};
std::vector<Share> clipped(Point a, Point b, const Floor& floor);

}  // namespace slabwright
