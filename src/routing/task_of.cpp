// A design's floor as a task for who lays tube.
#include <algorithm>
#include <cmath>

#include "lay_out.hpp"
#include "slabwright/tube.hpp"
#include "vectors.hpp"

namespace slabwright {
namespace {

/// Ports that a manifold may be bought with.
constexpr double most_ports = 60.0;
/// Floor this near to an outer wall loses about this many times as much as the rest (practice), where loops are
/// balanced by heat.
constexpr double edge_strip_m = 1.0, edge_loss_ratio = 2.0;
/// A stand-off that no tube keeps from a wall anyway is none.
constexpr double hair_m = 1e-6;

Polygon polygon_from(const std::vector<Place>& outline) {
  Polygon polygon;
  for (const Place& p : outline) polygon.push_back({p.x_m, p.y_m});
  return polygon;
}

/// The floor up to so far inside a line on the outline.
Polygon strip(Point from, Point to, Point inward, double depth_m) {
  return {from, to, routing::moved(to, inward, depth_m), routing::moved(from, inward, depth_m)};
}

Point inward_of(Point from, Point to) {
  const double length = distance_m(from, to);
  return {-(to.y_m - from.y_m) / length, (to.x_m - from.x_m) / length};
}

/// Whether the design says enough to draw, its manifolds' places aside.
bool has_plan(const Design& design) {
  const bool listed =
      std::any_of(design.loop.begin(), design.loop.end(), [](const LoopEntry& l) { return l.path.empty(); });
  if (!design.loop.empty() && !design.tube.lay_rest) return !listed && floor_shape(design.slab).shape_known;
  const bool counted = std::any_of(design.manifold.begin(), design.manifold.end(),
                                   [](const Manifold& m) { return m.loops_number && !m.place; });
  const bool shaped = design.room.size() == 1 || std::all_of(design.room.begin(), design.room.end(), [](const Room& r) {
                        return !floor_shape(r).outline.empty() && !r.outline.empty();
                      });
  const bool heated = std::any_of(design.room.begin(), design.room.end(), [](const Room& r) { return r.heated_floor; });
  return floor_shape(design.slab).shape_known && shaped && heated && !listed && !counted;
}

void add_no_tube(const Design& design, const std::vector<PlanWall>& walls, LayoutTask& task) {
  for (const NoTubeEntry& area : design.no_tube) {
    const Polygon outline = outline_of(area, walls);
    if (outline.size() >= 3) task.no_tube.push_back({outline, area.clearance_m});
  }
  for (const Partition& partition : design.partition) {
    for (const Polygon& part : solid_parts(partition)) task.no_tube.push_back({part, partition.clearance_m});
  }
  for (const Room& room : design.room) {
    if (!room.heated_floor && room.outline.size() >= 3)
      task.no_tube.push_back({polygon_from(room.outline), design.tube.from_walls_m});
  }
}

/// Tube ends on both sides of a border as it ends where two loops meet: half a spacing off it.
void add_borders(const Design& design, LayoutTask& task) {
  constexpr double half_m = 0.001;
  for (const Border& border : design.border) {
    const Point from{border.from.x_m, border.from.y_m}, to{border.to.x_m, border.to.y_m};
    const Point left = inward_of(from, to), right{-left.x_m, -left.y_m};
    task.no_tube.push_back({{routing::moved(from, right, half_m), routing::moved(to, right, half_m),
                             routing::moved(to, left, half_m), routing::moved(from, left, half_m)},
                            0.5 * task.spacing_m - half_m});
  }
}

/// Along the longer side of the box round the slab, or its shorter one.
std::optional<Point> runs_along(const Design& design, const Polygon& outline) {
  if (design.tube.runs == Runs::as_they_fit) return std::nullopt;
  const routing::Box box = routing::box_of(outline);
  const bool wide = box.most.x_m - box.least.x_m >= box.most.y_m - box.least.y_m;
  return wide == (design.tube.runs == Runs::lengthwise) ? Point{1.0, 0.0} : Point{0.0, 1.0};
}

/// Big doors keep tube off by more than walls do.
void add_doors(const Design& design, LayoutTask& task) {
  for (const PlanOpening& at : openings_on_plan(design)) {
    const Opening& opening = design.opening[at.opening];
    if (opening.kind == OpeningKind::big_door) {
      const double off_m = opening.tube_distance_m.value_or(design.tube.from_doors_m);
      if (off_m > design.tube.from_walls_m + hair_m)
        task.no_tube.push_back({strip(at.from, at.to, at.inward, off_m), 0.0});
    }
    if (!opening.tube_spacing_m || !opening.band_width_m) continue;
    task.band.push_back({strip(at.from, at.to, at.inward, *opening.band_width_m), *opening.tube_spacing_m});
  }
}

void add_bands(const Design& design, const std::vector<PlanWall>& walls, LayoutTask& task) {
  for (const WallEntry& wall : design.wall) {
    const PlanWall* at = find_wall(walls, wall.name);
    if (!wall.tube_spacing_m || !wall.band_width_m || !at) continue;
    task.band.push_back(
        {strip(at->from, at->to, inward_of(at->from, at->to), *wall.band_width_m), *wall.tube_spacing_m});
  }
}

void add_loss(const Design& design, LayoutTask& task) {
  if (design.tube.balance_by == BalanceBy::length) return;
  for (std::size_t i = 0; i < task.outline.size(); ++i) {
    const Point from = task.outline[i], to = task.outline[i + 1 < task.outline.size() ? i + 1 : 0];
    task.loss.push_back({strip(from, to, inward_of(from, to), edge_strip_m), edge_loss_ratio});
  }
}

Point facing_of(const Manifold& manifold, Point place, const Polygon& outline) {
  switch (manifold.facing) {
    case Facing::up: return {0.0, 1.0};
    case Facing::down: return {0.0, -1.0};
    case Facing::left: return {-1.0, 0.0};
    case Facing::right: return {1.0, 0.0};
    case Facing::away_from_wall: break;
  }
  Point facing{0.0, 1.0};
  double least_m = HUGE_VAL;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point from = outline[i], to = outline[i + 1 < outline.size() ? i + 1 : 0];
    const double away_m = distance_to_edge_m(place, from, to);
    if (away_m >= least_m) continue;
    least_m = away_m;
    facing = inward_of(from, to);
  }
  return facing;
}

/// Between the ends of its drawn loops, for a manifold whose place nobody gave.
std::optional<Point> between_ends(const LayoutTask& task, std::size_t manifold) {
  Point sum;
  double ends = 0.0;
  for (const GivenLoop& loop : task.drawn) {
    if (loop.manifold != manifold) continue;
    for (const Point end : {loop.corner.front(), loop.corner.back()}) {
      sum = {sum.x_m + end.x_m, sum.y_m + end.y_m};
      ends += 1.0;
    }
  }
  if (ends == 0.0) return std::nullopt;
  return Point{sum.x_m / ends, sum.y_m / ends};
}

void add_drawn(const Design& design, LayoutTask& task) {
  task.rest_is_laid = design.tube.lay_rest;
  for (const LoopEntry& entry : design.loop) {
    if (entry.path.empty()) continue;
    GivenLoop loop;
    const auto named = std::find_if(design.manifold.begin(), design.manifold.end(),
                                    [&](const Manifold& m) { return m.name == entry.manifold; });
    if (!entry.manifold.empty() && named != design.manifold.end())
      loop.manifold = static_cast<std::size_t>(named - design.manifold.begin());
    loop.corner = polygon_from(entry.path);
    const bool leaders_added = entry.leaders && !entry.leaders->included;
    loop.ends_at_ports = design.manifold[loop.manifold].place.has_value() && !leaders_added;
    task.drawn.push_back(std::move(loop));
  }
}

bool add_manifolds(const Design& design, const std::vector<PlanWall>& walls, LayoutTask& task) {
  for (const Manifold& manifold : design.manifold) {
    auto place = manifold.place ? point_on_plan(walls, *manifold.place) : std::nullopt;
    if (!place) place = between_ends(task, task.manifold.size());
    // One that no drawn loop leaves stands anywhere, and nothing is laid from it.
    if (!place && !task.rest_is_laid) place = task.outline.front();
    if (!place) return false;
    PortRow row;
    row.place = *place;
    row.facing = facing_of(manifold, *place, task.outline);
    row.port_pitch_m = manifold.port_pitch_m;
    row.loops_number = static_cast<int>(std::lround(manifold.ports_number.value_or(most_ports)));
    if (manifold.loops_number) {
      row.loops_wanted_number = std::min(row.loops_number, static_cast<int>(std::lround(*manifold.loops_number)));
    }
    task.manifold.push_back(row);
  }
  return true;
}

}  // namespace

