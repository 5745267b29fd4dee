// Laid tube as loops of the plan: true lengths, and what of each lies in which room.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "lay_out.hpp"

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
  Walk(const std::vector<RoomFloor>& floors, const Polygon& apron, Loop& loop)
      : floors_(floors), apron_(apron), loop_(loop), room_(floors.empty() ? 0 : floors.front().room) {}

  void along(const Path& path, double leader_share) {
    leader_share_ = leader_share;
    const std::vector<Point> corner = flattened(path, sag_m);
    for (std::size_t i = 0; i + 1 < corner.size(); ++i) line(corner[i], corner[i + 1]);
  }

 private:
  void line(Point a, Point b) {
    const double length = distance_m(a, b);
    const int steps = std::max(1, static_cast<int>(std::ceil(length / longest_step_m)));
    for (int k = 0; k < steps; ++k) {
      const double share = (k + 0.5) / steps;
      step({a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)}, length / steps);
    }
  }

  void step(Point middle, double length_m) {
    room_ = room_at(floors_, middle, room_);
    const bool leader = apron_.size() >= 3 && where_is(middle, apron_) != Where::outside;
    std::vector<Stretch>& along = loop_.along;
    if (along.empty() || along.back().room != room_ || along.back().leader != leader) {
      along.push_back({room_, at_m_, 0.0, leader, leader ? leader_share_ : 1.0});
    }
    along.back().length_m += length_m;
    at_m_ += length_m;
  }

  const std::vector<RoomFloor>& floors_;
  const Polygon& apron_;
  Loop& loop_;
  std::size_t room_;
  double at_m_ = 0.0, leader_share_ = 0.0;
};

/// Leaders in an apron heat it together: as much floor as there is, however close they lie.
double leader_share(const TubeLayout& layout, std::size_t manifold, double spacing_m) {
  double leaders_m = 0.0;
  for (const LaidLoop& loop : layout.loop) leaders_m += loop.manifold == manifold ? loop.apron_m : 0.0;
  const double floor_m2 = std::abs(signed_area_m2(layout.apron[manifold]));
  return leaders_m > 0.0 ? std::min(1.0, floor_m2 / (leaders_m * spacing_m)) : 0.0;
}

std::string name_of(const Design& design, const Loop& loop, std::size_t number) {
  const bool several =
      std::count_if(design.room.begin(), design.room.end(), [](const Room& r) { return r.heated_floor; }) > 1;
  double most_m = 0.0;
  std::size_t room = 0;
  std::vector<double> in_m(design.room.size(), 0.0);
  for (const Stretch& s : loop.along) in_m[s.room] += heating_m(s);
  for (std::size_t i = 0; i < in_m.size(); ++i) {
    if (in_m[i] > most_m) most_m = in_m[i], room = i;
  }
  const std::string& name = design.room[room].name;
  return fmt::format("{} {}", several && !name.empty() ? name : "loop", number);
}

}  // namespace

std::vector<Loop> loops_as_drawn(const Design& design, const LayoutTask& task, const TubeLayout& layout) {
  const std::vector<RoomFloor> floors = room_floors(design);
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
    Walk(floors, layout.apron[laid.manifold], loop)
        .along(laid.path, leader_share(layout, laid.manifold, task.spacing_m));
    loop.name = name_of(design, loop, loops.size() + 1);
    loops.push_back(std::move(loop));
  }
  return loops;
}

}  // namespace slabwright::routing
