// Grid lines stand where something is named, and crowd there only.
#include "conduction/grid.hpp"

#include <algorithm>
#include <numeric>

#include "conduction/assembly.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::conduction;

namespace {

const FieldOptions options{0.01, 1.25, 0.5, false};

/// Two layers; the film on top ends at x = 2.
FieldSection section() {
  FieldSection made;
  made.drivers = {{"air", FieldDriver::Kind::temperature}};
  made.materials = {{0.0, 5.0, -3.0, 0.0, 2.0}, {0.0, 1.9 + 0.2, -0.1 - 0.2, 0.0, 1.0}};
  made.boundaries = {{{{0.0, 0.0}, {2.0, 0.0}}, SurfaceFilm{6.0, {0}}},
                     {{{0.0, -3.0}, {5.0, -3.0}}, FixedTemperature{{0}, {0}}}};
  return made;
}

std::vector<double> gaps(const std::vector<double>& lines) {
  std::vector<double> sizes(lines.size());
  std::adjacent_difference(lines.begin(), lines.end(), sizes.begin());
  sizes.erase(sizes.begin());
  return sizes;
}

}  // namespace

TEST_CASE("every named coordinate has its line, on every second line too") {
  const Lines lines = graded_lines(section(), options), half = every_second(lines);
  for (const double x : {0.0, 2.0, 2.1, 5.0}) {
    CHECK(lines.x_m[line_at(lines.x_m, x)] == Approx(x).margin(same_line_m));
    CHECK(half.x_m[line_at(half.x_m, x)] == Approx(x).margin(same_line_m));
  }
  for (const double y : {-3.0, -0.3, 0.0}) CHECK_NOTHROW(line_at(half.y_m, y));
  CHECK_THROWS_AS(line_at(lines.x_m, 2.05 + 0.0123), std::logic_error);
  CHECK(half.x_m.size() == (lines.x_m.size() + 1) / 2);
}

TEST_CASE("cells begin small at a named line and grow no faster than asked") {
  const Lines lines = graded_lines(section(), options);
  for (const std::vector<double>& axis : {lines.x_m, lines.y_m}) {
    const std::vector<double> sizes = gaps(axis);
    CHECK(*std::min_element(sizes.begin(), sizes.end()) > 0.0);
    CHECK(*std::max_element(sizes.begin(), sizes.end()) <= options.largest_cell_m);
  }
  const std::vector<double> sizes = gaps(lines.x_m);
  const std::size_t end_of_film = line_at(lines.x_m, 2.0);
  CHECK(sizes[end_of_film] <= options.first_cell_m);
  CHECK(sizes[end_of_film - 1] <= options.first_cell_m);
  for (std::size_t i = line_at(lines.x_m, 2.1); i + 1 < sizes.size(); ++i) {
    CHECK(sizes[i + 1] <= options.growth * sizes[i] * (1.0 + 1e-9));
  }
}

TEST_CASE("outermost lines are fine only where a stretch ends along them or a line of heat lies on them") {
  const Lines lines = graded_lines(section(), options);
  CHECK(gaps(lines.y_m).back() <= options.first_cell_m);         // the top: the film ends at x = 2
  CHECK(gaps(lines.y_m).front() > 10.0 * options.first_cell_m);  // the bottom is one temperature all along
  CHECK(gaps(lines.x_m).front() > 10.0 * options.first_cell_m);  // the sides pass no heat
  CHECK(gaps(lines.x_m).back() > 10.0 * options.first_cell_m);
  FieldSection with_line = section();
  with_line.drivers.push_back({"line", FieldDriver::Kind::heat});
  with_line.lines = {{{0.0, -0.15}, {1}}};
  CHECK(gaps(graded_lines(with_line, options).x_m).front() <= options.first_cell_m);
}

TEST_CASE("coordinates that differ by rounding are one line") {
  FieldSection twice = section();
  twice.materials.push_back({0.0, 0.7 * 3.0, -0.3, 0.0, 1.0});  // 2.0999999999999996
  CHECK(graded_lines(twice, options).x_m.size() == graded_lines(section(), options).x_m.size());
}

TEST_CASE("later materials cover earlier ones") {
  const Grid grid = grid_on(graded_lines(section(), options), section().materials);
  const std::size_t side = line_at(grid.lines.x_m, 2.1), top = grid.rows() - 1;
  CHECK(grid.conductivity(side, top) == 1.0);
  CHECK(grid.conductivity(side + 1, top) == 2.0);
  CHECK(grid.conductivity(side, line_at(grid.lines.y_m, -0.3)) == 2.0);
  CHECK(grid.conductivity(0, 1) == 0.0);
  CHECK(grid.conductivity(grid.columns(), top) == 0.0);
}

TEST_CASE("dissection orders every node once, the cutting line last") {
  const std::size_t columns = 13, rows = 7;
  const std::vector<std::size_t> order = dissected(columns, rows);
  std::vector<std::size_t> sorted = order;
  std::sort(sorted.begin(), sorted.end());
  std::vector<std::size_t> all(columns * rows);
  std::iota(all.begin(), all.end(), std::size_t{0});
  CHECK(sorted == all);
  for (std::size_t last = order.size() - rows; last < order.size(); ++last) CHECK(order[last] % columns == 6);
}
