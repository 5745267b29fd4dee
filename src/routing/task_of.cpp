// A design's floor as a task for who lays tube.
#include <algorithm>
#include <cmath>

#include "slabwright/routing.hpp"
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
    if (!room.heated_floor) task.no_tube.push_back({polygon_from(room.outline), design.tube.from_walls_m});
  }
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

bool add_manifolds(const Design& design, const std::vector<PlanWall>& walls, LayoutTask& task) {
  for (const Manifold& manifold : design.manifold) {
    const auto place = manifold.place ? point_on_plan(walls, *manifold.place) : std::nullopt;
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

std::optional<LayoutTask> layout_task(const Design& design) {
  const TubeSize* size = find_tube(design.tube.size.name);
  if (!size || !has_plan(design)) return std::nullopt;
  const std::vector<PlanWall> walls = plan_walls(design);
  LayoutTask task;
  task.outline = polygon_from(floor_shape(design.slab).outline);
  task.wall_clearance_m = design.tube.from_walls_m;
  task.spacing_m = design.tube.spacing_m;
  task.bend_radius_m = design.tube.bend_radius_m.value_or(size->least_bend_radius_m);
  task.longest_loop_m = design.tube.longest_loop_m.value_or(size->longest_loop_m);
  task.exact_spacing = design.tube.fit == TubeFit::exact;
  add_no_tube(design, walls, task);
  add_doors(design, task);
  add_bands(design, walls, task);
  add_loss(design, task);
  for (const Joint& joint : design.joint) {
    task.joint.push_back({{joint.from.x_m, joint.from.y_m}, {joint.to.x_m, joint.to.y_m}});
  }
  if (!add_manifolds(design, walls, task)) return std::nullopt;
  return task;
}

const LaidTask& LaidBefore::laid(const LayoutTask& task) {
  for (const LaidTask& known : known_) {
    if (known.task == task) return known;
  }
  LaidTask made{task, lay_tube(task), {}};
  if (made.layout) made.check = check_layout(task, *made.layout.value);
  known_.push_back(std::move(made));
  return known_.back();
}

}  // namespace slabwright
