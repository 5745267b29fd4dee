// Two polygons, a path and a floor with a hole, from bytes: corners on a grid, near it, and anywhere.
#include <algorithm>
#include <cmath>
#include <cstring>

#include "fuzz/targets.hpp"
#include "slabwright/geometry_path.hpp"

namespace slabwright::fuzz {
namespace {

/// Takes numbers off the front; zeros where there is nothing left.
class Bytes {
 public:
  explicit Bytes(std::string_view bytes) : bytes_(bytes) {}
  std::uint8_t one() {
    if (bytes_.empty()) return 0;
    const auto first = static_cast<std::uint8_t>(bytes_.front());
    bytes_.remove_prefix(1);
    return first;
  }
  /// Mostly whole metres, so that corners meet and edges lie on each other; some between, some of any size up to three
  /// kilometres: a design has no more than one.
  double coordinate_m() {
    const std::uint8_t kind = one();
    if (kind < 160) return kind % 16;
    const double fine = one() * 256.0 + one();
    if (kind < 200) return fine / 4096.0;
    if (kind < 230) return kind % 16 + fine * 0x1p-60;
    return (fine - 32768.0) * std::pow(10.0, kind % 7 - 7);
  }
  Point point() {
    const double x = coordinate_m();
    return {x, coordinate_m()};
  }
  Polygon polygon(std::size_t most) {
    Polygon corners(one() % (most + 1));
    for (Point& corner : corners) corner = point();
    return corners;
  }

 private:
  std::string_view bytes_;
};

double largest_m(const Polygon& polygon) {
  double largest = 1.0;
  for (const Point& corner : polygon) largest = std::max({largest, std::fabs(corner.x_m), std::fabs(corner.y_m)});
  return largest;
}

/// Rounding of areas and lengths of numbers of this size.
double slack_of(const Polygon& polygon) { return 1e-9 * largest_m(polygon); }

/// A simple polygon, counter-clockwise, of some area; empty where the bytes give none.
Polygon simple(const Polygon& drawn) {
  Polygon plain = normalized(drawn);
  if (plain.size() < 3 || self_crossing(plain)) return {};
  return plain;
}

void check_drawn(const Polygon& drawn) {
  const double area = signed_area_m2(drawn), slack = slack_of(drawn) * largest_m(drawn);
  must(std::isfinite(area) && std::isfinite(perimeter_m(drawn)), "an area or a perimeter that is not finite");
  const Polygon backward(drawn.rbegin(), drawn.rend());
  must(std::fabs(area + signed_area_m2(backward)) <= slack, "the area depends on where one begins");
  const Polygon plain = normalized(drawn);
  // A polygon of no area but rounding has no way round: it may turn again, and no more than that.
  const Polygon twice = normalized(plain), turned(plain.rbegin(), plain.rend());
  must(twice == plain || (std::fabs(area) <= slack && twice == turned), "normalized twice is another polygon");
  if (plain.size() >= 3) {
    must(signed_area_m2(plain) >= -slack, "a normalized polygon turns clockwise");
    must(perimeter_m(plain) <= perimeter_m(drawn) + slack_of(drawn) * 100, "normalizing makes it longer");
  }
}

void check_simple(const Polygon& plain) {
  const double area = signed_area_m2(plain), round = perimeter_m(plain);
  const double slack = slack_of(plain) * largest_m(plain);
  must(area * 4.0 * 3.14159265358979 <= round * round * (1.0 + 1e-9) + slack, "more area than a circle's");
  Polygon turned = plain;
  std::rotate(turned.begin(), turned.begin() + 1, turned.end());
  must(!self_crossing(turned), "a simple polygon crosses itself when it begins at another corner");
  for (const Point& corner : plain) {
    must(where_is(corner, plain) == Where::boundary, "a corner that is not on the boundary");
    must(distance_to_boundary_m(corner, plain) == 0.0, "a corner away from the boundary");
  }
  must(inside(plain, plain, 0.0), "a polygon does not lie in itself");
}

void check_pair(const Polygon& a, const Polygon& b) {
  if (inside(a, b, 0.0)) {
    must(signed_area_m2(a) <= signed_area_m2(b) + slack_of(b) * largest_m(b), "more area inside than there is");
    for (const Point& corner : a) must(where_is(corner, b) != Where::outside, "inside, and a corner outside");
    for (const Point& corner : b)
      must(where_is(corner, a) != Where::inside || distance_to_boundary_m(corner, a) <= slack_of(b),
           "inside, and a corner of the outer one within");
  }
}

void check_floor(const Floor& floor, Point a, Point b) {
  const double area = area_m2(floor), slack = slack_of(floor.outline) * largest_m(floor.outline);
  must(std::isfinite(area) && area <= signed_area_m2(floor.outline) + slack, "a hole adds area");
  double last = -1e-12, sum = 0.0;
  for (const Share& part : clipped(a, b, floor)) {
    must(part.from_ratio >= last - 1e-12 && part.to_ratio >= part.from_ratio && part.to_ratio <= 1.0 + 1e-12,
         "parts of a line out of order");
    last = part.to_ratio;
    sum += part.to_ratio - part.from_ratio;
  }
  must(sum >= 0.0 && sum <= 1.0 + 1e-9, "more of a line than there is");
  (void)where_is(a, floor);
  must(std::isfinite(distance_to_boundary_m(b, floor)), "a distance that is not finite");
}

void check_path(const std::vector<Point>& corners, double radius_m) {
  double broken_m = 0.0;
  for (std::size_t i = 1; i < corners.size(); ++i) broken_m += distance_m(corners[i - 1], corners[i]);
  const Path path = rounded(corners, radius_m);
  const double length = length_m(path), slack = slack_of(corners) * 100.0;
  must(std::isfinite(length) && length >= 0.0, "a length that is not finite");
  must(length <= broken_m + slack, "rounding makes a path longer");
  must(std::fabs(length_m(reversed(path)) - length) <= slack, "another length the other way");
  if (path.empty()) return;
  const Point half = point_at(path, length / 2.0);
  must(std::isfinite(half.x_m) && std::isfinite(half.y_m), "a place that is not finite");
  double flat_m = 0.0;
  const std::vector<Point> flat = flattened(path, 1e-3 * largest_m(corners));
  for (std::size_t i = 1; i < flat.size(); ++i) flat_m += distance_m(flat[i - 1], flat[i]);
  must(flat_m <= length + slack, "flattening makes a path longer");
}

}  // namespace

bool polygons(std::string_view bytes) {
  Bytes take(bytes);
  const Polygon first = take.polygon(12), second = take.polygon(12);
  const double radius_m = std::fabs(take.coordinate_m());
  for (const Polygon* each : {&first, &second}) {
    check_drawn(*each);
    if (each->size() >= 2) check_path(*each, radius_m);
  }
  const Polygon a = simple(first), b = simple(second);
  if (a.empty() || b.empty()) return false;
  check_simple(a);
  check_simple(b);
  check_pair(a, b);
  check_pair(b, a);
  Floor floor{a, {}};
  if (inside(b, a, 0.0)) floor.hole.push_back(b);
  check_floor(floor, take.point(), take.point());
  return true;
}

}  // namespace slabwright::fuzz
