#include "bands.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::routing {
namespace {

/// A side drawn as near to a wall as this lies on it.
constexpr double on_wall_m = 0.03;

bool on_wall(const Polygon& outline, Point a, Point b) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point c = outline[i], d = outline[i + 1 < outline.size() ? i + 1 : 0];
    const Point middle{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
    const double across = (b.x_m - a.x_m) * (d.y_m - c.y_m) - (b.y_m - a.y_m) * (d.x_m - c.x_m);
    const bool parallel = std::abs(across) < 0.01 * distance_m(a, b) * distance_m(c, d);
    if (parallel && distance_to_edge_m(middle, c, d) < on_wall_m) return true;
  }
  return false;
}

/// From the middle of a side straight through the polygon to its other side.
double depth_m(const Polygon& band, std::size_t side, Point middle, Point inward) {
  double least = HUGE_VAL;
  for (std::size_t i = 0; i < band.size(); ++i) {
    if (i == side) continue;
    const Point a = band[i], b = band[i + 1 < band.size() ? i + 1 : 0];
    const auto off = [&](Point p) { return (p.x_m - middle.x_m) * inward.y_m - (p.y_m - middle.y_m) * inward.x_m; };
    const auto ahead = [&](Point p) { return (p.x_m - middle.x_m) * inward.x_m + (p.y_m - middle.y_m) * inward.y_m; };
    if ((off(a) > 0.0) == (off(b) > 0.0)) continue;
    const double share = off(a) / (off(a) - off(b));
    const double away = ahead(a) + share * (ahead(b) - ahead(a));
    if (away > 0.0) least = std::min(least, away);
  }
  return least;
}

}  // namespace

std::vector<BandStrip> strips_of(const LayoutTask& task) {
  std::vector<BandStrip> strips;
  for (const EdgeBand& band : task.band) {
    const Polygon o = normalized(band.outline);
    for (std::size_t i = 0; i < o.size(); ++i) {
      const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
      if (!on_wall(task.outline, a, b)) continue;
      const double length = distance_m(a, b);
      const Point inward{(a.y_m - b.y_m) / length, (b.x_m - a.x_m) / length};
      const Point middle{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
      const double depth = depth_m(o, i, middle, inward);
      // A short end against a side wall is no band along that wall.
      if (depth <= length) strips.push_back({middle, inward, depth, band.spacing_m});
    }
  }
  return strips;
}

double spacing_here_m(const LayoutTask& task, const std::vector<BandStrip>& strips, Point p) {
  double least = task.spacing_m;
  for (const BandStrip& strip : strips) {
    const double in_m = (p.x_m - strip.at.x_m) * strip.inward.x_m + (p.y_m - strip.at.y_m) * strip.inward.y_m;
    // Cells end within half a cell of the limit, and tube at the limit has a neighbour in the band.
    if (in_m > -on_wall_m && in_m < strip.depth_m + strip.spacing_m) least = std::min(least, strip.spacing_m);
  }
  return least;
}

double least_spacing_m(const LayoutTask& task) {
  double least = task.spacing_m;
  for (const EdgeBand& band : task.band) least = std::min(least, band.spacing_m);
  return least;
}

double spacing_asked_m(const LayoutTask& task, Point p) {
  double least = task.spacing_m;
  for (const EdgeBand& band : task.band) {
    if (where_is(p, band.outline) != Where::outside) least = std::min(least, band.spacing_m);
  }
  return least;
}

}  // namespace slabwright::routing
