// What a sheet prints is what the JSON says, by one key.
#include "slabwright/report_quotes.hpp"

#include "report/sample.hpp"
#include "slabwright/report.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using report::Kind;

namespace {

const Answer& shop() {
  static const Answer made = test::sample(Question::design);
  return made;
}

}  // namespace

TEST_CASE("a figure is printed in the reader's unit and names its key") {
  const Quotes q(shop());
  const Quote aim = q.figure("balance.port[0].aim_m3_per_s", Kind::flow);
  CHECK(aim.key == "balance.port[0].aim_m3_per_s");
  CHECK(aim.text == "0.61 gpm");
  CHECK(aim.number);
  const Quote bare = q.bare("balance.port[0].aim_m3_per_s", Kind::flow);
  CHECK(bare.text == "0.61");
  CHECK(bare.unit == "gpm");
}

TEST_CASE("lists tell how many rows they have, texts stand as they are") {
  const Quotes q(shop());
  CHECK(q.rows("balance.port") == 2);
  CHECK(q.count("balance.port").text == "2");
  CHECK(q.words("balance.port[1].loop").text == "big door, east");
  CHECK_FALSE(q.words("balance.port[1].loop").number);
  CHECK(q.tape("balance.port[1].length_m").text == "290 ft");
  CHECK(q.rows("balance.nothing") == 0);
}

TEST_CASE("a key that the answer has not is a fault of ours, and said so") {
  const Quotes q(shop());
  CHECK(q.has("balance.port[1]"));
  CHECK_FALSE(q.has("balance.port[2]"));
  CHECK_THROWS_WITH(q.figure("balance.port[2].aim_m3_per_s", Kind::flow),
                    "quotes: the answer has no balance.port[2].aim_m3_per_s");
  CHECK_THROWS_WITH(q.figure("balance.port[1].loop", Kind::flow), "quotes: balance.port[1].loop is no number");
  CHECK_THROWS_WITH(q.words("balance.port"), "quotes: balance.port is no text");
}

TEST_CASE("keys of rows") {
  CHECK(key_of_row("loops.loop", 3, "length_m") == "loops.loop[3].length_m");
  CHECK(key_of_row("lacking", 0) == "lacking[0]");
}
