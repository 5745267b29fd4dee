// From an answer to the values that a plan is drawn from.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "sheets/temperatures.hpp"
#include "slabwright/sheets.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

constexpr double same_line_m = 0.01;

Point point_of(const Place& place) { return {place.x_m, place.y_m}; }

Polygon polygon_of_places(const std::vector<Place>& places) {
  Polygon polygon;
  for (const Place& place : places) polygon.push_back(point_of(place));
  return polygon;
}

Point between(Point a, Point b) { return {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)}; }

/// The longest edge of the outline on the wall's line; nothing where the floor does not reach it.
std::optional<DrawnWall> edge_on(const Polygon& outline, const PlanWall& wall) {
  std::optional<DrawnWall> found;
  const double length = distance_m(wall.from, wall.to);
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const Point a = outline[k], b = outline[(k + 1) % outline.size()];
    const auto off = [&](Point p) {
      return std::abs((wall.to.x_m - wall.from.x_m) * (p.y_m - wall.from.y_m) -
                      (wall.to.y_m - wall.from.y_m) * (p.x_m - wall.from.x_m)) /
             length;
    };
    if (off(a) > same_line_m || off(b) > same_line_m) continue;
    if (!found || distance_m(a, b) > distance_m(found->from, found->to)) found = DrawnWall{a, b, wall.name};
  }
  return found;
}

/// The user's own walls, and of the plan's sides those that have no such name.
void add_walls(DrawnFloor& floor, const Design& design) {
  const std::vector<PlanWall> walls = plan_walls(design);
  for (std::size_t k = 0; k < walls.size(); ++k) {
    if (k < design.wall.size()) {
      floor.wall.push_back({walls[k].from, walls[k].to, walls[k].name});
      continue;
    }
    const auto edge = edge_on(floor.floor.outline, walls[k]);
    const bool door_wall = walls[k].name == "door wall";
    if (!edge || door_wall) continue;
    const Point middle = between(edge->from, edge->to);
    const bool named = std::any_of(floor.wall.begin(), floor.wall.end(), [&](const DrawnWall& wall) {
      return distance_to_edge_m(middle, wall.from, wall.to) < same_line_m;
    });
    if (!named) floor.wall.push_back(*edge);
  }
}

/// Away from the floor across a wall whose name is a compass word; up where none is, as the file's words take it.
struct North {
  Point way{0.0, 1.0};
  std::string words = "north as the plan has it: up";
};
North north_of(const Design& design) {
  const std::pair<std::string_view, int> quarters[] = {{"north", 0}, {"west", 1}, {"south", 2}, {"east", 3}};
  for (const PlanWall& wall : plan_walls(design)) {
    std::string word;
    for (const char c : wall.name) word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    for (const auto& [name, turns] : quarters) {
      if (word != name && word != std::string(name) + " wall") continue;
      // Out of the floor, to the right of the wall; then turned until it points north.
      Point way{wall.to.y_m - wall.from.y_m, -(wall.to.x_m - wall.from.x_m)};
      for (int k = 0; k < turns; ++k) way = {way.y_m, -way.x_m};
      return {way, "north"};
    }
  }
  return {};
}

void add_doors(DrawnFloor& floor, const Design& design) {
  for (const PlanOpening& at : openings_on_plan(design)) {
    const Opening& opening = design.opening[at.opening];
    if (opening.kind == OpeningKind::window) continue;
    const std::string kind = opening.kind == OpeningKind::big_door ? "big door" : "door";
    floor.door.push_back({at.from, at.to, opening.name.empty() ? kind : opening.name});
  }
}

void add_inside(DrawnFloor& floor, const Design& design) {
  const std::vector<PlanWall> walls = plan_walls(design);
  for (const NoTubeEntry& area : design.no_tube) {
    const Polygon outline = outline_of(area, walls);
    if (outline.size() >= 3) floor.no_tube.push_back({outline, area.name});
  }
  for (const Partition& partition : design.partition) {
    for (const Polygon& part : solid_parts(partition)) {
      floor.partition.push_back({between(part[0], part[3]), between(part[1], part[2])});
    }
  }
  for (const Room& room : design.room) {
    const Polygon outline = polygon_of_places(floor_shape(room).outline);
    if (outline.size() < 3) continue;
    if (!room.heated_floor)
      floor.no_tube.push_back({outline, room.name.empty() ? "not heated" : room.name + ", not heated"});
    else if (design.room.size() > 1)
      floor.room.push_back({room.name, outline});
  }
}

/// The number that ends a loop's name, the name itself where it is short, else its row.
std::string number_of(const Loop& loop, std::size_t row) {
  const std::size_t space = loop.name.rfind(' ');
  const std::string last = loop.name.substr(space == std::string::npos ? 0 : space + 1);
  return last.empty() || last.size() > 3 ? fmt::format("{}", row + 1) : last;
}

void add_loops(DrawnFloor& floor, const Design& design, const LoopPlan& plan) {
  for (std::size_t k = 0; k < plan.loop.size(); ++k) {
    const Loop& loop = plan.loop[k];
    if (!loop.path || loop.path->empty()) continue;
    floor.loop.push_back({number_of(loop, k), loop.manifold, fmt::format("{}", loop.port), *loop.path});
  }
  // Two loops of one number would send a crew to the wrong port.
  std::vector<std::string> numbers;
  for (const DrawnLoop& loop : floor.loop) numbers.push_back(loop.number);
  std::sort(numbers.begin(), numbers.end());
  if (std::unique(numbers.begin(), numbers.end()) != numbers.end()) {
    for (std::size_t k = 0; k < floor.loop.size(); ++k) floor.loop[k].number = fmt::format("{}", k + 1);
  }
  for (std::size_t m = 0; m < plan.drawing->task.manifold.size(); ++m) {
    const PortRow& row = plan.drawing->task.manifold[m];
    floor.manifold.push_back({m < design.manifold.size() ? design.manifold[m].name : "", row.place, row.facing});
  }
}

