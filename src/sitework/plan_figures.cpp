// What the plan tells in numbers. Dimensions: sitework/dimensions.cpp.
#include <algorithm>
#include <string>

#include "sitework/dimensions.hpp"

namespace slabwright {
namespace {

std::vector<PlanDoor> doors_of(const Design& design, const std::vector<PlanOpening>& placed) {
  std::vector<PlanDoor> doors;
  for (const PlanOpening& at : placed) {
    const Opening& opening = design.opening[at.opening];
    if (opening.kind == OpeningKind::window) continue;
    const std::string kind = opening.kind == OpeningKind::big_door ? "big door" : "door";
    doors.push_back({opening.name.empty() ? kind : opening.name, at.opening, distance_m(at.from, at.to)});
  }
  return doors;
}

std::vector<NumberedSleeve> sleeves_of(const Design& design, const LoopPlan& plan) {
  std::vector<NumberedSleeve> sleeves;
  for (std::size_t j = 0; j < design.joint.size(); ++j) {
    std::vector<NumberedSleeve> mine;
    for (const Loop& loop : plan.loop) {
      for (const JointCrossing& at : loop.crossing) {
        if (at.joint == j) mine.push_back({0, j, loop.name, at.place.x_m, at.place.y_m});
      }
    }
    const Point from{design.joint[j].from.x_m, design.joint[j].from.y_m};
    std::stable_sort(mine.begin(), mine.end(), [&](const NumberedSleeve& a, const NumberedSleeve& b) {
      return distance_m(from, {a.x_m, a.y_m}) < distance_m(from, {b.x_m, b.y_m});
    });
    for (NumberedSleeve& one : mine) {
      one.number = static_cast<int>(sleeves.size()) + 1;
      sleeves.push_back(std::move(one));
    }
  }
  return sleeves;
}

/// The number that ends a loop's name, the name itself where it is short, else its row.
std::string number_of(const Loop& loop, std::size_t row) {
  const std::size_t space = loop.name.rfind(' ');
  const std::string last = loop.name.substr(space == std::string::npos ? 0 : space + 1);
  return last.empty() || last.size() > 3 ? std::to_string(row + 1) : last;
}

std::vector<PlanLoop> loops_of(const LoopPlan& plan) {
  std::vector<PlanLoop> loops;
  std::vector<std::string> numbers;
  for (std::size_t k = 0; k < plan.loop.size(); ++k) {
    numbers.push_back(number_of(plan.loop[k], k));
    loops.push_back({plan.loop[k].name, numbers.back()});
  }
  // Two loops of one number would send a crew to the wrong port.
  std::sort(numbers.begin(), numbers.end());
  if (std::unique(numbers.begin(), numbers.end()) != numbers.end()) {
    for (std::size_t k = 0; k < loops.size(); ++k) loops[k].number = std::to_string(k + 1);
  }
  return loops;
}

}  // namespace

std::optional<PlanFigures> plan_figures(const Design& design, const LoopPlan& plan) {
  const FloorShape shape = floor_shape(design.slab);
  if (!plan.drawing || !shape.shape_known || shape.outline.size() < 3) return std::nullopt;
  sitework::Rim rim;
  for (const Place& p : shape.outline) rim.outline.push_back({p.x_m, p.y_m});
  const std::vector<PlanOpening> placed = openings_on_plan(design);
  for (const PlanOpening& at : placed) {
    if (design.opening[at.opening].kind != OpeningKind::window) rim.door.push_back({at.from, at.to});
  }
  for (const PortRow& row : plan.drawing->task.manifold) rim.manifold.push_back({row.place, row.facing});
  for (const Joint& joint : design.joint)
    rim.joint.push_back({{joint.from.x_m, joint.from.y_m}, {joint.to.x_m, joint.to.y_m}});
  PlanFigures figures;
  figures.tube_depth_m = tube_axis_depth_m(design);
  figures.dimension = sitework::dimensions_of(rim);
  const auto [left, right] =
      std::minmax_element(rim.outline.begin(), rim.outline.end(), [](Point a, Point b) { return a.x_m < b.x_m; });
  const auto [low, high] =
      std::minmax_element(rim.outline.begin(), rim.outline.end(), [](Point a, Point b) { return a.y_m < b.y_m; });
  figures.width_m = right->x_m - left->x_m;
  figures.height_m = high->y_m - low->y_m;
  figures.door = doors_of(design, placed);
  figures.sleeve = sleeves_of(design, plan);
  figures.loop = loops_of(plan);
  return figures;
}

}  // namespace slabwright
