// Floor to heat: inside the outline, and in no no-tube area or its clearance.
#pragma once
#include "slabwright/routing_layout.hpp"
#include "vectors.hpp"

namespace slabwright::routing {

inline bool in_box(const Box& box, Point p, double beyond_m) {
  return p.x_m >= box.least.x_m - beyond_m && p.x_m <= box.most.x_m + beyond_m && p.y_m >= box.least.y_m - beyond_m &&
         p.y_m <= box.most.y_m + beyond_m;
}

class OpenFloor {
 public:
  explicit OpenFloor(const LayoutTask& task) : task_(task) {
    for (const NoTubeArea& area : task.no_tube) box_.push_back(box_of(area.outline));
  }

  bool holds(Point p) const {
    if (where_is(p, task_.outline) == Where::outside) return false;
    for (std::size_t k = 0; k < box_.size(); ++k) {
      const NoTubeArea& area = task_.no_tube[k];
      if (!in_box(box_[k], p, area.clearance_m)) continue;
      if (where_is(p, area.outline) != Where::outside) return false;
      if (distance_to_boundary_m(p, area.outline) < area.clearance_m) return false;
    }
    return true;
  }

 private:
  const LayoutTask& task_;
  std::vector<Box> box_;
};

}  // namespace slabwright::routing
