// Every figure of a drawing is the value at its key in the answer's JSON.
#include "answered.hpp"
#include "picture_keys.hpp"
#include "sheets/temperatures.hpp"
#include "slabwright/sheets.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using test::answered;

namespace {

int checked(const Picture& picture, const std::string& json) {
  const test::KeyFaults found = test::key_faults(picture, json);
  for (const std::string& fault : found.fault) UNSCOPED_INFO(fault);
  CHECK(found.fault.empty());
  return found.keys;
}

Picture with_text(const std::string& text, const std::string& key) {
  Picture picture{0.1, 0.1, "", "", {}};
  picture.layer.push_back({"text", {Lettering{{}, text, 0.003, {}, false, false, Align::middle, key}}, {}});
  return picture;
}

}  // namespace

TEST_CASE("what the plan says is what its keys say, in every layout") {
  int plans = 0;
  for (const auto& one : test::layouts()) {
    INFO(one.name);
    const Answer routed = answered(one.file, Question::route);
    const auto floor = drawn_floor(routed);
    if (!floor || floor->loop.empty()) continue;
    CHECK(checked(draw_plan(*floor).picture, json_of(routed)) > 20);
    ++plans;
  }
  CHECK(plans >= 3);
}

TEST_CASE("what the sheet of temperatures says is what its keys say") {
  for (const char* name : {"frame-shop", "potting-house"}) {
    INFO(name);
    const Answer shop = answered(test::layout(name).file, Question::design);
    REQUIRE(shop.field);
    const auto sheet = draw_warmth(warm_floor(*drawn_floor(shop), shop), warmth_of(*shop.field), spots_of(shop));
    CHECK(checked(sheet.picture, json_of(shop)) > 8);
    CHECK(checked(draw_plan(*drawn_floor(shop)).picture, json_of(shop)) > 20);
  }
}

TEST_CASE("a figure that is not what its key says is found") {
  const std::string json = R"({"a": {"length_m": 3.048, "name": "loop 3"}, "row": [{"port": 4}]})";
  const auto faults = [&](const std::string& text, const std::string& key) {
    return test::key_faults(with_text(text, key), json).fault.size();
  };
  CHECK(faults("loop 3, 10 ft from 4", "a.name a.length_m row[0].port") == 0);
  CHECK(faults("120 1/4 in", "a.length_m") == 1);
  CHECK(faults("120 1/16 in", "a.length_m") == 1);
  CHECK(faults("10.0 ft", "a.length_m") == 0);
  CHECK(faults("10.1 ft", "a.length_m") == 1);
  CHECK(faults("10 ft", "") == 1);
  CHECK(faults("10 ft and 3", "a.length_m") == 1);
  CHECK(faults("3, then 10 ft", "a.length_m") >= 1);
  CHECK(faults("loop 4", "a.name") >= 1);
  CHECK(faults("4", "row[1].port") >= 1);
  CHECK(faults("every 10 ft", "scale") == 0);
}
