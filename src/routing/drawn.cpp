// Laid tube as loops of the plan: true lengths, and what of each lies in which room.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "as_drawn.hpp"
#include "lay_out.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// Finer than a tape is read.
constexpr double sag_m = 0.002, longest_step_m = 0.1;

struct RoomFloor {
  std::size_t room = 0;
  Polygon outline;
};

std::vector<RoomFloor> room_floors(const Design& design) {
  std::vector<RoomFloor> floors;
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    Polygon outline;
    for (const Place& p : floor_shape(design.room[i]).outline) outline.push_back({p.x_m, p.y_m});
    if (outline.size() >= 3 && design.room[i].heated_floor) floors.push_back({i, outline});
  }
  return floors;
}

/// The room that a place lies in; `otherwise` on a threshold between two.
std::size_t room_at(const std::vector<RoomFloor>& floors, Point place, std::size_t otherwise) {
  if (floors.size() == 1) return floors.front().room;
  for (const RoomFloor& floor : floors) {
    if (where_is(place, floor.outline) == Where::inside) return floor.room;
  }
  return otherwise;
}

/// What of one loop lies in which room and in its apron, in steps of a hand's breadth.
class Walk {
 public:
  Walk(const std::vector<RoomFloor>& floors, Loop& loop, std::size_t room)
      : floors_(floors), loop_(loop), room_(room) {}

  /// `is_leader(place, at_m)`: whether tube there leads to its patch.
  template <class IsLeader>
  void along(const Path& path, double leader_share, const IsLeader& is_leader) {
    leader_share_ = leader_share;
    for (const Piece& piece : path) {
      const std::vector<Point> corner = flattened(std::span<const Piece>(&piece, 1), sag_m);
      // Chords of an arc are shorter than its tube, all by the same share.
      double chords_m = 0.0;
      for (std::size_t i = 0; i + 1 < corner.size(); ++i) chords_m += distance_m(corner[i], corner[i + 1]);
      const double by_chord = chords_m > 0.0 ? length_m(piece) / chords_m : 1.0;
      for (std::size_t i = 0; i + 1 < corner.size(); ++i) line(corner[i], corner[i + 1], by_chord, is_leader);
    }
  }

  /// Tube that leads on to the manifold, nobody knows where.
  void leader(std::size_t room, double length_m) {
    loop_.along.push_back({room, at_m_, length_m, true, 0.0});
    at_m_ += length_m;
  }

