// Every room's floor against what its room asks for.
#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>

#include "slabwright/section.hpp"
#include "slabwright/tube.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// 36 x 30 ft on R-10, 1/2 in tube every 12 in.
Design shop() {
  Design design;
  design.slab.size = Size{10.9728, 9.144};
  design.slab.thickness_m = 0.127;
  design.slab.conductivity_W_per_mK = 1.75;
  design.tube.size.name = "1/2 in";
  design.tube.spacing_m = 0.3048;
  design.tube.leader_m = 3.048;
  design.manifold.resize(1);
  design.room.resize(1);
  design.room[0].name = "shop";
  return design;
}

Envelope asked(const Design& design, const std::vector<double>& wanted_W) {
  Envelope envelope;
  envelope.ground.underside_W_per_m2K = 0.4;
  envelope.ground.effective_degC = 3.0;
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    RoomLoss loss;
    loss.name = design.room[i].name;
    loss.heated_floor = design.room[i].heated_floor;
    loss.indoor_degC = 15.5;
    loss.wanted_W = wanted_W.at(i);
    envelope.room.push_back(loss);
  }
  return envelope;
}

Checked<FloorPlan> plan(const Design& design, const std::vector<double>& wanted_W) {
  return floor_of(design, plan_loops(design).value.value(), asked(design, wanted_W));
}

std::optional<Diagnostic> find(const std::vector<Diagnostic>& said, const std::string& code) {
  const auto found = std::find_if(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
  return found == said.end() ? std::nullopt : std::optional(*found);
}

}  // namespace

TEST_CASE("the section is taken from the design") {
  Design design = shop();
  design.slab.concrete_above_tube_m = 0.05;
  design.slab.covering.resistance_m2K_per_W = 0.04;
  const Section s = plan(design, {6000.0}).value->section;
  CHECK(s.outside_diameter_m == Approx(0.015875));
  CHECK(s.cover_above_m == Approx(0.05 + 0.0079375));
  CHECK(s.cover_above_m + s.cover_below_m == Approx(0.127));
  CHECK(s.covering_m2K_per_W == 0.04);
  CHECK(s.underside_W_per_m2K == 0.4);
  CHECK(s.below_degC == 3.0);
  CHECK(s.wall_mK_per_W == Approx(wall_resistance_mK_per_W(*find_tube("1/2 in"))));
  design.tube.conductivity_W_per_mK = 0.19;
  CHECK(plan(design, {6000.0}).value->section.wall_mK_per_W == Approx(2.0 * s.wall_mK_per_W));
}

TEST_CASE("a floor that can gives what it is asked, and each watt is counted") {
  const Checked<FloorPlan> checked = plan(shop(), {6000.0});
  CHECK(checked.said.empty());
  const FloorPlan& p = checked.value.value();
  const RoomFloor& floor = p.room.at(0);
  CHECK(floor.room == "shop");
  CHECK(floor.heated_m2 == Approx(10.9728 * 9.144).epsilon(1e-12));
  CHECK(floor.given_W_per_m2 == floor.wanted_W_per_m2);
  CHECK(floor.shortfall_W == 0.0);
  CHECK(floor.limit_degC == 29.0);
  CHECK(floor.floor.up_W_per_m2 * floor.heated_m2 == Approx(6000.0).epsilon(1e-9));
  CHECK(p.tube_heat_W - p.down_W == Approx(6000.0).epsilon(1e-9));
  CHECK(p.down_W == Approx(floor.floor.down_W_per_m2 * floor.heated_m2).epsilon(1e-12));
  CHECK(p.down_W > 0.4 * floor.heated_m2 * 12.5 * 0.8);  // more than a floor at the room's own temperature would
  CHECK(p.opinion.size() == 2);
}

TEST_CASE("the nominal film is one that turbulent water has") {
  const TubeSize& tube = *find_tube("1/2 in");
  const FluidProperties water = properties_of({}, 35.0);
  const auto coefficient = [&](double reynolds) {
    const double flow =
        reynolds * 3.14159265358979 * tube.inside_diameter_m * water.viscosity_Pa_s / (4.0 * water.density_kg_per_m3);
    return inside_film(bore_of(tube, 80.0), water, flow).coefficient_W_per_m2K;
  };
  CHECK(coefficient(4000.0) == Approx(1500.0).epsilon(0.1));
  CHECK(coefficient(8000.0) == Approx(3000.0).epsilon(0.1));
  CHECK(coefficient(4000.0) < nominal_film_W_per_m2K);
  CHECK(coefficient(8000.0) > nominal_film_W_per_m2K);
}

