// What a caller may not ask for.
#include <functional>
#include <limits>

#include "slabwright/conduction.hpp"
#include "slabwright/conduction_edge.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

using Kind = FieldDriver::Kind;
using Catch::Matchers::Contains;

FieldSection sound() {
  FieldSection section;
  section.drivers = {{"air", Kind::temperature}, {"heat", Kind::heat}};
  section.materials = {{0.0, 1.0, 0.0, 1.0, 2.0}};
  section.boundaries = {{{{0.0, 1.0}, {1.0, 1.0}}, SurfaceFilm{6.0, {0}}}};
  section.planes = {{{{0.0, 0.5}, {1.0, 0.5}}, {1}}};
  section.lines = {{{0.25, 0.25}, {1}}};
  return section;
}

const FieldOptions coarse{0.1, 1.5, 0.25, false};

void refused(const std::string& words, const std::function<void(FieldSection&)>& spoil) {
  FieldSection section = sound();
  spoil(section);
  CHECK_THROWS_WITH(unit_responses(section, {{0.5, 0.5}}, coarse), Contains(words));
}

EdgeDetail sound_edge() {
  EdgeDetail detail;
  detail.kind = DoorEdge{};
  detail.half_width_m = 4.0;
  detail.slab_thickness_m = 0.12;
  detail.tube_depth_m = 0.06;
  detail.last_tube_in_m = 0.3;
  EdgeBuild build;
  build.under = {{{1.4, 0.05}, {}}};
  build.outside = EdgeBoard{{1.4, 0.05}, 0.6};
  return with_build(detail, build);
}

void edge_refused(const std::string& words, const std::function<void(EdgeDetail&)>& spoil) {
  EdgeDetail detail = sound_edge();
  spoil(detail);
  CHECK_THROWS_WITH(edge_section(detail), Contains(words));
}

}  // namespace

TEST_CASE("the sound section and edge are taken") {
  CHECK_NOTHROW(unit_responses(sound(), {{0.5, 0.5}}, coarse));
  CHECK_NOTHROW(edge_section(sound_edge()));
}

TEST_CASE("a section without a temperature is refused, and so is a piece of it") {
  refused("no boundary with a temperature", [](FieldSection& s) { s.boundaries.clear(); });
  refused("no boundary with a temperature", [](FieldSection& s) { s.materials.push_back({2.0, 3.0, 0.0, 1.0, 1.0}); });
}

TEST_CASE("materials without size or conductivity are refused") {
  refused("needs material", [](FieldSection& s) { s.materials.clear(); });
  refused("width and a height", [](FieldSection& s) { s.materials[0].x1_m = 0.0; });
  refused("conductivity", [](FieldSection& s) { s.materials[0].conductivity_W_per_mK = 0.0; });
  refused("finite", [](FieldSection& s) { s.materials[0].y1_m = std::numeric_limits<double>::infinity(); });
}

TEST_CASE("stretches and sources must be straight, on material, apart and of the right kind") {
  refused("along x or along y", [](FieldSection& s) { s.boundaries[0].where.to.y_m = 0.0; });
  refused("length", [](FieldSection& s) { s.boundaries[0].where.to = s.boundaries[0].where.from; });
  refused("film coefficient", [](FieldSection& s) { s.boundaries[0].condition = SurfaceFilm{0.0, {0}}; });
  refused("must lie on material", [](FieldSection& s) { s.boundaries[0].where.to.x_m = 1.5; });
  refused("outside of the material", [](FieldSection& s) { s.boundaries[0].where = {{0.0, 0.5}, {1.0, 0.5}}; });
  refused("on one place", [](FieldSection& s) {
    s.boundaries.push_back({{{0.5, 1.0}, {0.75, 1.0}}, FixedTemperature{{0}, {0}}});
  });
  refused("heat plane", [](FieldSection& s) { s.planes[0].where.to.x_m = 1.5; });
  refused("heat line", [](FieldSection& s) { s.lines[0].where = {1.5, 0.25}; });
  refused("wrong kind", [](FieldSection& s) { s.boundaries[0].condition = SurfaceFilm{6.0, {1}}; });
  refused("wrong kind", [](FieldSection& s) { s.planes[0].driver = {0}; });
  refused("no such driver", [](FieldSection& s) { s.lines[0].driver = {7}; });
  refused("finite", [](FieldSection& s) { s.lines[0].where.x_m = std::numeric_limits<double>::quiet_NaN(); });
}

TEST_CASE("a watched point off the material and senseless cells are refused") {
  CHECK_THROWS_WITH(unit_responses(sound(), {{0.5, 1.2}}, coarse), Contains("watched point"));
  CHECK_THROWS_WITH(unit_responses(sound(), {}, {0.0, 1.2, 1.0, false}), Contains("first cell"));
  CHECK_THROWS_WITH(unit_responses(sound(), {}, {0.1, 0.9, 1.0, false}), Contains("shrink"));
  CHECK_THROWS_WITH(unit_responses(sound(), {}, {0.1, 1.2, 0.05, false}), Contains("largest cell"));
}

TEST_CASE("an edge whose parts do not fit is refused") {
  edge_refused("above 0", [](EdgeDetail& d) { d.slab_thickness_m = 0.0; });
  edge_refused("films", [](EdgeDetail& d) { d.indoor_film_m2K_per_W = 0.0; });
  edge_refused("fit on the slab", [](EdgeDetail& d) { d.kind = WallEdge{4.0, 0.0}; });
  edge_refused("fit on the slab", [](EdgeDetail& d) { d.kind = DoorEdge{0.0, 0.05}; });
  edge_refused("nose and cover", [](EdgeDetail& d) { d.kind = DoorEdge{0.2, -0.1}; });
  edge_refused("nose and cover", [](EdgeDetail& d) { d.kind = WallEdge{0.2, -0.1}; });
  edge_refused("in the slab", [](EdgeDetail& d) { d.tube_depth_m = 0.2; });
  edge_refused("in the room", [](EdgeDetail& d) { d.last_tube_in_m = 4.0; });
  edge_refused("ground outside", [](EdgeDetail& d) { d.grade_depth_m = -0.1; });
  edge_refused("below and beyond", [](EdgeDetail& d) { d.domain_depth_m = 0.1; });
  edge_refused("below and beyond", [](EdgeDetail& d) { d.domain_outside_m = 0.0; });
  edge_refused("needs a size", [](EdgeDetail& d) { d.parts[0].in_to_m = d.parts[0].in_from_m; });
  edge_refused("above the floor", [](EdgeDetail& d) { d.parts[0].depth_from_m = -0.1; });
  edge_refused("conductivities", [](EdgeDetail& d) { d.parts[0].conductivity_W_per_mK = 0.0; });
}

TEST_CASE("a board that is none is refused") {
  EdgeBuild build;
  build.under = {{{0.0, 0.05}, {}}};
  CHECK_THROWS_WITH(with_build(sound_edge(), build), Contains("resistance and thickness"));
  build.under.clear();
  build.inside = EdgeBoard{{1.0, 0.05}, 0.1};
  CHECK_THROWS_WITH(with_build(sound_edge(), build), Contains("below the slab"));
}
