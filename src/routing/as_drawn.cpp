#include "as_drawn.hpp"

#include <algorithm>
#include <cmath>

#include "finish.hpp"
#include "joints.hpp"
#include "ports.hpp"
#include "remarks_layout.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

constexpr double pi = 3.14159265358979323846;
/// Of the apron, in spacings: as much as a manifold of one loop has, and what each more adds.
constexpr double least_reach = 3.0, reach_of_loop = 0.5;
constexpr double step_m = 0.05, sag_m = 0.005, hair_m = 1e-3;
/// Tube that is laid keeps this far off tube that lies, in spacings; near the ports, in pitches.
constexpr double off_tube = 0.95, off_leader = 0.9;
/// No row of tube falls in with pieces shorter than this, in spacings; with sides of 4 they do.
constexpr double short_piece = 3.0, long_piece = 4.0;

/// Three corners before anything bends, as a leader has them.
std::vector<Point> with_leader_corners(std::vector<Point> corner) {
  const auto add = [&](bool at_end) {
    const Point from = at_end ? corner.back() : corner.front();
    const Point ahead = unit(minus(at_end ? corner[corner.size() - 2] : corner[1], from));
    const std::vector<Point> more{moved(from, ahead, hair_m), moved(from, ahead, 2.0 * hair_m)};
    if (at_end)
      corner.insert(corner.end() - 1, {more[1], more[0]});
    else
      corner.insert(corner.begin() + 1, more.begin(), more.end());
  };
  add(false);
  add(true);
  return corner;
}

std::vector<Point> without_repeats(const std::vector<Point>& corner) {
  std::vector<Point> made;
  for (const Point p : corner) {
    if (made.empty() || distance_m(made.back(), p) > 4.0 * hair_m) made.push_back(p);
  }
  return made;
}

Polygon drawn_apron(const LayoutTask& task, std::size_t manifold, int loops) {
  const PortRow& row = task.manifold[manifold];
  const Point ahead = unit(row.facing);
  const double reach_m = (least_reach + reach_of_loop * loops) * task.spacing_m;
  const auto corner = [&](double right_m, double ahead_m) { return moved(on_row(row, right_m), ahead, ahead_m); };
  return {corner(-reach_m, -task.spacing_m), corner(reach_m, -task.spacing_m), corner(reach_m, reach_m),
          corner(-reach_m, reach_m)};
}

double right_m(const LayoutTask& task, const LaidLoop& loop) {
  return pair_of_m(task.manifold[loop.manifold], loop.path.front().from, loop.path.back().to);
}

LaidLoop laid_as_drawn(const LayoutTask& task, std::size_t row) {
  LaidLoop loop;
  loop.manifold = task.drawn[row].manifold;
  loop.drawn = row;
  loop.path = path_of(task, task.drawn[row]);
  loop.length_m = length_m(loop.path);
  const PortRow& ports = task.manifold[loop.manifold];
  loop.left_first = pair_of_m(ports, loop.path.front().from, loop.path.front().from) <
                    pair_of_m(ports, loop.path.back().to, loop.path.back().to);
  for (const Piece& piece : loop.path) loop.turned_deg += sweep_rad(piece) * 180.0 / pi;
  loop.crossing = crossings_of(loop.path, task.joint);
  return loop;
}

/// Ports and aprons of all loops together.
void put_in_order(const LayoutTask& task, TubeLayout& layout) {
  std::stable_sort(layout.loop.begin(), layout.loop.end(), [&](const LaidLoop& a, const LaidLoop& b) {
    return a.manifold != b.manifold ? a.manifold < b.manifold : right_m(task, a) < right_m(task, b);
  });
  std::vector<int> loops(task.manifold.size(), 0), drawn(task.manifold.size(), 0);
  for (LaidLoop& loop : layout.loop) {
    loop.port = ++loops[loop.manifold];
    if (loop.drawn) ++drawn[loop.manifold];
  }
  layout.apron.resize(task.manifold.size());
  for (std::size_t m = 0; m < task.manifold.size(); ++m) {
    if (drawn[m] > 0) layout.apron[m] = drawn_apron(task, m, loops[m]);
  }
  for (LaidLoop& loop : layout.loop) {
    if (drawn[loop.manifold] == 0) continue;
    const LeaderParts parts = leader_parts(loop.path, layout.apron[loop.manifold]);
    loop.apron_m = parts.out_m + parts.back_m;
    if (loop.drawn) loop.patch_m2 = (loop.length_m - loop.apron_m) * task.spacing_m;
  }
}

class Rest {
 public:
  Rest(const LayoutTask& task, const TubeLayout& drawn) : given_(task), drawn_(drawn) {
    task_ = task;
    task_.drawn.clear();
    task_.manifold.clear();
    for (std::size_t m = 0; m < task.manifold.size(); ++m) add_manifold(m);
    for (const LaidLoop& loop : drawn.loop) {
      for (std::size_t i = 0; i < loop.path.size(); ++i) add_piece(loop.path[i], drawn.apron[loop.manifold]);
    }
  }
  const LayoutTask& task() const { return task_; }
  std::size_t given_manifold(std::size_t m) const { return manifold_[m]; }

