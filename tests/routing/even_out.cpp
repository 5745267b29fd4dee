// Borders that move from one loop's floor into the next one's.
#include "routing/even_out.hpp"

#include <algorithm>

#include "drawn_floors.hpp"
#include "routing/border.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

std::vector<int> cells_by_part(const std::vector<int>& owner, int parts) {
  std::vector<int> count;
  for (int part = 0; part < parts; ++part) {
    count.push_back(static_cast<int>(std::count(owner.begin(), owner.end(), part)));
  }
  return count;
}

/// Whether each part holds its gate and hangs together.
bool whole(const Cells& cells, const std::vector<Gate>& gates, const std::vector<int>& owner) {
  for (std::size_t part = 0; part < gates.size(); ++part) {
    Region region(owner.size(), 0);
    for (std::size_t c = 0; c < owner.size(); ++c) region[c] = owner[c] == static_cast<int>(part);
    if (region[index(gates[part].cell)] == 0) return false;
    const Region found = reached(cells, region, gates[part].cell, true);
    if (std::count(found.begin(), found.end(), 1) != std::count(region.begin(), region.end(), 1)) return false;
  }
  return true;
}

struct Shared {
  Cells cells;
  std::vector<Gate> gates;
  std::vector<int> owner;
};

/// Of 12 by 10 cells, a gate in each of the four middle columns. The outer loops have shut the inner ones in.
Shared shut_in() {
  const LayoutTask task = seen_from_manifold(task_on(rectangle(24 * foot_m, 20 * foot_m), {12, 0}, {0, 1}));
  Shared floor{cells_of(task, Fit{}), {}, {}};
  for (int k = 0; k < 4; ++k) floor.gates.push_back({floor.cells.at(4 + k, 0), 3});
  for (int cell = 0; cell < floor.cells.size(); ++cell) floor.owner.push_back(floor.cells.column(cell) < 6 ? 0 : 3);
  floor.owner[index(floor.gates[1].cell)] = 1;
  floor.owner[index(floor.gates[2].cell)] = 2;
  return floor;
}

}  // namespace

TEST_CASE("loops that others have shut in find their way out") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    Shared floor = shut_in();
    REQUIRE(floor.cells.size() == 120);
    std::mt19937_64 random(seed);
    even_out(floor.cells, floor.gates, {0, 0, 0, 0}, random, floor.owner);
    CHECK(whole(floor.cells, floor.gates, floor.owner));
    for (const int count : cells_by_part(floor.owner, 4)) CHECK(std::abs(count - 30) <= 2);
  }
}

TEST_CASE("what a loop has besides its cells is taken off its floor") {
  Shared floor = shut_in();
  std::mt19937_64 random(3);
  const double cell_m = floor.cells.tube_m(0);
  even_out(floor.cells, floor.gates, {0, 0, 16 * cell_m, 0}, random, floor.owner);
  CHECK(whole(floor.cells, floor.gates, floor.owner));
  const std::vector<int> count = cells_by_part(floor.owner, 4);
  CHECK(std::abs(count[2] - 18) <= 2);
  CHECK(std::abs(count[0] - 34) <= 2);
}

TEST_CASE("a way one cell wide moves over for a loop beside it") {
  // Columns 0 to 2 lead past an area without tube to the floor beyond. The first two loops have taken all three.
  const LayoutTask task = seen_from_manifold(task_on(rectangle(24 * foot_m, 20 * foot_m), {12, 0}, {0, 1}));
  Shared floor{cells_of(task, Fit{}), {}, {}};
  Cells& cells = floor.cells;
  for (int j = 2; j < 5; ++j) {
    for (int i = 3; i < 12; ++i) cells.kind[index(cells.at(i, j))] = Kind::blocked;
  }
  for (int cell = 0; cell < cells.size(); ++cell) {
    cells.open[index(cell)] = 0;
    for (Way way = 0; way < 4; ++way) {
      const bool passes = cells.is(cell) == Kind::free && cells.is(cells.next(cell, way)) == Kind::free;
      if (passes) cells.open[index(cell)] = static_cast<std::uint8_t>(cells.open[index(cell)] | 1 << way);
    }
    const int i = cells.column(cell), j = cells.row(cell);
    const int beyond = i < 2 ? 0 : 1, before = i < 2 ? 0 : i < 5 ? 1 : 2;
    floor.owner.push_back(cells.is(cell) != Kind::free ? -1 : j < 2 ? before : beyond);
  }
  for (const int i : {0, 3, 8}) floor.gates.push_back({cells.at(i, 0), 3});
  const std::vector<int> before = cells_by_part(floor.owner, 3);
  REQUIRE(before == std::vector<int>{20, 59, 14});
  std::mt19937_64 random(1);
  even_out(cells, floor.gates, {0, 0, 0}, random, floor.owner);
  CHECK(whole(cells, floor.gates, floor.owner));
  for (const int count : cells_by_part(floor.owner, 3)) CHECK(std::abs(count - 31) <= 1);
}
