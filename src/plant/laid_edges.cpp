// The slab's outline as edges, each built one way.
#include <algorithm>

#include "slabwright/plant_floor_field.hpp"

namespace slabwright {
namespace {

constexpr double same_line_m = 0.01;

Polygon outline_of_slab(const Design& design) {
  const FloorShape shape = floor_shape(design.slab);
  Polygon outline;
  if (!shape.shape_known) return outline;
  for (const Place& place : shape.outline) outline.push_back({place.x_m, place.y_m});
  return outline.size() >= 3 ? normalized(outline) : Polygon{};
}

/// The row of a door's stretch; that of the first wall where no name is asked for.
std::size_t row_of(const Envelope& envelope, EdgeKind kind, const std::string& name) {
  const auto found = std::find_if(envelope.edge.begin(), envelope.edge.end(), [&](const EdgeStretch& edge) {
    return edge.kind == kind && (kind == EdgeKind::wall || edge.name == name);
  });
  return static_cast<std::size_t>(found - envelope.edge.begin());
}

std::vector<LaidEdge> doors_of(const Design& design, const Envelope& envelope, const std::vector<ColdEdge>& cold) {
  std::vector<LaidEdge> doors;
  for (const PlanOpening& at : openings_on_plan(design)) {
    const Opening& opening = design.opening[at.opening];
    if (opening.kind != OpeningKind::big_door) continue;
    const std::size_t row = row_of(envelope, EdgeKind::big_door, opening.name.empty() ? "big door" : opening.name);
    if (row < cold.size()) doors.push_back({at.from, at.to, cold[row]});
  }
  return doors;
}

/// What doors leave of one side of the outline.
void add_walls(std::vector<LaidEdge>& walls, Point a, Point b, const std::vector<LaidEdge>& doors,
               const ColdEdge& cold) {
  struct Span {
    double from_m, to_m;
  };
  const auto on = [&](Point p) { return distance_to_edge_m(p, a, b) < same_line_m; };
  const double length = distance_m(a, b);
  std::vector<Span> spans;
  for (const LaidEdge& door : doors) {
    if (on(door.from) && on(door.to)) spans.push_back({distance_m(a, door.from), distance_m(a, door.to)});
  }
  std::sort(spans.begin(), spans.end(), [](const Span& p, const Span& q) { return p.from_m < q.from_m; });
  spans.push_back({length, length});
  const auto at = [&](double along_m) {
    const double share = along_m / length;
    return Point{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
  };
  double from_m = 0.0;
  for (const Span& span : spans) {
    if (span.from_m - from_m > same_line_m) walls.push_back({at(from_m), at(span.from_m), cold});
    from_m = std::max(from_m, span.to_m);
  }
}

}  // namespace

std::vector<LaidEdge> laid_edges(const Design& design, const Envelope& envelope, EdgeFields& fields) {
  const Polygon outline = outline_of_slab(design);
  if (outline.empty()) return {};
  const std::vector<ColdEdge> cold = cold_edges(design, envelope.edge, fields);
  std::vector<LaidEdge> edges = doors_of(design, envelope, cold), walls;
  const std::size_t wall = row_of(envelope, EdgeKind::wall, "");
  if (wall >= cold.size()) return edges;
  for (std::size_t k = 0; k < outline.size(); ++k)
    add_walls(walls, outline[k], outline[(k + 1) % outline.size()], edges, cold[wall]);
  double drawn_m = 0.0, told_m = 0.0;
  for (const LaidEdge& one : walls) drawn_m += distance_m(one.from, one.to);
  for (const EdgeStretch& edge : envelope.edge) told_m += edge.kind == EdgeKind::wall ? edge.length_m : 0.0;
  for (LaidEdge& one : walls) one.cold.length_share *= told_m / drawn_m;
  edges.insert(edges.end(), walls.begin(), walls.end());
  return edges;
}

}  // namespace slabwright