TEST_CASE("the warmest place of the floor stops at 29 degC and the room that goes short is named") {
  const Checked<FloorPlan> checked = plan(shop(), {20000.0});
  const RoomFloor& floor = checked.value->room.at(0);
  CHECK(floor.floor.floor_over_tube_degC == Approx(29.0).margin(1e-3));
  CHECK(floor.floor.floor_mean_degC < 29.0);
  CHECK(floor.given_W_per_m2 * floor.heated_m2 + floor.shortfall_W == Approx(20000.0).epsilon(1e-9));
  const auto said = find(checked.said, "floor.too-warm");
  REQUIRE(said);
  CHECK(said->severity == Severity::failure);
  CHECK(said->about == "room[1]");
  CHECK(std::get<std::string>(said->parts.at(0)) == "shop");
  CHECK(std::get<Measured>(said->parts.at(3)).si == Approx(floor.shortfall_W));
  CHECK(std::get<Measured>(said->parts.at(5)).si > 29.0);
  const std::string text = say(*said, System::us);
  CHECK(text.find("84 F") != std::string::npos);
  CHECK(text.find("95 F") != std::string::npos);
  CHECK(text.find("{}") == std::string::npos);
}

TEST_CASE("a floor just within its limit is not stopped") {
  const double most_W = [] {
    const RoomFloor floor = plan(shop(), {20000.0}).value->room.at(0);
    return floor.given_W_per_m2 * floor.heated_m2;
  }();
  CHECK(plan(shop(), {most_W - 1.0}).said.empty());
  CHECK(find(plan(shop(), {most_W + 5.0}).said, "floor.too-warm"));
}

TEST_CASE("a room that is itself warmer than the limit gets nothing") {
  const Design design = shop();
  Envelope envelope = asked(design, {3000.0});
  envelope.room[0].indoor_degC = 31.0;
  const Checked<FloorPlan> checked = floor_of(design, plan_loops(design).value.value(), envelope);
  CHECK(checked.value->room[0].given_W_per_m2 == 0.0);
  CHECK(checked.value->room[0].shortfall_W == Approx(3000.0));
  CHECK(find(checked.said, "floor.too-warm"));
}

TEST_CASE("rooms without tube give nothing") {
  Design design = shop();
  design.room = std::vector<Room>(3);
  design.room[0].name = "shop";
  design.room[0].area_m2 = 60.0;
  design.room[1].name = "store";
  design.room[1].area_m2 = 20.0;
  design.room[1].heated_floor = false;
  design.room[2].name = "office";
  design.room[2].area_m2 = 20.0;
  LoopEntry entry;
  entry.length_m = 80.0;
  design.loop = {entry};
  const Checked<FloorPlan> checked = plan(design, {1500.0, 0.0, 700.0});
  const std::vector<RoomFloor>& room = checked.value->room;
  REQUIRE(room.size() == 3);
  CHECK(room[0].given_W_per_m2 > 0.0);
  CHECK(room[1].heated_m2 == 0.0);
  CHECK(room[1].shortfall_W == 0.0);
  CHECK(room[2].given_W_per_m2 == 0.0);
  CHECK(room[2].shortfall_W == 700.0);
  const auto said = find(checked.said, "floor.no-tube");
  REQUIRE(said);
  CHECK(said->about == "room[3]");
  CHECK(say(*said, System::si) == "office asks its floor for 0.70 kW, and no tube lies in it");
}

TEST_CASE("a thick covering is warned of") {
  Design design = shop();
  design.slab.covering.resistance_m2K_per_W = 0.16;
  const Checked<FloorPlan> checked = plan(design, {3000.0});
  REQUIRE(find(checked.said, "covering.too-thick"));
  CHECK(find(checked.said, "covering.too-thick")->severity == Severity::warning);
  design.slab.covering.resistance_m2K_per_W = 0.14;
  CHECK_FALSE(find(plan(design, {3000.0}).said, "covering.too-thick"));
}

TEST_CASE("a tube that does not fit into the slab has no floor") {
  Design design = shop();
  design.slab.concrete_above_tube_m = 0.115;
  const Checked<FloorPlan> checked = plan(design, {3000.0});
  CHECK_FALSE(checked);
  REQUIRE(find(checked.said, "slab.tube-does-not-fit"));
  CHECK(find(checked.said, "slab.tube-does-not-fit")->severity == Severity::problem);
}

TEST_CASE("EN 1264 where it is at home and far off is warned of") {
  Design design = shop();
  design.slab.thickness_m = 0.045;
  design.slab.concrete_above_tube_m = 0.0285;
  design.slab.conductivity_W_per_mK = 0.8;
  CHECK(find(plan(design, {3000.0}).said, "section.opinions-differ"));
  design.slab.conductivity_W_per_mK = 1.3;
  design.tube.spacing_m = 0.15;
  const Checked<FloorPlan> near = plan(design, {3000.0});
  CHECK(near.value->opinion.at(0).made_for);
  CHECK_FALSE(find(near.said, "section.opinions-differ"));
}

TEST_CASE("loops and losses of two designs are a bug") {
  const Design design = shop();
  CHECK_THROWS_AS(floor_of(design, plan_loops(design).value.value(), Envelope{}), std::logic_error);
}
