// An edge in section: its temperatures are those of its watched places, its parts those of the file.
#include "slabwright/building_section.hpp"

#include <algorithm>
#include <cmath>

#include "building/watched.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr Drivers hard_cold{5.0, -30.0, 6.0, 60.0};

struct Edges {
  Design design;
  Envelope envelope;
  WatchedPlaces watched;

  SectionField field(std::size_t row, const Drivers& drivers = hard_cold) const {
    return section_field(design, envelope, watched, row, drivers);
  }
};

Edges edges_of_shop(const Design& design, EdgeFields& fields) {
  const auto envelope = envelope_of(design, fields);
  REQUIRE(envelope);
  return {design, *envelope.value, watched_places(design, *envelope.value, fields)};
}

/// Linear between the four points round a place.
double read_degC(const SectionRaster& raster, double in_m, double depth_m) {
  const double x = (in_m - raster.in_from_m) / raster.cell_m, y = (raster.depth_to_m - depth_m) / raster.cell_m;
  const auto i = static_cast<std::size_t>(x), j = std::min(static_cast<std::size_t>(y), raster.rows - 2);
  const double right = x - static_cast<double>(i), up = y - static_cast<double>(j);
  const auto at = [&](std::size_t di, std::size_t dj) {
    const std::size_t k = (j + dj) * raster.columns + i + di;
    REQUIRE(raster.material[k]);
    return raster.degC[k];
  };
  return (1 - up) * ((1 - right) * at(0, 0) + right * at(1, 0)) + up * ((1 - right) * at(0, 1) + right * at(1, 1));
}

const SectionPart* part_named(const SectionField& field, const std::string& what) {
  for (const SectionPart& part : field.part) {
    if (part.what == what) return &part;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("the raster is what watched places of every layout's edges read") {
  for (const auto& one : layouts()) {
    EdgeFields fields;
    const Edges edges = edges_of_shop(one.file.design, fields);
    for (std::size_t row = 0; row < edges.envelope.edge.size(); ++row) {
      const EdgeStretch& edge = edges.envelope.edge[row];
      if (!one.file.design.room[edge.room].heated_floor) continue;
      INFO(one.name << ", " << edge.name);
      const SectionField field = edges.field(row);
      CHECK(field.error_K < 1.0);
      bool tube = false;
      for (const WatchedPlace& place : edges.watched.place) {
        // Corners are of no one section, and floor lines lie on the very line where the air changes.
        if (place.edge != row || place.corner_share != 1.0 || place.at.in_m == 0.0) continue;
        const auto shown = std::find_if(field.place.begin(), field.place.end(), [&](const SectionPlace& at) {
          return at.in_m == place.at.in_m && at.depth_m == place.at.depth_m;
        });
        if (shown == field.place.end()) continue;
        INFO(place.name);
        const double degC = temperature_at(place.running, hard_cold);
        CHECK(std::abs(shown->temperature_degC - degC) < 0.002 * 36.0);
        if (place.kind != PlaceKind::tube) continue;
        tube = true;
        CHECK(std::abs(read_degC(field.raster, place.at.in_m, place.at.depth_m) - degC) <= field.error_K);
      }
      CHECK((tube || edge.kind == EdgeKind::big_door));
    }
  }
}

TEST_CASE("where everything has one temperature the section has it too") {
  EdgeFields& fields = coarse_fields();
  const Edges edges = edges_of_shop(bare_shop(), fields);
  for (std::size_t row = 0; row < edges.envelope.edge.size(); ++row) {
    const SectionField field = edges.field(row, {7.0, 7.0, 7.0, 0.0});
    for (std::size_t k = 0; k < field.raster.degC.size(); ++k) {
      if (field.raster.material[k]) CHECK(field.raster.degC[k] == Approx(7.0).margin(1e-6));
    }
    CHECK_FALSE(field.freezing_in_m);
    CHECK(field.coldest_slab_degC == Approx(7.0));
    CHECK(field.error_K < 1e-6);
  }
}

TEST_CASE("colder weather freezes the slab further in, and a warm slab none of it") {
  const Edges edges = edges_of_shop(bare_shop(), coarse_fields());
  const std::size_t door = edges.envelope.edge.size() - 1;
  REQUIRE(edges.envelope.edge[door].kind == EdgeKind::big_door);
  const SectionField mild = edges.field(door, {5.0, -10.0, 6.0, 60.0}),
                     hard = edges.field(door, {5.0, -40.0, 6.0, 60.0});
  REQUIRE((mild.freezing_in_m && hard.freezing_in_m));
  CHECK(*hard.freezing_in_m > *mild.freezing_in_m);
  CHECK(hard.coldest_floor_degC < mild.coldest_floor_degC);
  CHECK(hard.coldest_slab_degC <= hard.coldest_floor_degC);
  CHECK(edges.field(door, {5.0, -10.0, 6.0, 60.0}).near_air_degC.value() == Approx(5.0 - 0.1 * 15.0).margin(3.0));
  CHECK_FALSE(edges.field(0).near_air_degC);
}

TEST_CASE("parts are those of the file, boards with what they are worth") {
  DesignFile file = layout("frame-shop").file;
  file = with_keys(file, {{"edge.footing_depth", "42 in"},
                          {"edge.stem_wall", "8 in"},
                          {"edge.footing_width", "16 in"},
                          {"edge.footing_thickness", "8 in"},
                          {"edge.floor_above_grade", "6 in"}});
  const Edges edges = edges_of_shop(file.design, coarse_fields());
  const SectionField field = edges.field(0);
  REQUIRE(field.at == "wall");
  for (const char* what : {"ground", "slab", "foam under the slab", "stem wall", "footing", "foam outside the edge"}) {
    INFO(what);
    CHECK(part_named(field, what));
  }
  CHECK(part_named(field, "footing")->depth_to_m == Approx(42 * 0.0254));
  const SectionPart& foam = *part_named(field, "foam under the slab");
  CHECK(foam.material == "foam");
  CHECK(*foam.thickness_m == Approx(foam.depth_to_m - foam.depth_from_m));
  CHECK(*foam.resistance_m2K_per_W == Approx(file.design.insulation.under.resistance_m2K_per_W));
  CHECK(field.floor_above_ground_m == Approx(6 * 0.0254));
  CHECK(field.raster.depth_to_m > 42 * 0.0254);
  // Air stands above the lower ground outside, and nothing else is air below the floor.
  const std::size_t second_row_left = (field.raster.rows - 2) * field.raster.columns;
  CHECK_FALSE(field.raster.material[second_row_left]);
  CHECK(field.raster.material[second_row_left + field.raster.columns - 1]);
  CHECK(field.tube.size() >= 3);
  CHECK(field.tube[0].in_m == Approx(edges.envelope.edge[0].tube_in_m));
  CHECK(field.concrete_above_tube_m + 0.5 * field.tube_diameter_m == Approx(field.tube_depth_m));
}
