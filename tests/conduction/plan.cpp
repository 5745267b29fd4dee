// What holds for every plan: heat kept, symmetry, water on its way, cases solved by hand, and what may not be asked.
#include "slabwright/conduction_plan.hpp"

#include <algorithm>
#include <functional>
#include <limits>

#include "plan_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Catch::Matchers::Contains;

constexpr double cell_m = 0.0762;

/// Solved to 1e-9 of a drive that a floor's whole heat is a tenth of.
constexpr double solved_share = 1e-7;

PlanSlab usual_slab() { return plan_slab(five_inch_slab(), tube_mK_per_W, cell_m); }

/// Two rooms, cold ground, a cold edge, a column without floor.
PlanFloor two_rooms() {
  PlanFloor floor = floor_of(48 * cell_m, 32 * cell_m, cell_m, {10.0, 18.0, 1.0, 6.0, 0.0, 0.0});
  for (std::size_t i = 0; i < floor.cell.size(); ++i) {
    PlanCell& cell = floor.cell[i];
    const std::size_t column = i % floor.columns, row = i / floor.columns;
    if (cell.above_W_per_m2K <= 0.0) continue;
    if (column > 30) cell.room_degC = 12.0, cell.above_W_per_m2K = 9.0;
    if (row == 1) cell.edge_W_per_m2K = 8.0, cell.edge_degC = -20.0;
    if (column > 10 && column < 14 && row > 12 && row < 16) cell = {};
  }
  return floor;
}

/// Two loops side by side, to and fro.
std::vector<PlanTube> two_loops(double capacity_W_per_K) {
  return {tube_along({{0.3, 0.3}, {3.3, 0.3}, {3.3, 0.6}, {0.3, 0.6}, {0.3, 0.9}, {3.3, 0.9}}, 40.0, capacity_W_per_K),
          tube_along({{0.3, 1.9}, {3.3, 2.1}, {3.3, 1.5}, {1.2, 1.5}}, 38.0, capacity_W_per_K)};
}

void refused(const std::string& words, const std::function<void(PlanFloor&, std::vector<PlanTube>&)>& spoil) {
  PlanFloor floor = two_rooms();
  std::vector<PlanTube> tubes = two_loops(100.0);
  spoil(floor, tubes);
  CHECK_THROWS_WITH(plan_field(usual_slab(), floor, tubes), Contains(words));
}

}  // namespace

TEST_CASE("a plan loses no heat") {
  const PlanField field = plan_field(usual_slab(), two_rooms(), two_loops(120.0));
  CHECK(field.end == PlanEnd::solved);
  const double given = heat_W(field);
  CHECK(given > 100.0);
  CHECK(field.up_total_W + field.down_total_W + field.edge_total_W == Approx(given).epsilon(solved_share));
  double up_W = 0.0;
  for (const double cell_W : field.up_W) up_W += cell_W;
  CHECK(up_W == Approx(field.up_total_W).epsilon(1e-12));
  for (const PlanTubeState& tube : field.tube) {
    double pieces_W = 0.0, pieces_m = 0.0;
    for (const PlanPiece& piece : tube.piece) pieces_W += piece.heat_W, pieces_m += piece.length_m;
    CHECK(pieces_W == Approx(tube.heat_W).epsilon(1e-12));
    CHECK(pieces_m == Approx(tube.piece.back().at_m + 0.5 * tube.piece.back().length_m).epsilon(1e-12));
  }
  CHECK(120.0 * (40.0 - field.tube[0].return_degC) == Approx(field.tube[0].heat_W).epsilon(1e-9));
}

TEST_CASE("where all is as warm as the water nothing flows") {
  PlanFloor floor = two_rooms();
  for (PlanCell& cell : floor.cell) cell.room_degC = cell.below_degC = cell.edge_degC = 21.0;
  std::vector<PlanTube> tubes = two_loops(100.0);
  for (PlanTube& tube : tubes) tube.supply_degC = 21.0;
  const PlanField field = plan_field(usual_slab(), floor, tubes);
  CHECK(heat_W(field) == Approx(0.0).margin(1e-5));
  for (std::size_t i = 0; i < floor.cell.size(); ++i) {
    if (floor.cell[i].above_W_per_m2K > 0.0) CHECK(field.top_degC[i] == Approx(21.0).margin(1e-6));
  }
}

TEST_CASE("a plan turned over is the same plan") {
  const PlanFloor floor = two_rooms();
  const std::vector<PlanTube> tubes = two_loops(60.0);
  PlanFloor turned = floor;
  for (std::size_t j = 0; j < floor.rows; ++j) {
    std::reverse(turned.cell.begin() + static_cast<std::ptrdiff_t>(j * floor.columns),
                 turned.cell.begin() + static_cast<std::ptrdiff_t>((j + 1) * floor.columns));
  }
  std::vector<PlanTube> turned_tubes{tubes[1], tubes[0]};
  for (PlanTube& tube : turned_tubes) {
    for (FieldPoint& corner : tube.line) corner.x_m = 48 * cell_m - corner.x_m;
  }
  const PlanField one = plan_field(usual_slab(), floor, tubes), other = plan_field(usual_slab(), turned, turned_tubes);
  CHECK(one.tube[0].heat_W == Approx(other.tube[1].heat_W).epsilon(solved_share));
  CHECK(one.tube[1].return_degC == Approx(other.tube[0].return_degC).epsilon(solved_share));
  for (std::size_t i = 0; i < floor.cell.size(); ++i) {
    const std::size_t mirrored = i / floor.columns * floor.columns + floor.columns - 1 - i % floor.columns;
    CHECK(one.top_degC[i] == Approx(other.top_degC[mirrored]).margin(1e-6));
  }
}

