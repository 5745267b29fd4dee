// What to try where no setting keeps frost out.
#include <fmt/format.h>

#include <algorithm>

#include "answer/pass.hpp"
#include "answer/remedy_tries.hpp"

namespace slabwright {
namespace {

using Tries = std::vector<RemedyTry>;

bool is_kept_by_none(const PlaceAtSetting& place) { return place.decides && !place.asks_air_degC; }

bool none_keeps(const Freeze& freeze, std::initializer_list<PlaceKind> kinds) {
  return std::any_of(freeze.place.begin(), freeze.place.end(), [&](const PlaceAtSetting& place) {
    return is_kept_by_none(place) && std::find(kinds.begin(), kinds.end(), place.kind) != kinds.end();
  });
}

/// The room with the thermostats, up to whose working temperature a setting may go; then rooms kept colder than it.
Tries warmer_work(const Answer& answer) {
  const Design& design = answer.file.design;
  std::size_t first = 0;
  while (first + 1 < design.room.size() && answer.floor->room[first].heated_m2 <= 0.0) ++first;
  Tries tries;
  const auto add = [&](std::size_t room) {
    RemedyTry indoor{indoor_path(answer.file, room), {}};
    for (const double by_K : {3.0, 6.0, 12.0})
      indoor.texts.push_back(
          typed_up(std::min(30.0, indoor_of(design, design.room[room]) + by_K), Dimension::degree, design.units));
    tries.push_back(std::move(indoor));
  };
  add(first);
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    if (i != first && indoor_of(design, design.room[i]) < indoor_of(design, design.room[first])) add(i);
  }
  return tries;
}

/// Where a boiler gives all it can: the room loses little more than half of what it does, or no more than a part of
/// what its floor may give.
Tries much_less_loss(const Answer& answer) {
  Tries tries;
  const auto add = [&](std::size_t i, double kept_W) {
    const double excess_W = answer.envelope->room[i].loss_W - kept_W;
    if (excess_W > 0.0) add_to(tries, less_loss(answer, i, excess_W));
  };
  for (std::size_t i = 0; i < answer.envelope->room.size(); ++i) add(i, 0.55 * answer.envelope->room[i].loss_W);
  for (const double share : {0.9, 0.4, 0.15}) {
    for (std::size_t i = 0; i < answer.envelope->room.size(); ++i)
      add(i, share * answer.floor->room[i].given_W_per_m2 * answer.floor->room[i].heated_m2);
  }
  return tries;
}

RemedyTry foam(const std::string& path, System system) {
  return {path, {insulation_text(system), thick_insulation_text(system)}};
}

}  // namespace

std::vector<RemedyTry> no_setting_tries(const Answer& answer, const Diagnostic&) {
  if (!answer.freeze || !answer.envelope || !answer.floor) return {};
  const Design& design = answer.file.design;
  const Freeze& freeze = *answer.freeze;
  Tries tries;
  if (design.slab.covering.resistance_m2K_per_W > 0.0) tries.push_back({"slab.covering", {"none"}});
  if (!freeze.beyond_boiler.empty()) tries.push_back(larger_boilers(answer));
  if (none_keeps(freeze, {PlaceKind::tube, PlaceKind::outdoor_line})) {
    if (design.fluid.kind == FluidKind::water)
      tries.push_back({"fluid.kind", {"propylene glycol"}});
    else
      tries.push_back({"fluid.glycol", {"45 %", "50 %"}});
  }
  if (none_keeps(freeze, {PlaceKind::slab_corner, PlaceKind::soil, PlaceKind::tube})) {
    tries.push_back(foam("edge.door_strip", design.units));
    tries.push_back(foam("edge.insulation", design.units));
  }
  if (none_keeps(freeze, {PlaceKind::wall_pipe})) {
    for (std::size_t i = 0; i < design.watch.size(); ++i)
      tries.push_back({fmt::format("watch[{}].toward_outdoor", i + 1), {"10 %", "5 %"}});
  }
  if (design.second_source.kind == SecondSourceKind::water_heat_pump)
    tries.push_back({"second_source.kind", {"heat pump"}});
  add_to(tries, warmer_work(answer));
  add_to(tries, much_less_loss(answer));
  return tries;
}

/// Where nobody knows the air of the room a place is in: heat there, or the place in a room that is heated.
std::vector<RemedyTry> not_called_tries(const Answer& answer, const Diagnostic&) {
  if (!answer.floor) return {};
  const Design& design = answer.file.design;
  Tries tries;
  std::vector<std::string> heated;
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    // A floor that is to be heated and has no tube, or a place in a room whose floor is not.
    const bool has_tube = answer.floor->room[i].heated_m2 > 0.0;
    if (has_tube)
      heated.push_back(design.room[i].name);
    else
      tries.push_back({fmt::format("room[{}].heated_floor", i + 1), {design.room[i].heated_floor ? "false" : "true"}});
  }
  for (std::size_t i = 0; i < design.watch.size(); ++i) tries.push_back({fmt::format("watch[{}].room", i + 1), heated});
  return tries;
}

}  // namespace slabwright
