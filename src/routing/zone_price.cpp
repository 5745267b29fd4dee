#include "zone_price.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "lay_zone.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// Tube besides the cells' own: leaders in the apron, and what balance costs.
constexpr double leaders_and_balance = 1.04;
/// Prices, in half per cents of unequal length.
constexpr double uneven_weight = 50.0, over_limit_weight = 200.0, lost_weight = 60.0;
constexpr double way_weight = 25.0, length_weight = 0.5, bend_weight = 0.6, area_weight = 0.7;
constexpr double line_weight = 6.0, crowded_weight = 20.0;
/// Cells fill a floor this unevenly anyway.
constexpr double usual_loss = 0.02;
/// Room for an apron: so many spacings about a manifold, and so many for each loop.
constexpr double apron_room = 3.0, apron_room_per_loop = 0.5;
/// What turning and rounding may leave.
constexpr double hair_m = 1e-5;
/// A partition along so much of a border says how far tube keeps off all of it.
constexpr double much_of_border = 0.25;
/// A border lies on a joint where they are no farther apart, in spacings.
constexpr double same_line = 0.05;
/// A no-tube area is a partition if it is no thicker and no shorter, in spacings.
constexpr double partition_thickness = 1.0, partition_length = 3.0;

Point middle_of(const Cells& cells, int cell) {
  const Point a = cells.quarter(cell, 0), b = cells.quarter(cell, 2);
  return {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
}

std::vector<double> tube_by_cell(const Cells& cells) {
  std::vector<double> tube_m(index(cells.size()), 0.0);
  for (int cell = 0; cell < cells.size(); ++cell) {
    if (cells.is(cell) == Kind::free) tube_m[index(cell)] = cells.tube_m(cell);
  }
  return tube_m;
}

std::vector<double> heat_by_cell(const Cells& cells, const LayoutTask& task) {
  std::vector<double> heat = tube_by_cell(cells);
  for (int cell = 0; cell < cells.size(); ++cell) {
    for (const LossArea& area : task.loss) {
      if (where_is(middle_of(cells, cell), area.outline) != Where::outside) heat[index(cell)] *= area.loss_ratio;
    }
  }
  return heat;
}

double sum_of(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

/// How much of a level or upright line lies on another.
double shared_m(Point a, Point b, Point c, Point d, double slack_m) {
  const bool upright = std::abs(a.x_m - b.x_m) < std::abs(a.y_m - b.y_m);
  const auto across = [&](Point p) { return upright ? p.x_m : p.y_m; };
  const auto along = [&](Point p) { return upright ? p.y_m : p.x_m; };
  if (std::abs(across(c) - across(a)) > slack_m || std::abs(across(d) - across(a)) > slack_m) return 0.0;
  const double from = std::max(std::min(along(a), along(b)), std::min(along(c), along(d)));
  const double to = std::min(std::max(along(a), along(b)), std::max(along(c), along(d)));
  return std::max(0.0, to - from);
}

}  // namespace

Point seen_along(Point place, Point origin, Point north) {
  const double scale = distance_m({}, north);
  const Point d{(place.x_m - origin.x_m) / scale, (place.y_m - origin.y_m) / scale};
  return {d.x_m * north.y_m - d.y_m * north.x_m, d.x_m * north.x_m + d.y_m * north.y_m};
}

LayoutTask facing(LayoutTask task, Point north) {
  task.manifold.front().facing = north;
  return task;
}

Point main_direction(const Polygon& outline) {
  constexpr double parallel = 0.001;
  Point best{0.0, 1.0};
  double most_m = 0.0;
  const std::size_t n = outline.size();
  const auto edge = [&](std::size_t i) {
    const Point a = outline[i], b = outline[i + 1 < n ? i + 1 : 0];
    return Point{b.x_m - a.x_m, b.y_m - a.y_m};
  };
  for (std::size_t i = 0; i < n; ++i) {
    const Point e = edge(i);
    double sum_m = 0.0;
    for (std::size_t k = 0; k < n; ++k) {
      const Point o = edge(k);
      const double length_m = distance_m({}, o), by = distance_m({}, e) * length_m * parallel;
      const double dot = std::abs(e.x_m * o.x_m + e.y_m * o.y_m), cross = std::abs(e.x_m * o.y_m - e.y_m * o.x_m);
      if (std::min(dot, cross) <= by) sum_m += length_m;
    }
    if (sum_m <= most_m * (1.0 + 1e-9)) continue;
    most_m = sum_m;
    best = e;
  }
  return best;
}

ZonePrices::ZonePrices(const LayoutTask& task, Point north, const ZoneNotes& notes)
    : notes_(notes),
      seen_(seen_from_manifold(facing(task, north))),
      cells_(cells_of(seen_, Fit{})),
      tube_(cells_, tube_by_cell(cells_)),
      heat_(cells_, heat_by_cell(cells_, seen_)) {
  const std::vector<double> heat = heat_by_cell(cells_, seen_);
  tube_m_ = sum_of(tube_by_cell(cells_));
  const Point at = task.manifold.front().place;
  for (const PortRow& row : task.manifold) {
    const Point place = seen_along(row.place, at, north), facing = seen_along(row.facing, {}, north);
    const double by = 0.5 * task.spacing_m / distance_m({}, facing);
    place_.push_back(place);
    probe_.push_back({place.x_m + by * facing.x_m, place.y_m + by * facing.y_m});
    std::vector<double> way = way_to_cells_m(cells_, probe_.back());
    // What cannot be reached is as good as far away.
    const double far_m = 2.0 * perimeter_m(seen_.outline);
    for (std::size_t c = 0; c < way.size(); ++c) way[c] = heat[c] * (way[c] < 0.0 ? far_m : way[c]);
    way_.push_back(std::move(way));
  }
}

bool ZonePrices::is_partition(const NoTubeArea& area, bool upright) const {
  const Box box = box_of(area.outline);
  const double width_m = box.most.x_m - box.least.x_m, depth_m = box.most.y_m - box.least.y_m;
  const double thick_m = upright ? width_m : depth_m, long_m = upright ? depth_m : width_m;
  return thick_m <= partition_thickness * seen_.spacing_m && long_m >= partition_length * seen_.spacing_m;
}

std::vector<double> ZonePrices::marks(bool upright) const {
  const auto across = [&](Point p) { return upright ? p.x_m : p.y_m; };
  std::vector<double> lines;
  for (const JointLine& joint : seen_.joint) {
    if (std::abs(across(joint.from) - across(joint.to)) <= same_line * seen_.spacing_m) {
      lines.push_back(across(joint.from));
    }
  }
  for (const NoTubeArea& area : seen_.no_tube) {
    const Box box = box_of(area.outline);
    if (is_partition(area, upright)) lines.push_back(0.5 * (across(box.least) + across(box.most)));
  }
  for (std::size_t a = 0; a < place_.size(); ++a) {
    for (std::size_t b = a + 1; b < place_.size(); ++b) lines.push_back(0.5 * (across(place_[a]) + across(place_[b])));
  }
  return lines;
}

ZonePiece ZonePrices::whole() const {
  ZonePiece piece{zone_of(seen_), {}, 0};
  for (std::size_t k = 0; k < place_.size(); ++k) piece.manifold.push_back(k);
  const int least = static_cast<int>(std::ceil(leaders_and_balance * tube_m_ / seen_.longest_loop_m));
  piece.loops = std::max(least, least_loops(piece.manifold));
  const auto& rows = seen_.manifold;
  if (std::all_of(rows.begin(), rows.end(), [](const PortRow& row) { return row.loops_wanted_number > 0; })) {
    piece.loops = most_loops(piece.manifold);
  }
  return piece;
}

int ZonePrices::most_loops(const std::vector<std::size_t>& manifold) const {
  int sum = 0;
  for (const std::size_t k : manifold) {
    const PortRow& row = seen_.manifold[k];
    sum += row.loops_wanted_number > 0 ? row.loops_wanted_number : row.loops_number;
  }
  return sum;
}

int ZonePrices::least_loops(const std::vector<std::size_t>& manifold) const {
  int sum = 0;
  for (const std::size_t k : manifold) sum += std::max(1, seen_.manifold[k].loops_wanted_number);
  return sum;
}

bool ZonePrices::stands_on_floor(std::size_t manifold) const {
  return where_is(probe_[manifold], seen_.outline) != Where::outside;
}

/// As loops come out that lie on so much floor.
double ZonePrices::heat(const ZonePiece& side, double of_floor) const {
  double ratio = 0.0;
  for (const std::size_t k : side.manifold) ratio += notes_.tube_ratio[k];
  return of_floor * ratio / static_cast<double>(side.manifold.size());
}

std::optional<ZoneSplit> ZonePrices::split(const ZonePiece& piece, const std::pair<Zone, Zone>& sides) const {
  ZoneSplit made{{sides.first, {}, 0}, {sides.second, {}, 0}, 0.0};
  for (const std::size_t k : piece.manifold) {
    const bool first = where_is(probe_[k], sides.first.corner) == Where::inside;
    if (!first && where_is(probe_[k], sides.second.corner) != Where::inside) return std::nullopt;
    (first ? made.first : made.second).manifold.push_back(k);
  }
  if (made.first.manifold.empty() || made.second.manifold.empty()) return std::nullopt;
  const int least = std::max(least_loops(made.first.manifold), piece.loops - most_loops(made.second.manifold));
  const int most = std::min(most_loops(made.first.manifold), piece.loops - least_loops(made.second.manifold));
  if (least > most) return std::nullopt;
  const double first = heat(made.first, heat(sides.first)), second = heat(made.second, heat(sides.second));
  made.share = first / (first + second);
  made.first.loops = std::clamp(static_cast<int>(std::floor(made.share * piece.loops + 0.5)), least, most);
  made.second.loops = piece.loops - made.first.loops;
  return made;
}

double ZonePrices::uneven_price(const std::array<double, 2>& floor, const std::array<double, 2>& tube_m,
                                const ZoneSplit& split) const {
  const std::array<double, 2> heat{this->heat(split.first, floor[0]), this->heat(split.second, floor[1])};
  const int loops[] = {split.first.loops, split.second.loops};
  double price =
      uneven_weight * std::abs(heat[0] / loops[0] - heat[1] / loops[1]) * (loops[0] + loops[1]) / (heat[0] + heat[1]);
  for (std::size_t k = 0; k < 2; ++k) {
    const double over = leaders_and_balance * tube_m[k] / loops[k] / seen_.longest_loop_m - 1.0;
    price += over_limit_weight * std::max(0.0, over);
  }
  return price;
}

/// 0 where every manifold has room for its apron; 1 for one that stands on the border.
double ZonePrices::crowding(const ZonePiece& side, const Chord& chord) const {
  double crowded = 0.0;
  const std::vector<Point> corner = chord.corners();
  const double loops = static_cast<double>(side.loops) / static_cast<double>(side.manifold.size());
  for (const std::size_t k : side.manifold) {
    const double room_m = notes_.room_ratio[k] * (apron_room + apron_room_per_loop * loops) * seen_.spacing_m;
    double away_m = HUGE_VAL;
    for (std::size_t i = 0; i + 1 < corner.size(); ++i) {
      away_m = std::min(away_m, distance_to_edge_m(place_[k], corner[i], corner[i + 1]));
    }
    crowded += std::max(0.0, 1.0 - away_m / room_m);
  }
  return crowded;
}

/// How much of a level or upright line lies in a partition, along it.
double ZonePrices::in_partition_m(Point a, Point b, const NoTubeArea& area) const {
  const bool upright = a.x_m == b.x_m;
  if (!is_partition(area, upright)) return 0.0;
  const Box box = box_of(area.outline);
  const double half_m = 0.5 * (upright ? box.most.x_m - box.least.x_m : box.most.y_m - box.least.y_m);
  const Point middle{0.5 * (box.least.x_m + box.most.x_m), 0.5 * (box.least.y_m + box.most.y_m)};
  const Point from = upright ? Point{middle.x_m, box.least.y_m} : Point{box.least.x_m, middle.y_m};
  const Point to = upright ? Point{middle.x_m, box.most.y_m} : Point{box.most.x_m, middle.y_m};
  return shared_m(a, b, from, to, half_m);
}

double ZonePrices::on_lines_ratio(const Chord& chord) const {
  double on_m = 0.0, length_m = 0.0;
  const std::vector<Point> corner = chord.corners();
  for (std::size_t i = 0; i + 1 < corner.size(); ++i) {
    const Point a = corner[i], b = corner[i + 1];
    length_m += distance_m(a, b);
    for (const JointLine& joint : seen_.joint) {
      on_m += shared_m(a, b, joint.from, joint.to, same_line * seen_.spacing_m);
    }
    for (const NoTubeArea& area : seen_.no_tube) on_m += in_partition_m(a, b, area);
  }
  return std::min(1.0, on_m / length_m);
}

std::vector<double> ZonePrices::border_clearance_m(const Chord& chord) const {
  std::vector<double> clearance_m;
  const std::vector<Point> corner = chord.corners();
  for (std::size_t i = 0; i + 1 < corner.size(); ++i) {
    const Point a = corner[i], b = corner[i + 1];
    double least_m = 0.5 * seen_.spacing_m;
    for (const NoTubeArea& area : seen_.no_tube) {
      if (in_partition_m(a, b, area) < much_of_border * distance_m(a, b)) continue;
      for (const Point& p : area.outline) {
        const double off_m = a.x_m == b.x_m ? std::abs(p.x_m - a.x_m) : std::abs(p.y_m - a.y_m);
        least_m = std::max(least_m, off_m + clearance_with_bends_m(seen_, area.clearance_m, true) + hair_m);
      }
    }
    clearance_m.push_back(least_m);
  }
  return clearance_m;
}

/// No-tube areas that a chord cuts, but for partitions along it.
int ZonePrices::areas_cut(const Chord& chord) const {
  int count = 0;
  const std::vector<Point> corner = chord.corners();
  for (const NoTubeArea& area : seen_.no_tube) {
    bool met = false;
    for (std::size_t i = 0; i + 1 < corner.size(); ++i) {
      if (is_partition(area, corner[i].x_m == corner[i + 1].x_m)) continue;
      for (std::size_t k = 0; k < area.outline.size(); ++k) {
        const Point a = area.outline[k], b = area.outline[k + 1 < area.outline.size() ? k + 1 : 0];
        met = met || distance_of_edges_m(corner[i], corner[i + 1], a, b) < area.clearance_m;
      }
    }
    count += met ? 1 : 0;
  }
  return count;
}

double ZonePrices::way_m(const ZonePiece& side) const {
  auto found = nearest_way_.find(side.manifold);
  if (found == nearest_way_.end()) {
    std::vector<double> nearest = way_[side.manifold.front()];
    for (const std::size_t k : side.manifold) {
      for (std::size_t c = 0; c < nearest.size(); ++c) nearest[c] = std::min(nearest[c], way_[k][c]);
    }
    found = nearest_way_.emplace(side.manifold, FloorField(cells_, nearest)).first;
  }
  return found->second.within(side.zone.corner);
}

double ZonePrices::uneven_price(const ZoneSplit& split) const {
  return uneven_price({heat(split.first.zone), heat(split.second.zone)},
                      {tube_.within(split.first.zone.corner), tube_.within(split.second.zone.corner)}, split);
}

double ZonePrices::price(const ZonePiece& piece, const ZoneSplit& split, const Chord& chord) const {
  const std::array<double, 2> heat_m{heat(split.first.zone), heat(split.second.zone)};
  if (heat_m[0] <= 0.0 || heat_m[1] <= 0.0) return HUGE_VAL;
  const double size_m = std::sqrt(signed_area_m2(piece.zone.corner) / static_cast<double>(piece.manifold.size()));
  double length_m = 0.0;
  const std::vector<Point> corner = chord.corners();
  for (std::size_t i = 0; i + 1 < corner.size(); ++i) length_m += distance_m(corner[i], corner[i + 1]);
  const double sum = uneven_price(split) +
                     way_weight * (way_m(split.first) + way_m(split.second)) / ((heat_m[0] + heat_m[1]) * size_m) +
                     length_weight * length_m / size_m + bend_weight * static_cast<double>(chord.bend.size()) +
                     area_weight * areas_cut(chord) - line_weight * on_lines_ratio(chord) +
                     crowded_weight * (crowding(split.first, chord) + crowding(split.second, chord));
  // To six digits: wherever the floor lies, the same border is the cheapest.
  return std::floor(1e6 * sum + 0.5) / 1e6;
}

double ZonePrices::close_price(const ZoneSplit& split) const {
  double price = 0.0;
  std::array<double, 2> heat_m{}, tube_m{}, wanted{heat(split.first.zone), heat(split.second.zone)};
  for (std::size_t k = 0; k < 2; ++k) {
    const ZonePiece& side = k == 0 ? split.first : split.second;
    const LayoutTask task = on_zone(seen_, side.zone);
    const Cells cells = cells_of(task, Fit{});
    const std::vector<double> heat = heat_by_cell(cells, task), tube = tube_by_cell(cells);
    std::vector<char> reached(heat.size(), 0);
    for (const std::size_t m : side.manifold) {
      const std::vector<double> way = way_to_cells_m(cells, probe_[m]);
      for (std::size_t c = 0; c < way.size(); ++c) reached[c] = reached[c] != 0 || way[c] >= 0.0 ? 1 : 0;
    }
    for (std::size_t c = 0; c < heat.size(); ++c) {
      if (reached[c] == 0) continue;
      heat_m[k] += heat[c];
      tube_m[k] += tube[c];
    }
    price += lost_weight * std::max(0.0, 1.0 - usual_loss - heat_m[k] / wanted[k]);
  }
  if (heat_m[0] <= 0.0 || heat_m[1] <= 0.0) return HUGE_VAL;
  return price + uneven_price(heat_m, tube_m, split) - uneven_price(split);
}

}  // namespace slabwright::routing
