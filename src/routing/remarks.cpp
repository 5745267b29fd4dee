// What a person should know about a plan of loops.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "lay_out.hpp"

namespace slabwright::routing {
namespace {

using Said = std::vector<Diagnostic>;

/// Loops of one manifold within this of the longest are easily balanced (practice).
constexpr double even_share = 0.10;
/// Shorter than this part of the longest, a loop's valve is all but shut (practice).
constexpr double very_short_share = 1.0 / 3.0;
/// Tube for a floor is cut to walls, doors and turns: 5 to 10 % (practice). More than that is a loop or a spacing.
constexpr double cover_tolerance_share = 0.10;
/// Loops of the very limit are not too long for a rounding.
constexpr double limit_tolerance_m = 1e-6;

Measured length(double m) { return {m, Dimension::length}; }

std::string row_of(std::string_view table, std::size_t row) { return fmt::format("{}[{}]", table, row + 1); }

std::string name_of(const Manifold& manifold, std::size_t row) {
  return manifold.name.empty() ? fmt::format("manifold {}", row + 1) : manifold.name;
}

/// The entry of the design file that a loop's length comes from.
std::string origin_of(const Loop& loop) {
  switch (loop.from) {
    case LengthFrom::file: return row_of("loop", loop.entry.value_or(0)) + ".length";
    case LengthFrom::path: return row_of("loop", loop.entry.value_or(0)) + ".path";
    case LengthFrom::count: return row_of("manifold", loop.manifold) + ".loops";
    case LengthFrom::area_and_spacing:
    case LengthFrom::drawing: break;
  }
  return "tube.spacing";
}

Said too_long(const LoopPlan& plan) {
  Said said;
  for (const Loop& loop : plan.loop) {
    if (loop.length_m <= plan.limit_m + limit_tolerance_m) continue;
    // A length shared out over a count is only a guess, and the same for all.
    const bool guess = loop.from == LengthFrom::count;
    said.push_back({guess ? Severity::warning : Severity::failure,
                    "loop.too-long",
                    origin_of(loop),
                    "{} is {} long, leaders included; the limit for this tube is {}",
                    {loop.name, length(loop.length_m), length(plan.limit_m)}});
    if (guess) break;
  }
  return said;
}

/// Loops of one manifold that are too short beside its longest, or unlike each other.
Said uneven(const Design& design, const LoopPlan& plan, std::size_t manifold) {
  double longest_m = 0.0;
  for (const Loop& loop : plan.loop) {
    if (loop.manifold == manifold) longest_m = std::max(longest_m, loop.length_m);
  }
  Said said;
  double shortest_m = longest_m;
  for (const Loop& loop : plan.loop) {
    if (loop.manifold != manifold) continue;
    if (loop.length_m >= very_short_share * longest_m) {
      shortest_m = std::min(shortest_m, loop.length_m);
      continue;
    }
    said.push_back({Severity::note,
                    "loop.very-short",
                    origin_of(loop),
                    "{} is only {} long beside one of {}: its valve must be all but shut; lay it as one with the next",
                    {loop.name, length(loop.length_m), length(longest_m)}});
  }
  if (shortest_m < (1.0 - even_share) * longest_m)
    said.push_back({Severity::note,
                    "loops.uneven",
                    row_of("manifold", manifold),
                    "the loops of {} run from {} to {}: within {} of each other they are easier to balance (practice)",
                    {name_of(design.manifold[manifold], manifold), length(shortest_m), length(longest_m),
                     Measured{even_share, Dimension::share}}});
  return said;
}

/// More of a loop's length than this on its way out and back is said.
constexpr double long_way_share = 1.0 / 3.0;

/// Drawn loops that spend much of their length on the way to their floor.
Said long_ways(const Floors& floors, const LoopPlan& plan) {
  Said said;
  for (const Loop& loop : plan.loop) {
    if (!loop.path) continue;
    const double way_m = way_out_m(*loop.path, floors.spacing_m);
    if (way_m <= long_way_share * loop.length_m) continue;
    const bool listed = loop.from == LengthFrom::path;
    said.push_back({Severity::note,
                    "layout.long-way-out",
                    listed ? origin_of(loop) : row_of("manifold", loop.manifold) + ".place",
                    listed
                        ? "{} needs {} of its {} for the way to half of its floor and back"
                        : "{} needs {} of its {} for the way to half of its floor and back: ask for another place of "
                          "the manifold with `route --better-place`",
                    {loop.name, length(way_m), length(loop.length_m)}});
  }
  return said;
}

/// Ports and count of a manifold against the loops that leave it.
std::optional<Diagnostic> ports(const Design& design, const LoopPlan& plan, std::size_t manifold) {
  const Manifold& row = design.manifold[manifold];
  const auto leaving =
      std::count_if(plan.loop.begin(), plan.loop.end(), [&](const Loop& loop) { return loop.manifold == manifold; });
  const std::string at = row_of("manifold", manifold), name = name_of(row, manifold);
  const auto whole = [](double number) { return fmt::format("{}", std::lround(number)); };
  const std::string count = fmt::format("{}", leaving);
  if (leaving == 0) return Diagnostic{Severity::warning, "manifold.no-loop", at, "no loop leaves {}", {name}};
  if (row.ports_number && leaving > std::lround(*row.ports_number))
    return Diagnostic{Severity::failure,
                      "manifold.too-few-ports",
                      at + ".ports",
                      "{} has {} ports, and {} loops leave it",
                      {name, whole(*row.ports_number), count}};
  if (row.loops_number && leaving != std::lround(*row.loops_number))
    return Diagnostic{Severity::warning,
                      "manifold.count-differs",
                      at + ".loops",
                      "{} is said to have {} loops, and {} are listed",
                      {name, whole(*row.loops_number), count}};
  return std::nullopt;
}

/// Listed tube against the floor it lies in. Loops that were worked out cover it by construction.
std::optional<Diagnostic> cover(const Design& design, const Floors& floors, const LoopPlan& plan, std::size_t room) {
  if (floors.heated_m2[room] <= 0.0) return std::nullopt;
  const double share = plan.room_tube_m[room] / tube_of(floors, room);
  const std::string& name = design.room[room].name;
  if (share <= 0.0)
    return Diagnostic{Severity::warning,
                      "room.no-loop",
                      row_of("room", room),
                      "no loop lies in {}, whose floor is to be heated",
                      {name}};
  if (std::abs(share - 1.0) <= cover_tolerance_share) return std::nullopt;
  const std::vector<std::variant<std::string, Measured>> parts{Measured{share, Dimension::share}, name,
                                                               length(floors.spacing_m / share)};
  if (share < 1.0)
    return Diagnostic{Severity::warning, "loops.cover-part", "loop",
                      "the loops listed cover only {} of the floor of {} at this spacing: one is missing, or the tubes "
                      "lie {} apart",
                      parts};
  return Diagnostic{Severity::warning, "loops.cover-more", "loop",
                    "the loops listed are {} of the tube that the floor of {} takes at this spacing: the tubes lie {} "
                    "apart, or the floor is larger",
                    parts};
}

}  // namespace

std::vector<Diagnostic> remarks_on(const Design& design, const Floors& floors, const LoopPlan& plan) {
  Said said = too_long(plan);
  const auto add = [&](const auto& more) { said.insert(said.end(), more.begin(), more.end()); };
  const auto add_one = [&](const std::optional<Diagnostic>& one) {
    if (one) said.push_back(*one);
  };
  for (std::size_t manifold = 0; manifold < design.manifold.size(); ++manifold) {
    add_one(ports(design, plan, manifold));
    add(uneven(design, plan, manifold));
  }
  add(long_ways(floors, plan));
  add(remarks_on_aprons(design, plan));
  add(remarks_on_concrete(design, plan));
  if (design.loop.empty() || design.tube.lay_rest) return said;
  for (std::size_t room = 0; room < design.room.size(); ++room) add_one(cover(design, floors, plan, room));
  return said;
}

}  // namespace slabwright::routing
