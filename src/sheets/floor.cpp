// From an answer to the values that a plan is drawn from.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "sheets/keyed.hpp"
#include "sheets/temperatures.hpp"
#include "slabwright/drawing_dxf.hpp"
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
    if (!found || distance_m(a, b) > distance_m(found->from, found->to)) found = DrawnWall{a, b, {wall.name, ""}};
  }
  return found;
}

/// The user's own walls, and of the plan's sides those that have no such name.
void add_walls(DrawnFloor& floor, const Design& design) {
  const std::vector<PlanWall> walls = plan_walls(design);
  for (std::size_t k = 0; k < walls.size(); ++k) {
    if (k < design.wall.size()) {
      floor.wall.push_back({walls[k].from, walls[k].to, {walls[k].name, key_of_row("design.wall", k, "name")}});
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

void add_doors(DrawnFloor& floor, const Answer& answer) {
  const Design& design = answer.file.design;
  std::size_t row = 0;
  for (const PlanOpening& at : openings_on_plan(design)) {
    if (design.opening[at.opening].kind == OpeningKind::window) continue;
    if (!answer.plan || row >= answer.plan->door.size()) continue;
    const PlanDoor& door = answer.plan->door[row];
    const KeyedWords words{{door.name, key_of_row("plan.door", row, "name")},
                           {", ", ""},
                           taped(door.width_m, design.units, key_of_row("plan.door", row, "width_m"))};
    floor.door.push_back({at.from, at.to, joined(words)});
    ++row;
  }
}

void add_inside(DrawnFloor& floor, const Design& design) {
  const std::vector<PlanWall> walls = plan_walls(design);
  for (std::size_t k = 0; k < design.no_tube.size(); ++k) {
    const Polygon outline = outline_of(design.no_tube[k], walls);
    if (outline.size() < 3) continue;
    floor.no_tube.push_back({outline, named(design.no_tube[k].name, key_of_row("design.no_tube", k, "name"))});
  }
  for (const Partition& partition : design.partition) {
    for (const Polygon& part : solid_parts(partition)) {
      floor.partition.push_back({between(part[0], part[3]), between(part[1], part[2])});
    }
  }
  for (std::size_t k = 0; k < design.room.size(); ++k) {
    const Room& room = design.room[k];
    const Polygon outline = polygon_of_places(floor_shape(room).outline);
    if (outline.size() < 3) continue;
    const KeyedText name = named(room.name, key_of_row("design.room", k, "name"));
    if (!room.heated_floor)
      floor.no_tube.push_back({outline, joined({name, {room.name.empty() ? "not heated" : ", not heated", ""}})});
    else if (design.room.size() > 1)
      floor.room.push_back({name, outline});
  }
}

void add_loops(DrawnFloor& floor, const Answer& answer) {
  const Design& design = answer.file.design;
  const LoopPlan& plan = *answer.loops;
  for (std::size_t k = 0; k < plan.loop.size(); ++k) {
    const Loop& loop = plan.loop[k];
    if (!loop.path || loop.path->empty()) continue;
    floor.loop.push_back({{answer.plan->loop[k].number, key_of_row("plan.loop", k, "number")},
                          loop.manifold,
                          {fmt::format("{}", loop.port), key_of_row("loops.loop", k, "port")},
                          *loop.path,
                          run_of(loop.length_m, design.units, key_of_row("loops.loop", k, "length_m"))});
  }
  for (std::size_t m = 0; m < plan.drawing->task.manifold.size(); ++m) {
    const PortRow& row = plan.drawing->task.manifold[m];
    const std::string name = m < design.manifold.size() ? design.manifold[m].name : "";
    floor.manifold.push_back({named(name, key_of_row("design.manifold", m, "name")), row.place, row.facing});
  }
}

void add_joints(DrawnFloor& floor, const Answer& answer) {
  const std::vector<Joint>& joints = answer.file.design.joint;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    floor.joint.push_back({point_of(joints[j].from),
                           point_of(joints[j].to),
                           named(joints[j].name, key_of_row("design.joint", j, "name")),
                           {}});
  }
  if (!answer.plan) return;
  for (std::size_t k = 0; k < answer.plan->sleeve.size(); ++k) {
    const NumberedSleeve& sleeve = answer.plan->sleeve[k];
    floor.joint[sleeve.joint].sleeve.push_back(
        {{sleeve.x_m, sleeve.y_m}, {fmt::format("{}", sleeve.number), key_of_row("plan.sleeve", k, "number")}});
  }
}

/// What a tape reads along the walls.
void add_dimensions(DrawnFloor& floor, const Answer& answer) {
  for (std::size_t k = 0; k < answer.plan->dimension.size(); ++k) {
    const PlanDimension& one = answer.plan->dimension[k];
    floor.dimension.push_back(
        {static_cast<DrawnSide>(one.side),
         one.whole,
         {one.from_x_m, one.from_y_m},
         {one.to_x_m, one.to_y_m},
         taped(one.length_m, answer.file.design.units, key_of_row("plan.dimension", k, "length_m"))});
  }
}

/// The lines that the ends of U-turns touch.
void add_tips(DrawnFloor& floor, const StakeOut& stakes) {
  for (const StakeTip& tip : stakes.tip) {
    KeyedText line{tip.line, ""};
    for (const auto& [table, key] :
         {std::pair{&stakes.first, "stakes.first.line"}, {&stakes.second, "stakes.second.line"}}) {
      for (std::size_t k = 0; k < table->line.size(); ++k) {
        if (table->line[k].name == tip.line) line.key = key_of_row(key, k, "name");
      }
    }
    floor.tip.push_back({tip.place, tip.ahead, line});
  }
}

/// With what the guide says of each, where it was asked.
void add_anchors(DrawnFloor& floor, const Answer& answer) {
  if (!answer.drill) return;
  for (std::size_t k = 0; k < answer.drill->anchor.size(); ++k) {
    const GuideAnchor& anchor = answer.drill->anchor[k];
    DrawnAnchor drawn{joined({{anchor.name, key_of_row("drill.anchor", k, "name")},
                              {": ", ""},
                              {std::string(drilling_words(anchor.word)), key_of_row("drill.anchor", k, "word")}}),
                      {},
                      anchor.diameter_m};
    for (const GuideHole& hole : anchor.hole) drawn.hole.push_back({hole.place.x_m, hole.place.y_m});
    floor.anchor.push_back(std::move(drawn));
  }
}

std::vector<KeyedWords> notes_for(const Answer& answer) {
  const Design& design = answer.file.design;
  const System units = design.units;
  std::vector<KeyedWords> notes;
  const KeyedText all{units == System::us ? show_as(answer.loops->tube_m, Dimension::length, "ft", 0)
                                          : show_as(answer.loops->tube_m, Dimension::length, "m", 0),
                      "loops.tube_m"};
  notes.push_back({{"Tube: ", ""},
                   {design.tube.size.name, "design.tube.size"},
                   {", ", ""},
                   small_of(design.tube.spacing_m, units, "design.tube.spacing_m"),
                   {" apart, ", ""},
                   all,
                   {" in all. Its axis lies ", ""},
                   small_of(answer.plan->tube_depth_m, units, "plan.tube_depth_m"),
                   {" below the top of the floor.", ""}});
  for (std::size_t j = 0; j < design.joint.size(); ++j) {
    const Joint& joint = design.joint[j];
    if (!joint.saw_depth_m) continue;
    notes.push_back({{"Saw ", ""},
                     named_or(joint.name, key_of_row("design.joint", j, "name"), "the joint"),
                     {" no deeper than ", ""},
                     small_of(*joint.saw_depth_m, units, key_of_row("design.joint", j, "saw_depth_m")),
                     {".", ""}});
  }
  for (const KeyedText& door : doors_without_place(design)) {
    notes.push_back({door, {" has no place in the file: it is not drawn, and tube keeps no distance from it.", ""}});
  }
  notes.push_back(
      {{"Before anyone drills: tube may lie off the place where it is drawn. Ask the drilling guide.", ""}});
  notes.push_back({{"This plan lays tube. It does not engineer the concrete.", ""}});
  return notes;
}

}  // namespace

std::optional<DrawnFloor> drawn_floor(const Answer& answer) {
  const Design& design = answer.file.design;
  const FloorShape shape = floor_shape(design.slab);
  if (!shape.shape_known || shape.outline.size() < 3) return std::nullopt;
  DrawnFloor floor;
  floor.title = {named_or(design.project.name, "design.project.name", "Heated floor")};
  floor.units = design.units;
  floor.floor.outline = polygon_of_places(shape.outline);
  const North north = north_of(design);
  floor.north = north.way;
  floor.north_words = north.words;
  const TubeSize* tube = find_tube(design.tube.size.name);
  floor.tube_diameter_m = tube ? tube->outside_diameter_m : 0.0;
  floor.spacing_m = design.tube.spacing_m;
  add_walls(floor, design);
  add_doors(floor, answer);
  add_inside(floor, design);
  add_joints(floor, answer);
  if (answer.plan) {
    add_loops(floor, answer);
    add_dimensions(floor, answer);
    add_anchors(floor, answer);
    if (answer.stakes) add_tips(floor, *answer.stakes);
    floor.notes = notes_for(answer);
  }
  return floor;
}

std::vector<Sheet> sheets_of(const Answer& answer) {
  const auto floor = drawn_floor(answer);
  if (!floor || floor->loop.empty()) return {};
  const PlanSheet plan = draw_plan(*floor);
  std::vector<Sheet> sheets{{"plan.svg", svg_of(plan.picture)},
                            {"plan.dxf", dxf_of(plan.picture, {plan.zero, plan.scale_ratio, floor->units})}};
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
