// Heat that goes out along edges and at doors: where it lies in the field, and that it is the section's own.
#include <cmath>

#include "plant/floor_edges.hpp"
#include "plant/floor_raster.hpp"
#include "plant/plants.hpp"
#include "slabwright/geometry_path.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;
using namespace slabwright::plant;

namespace {

struct Hall {
  Piped piped;
  EdgeFields fields;
  LaidFloor laid;
};

/// 10 x 6 m, tube to and fro every 0.25 m, walls and doors as `more` has them.
Hall hall(const Keys& more) {
  Keys keys{
      {"slab.size", "10 x 6 m"}, {"tube.spacing", "0.25 m"}, {"climate.outdoor", "-15 C"}, {"climate.indoor", "18 C"}};
  keys.insert(keys.end(), more.begin(), more.end());
  Hall made{piped(from_keys(keys).design), EdgeFields{}, {}};
  const std::size_t loops = made.piped.loops.loop.size(), lines = 24;
  for (std::size_t loop = 0, row = 0; loop < loops; ++loop) {
    std::vector<Point> corners;
    for (; row < lines * (loop + 1) / loops; ++row) {
      const double y = 0.25 * (static_cast<double>(row) + 0.5);
      const bool right = row % 2 == 0;
      corners.push_back({right ? 0.125 : 9.875, y});
      corners.push_back({right ? 9.875 : 0.125, y});
    }
    made.laid.tube.push_back({rounded(corners, 0.12)});
  }
  return made;
}

FloorPlanCells cells_of_hall(const Hall& made) {
  const OperatingPoint point = operate(made.piped.plant, made.piped.conditions, 40.0);
  return cells_of(made.piped.plant, made.piped.conditions, point, made.laid,
                  *raster_of(made.piped.plant.design, 0.0625, 1e6));
}

/// Down and out with the tubes' plane everywhere at `plane_degC`. The rim's cells have what makes the plate pass it.
double lower_side_W(const Hall& made, double plane_degC) {
  const FloorPlanCells cells = cells_of_hall(made);
  const double cell_m2 = cells.raster.cell_m * cells.raster.cell_m;
  double all_W = 0.0, rim_W = 0.0;
  for (std::size_t i = 0; i < cells.floor.cell.size(); ++i) {
    const PlanCell& cell = cells.floor.cell[i];
    if (cells.raster.room[i] < 0) continue;
    const double down = 1.0 / (cells.slab.down_m2K_per_W + 1.0 / cell.below_W_per_m2K);
    all_W += cell_m2 * down * (plane_degC - cell.below_degC);
  }
  for (const LaidEdge& edge : made.laid.edge) {
    for (const ColdStrip& strip : edge.cold.strip)
      rim_W +=
          distance_m(edge.from, edge.to) * edge.cold.length_share * strip.more_W_per_mK * (plane_degC - strip.to_degC);
  }
  return all_W + rim_W;
}

FloorField field_of(const Hall& made, double supply_degC) {
  const OperatingPoint point = operate(made.piped.plant, made.piped.conditions, supply_degC);
  return floor_field(made.piped.plant, made.piped.conditions, point, made.laid).value.value();
}

const Keys big_door{{"opening[1].kind", "big door"}, {"opening[1].size", "4 x 4 m"}, {"opening[1].place", "5 m, 0 m"}};

}  // namespace

TEST_CASE("strips of an edge add up to the edge, and what they lose beyond the middle is all of the rest") {
  EdgeFields fields;
  const Design design = from_keys({{"slab.size", "10 x 6 m"}, {"climate.outdoor", "-15 C"}}).design;
  for (const EdgeStretch& edge : edges_of(design)) {
    const EdgeHeat whole = fields.heat_down(edge.detail);
    EdgeHeat sum;
    for (const EdgeHeat& one : fields.heat_down(edge.detail, {0.4, 0.8, 1.2})) {
      sum.outdoor_W_per_mK += one.outdoor_W_per_mK, sum.ground_W_per_mK += one.ground_W_per_mK;
      sum.year_with_W_per_mK += one.year_with_W_per_mK, sum.spell_W_per_mK += one.spell_W_per_mK;
    }
    CHECK(sum.outdoor_W_per_mK == Approx(whole.outdoor_W_per_mK));
    CHECK(sum.ground_W_per_mK == Approx(whole.ground_W_per_mK));
    CHECK(sum.year_with_W_per_mK == Approx(whole.year_with_W_per_mK));
    CHECK(sum.spell_W_per_mK == Approx(whole.spell_W_per_mK));
  }
  for (const ColdEdge& edge : cold_edges(design, edges_of(design), fields)) {
    REQUIRE(edge.strip.size() >= 2);
    const auto per_m = [](const ColdStrip& strip) { return strip.more_W_per_mK / (strip.to_m - strip.from_m); };
    for (std::size_t i = 1; i < edge.strip.size(); ++i) CHECK(per_m(edge.strip[i]) < per_m(edge.strip[i - 1]));
  }
}

