// The air near an edge as a driver of its own: it takes its part from the room's, and nothing else moves.
#include <algorithm>

#include "slabwright/conduction_edge.hpp"
#include "slabwright/contract.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// What small cells at a line more may move of a weight: 0.0002 when this was written.
constexpr double one_line_more = 5e-4;

EdgeDetail door(double near_air_m) {
  EdgeDetail detail;
  detail.kind = DoorEdge{};
  detail.half_width_m = 6.0;
  detail.slab_thickness_m = 0.15;
  detail.tube_depth_m = 0.075;
  detail.last_tube_in_m = 0.2;
  detail.near_air_m = near_air_m;
  EdgeBuild build;
  build.under = {{{1.43, 0.05}, {}}};
  return with_build(detail, build);
}

const std::vector<EdgePoint> points{{0.0, 0.0}, {0.025, 0.0}, {0.3, 0.075}, {1.0, 0.0}, {3.0, 0.075}};
constexpr double reach_m = 1.0;

}  // namespace

TEST_CASE("room air and near air together weigh what the room's air weighs alone") {
  const UnitResponses split = edge_responses(door(reach_m), points), whole = edge_responses(door(0.0), points);
  for (std::size_t p = 0; p < points.size(); ++p) {
    const std::vector<double>&of = split.weights[p], &one = whole.weights[p];
    CAPTURE(points[p].in_m, of, one);
    REQUIRE(of.size() == edge_row::near_air + 1);
    REQUIRE(one.size() == edge_row::near_air);
    CHECK(of[edge_row::indoor] + of[edge_row::near_air] == Approx(one[edge_row::indoor]).margin(one_line_more));
    for (const std::size_t driver : {edge_row::outdoor, edge_row::ground, edge_row::tube_heat})
      CHECK(of[driver] == Approx(one[driver]).margin(one_line_more));
    const double sum = of[edge_row::indoor] + of[edge_row::near_air] + of[edge_row::outdoor] + of[edge_row::ground];
    CHECK(sum == Approx(1.0).epsilon(1e-9));
  }
  // Over the tube nearest the door the near air counts most, in the middle of the floor next to nothing.
  CHECK(split.weights[2][edge_row::near_air] > 0.7);
  CHECK(split.weights[4][edge_row::near_air] < 0.05);
  CHECK(split.weights[3][edge_row::near_air] == Approx(split.weights[3][edge_row::indoor]).margin(0.1));
}

TEST_CASE("heat from the near air has a row of its own, and what enters leaves") {
  const UnitResponses split = edge_responses(door(reach_m), {}), whole = edge_responses(door(0.0), {});
  REQUIRE(split.heat_in.size() == edge_row::near_air_heat + 1);
  REQUIRE(whole.heat_in.size() == edge_row::near_air_heat);
  const auto room = [&](std::size_t driver) {
    return split.heat_in[edge_row::indoor][driver] + split.heat_in[edge_row::near_air_heat][driver];
  };
  CHECK(room(edge_row::indoor) + room(edge_row::near_air) ==
        Approx(whole.heat_in[edge_row::indoor][edge_row::indoor]).epsilon(1e-3));
  for (std::size_t driver = 0; driver <= edge_row::near_air; ++driver) {
    double in = 0.0;
    for (const std::vector<double>& row : split.heat_in) in += row[driver];
    // A watt let free on each of 5.7 m of floor over tubes leaves, a kelvin only moves heat from one air to another.
    CHECK(in == Approx(driver == edge_row::tube_heat ? -5.7 : 0.0).margin(1e-9));
  }
  CHECK(split.imbalance_share < 1e-9);
}

TEST_CASE("near air as wide as the floor is the room's air") {
  const auto all = edge_responses(door(20.0), points).weights, whole = edge_responses(door(0.0), points).weights;
  for (std::size_t p = 0; p < points.size(); ++p) {
    CHECK(all[p][edge_row::indoor] == 0.0);
    CHECK(all[p][edge_row::near_air] == Approx(whole[p][edge_row::indoor]).epsilon(1e-9));
  }
  CHECK_THROWS_AS(edge_section(door(-0.1)), std::logic_error);
}

TEST_CASE("a floor that its tubes hold knows no near air") {
  const FieldSection split = held_edge_section(door(reach_m)), whole = held_edge_section(door(0.0));
  CHECK(split.drivers.size() == whole.drivers.size());
  CHECK(split.boundaries.size() == whole.boundaries.size());
}

TEST_CASE("few states keep the near air apart, and its steady answers") {
  const EdgePoint tube{0.3, 0.075};
  const FieldOptions coarse{0.02, 1.5, 3.0, false};
  StatesOptions options;
  options.grid = coarse;
  options.constant = {FieldDriverId{edge_row::outdoor}, FieldDriverId{edge_row::ground}};
  const EdgeDetail detail = door(reach_m);
  const FieldSection section = edge_section(detail);
  const FewStates states = by_driver(section, few_states(section, {point_of(detail, tube)}, options));
  const UnitResponses steady = edge_responses(detail, {tube}, coarse);
  REQUIRE(states.direct.size() == 1 + edge_row::near_air_heat + 1);
  for (std::size_t driver = 0; driver <= edge_row::near_air; ++driver) {
    DriverValues one(edge_row::near_air + 1, 0.0);
    one[driver] = 1.0;
    const std::vector<double> values = watched_values(states, steady_state(states, one), one);
    CHECK(values[0] == Approx(steady.weights[0][driver]).margin(1e-9));
    for (std::size_t row = 0; row < steady.heat_in.size(); ++row)
      CHECK(values[1 + row] == Approx(steady.heat_in[row][driver]).margin(1e-8));
  }
  // 0.0008 of a kelvin at the tube and 0.007 W/mK of heat when this was written.
  for (std::size_t output = 0; output < states.step_errors.size(); ++output)
    for (const double error : states.step_errors[output]) CHECK(error < (output == 0 ? 0.002 : 0.01));
}
