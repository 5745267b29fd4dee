// Areas, outlines put in order, and outlines that cross themselves.
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "slabwright/geometry.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const Polygon ell{{0, 0}, {12, 0}, {12, 5}, {8, 5}, {8, 9}, {0, 9}};

Polygon reversed(Polygon polygon) {
  std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

/// Corners on a grid of tenths, so that touching and lying on one line happen often.
Polygon drawn_polygon() {
  Polygon polygon;
  const int corners = *rc::gen::inRange(3, 9);
  for (int i = 0; i < corners; ++i) {
    polygon.push_back({*rc::gen::inRange(0, 12) / 10.0, *rc::gen::inRange(0, 12) / 10.0});
  }
  return polygon;
}

}  // namespace

TEST_CASE("an L has the area of its two rectangles and its whole perimeter") {
  CHECK(signed_area_m2(ell) == 12 * 5 + 8 * 4);
  CHECK(signed_area_m2(reversed(ell)) == -(12 * 5 + 8 * 4));
  CHECK(perimeter_m(ell) == 2 * (12 + 9));
  CHECK(signed_area_m2(Polygon{{0, 0}, {1, 1}}) == 0.0);
}

TEST_CASE("an outline may be closed or open, and turn either way") {
  Polygon closed = ell;
  closed.push_back(ell.front());
  closed.push_back(ell.front());
  CHECK(normalized(closed) == ell);
  Polygon stuttering = ell;
  stuttering.insert(stuttering.begin() + 2, ell[1]);
  CHECK(normalized(stuttering) == ell);
  CHECK(signed_area_m2(normalized(reversed(ell))) == signed_area_m2(ell));
  CHECK(normalized(Polygon{{1, 1}, {1, 1}}).size() == 1);
}

TEST_CASE("an outline that crosses, touches or runs back on itself is found, and the edges named") {
  CHECK_FALSE(self_crossing(ell));
  CHECK_FALSE(self_crossing(rectangle(3, 2)));
  const auto bow_tie = self_crossing(Polygon{{0, 0}, {4, 3}, {4, 0}, {0, 3}});
  REQUIRE(bow_tie);
  CHECK((bow_tie->first == 0 && bow_tie->second == 2));
  const Polygon touches_a_corner{{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}};
  CHECK(self_crossing(touches_a_corner));
  const Polygon spike{{0, 0}, {4, 0}, {2, 0}, {2, 3}};
  CHECK(self_crossing(spike));
  const Polygon corner_twice{{0, 0}, {2, 2}, {4, 0}, {4, 4}, {2, 2}, {0, 4}};
  CHECK(self_crossing(corner_twice));
  const Polygon straight_corner{{0, 0}, {2, 0}, {4, 0}, {4, 3}, {0, 3}};
  CHECK_FALSE(self_crossing(straight_corner));
}

TEST_CASE("turning an outline round, or beginning at another corner, changes no verdict") {
  CHECK(rc::check("same verdict", [] {
    Polygon polygon = drawn_polygon();
    const bool crossing = self_crossing(polygon).has_value();
    RC_ASSERT(self_crossing(reversed(polygon)).has_value() == crossing);
    std::rotate(polygon.begin(), polygon.begin() + 1, polygon.end());
    RC_ASSERT(self_crossing(polygon).has_value() == crossing);
  }));
}

TEST_CASE("the side of a line is exact where rounding hides it") {
  // 0.1 + 0.2 lies 2^-54 above 0.3: three points that rounding puts on one line.
  CHECK(side_of({0, 0}, {0.3, 0.3}, {0.1 + 0.2, 0.1 + 0.2}) == Side::on);
  CHECK(side_of({0, 0}, {0.3, 0.1 + 0.2}, {0.3, 0.3}) == Side::right);
  const double step = std::ldexp(1.0, -52);
  for (int i = 0; i < 32; ++i) {
    for (int k = 0; k < 32; ++k) {
      // Near the line through (12, 12) and (24, 24), where the naive determinant is noise.
      const Point point{0.5 + i * step, 0.5 + k * step};
      const Side expected = k > i ? Side::left : k < i ? Side::right : Side::on;
      CHECK(side_of({12, 12}, {24, 24}, point) == expected);
    }
  }
}

TEST_CASE("swapping two points of three turns the side over") {
  CHECK(rc::check("antisymmetry", [] {
    const auto point = [] { return Point{*rc::gen::inRange(-1000, 1000) / 7.0, *rc::gen::inRange(-1000, 1000) / 7.0}; };
    const Point a = point(), b = point(), c = point();
    const int abc = static_cast<int>(side_of(a, b, c)), acb = static_cast<int>(side_of(a, c, b));
    RC_ASSERT(abc - 1 == 1 - acb);
    RC_ASSERT(abc == static_cast<int>(side_of(b, c, a)));
  }));
}