// derived: the edges' share is taken from the section's lower side, so that each watt is there once.
TEST_CASE("with the plane at one temperature the field's lower side is the section's") {
  for (Keys more : {Keys{}, big_door}) {
    Hall made = hall(more);
    made.laid.edge = laid_edges(made.piped.plant.design, made.piped.envelope, made.fields);
    const GroundPath& ground = made.piped.envelope.ground;
    for (const double plane_degC : {10.0, 35.0}) {
      CHECK(lower_side_W(made, plane_degC) ==
            Approx(60.0 * ground.plane_W_per_m2K * (plane_degC - ground.effective_degC)).epsilon(0.02));
    }
  }
}

TEST_CASE("a bare edge and a door are cold in the field, and its heat is kept") {
  Hall made = hall(big_door);
  const FloorField even = field_of(made, 40.0);
  CHECK(even.cold_W == 0.0);
  made.laid.edge = laid_edges(made.piped.plant.design, made.piped.envelope, made.fields);
  REQUIRE(made.laid.edge.size() == 6);  // a door, five pieces of wall
  const FloorField cold = field_of(made, 40.0);
  CHECK(cold.up_W + cold.down_W + cold.cold_W == Approx(cold.water_W).epsilon(1e-6));
  CHECK(cold.cold_W > 0.2 * even.down_W);
  CHECK(cold.up_W == Approx(even.up_W).epsilon(0.02));
  const auto at = [](const FloorField& field, Point where) { return field.surface_degC[cell_at(field.raster, where)]; };
  for (const Point where : {Point{5.0, 0.03}, {1.5, 0.03}, {9.97, 3.0}}) CHECK(at(cold, where) < at(even, where) - 3.0);
  CHECK(at(cold, {5.0, 3.0}) == Approx(at(even, {5.0, 3.0})).margin(1.0));
  // Two cold edges meet in a corner.
  CHECK(at(cold, {0.03, 5.97}) < at(cold, {0.03, 3.0}));
}

// derived: the section of the edge itself, solved with even heat of tubes, against the plate with a rim. Outdoors and
// deep ground as cold as they are for ever, so that both know one cold; even heat by tubes behind a great resistance.
TEST_CASE("near an edge the field's surface is the edge section's") {
  for (const std::string insulation : {"none", "R-10"}) {
    Hall made = hall({{"climate.mean", "-15 C"},
                      {"climate.half_swing", "0 K"},
                      {"slab.exposed_perimeter", "10 m"},
                      {"edge.insulation", insulation},
                      {"insulation.under", "R-10"}});
    const Design& design = made.piped.plant.design;
    const EdgeStretch& wall = made.piped.envelope.edge.at(0);
    made.laid.edge = {{{0.0, 0.0}, {10.0, 0.0}, cold_edges(design, {wall}, made.fields).at(0)}};
    made.laid.edge[0].cold.length_share = 1.0;  // the door that a file is taken to have is not part of this edge
    FloorPlanCells cells = cells_of_hall(made);
    constexpr double water_degC = 2000.0, room_degC = 18.0;
    for (PlanTube& tube : cells.tube)
      tube.supply_degC = water_degC, tube.capacity_W_per_K = 1e9, tube.tube_mK_per_W = 200.0;
    for (std::size_t i = 0; i < cells.floor.cell.size(); ++i) {
      if (cells.raster.room[i] >= 0) cells.floor.cell[i].above_W_per_m2K = 1.0 / wall.detail.indoor_film_m2K_per_W;
    }
    const PlanField field = plant::solve(cells, made.laid.tube, {});
    const double q_W_per_m2 = (water_degC - 24.0) / 200.0 / 0.25;
    for (const double in_m : {0.03125, 0.15625, 0.28125, 0.53125, 1.03125, 2.03125}) {
      const auto weights = edge_responses(wall.detail, {{in_m, 0.0}}).weights[0];
      const double section_degC = weights[edge_row::indoor] * room_degC -
                                  15.0 * (weights[edge_row::outdoor] + weights[edge_row::ground]) +
                                  weights[edge_row::tube_heat] * q_W_per_m2;
      double mean_degC = 0.0;
      for (int i = -8; i < 8; ++i) mean_degC += field.top_degC[cell_at(cells.raster, {5.0 + 0.0625 * i, in_m})] / 16.0;
      INFO(insulation << " " << in_m << " section " << section_degC << " field " << mean_degC);
      // The outermost cell is all rim: the plate has one temperature through its depth, the concrete has not.
      const double drive_K = room_degC + 15.0, share = in_m < 0.0625 ? 0.05 : 0.02;
      CHECK(mean_degC == Approx(section_degC).margin(share * drive_K));
    }
  }
}