void add_joints(DrawnFloor& floor, const Design& design, const LoopPlan* plan) {
  int number = 0;
  for (std::size_t j = 0; j < design.joint.size(); ++j) {
    const Joint& joint = design.joint[j];
    DrawnJoint drawn{point_of(joint.from), point_of(joint.to), joint.name, {}};
    if (plan) {
      for (const Loop& loop : plan->loop) {
        for (const JointCrossing& crossing : loop.crossing) {
          if (crossing.joint == j) drawn.sleeve.push_back({crossing.place, ""});
        }
      }
    }
    std::stable_sort(drawn.sleeve.begin(), drawn.sleeve.end(), [&](const DrawnSleeve& a, const DrawnSleeve& b) {
      return distance_m(drawn.from, a.place) < distance_m(drawn.from, b.place);
    });
    for (DrawnSleeve& sleeve : drawn.sleeve) sleeve.number = fmt::format("{}", ++number);
    floor.joint.push_back(std::move(drawn));
  }
}

/// With what the guide says of each, where it was asked.
void add_anchors(DrawnFloor& floor, const Answer& answer) {
  constexpr std::string_view words[] = {"likely clear", "in doubt", "do not drill"};
  if (!answer.drill) return;
  for (const GuideAnchor& anchor : answer.drill->anchor) {
    DrawnAnchor drawn{
        fmt::format("{}: {}", anchor.name, words[static_cast<std::size_t>(anchor.word)]), {}, anchor.diameter_m};
    for (const GuideHole& hole : anchor.hole) drawn.hole.push_back({hole.place.x_m, hole.place.y_m});
    floor.anchor.push_back(std::move(drawn));
  }
}

std::vector<std::string> notes_for(const Design& design, const LoopPlan& plan) {
  const System units = design.units;
  const auto whole = [&](double m) {
    return units == System::us ? show_as(m, Dimension::length, "ft", 0) : show_as(m, Dimension::length, "m", 0);
  };
  const auto small = [&](double m) {
    return units == System::us ? length_words(m, units) : show_as(m, Dimension::length, "mm", 0);
  };
  std::vector<std::string> notes;
  notes.push_back(fmt::format("Tube: {}, {} apart, {} in all. Its axis lies {} below the top of the floor.",
                              design.tube.size.name, small(design.tube.spacing_m), whole(plan.tube_m),
                              small(tube_axis_depth_m(design))));
  for (const Joint& joint : design.joint) {
    if (!joint.saw_depth_m) continue;
    notes.push_back(fmt::format("Saw {} no deeper than {}.", joint.name.empty() ? "the joint" : joint.name,
                                small(*joint.saw_depth_m)));
  }
  for (const std::string& door : doors_without_place(design))
    notes.push_back(door + " has no place in the file: it is not drawn, and tube keeps no distance from it.");
  notes.push_back("Before anyone drills: tube may lie off the place where it is drawn. Ask the drilling guide.");
  notes.push_back("This plan lays tube. It does not engineer the concrete.");
  return notes;
}

}  // namespace

std::optional<DrawnFloor> drawn_floor(const Answer& answer) {
  const Design& design = answer.file.design;
  const FloorShape shape = floor_shape(design.slab);
  if (!shape.shape_known || shape.outline.size() < 3) return std::nullopt;
  DrawnFloor floor;
  floor.title = design.project.name.empty() ? "Heated floor" : design.project.name;
  floor.units = design.units;
  floor.floor.outline = polygon_of_places(shape.outline);
  const North north = north_of(design);
  floor.north = north.way;
  floor.north_words = north.words;
  const TubeSize* tube = find_tube(design.tube.size.name);
  floor.tube_diameter_m = tube ? tube->outside_diameter_m : 0.0;
  floor.spacing_m = design.tube.spacing_m;
  add_walls(floor, design);
  add_doors(floor, design);
  add_inside(floor, design);
  const LoopPlan* plan = answer.loops && answer.loops->drawing ? &*answer.loops : nullptr;
  add_joints(floor, design, plan);
  if (plan) {
    add_loops(floor, design, *plan);
    add_anchors(floor, answer);
    if (answer.stakes) {
      for (const StakeTip& tip : answer.stakes->tip) floor.tip.push_back({tip.place, tip.ahead, tip.line});
    }
    floor.notes = notes_for(design, *plan);
  }
  return floor;
}

std::vector<Sheet> sheets_of(const Answer& answer) {
  const auto floor = drawn_floor(answer);
  if (!floor || floor->loop.empty()) return {};
  std::vector<Sheet> sheets{{"plan.svg", svg_of(draw_plan(*floor).picture)}};
  if (answer.field)
    sheets.push_back(
        {"temperatures.svg",
         svg_of(draw_warmth(warm_floor(*floor, answer), warmth_of(*answer.field), spots_of(answer)).picture)});
  return sheets;
}

std::vector<std::string> floor_in_letters(const Answer& answer) {
  const auto floor = drawn_floor(answer);
  if (!floor || floor->loop.empty()) return {};
  return letter_map(*floor);
}

}  // namespace slabwright
