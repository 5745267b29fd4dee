// Lines of equal temperature in a section, and their numbers.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "section_sheet.hpp"

namespace slabwright::drawn {
namespace {

constexpr double isotherm_pen_m = 0.25 * mm, freezing_pen_m = 0.9 * mm;
constexpr double water_freezes_degC = 0.0;
/// Levels nearer than this share of their step to the freezing point give way to it.
constexpr double too_near_share = 0.35;
/// Numbers stand on their line this far from the window's rim; a line whose seen part is shorter has none.
constexpr double off_rim_m = 3.0 * mm, least_seen_m = 8.0 * mm;
/// Another line this far away does not matter to a number.
constexpr double clear_m = 4.0 * mm;
constexpr double along_step_m = 2.0 * mm;
constexpr double freezing_reach_m = 70.0 * mm;

bool is_freezing(double level_degC) { return std::abs(level_degC - water_freezes_degC) < 1e-9; }

std::string level_words(double degC, System system) {
  const std::string words = system == System::us ? fmt::format("{:.0f} F", 1.8 * degC + 32.0)
                                                 : fmt::format("{:g} C", std::round(10.0 * degC) / 10.0);
  return is_freezing(degC) ? words + ", water freezes" : words;
}

struct Isotherm {
  double level_degC = 0.0;
  std::vector<Polygon> ring;             ///< on paper
  std::vector<std::vector<Point>> seen;  ///< of each ring, places a sample apart that lie on material
};

bool on_any(const std::vector<Polygon>& material, Point at) {
  return std::any_of(material.begin(), material.end(),
                     [&](const Polygon& ring) { return where_is(at, ring) != Where::outside; });
}

std::vector<Point> sampled(const Polygon& ring, const Box& window, const std::vector<Polygon>& material) {
  std::vector<Point> points;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Point a = ring[k], b = ring[(k + 1) % ring.size()];
    const double length = distance_m(a, b);
    const int steps = std::max(1, static_cast<int>(std::ceil(length / along_step_m)));
    for (int n = 0; n < steps; ++n) {
      const double share = static_cast<double>(n) / steps;
      const Point at{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
      if (within({at, at}, window) && on_any(material, at)) points.push_back(at);
    }
  }
  return points;
}

/// From where it is to the nearest line of another level, no more than matters.
double clearance_m(Point at, const Isotherm& own, const std::vector<Isotherm>& all) {
  double least = clear_m;
  for (const Isotherm& other : all) {
    if (&other == &own) continue;
    for (const auto& points : other.seen) {
      for (const Point& p : points) least = std::min(least, distance_m(at, p));
    }
  }
  return least;
}

/// Where the line is clear of others first; of places that are alike the one nearest the middle of what is seen.
std::vector<LabelSpot> number_spots_on(const std::vector<Point>& seen, const Isotherm& own,
                                       const std::vector<Isotherm>& all, const Box& inner) {
  struct Spot {
    Point at;
    long long clear = 0;  ///< in quarters of a millimetre, so that every machine sorts alike
    std::size_t from_middle = 0;
  };
  std::vector<Spot> spots;
  for (std::size_t k = 0; k < seen.size(); ++k) {
    if (!within({seen[k], seen[k]}, inner)) continue;
    const std::size_t middle = seen.size() / 2;
    spots.push_back(
        {seen[k], std::llround(4000.0 * clearance_m(seen[k], own, all)), k > middle ? k - middle : middle - k});
  }
  std::stable_sort(spots.begin(), spots.end(), [](const Spot& a, const Spot& b) {
    return a.clear != b.clear ? a.clear > b.clear : a.from_middle < b.from_middle;
  });
  std::vector<LabelSpot> found;
  for (const Spot& spot : spots) found.push_back({spot.at, false});
  return found;
}

std::vector<Isotherm> isotherms(const DrawnSection& section, const SectionFrame& frame,
                                const std::vector<double>& level_degC) {
  const std::vector<Polygon> material = material_rings(section, frame);
  std::vector<Isotherm> all;
  for (const double level : level_degC) {
    Isotherm one{level, {}, {}};
    for (const Polygon& ring : warmer_than(section.warmth, level)) {
      one.ring.push_back(frame.onto(ring));
      one.seen.push_back(sampled(one.ring.back(), frame.ground, material));
    }
    all.push_back(std::move(one));
  }
  return all;
}

}  // namespace

std::vector<double> section_levels_degC(const DrawnSection& section) {
  std::vector<double> levels = contour_levels_degC(section.warmth, section.units);
  double low = 1e9, high = -1e9;
  for (std::size_t k = 0; k < section.warmth.degC.size(); ++k) {
    if (!section.warmth.on_floor[k]) continue;
    low = std::min(low, section.warmth.degC[k]);
    high = std::max(high, section.warmth.degC[k]);
  }
  if (low > water_freezes_degC || high < water_freezes_degC) return levels;
  const double step = levels.size() > 1 ? levels[1] - levels[0] : 0.0;
  const auto gives_way = [&](double level) { return std::abs(level - water_freezes_degC) < too_near_share * step; };
  levels.erase(std::remove_if(levels.begin(), levels.end(), gives_way), levels.end());
  levels.insert(std::lower_bound(levels.begin(), levels.end(), water_freezes_degC), water_freezes_degC);
  return levels;
}

Part isotherm_part(const DrawnSection& section, const SectionFrame& frame, const std::vector<double>& level_degC) {
  Part part;
  const std::vector<Isotherm> all = isotherms(section, frame, level_degC);
  const Box inner = grown(frame.ground, -off_rim_m);
  for (const Isotherm& one : all) {
    const bool freezing = is_freezing(one.level_degC);
    const Colour hue = freezing ? freezing_hue : isotherm_hue;
    part.shape.emplace_back(
        Area{one.ring, std::nullopt, {freezing ? freezing_pen_m : isotherm_pen_m, hue, Dash::solid}});
    for (const auto& seen : one.seen) {
      for (const Point& at : seen) part.obstacle.push_back({at, at, 0.8 * mm, Hardness::line});
      if (static_cast<double>(seen.size()) * along_step_m < least_seen_m) continue;
      const std::vector<LabelSpot> spots = number_spots_on(seen, one, all, inner);
      if (spots.empty()) continue;
      Label label = section_label({level_words(one.level_degC, section.units), scale_mark}, spots[0].middle, 0.0);
      label.lettering.colour = hue;
      label.wish.spot = spots;
      if (freezing) {
        // Many words for a line: they rather stand beside it.
        label.lettering.bold = true;
        label.wish.width_m = text_size(label.lettering.text, section_text_m, true).width_m;
        label.wish.leader_m = freezing_reach_m;
      } else {
        label.wish.on_lines = OnLines::freely;
        label.may_lack = true;
      }
      part.label.push_back(std::move(label));
    }
  }
  return part;
}

}  // namespace slabwright::drawn
