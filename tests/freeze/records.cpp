// The frost hold as the JSON shows it.
#include "freeze/holds.hpp"
#include "slabwright/key.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("a frost hold is described down to its numbers") {
  Freeze freeze = hold_of(bare_shop());
  freeze.unknown.push_back({"tap", "nobody knows"});
  const Record record = record_of(freeze);
  const auto written = [](const Record& of, std::string_view word) {
    const Key* key = find_key(of, word);
    REQUIRE(key);
    return write_out(*key, key->slot(of.at), System::si);
  };
  CHECK(written(record, "verdict") == "found");
  const Record air = std::get<Record>(find_key(record, "air")->slot(record.at));
  CHECK(written(air, "decides") == freeze.air->decides);
  CHECK(find_key(air, "dial")->member == "dial_degC");
  freeze.slab.reset();
  CHECK(std::get<Record>(find_key(record, "slab")->slot(record.at)).keys.empty());
  CHECK_FALSE(std::get<MaybeNumber>(find_key(record, "boiler_keeps_to")->slot(record.at)).at->has_value());

  const Rows places = std::get<Rows>(find_key(record, "place")->slot(record.at));
  REQUIRE(places.size(places.at) == freeze.place.size());
  const Record first = places.row(places.at, 0);
  CHECK(written(first, "kind") == "room air");
  CHECK(written(first, "name") == freeze.air->decides);
  CHECK(find_key(first, "spare")->unit->dimension == Dimension::rise);
  const Rows unknown = std::get<Rows>(find_key(record, "unknown")->slot(record.at));
  CHECK(written(unknown.row(unknown.at, 0), "why") == "nobody knows");
}
