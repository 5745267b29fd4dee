// Broken lines with rounded corners.
#include <algorithm>
#include <cmath>

#include "geometry/plane.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/geometry_path.hpp"

namespace slabwright {
namespace {

Point moved(Point from, Point along, double by) { return {from.x_m + by * along.x_m, from.y_m + by * along.y_m}; }

/// Shorter straight pieces are left out: nothing but rounding puts them between two bends.
constexpr double least_piece_m = 1e-6;

/// A broken line with the radius it asks for at each corner.
struct Corners {
  std::vector<Point> at;
  std::vector<double> radius_m;
};

/// Without repeats and without corners on a straight line.
Corners kept(std::span<const Point> corners, std::span<const double> radius_m) {
  Corners kept;
  std::vector<Point>& at = kept.at;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point corner = corners[i];
    if (!at.empty() && at.back() == corner) continue;
    while (at.size() >= 2 && side_of(at[at.size() - 2], at.back(), corner) == Side::on &&
           dot(minus(at.back(), at[at.size() - 2]), minus(corner, at.back())) > 0.0) {
      at.pop_back();
      kept.radius_m.pop_back();
    }
    at.push_back(corner);
    kept.radius_m.push_back(radius_m[i]);
  }
  return kept;
}

/// Tangent of half the angle by which the line turns at b.
double half_turn(Point a, Point b, Point c) {
  const Point in = minus(b, a), out = minus(c, b);
  const double across = std::abs(in.x_m * out.y_m - in.y_m * out.x_m);
  const double scale = std::sqrt(dot(in, in) * dot(out, out)), ahead = dot(in, out);
  // Two forms of one tangent: near a turn right back, which has none, the first is what rounding leaves of nothing.
  if (scale + ahead > 1e-6 * scale) return across / (scale + ahead);
  return (scale - ahead) / std::max(across, 1e-300);
}

/// How much of its two lines each corner takes. All ask for what their radius needs; where two neighbours ask together
/// for more than their line has, both give in by halves.
std::vector<double> shares_of(const Corners& corners) {
  const std::vector<Point>& at = corners.at;
  std::vector<double> take(at.size(), 0.0);
  for (std::size_t i = 1; i + 1 < at.size(); ++i)
    take[i] = corners.radius_m[i] * half_turn(at[i - 1], at[i], at[i + 1]);
  const std::vector<double> asked = take;
  for (std::size_t i = 0; i + 1 < at.size(); ++i) {
    const double length = distance_m(at[i], at[i + 1]);
    if (asked[i] + asked[i + 1] <= length) continue;
    const double less = std::min(asked[i], asked[i + 1]);
    const double half = less < 0.5 * length ? less : 0.5 * length;
    for (const std::size_t k : {i, i + 1}) {
      const double may = asked[k] <= less && half == less ? half : length - half;
      take[k] = std::min(take[k], may);
    }
  }
  return take;
}

}  // namespace

Path rounded(std::span<const Point> corners, double radius_m) {
  return rounded(corners, std::vector<double>(corners.size(), radius_m));
}

Path rounded(std::span<const Point> corners, std::span<const double> radius_m) {
  expects(corners.size() >= 2 && radius_m.size() == corners.size(), "rounded: fewer than two corners");
  const Corners line_of_corners = kept(corners, radius_m);
  const std::vector<Point>& at = line_of_corners.at;
  const std::vector<double> take = shares_of(line_of_corners);
  Path path;
  Point here = at.front();
  const auto straight_to = [&](Point to) {
    if (distance_m(here, to) > least_piece_m) path.push_back(line(here, to));
    if (!path.empty()) path.back().to = to;
    here = to;
  };
  for (std::size_t i = 1; i + 1 < at.size(); ++i) {
    const double in_m = distance_m(at[i - 1], at[i]), out_m = distance_m(at[i], at[i + 1]);
    const Point from = moved(at[i], minus(at[i - 1], at[i]), take[i] / in_m);
    const Point to = moved(at[i], minus(at[i + 1], at[i]), take[i] / out_m);
    straight_to(from);
    const double half = half_turn(at[i - 1], at[i], at[i + 1]);
    const double radius = take[i] / half;
    const Side turn = side_of(at[i - 1], at[i], at[i + 1]);
    if (take[i] <= least_piece_m || turn == Side::on) continue;
    const Point along = minus(at[i], at[i - 1]);
    const double sign = turn == Side::left ? 1.0 : -1.0;
    const Point centre{here.x_m - sign * radius * along.y_m / in_m, here.y_m + sign * radius * along.x_m / in_m};
    path.push_back({here, to, radius, centre, turn});
    here = to;
  }
  straight_to(at.back());
  return path;
}

}  // namespace slabwright
