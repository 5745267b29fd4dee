// The guesses that complete a design.
#include "design/support.hpp"
#include "slabwright/tube.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {
constexpr double inch = 0.0254, foot = 0.3048;
}

TEST_CASE("a default is round in the user's own units") {
  const DesignFile us = must_read("units = \"US\""), si = must_read("units = \"SI\"");
  CHECK(us.design.tube.spacing_m == Approx(0.3048));
  CHECK(si.design.tube.spacing_m == 0.3);
  CHECK(guess(us, "tube.spacing") == "12 in");
  CHECK(guess(si, "tube.spacing") == "300 mm");
  CHECK(us.design.slab.conductivity_W_per_mK == si.design.slab.conductivity_W_per_mK);
  CHECK(us.design.codes == Codes::north_america);
  CHECK(si.design.codes == Codes::europe);
}

TEST_CASE("what is given is no guess, and every guess names its source") {
  const DesignFile file = must_read("[tube]\nspacing = \"12 in\"");
  CHECK(guess(file, "tube.spacing") == "-");
  CHECK(guess(file, "tube.size") == "1/2 in");
  for (const Assumption& assumption : file.assumed) {
    INFO(assumption.path);
    CHECK_FALSE(assumption.text.empty());
    CHECK_FALSE(assumption.source.empty());
    CHECK_FALSE(gives(file, assumption.path));
  }
}

TEST_CASE("the coldest hour lies 12 F or 7 K below the design weather until it is given") {
  const auto coldest = [](std::string_view text) { return must_read(text).design.climate.coldest_degC; };
  CHECK(*coldest("[climate]\noutdoor = \"-12 F\"") == Approx((-24.0 - 32.0) / 1.8));
  CHECK(*coldest("units = \"SI\"\n[climate]\noutdoor = \"-20 C\"") == Approx(-27.0));
  CHECK(*coldest("[climate]\noutdoor = \"-12 F\"\ncoldest = \"-30 F\"") == Approx((-30.0 - 32.0) / 1.8));
  CHECK_FALSE(coldest("[slab]\narea = \"900 ft2\""));
}

TEST_CASE("the tube lies mid-depth until concrete_above_tube says otherwise") {
  const auto depth_m = [](std::string_view text) { return tube_axis_depth_m(must_read(text).design); };
  const double outside_m = find_tube("1/2 in")->outside_diameter_m;
  CHECK(depth_m("[slab]\nthickness = \"5 in\"") == Approx(2.5 * inch));
  CHECK(depth_m("[slab]\nthickness = \"8 in\"") == Approx(4.0 * inch));
  CHECK(depth_m("[slab]\nthickness = \"5 in\"\nconcrete_above_tube = \"2 in\"") == Approx(2 * inch + 0.5 * outside_m));
  CHECK(guess(must_read("[slab]\nthickness = \"5 in\""), "slab.concrete_above_tube") == "2.19 in");
}

TEST_CASE("a workshop has a room, one big door and a manifold") {
  const DesignFile file = must_read(layout("ten-lines").text);
  REQUIRE(file.design.room.size() == 1);
  CHECK(floor_shape(file.design.room[0]).area_m2 == floor_shape(file.design.slab).area_m2);
  REQUIRE(file.design.opening.size() == 1);
  CHECK(file.design.opening[0].kind == OpeningKind::big_door);
  CHECK(file.design.opening[0].size == Size{12 * foot, 10 * foot});
  CHECK(file.design.manifold.size() == 1);
  CHECK(guess(file, "room[1]") == "the whole slab");
  CHECK(guess(file, "opening[1]") == "big door 12 ft x 10 ft");
  CHECK(guess(file, "manifold[1]") == "one");
  CHECK(guess(file, "opening[1].kind") == "-");
  CHECK_FALSE(file.design.building.described);
}

