#include "one_order.hpp"

#include <algorithm>

#include "cells.hpp"
#include "mirror.hpp"

namespace slabwright::routing {
namespace {

void mirror(Polygon& polygon) { polygon = routing::mirrored(polygon); }

LayoutTask mirror_image(LayoutTask task) {
  mirror(task.outline);
  // Edge i of the mirrored outline is edge n - 2 - i of the outline.
  auto& clearance_m = task.edge_clearance_m;
  if (!clearance_m.empty()) {
    std::reverse(clearance_m.begin(), clearance_m.end());
    std::rotate(clearance_m.begin(), clearance_m.begin() + 1, clearance_m.end());
  }
  for (NoTubeArea& area : task.no_tube) mirror(area.outline);
  for (EdgeBand& band : task.band) mirror(band.outline);
  for (LossArea& area : task.loss) mirror(area.outline);
  for (JointLine& joint : task.joint) joint = {mirrored(joint.from), mirrored(joint.to)};
  if (task.runs_along) task.runs_along = mirrored(*task.runs_along);
  for (Polygon& floor : task.own_floor) mirror(floor);
  for (PortRow& row : task.manifold) {
    row.place = mirrored(row.place);
    row.facing = mirrored(row.facing);
    for (double& at_m : row.taken_m) at_m = -at_m;
  }
  return task;
}

bool before(Point a, Point b) { return a.y_m != b.y_m ? a.y_m < b.y_m : a.x_m < b.x_m; }

std::vector<Point> sorted(std::vector<Point> points) {
  std::sort(points.begin(), points.end(), before);
  return points;
}

bool less(const std::vector<Point>& a, const std::vector<Point>& b) {
  return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(), before);
}

/// The task with one manifold only.
LayoutTask alone(const LayoutTask& task, std::size_t manifold) {
  LayoutTask one = task;
  one.manifold = {task.manifold[manifold]};
  return one;
}

/// All corners of a task, as one of its manifolds sees them.
std::vector<Point> corners_of(const LayoutTask& task, std::size_t manifold) {
  const LayoutTask seen = seen_from_manifold(alone(task, manifold));
  std::vector<Point> outline = sorted(seen.outline), areas;
  for (const NoTubeArea& area : seen.no_tube) areas.insert(areas.end(), area.outline.begin(), area.outline.end());
  areas = sorted(areas);
  outline.insert(outline.end(), areas.begin(), areas.end());
  return outline;
}

/// The manifold whose view comes first, in whichever order they are given.
std::size_t first_view(const LayoutTask& task) {
  std::size_t first = 0;
  for (std::size_t k = 1; k < task.manifold.size(); ++k) {
    if (less(corners_of(task, k), corners_of(task, first))) first = k;
  }
  return first;
}

/// The outline begins at its lowest corner, as the manifold sees it, and areas follow each other likewise.
void put_in_order(LayoutTask& task) {
  const LayoutTask seen = seen_from_manifold(alone(task, first_view(task)));
  if (seen.outline.size() == task.outline.size() && signed_area_m2(task.outline) > 0.0) {
    const auto first = std::min_element(seen.outline.begin(), seen.outline.end(), before) - seen.outline.begin();
    std::rotate(task.outline.begin(), task.outline.begin() + first, task.outline.end());
    auto& clearance_m = task.edge_clearance_m;
    if (!clearance_m.empty()) std::rotate(clearance_m.begin(), clearance_m.begin() + first, clearance_m.end());
  }
  std::vector<std::size_t> order(task.no_tube.size());
  for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return less(sorted(seen.no_tube[a].outline), sorted(seen.no_tube[b].outline));
  });
  std::vector<NoTubeArea> areas;
  for (const std::size_t k : order) areas.push_back(task.no_tube[k]);
  task.no_tube = std::move(areas);
}

}  // namespace

InOrder in_one_order(const LayoutTask& task) {
  const LayoutTask other = mirror_image(task);
  const bool is_mirrored = less(corners_of(other, first_view(other)), corners_of(task, first_view(task)));
  InOrder ordered{is_mirrored ? other : task, is_mirrored};
  put_in_order(ordered.task);
  return ordered;
}

TubeLayout mirrored(TubeLayout layout) {
  std::vector<int> loops;
  for (LaidLoop& loop : layout.loop) {
    loops.resize(std::max(loops.size(), loop.manifold + 1), 0);
    ++loops[loop.manifold];
    loop.left_first = !loop.left_first;
    loop.path = mirrored(std::move(loop.path));
    for (JointCrossing& crossing : loop.crossing) crossing.place = mirrored(crossing.place);
  }
  for (LaidLoop& loop : layout.loop) loop.port = loops[loop.manifold] + 1 - loop.port;
  std::stable_sort(layout.loop.begin(), layout.loop.end(), [](const LaidLoop& a, const LaidLoop& b) {
    return a.manifold != b.manifold ? a.manifold < b.manifold : a.port < b.port;
  });
  for (Polygon& apron : layout.apron) mirror(apron);
  return layout;
}

}  // namespace slabwright::routing