 private:
  void add_manifold(std::size_t m) {
    PortRow row = given_.manifold[m];
    for (const LaidLoop& loop : drawn_.loop) {
      if (loop.manifold != m) continue;
      --row.loops_number;
      if (row.loops_wanted_number > 0 && --row.loops_wanted_number == 0) row.loops_number = 0;
      if (given_.drawn[*loop.drawn].ends_at_ports) row.taken_m.push_back(right_m(given_, loop));
    }
    if (row.loops_number <= 0) return;
    task_.manifold.push_back(row);
    manifold_.push_back(m);
  }

  void add_piece(const Piece& piece, const Polygon& apron) {
    const std::vector<Point> corner = flattened(std::span<const Piece>(&piece, 1), sag_m);
    for (std::size_t c = 0; c + 1 < corner.size(); ++c) {
      const Point a = corner[c], b = corner[c + 1];
      if (a == b) continue;
      const double length = distance_m(a, b);
      const int parts = std::max(1, static_cast<int>(std::ceil(length / (short_piece * task_.spacing_m))));
      const Point ahead = unit(minus(b, a)), left{-ahead.y_m, ahead.x_m};
      for (int p = 0; p < parts; ++p) {
        add_area(moved(a, ahead, length * p / parts), moved(a, ahead, length * (p + 1) / parts), left, apron);
      }
      if (length < long_piece * task_.spacing_m) continue;
      const Point right{-left.x_m, -left.y_m};
      if (free_beside(a, b, left)) add_area(b, a, right, {});
      if (free_beside(a, b, right)) add_area(a, b, left, {});
    }
  }

  /// A sliver from a to b, its other side to the left of it.
  void add_area(Point a, Point b, Point left, const Polygon& apron) {
    const Point middle{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
    const bool near_ports = apron.size() >= 3 && where_is(middle, apron) != Where::outside;
    const double clearance_m =
        near_ports ? off_leader * task_.manifold.front().port_pitch_m : off_tube * task_.spacing_m;
    task_.no_tube.push_back({{a, b, moved(middle, left, hair_m)}, clearance_m, true});
  }

  /// Whether there is floor for other tube on that side.
  bool free_beside(Point a, Point b, Point side) const {
    const Point beside = moved({0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)}, side, task_.spacing_m);
    if (where_is(beside, task_.outline) == Where::outside) return false;
    for (const LaidLoop& loop : drawn_.loop) {
      for (const Piece& piece : loop.path) {
        if (distance_to_piece_m(beside, piece) < 0.6 * task_.spacing_m) return false;
      }
    }
    return true;
  }

  const LayoutTask& given_;
  const TubeLayout& drawn_;
  LayoutTask task_;
  std::vector<std::size_t> manifold_;
};

}  // namespace

Path path_of(const LayoutTask& task, const GivenLoop& drawn) {
  const std::vector<Point> corner = without_repeats(drawn.corner);
  if (corner.size() < 2) return {line(drawn.corner.front(), drawn.corner.back())};
  return bent(task, {with_leader_corners(corner)});
}

LeaderParts leader_parts(const Path& path, const Polygon& apron) {
  LeaderParts parts;
  if (apron.size() < 3 || path.empty()) return parts;
  const auto walked_m = [&](const Path& way) {
    double inside_m = 0.0;
    const double all_m = length_m(way);
    while (inside_m < 0.5 * all_m && where_is(point_at(way, inside_m), apron) != Where::outside) inside_m += step_m;
    return std::min(inside_m, 0.5 * all_m);
  };
  return {walked_m(path), walked_m(reversed(path))};
}

TubeLayout as_drawn(const LayoutTask& task) {
  TubeLayout layout;
  for (std::size_t k = 0; k < task.drawn.size(); ++k) layout.loop.push_back(laid_as_drawn(task, k));
  put_in_order(task, layout);
  return layout;
}

Checked<TubeLayout> lay_with_drawn(const LayoutTask& task, const Progress& progress) {
  TubeLayout drawn = as_drawn(task);
  const auto alone = [&] {
    auto notes = notes_on_lie(task, check_layout(task, drawn));
    return Checked<TubeLayout>{std::move(drawn), std::move(notes)};
  };
  if (!task.rest_is_laid) return alone();
  const Rest rest(task, drawn);
  if (rest.task().manifold.empty()) return {std::nullopt, {no_port_for_rest()}};
  Checked<TubeLayout> made = lay_tube(rest.task(), progress);
  const auto no_floor = [](const Diagnostic& d) { return d.code == "layout.no-floor"; };
  if (!made && std::all_of(made.said.begin(), made.said.end(), no_floor)) return alone();
  if (!made) {
    made.said.push_back(drawn_in_the_way());
    return made;
  }
  TubeLayout whole;
  whole.apron.resize(task.manifold.size());
  for (std::size_t m = 0; m < made.value->apron.size(); ++m)
    whole.apron[rest.given_manifold(m)] = std::move(made.value->apron[m]);
  for (LaidLoop& loop : made.value->loop) {
    loop.manifold = rest.given_manifold(loop.manifold);
    whole.loop.push_back(std::move(loop));
  }
  whole.loop.insert(whole.loop.end(), drawn.loop.begin(), drawn.loop.end());
  put_in_order(task, whole);
  // Joints and bare floor count all loops.
  const auto of_rest = [](const Diagnostic& d) { return d.code == "layout.joints" || d.code == "layout.far-floor"; };
  std::erase_if(made.said, of_rest);
  const auto notes = notes_on_lie(task, check_layout(task, whole));
  made.said.insert(made.said.end(), notes.begin(), notes.end());
  return {std::move(whole), std::move(made.said)};
}

}  // namespace slabwright::routing