// Water that does not cool makes the operator symmetric: what one loop's kelvin does to the other, that one's does too.
TEST_CASE("two loops do the same to one another") {
  PlanFloor floor = two_rooms();
  for (PlanCell& cell : floor.cell) cell.room_degC = cell.below_degC = cell.edge_degC = 0.0;
  std::vector<PlanTube> tubes = two_loops(endless_W_per_K);
  for (PlanTube& tube : tubes) {
    for (FieldPoint& corner : tube.line) corner.y_m = 0.3 + 0.4 * corner.y_m;  // close together
  }
  const auto heat_in_other = [&](std::size_t warm) {
    tubes[warm].supply_degC = 1.0;
    tubes[1 - warm].supply_degC = 0.0;
    return plan_field(usual_slab(), floor, tubes).tube[1 - warm].heat_W;
  };
  const double first = heat_in_other(0), second = heat_in_other(1);
  CHECK(first < -0.05);
  CHECK(first == Approx(second).epsilon(1e-6));
}

// derived: alone in a row without end water falls as exp(-x (a + b) / (m c)).
TEST_CASE("water of a row cools exponentially") {
  const TubeRow row = five_inch_slab();
  const double long_m = 160 * cell_m, capacity = 12.0;
  const PlanFloor floor = floor_of(long_m, 8 * cell_m, cell_m, cell_of(row));
  const PlanField field = plan_field(usual_slab(), floor, row_on(long_m, 8 * cell_m, row.spacing_m, capacity));
  const TubeRowResponse known = tube_row_responses(row, {tube_mK_per_W}, {1e-6}).front();
  const double units = long_m * (known.above_W_per_m_K + known.below_W_per_m_K) / capacity;
  CHECK(units > 1.4);
  // Heat runs along the plate too, down the water's slope: by (decay length / fall length)^2, some 4e-4.
  CHECK(field.tube[0].return_degC == Approx(20.0 * std::exp(-units)).epsilon(2e-3));
}

// derived: between two lines far apart the slab's slowest profile alone is left. In one layer with a film above and
// nothing below it is cos(m y) with m d tan(m d) = h d / k, and cosh(m x) in plan.
TEST_CASE("half way between two tubes the floor is a hyperbolic cosine") {
  const TubeRow row{0.3048, 0.015875, 0.0635, {{0.127, 1.75}}, 10.0, 0.0};
  double low = 0.0, high = 1.5;
  for (int i = 0; i < 60; ++i) {
    const double at = 0.5 * (low + high);
    (at * std::tan(at) < 10.0 * 0.127 / 1.75 ? low : high) = at;
  }
  const double wave_per_m = low / 0.127, apart_m = 16 * cell_m;
  const PlanFloor floor = floor_of(40 * cell_m, 48 * cell_m, cell_m, cell_of(row));
  std::vector<PlanTube> tubes;
  for (const double y : {16.0 * cell_m, 32.0 * cell_m}) {
    tubes.push_back(tube_along({{0.0, y}, {40 * cell_m, y}}, 20.0, endless_W_per_K));
  }
  const PlanField field = plan_field(plan_slab(row, tube_mK_per_W, cell_m), floor, tubes);
  const double middle = field.top_degC[cell_number(floor, 1.5, 16 * cell_m + 0.5 * apart_m - 0.5 * cell_m)];
  for (double cells = 1.5; cells < 4.0; cells += 1.0) {
    const double off = field.top_degC[cell_number(floor, 1.5, 16 * cell_m + 0.5 * apart_m + cells * cell_m)];
    const double expected = std::cosh(wave_per_m * cells * cell_m) / std::cosh(0.5 * wave_per_m * cell_m);
    CHECK(off / middle == Approx(expected).epsilon(3e-3));
  }
}

