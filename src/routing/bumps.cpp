// A bump is a stretch of a tube line moved aside, its legs slanting or square; a narrow deep one is a hairpin.
#include <algorithm>
#include <cmath>

#include "lying.hpp"
#include "open_floor.hpp"

namespace slabwright::routing {
namespace {

std::ptrdiff_t offset(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

constexpr double march = 0.125, most_deep = 6.0;
/// Lines farther than this from bare floor are left alone, in spacings.
constexpr double near_enough = 2.5;
/// Stretches of a line are looked at in steps of this, in spacings, and so much beyond the bare floor.
constexpr double along_step = 0.25, beyond = 2.0;
/// Bare spots that a right angle more is worth.
constexpr double angle_price = 1.5;
/// Worth less than this, in bare spots, none is made.
constexpr double least_worth = 1.0;
constexpr std::size_t most_verified = 20;
constexpr int most_of_run = 3;

/// Legs of bumps, by what they turn: tangents and what of their length the bend asks for.
struct Leg {
  double cosine, sine;
  double half_tangent;  ///< of half the angle
  double angles;        ///< right angles turned in the whole bump
};
constexpr Leg legs[] = {{0.8660254037844387, 0.5, 0.2679491924311227, 4.0 / 3.0},
                        {0.7071067811865476, 0.7071067811865476, 0.41421356237309503, 2.0},
                        {0.0, 1.0, 1.0, 4.0}};

/// The line from corner i to the next one.
struct Run {
  std::size_t loop = 0, i = 0;
  Point from, along, side;  ///< the side that the bare floor lies on
  double length_m = 0.0;
};

/// A stretch of a run moved aside.
struct Bump {
  Run run;
  double from_m = 0.0, to_m = 0.0, deep_m = 0.0;
  bool whole_from = false, whole_to = false;  ///< moved up to the end of its run, whose neighbour grows or shrinks
  int leg = 0;
  int heated_number = 0;  ///< bare spots that come within a spacing of it; once `is_weighed` less those that are lost
  double price = 0.0;
  bool is_weighed = false;
  std::size_t number = 0;  ///< of two that are worth the same the first one found is taken
  double worth() const { return heated_number - price; }
};

bool is_behind(const Bump& a, const Bump& b) {
  return a.worth() != b.worth() ? a.worth() < b.worth() : a.number > b.number;
}

class Bumper {
 public:
  Bumper(Lying& lying, const Bare& bare) : lying_(lying), bare_(bare), s_(lying.spacing_m()) {}

  bool bump() {
    find_bare_spots();
    std::vector<Bump> bumps;
    for (std::size_t k = 0; k < lying_.size(); ++k) {
      const auto& c = lying_.corners(k);
      for (std::size_t i = leader_corners - 1; i + leader_corners < c.size(); ++i) add_bumps(k, i, bumps);
    }
    std::make_heap(bumps.begin(), bumps.end(), is_behind);
    // Bumps of one run fail for one reason, as a rule.
    std::vector<Run> failed;
    while (!bumps.empty() && failed.size() < most_verified) {
      std::pop_heap(bumps.begin(), bumps.end(), is_behind);
      const Bump bump = bumps.back();
      bumps.pop_back();
      const auto same = [&](const Run& other) { return other.loop == bump.run.loop && other.i == bump.run.i; };
      if (std::count_if(failed.begin(), failed.end(), same) >= most_of_run) continue;
      if (!bump.is_weighed) {
        const Bump exact = weighed(bump);
        if (exact.worth() < least_worth) continue;
        bumps.push_back(exact);
        std::push_heap(bumps.begin(), bumps.end(), is_behind);
        continue;
      }
      if (made(bump)) return true;
      failed.push_back(bump.run);
    }
    return false;
  }

 private:
  void find_bare_spots() {
    for (const TubeMap::Spot& spot : lying_.map().spots()) {
      if (spot.lines_number == 0) bare_spots_.push_back(spot.place);
    }
  }

  void add_bumps(std::size_t k, std::size_t i, std::vector<Bump>& bumps) const {
    const auto& c = lying_.corners(k);
    const double reach_m = near_enough * s_;
    const Point a = c[i], b = c[i + 1];
    if (std::min(a.x_m, b.x_m) > bare_.high.x_m + reach_m || std::max(a.x_m, b.x_m) < bare_.low.x_m - reach_m ||
        std::min(a.y_m, b.y_m) > bare_.high.y_m + reach_m || std::max(a.y_m, b.y_m) < bare_.low.y_m - reach_m) {
      return;
    }
    Run run{k, i, a, unit(minus(b, a)), {}, distance_m(a, b)};
    if (run.length_m < s_) return;
    // Where along the run, and how far to which side, the bare floor lies.
    double least_m = HUGE_VAL, first_m = HUGE_VAL, last_m = -HUGE_VAL, left = 0.0;
    for (const int spot : bare_.spot) {
      const Point d = minus(lying_.map().spots()[index(spot)].place, a);
      const double at_m = dot(d, run.along), off_m = run.along.x_m * d.y_m - run.along.y_m * d.x_m;
      left += off_m;
      if (std::abs(off_m) > most_deep * s_) continue;
      least_m = std::min(least_m, std::abs(off_m));
      first_m = std::min(first_m, at_m);
      last_m = std::max(last_m, at_m);
    }
    if (least_m > reach_m) return;
    run.side = left > 0.0 ? Point{-run.along.y_m, run.along.x_m} : Point{run.along.y_m, -run.along.x_m};
    first_m = std::max(0.0, first_m - beyond * s_);
    last_m = std::min(run.length_m, last_m + beyond * s_);
    if (last_m - first_m < s_) return;
    add_of_run(run, first_m, last_m, bumps);
  }

  /// Whether tube may lie at a point: of its own loop, the run and its neighbours are not looked at.
  bool free_at(Point p, const Run& run, double from_m, double to_m) const {
    bool free = true;
    lying_.map().each_near(p, p, nearest_line * s_, [&](const TubeEdge& edge) {
      if (edge.loop == static_cast<int>(run.loop) && edge.at_m > from_m && edge.at_m < to_m) return true;
      free = distance_to_edge_m(p, edge.a, edge.b) >= nearest_line * s_;
      return free;
    });
    return free && where_is(p, lying_.task().outline) != Where::outside && keeps_clear(lying_.task(), p, p);
  }

  /// How far along its loop a corner lies: its bends are shorter than its corners, so this is an upper bound that is
  /// good to a few spacings.
  double place_of(const Run& run) const {
    double best_m = 0.0, least = HUGE_VAL;
    const Point middle = moved(run.from, run.along, 0.5 * run.length_m);
    lying_.map().each_near(middle, middle, 0.5 * s_, [&](const TubeEdge& edge) {
      const double away = distance_to_edge_m(middle, edge.a, edge.b);
      if (edge.loop == static_cast<int>(run.loop) && away < least) {
        least = away;
        best_m = edge.at_m;
      }
      return true;
    });
    return best_m;
  }

  /// How deep tube may go to the side of a run, by places along it.
  std::vector<double> free_deep_m(const Run& run, double first_m, double last_m) const {
    const auto& c = lying_.corners(run.loop);
    const double at_m = place_of(run);
    const double from_m = at_m - 0.5 * run.length_m - distance_m(c[run.i - 1], c[run.i]);
    const double to_m = at_m + 0.5 * run.length_m + distance_m(c[run.i + 1], c[run.i + 2]);
    std::vector<double> deep_m;
    for (double t = first_m; t <= last_m + 1e-9; t += along_step * s_) {
      double free_m = 0.0;
      for (double d = march * s_; d <= most_deep * s_; d += march * s_) {
        if (!free_at(moved(moved(run.from, run.along, t), run.side, d), run, from_m, to_m)) break;
        free_m = d;
      }
      deep_m.push_back(free_m);
    }
    return deep_m;
  }

  bool square(const Run& run, bool at_end) const {
    const auto& c = lying_.corners(run.loop);
    const Point beside = at_end ? minus(c[run.i + 2], c[run.i + 1]) : minus(c[run.i], c[run.i - 1]);
    const bool leader = at_end ? run.i + 1 + leader_corners >= c.size() : run.i < leader_corners;
    return !leader && std::abs(dot(beside, run.along)) <= 1e-9;
  }

  void add_of_run(const Run& run, double first_m, double last_m, std::vector<Bump>& bumps) const {
    const std::vector<double> deep_m = free_deep_m(run, first_m, last_m);
    const double step_m = along_step * s_, most_m = *std::max_element(deep_m.begin(), deep_m.end());
    for (double d = 2.0 * march * s_; d <= most_m + 1e-9; d += (d < s_ ? 1.0 : 2.0) * march * s_) {
      for (std::size_t from = 0; from < deep_m.size(); ++from) {
        if (deep_m[from] < d - 1e-9 || (from > 0 && deep_m[from - 1] >= d - 1e-9)) continue;
        std::size_t to = from;
        while (to + 1 < deep_m.size() && deep_m[to + 1] >= d - 1e-9) ++to;
        const double from_m = first_m + static_cast<double>(from) * step_m;
        const double to_m = first_m + static_cast<double>(to) * step_m;
        add_stretches({run, from_m, to_m, d}, bumps);
      }
    }
  }

  void add_stretches(const Bump& most, std::vector<Bump>& bumps) const {
    const bool at_from = most.from_m <= along_step * s_, at_to = most.to_m >= most.run.length_m - along_step * s_;
    for (int ends = 0; ends < 4; ++ends) {
      Bump bump = most;
      bump.whole_from = (ends & 1) != 0;
      bump.whole_to = (ends & 2) != 0;
      if ((bump.whole_from && !(at_from && square(bump.run, false))) ||
          (bump.whole_to && !(at_to && square(bump.run, true)))) {
        continue;
      }
      if (bump.whole_from) bump.from_m = 0.0;
      if (bump.whole_to) bump.to_m = bump.run.length_m;
      for (int leg = 0; leg < 3; ++leg) {
        bump.leg = leg;
        if (bump.deep_m / legs[leg].sine < 2.0 * lying_.task().bend_radius_m * legs[leg].half_tangent - 1e-9) continue;
        add(bump, bumps);
      }
    }
    // Hairpins.
    const double wide_m = std::max(s_, 2.0 * lying_.task().bend_radius_m + 1e-6);
    if (most.deep_m < s_ || most.deep_m < 2.0 * lying_.task().bend_radius_m) return;
    for (double at = most.from_m; at + wide_m < most.to_m; at += 2.0 * along_step * s_) {
      Bump bump = most;
      bump.from_m = at;
      bump.to_m = at + wide_m;
      bump.leg = 2;
      add(bump, bumps);
    }
  }

  /// The corners of the bumped run, both ends of the run included.
  std::vector<Point> corners_of(const Bump& bump) const {
    const Run& run = bump.run;
    const double slant_m = bump.deep_m * legs[bump.leg].cosine / legs[bump.leg].sine;
    const auto at = [&](double along_m, bool deep) {
      return moved(moved(run.from, run.along, along_m), run.side, deep ? bump.deep_m : 0.0);
    };
    std::vector<Point> corners;
    if (bump.whole_from) {
      corners.push_back(at(0.0, true));
    } else {
      corners = {run.from, at(bump.from_m, false), at(bump.from_m + slant_m, true)};
    }
    if (bump.whole_to) {
      corners.push_back(at(run.length_m, true));
    } else {
      corners.push_back(at(bump.to_m - slant_m, true));
      corners.push_back(at(bump.to_m, false));
      corners.push_back(lying_.corners(run.loop)[run.i + 1]);
    }
    return corners;
  }

  /// The bends at the ends of the run keep their room.
  void keep_off_ends(Bump& bump) const {
    const auto& c = lying_.corners(bump.run.loop);
    const double bend_m = lying_.task().bend_radius_m * legs[bump.leg].half_tangent + 1e-6;
    const double from_m = bend_room_m(lying_.task(), c, bump.run.i, true) + bend_m;
    const double to_m = bump.run.length_m - bend_room_m(lying_.task(), c, bump.run.i + 1, false) - bend_m;
    if (!bump.whole_from) bump.from_m = std::max(bump.from_m, from_m);
    if (!bump.whole_to) bump.to_m = std::min(bump.to_m, to_m);
  }

  void add(Bump bump, std::vector<Bump>& bumps) const {
    keep_off_ends(bump);
    const double slant_m = bump.deep_m * legs[bump.leg].cosine / legs[bump.leg].sine;
    const double front_m =
        bump.to_m - bump.from_m - (bump.whole_from ? 0.0 : slant_m) - (bump.whole_to ? 0.0 : slant_m);
    const double bend_m = lying_.task().bend_radius_m * legs[bump.leg].half_tangent;
    if (front_m < 2.0 * bend_m) return;
    const double ends = (bump.whole_from ? 0.0 : 0.5) + (bump.whole_to ? 0.0 : 0.5);
    if (!legs_apart(bump)) return;
    bump.heated_number = heated_spots(new_line(bump));
    bump.price = angle_price * legs[bump.leg].angles * ends;
    bump.number = bumps.size();
    if (bump.worth() >= least_worth) bumps.push_back(bump);
  }

  /// Whether the legs of a bump keep off the runs beside its own, and off each other.
  bool legs_apart(const Bump& bump) const {
    const Run& run = bump.run;
    const auto& c = lying_.corners(run.loop);
    const double least_m = nearest_line * s_, before_m = dot(minus(c[run.i - 1], c[run.i]), run.side);
    const double after_m = dot(minus(c[run.i + 2], c[run.i + 1]), run.side);
    if (!bump.whole_from && before_m > 0.1 * s_ && bump.from_m < least_m) return false;
    if (!bump.whole_to && after_m > 0.1 * s_ && run.length_m - bump.to_m < least_m) return false;
    if (bump.whole_from && before_m > 0.0 && before_m < bump.deep_m + lying_.task().bend_radius_m) return false;
    if (bump.whole_to && after_m > 0.0 && after_m < bump.deep_m + lying_.task().bend_radius_m) return false;
    const bool shrinks = (bump.whole_from && before_m > 0.0) || (bump.whole_to && after_m > 0.0);
    return shrinks || bump.to_m - bump.from_m >= least_m;
  }

  /// Lines of a loop's tube along a straight line.
  void add_lines(std::size_t loop, Point a, Point b, std::vector<TubeEdge>& lines) const {
    lying_.map().each_near(a, b, 0.0, [&](const TubeEdge& edge) {
      const Point middle{0.5 * (edge.a.x_m + edge.b.x_m), 0.5 * (edge.a.y_m + edge.b.y_m)};
      const auto same = [&](const TubeEdge& e) { return e.at_m == edge.at_m; };
      if (edge.loop == static_cast<int>(loop) && within(middle, a, b, 0.05 * s_) &&
          std::none_of(lines.begin(), lines.end(), same)) {
        lines.push_back(edge);
      }
      return true;
    });
  }

  /// A bump's line, and the lines beside its run where they grow.
  struct NewLine {
    std::vector<Point> corner;
    bool grows_from = false, grows_to = false;
    Box box;
  };
  NewLine new_line(const Bump& bump) const {
    const Run& run = bump.run;
    const auto& c = lying_.corners(run.loop);
    NewLine line{corners_of(bump),
                 dot(minus(c[run.i - 1], c[run.i]), run.side) < 0.0,
                 dot(minus(c[run.i + 2], c[run.i + 1]), run.side) < 0.0,
                 {}};
    if (bump.whole_from && line.grows_from) line.corner.insert(line.corner.begin(), c[run.i]);
    if (bump.whole_to && line.grows_to) line.corner.push_back(c[run.i + 1]);
    line.box = box_of(line.corner);
    return line;
  }

  bool heats(const NewLine& line, Point spot) const {
    for (std::size_t k = 0; k + 1 < line.corner.size(); ++k) {
      if (within(spot, line.corner[k], line.corner[k + 1], s_)) return true;
    }
    return false;
  }

  /// Bare spots that come within a spacing of tube.
  int heated_spots(const NewLine& line) const {
    const auto row = [&](double y_m) {
      return std::lower_bound(bare_spots_.begin(), bare_spots_.end(), y_m, [](Point p, double y) { return p.y_m < y; });
    };
    const auto first = row(line.box.least.y_m - s_), last = row(line.box.most.y_m + 1.1 * s_);
    return static_cast<int>(
        std::count_if(first, last, [&](Point spot) { return in_box(line.box, spot, s_) && heats(line, spot); }));
  }

  /// Lines of the loop's tube that a bump takes away.
  std::vector<TubeEdge> lines_gone(const Bump& bump, const NewLine& line) const {
    const Run& run = bump.run;
    const auto& c = lying_.corners(run.loop);
    std::vector<TubeEdge> gone;
    add_lines(run.loop, moved(run.from, run.along, bump.from_m), moved(run.from, run.along, bump.to_m), gone);
    const auto add_beside = [&](Point end) { add_lines(run.loop, end, moved(end, run.side, bump.deep_m), gone); };
    if (bump.whole_from && !line.grows_from) add_beside(c[run.i]);
    if (bump.whole_to && !line.grows_to) add_beside(c[run.i + 1]);
    return gone;
  }

  /// Spots that no longer lie within a spacing of any tube.
  int lost_spots(const Bump& bump, const NewLine& line) const {
    const std::vector<TubeEdge> gone = lines_gone(bump, line);
    const TubeMap& map = lying_.map();
    const Box box = box_of({line.box.least, line.box.most, bump.run.from});
    const TubeMap::Window w =
        map.window({box.least.x_m - s_, box.least.y_m - s_}, {box.most.x_m + s_, box.most.y_m + s_});
    int lost = 0;
    for (int j = w.bottom; j <= w.top; ++j) {
      for (int i = w.left; i <= w.right; ++i) {
        const TubeMap::Spot& spot = map.spots()[index(j * map.columns() + i)];
        if (spot.lines_number <= 0 || spot.lines_number > static_cast<int>(gone.size())) continue;
        if (heats(line, spot.place)) continue;
        const auto near = [&](const TubeEdge& edge) { return within(spot.place, edge.a, edge.b, s_); };
        lost += std::count_if(gone.begin(), gone.end(), near) < spot.lines_number ? 0 : 1;
      }
    }
    return lost;
  }

  Bump weighed(Bump bump) const {
    bump.heated_number -= lost_spots(bump, new_line(bump));
    bump.is_weighed = true;
    return bump;
  }

  /// Makes the bump if it holds on the final lines and arcs.
  bool made(const Bump& bump) {
    const std::size_t k = bump.run.loop;
    const std::vector<Point> corner = corners_of(bump);
    Strand bumped{lying_.corners(k)};
    auto& c = bumped.corner;
    c.erase(c.begin() + offset(bump.run.i), c.begin() + offset(bump.run.i) + 2);
    c.insert(c.begin() + offset(bump.run.i), corner.begin(), corner.end());
    return lying_.take(k, std::move(bumped), lying_.rule());
  }

  Lying& lying_;
  const Bare& bare_;
  double s_;
  std::vector<Point> bare_spots_;  ///< all of the floor's, row by row
};

}  // namespace

bool bump_into(Lying& lying, const Bare& bare) { return Bumper(lying, bare).bump(); }

}  // namespace slabwright::routing