 private:
  template <class IsLeader>
  void line(Point a, Point b, double by_chord, const IsLeader& is_leader) {
    const double length = by_chord * distance_m(a, b);
    const int steps = std::max(1, static_cast<int>(std::ceil(length / longest_step_m)));
    for (int k = 0; k < steps; ++k) {
      const double share = (k + 0.5) / steps;
      const Point middle{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
      step(middle, length / steps, is_leader(middle, at_m_));
    }
  }

  void step(Point middle, double length_m, bool leader) {
    room_ = room_at(floors_, middle, room_);
    std::vector<Stretch>& along = loop_.along;
    if (along.empty() || along.back().room != room_ || along.back().leader != leader ||
        along.back().heating_share == 0.0) {
      along.push_back({room_, at_m_, 0.0, leader, leader ? leader_share_ : 1.0});
    }
    along.back().length_m += length_m;
    at_m_ += length_m;
  }

  const std::vector<RoomFloor>& floors_;
  Loop& loop_;
  std::size_t room_;
  double at_m_ = 0.0, leader_share_ = 0.0;
};

/// Floor of an apron: what of it lies on the slab, where other tube may lie in it too.
double floor_m2(const LayoutTask& task, const Polygon& apron) {
  const double step_m = 0.25 * task.spacing_m;
  const Box box = box_of(apron);
  double sum = 0.0;
  for (double y = box.least.y_m + 0.5 * step_m; y < box.most.y_m; y += step_m) {
    for (double x = box.least.x_m + 0.5 * step_m; x < box.most.x_m; x += step_m) {
      if (where_is(Point{x, y}, apron) != Where::outside && where_is(Point{x, y}, task.outline) != Where::outside)
        sum += step_m * step_m;
    }
  }
  return sum;
}

double tube_in_m(const TubeLayout& layout, const Polygon& apron) {
  double sum = 0.0;
  for (const LaidLoop& loop : layout.loop) {
    const double all_m = length_m(loop.path);
    for (double at_m = 0.5 * longest_step_m; at_m < all_m; at_m += longest_step_m) {
      if (where_is(point_at(loop.path, at_m), apron) != Where::outside) sum += longest_step_m;
    }
  }
  return sum;
}

/// Leaders in an apron heat it together: as much floor as there is, however close they lie. The apron of drawn loops is
/// a limit within which other tube lies too, and takes its own floor.
double leader_share(const LayoutTask& task, const TubeLayout& layout, std::size_t manifold) {
  double leaders_m = 0.0;
  bool drawn = false;
  for (const LaidLoop& loop : layout.loop) {
    if (loop.manifold != manifold) continue;
    leaders_m += loop.apron_m;
    drawn = drawn || loop.drawn;
  }
  if (leaders_m <= 0.0) return 0.0;
  const Polygon& apron = layout.apron[manifold];
  if (!drawn) return std::min(1.0, std::abs(signed_area_m2(apron)) / (leaders_m * task.spacing_m));
  const double others_m = tube_in_m(layout, apron) - leaders_m;
  return std::clamp((floor_m2(task, apron) / task.spacing_m - others_m) / leaders_m, 0.0, 1.0);
}

/// The row in Design::loop of the path that stands at this row of LayoutTask::drawn.
std::size_t entry_of(const Design& design, std::size_t drawn) {
  for (std::size_t i = 0; i < design.loop.size(); ++i) {
    if (!design.loop[i].path.empty() && drawn-- == 0) return i;
  }
  return design.loop.size() - 1;
}

std::size_t named_room(const Design& design, const std::string& name, std::size_t first) {
  for (std::size_t i = 0; i < design.room.size() && !name.empty(); ++i) {
    if (design.room[i].name == name) return i;
  }
  return first;
}

/// The room that most of a loop's heat goes to.
std::size_t main_room(const Design& design, const Loop& loop) {
  std::vector<double> in_m(design.room.size(), 0.0);
  for (const Stretch& s : loop.along) in_m[s.room] += heating_m(s);
  return static_cast<std::size_t>(std::max_element(in_m.begin(), in_m.end()) - in_m.begin());
}

/// What a loop of a room that owns its loops has elsewhere is on the way.
void mark_corridor(const Design& design, Loop& loop) {
  const std::size_t room = main_room(design, loop);
  if (!design.room[room].own_loops) return;
  for (Stretch& s : loop.along) s.leader = s.leader || s.room != room;
}

std::string name_of(const Design& design, const Loop& loop, std::size_t number) {
  const bool several =
      std::count_if(design.room.begin(), design.room.end(), [](const Room& r) { return r.heated_floor; }) > 1;
  const std::string& name = design.room[main_room(design, loop)].name;
  return fmt::format("{} {}", several && !name.empty() ? name : "loop", number);
}

struct Followed {
  const LaidLoop& laid;
  const Polygon& apron;
  double leader_share = 0.0;
};

/// A listed loop along its own path, between leaders where they are to be added.
void follow(const Design& design, const std::vector<RoomFloor>& floors, const Followed& followed, Loop& loop) {
  const std::size_t row = entry_of(design, *followed.laid.drawn);
  const LoopEntry& entry = design.loop[row];
  const bool added = entry.leaders && !entry.leaders->included;
  const double leader_m = added ? entry.leaders->each_way_m : 0.0;
  const LeaderParts parts = leader_parts(followed.laid.path, followed.apron);
  const double back_m = leader_m + followed.laid.length_m - parts.back_m;
  loop.entry = row;
  loop.from = LengthFrom::path;
  loop.name = entry.name.empty() ? fmt::format("loop {}", row + 1) : entry.name;
  loop.length_m += 2.0 * leader_m;
  const std::size_t first = floors_of(design).manifold_room, named = named_room(design, entry.room, first);
  Walk walk(floors, loop, floors.empty() ? named : floors.front().room);
  if (leader_m > 0.0) walk.leader(first, leader_m);
  walk.along(followed.laid.path, followed.leader_share,
             [&](Point, double at_m) { return at_m < leader_m + parts.out_m || at_m >= back_m; });
  if (leader_m > 0.0) walk.leader(first, leader_m);
}

}  // namespace

std::vector<Loop> loops_as_drawn(const Design& design, const LayoutTask& task, const TubeLayout& layout) {
  const std::vector<RoomFloor> floors = room_floors(design);
  std::vector<double> share;
  for (std::size_t m = 0; m < layout.apron.size(); ++m) share.push_back(leader_share(task, layout, m));
  std::vector<Loop> loops;
  for (const LaidLoop& laid : layout.loop) {
    Loop loop;
    loop.manifold = laid.manifold;
    loop.from = LengthFrom::drawing;
    loop.length_m = laid.length_m;
    loop.patch_m2 = laid.patch_m2;
    loop.path = laid.path;
    loop.bends_number = laid.turned_deg / 90.0;
    loop.crossing = laid.crossing;
    if (laid.drawn) {
      follow(design, floors, {laid, layout.apron[laid.manifold], share[laid.manifold]}, loop);
    } else {
      const Polygon& apron = layout.apron[laid.manifold];
      Walk(floors, loop, floors.empty() ? 0 : floors.front().room)
          .along(laid.path, share[laid.manifold],
                 [&](Point p, double) { return apron.size() >= 3 && where_is(p, apron) != Where::outside; });
      loop.name = name_of(design, loop, loops.size() + 1);
      mark_corridor(design, loop);
    }
    loops.push_back(std::move(loop));
  }
  return loops;
}

Overlay loops_on_paths(const Design& design) {
  Overlay overlay;
  overlay.loop.resize(design.loop.size());
  auto task = task_on_plan(design);
  if (!task || task->drawn.empty()) return overlay;
  const TubeLayout layout = as_drawn(*task);
  std::vector<Loop> loops = loops_as_drawn(design, *task, layout);
  overlay.said = broken_said(design, *task, layout, loops);
  for (Loop& loop : loops) overlay.loop[*loop.entry] = std::move(loop);
  return overlay;
}

}  // namespace slabwright::routing
