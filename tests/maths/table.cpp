// Tables: rows met exactly, no overshoot between them, the ends clamped and said.
#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "slabwright/maths.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

double drawn(double low, double high) {
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

std::vector<TablePoint> falling_table() {
  std::vector<TablePoint> points{{drawn(-1.0, 1.0), drawn(5.0, 9.0)}};
  const int rows = *rc::gen::inRange(2, 9);
  for (int i = 1; i < rows; ++i) {
    const bool level = *rc::gen::inRange(0, 4) == 0;
    points.push_back({points.back().at + drawn(0.01, 2.0), points.back().value - (level ? 0.0 : drawn(0.001, 3.0))});
  }
  return points;
}

}  // namespace

TEST_CASE("straight lines between rows") {
  const std::vector<TablePoint> points{{0.0, 1.0}, {1.0, 3.0}, {4.0, 0.0}};
  CHECK(linear_in_table(points, 0.5).value == 2.0);
  CHECK(linear_in_table(points, 0.5).slope == 2.0);
  CHECK(linear_in_table(points, 1.0).value == 3.0);
  CHECK(linear_in_table(points, 2.0).value == 2.0);
  CHECK(linear_in_table(points, 2.0).slope == -1.0);
  CHECK_FALSE(linear_in_table(points, 4.0).clamped);
}

TEST_CASE("outside a table its end stands, and that is said") {
  const std::vector<TablePoint> points{{0.0, 1.0}, {1.0, 3.0}, {4.0, 0.0}};
  for (const double at : {-0.1, -1e9}) {
    CHECK(linear_in_table(points, at).value == 1.0);
    CHECK(linear_in_table(points, at).clamped);
    CHECK(MonotoneTable(points).at(at).value == 1.0);
    CHECK(MonotoneTable(points).at(at).clamped);
  }
  CHECK(linear_in_table(points, 4.1).value == 0.0);
  CHECK(linear_in_table(points, 4.1).slope == 0.0);
  CHECK(linear_in_table(points, 4.1).clamped);
}

TEST_CASE("both kinds of line meet every row exactly") {
  CHECK(rc::check("rows", [] {
    const std::vector<TablePoint> points = falling_table();
    const MonotoneTable smooth(points);
    for (const TablePoint& point : points) {
      RC_ASSERT(linear_in_table(points, point.at).value == point.value);
      RC_ASSERT(smooth.at(point.at).value == point.value);
      RC_ASSERT(!smooth.at(point.at).clamped);
    }
  }));
}

TEST_CASE("a falling table stays a falling line") {
  CHECK(rc::check("monotone", [] {
    const std::vector<TablePoint> points = falling_table();
    const MonotoneTable smooth(points);
    const double from = points.front().at, to = points.back().at;
    double last = points.front().value;
    for (int i = 0; i <= 400; ++i) {
      const TableValue now = smooth.at(from + (to - from) * i / 400.0);
      RC_ASSERT(now.value <= last + 1e-14 * std::abs(last));
      RC_ASSERT(now.slope <= 1e-13);
      last = now.value;
    }
  }));
}

TEST_CASE("the slope is the derivative, also across a row") {
  CHECK(rc::check("central difference", [] {
    const std::vector<TablePoint> points = falling_table();
    const MonotoneTable smooth(points);
    const double step = 1e-6;
    const double at = points.size() > 2 && *rc::gen::inRange(0, 2) == 0
                          ? points[1].at
                          : drawn(points.front().at + 1e-5, points.back().at - 1e-5);
    const double difference = (smooth.at(at + step).value - smooth.at(at - step).value) / (2.0 * step);
    // Chords reach 300 and pieces are 0.01 wide, so the curvature reaches 2e5: across a row it shifts by that times
    // step.
    RC_ASSERT(std::abs(smooth.at(at).slope - difference) <= 0.5 * step * 4e5);
  }));
}

TEST_CASE("a smooth line through a parabola is third order inside") {
  const auto worst = [](int pieces) {
    std::vector<TablePoint> points;
    for (int i = 0; i <= pieces; ++i) points.push_back({i / double(pieces), -std::exp(i / double(pieces))});
    const MonotoneTable smooth(points);
    double off = 0.0;
    for (double x = 0.3; x < 0.7; x += 0.001) off = std::max(off, std::abs(smooth.at(x).value + std::exp(x)));
    return off;
  };
  CHECK(worst(80) < worst(40) / 6.0);
}

TEST_CASE("what is no table is refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_FALSE(is_table({}));
  CHECK_FALSE(is_table({{0.0, 1.0}}));
  CHECK_FALSE(is_table({{0.0, 1.0}, {0.0, 2.0}}));
  CHECK_FALSE(is_table({{1.0, 1.0}, {0.0, 2.0}}));
  CHECK_FALSE(is_table({{0.0, 1.0}, {1.0, nan}}));
  CHECK_THROWS(linear_in_table({{0.0, 1.0}}, 0.0));
  CHECK_THROWS(linear_in_table({{0.0, 1.0}, {1.0, 2.0}}, nan));
  CHECK_THROWS(MonotoneTable({{1.0, 1.0}, {0.0, 2.0}}));
}
