// The edge of a floor: what must hold for every detail, and what each board and break is worth.
#include "slabwright/conduction_edge.hpp"

#include <rapidcheck.h>

#include <cmath>

#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// Identities hold on any grid; a coarse one lets many details be tried.
const FieldOptions coarse{0.02, 1.5, 3.0, false};
constexpr double rounding = 1e-9;

rc::Gen<double> between(double low, double high) {
  return rc::gen::map(rc::gen::inRange(0, 1001), [=](int step) { return low + (high - low) * step / 1000.0; });
}

InsulatingBoard any_board() { return {*between(0.2, 6.0), *between(0.02, 0.15)}; }

bool maybe() { return *rc::gen::arbitrary<bool>(); }

EdgeBuild any_build(EdgeDetail& detail) {
  EdgeBuild build;
  if (maybe()) build.under.push_back({any_board(), {}});
  if (maybe()) build.under.push_back({any_board(), *between(0.3, 1.2)});
  if (maybe()) build.outside = EdgeBoard{any_board(), *between(0.1, 1.2)};
  if (maybe()) build.wing = WingBoard{any_board(), *between(0.3, 1.2), *between(0.1, 0.6)};
  if (maybe()) {
    build.stem_wall = StemWall{*between(0.15, 0.3), *between(0.9, 1.5), {}};
    if (maybe()) build.stem_wall->footing = Footing{*between(0.3, 0.6), *between(0.15, 0.3)};
    if (maybe()) build.inside = EdgeBoard{any_board(), *between(0.4, 0.9)};
    detail.grade_depth_m = *between(0.0, 0.4);
  } else if (maybe()) {
    build.thickened = ThickenedEdge{*between(0.2, 0.5), detail.slab_thickness_m + *between(0.1, 0.5)};
  }
  if (std::holds_alternative<DoorEdge>(detail.kind)) {
    if (maybe()) build.thermal_break = ThermalBreak{{*between(0.3, 3.0), 0.03}, *between(0.0, 0.3)};
    if (maybe()) build.apron = Apron{*between(0.1, 0.2), *between(0.5, 3.0), any_board()};
  }
  return build;
}

EdgeDetail any_detail() {
  EdgeDetail detail;
  detail.half_width_m = *between(1.5, 10.0);
  detail.slab_thickness_m = *between(0.08, 0.3);
  detail.concrete_W_per_mK = *between(0.8, 2.5);
  detail.soil_W_per_mK = *between(0.5, 3.5);
  detail.indoor_film_m2K_per_W = *between(0.08, 0.25);
  detail.tube_depth_m = detail.slab_thickness_m * *between(0.1, 1.0);
  detail.last_tube_in_m = *between(0.0, 0.6);
  if (maybe())
    detail.kind = WallEdge{*between(0.1, 0.4), 0.0};
  else
    detail.kind = DoorEdge{*between(0.03, 0.08), *between(0.0, 0.2)};
  return with_build(detail, any_build(detail));
}

EdgeDetail bare_door() {
  EdgeDetail detail;
  detail.kind = DoorEdge{};
  detail.half_width_m = 6.0;
  detail.slab_thickness_m = 0.15;
  detail.tube_depth_m = 0.075;
  detail.last_tube_in_m = 0.3;
  return detail;
}

EdgeBuild foam_under() {
  EdgeBuild build;
  build.under = {{{1.76, 0.05}, {}}};
  return build;
}

EdgeDetail door() { return with_build(bare_door(), foam_under()); }

EdgeDetail with_board(double resistance_m2K_per_W) {
  EdgeBuild build = foam_under();
  build.outside = EdgeBoard{{resistance_m2K_per_W, 0.05}, 0.6};
  return with_build(bare_door(), build);
}

EdgeDetail with_break(double resistance_m2K_per_W, double in_m) {
  EdgeBuild build = foam_under();
  build.thermal_break = ThermalBreak{{resistance_m2K_per_W, 0.05}, in_m};
  return with_build(bare_door(), build);
}

double outdoor_weight(const EdgeDetail& detail, EdgePoint point) {
  return edge_responses(detail, {point}).weights[0][edge_row::outdoor];
}

}  // namespace

TEST_CASE("weights of temperatures lie between 0 and 1 and add up to 1; heat that enters leaves") {
  CHECK(rc::check("any edge", [] {
    const EdgeDetail detail = any_detail();
    const std::vector<EdgePoint> points{{0.0, 0.0},
                                        {*between(0.0, 1.4), *between(0.0, 2.0)},
                                        {*between(0.0, 0.6), 0.0},
                                        {0.2, detail.tube_depth_m},
                                        {-0.02, detail.slab_thickness_m}};
    const UnitResponses responses = edge_responses(detail, points, coarse);
    for (const std::vector<double>& weights : responses.weights) {
      double sum = 0.0;
      for (const std::size_t driver : {edge_row::indoor, edge_row::outdoor, edge_row::ground}) {
        RC_ASSERT(weights[driver] > 0.0);
        RC_ASSERT(weights[driver] < 1.0);
        sum += weights[driver];
      }
      RC_ASSERT(std::abs(sum - 1.0) < rounding);
      RC_ASSERT(weights[edge_row::tube_heat] > 0.0);
    }
    RC_ASSERT(responses.imbalance_share < rounding);
    // Heat from a to b for a kelvin is heat from b to a.
    for (std::size_t a = 0; a < 3; ++a) {
      for (std::size_t b = 0; b < a; ++b) {
        RC_ASSERT(std::abs(responses.heat_in[a][b] - responses.heat_in[b][a]) < rounding);
        RC_ASSERT(responses.heat_in[a][b] < 0.0);
      }
    }
  }));
}

