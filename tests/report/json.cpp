// The JSON holds every described key and nothing that is not a number.
#include <limits>
#include <nlohmann/json.hpp>

#include "sample.hpp"
#include "slabwright/fields.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;
using Json = nlohmann::ordered_json;

namespace {

/// Every key that holds a value stands in the object, under its member's name, to the digits printed.
void check_keys(const Json& object, const Record& record) {
  for (const Key& key : record.keys) {
    INFO(key.member);
    const std::string name(key.member);
    const Slot slot = key.slot(record.at);
    if (const auto* number = std::get_if<Number>(&slot)) {
      REQUIRE(object.contains(name));
      CHECK(object[name].get<double>() == Approx(*number->at).epsilon(1e-5));
    } else if (const auto* maybe = std::get_if<MaybeNumber>(&slot)) {
      CHECK(object.contains(name) == maybe->at->has_value());
    } else if (const auto* inner = std::get_if<Record>(&slot)) {
      check_keys(object.at(name), *inner);
    } else if (const auto* rows = std::get_if<Rows>(&slot)) {
      REQUIRE(object.at(name).size() == rows->size(rows->at));
      for (std::size_t i = 0; i < rows->size(rows->at); ++i) check_keys(object[name][i], rows->row(rows->at, i));
    } else if (!std::holds_alternative<Worded>(slot)) {
      CHECK(object.contains(name));
    }
  }
}

}  // namespace

TEST_CASE("every described key of every stage is there") {
  const Answer answer = undescribed(Question::design);
  const Json json = Json::parse(json_of(answer));
  check_keys(json.at("design"), reading(answer.file.design));
  check_keys(json.at("loops"), reading(*answer.loops));
  check_keys(json.at("envelope"), reading(*answer.envelope));
  check_keys(json.at("floor"), reading(*answer.floor));
  check_keys(json.at("balance"), reading(*answer.balance));
  check_keys(json.at("point"), reading(*answer.point));
  check_keys(json.at("sizes"), reading(*answer.sizes));
  check_keys(json.at("freeze"), reading(*answer.freeze));
}

TEST_CASE("the clock of a power cut stands by weather and setting, without hours where nothing freezes") {
  Answer answer = sample(Question::freeze);
  CHECK_FALSE(Json::parse(json_of(answer)).contains("outage"));
  OutageCase cut;
  cut.outdoor_degC = -20.0;
  cut.air_dial_degC = 9.0;
  cut.first = "tube";
  cut.lasts_s = 7200.0;
  cut.place = {{"tube", 7200.0}, {"tap", {}}};
  cut.pump_first = "tap";
  answer.outage = Outage{345600.0, false, 4500.0, 3600.0, {cut}};
  const Json outage = Json::parse(json_of(answer)).at("outage");
  check_keys(outage, reading(*answer.outage));
  CHECK(outage["row"][0]["lasts_s"] == 7200.0);
  CHECK(outage["row"][0]["place"][0]["lasts_s"] == 7200.0);
  CHECK_FALSE(outage["row"][0]["place"][1].contains("lasts_s"));
}

TEST_CASE("the snap of the deciding place is there by the hour, at the best figure") {
  Answer answer = sample(Question::freeze);
  CHECK_FALSE(Json::parse(json_of(answer)).contains("snap"));
  auto& curve = answer.freeze->place[0].air;
  for (int moment = 0; moment < 6; ++moment) {
    curve.gain_share.push_back(0.5);
    curve.base_degC.push_back(-moment);
  }
  const Json snap = Json::parse(json_of(answer)).at("snap");
  CHECK(snap["place"] == "tube 12 in inside the big door");
  CHECK(snap["every_s"] == 3600.0);
  // 45 F is 7.22 C; moments are 20 min apart, so that the third and the sixth are whole hours.
  CHECK(snap["place_degC"] == Json({1.61, -1.39}));
}

TEST_CASE("faults, ways back, sensors, all off and bands are there where they were asked for") {
  Answer answer = sample(Question::freeze);
  for (const char* key : {"fault", "recovery", "sensor", "turn_off", "bands"})
    CHECK_FALSE(Json::parse(json_of(answer)).contains(key));
  answer.fault = {{"pump dead", "tap", {}, ""}};
  answer.recovery = {Recovery{}};
  answer.sensor = {{"in the sun", 4.0, 15.0, -1.0}};
  answer.turn_off = TurnOff{false, {"tap"}, -3.0, -4.0, 0.3};
  answer.bands = Bands{};
  answer.bands->input = {{"air leaks", 1.0, 2.0}};
  const Json json = Json::parse(json_of(answer));
  check_keys(json.at("fault")[0], reading(answer.fault[0]));
  check_keys(json.at("recovery")[0], reading(answer.recovery[0]));
  check_keys(json.at("sensor")[0], reading(answer.sensor[0]));
  check_keys(json.at("turn_off"), reading(*answer.turn_off));
  check_keys(json.at("bands"), reading(*answer.bands));
}

