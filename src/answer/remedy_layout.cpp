// What to try where tube cannot be laid, or no way is found for it.
#include <fmt/format.h>

#include "slabwright/units_exact.hpp"

#include "answer/remedy_tries.hpp"

namespace slabwright {
namespace {

using Tries = std::vector<RemedyTry>;

/// Middles of walls, for a manifold that has no way out where it stands.
RemedyTry other_walls(const Design& design, const std::string& manifold) {
  const bool us = design.units == System::us;
  RemedyTry places{manifold + ".place", {}};
  for (const PlanWall& wall : plan_walls(design)) {
    const double x_m = 0.5 * (wall.from.x_m + wall.to.x_m), y_m = 0.5 * (wall.from.y_m + wall.to.y_m);
    const auto shown_in = [&](double m) { return us ? m / foot_m : m; };
    places.texts.push_back(fmt::format("{:.1f}, {:.1f} {}", shown_in(x_m), shown_in(y_m), us ? "ft" : "m"));
  }
  return places;
}

/// Fewer loops want less room before the manifold.
RemedyTry longer_loops(const Answer& answer) {
  const Design& design = answer.file.design;
  const double now_m = design.tube.longest_loop_m.value_or(0.0);
  return {"tube.longest_loop", typed_up(now_m, {1.5, 2.5}, Dimension::length, design.units)};
}

}  // namespace

std::vector<RemedyTry> wide_bend_tries(const Answer& answer, const Diagnostic& said) {
  const Design& design = answer.file.design;
  const double wide_enough_m = std::get<Measured>(said.parts[2]).si, too_close_m = std::get<Measured>(said.parts[1]).si;
  Tries tries;
  // Closer tube along a wall or before a door may be what is too close.
  const auto add_band = [&](const char* section, std::size_t i, const std::optional<double>& spacing_m) {
    if (spacing_m && *spacing_m < wide_enough_m)
      tries.push_back({fmt::format("{}[{}].tube_spacing", section, i + 1),
                       typed_up(wide_enough_m, {1.0, 1.1}, Dimension::length, design.units)});
  };
  for (std::size_t i = 0; i < design.opening.size(); ++i) add_band("opening", i, design.opening[i].tube_spacing_m);
  for (std::size_t i = 0; i < design.wall.size(); ++i) add_band("wall", i, design.wall[i].tube_spacing_m);
  tries.push_back({"tube.spacing", typed_up(wide_enough_m, {1.0, 1.1, 1.3}, Dimension::length, design.units)});
  tries.push_back({"tube.bend_radius", typed_down(too_close_m, {0.9, 0.5}, Dimension::length, design.units)});
  return tries;
}

std::vector<RemedyTry> few_port_tries(const Answer&, const Diagnostic& said) {
  const int loops = std::stoi(std::get<std::string>(said.parts[2]));
  return {{"manifold[1].ports", typed_counts(loops, loops + 2)}};
}

std::vector<RemedyTry> round_drawn_tries(const Answer&, const Diagnostic&) { return {{"tube.lay_rest", {"false"}}}; }

/// Loops of less floor, another spacing or another place of the ports may find a way.
std::vector<RemedyTry> no_way_tries(const Answer& answer, const Diagnostic& said) {
  const Design& design = answer.file.design;
  const bool us = design.units == System::us;
  Tries tries;
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    if (design.room[i].own_loops) tries.push_back({fmt::format("room[{}].own_loops", i + 1), {"false"}});
  }
  const std::string row = said.about.compare(0, 9, "manifold[") == 0 ? said.about : "manifold[1]";
  tries.push_back({row + ".port_pitch", {us ? "2 in" : "50 mm"}});
  if (design.tube.longest_loop_m) tries.push_back(longer_loops(answer));
  tries.push_back({"tube.spacing", typed_up(design.tube.spacing_m, {1.25, 1.6}, Dimension::length, design.units)});
  tries.push_back({row + ".loops", typed_counts(1, 3)});
  tries.push_back({"tube.spacing", typed_down(design.tube.spacing_m, {0.8}, Dimension::length, design.units)});
  tries.push_back({row + ".facing", {"up", "down", "left", "right"}});
  tries.push_back(other_walls(design, row));
  return tries;
}

}  // namespace slabwright