TEST_CASE("tube heat leaves by each boundary in the mean share of its weight along the tubes") {
  // Reciprocity: heat let free at a point reaches the room in the share in which the room's temperature reaches the
  // point.
  const EdgeDetail detail = door();
  const double tubes_m = 5.9 - 0.3;
  std::vector<EdgePoint> points;
  for (int i = 0; i < 2000; ++i) points.push_back({0.3 + tubes_m * (i + 0.5) / 2000.0, detail.tube_depth_m});
  const UnitResponses responses = edge_responses(detail, points);
  for (const std::size_t row : {edge_row::indoor, edge_row::outdoor, edge_row::ground}) {
    double mean = 0.0;
    for (const std::vector<double>& weights : responses.weights) mean += weights[row] / 2000.0;
    // 2000 points against the kinks of a piecewise linear field.
    CHECK(responses.heat_in[row][edge_row::tube_heat] == Approx(-tubes_m * mean).epsilon(1e-4));
  }
}

TEST_CASE("a mirrored section has mirrored weights") {
  FieldSection section = edge_section(door()), mirrored = section;
  const auto flip = [](double& x_m) { x_m = 21.0 - x_m; };
  for (MaterialRectangle& material : mirrored.materials) {
    flip(material.x0_m);
    flip(material.x1_m);
    std::swap(material.x0_m, material.x1_m);
  }
  const auto flip_segment = [&flip](FieldSegment& segment) {
    flip(segment.from.x_m);
    flip(segment.to.x_m);
  };
  for (BoundaryStretch& stretch : mirrored.boundaries) flip_segment(stretch.where);
  for (HeatPlane& plane : mirrored.planes) flip_segment(plane.where);
  const UnitResponses here = unit_responses(section, {{5.9, 0.0}, {5.63, -0.08}}, coarse);
  const UnitResponses there = unit_responses(mirrored, {{21.0 - 5.9, 0.0}, {21.0 - 5.63, -0.08}}, coarse);
  for (std::size_t point = 0; point < 2; ++point) {
    for (std::size_t driver = 0; driver < 4; ++driver) {
      CHECK(here.weights[point][driver] == Approx(there.weights[point][driver]).epsilon(rounding));
    }
  }
}

TEST_CASE("a thermal break at the door is worth more than a board outside the nose") {
  const EdgePoint tube{0.15, 0.075}, line{0.0, 0.0};
  const EdgeDetail board = with_board(1.76);
  const double bare_line = outdoor_weight(door(), line), bare_tube = outdoor_weight(door(), tube);
  CHECK(bare_line > 0.5);
  CHECK(outdoor_weight(board, line) < bare_line);
  CHECK(outdoor_weight(with_break(1.76, 0.0), line) < 0.5 * outdoor_weight(board, line));
  CHECK(outdoor_weight(with_break(1.76, 0.0), tube) < 0.5 * bare_tube);
}

TEST_CASE("a break of the concrete's own resistance changes nothing") {
  const EdgeDetail none = door(), same = with_break(0.05 / none.concrete_W_per_mK, 0.0);
  CHECK(outdoor_weight(same, {0.15, 0.075}) == Approx(outdoor_weight(none, {0.15, 0.075})).epsilon(1e-3));
}

TEST_CASE("the error estimate is of the size of the error") {
  const std::vector<EdgePoint> points{{0.0, 0.0}, {0.005, 0.0}, {0.025, 0.0}, {0.15, 0.075}};
  FieldOptions usual, fine{0.00125, 1.1, 0.5, false};
  usual.with_error_estimate = true;
  const UnitResponses ours = edge_responses(door(), points, usual), better = edge_responses(door(), points, fine);
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double estimate = ours.weight_errors[i][edge_row::outdoor];
    const double error = std::abs(ours.weights[i][edge_row::outdoor] - better.weights[i][edge_row::outdoor]);
    CHECK(error < estimate);
    CHECK(estimate < 0.005);
  }
  const double heat = ours.heat_in[0][0], better_heat = better.heat_in[0][0];
  CHECK(std::abs(heat - better_heat) < ours.heat_in_errors[0][0]);
  CHECK(ours.heat_in_errors[0][0] < 0.01 * heat);
  CHECK(better.weight_errors.empty());
}