TEST_CASE("a window does not take the big door's place; a big door or a word does") {
  const auto doors = [](std::string_view text) {
    const auto& openings = must_read(text).design.opening;
    return std::count_if(openings.begin(), openings.end(),
                         [](const Opening& o) { return o.kind == OpeningKind::big_door; });
  };
  CHECK(doors("[[opening]]\nkind = \"window\"") == 1);
  CHECK(doors("[[opening]]\nstrip = \"R-10\"") == 1);
  CHECK(doors("[[opening]]\nkind = \"big door\"\n[[opening]]\nkind = \"big door\"") == 2);
  CHECK(doors("[building]\nbig_door = false") == 0);
}

TEST_CASE("an opening without a size gets one by its kind") {
  const DesignFile file = must_read("units = \"SI\"\n[[opening]]\nkind = \"door\"\n[[opening]]\nkind = \"window\"");
  CHECK(file.design.opening[0].size == Size{0.9, 2.1});
  CHECK(guess(file, "opening[1].size") == "0.9 m x 2.1 m");
  CHECK(guess(file, "opening[2].size") == "0.9 m x 1.2 m");
}

TEST_CASE("quality picks the building's other values, and only those") {
  const DesignFile tight = must_read("[building]\nquality = \"tight\"");
  CHECK(guess(tight, "building.wall_insulation") == "R-19");
  CHECK(guess(tight, "building.air_changes") == "0.35 per hour");
  CHECK(guess(tight, "insulation.under") == "R-10");
  CHECK_FALSE(tight.design.building.described);
  const DesignFile poor = must_read("units = \"SI\"\n[building]\nquality = \"poor\"\nheight = \"3 m\"");
  CHECK(guess(poor, "building.wall_insulation") == "1.4 m2K/W");
  CHECK(poor.design.building.height_m == 3.0);
  CHECK(poor.design.building.described);
}

TEST_CASE("a building is described once walls, roof, leaks or openings are the user's own") {
  const auto described = [](std::string_view text) { return must_read(text).design.building.described; };
  CHECK(described("[building]\nwall_insulation = \"R-13\""));
  CHECK(described("[building]\nheat_loss = \"9 kW\""));
  CHECK(described("[[room]]\nouter_wall = \"30 ft\""));
  CHECK(described("[[opening]]\nsize = \"10 x 8 ft\""));
  CHECK_FALSE(described("[[opening]]\nstrip = \"R-10\""));
  CHECK_FALSE(described("[building]\nbig_door = false"));
}

TEST_CASE("a room without a size takes what the others leave; a slab without one is its rooms") {
  const DesignFile rest =
      must_read("[slab]\nsize = \"36 x 30 ft\"\n[[room]]\nname = \"shop\"\n[[room]]\nsize = \"10 x 8 ft\"");
  CHECK(*rest.design.room[0].area_m2 == Approx(1000 * foot * foot));
  CHECK(guess(rest, "room[1].area") == "1000 ft2");
  const DesignFile sum = must_read("[[room]]\narea = \"600 ft2\"\n[[room]]\narea = \"300 ft2\"");
  CHECK(floor_shape(sum.design.slab).area_m2 == Approx(900 * foot * foot));
}

TEST_CASE("the exposed edge is all of it, a square's where only the area is known") {
  const auto edge_m = [](std::string_view text) { return must_read(text).design.slab.exposed_perimeter_m; };
  CHECK(*edge_m("[slab]\nsize = \"36 x 30 ft\"") == Approx(132 * foot));
  CHECK(*edge_m("[slab]\narea = \"900 ft2\"") == Approx(120 * foot));
  CHECK(*edge_m("[slab]\narea = \"900 ft2\"\nexposed_perimeter = \"60 ft\"") == Approx(60 * foot));
  CHECK_FALSE(edge_m("[tube]\nspacing = \"12 in\""));
}

TEST_CASE("glycol: a share says the kind, a kind says a share, mass becomes volume") {
  CHECK(guess(must_read("[fluid]\nglycol = \"30 %\""), "fluid.kind") == "propylene glycol");
  CHECK(guess(must_read("[fluid]\nkind = \"ethylene glycol\""), "fluid.glycol") == "30 %");
  CHECK(mixture_of(must_read("[tube]\nspacing = \"12 in\"").design.fluid).glycol_volume_share == 0.0);
  const Mixture by_mass =
      mixture_of(must_read("[fluid]\nkind = \"ethylene glycol\"\nglycol = \"33 % by mass\"").design.fluid);
  CHECK(glycol_mass_share(by_mass) == Approx(0.33));
  CHECK(by_mass.glycol_volume_share < 0.33);
}

