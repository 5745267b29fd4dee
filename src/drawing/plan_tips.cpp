// The ends of U-turns on the plan: a bar on the line that is snapped for them, and its name.
#include <algorithm>
#include <cmath>

#include "plan_parts.hpp"

namespace slabwright::drawn {
namespace {

constexpr double bar_pen_m = 0.3 * mm;
/// Ends side by side on one line are named once.
constexpr double beside_ratio = 2.6, same_way = 0.99, level_m = 0.01;

/// Just beyond the tube.
double off_m(const TubePens& pens) { return 0.5 * pens.width_m + 0.5 * bar_pen_m + 0.1 * mm; }

Trace bar(Point tip, Point ahead, double half_m, const TubePens& pens) {
  const Point middle = shifted(tip, ahead, off_m(pens));
  return stroke(shifted(middle, across(ahead), -half_m), shifted(middle, across(ahead), half_m),
                {bar_pen_m, dark, Dash::solid});
}

bool next_to(const DrawnTip& a, const DrawnTip& b, double reach_m) {
  const bool alike = a.line.text == b.line.text && a.ahead.x_m * b.ahead.x_m + a.ahead.y_m * b.ahead.y_m > same_way;
  const double level = (b.place.x_m - a.place.x_m) * a.ahead.x_m + (b.place.y_m - a.place.y_m) * a.ahead.y_m;
  return alike && std::abs(level) < level_m && distance_m(a.place, b.place) <= reach_m;
}

/// Ends that one name serves.
std::vector<std::vector<std::size_t>> side_by_side(const std::vector<DrawnTip>& tips, double reach_m) {
  std::vector<std::vector<std::size_t>> groups;
  std::vector<char> taken(tips.size(), 0);
  for (std::size_t i = 0; i < tips.size(); ++i) {
    if (taken[i] != 0) continue;
    std::vector<std::size_t> group{i};
    taken[i] = 1;
    for (std::size_t g = 0; g < group.size(); ++g) {
      for (std::size_t k = i + 1; k < tips.size(); ++k) {
        if (taken[k] != 0 || !next_to(tips[group[g]], tips[k], reach_m)) continue;
        taken[k] = 1;
        group.push_back(k);
      }
    }
    groups.push_back(std::move(group));
  }
  return groups;
}

/// Beyond the bar and along it; then between the legs, along them.
void add_spots(std::vector<LabelSpot>& spots, const Label& label, Point tip, Point ahead, const TubePens& pens) {
  const bool legs_upright = std::abs(ahead.y_m) > std::abs(ahead.x_m);
  const double half_h = 0.5 * label.wish.height_m, half_w = 0.5 * label.wish.width_m;
  for (const double away : {0.5 * mm, 0.9 * mm})
    spots.push_back({shifted(tip, ahead, off_m(pens) + away + half_h), !legs_upright});
  for (const double back : {1.0 * mm, 2.2 * mm, 3.6 * mm})
    spots.push_back({shifted(tip, ahead, -0.5 * pens.width_m - back - half_w), legs_upright});
}

}  // namespace

Part tip_part(const DrawnFloor& plan, const Onto& onto, const TubePens& pens) {
  Part part;
  const double pitch_m = onto.ratio * plan.spacing_m, half_m = std::min(1.3 * mm, 0.4 * pitch_m);
  for (const DrawnTip& tip : plan.tip) {
    const Point at = onto(tip.place), middle = shifted(at, tip.ahead, off_m(pens));
    part.shape.push_back(bar(at, tip.ahead, half_m, pens));
    part.obstacle.push_back({shifted(middle, across(tip.ahead), -half_m), shifted(middle, across(tip.ahead), half_m),
                             0.5 * bar_pen_m + 0.1 * mm, Hardness::mark});
  }
  for (const auto& group : side_by_side(plan.tip, beside_ratio * plan.spacing_m)) {
    Label label = label_of(plan.tip[group.front()].line, small_text_m, onto(plan.tip[group.front()].place));
    label.may_lack = true;
    for (const std::size_t row : group)
      add_spots(label.wish.spot, label, onto(plan.tip[row].place), plan.tip[row].ahead, pens);
    part.label.push_back(std::move(label));
  }
  return part;
}

std::vector<SheetShape> tip_sample(const TubePens& pens) {
  const double half = 1.5 * mm;
  const Path turn{line({-4.0 * mm, half}, {0.0, half}), arc({0.0, half}, {0.0, -half}, {0.0, 0.0}, Side::right),
                  line({0.0, -half}, {-4.0 * mm, -half})};
  return {Trace{turn, {pens.width_m, dark, Dash::solid}}, bar({half, 0.0}, {1.0, 0.0}, 1.3 * mm, pens)};
}

}  // namespace slabwright::drawn
