// What to try where no setting keeps frost out, or where a layout is not found.
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

/// The room with the thermostats, up to whose working temperature a setting may go.
RemedyTry warmer_work(const Answer& answer) {
  const Design& design = answer.file.design;
  std::size_t room = 0;
  while (room + 1 < design.room.size() && answer.floor->room[room].heated_m2 <= 0.0) ++room;
  RemedyTry indoor{indoor_path(answer.file, room), {}};
  for (const double by_K : {3.0, 6.0, 12.0})
    indoor.texts.push_back(
        typed_up(std::min(30.0, indoor_of(design, design.room[room]) + by_K), Dimension::degree, design.units));
  return indoor;
}

/// Where a boiler gives all it can: the room loses half of what it does, or a small part of it.
Tries much_less_loss(const Answer& answer) {
  Tries tries;
  for (const double excess : {0.5, 0.95, 0.998}) {
    for (std::size_t i = 0; i < answer.envelope->room.size(); ++i) {
      const Tries more = less_loss(answer, i, excess * answer.envelope->room[i].loss_W);
      tries.insert(tries.end(), more.begin(), more.end());
    }
  }
  return tries;
}

RemedyTry foam(const std::string& path, System system) {
  return {path, {insulation_text(system), thick_insulation_text(system)}};
}

Tries for_no_setting(const Answer& answer) {
  const Design& design = answer.file.design;
  const Freeze& freeze = *answer.freeze;
  Tries tries;
  if (design.slab.covering.resistance_m2K_per_W > 0.0) tries.push_back({"slab.covering", {"none"}});
  if (!freeze.beyond_boiler.empty()) tries.push_back(larger_boilers(answer));
  if (none_keeps(freeze, {PlaceKind::tube, PlaceKind::outdoor_line})) {
    if (design.fluid.kind == FluidKind::water) tries.push_back({"fluid.kind", {"propylene glycol"}});
    tries.push_back({"fluid.glycol", {"45 %", "55 %"}});
  }
  if (none_keeps(freeze, {PlaceKind::slab_corner, PlaceKind::soil, PlaceKind::tube})) {
    tries.push_back(foam("edge.door_strip", design.units));
    tries.push_back(foam("edge.insulation", design.units));
  }
  if (none_keeps(freeze, {PlaceKind::wall_pipe})) {
    for (std::size_t i = 0; i < design.watch.size(); ++i)
      tries.push_back({fmt::format("watch[{}].toward_outdoor", i + 1), {"5 %", "0 %"}});
  }
  if (design.second_source.kind == SecondSourceKind::water_heat_pump)
    tries.push_back({"second_source.kind", {"heat pump"}});
  tries.push_back(warmer_work(answer));
  const Tries less = much_less_loss(answer);
  tries.insert(tries.end(), less.begin(), less.end());
  return tries;
}

/// Where nobody knows the air of the room a place is in: heat there, or the place in a room that is heated.
Tries for_not_called(const Answer& answer) {
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

/// Whole numbers from one to another.
std::vector<std::string> counts(int from, int to) {
  std::vector<std::string> texts;
  for (int i = from; i <= to; ++i) texts.push_back(fmt::format("{}", i));
  return texts;
}

/// Loops of less floor, another spacing or another place of the ports may find a way.
Tries for_no_way(const Answer& answer, const std::string& manifold) {
  const Design& design = answer.file.design;
  const bool us = design.units == System::us;
  Tries tries;
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    if (design.room[i].own_loops) tries.push_back({fmt::format("room[{}].own_loops", i + 1), {"false"}});
  }
  const std::string row = manifold == "manifold" || manifold.find('[') == std::string::npos ? "manifold[1]" : manifold;
  tries.push_back({row + ".port_pitch", {us ? "2 in" : "50 mm"}});
  tries.push_back({"tube.spacing", typed_up(design.tube.spacing_m, {1.25, 1.6}, Dimension::length, design.units)});
  tries.push_back({row + ".loops", counts(1, 3)});
  tries.push_back({"tube.spacing", typed_down(design.tube.spacing_m, {0.8}, Dimension::length, design.units)});
  tries.push_back({row + ".facing", {"up", "down", "left", "right"}});
  return tries;
}

}  // namespace

std::vector<RemedyTry> frost_tries(const Answer& answer, const Diagnostic& said) {
  if (!answer.freeze || !answer.envelope || !answer.floor) return {};
  if (said.code == "freeze.boiler-too-small") return {larger_boilers(answer)};
  if (said.code == "freeze.no-setting") return for_no_setting(answer);
  if (said.code == "freeze.cannot-be-called") return for_not_called(answer);
  return {};
}

std::vector<RemedyTry> layout_tries(const Answer& answer, const Diagnostic& said) {
  const System system = answer.file.design.units;
  if (said.code == "layout.bend-too-wide")
    return {
        {"tube.spacing", typed_up(std::get<Measured>(said.parts[2]).si, {1.0, 1.1, 1.3}, Dimension::length, system)},
        {"tube.bend_radius", typed_down(answer.file.design.tube.spacing_m, {0.9, 0.5}, Dimension::length, system)}};
  if (said.code == "layout.too-few-ports") {
    const int loops = std::stoi(std::get<std::string>(said.parts[2]));
    return {{"manifold[1].ports", counts(loops, loops + 2)}};
  }
  if (said.code == "layout.round-drawn") return {{"tube.lay_rest", {"false"}}};
  for (const char* code : {"layout.no-floor", "layout.no-apron", "layout.not-shared-out", "layout.not-parted",
                           "layout.no-port-left", "layout.own-loops"})
    if (said.code == code) return for_no_way(answer, said.about);
  return {};
}

}  // namespace slabwright