// Between supply and return of one loop, every place has water of about the mean: that is what spirals are laid for.
TEST_CASE("a counterflow spiral warms the floor more evenly than lines to and fro") {
  constexpr double side = 48 * cell_m, gap = 4 * cell_m;
  std::vector<FieldPoint> there, in, out;
  for (int line = 0; line < 12; ++line) {
    const double y = gap * (line + 0.5), left = 0.5 * gap, right = side - 0.5 * gap;
    there.push_back({line % 2 == 0 ? left : right, y});
    there.push_back({line % 2 == 0 ? right : left, y});
  }
  const auto ring = [&](double low, std::vector<FieldPoint>& line) {
    const double high = side - low;
    for (const FieldPoint corner : {FieldPoint{high, low}, {high, high}, {low, high}, {low, low + 2.0 * gap}}) {
      line.push_back(corner);
    }
  };
  in.push_back({0.5 * gap, 0.5 * gap});
  out.push_back({1.5 * gap, 1.5 * gap});
  for (int turn = 0; turn < 3; ++turn) {
    ring(gap * (2 * turn + 0.5), in);
    ring(gap * (2 * turn + 1.5), out);
  }
  out.pop_back();
  in.insert(in.end(), out.rbegin(), out.rend());
  const PlanFloor floor = floor_of(side, side, cell_m, cell_of(five_inch_slab()));
  const auto quarters_apart = [&](const std::vector<FieldPoint>& line) {
    const PlanField field = plan_field(usual_slab(), floor, {tube_along(line, 30.0, 100.0)});
    double mean[4] = {};
    for (std::size_t i = 0; i < 48 * 48; ++i) {
      const std::size_t column = i % 48, row = i / 48;
      mean[column / 24 + row / 24 * 2] += field.top_degC[(row + 1) * floor.columns + column + 1] / (24.0 * 24.0);
    }
    return *std::max_element(mean, mean + 4) - *std::min_element(mean, mean + 4);
  };
  const double to_and_fro = quarters_apart(there), spiral = quarters_apart(in);
  CHECK(to_and_fro > 1.0);
  CHECK(spiral < 0.3 * to_and_fro);
}

TEST_CASE("sleeves keep heat back, and all of it without end") {
  std::vector<PlanTube> tubes = two_loops(80.0);
  const PlanField bare = plan_field(usual_slab(), two_rooms(), tubes);
  tubes[0].sleeve = {{0.0, 1.5, 0.5}};
  const PlanField sleeved = plan_field(usual_slab(), two_rooms(), tubes);
  const PlanPiece &was = bare.tube[0].piece[8], &is = sleeved.tube[0].piece[8];
  CHECK(is.heat_W < 0.6 * was.heat_W);
  CHECK(is.over_degC < was.over_degC - 1.0);
  CHECK(sleeved.tube[0].return_degC > bare.tube[0].return_degC);
  tubes[0].sleeve = {{0.0, 100.0, 1e12}};
  CHECK(plan_field(usual_slab(), two_rooms(), tubes).tube[0].heat_W == Approx(0.0).margin(1e-6));
}

TEST_CASE("water that stands and tube off the floor give no heat") {
  std::vector<PlanTube> tubes = two_loops(80.0);
  tubes[0].capacity_W_per_K = 0.0;
  for (FieldPoint& corner : tubes[1].line) corner.x_m += 20.0;
  const PlanField field = plan_field(usual_slab(), two_rooms(), tubes);
  CHECK(heat_W(field) == 0.0);
  CHECK(field.tube[1].return_degC == 38.0);
}

TEST_CASE("a field begun from another ends as the same field") {
  const PlanField cold = plan_field(usual_slab(), two_rooms(), two_loops(90.0));
  const PlanField other = plan_field(usual_slab(), two_rooms(), two_loops(100.0));
  const PlanField warm = plan_field(usual_slab(), two_rooms(), two_loops(90.0), {&other});
  CHECK(warm.tube[0].return_degC == Approx(cold.tube[0].return_degC).epsilon(solved_share));
  CHECK(plan_field(usual_slab(), two_rooms(), two_loops(90.0), {&cold}).rounds == 0);
  CHECK(plan_field(usual_slab(), two_rooms(), two_loops(90.0), {&cold, false}).top_degC.empty());
}

TEST_CASE("a plan says what it cannot take") {
  refused("another size", [](PlanFloor& floor, auto&) { floor.cell_m = 0.05; });
  refused("do not fit", [](PlanFloor& floor, auto&) { floor.columns += 1; });
  refused("below 0", [](PlanFloor& floor, auto&) { floor.cell[200].below_W_per_m2K = -1.0; });
  refused("no number", [](PlanFloor& floor, auto&) { floor.cell[200].room_degC = std::nan(""); });
  refused("two corners", [](auto&, std::vector<PlanTube>& tubes) { tubes[0].line.resize(1); });
  refused("without length", [](auto&, std::vector<PlanTube>& tubes) { tubes[0].line = {{1.0, 1.0}, {1.0, 1.0}}; });
  refused("flow or resistance", [](auto&, std::vector<PlanTube>& tubes) { tubes[0].capacity_W_per_K = -1.0; });
  refused("supply", [](auto&, std::vector<PlanTube>& tubes) { tubes[0].supply_degC = std::nan(""); });
  refused("sleeve", [](auto&, std::vector<PlanTube>& tubes) { tubes[0].sleeve = {{0.0, 1.0, -0.1}}; });
  CHECK_THROWS_WITH(plan_slab(five_inch_slab(), tube_mK_per_W, 0.0), Contains("size"));
}
