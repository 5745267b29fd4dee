// The plan that a design draws: walls by name, places, openings, what is in the way.
#include <algorithm>
#include <cctype>
#include <cmath>

#include "design/polygons.hpp"
#include "slabwright/design.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double flat_m = 1e-6;
/// A round area as this many straight sides about it.
constexpr int round_sides = 16;

Polygon form_of(const Slab& slab) {
  Polygon form;
  for (const Place& p : floor_shape(slab).outline) form.push_back({p.x_m, p.y_m});
  return form;
}

Point next_of(const Polygon& form, std::size_t i) { return form[i + 1 < form.size() ? i + 1 : 0]; }

/// The side of the form that lies farthest that way, along an axis; its box's side where none does.
void add_outermost(const Polygon& form, std::vector<PlanWall>& walls) {
  Point least = form[0], most = form[0];
  for (const Point& p : form) {
    least = {std::min(least.x_m, p.x_m), std::min(least.y_m, p.y_m)};
    most = {std::max(most.x_m, p.x_m), std::max(most.y_m, p.y_m)};
  }
  walls.push_back({"left wall", {least.x_m, most.y_m}, least});
  walls.push_back({"right wall", {most.x_m, least.y_m}, most});
  walls.push_back({"bottom wall", least, {most.x_m, least.y_m}});
  walls.push_back({"top wall", most, {least.x_m, most.y_m}});
}

struct Compass {
  std::string_view said, name;
};
constexpr Compass compass[] = {
    {"west", "left wall"}, {"east", "right wall"}, {"south", "bottom wall"}, {"north", "top wall"}};

/// Small letters, without "the" before and "wall" behind.
std::string bare(std::string_view text) {
  std::string word;
  for (const char c : text) word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  if (word.compare(0, 4, "the ") == 0) word.erase(0, 4);
  if (word.size() > 5 && word.compare(word.size() - 5, 5, " wall") == 0) word.erase(word.size() - 5);
  return word;
}

Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }

/// The edge of the form nearest to a point.
std::size_t nearest_edge(const Polygon& form, Point point) {
  std::size_t best = 0;
  double least_m = HUGE_VAL;
  for (std::size_t i = 0; i < form.size(); ++i) {
    const double away_m = distance_to_edge_m(point, form[i], next_of(form, i));
    if (away_m < least_m) least_m = away_m, best = i;
  }
  return best;
}

/// Walls without the door wall, which openings are placed by.
std::vector<PlanWall> walls_without_doors(const Design& design, const Polygon& form) {
  std::vector<PlanWall> walls;
  for (const WallEntry& wall : design.wall) {
    Point from{wall.from.x_m, wall.from.y_m}, to{wall.to.x_m, wall.to.y_m};
    if (distance_m(from, to) < flat_m) continue;
    // The floor lies to the left of the nearest edge of the form.
    const std::size_t edge = nearest_edge(form, {0.5 * (from.x_m + to.x_m), 0.5 * (from.y_m + to.y_m)});
    const Point along = minus(next_of(form, edge), form[edge]), own = minus(to, from);
    if (along.x_m * own.x_m + along.y_m * own.y_m < 0.0) std::swap(from, to);
    walls.push_back({wall.name, from, to});
  }
  add_outermost(form, walls);
  return walls;
}

/// The opening on its edge, no farther than the edge reaches.
PlanOpening on_edge(std::size_t row, double width_m, Point middle, Point from, Point to) {
  const Point along = minus(to, from);
  const double length = distance_m(from, to);
  const Point ahead{along.x_m / length, along.y_m / length};
  const double at = (middle.x_m - from.x_m) * ahead.x_m + (middle.y_m - from.y_m) * ahead.y_m;
  const auto place = [&](double m) {
    const double within = std::clamp(m, 0.0, length);
    return Point{from.x_m + within * ahead.x_m, from.y_m + within * ahead.y_m};
  };
  return {row, place(at - 0.5 * width_m), place(at + 0.5 * width_m), {-ahead.y_m, ahead.x_m}};
}

}  // namespace

std::vector<PlanOpening> openings_on_plan(const Design& design) {
  const Polygon form = form_of(design.slab);
  std::vector<PlanOpening> placed;
  if (form.empty()) return placed;
  const std::vector<PlanWall> walls = walls_without_doors(design, form);
  for (std::size_t i = 0; i < design.opening.size(); ++i) {
    const Opening& opening = design.opening[i];
    const auto middle = opening.place ? point_on_plan(walls, *opening.place) : std::nullopt;
    if (!middle) continue;
    const std::size_t edge = nearest_edge(form, *middle);
    placed.push_back(on_edge(i, opening.size.width_m, *middle, form[edge], next_of(form, edge)));
  }
  return placed;
}

std::vector<PlanWall> plan_walls(const Design& design) {
  const Polygon form = form_of(design.slab);
  if (form.empty()) return {};
  std::vector<PlanWall> walls = walls_without_doors(design, form);
  for (const PlanOpening& opening : openings_on_plan(design)) {
    if (design.opening[opening.opening].kind != OpeningKind::big_door) continue;
    walls.push_back({"door wall", opening.from, opening.to});
    break;
  }
  return walls;
}