namespace routing {

std::optional<LayoutTask> task_on_plan(const Design& design) {
  const TubeSize* size = find_tube(design.tube.size.name);
  if (!size || !floor_shape(design.slab).shape_known) return std::nullopt;
  const std::vector<PlanWall> walls = plan_walls(design);
  LayoutTask task;
  task.outline = polygon_from(floor_shape(design.slab).outline);
  task.wall_clearance_m = design.tube.from_walls_m;
  task.spacing_m = design.tube.spacing_m;
  task.bend_radius_m = design.tube.bend_radius_m.value_or(size->least_bend_radius_m);
  task.longest_loop_m = design.tube.longest_loop_m.value_or(size->longest_loop_m);
  task.exact_spacing = design.tube.fit == TubeFit::exact;
  add_no_tube(design, walls, task);
  add_borders(design, task);
  for (const Room& room : design.room) {
    if (room.own_loops && room.heated_floor && room.outline.size() >= 3 && design.room.size() > 1)
      task.own_floor.push_back(polygon_from(room.outline));
  }
  task.runs_along = runs_along(design, task.outline);
  add_doors(design, task);
  add_bands(design, walls, task);
  add_loss(design, task);
  for (const Joint& joint : design.joint) {
    task.joint.push_back({{joint.from.x_m, joint.from.y_m}, {joint.to.x_m, joint.to.y_m}});
  }
  if (!design.loop.empty()) add_drawn(design, task);
  if (!add_manifolds(design, walls, task)) return std::nullopt;
  return task;
}

}  // namespace routing

std::optional<LayoutTask> layout_task(const Design& design) {
  return has_plan(design) ? routing::task_on_plan(design) : std::nullopt;
}

const LaidTask* LaidBefore::find(const LayoutTask& task) const {
  const auto known = std::find_if(known_.begin(), known_.end(), [&](const LaidTask& one) { return one.task == task; });
  return known == known_.end() ? nullptr : &*known;
}

const LaidTask& LaidBefore::laid(const LayoutTask& task, const Progress& progress) {
  if (const LaidTask* known = find(task)) return *known;
  LaidTask made{task, lay_tube(task, progress), {}};
  if (made.layout) made.check = check_layout(task, *made.layout.value);
  known_.push_back(std::move(made));
  return known_.back();
}

}  // namespace slabwright
