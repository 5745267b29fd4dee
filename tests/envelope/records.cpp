// The heat loss as the JSON shows it.
#include "envelope/shops.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/key.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("an envelope is described down to its numbers") {
  Envelope envelope = *envelope_of(shop_with_store()).value;
  const Record record = record_of(envelope);
  const Rows rooms = std::get<Rows>(find_key(record, "room")->slot(record.at));
  REQUIRE(rooms.size(rooms.at) == 2);
  const Record store = rooms.row(rooms.at, 1);
  const Key* walls = find_key(store, "walls");
  CHECK(walls->member == "walls_W_per_K");
  CHECK(walls->unit->dimension == Dimension::conductance);
  CHECK(*std::get<Number>(walls->slot(store.at)).at == envelope.room[1].walls_W_per_K);

  const Rows edges = std::get<Rows>(find_key(record, "edge")->slot(record.at));
  const Record door = edges.row(edges.at, 2);
  const Key* kind = find_key(door, "kind");
  CHECK(write_out(*kind, kind->slot(door.at), System::us) == "big door");
  const Record ground = std::get<Record>(find_key(record, "ground")->slot(record.at));
  CHECK(*std::get<Number>(find_key(ground, "dimension")->slot(ground.at)).at == envelope.ground.dimension_m);
  const Record iso = std::get<Record>(find_key(ground, "iso13370")->slot(ground.at));
  CHECK(*std::get<Number>(find_key(iso, "plane")->slot(iso.at)).at == envelope.ground.iso13370.plane_W_per_m2K);
}
