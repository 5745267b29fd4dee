// Paths of lines and arcs, rounded corners, floors with holes; a general library of geometry as an independent opinion.
#include "slabwright/geometry_path.hpp"

#include <rapidcheck.h>

#include <boost/geometry/algorithms/distance.hpp>
#include <boost/geometry/algorithms/intersection.hpp>
#include <boost/geometry/algorithms/intersects.hpp>
#include <boost/geometry/algorithms/length.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <cmath>

#include "support/catch.hpp"

using namespace slabwright;
namespace bg = boost::geometry;

namespace {

using OtherPoint = bg::model::d2::point_xy<double>;
using OtherLine = bg::model::linestring<OtherPoint>;

constexpr double pi = 3.14159265358979323846;

OtherLine other(const std::vector<Point>& corners) {
  OtherLine made;
  for (const Point& p : corners) made.push_back({p.x_m, p.y_m});
  return made;
}

/// Any of the numbers, however early in the run.
int drawn(int from, int to) { return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(from, to + 1)); }
Point drawn_point(int reach) { return {double(drawn(-reach, reach)), double(drawn(-reach, reach))}; }

}  // namespace

TEST_CASE("angles agree with the arc tangent of the system") {
  for (int k = 0; k <= 360; ++k) {
    const double angle = k * pi / 360.0;
    const Point a{2.0, 1.0}, b{2.0 * std::cos(angle) - std::sin(angle), 2.0 * std::sin(angle) + std::cos(angle)};
    CHECK(angle_between_rad(a, b) == Approx(angle).margin(1e-14));
    CHECK(angle_between_rad(b, a) == Approx(angle).margin(1e-14));
  }
  CHECK(angle_between_rad({0, 0}, {1, 0}) == 0.0);
}

TEST_CASE("arcs: length, places, other way round") {
  const Piece quarter = arc({1, 0}, {0, 1}, {0, 0}, Side::left), rest = arc({1, 0}, {0, 1}, {0, 0}, Side::right);
  CHECK(length_m(quarter) == Approx(pi / 2.0).epsilon(1e-14));
  CHECK(length_m(rest) == Approx(1.5 * pi).epsilon(1e-14));
  const Path path{line({1, -2}, {1, 0}), quarter, line({0, 1}, {-3, 1})};
  CHECK(length_m(path) == Approx(5.0 + pi / 2.0).epsilon(1e-14));
  const Point middle = point_at(path, 2.0 + pi / 4.0);
  CHECK(middle.x_m == Approx(std::sqrt(0.5)).epsilon(1e-14));
  CHECK(middle.y_m == Approx(std::sqrt(0.5)).epsilon(1e-14));
  CHECK(point_at(path, -1.0) == Point{1, -2});
  CHECK(point_at(path, 99.0) == Point{-3, 1});
  const Path back = reversed(path);
  CHECK(length_m(back) == Approx(length_m(path)).epsilon(1e-14));
  CHECK(distance_m(point_at(back, 3.0 + pi / 4.0), middle) < 1e-13);
  CHECK(distance_to_piece_m({2, 2}, quarter) == Approx(std::sqrt(8.0) - 1.0).epsilon(1e-14));
  CHECK(distance_to_piece_m({-1, -1}, quarter) == Approx(std::sqrt(5.0)).epsilon(1e-14));
  CHECK(distance_to_piece_m({-1, -1}, rest) == Approx(std::sqrt(2.0) - 1.0).epsilon(1e-14));
}

TEST_CASE("a flattened path stays within its sag and keeps the ends of pieces") {
  const Path path{line({0, 0}, {4, 0}), arc({4, 0}, {4, 3}, {4, 1.5}, Side::left), line({4, 3}, {0, 3})};
  for (const double sag_m : {0.1, 0.01, 0.0001}) {
    const std::vector<Point> corner = flattened(path, sag_m);
    CHECK(bg::length(other(corner)) == Approx(length_m(path)).epsilon(2.0 * sag_m));
    for (std::size_t i = 0; i + 1 < corner.size(); ++i) {
      const Point middle{0.5 * (corner[i].x_m + corner[i + 1].x_m), 0.5 * (corner[i].y_m + corner[i + 1].y_m)};
      double least_m = HUGE_VAL;
      for (const Piece& piece : path) least_m = std::min(least_m, distance_to_piece_m(middle, piece));
      CHECK(least_m <= sag_m);
    }
  }
}

