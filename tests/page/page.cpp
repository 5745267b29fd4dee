// The browser's function: the text that --json prints, or problems with their places.
#include "slabwright/page.hpp"

#include <nlohmann/json.hpp>

#include "slabwright/asking.hpp"
#include "support/catch.hpp"
#include "support/table.hpp"

using namespace slabwright;
using Json = nlohmann::json;

namespace {

Json asked(const Json& request) { return Json::parse(page_answer(request.dump())); }

std::string sentence_of(const Json& answer) { return answer.at("problems").at(0).at("sentence"); }

}  // namespace

TEST_CASE("a design is answered with the text that --json prints") {
  const std::string design = test::read_text("layouts/ten-lines.toml");
  const Answer answer = slabwright::answer(*read_design(design).checked.value, Wishes{Question::check});
  CHECK(page_answer(Json{{"command", "check"}, {"design", design}}.dump()) == json_of(answer));
}

TEST_CASE("options are the command line's") {
  const Json answer = asked(
      {{"command", "balance"},
       {"options", {{"--size", "36 x 30 ft"}, {"--outdoor", "-12 F"}, {"--set", {"tube.spacing=9 in", "units=SI"}}}}});
  CHECK(answer.at("design").at("tube").at("spacing_m") == 0.2286);
  CHECK(answer.at("design").at("units") == "SI");
  const Json quick = asked(
      {{"command", "freeze"}, {"design", test::read_text("layouts/ten-lines.toml")}, {"options", {{"--quick", true}}}});
  CHECK_FALSE(quick.contains("bands"));
}

TEST_CASE("a number has as many digits as are asked for") {
  const Json request = {{"command", "check"}, {"design", test::read_text("layouts/ten-lines.toml")}, {"digits", 3}};
  CHECK(asked(request).at("design").at("tube").at("spacing_m") == 0.305);
}

TEST_CASE("problems come with their places, and with what the command line prints") {
  const Json answer = asked({{"command", "check"},
                             {"name", "my-shop.toml"},
                             {"design", "[slab]\nthicknes = \"5 in\"\n"},
                             {"options", {{"--spacing", "12"}}}});
  CHECK(answer.at("exit") == bad_design);
  REQUIRE(answer.at("problems").size() == 2);
  const Json& in_file = answer.at("problems").at(1);
  CHECK(in_file.at("file") == "my-shop.toml");
  CHECK(in_file.at("line") == 2);
  CHECK(in_file.at("column") == 1);
  CHECK(in_file.at("code") == "file.key");
  CHECK(answer.at("problems").at(0).at("option") == "--spacing");
  const std::string text = answer.at("text");
  CHECK(text.find("my-shop.toml:2:1: ") != std::string::npos);
  CHECK(text.find("Nothing was computed, nothing was written.\n") != std::string::npos);
}

TEST_CASE("files are brought as texts") {
  const std::string design = test::read_text("layouts/old-pour.toml");
  Json request = {{"command", "balance"}, {"design", design}, {"options", {{"--readings", "meters.csv"}}}};
  CHECK(sentence_of(asked(request)) == "the request brings no file meters.csv.");
  request["files"]["meters.csv"] = test::read_text("layouts/old-pour-readings.csv");
  CHECK(asked(request).contains("fitted"));
  request["files"]["meters.csv"] = "loop, flow (gpm)\n1, 0.7\n1, 0.7\n";
  const Json refused = asked(request);
  CHECK(refused.at("problems").at(0).at("file") == "meters.csv");
  CHECK(refused.at("problems").at(0).at("line") == 3);
}

TEST_CASE("a weather file that is none says the line") {
  Json request = {{"command", "check"},
                  {"design", "[slab]\nsize = \"36 x 30 ft\"\n[climate]\nweather = \"town.epw\"\n"}};
  CHECK(asked(request).at("problems").at(0).at("line") == 4);
  request["files"]["town.epw"] = "LOCATION,Nowhere\n";
  CHECK(asked(request).at("problems").at(0).at("file") == "town.epw");
}

TEST_CASE("a pressure test needs no design") {
  const Json answer =
      asked({{"command", "gauge"}, {"options", {{"--then", "60 psi at 70 F"}, {"--now", "53 psi at 20 F"}}}});
  CHECK(answer.at("question") == "gauge");
  CHECK(sentence_of(asked({{"command", "gauge"}})).rfind("gauge needs two readings", 0) == 0);
}

TEST_CASE("what is no request is told") {
  CHECK(page_answer("{\"command\"").find("a request is a JSON object") != std::string::npos);
  CHECK(page_answer("[1]").find("a request is a JSON object") != std::string::npos);
  CHECK(page_answer("").find("a request is a JSON object") != std::string::npos);
  struct Bad {
    Json request;
    std::string sentence;
  };
  const std::vector<Bad> all{
      {{{"command", "desing"}}, "no command \"desing\"; did you mean \"design\"?"},
      {{{"command", 3}}, "the request's command must be a text."},
      {{{"comand", "design"}}, "a request has no \"comand\": it has command, design, name, options, files and digits."},
      {{{"command", "design"}, {"digits", 40}}, "the request's digits must be a whole number from 3 to 17."},
      {{{"command", "design"}, {"options", {{"--area", 3}}}}, "the request's --area must be a text, or true."},
      {{{"command", "design"}, {"options", {{"--aera", "3 m2"}}}}, "no option --aera; did you mean --area?"},
      {{{"command", "route"}, {"options", {{"--quick", true}}}}, "no option --quick; did you mean --size?"},
      {{{"command", "design"}, {"files", {{"a", 1}}}}, "the request's files must be an object of texts."},
      {{{"command", "drill"}, {"options", {{"--at", ""}}}}, ""},
      {{{"command", "new"}}, "new makes a file; there is no disk here."}};
  for (const Bad& bad : all) {
    INFO(bad.request.dump());
    const Json answer = asked(bad.request);
    CHECK(answer.at("exit") == bad_words);
    if (!bad.sentence.empty()) CHECK(sentence_of(answer) == bad.sentence);
  }
  CHECK(sentence_of(asked({{"command", "design"}})).rfind("design needs a design file or options:", 0) == 0);
}
