// Closer tube along walls: rows of cells, what is measured of it, and how much tube really lies there.
#include "drawn_floors.hpp"
#include "routing/bands.hpp"
#include "routing/marks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

EdgeBand band(double x0, double y0, double x1, double y1, double spacing_in) {
  return {in_feet({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}), spacing_in * inch_m};
}

LayoutTask task_40x28() { return task_on(in_feet({{0, 0}, {40, 0}, {40, 28}, {0, 28}}), {20, 0}, {0, 1}); }

/// Tube in a band for each foot that its spacing asks for.
double filled_ratio(const EdgeBand& where, const TubeLayout& layout) {
  double sum_m = 0.0;
  for (const LaidLoop& loop : layout.loop) {
    for (const Piece& piece : loop.path) {
      const double step_m = 0.02, whole_m = length_m(std::span<const Piece>(&piece, 1));
      for (double at = 0.5 * step_m; at < whole_m; at += step_m) {
        const Point p = point_at(std::span<const Piece>(&piece, 1), at);
        sum_m += where_is(p, where.outline) != Where::outside ? step_m : 0.0;
      }
    }
  }
  return sum_m * where.spacing_m / signed_area_m2(where.outline);
}

}  // namespace

TEST_CASE("a band is a strip along the wall that its side lies on") {
  LayoutTask task = task_40x28();
  task.band = {band(0, 0, 3, 28, 8)};
  auto strips = strips_of(task);
  REQUIRE(strips.size() == 1);
  CHECK(strips[0].depth_m == Approx(3 * foot_m));
  CHECK(strips[0].inward.x_m == Approx(1.0));
  // One polygon round a corner has a side on either wall.
  task.band = {{in_feet({{0, 0}, {3, 0}, {3, 25}, {40, 25}, {40, 28}, {0, 28}}), 8 * inch_m}};
  strips = strips_of(task);
  REQUIRE(strips.size() == 2);
  CHECK(strips[0].depth_m == Approx(3 * foot_m));
  CHECK(strips[1].depth_m == Approx(3 * foot_m));
  CHECK(spacing_here_m(task, strips, {20 * foot_m, 26 * foot_m}) == 8 * inch_m);
  CHECK(spacing_here_m(task, strips, {20 * foot_m, 10 * foot_m}) == task.spacing_m);
  CHECK(spacing_asked_m(task, {20 * foot_m, 26 * foot_m}) == 8 * inch_m);
  CHECK(spacing_asked_m(task, {20 * foot_m, 24.9 * foot_m}) == task.spacing_m);
}

TEST_CASE("tube lines lie closer in a band and as elsewhere beyond it") {
  LayoutTask task = task_40x28();
  task.band = {band(0, 0, 3, 28, 8)};
  const LayoutTask seen = seen_from_manifold(task);
  const auto tubes = tube_lines(seen, true, Fit{});
  for (std::size_t i = 0; i + 1 < tubes.size(); ++i) {
    const double gap_in = (tubes[i + 1] - tubes[i]) / inch_m, at_ft = (tubes[i + 1] + tubes[i]) / 2 / foot_m + 20;
    if (at_ft < 2.6) CHECK(gap_in == Approx(8.0).epsilon(0.08));
    if (at_ft > 3.4) CHECK(gap_in == Approx(12.0).epsilon(0.08));
  }
}

TEST_CASE("bands along one wall, two walls, round a corner and before a door: sound, even, and filled") {
  LayoutTask one = task_40x28(), two = one, corner = one, door = one, wide = one;
  one.band = {band(0, 0, 3, 28, 8)};
  two.band = {band(0, 0, 3, 28, 8), band(0, 25, 40, 28, 8)};
  corner.band = {{in_feet({{0, 0}, {3, 0}, {3, 25}, {40, 25}, {40, 28}, {0, 28}}), 9 * inch_m}};
  door.band = {band(26, 0, 38, 3, 8)};
  door.manifold[0].place.x_m = 12 * foot_m;
  wide = task_on(in_feet({{0, 0}, {60, 0}, {60, 40}, {0, 40}}), {30, 0}, {0, 1}, 18.0);
  wide.band = {band(0, 0, 4, 40, 12), band(0, 36, 60, 40, 12)};
  for (const LayoutTask& task : {one, two, corner, door, wide}) {
    CAPTURE(task.band.size(), task.band[0].outline.size());
    const auto laid = lay_tube(task);
    REQUIRE(laid);
    const LayoutCheck check = check_layout(task, *laid.value);
    CHECK(check.sound());
    CHECK(check.spread_ratio <= 0.05);
    CHECK(check.far_floor_ratio <= 0.001);
    LayoutTask bare = task;
    bare.band.clear();
    const auto even = lay_tube(bare);
    REQUIRE(even);
    for (const EdgeBand& where : task.band) {
      // Tube keeps the clearance off the wall and the band is not a whole number of rows: it is not filled to the brim.
      CHECK(filled_ratio(where, *laid.value) >= 0.75);
      CHECK(filled_ratio(where, *laid.value) > 1.15 * filled_ratio(where, *even.value));
    }
  }
}

TEST_CASE("tube as near as a band allows is too near elsewhere") {
  LayoutTask task = task_40x28();
  task.band = {band(0, 0, 3, 28, 8)};
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  CHECK(check_layout(task, *laid.value).separation_ratio >= 0.93);
  LayoutTask elsewhere = task;
  elsewhere.band = {band(37, 0, 40, 28, 8)};
  CHECK(check_layout(elsewhere, *laid.value).separation_ratio < 0.75);
}

TEST_CASE("a band too close for the tube is refused") {
  LayoutTask task = task_40x28();
  task.band = {band(0, 0, 3, 28, 5)};
  const auto laid = lay_tube(task);
  REQUIRE_FALSE(laid);
  CHECK(laid.said[0].code == "layout.bend-too-wide");
}