const PlanWall* find_wall(const std::vector<PlanWall>& walls, std::string_view text) {
  std::string word = bare(text);
  const auto named = [&](std::string_view name) {
    const auto found =
        std::find_if(walls.begin(), walls.end(), [&](const PlanWall& w) { return bare(w.name) == bare(name); });
    return found == walls.end() ? nullptr : &*found;
  };
  if (const PlanWall* wall = named(word)) return wall;
  for (const Compass& c : compass) {
    if (word == c.said) return named(c.name);
  }
  return nullptr;
}

double from_wall_m(const PlanWall& wall, Point place) {
  const Point along = minus(wall.to, wall.from), off = minus(place, wall.from);
  return (along.x_m * off.y_m - along.y_m * off.x_m) / distance_m(wall.from, wall.to);
}

std::optional<std::pair<PlanWall, PlanWall>> walls_told_from(const Design& design) {
  constexpr double least_sine = 0.05;
  const std::vector<PlanWall> walls = plan_walls(design);
  const auto across = [](const PlanWall& a, const PlanWall& b) {
    const Point p = minus(a.to, a.from), q = minus(b.to, b.from);
    return std::abs(p.x_m * q.y_m - p.y_m * q.x_m) >= least_sine * distance_m({}, p) * distance_m({}, q);
  };
  for (std::size_t i = 0; i < design.wall.size() && i < walls.size(); ++i) {
    for (std::size_t k = i + 1; k < design.wall.size() && k < walls.size(); ++k) {
      if (across(walls[i], walls[k])) return std::pair{walls[i], walls[k]};
    }
  }
  const PlanWall *left = find_wall(walls, "left wall"), *bottom = find_wall(walls, "bottom wall");
  if (!left || !bottom) return std::nullopt;
  return std::pair{*left, *bottom};
}

std::optional<Point> point_on_plan(const std::vector<PlanWall>& walls, const PlanPlace& place) {
  if (place.first_wall.empty()) return Point{place.at.x_m, place.at.y_m};
  const PlanWall *first = find_wall(walls, place.first_wall), *second = find_wall(walls, place.second_wall);
  if (!first || !second) return std::nullopt;
  // n . p = n . from + distance for both, n to the left of the wall.
  const auto inward = [](const PlanWall& w) {
    const double length = distance_m(w.from, w.to);
    return Point{-(w.to.y_m - w.from.y_m) / length, (w.to.x_m - w.from.x_m) / length};
  };
  const Point a = inward(*first), b = inward(*second);
  const double across = a.x_m * b.y_m - a.y_m * b.x_m;
  if (std::abs(across) < 0.05) return std::nullopt;
  const double p = a.x_m * first->from.x_m + a.y_m * first->from.y_m + place.first_m;
  const double q = b.x_m * second->from.x_m + b.y_m * second->from.y_m + place.second_m;
  return Point{(p * b.y_m - q * a.y_m) / across, (a.x_m * q - b.x_m * p) / across};
}

Polygon outline_of(const NoTubeEntry& area, const std::vector<PlanWall>& walls) {
  if (!area.outline.empty()) return polygon_of(area.outline);
  const auto middle = area.place ? point_on_plan(walls, *area.place) : std::nullopt;
  if (!middle) return {};
  if (area.size) {
    const double x = 0.5 * area.size->width_m, y = 0.5 * area.size->depth_m;
    return {{middle->x_m - x, middle->y_m - y},
            {middle->x_m + x, middle->y_m - y},
            {middle->x_m + x, middle->y_m + y},
            {middle->x_m - x, middle->y_m + y}};
  }
  if (!area.diameter_m) return {};
  Polygon round;
  const double radius_m = 0.5 * *area.diameter_m / std::cos(pi / round_sides);
  for (int k = 0; k < round_sides; ++k) {
    const double turn = (k + 0.5) * 2.0 * pi / round_sides;
    round.push_back({middle->x_m + radius_m * std::cos(turn), middle->y_m + radius_m * std::sin(turn)});
  }
  return round;
}

std::vector<Polygon> solid_parts(const Partition& partition) {
  const Point from{partition.from.x_m, partition.from.y_m}, to{partition.to.x_m, partition.to.y_m};
  const double length = distance_m(from, to);
  if (length < flat_m) return {};
  const Point ahead{(to.x_m - from.x_m) / length, (to.y_m - from.y_m) / length};
  const double half = 0.5 * partition.thickness_m;
  std::vector<Gap> gaps = partition.openings;
  std::sort(gaps.begin(), gaps.end(), [](const Gap& a, const Gap& b) { return a.at_m < b.at_m; });
  gaps.push_back({1.0, length});
  std::vector<Polygon> parts;
  double begin = 0.0;
  for (const Gap& gap : gaps) {
    const double end = std::min(gap.at_m, length);
    const auto corner = [&](double along, double side) {
      return Point{from.x_m + along * ahead.x_m - side * ahead.y_m, from.y_m + along * ahead.y_m + side * ahead.x_m};
    };
    if (end > begin + flat_m) {
      parts.push_back({corner(begin, -half), corner(end, -half), corner(end, half), corner(begin, half)});
    }
    begin = std::max(begin, gap.at_m + gap.width_m);
  }
  return parts;
}

}  // namespace slabwright
