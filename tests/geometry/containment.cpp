// What lies in what; a general library of geometry as an independent opinion.
#include <rapidcheck.h>

#include <algorithm>
#include <boost/geometry/algorithms/covered_by.hpp>
#include <boost/geometry/algorithms/is_valid.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>

#include "slabwright/geometry.hpp"
#include "support/catch.hpp"

using namespace slabwright;
namespace bg = boost::geometry;

namespace {

using OtherPoint = bg::model::d2::point_xy<double>;
using OtherPolygon = bg::model::polygon<OtherPoint, false, false>;  // counter-clockwise, open

OtherPolygon other(const Polygon& polygon) {
  OtherPolygon made;
  for (const Point& p : polygon) made.outer().push_back({p.x_m, p.y_m});
  return made;
}

/// Any of the numbers, however early in the run.
int drawn(int from, int to) { return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(from, to + 1)); }

/// A star-shaped polygon on whole numbers; `self_crossing` weeds out the few that are not simple.
Polygon drawn_simple(int reach) {
  while (true) {
    Polygon polygon;
    const int corners = drawn(3, 9);
    for (int i = 0; i < corners; ++i) {
      polygon.push_back({double(drawn(-reach, reach)), double(drawn(-reach, reach))});
    }
    std::sort(polygon.begin(), polygon.end(),
              [](Point a, Point b) { return std::atan2(a.y_m, a.x_m) < std::atan2(b.y_m, b.x_m); });
    polygon = normalized(polygon);
    if (polygon.size() >= 3 && signed_area_m2(polygon) > 0.0 && !self_crossing(polygon)) return polygon;
  }
}

const Polygon ell{{0, 0}, {12, 0}, {12, 5}, {8, 5}, {8, 9}, {0, 9}};

}  // namespace

TEST_CASE("a point lies inside, on the boundary or outside") {
  CHECK(where_is({6, 4}, ell) == Where::inside);
  CHECK(where_is({10, 7}, ell) == Where::outside);
  CHECK(where_is({10, 5}, ell) == Where::boundary);
  CHECK(where_is({8, 5}, ell) == Where::boundary);
  CHECK(where_is({4, 5}, ell) == Where::inside);    // a ray from here passes a corner
  CHECK(where_is({-1, 5}, ell) == Where::outside);  // and from here an edge lengthwise
  CHECK(where_is({13, 0}, ell) == Where::outside);
}

TEST_CASE("a room lies in a slab with its boundary, not across a cut corner") {
  CHECK(inside(ell, ell, 0.0));
  CHECK(inside(Polygon{{8, 0}, {12, 0}, {12, 5}, {8, 5}}, ell, 0.0));
  CHECK(inside(rectangle(8, 9), ell, 0.0));
  CHECK_FALSE(inside(rectangle(12, 9), ell, 0.0));
  CHECK_FALSE(inside(rectangle(13, 5), ell, 0.0));
  // All corners lie on the boundary, yet the room bridges the cut corner.
  CHECK_FALSE(inside(Polygon{{8, 9}, {0, 9}, {12, 5}}, ell, 0.0));
}

TEST_CASE("walls on one slanting line hold each other whatever the rounding between their corners") {
  const Polygon outer{{-8, -6}, {-8, -8}, {-3, -8}, {4, -1}, {6, 8}, {0, 2}};
  CHECK(inside(Polygon{{-4, -2}, {-4, -4}, {1, -4}, {1, 3}}, outer, 0.0));
}

TEST_CASE("a tape's reading beyond the wall is forgiven, more is not") {
  CHECK(inside(rectangle(8.005, 9), ell, 0.010));
  CHECK_FALSE(inside(rectangle(8.02, 9), ell, 0.010));
  CHECK_FALSE(inside(rectangle(8.005, 9), ell, 0.0));
}

TEST_CASE("a spike thinner than what is forgiven holds nothing of what it goes round") {
  // A wall of 4 mm round a yard at the right of the shop.
  const Polygon outer{{0, 0},         {8, 0},          {8, 5},          {11, 5},    {11, 2}, {8.003, 2},
                      {8.003, 1.996}, {11.004, 1.996}, {11.004, 5.004}, {8, 5.004}, {8, 9},  {0, 9}};
  REQUIRE_FALSE(self_crossing(outer));
  CHECK_FALSE(inside(Polygon{{8, 2}, {11, 2}, {11, 5}, {8, 5}}, outer, 0.010));
  // A spike along the diagonal, as thick as rounding, with the room beside it cut off.
  const double up = 4.000000000000051;
  const Polygon spiked{{12, 12}, {11, 9}, {up, up}, {15.000000000000009, 15.00000000000001}, {0, 0}, {11, 4}};
  const Polygon plain = normalized(spiked);
  REQUIRE_FALSE(self_crossing(plain));
  CHECK_FALSE(inside(normalized(Polygon{{12, 12}, {0, 0}, {11, 4}}), plain, 0.0));
}

TEST_CASE("distances to a boundary") {
  CHECK(distance_to_boundary_m({4, 4.5}, ell) == 4.0);
  CHECK(distance_to_boundary_m({15, 9}, ell) == 5.0);
  CHECK(distance_to_edge_m({3, 4}, {0, 0}, {0, 0}) == 5.0);
}

TEST_CASE("crossings agree with the general library's validity") {
  CHECK(rc::check("simple is valid", [] {
    Polygon polygon;
    const int corners = drawn(3, 6);
    for (int i = 0; i < corners; ++i) polygon.push_back({double(drawn(0, 6)), double(drawn(0, 6))});
    polygon = normalized(polygon);
    RC_PRE(polygon.size() >= 3 && signed_area_m2(polygon) > 0.0);
    RC_ASSERT(bg::is_valid(other(polygon)) == !self_crossing(polygon).has_value());
  }));
}

TEST_CASE("points and polygons agree with the general library") {
  CHECK(rc::check("points", [] {
    const Polygon polygon = drawn_simple(8);
    const Point point{drawn(-20, 20) / 2.0, drawn(-20, 20) / 2.0};
    RC_ASSERT(bg::covered_by(OtherPoint{point.x_m, point.y_m}, other(polygon)) ==
              (where_is(point, polygon) != Where::outside));
  }));
  CHECK(rc::check("polygons", [] {
    const Polygon inner = drawn_simple(4), outer = drawn_simple(8);
    RC_ASSERT(bg::covered_by(other(inner), other(outer)) == inside(inner, outer, 0.0));
  }));
}
