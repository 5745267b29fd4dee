// Loops whose lengths stand in the file.
#include <fmt/format.h>

#include <algorithm>

#include "lay_out.hpp"

namespace slabwright::routing {
namespace {

/// A loop's own row in the design file.
std::string row_of(std::size_t loop, std::string_view word) { return fmt::format("loop[{}].{}", loop + 1, word); }

/// The row that bears this name; the first where none is named; `rows.size()` where there is no such row.
template <class Row>
std::size_t named(const std::vector<Row>& rows, const std::string& name, std::size_t first) {
  if (name.empty()) return first;
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.name == name; });
  return static_cast<std::size_t>(found - rows.begin());
}

Diagnostic unknown(std::size_t loop, std::string_view word, const std::string& name) {
  return {Severity::problem,
          fmt::format("loop.unknown-{}", word),
          row_of(loop, word),
          fmt::format("the design has no {} \"{{}}\"", word),
          {name}};
}

Diagnostic in_unheated(std::size_t loop, const std::string& room) {
  return {Severity::problem,
          "loop.in-unheated-room",
          row_of(loop, "room"),
          "a loop lies in {}, whose floor is said not to be heated: take out one of the two",
          {room}};
}

Diagnostic shorter_than_leaders(std::size_t at, const Loop& loop, double leader_m) {
  return {
      Severity::warning,
      "loop.shorter-than-leaders",
      row_of(at, "length"),
      "{} is {} long, no more than its leaders to and from the manifold ({} each way): it heats no floor of its own",
      {loop.name, Measured{loop.length_m, Dimension::length}, Measured{leader_m, Dimension::length}}};
}

}  // namespace

Checked<std::vector<Loop>> loops_as_listed(const Design& design, const Floors& floors) {
  std::vector<Loop> loops;
  Overlay overlay = loops_on_paths(design);
  std::vector<Diagnostic> said = std::move(overlay.said);
  for (std::size_t i = 0; i < design.loop.size(); ++i) {
    const LoopEntry& entry = design.loop[i];
    const std::size_t room = named(design.room, entry.room, floors.manifold_room);
    const std::size_t manifold = named(design.manifold, entry.manifold, 0);
    if (room == design.room.size()) said.push_back(unknown(i, "room", entry.room));
    if (manifold == design.manifold.size()) said.push_back(unknown(i, "manifold", entry.manifold));
    if (room < design.room.size() && !design.room[room].heated_floor)
      said.push_back(in_unheated(i, design.room[room].name));
    if (any(said, Severity::problem)) continue;
    if (overlay.loop[i]) {
      loops.push_back(std::move(*overlay.loop[i]));
      continue;
    }

    // "Included" says nothing of how long the leaders are, nor does silence: those of the tube are taken.
    const bool added = entry.leaders && !entry.leaders->included;
    const double leader_m = added ? entry.leaders->each_way_m : std::min(floors.leader_m, entry.length_m / 2.0);
    const double patch_m = added ? entry.length_m : entry.length_m - 2.0 * leader_m;
    Loop loop = lay(floors, leader_m, {{room, 0.0, patch_m, false}});
    loop.name = entry.name.empty() ? fmt::format("loop {}", i + 1) : entry.name;
    loop.manifold = manifold;
    loop.from = LengthFrom::file;
    loop.entry = i;
    if (patch_m <= 0.0) said.push_back(shorter_than_leaders(i, loop, floors.leader_m));
    loops.push_back(std::move(loop));
  }
  if (any(said, Severity::problem)) return {std::nullopt, std::move(said)};
  return {std::move(loops), std::move(said)};
}

}  // namespace slabwright::routing
