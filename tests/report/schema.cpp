// manuals/design-file.schema.json is what the descriptions say. To write it anew: SLABWRIGHT_WRITE=1 test_report
// "the schema*"
#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "slabwright/design.hpp"
#include "slabwright/report_schema.hpp"
#include "support/catch.hpp"
#include "support/table.hpp"

using namespace slabwright;
using Json = nlohmann::json;

TEST_CASE("the schema page is what the descriptions say") {
  const std::string page = design_schema();
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(SLABWRIGHT_ROOT "/manuals/design-file.schema.json") << page;
  CHECK(test::read_text("manuals/design-file.schema.json") == page);
}

TEST_CASE("the schema page has every key of the design with its meaning") {
  const Json schema = Json::parse(design_schema());
  Design design;
  for (const Key& key : record_of(design).keys) {
    const Slot slot = key.slot(&design);
    if (const auto* rows = std::get_if<Rows>(&slot)) rows->add(rows->at);
  }
  std::size_t keys = 0;
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot&) {
    INFO(path);
    const std::string section = path.substr(0, path.find_first_of("[."));
    const Json* place = &schema.at("properties").at(section);
    if (path.find('[') != std::string::npos) place = &schema.at("definitions").at(section);
    if (path.find('.') != std::string::npos) place = &place->at("properties").at(std::string(key.word));
    CHECK(place->at("description").get<std::string>().rfind(std::string(key.says.meaning), 0) == 0);
    ++keys;
  });
  CHECK(keys > 200);
}

TEST_CASE("the schema page tells of each key what an editor needs to offer it") {
  const Json schema = Json::parse(design_schema());
  const auto each = [&](const Json& object, const auto& see) {
    for (const auto& [word, value] : object.at("properties").items()) see(word, value);
  };
  std::size_t counts = 0;
  const auto see = [&](const std::string& word, const Json& value) {
    INFO(word);
    const std::string description = value.at("description").get<std::string>();
    const bool measured = value.contains("pattern");
    if (measured) CHECK(description.find(" Takes: ") != std::string::npos);
    if (measured) CHECK(description.find(')') != std::string::npos);
    // A count is offered as it stands in a file: without quotes.
    for (const Json& example : value.value("examples", Json::array())) {
      if (!example.is_string()) continue;
      CHECK(example.get<std::string>().find_first_not_of("0123456789.") != std::string::npos);
      ++counts;
    }
  };
  each(schema, [&](const std::string& word, const Json& value) {
    INFO(word);
    if (value.contains("properties"))
      each(value, see);
    else if (value.contains("anyOf"))
      CHECK(value.at("type") == Json::array({"array", "object"}));
  });
  for (const auto& [word, value] : schema.at("definitions").items()) each(value, see);
  CHECK(counts > 150);
}
