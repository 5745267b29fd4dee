// Five edges of a floor on the ground against finite elements: weights, heat, and the room that keeps a point from 0
// °C.
#include "slabwright/conduction_edge.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Row = std::map<std::string, std::string>;

/// Half floor 6 m, slab 0.15 m of 1.75 W/mK, soil 2.0, boards 0.05 m of 0.035, edge board 0.60 m deep, 15 m of ground
/// below and outside, tubes at mid depth; the tube plane ends at x = 5.70.
EdgeDetail detail_of(const std::string& name) {
  const InsulatingBoard board{0.05 / 0.035, 0.05};
  const bool at_door = name.rfind("door", 0) == 0;
  EdgeDetail detail;
  if (at_door)
    detail.kind = DoorEdge{};
  else
    detail.kind = WallEdge{};
  detail.half_width_m = 6.0;
  detail.slab_thickness_m = 0.15;
  detail.tube_depth_m = 0.075;
  detail.last_tube_in_m = at_door ? 0.20 : 0.10;
  EdgeBuild build;
  if (name.find("under") != std::string::npos) build.under = {{board, {}}};
  if (name.find("edge") != std::string::npos) build.outside = EdgeBoard{board, 0.60};
  return with_build(detail, build);
}

std::vector<double> weights_of(const Row& row) {
  return edge_responses(detail_of(row.at("detail")), {{number(row, "in_m"), number(row, "depth_m")}}).weights[0];
}

std::string place(const Row& row) { return row.at("detail") + ", " + row.at("point"); }

Source elements(std::string_view where) {
  return {"Floor edges by quadratic finite elements", std::string(where), Oracle::derived};
}

Within weight_tolerance(const Row& row) {
  if (row.at("place") == "line") return {0.01, 0.0, "on the singular line itself"};
  if (row.at("place") == "near") return {0.005, 0.0, "5 mm from a singular point"};
  return {0.003, 0.0, "spread of two methods, three times"};
}

/// A weight's tolerance on the numerator and on the room's own weight below it, at the widest span of temperatures.
Within room_tolerance(const Row& row, double outdoor_degC) {
  if (row.at("place") == "line") return {2.0, 0.0, "0.01 of weight where the room's own is below a half, 89 K apart"};
  if (row.at("place") == "near") return {1.0, 0.0, "0.005 of weight where the room's own is below a half, 85 K apart"};
  return {outdoor_degC < -35.0 ? 0.5 : 0.3, 0.0, "0.003 of weight, 45 to 75 K apart"};
}

}  // namespace

TEST_CASE("weights of points at the edge of a floor") {
  const std::pair<const char*, std::size_t> columns[] = {
      {"g_i", edge_row::indoor}, {"g_o", edge_row::outdoor}, {"g_d", edge_row::ground}, {"g_q", edge_row::tube_heat}};
  for (const Row& row : read_table("floor_edge_elements/weights.csv")) {
    const std::vector<double> weights = weights_of(row);
    for (const auto& [column, driver] : columns) {
      CHECK_PUBLISHED(elements("weights"), place(row) + ", " + column, row.at(column), weights[driver],
                      weight_tolerance(row));
    }
  }
}

TEST_CASE("heat from the room along the edge of a floor") {
  for (const Row& row : read_table("floor_edge_elements/heat.csv")) {
    const UnitResponses responses = edge_responses(detail_of(row.at("detail")), {});
    CHECK_PUBLISHED(elements("heat from the room"), row.at("detail") + ", W/(m K)", row.at("heat_W_per_mK"),
                    responses.heat_in[edge_row::indoor][edge_row::indoor],
                    Within{0.0, 0.003, "the usual grid is 0.2 % high"});
  }
}

TEST_CASE("the room that keeps a point at the edge from freezing") {
  const std::pair<const char*, double> outdoors[] = {{"-20", -20.0}, {"-30", -30.0}, {"-40", -40.0}};
  const double ground_degC = 8.0;
  for (const Row& row : read_table("floor_edge_elements/lowest_room.csv")) {
    const std::vector<double> weights = weights_of(row);
    for (const auto& [column, outdoor_degC] : outdoors) {
      const double others_K = weights[edge_row::outdoor] * outdoor_degC + weights[edge_row::ground] * ground_degC;
      CHECK_PUBLISHED(elements("lowest room temperature"), place(row) + ", outdoors " + column + " degC, degC",
                      row.at(column), -others_K / weights[edge_row::indoor], room_tolerance(row, outdoor_degC));
    }
  }
}
