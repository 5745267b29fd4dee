// The floor plan as the JSON shows it.
#include "section/sections.hpp"
#include "slabwright/key.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("a floor plan is described down to its numbers") {
  FloorPlan plan;
  plan.section = shop_slab();
  plan.room.resize(2);
  plan.room[1].floor.sensor_degC = 27.5;
  plan.opinion = opinions_on(plan.section);
  const Record record = record_of(plan);
  const Key* rooms = find_key(record, "room");
  const Rows rows = std::get<Rows>(rooms->slot(record.at));
  REQUIRE(rows.size(rows.at) == 2);
  const Record room = rows.row(rows.at, 1);
  const Record floor = std::get<Record>(find_key(room, "floor")->slot(room.at));
  const Key* sensor = find_key(floor, "sensor");
  CHECK(sensor->member == "sensor_degC");
  CHECK(*std::get<Number>(sensor->slot(floor.at)).at == 27.5);
  const Record section = std::get<Record>(find_key(record, "section")->slot(record.at));
  CHECK(find_key(section, "wall")->unit->dimension == Dimension::linear_resistance);
}
