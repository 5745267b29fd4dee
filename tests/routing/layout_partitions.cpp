// Partitions: tube on both sides of them, through their openings, and what is said where it cannot pass.
#include "drawn_floors.hpp"
#include "routing/border.hpp"
#include "routing/marks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

/// 4 in thick, its middle line at x, from y0 to y1.
NoTubeArea partition(double x_ft, double y0_ft, double y1_ft, double clearance_in = 6.0) {
  const double h = 1.0 / 6.0;
  return {in_feet({{x_ft - h, y0_ft}, {x_ft + h, y0_ft}, {x_ft + h, y1_ft}, {x_ft - h, y1_ft}}), clearance_in * inch_m};
}

/// 40 x 30 ft, a wall across it with an opening.
LayoutTask two_rooms(double x_ft, double from_ft, double width_ft, double clearance_in = 6.0) {
  LayoutTask task = task_on(in_feet({{0, 0}, {40, 0}, {40, 30}, {0, 30}}), {10, 0}, {0, 1});
  task.no_tube = {partition(x_ft, 0, from_ft, clearance_in), partition(x_ft, from_ft + width_ft, 30, clearance_in)};
  return task;
}

bool says(const std::vector<Diagnostic>& all, const std::string& code) {
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) { return d.code == code; });
}

double nearest_m(const std::vector<double>& tubes, double at_m) {
  double least = HUGE_VAL;
  for (const double tube : tubes) least = std::min(least, std::abs(tube - at_m));
  return least;
}

}  // namespace

TEST_CASE("tube lines lie at the clearance on both sides of a partition, no farther apart than cells may be") {
  for (const double x_ft : {8.0, 11.0, 14.2, 19.7, 23.1, 26.5, 29.0, 31.3}) {
    CAPTURE(x_ft);
    const LayoutTask task = seen_from_manifold(two_rooms(x_ft, 8, 4));
    const auto tubes = tube_lines(task, true, Fit{});
    const double middle_m = (x_ft - 10.0) * foot_m, off_m = 8.0 * inch_m;
    CHECK(nearest_m(tubes, middle_m - off_m) < 1e-5);
    CHECK(nearest_m(tubes, middle_m + off_m) < 1e-5);
    for (std::size_t i = 0; i + 1 < tubes.size(); ++i) {
      CHECK(tubes[i + 1] - tubes[i] > 0.93 * task.spacing_m);
      CHECK(tubes[i + 1] - tubes[i] < 1.35 * task.spacing_m);
    }
  }
}

TEST_CASE("openings two spacings wide and more are passable wherever they lie, 4 ft off a wall and more") {
  for (const double width_ft : {2.0, 2.5, 3.0, 4.0, 5.0}) {
    for (double from_ft = 4.0; from_ft + width_ft <= 26.0; from_ft += 0.37) {
      CAPTURE(width_ft, from_ft);
      const Cells cells = cells_of(seen_from_manifold(two_rooms(22, from_ft, width_ft)), Fit{});
      Region floor(static_cast<std::size_t>(cells.size()), 0);
      for (int cell = 0; cell < cells.size(); ++cell) {
        floor[static_cast<std::size_t>(cell)] = cells.is(cell) == Kind::free;
      }
      const Region found = reached(cells, floor, cells.at(0, 0), true);
      CHECK(std::count(floor.begin(), floor.end(), 1) >= 279);  // 93 % of 20 x 15
      CHECK(std::count(found.begin(), found.end(), 1) == std::count(floor.begin(), floor.end(), 1));
    }
  }
}

TEST_CASE("openings are found between partitions and before walls") {
  LayoutTask task = two_rooms(22, 8, 3);
  CHECK(openings_of(task).size() == 1);
  CHECK(openings_of(task)[0].width_m() == Approx(3 * foot_m));
  CHECK(openings_of(task)[0].least_m(task.spacing_m) == Approx(2 * foot_m));
  task.no_tube = {partition(22, 5, 26)};
  CHECK(openings_of(task).size() == 2);
  task.no_tube = {column(22, 15, 1)};
  CHECK(openings_of(task).empty());
}

TEST_CASE("rooms behind openings get tube, clear of the partitions") {
  for (const LayoutTask& task : {two_rooms(29, 8, 3), two_rooms(26, 20, 4, 4.0)}) {
    const auto laid = lay_tube(task);
    REQUIRE(laid);
    const LayoutCheck check = check_layout(task, *laid.value);
    CHECK(check.crossings_number == 0);
    CHECK(check.too_near_number == 0);
    CHECK(check.separation_ratio >= 0.93);
    CHECK(check.far_floor_ratio <= 0.005);
    CHECK_FALSE(says(laid.said, "layout.floor-out-of-reach"));
    CHECK_FALSE(says(laid.said, "layout.narrow-opening"));
  }
}

TEST_CASE("an opening too narrow is closed, and said") {
  const auto laid = lay_tube(two_rooms(26, 8, 1.5));
  REQUIRE(laid);
  CHECK(says(laid.said, "layout.floor-out-of-reach"));
  CHECK(says(laid.said, "layout.narrow-opening"));
}

TEST_CASE("a neck that fewer loops pass than the floor beyond asks for is said with both numbers") {
  const LayoutTask task = two_rooms(14, 12, 3);
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  const auto neck =
      std::find_if(laid.said.begin(), laid.said.end(), [](const Diagnostic& d) { return d.code == "layout.neck"; });
  REQUIRE(neck != laid.said.end());
  REQUIRE(neck->parts.size() == 5);
  // 26 x 30 ft at 12 in are 780 ft of tube, three loops of 300 ft; one pair of tubes passes 3 ft.
  CHECK(std::get<Measured>(neck->parts[0]).si / (foot_m * foot_m) == Approx(780).epsilon(0.05));
  CHECK(std::get<Measured>(neck->parts[1]).si == Approx(14 * foot_m).margin(2 * foot_m));
  CHECK(std::get<Measured>(neck->parts[2]).si == Approx(13.5 * foot_m).margin(1 * foot_m));
  CHECK(std::get<std::string>(neck->parts[3]) >= std::string("3"));
  CHECK(std::get<std::string>(neck->parts[4]) == "1");
  CHECK(check_layout(task, *laid.value).crossings_number == 0);
}
