// A power cut by few states with the air against the whole model.
#include <algorithm>
#include <cmath>

#include "published/ground/edge_in_time.hpp"
#include "slabwright/building_time.hpp"
#include "slabwright/conduction_edge.hpp"
#include "slow/whole_model.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double hour_s = 3600.0;

/// A wall and a door of 30 and 4 m, held at 12 degC until the power goes.
struct CutEdge {
  const char* detail;
  double length_m;
};
const std::vector<CutEdge> cut_edges{{"wall_under_edge", 30.0}, {"door_under", 4.0}};
constexpr double cut_air_degC = 12.0, cut_outdoor_degC = -18.0, cut_ground_degC = 7.0, cut_tubes_W_per_m2 = 40.0;

CoolingBuilding by_few_states() {
  CoolingBuilding building;
  for (const CutEdge& edge : cut_edges) {
    const FieldSection section = edge_in_time(edge.detail);
    StatesOptions options;
    options.constant = {edge_driver::ground};
    options.grid = options.grid_in_time;
    FloorStrip strip;
    strip.states = by_driver(section, few_states(section, {edge_point(edge.detail, 0.15, 0.075)}, options));
    strip.length_m = edge.length_m;
    strip.width_m = edge_point(edge.detail, 0.0, 0.0).x_m;
    building.floor.push_back(strip);
  }
  building.capacity_J_per_K = 7e6;
  building.loss_W_per_K = 180.0;
  return building;
}

WholeBuilding by_fields(const std::vector<CoolingRow>& rows) {
  WholeBuilding building;
  for (const CutEdge& edge : cut_edges) {
    WholeEdge whole{edge_in_time(edge.detail), {edge_point(edge.detail, 0.15, 0.075)}, edge.length_m, {0}, 0.0, {}, {}};
    const DriverValues before{cut_air_degC, cut_outdoor_degC, cut_ground_degC, cut_tubes_W_per_m2};
    DriverValues after = before;
    after[edge_driver::tube_heat.at] = 0.0;
    whole.before = steady_drivers(before);
    whole.drivers.assign(rows.size() + 1, after);
    whole.drivers[0] = before;
    building.edges.push_back(whole);
  }
  building.times_s = {0.0};
  for (const CoolingRow& row : rows) building.times_s.push_back(row.time_s);
  building.capacity_J_per_K = 7e6;
  building.loss_W_per_K = 180.0;
  building.start_degC = cut_air_degC;
  building.outdoor_degC.assign(rows.size() + 1, cut_outdoor_degC);
  building.gain_W.assign(rows.size() + 1, 0.0);
  return building;
}

/// What leaving out states may cost the air, and 0.002 K when this was written.
constexpr double few_states_air_K = 0.005;

/// What conduction_states.hpp says of the tube's error from an hour after a step on; sooner it may be ten times that.
double promised(const FewStates& states, double air_falls_K) {
  const std::vector<double>& left_out = states.step_errors[0];
  const double before_that = 0.0003;
  return (left_out[edge_row::indoor] + before_that) * air_falls_K +
         (left_out[edge_row::tube_heat] + before_that) * cut_tubes_W_per_m2;
}

}  // namespace

TEST_CASE("a day without power: few states and the air with them are the whole model's") {
  const CoolingBuilding few = by_few_states();
  const PowerCut cut{cut_air_degC, cut_outdoor_degC, cut_ground_degC, cut_tubes_W_per_m2, {1.0}};
  const std::vector<CoolingRow> rows = cool_down(few, cut, {600.0, 24.0 * hour_s});
  // What states do, not what a grid does: one grid for both.
  WholeOptions options;
  options.fields.grid = StatesOptions{}.grid_in_time;
  const WholeRun whole = whole_run(by_fields(rows), options);
  REQUIRE(whole.moved_K <= options.air_K);
  double air_K = 0.0;
  for (std::size_t i = 0; i < rows.size(); ++i)
    air_K = std::max(air_K, std::abs(rows[i].air_degC - whole.air_degC[i + 1]));
  CHECK(air_K < few_states_air_K);
  for (std::size_t e = 0; e < cut_edges.size(); ++e) {
    CAPTURE(cut_edges[e].detail, whole.rounds);
    const double promised_K = promised(few.floor[e].states, cut_air_degC - rows.back().air_degC);
    double soon_K = 0.0, later_K = 0.0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      double& worst = rows[i].time_s < hour_s ? soon_K : later_K;
      worst = std::max(worst, std::abs(rows[i].tube_degC[e] - whole.edges[e].temperatures_degC[i + 1][0]));
    }
    CHECK(later_K < promised_K);
    CHECK(soon_K < 10.0 * promised_K);
  }
}