TEST_CASE("corners are rounded without kinks, as wide as their lines allow") {
  const std::vector<Point> corners{{0, 0}, {4, 0}, {4, 1}, {0, 1}, {0, 5}, {0, 6}};
  const Path path = rounded(corners, 2.0);
  CHECK(path.front().from == corners.front());
  CHECK(path.back().to == corners.back());
  std::vector<double> radii;
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (path[i].radius_m > 0.0) radii.push_back(path[i].radius_m);
    if (i > 0) CHECK(path[i - 1].to == path[i].from);
  }
  REQUIRE(radii.size() == 3);
  CHECK(radii[0] == 0.5);  // the short line between the first two is shared
  CHECK(radii[1] == 0.5);
  CHECK(radii[2] == 2.0);
  // Each right angle of radius r saves (2 - pi / 2) r.
  CHECK(length_m(path) == Approx(14.0 - (2.0 - pi / 2.0) * 3.0).epsilon(1e-14));
}

TEST_CASE("lines that meet, and distances between them, as the general library says") {
  CHECK(rc::check("meet and distance_of_edges_m", [] {
    const int reach = drawn(2, 30);
    const Point a = drawn_point(reach), b = drawn_point(reach), c = drawn_point(reach), d = drawn_point(reach);
    RC_PRE(!(a == b) && !(c == d));
    const OtherLine first = other({a, b}), second = other({c, d});
    RC_ASSERT(meet(a, b, c, d) == bg::intersects(first, second));
    RC_ASSERT(std::abs(distance_of_edges_m(a, b, c, d) - bg::distance(first, second)) < 1e-9);
  }));
}

TEST_CASE("floors with holes: area, inside, lines cut to them") {
  const Floor floor{rectangle(10, 8), {{{2, 2}, {4, 2}, {4, 4}, {2, 4}}, {{6, 5}, {8, 5}, {7, 7}}}};
  CHECK(area_m2(floor) == 74.0);
  CHECK(where_is({3, 3}, floor) == Where::outside);
  CHECK(where_is({2, 3}, floor) == Where::boundary);
  CHECK(where_is({5, 3}, floor) == Where::inside);
  CHECK(where_is({11, 3}, floor) == Where::outside);
  CHECK(distance_to_boundary_m({5, 3}, floor) == 1.0);
  const auto parts = clipped({-5, 3}, {15, 3}, floor);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].from_ratio == 0.25);
  CHECK(parts[0].to_ratio == Approx(0.35).epsilon(1e-14));
  CHECK(parts[1].from_ratio == Approx(0.45).epsilon(1e-14));
  CHECK(parts[1].to_ratio == 0.75);
  bg::model::polygon<OtherPoint, false, false> same;
  for (const Point& p : floor.outline) same.outer().push_back({p.x_m, p.y_m});
  for (const Polygon& hole : floor.hole) {
    same.inners().emplace_back();
    for (auto p = hole.rbegin(); p != hole.rend(); ++p) same.inners().back().push_back({p->x_m, p->y_m});
  }
  CHECK(rc::check("clipped", [&] {
    const Point a{0.1 + 0.37 * drawn(-10, 40), 0.05 + 0.41 * drawn(-10, 40)},
        b{0.37 * drawn(-10, 40), 0.41 * drawn(-10, 40)};
    RC_PRE(!(a == b));
    bg::model::multi_linestring<OtherLine> inside;
    bg::intersection(other({a, b}), same, inside);
    double share = 0.0;
    for (const Share& part : clipped(a, b, floor)) share += part.to_ratio - part.from_ratio;
    RC_ASSERT(std::abs(share * distance_m(a, b) - bg::length(inside)) < 1e-9);
  }));
}