TEST_CASE("a room's own temperature comes before the climate's") {
  const Design design =
      must_read("[climate]\nindoor = \"60 F\"\n[[room]]\nindoor = \"70 F\"\narea = \"9 m2\"\n[[room]]\narea = \"9 m2\"")
          .design;
  CHECK(indoor_of(design, design.room[0]) == Approx(38.0 / 1.8));
  CHECK(indoor_of(design, design.room[1]) == Approx(28.0 / 1.8));
}

TEST_CASE("sizes of a wing, a footing or an apron are guessed once it is there") {
  const DesignFile none = must_read("units = \"US\""), dry = must_read("[edge]\nwing_insulation = \"none\"");
  CHECK(guess(none, "edge.wing_width") == "-");
  CHECK(guess(dry, "edge.wing_width") == "-");
  CHECK_FALSE(none.design.edge.footing_depth_m);
  const DesignFile wing = must_read("[edge]\nwing_insulation = \"R-10\"\nstem_wall = \"8 in\"");
  CHECK(guess(wing, "edge.wing_width") == "24 in");
  CHECK(guess(wing, "edge.wing_depth") == "12 in");
  CHECK(*wing.design.edge.footing_depth_m == Approx(48 * inch));
  CHECK_FALSE(wing.design.edge.footing_thickness_m);
  CHECK(guess(must_read("[edge]\nwing_insulation = \"R-10\"\nwing_depth = \"20 in\""), "edge.wing_depth") == "-");
  const DesignFile metric = must_read("units = \"SI\"\n[edge]\napron_thickness = \"100 mm\"");
  CHECK(guess(metric, "edge.apron_length") == "1.2 m");
}

TEST_CASE("a rectangle of the edge is made of what it says") {
  EdgePartEntry part;
  CHECK_FALSE(edge_material(part));
  part.material = "concrete";
  CHECK(edge_material(part)->heat_capacity_J_per_m3K == Approx(2300.0 * 880.0));
  part.material = "clay or silt";
  CHECK(edge_material(part)->conductivity_W_per_mK == 1.5);
  part.material = "XPS";
  CHECK(edge_material(part)->conductivity_W_per_mK == Approx(0.02885).epsilon(1e-3));
  part.conductivity_W_per_mK = 0.04;
  CHECK(edge_material(part)->heat_capacity_J_per_m3K == 30.0 * 1450.0);
  part.conductivity_W_per_mK = 0.8;
  CHECK(edge_material(part)->heat_capacity_J_per_m3K == 2.0e6);
}

TEST_CASE("a hose bib stands half outdoors until it says otherwise, wind is 4 m/s and the air at doors a share") {
  const DesignFile file = must_read(
      "units = \"SI\"\n[climate]\nwind = \"36 km/h\"\n[[watch]]\nkind = \"hose bib\"\n[[watch]]\nkind = \"wall pipe\"\n"
      "[[watch]]\nkind = \"hose bib\"\ntoward_outdoor = \"30 %\"");
  CHECK(file.design.climate.wind_m_per_s == Approx(10.0));
  CHECK(file.design.watch[0].toward_outdoor_share == 0.5);
  CHECK(guess(file, "watch[1].toward_outdoor") == "50 %");
  CHECK(file.design.watch[1].toward_outdoor_share == 0.1);
  CHECK(file.design.watch[2].toward_outdoor_share == 0.3);
  const DesignFile us = must_read("units = \"US\"\n[climate]\noutdoor = \"-12 F\""), si = must_read("units = \"SI\"");
  CHECK(guess(us, "climate.wind") == "9 mph");
  CHECK(us.design.climate.wind_m_per_s == Approx(9.0 * 1609.344 / 3600.0));
  CHECK(si.design.climate.wind_m_per_s == 4.0);
  CHECK(si.design.frost_hold.door_air_share == 0.05);
}