TEST_CASE("the tube of drawn loops and the floor's field are there where they are known") {
  Answer answer = sample(Question::route);
  for (const char* key : {"laid", "field"}) CHECK_FALSE(Json::parse(json_of(answer)).contains(key));
  answer.laid = LaidLines{{{"loop 1",
                            {{0.0, 0.0, 2.0, 0.0, {}, {}, {}, ""}, {2.0, 0.0, 2.0, 0.5, 0.25, 2.0, 0.25, "left"}},
                            {{"saw cut", 1.0, 0.0, 1.0}}}},
                          {{"manifold", {{0.0, 0.0}, {1.0, 0.0}, {0.0, 1.0}}}}};
  answer.field = FloorField{};
  answer.field->cold_W = 220.0;
  answer.field->room = {RoomField{"shop", 40.0, 2000.0, 120.0, 2300.0, 22.0, {}, {1.0, 0.1, 15.0}, {4.0, 4.0, 27.0}}};
  const Json json = Json::parse(json_of(answer));
  check_keys(json.at("laid"), reading(*answer.laid));
  check_keys(json.at("field"), reading(*answer.field));
  CHECK_FALSE(json["laid"]["loop"][0]["piece"][0].contains("radius_m"));
  CHECK(json["laid"]["loop"][0]["piece"][1]["turn"] == "left");
  CHECK(json["laid"]["loop"][0]["crossing"][0]["joint"] == "saw cut");
  CHECK(json["field"]["cold_W"] == 220.0);
  CHECK(json["field"]["room"][0]["coldest"]["surface_degC"] == 15.0);
}

TEST_CASE("verdict, guesses, ranges and changes are there") {
  Answer answer = undescribed(Question::design);
  answer.verdict.kind = VerdictKind::mend;
  answer.verdict.reasons = {
      {Severity::warning, "a.b", "loop[1]", "it is {} long", {Measured{84.0, Dimension::length}}}};
  answer.said = answer.verdict.reasons;
  const Json json = Json::parse(json_of(answer));
  CHECK(json["question"] == "design");
  CHECK(json["verdict"]["kind"] == "mend");
  CHECK(json["verdict"]["reasons"][0] ==
        Json({{"severity", "warning"}, {"code", "a.b"}, {"about", "loop[1]"}, {"sentence", "It is 276 ft long."}}));
  CHECK(json["said"].size() == 1);
  CHECK(json["given"] == answer.file.given);
  REQUIRE(json["assumed"].size() == answer.file.assumed.size());
  CHECK(json["assumed"][0]["path"] == answer.file.assumed[0].path);
  CHECK(json["assumed"][0].contains("source"));
  CHECK(json["ranges"]["boiler_W"] == Json({{"tight", 6300.0}, {"usual", 8928.0}, {"poor", 13400.0}}));
  for (const char* range : {"loss_W", "supply_degC", "slab_dial_degC", "air_dial_degC", "poor_fails_degC"}) {
    CHECK(json["ranges"].contains(range));
  }
  CHECK(json["sensitivity"][0]["hold_K"] == 1.5);
  CHECK_FALSE(json["sensitivity"][1].contains("hold_K"));
  CHECK(json["change"][0]["before_pour"] == true);
  CHECK(json["design"]["slab"]["size"] == "36 ft x 30 ft");
  CHECK(json["point"]["loop"][0]["regime"] == "blended");
}

TEST_CASE("what is yours and what is guessed stand with their meaning, as a design file writes them") {
  const Answer answer = undescribed(Question::design);
  const Json json = Json::parse(json_of(answer));
  REQUIRE(json.at("yours").size() == answer.file.given.size());
  for (std::size_t i = 0; i < answer.file.given.size(); ++i) {
    const Json& row = json.at("yours")[i];
    CHECK(row.at("path") == answer.file.given[i]);
    CHECK_FALSE(row.at("meaning").get<std::string>().empty());
    CHECK_FALSE(row.at("text").get<std::string>().empty());
  }
  for (const Json& row : json.at("assumed")) CHECK(row.contains("meaning"));
  for (const Json& row : json.at("sensitivity")) CHECK(row.at("meaning").get<std::string>().size() > 5);
}

TEST_CASE("a stage that is absent has no key, and ranges only where there are some") {
  Answer answer = sample(Question::design);
  answer.freeze.reset();
  answer.point.reset();
  const Json json = Json::parse(json_of(answer));
  CHECK_FALSE(json.contains("freeze"));
  CHECK_FALSE(json.contains("point"));
  CHECK_FALSE(json.contains("ranges"));
}

TEST_CASE("the same answer gives the same bytes, ASCII, ending in one end of line") {
  Answer answer = sample(Question::freeze);
  answer.file.design.project.name = "T\xC3\xB6pferhaus \"\xFF";
  const std::string text = json_of(answer);
  CHECK(text == json_of(answer));
  CHECK(text.back() == '\n');
  CHECK(text[text.size() - 2] == '}');
  for (const char c : text) CHECK_FALSE(static_cast<unsigned char>(c) >= 0x80);
  CHECK(Json::parse(text)["design"]["project"]["name"].get<std::string>().substr(0, 5) == "T\xC3\xB6pf");
}

TEST_CASE("what is no finite number is a fault of ours, never a figure") {
  Answer answer = sample(Question::design);
  answer.point->supply_degC = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(json_of(answer), std::logic_error);
  CHECK_THROWS_AS(text_of(answer, {}), std::logic_error);
  CHECK_THROWS_AS(tables_of(answer), std::logic_error);
  answer = undescribed(Question::design);
  answer.loss_W->poor = std::numeric_limits<double>::infinity();
  CHECK_THROWS_AS(json_of(answer), std::logic_error);
}
