// Paper and scale.
#include "plan_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "paper.hpp"

namespace slabwright::drawn {
namespace {

constexpr double rim_m = 8.0 * mm, column_m = 60.0 * mm, column_gap_m = 3.0 * mm;
/// Room for a chevron and a number between two tubes.
constexpr double least_pitch_m = 2.4 * mm;

std::vector<int> denominators(System system) {
  if (system == System::us) return {12, 16, 24, 32, 48, 64, 96, 120, 144, 192, 240, 360, 480, 600, 1200, 2400};
  return {10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 1000, 2000};
}

/// The whole sheet with the floor in the middle of its part, at the largest scale that fits.
Frame frame_on(const DrawnFloor& plan, Paper paper, bool portrait) {
  if (portrait) std::swap(paper.width_m, paper.height_m);
  Frame frame{paper.width_m, paper.height_m, paper.name, 0, {}, {}, {}};
  frame.column = {{paper.width_m - rim_m - column_m, rim_m}, {paper.width_m - rim_m, paper.height_m - rim_m}};
  frame.plan = {{rim_m, rim_m}, {frame.column.low.x_m - column_gap_m, paper.height_m - rim_m}};
  const Box floor = box_round(plan.floor.outline);
  const double width = floor.high.x_m - floor.low.x_m, height = floor.high.y_m - floor.low.y_m;
  const double wide = frame.plan.high.x_m - frame.plan.low.x_m - 2.0 * margin_m + 3.0 * mm;
  const double high = frame.plan.high.y_m - frame.plan.low.y_m - 2.0 * margin_m;
  const double needed = std::max(width / wide, height / high);
  for (const int one : denominators(plan.units)) {
    if (frame.denominator == 0 && one >= needed * (1.0 - 1.0e-9)) frame.denominator = one;
  }
  if (frame.denominator == 0) frame.denominator = 1000 * static_cast<int>(std::ceil(needed / 1000.0));
  const double ratio = 1.0 / frame.denominator;
  frame.onto = {{0.5 * (frame.plan.low.x_m + frame.plan.high.x_m) - 0.5 * ratio * (floor.low.x_m + floor.high.x_m),
                 0.5 * (frame.plan.low.y_m + frame.plan.high.y_m) - 0.5 * ratio * (floor.low.y_m + floor.high.y_m)},
                ratio};
  return frame;
}

}  // namespace

Frame frame_for(const DrawnFloor& plan) {
  Frame best;
  for (const Paper& paper : papers(plan.units).subspan(1)) {  // an office printer's leaves too little room
    const Frame lying = frame_on(plan, paper, false), standing = frame_on(plan, paper, true);
    best = standing.denominator < lying.denominator ? standing : lying;
    if (plan.spacing_m * best.onto.ratio >= least_pitch_m || plan.loop.empty()) break;
  }
  return best;
}

}  // namespace slabwright::drawn
