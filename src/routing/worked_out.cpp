// Loops that nobody has measured: from the floor they must cover, or from how many there are.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "lay_out.hpp"

namespace slabwright::routing {
namespace {

/// A floor that fills its loops to the last millimetre needs no further loop for a rounding.
constexpr double rounding_ratio = 1e-9;

std::size_t whole(double number) { return static_cast<std::size_t>(std::lround(number)); }

/// The piece [start, end) of the tube of all heated rooms, laid one room after the other.
std::vector<Stretch> piece(const Floors& floors, double start_m, double end_m) {
  std::vector<Stretch> patch;
  double room_start_m = 0.0;
  for (std::size_t room = 0; room < floors.heated_m2.size(); ++room) {
    const double room_end_m = room_start_m + tube_of(floors, room);
    const double length_m = std::min(end_m, room_end_m) - std::max(start_m, room_start_m);
    if (length_m > rounding_ratio * (end_m - start_m)) patch.push_back({room, 0.0, length_m, false});
    room_start_m = room_end_m;
  }
  return patch;
}

std::string name_of(const Design& design, const Floors& floors, std::size_t room, std::size_t number) {
  const auto heated = std::count_if(floors.heated_m2.begin(), floors.heated_m2.end(), [](double m2) { return m2 > 0; });
  const std::string& name = design.room[room].name;
  return fmt::format("{} {}", heated == 1 || name.empty() ? "loop" : name, number);
}

/// The loops in their order, neighbours on one manifold.
void hang_up(std::vector<Loop>& loops, const std::vector<std::size_t>& by_manifold) {
  std::size_t next = 0;
  for (std::size_t manifold = 0; manifold < by_manifold.size(); ++manifold) {
    for (std::size_t i = 0; i < by_manifold[manifold]; ++i) loops[next++].manifold = manifold;
  }
}

}  // namespace

std::vector<std::size_t> shared_out(std::size_t loops, const std::vector<Manifold>& manifold) {
  std::vector<std::size_t> taken(manifold.size(), 0);
  for (std::size_t i = 0; i < loops; ++i) {
    std::size_t best = manifold.size();
    for (std::size_t m = 0; m < manifold.size(); ++m) {
      const bool free = !manifold[m].ports_number || taken[m] < whole(*manifold[m].ports_number);
      if (free && (best == manifold.size() || taken[m] < taken[best])) best = m;
    }
    ++taken[std::min(best, manifold.size() - 1)];
  }
  return taken;
}

std::vector<Loop> loops_by_count(const Design& design, const Floors& floors) {
  std::vector<std::size_t> by_manifold;
  for (const Manifold& manifold : design.manifold) by_manifold.push_back(whole(manifold.loops_number.value_or(0.0)));
  const std::size_t count = std::accumulate(by_manifold.begin(), by_manifold.end(), std::size_t{0});
  double tube_m = 0.0;
  for (std::size_t room = 0; room < design.room.size(); ++room) tube_m += tube_of(floors, room);
  const double each_m = tube_m / static_cast<double>(count);

  std::vector<Loop> loops;
  for (std::size_t i = 0; i < count; ++i) {
    const double start_m = static_cast<double>(i) * each_m;
    loops.push_back(lay(floors, floors.leader_m, piece(floors, start_m, start_m + each_m)));
    loops.back().name = fmt::format("loop {}", i + 1);
    loops.back().from = LengthFrom::count;
  }
  hang_up(loops, by_manifold);
  return loops;
}

std::vector<Loop> loops_from_area(const Design& design, const Floors& floors) {
  std::vector<Loop> loops;
  const double most_m = floors.limit_m - 2.0 * floors.leader_m;
  for (std::size_t room = 0; room < design.room.size(); ++room) {
    const double tube_m = tube_of(floors, room);
    const double count = std::ceil(tube_m / most_m - rounding_ratio);
    for (std::size_t i = 0; i < whole(count); ++i) {
      loops.push_back(lay(floors, floors.leader_m, {{room, 0.0, tube_m / count, false}}));
      loops.back().name = name_of(design, floors, room, i + 1);
      loops.back().from = LengthFrom::area_and_spacing;
    }
  }
  hang_up(loops, shared_out(loops.size(), design.manifold));
  return loops;
}

}  // namespace slabwright::routing
