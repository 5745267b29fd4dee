// Loops as the JSON shows them.
#include "routing/designs.hpp"
#include "slabwright/key.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("a loop plan is described by its members") {
  LoopPlan plan = plan_loops(shop()).value.value();
  const Record record = record_of(plan);
  const Key* loops = find_key(record, "loop");
  REQUIRE(loops);
  const Rows rows = std::get<Rows>(loops->slot(record.at));
  REQUIRE(rows.size(rows.at) == 4);
  const Record loop = rows.row(rows.at, 1);
  const Key* from = find_key(loop, "from");
  CHECK(write_out(*from, from->slot(loop.at), System::us) == "area and spacing");
  const Key* length = find_key(loop, "length");
  CHECK(length->member == "length_m");
  CHECK(*std::get<Number>(length->slot(loop.at)).at == plan.loop[1].length_m);
}
