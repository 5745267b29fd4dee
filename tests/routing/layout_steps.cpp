// What each step of laying tube owes the next one.
#include <algorithm>

#include "drawn_floors.hpp"
#include "routing/draft.hpp"
#include "routing/neck.hpp"
#include "routing/tree.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

std::vector<int> cells_of_part(const Draft& draft, int part) {
  std::vector<int> cells;
  for (int cell = 0; cell < draft.cells.size(); ++cell) {
    if (draft.owner[static_cast<std::size_t>(cell)] == part) cells.push_back(cell);
  }
  return cells;
}

std::optional<Draft> shared_out(const LayoutTask& task) {
  Work work{10000000};
  return share_out(task, {4, {1, 1, 1}, Fit{}, CutOptions{}, false}, work);
}

}  // namespace

TEST_CASE("cells of a rectangle fill it, their outermost tubes at the clearance") {
  const LayoutTask task = seen_from_manifold(task_on(rectangle(36 * foot_m, 30 * foot_m), {18, 0}, {0, 1}));
  const Cells cells = cells_of(task, Fit{});
  CHECK(cells.columns == 18);
  CHECK(cells.rows == 15);
  CHECK(std::count(cells.kind.begin(), cells.kind.end(), Kind::free) == 18 * 15);
  const Point low = cells.quarter(0, 0), high = cells.quarter(cells.size() - 1, 2);
  CHECK(low.x_m == Approx((-18.0 + 0.5) * foot_m).epsilon(1e-6));
  CHECK(low.y_m == Approx(0.5 * foot_m).epsilon(1e-5));
  CHECK(high.x_m == Approx((18.0 - 0.5) * foot_m).epsilon(1e-6));
  CHECK(high.y_m == Approx((30.0 - 0.5) * foot_m).epsilon(1e-6));
}

TEST_CASE("a floor is seen from its manifold and back without a change") {
  LayoutTask task = task_on(rectangle(36 * foot_m, 30 * foot_m), {36, 12}, {-2, 0});
  const LayoutTask seen = seen_from_manifold(task);
  CHECK(signed_area_m2(seen.outline) == Approx(signed_area_m2(task.outline)).epsilon(1e-6));
  for (const Point& p : seen.outline) CHECK(p.y_m > -1e-6);
  for (const Point& p : seen.outline) {
    const Point back = seen_from_outside(p, task);
    const auto near = [&](Point q) { return distance_m(q, back) < 1e-6; };
    CHECK(std::any_of(task.outline.begin(), task.outline.end(), near));
  }
}

TEST_CASE("every free cell is in one part, each part in one piece with its gate") {
  for (std::uint64_t seed = 100; seed < 112; ++seed) {
    const LayoutTask task = seen_from_manifold(Drawer(seed).task());
    const auto draft = shared_out(task);
    if (!draft) continue;
    CAPTURE(seed);
    for (int part = 0; part < 4; ++part) {
      const Gate gate = draft->apron.gate[static_cast<std::size_t>(part)];
      CHECK(draft->owner[static_cast<std::size_t>(gate.cell)] == part);
      Region region(draft->owner.size(), 0);
      for (const int cell : cells_of_part(*draft, part)) region[static_cast<std::size_t>(cell)] = 1;
      const Region found = reached(draft->cells, region, gate.cell, true);
      CHECK(std::count(found.begin(), found.end(), 1) == std::count(region.begin(), region.end(), 1));
    }
    for (int cell = 0; cell < draft->cells.size(); ++cell) {
      const int owner = draft->owner[static_cast<std::size_t>(cell)];
      if (draft->cells.is(cell) != Kind::free) CHECK(owner == -1);
      for (Way way = 0; way < 4 && owner >= 0; ++way) {
        // What is left over is what no passage leads to.
        if (draft->cells.passes(cell, way)) {
          CHECK(draft->owner[static_cast<std::size_t>(draft->cells.next(cell, way))] >= 0);
        }
      }
    }
  }
}

TEST_CASE("the tube of a part is four spacings a cell, whatever its tree") {
  const LayoutTask task = seen_from_manifold(task_on(rectangle(36 * foot_m, 30 * foot_m), {18, 0}, {0, 1}));
  const auto draft = shared_out(task);
  REQUIRE(draft);
  std::mt19937_64 random(7);
  for (int part = 0; part < 4; ++part) {
    const Gate gate = draft->apron.gate[static_cast<std::size_t>(part)];
    const Part made{cells_of_part(*draft, part), gate, {}};
    const auto tree = few_turn_tree(draft->cells, made, TreeOptions{}, random);
    int edges = 0;
    for (const std::uint8_t ways : tree) edges += (ways & 1) + (ways >> 1 & 1) + (ways >> 2 & 1) + (ways >> 3 & 1);
    CHECK(edges == 2 * (static_cast<int>(made.cell.size()) - 1) + 1);  // each twice, and the gate
    const auto walk = walk_round(draft->cells, gate, tree);
    double sum_m = 0.0;
    for (std::size_t i = 0; i + 1 < walk.size(); ++i) sum_m += distance_m(walk[i], walk[i + 1]);
    // From gate to gate: half a spacing more at each end.
    const double cells = static_cast<double>(made.cell.size());
    CHECK(sum_m + task.spacing_m == Approx(4.0 * task.spacing_m * cells).epsilon(1e-6));
  }
}

TEST_CASE("loops behind a neck are counted") {
  // Two rooms side by side, the opening between them two cells wide.
  LayoutTask task =
      task_on(in_feet({{0, 0}, {16, 0}, {16, 6}, {20, 6}, {20, 0}, {60, 0}, {60, 10}, {0, 10}}), {8, 0}, {0, 1});
  task = seen_from_manifold(task);
  const Cells cells = cells_of(task, Fit{});
  Region floor(static_cast<std::size_t>(cells.size()), 0);
  for (int cell = 0; cell < cells.size(); ++cell) floor[static_cast<std::size_t>(cell)] = cells.is(cell) == Kind::free;
  const auto gates = [&](int count) {
    std::vector<Gate> made;
    for (int k = 0; k < count; ++k) made.push_back({cells.at(1 + k, 0), 3});
    return made;
  };
  CHECK(loops_shut_in(cells, floor, gates(2)) == 0);
  CHECK(loops_shut_in(cells, floor, gates(3)) == 0);
  CHECK(loops_shut_in(cells, floor, gates(6)) >= 2);
}
