// Rows of tubes laid on a plan are the rows that conduction_tube_row.hpp knows exactly: at the spacing that the slab
// was made ready for, at others, straight or askew among the cells.
#include <rapidcheck.h>

#include <algorithm>
#include <numbers>

#include "plan_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Water over all else, so that a share of a weight is 0.05 K in 20.
constexpr double water_K = 20.0;

TubeRowResponse exact(TubeRow row, double spacing_m) {
  row.spacing_m = spacing_m;
  return tube_row_responses(row, {tube_mK_per_W}, {1e-6}).front();
}

/// Slabs that a shop may have: tube at mid-depth, on the foam, in a thick slab, in a thin one without foam.
std::vector<TubeRow> slabs() {
  TubeRow on_foam = five_inch_slab(), thick = five_inch_slab(), thin = five_inch_slab();
  on_foam.axis_depth_m = 0.119;
  thick.layers[0].thickness_m = 0.2032;
  thick.axis_depth_m = 0.1016;
  thin.layers = {{0.1016, 1.75}};
  thin.axis_depth_m = 0.0508;
  return {five_inch_slab(), on_foam, thick, thin};
}

struct Seen {
  double heat_W_per_m, over_K;
};

/// The middle line of a field of lines at an angle, far from where they end.
Seen askew(const TubeRow& row, double spacing_m, double angle_deg) {
  const double cell_m = row.spacing_m / 4.0, side_m = std::ceil(2.6 / cell_m) * cell_m;
  const double angle = angle_deg * std::numbers::pi / 180.0, c = std::cos(angle), s = std::sin(angle);
  const PlanSlab slab = plan_slab(row, tube_mK_per_W, cell_m);
  const PlanFloor floor = floor_of(side_m, side_m, cell_m, cell_of(row));
  std::vector<PlanTube> tubes;
  const double middle = 0.5 * side_m, reach_m = 1.1;
  const int lines = static_cast<int>(reach_m / spacing_m);
  for (int n = -lines; n <= lines; ++n) {
    const double off = n * spacing_m + 0.31 * cell_m, half = std::sqrt(1.2 * 1.2 - off * off);
    const double x = middle - s * off, y = middle + c * off;
    tubes.push_back(tube_along({{x - c * half, y - s * half}, {x + c * half, y + s * half}}, water_K, endless_W_per_K));
  }
  const PlanField field = plan_field(slab, floor, tubes);
  Seen seen{0.0, 0.0};
  double length_m = 0.0;
  for (const PlanPiece& piece : field.tube[static_cast<std::size_t>(lines)].piece) {
    if (std::abs(piece.at_m - 1.2) > 0.3) continue;
    seen.heat_W_per_m += piece.heat_W;
    seen.over_K += piece.over_degC * piece.length_m;
    length_m += piece.length_m;
  }
  return {seen.heat_W_per_m / length_m, seen.over_K / length_m};
}

}  // namespace

// Every fourth cell holds a line: nothing but the plan's own numbers is between the two.
TEST_CASE("a row at the usual spacing gives the heat of the section's row") {
  for (const TubeRow& row : slabs()) {
    const double side_m = 12 * row.spacing_m;
    const PlanFloor floor = floor_of(side_m, side_m, row.spacing_m / 4.0, cell_of(row));
    const PlanSlab slab = plan_slab(row, tube_mK_per_W, floor.cell_m);
    const PlanField field = plan_field(slab, floor, row_on(side_m, side_m, row.spacing_m, endless_W_per_K));
    const TubeRowResponse known = exact(row, row.spacing_m);
    const double tube_m = 12 * side_m;
    CHECK(field.up_total_W / (tube_m * water_K) == Approx(known.above_W_per_m_K).epsilon(2e-4));
    CHECK(field.down_total_W / (tube_m * water_K) == Approx(known.below_W_per_m_K).epsilon(2e-4));
    double top_K = 0.0;
    for (const double degC : field.top_degC) top_K += degC / (48.0 * 48.0);
    CHECK(top_K == Approx(known.floor_mean.tube_share * water_K).margin(0.02));
  }
}

// The lines run through the middle of cells, and so does what lies half way between them.
TEST_CASE("over a row's tubes and half way between them the floor is as warm as the section says") {
  for (const TubeRow& row : slabs()) {
    const double side_m = 12 * row.spacing_m, cell_m = row.spacing_m / 4.0;
    const PlanFloor floor = floor_of(side_m, side_m, cell_m, cell_of(row));
    std::vector<PlanTube> tubes = row_on(side_m, side_m, row.spacing_m, endless_W_per_K);
    for (PlanTube& tube : tubes) tube.line[0].y_m = tube.line[1].y_m += 0.5 * cell_m;
    const PlanField field = plan_field(plan_slab(row, tube_mK_per_W, cell_m), floor, tubes);
    const TubeRowResponse known = exact(row, row.spacing_m);
    const PlanPiece& piece = field.tube[5].piece[field.tube[5].piece.size() / 2];
    const auto top = [&](double cells) {
      return field.top_degC[cell_number(floor, piece.where.x_m, piece.where.y_m + cells * cell_m)];
    };
    INFO("concrete " << row.layers[0].thickness_m << " m");
    CHECK(piece.over_degC == Approx(known.floor_over_tube.tube_share * water_K).margin(0.1));
    // A cell's own middle leaves out how the line lies among the cells.
    CHECK(top(0.0) == Approx(piece.over_degC).margin(0.25));
    CHECK(top(2.0) == Approx(known.floor_midway.tube_share * water_K).margin(0.1));
  }
}

