// The cold edges that are drawn: which, and in which weather.
#include "slabwright/freeze_section.hpp"

#include "freeze/holds.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("the wall and the door stand in the coldest weather, the room at the dial less its error") {
  const Line line = line_of(bare_shop());
  const Freeze freeze = *checked_hold(line).value;
  const auto sections = held_sections(line.held(), freeze);
  REQUIRE(sections.size() == 2);
  CHECK(sections[0].at == "wall");
  CHECK(sections[1].at == "big door");
  for (const SectionField& field : sections) {
    CHECK(field.outdoor_degC == *line.design.climate.coldest_degC);
    CHECK(field.ground_degC == line.design.climate.mean_degC);
    CHECK(field.room_degC == Approx(freeze.air->dial_degC - line.design.frost_hold.sensor_error_K));
    CHECK(field.tube_W_per_m2 > 0.0);
    CHECK(field.edge < line.envelope.edge.size());
    CHECK(field.name == line.envelope.edge[field.edge].name);
  }
}

TEST_CASE("of several doors the one with the coldest tube is drawn") {
  Design design = bare_shop();
  Opening second = design.opening[0];
  design.opening[0].name = "far door";
  design.opening[0].tube_distance_m = 0.6;
  second.name = "near door";
  second.tube_distance_m = 0.16;
  design.opening.push_back(second);
  const Line line = line_of(design);
  const auto sections = held_sections(line.held(), *checked_hold(line).value);
  REQUIRE(sections.size() == 2);
  CHECK(sections[1].name == "near door");
}

TEST_CASE("no edge is drawn where no place decides") {
  const Line line = line_of(bare_shop());
  CHECK(held_sections(line.held(), Freeze{}).empty());
}