// Water whose film is not the usual one: only the tube's own resistance is another.
TEST_CASE("tubes with another film than the slab was made ready for are rows too") {
  const TubeRow row = five_inch_slab();
  const double cell_m = row.spacing_m / 4.0, side_m = 6 * row.spacing_m;
  const PlanFloor floor = floor_of(side_m, side_m, cell_m, cell_of(row));
  std::vector<PlanTube> tubes = row_on(side_m, side_m, row.spacing_m, endless_W_per_K);
  for (PlanTube& tube : tubes) tube.tube_mK_per_W = 0.16;
  const PlanField field = plan_field(plan_slab(row, tube_mK_per_W, cell_m), floor, tubes);
  const TubeRowResponse known = tube_row_responses(row, {0.16}, {1e-6}).front();
  CHECK(field.up_total_W / (6 * side_m * water_K) == Approx(known.above_W_per_m_K).epsilon(1e-3));
}

// Limits are those of the theory page: 1.5 % of the heat, and 0.0075 of the water's rise on the surface over the tube,
// where a thin slab's peak is hardly wider than a cell.
TEST_CASE("rows at other spacings and askew are within their limits") {
  for (const TubeRow& row : slabs()) {
    for (const double spacing_in : {2.0, 6.0, 9.0, 12.0, 18.0}) {
      for (const double angle_deg : {0.0, 20.0, 45.0}) {
        const TubeRowResponse known = exact(row, spacing_in * inch_m);
        const Seen seen = askew(row, spacing_in * inch_m, angle_deg);
        INFO(spacing_in << " in, " << angle_deg << " degrees, concrete " << row.layers[0].thickness_m << " m");
        const double heat = (known.above_W_per_m_K + known.below_W_per_m_K) * water_K;
        CHECK(seen.heat_W_per_m == Approx(heat).epsilon(0.015));
        CHECK(seen.over_K == Approx(known.floor_over_tube.tube_share * water_K).margin(0.15));
      }
    }
  }
}

// Layers of any kind over and under the tube, from foam to hard concrete, cover a twelfth of the spacing or more.
TEST_CASE("any slab's row gives the heat of its section, and the floor over its tubes is as warm") {
  CHECK(rc::check("any slab", [] {
    const auto between = [](double low, double high) {
      return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
    };
    const auto layers = [&] {
      std::vector<FlatLayer> some;
      for (int count = *rc::gen::inRange(0, 3); count > 0; --count)
        some.push_back({between(0.003, 0.1), std::exp(between(std::log(0.03), std::log(3.0)))});
      return some;
    };
    TubeRow row{between(0.1, 0.5), between(0.01, 0.022), 0.0, layers(), between(5.0, 15.0), between(0.1, 5.0)};
    for (const FlatLayer& layer : row.layers) row.axis_depth_m += layer.thickness_m;
    const double above_m = std::max(row.outside_diameter_m, row.spacing_m / 12.0) * between(1.0, 3.0);
    const double below_m = row.outside_diameter_m * between(0.55, 4.0);
    row.axis_depth_m += above_m;
    row.layers.push_back({above_m + below_m, between(0.8, 2.5)});
    for (const FlatLayer& layer : layers()) row.layers.push_back(layer);
    const double side_m = 8 * row.spacing_m;
    const PlanFloor floor = floor_of(side_m, side_m, row.spacing_m / 4.0, cell_of(row));
    const PlanField field = plan_field(plan_slab(row, tube_mK_per_W, floor.cell_m), floor,
                                       row_on(side_m, side_m, row.spacing_m, endless_W_per_K));
    const TubeRowResponse known = exact(row, row.spacing_m);
    const double wholes = 8 * side_m * water_K;
    RC_ASSERT(std::abs(field.up_total_W / (wholes * known.above_W_per_m_K) - 1.0) < 1e-3);
    RC_ASSERT(std::abs(field.down_total_W / (wholes * known.below_W_per_m_K) - 1.0) < 1e-3);
    const double over = field.tube[4].piece[field.tube[4].piece.size() / 2].over_degC / water_K;
    RC_ASSERT(std::abs(over - known.floor_over_tube.tube_share) < 0.015);
  }));
}

TEST_CASE("finer cells change little") {
  const TubeRow row = five_inch_slab();
  const auto heat_with = [&](double cells) {
    const double cell_m = row.spacing_m / cells, side_m = 8.0 * row.spacing_m;
    const PlanFloor floor = floor_of(side_m, side_m, cell_m, cell_of(row));
    const PlanSlab slab = plan_slab(row, tube_mK_per_W, cell_m);
    // A hairpin with a slanting leg: no line but the first lies on the cells' own pattern.
    const PlanTube tube =
        tube_along({{0.2, 0.4}, {2.0, 0.4}, {2.0, 1.0}, {0.4, 1.9}, {0.3, 2.2}, {2.1, 2.2}}, water_K, 100.0);
    return plan_field(slab, floor, {tube}).tube[0].heat_W;
  };
  const double finest = heat_with(12.0);
  CHECK(heat_with(3.0) == Approx(finest).epsilon(0.02));
  CHECK(heat_with(4.0) == Approx(finest).epsilon(0.01));
  CHECK(heat_with(6.0) == Approx(finest).epsilon(0.006));
  CHECK(heat_with(8.0) == Approx(finest).epsilon(0.004));
}
