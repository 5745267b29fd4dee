// The design file as a JSON Schema, made from the same descriptions that read the file.
#include "slabwright/report_schema.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "slabwright/design.hpp"

namespace slabwright {
namespace {

using Schema = nlohmann::ordered_json;

// As the reader has it.
constexpr int most_letters = 80;
constexpr double no_bound = 1e299;

/// A text that is no bare number: the unit is missing from one.
constexpr std::string_view more_than_a_number = "[^-+0-9., ]";

std::string guess_words(const Says& says) {
  if (says.us.empty()) return {};
  const std::string from = says.source.empty() ? std::string{} : fmt::format(" ({})", says.source);
  if (says.si.empty() || says.si == says.us) return fmt::format(" Our guess: {}{}.", says.us, from);
  return fmt::format(" Our guess: {} in a US file, {} in an SI file{}.", says.us, says.si, from);
}

/// What the value is and, where it is measured, in which units: what somebody wants to see who is offered the key.
std::string takes_words(const Key& key, const Slot& slot) {
  if (key.unit) {
    const std::string fit = units_that_fit(key.unit->dimension);
    const std::string_view name = name_of(key.unit->dimension);
    return fit.empty() ? " Takes: a number alone." : fmt::format(" Takes: {} ({}).", name, fit);
  }
  if (const auto* worded = std::get_if<Worded>(&slot)) return fmt::format(" Takes: {}.", worded->takes);
  if (const auto* list = std::get_if<WordedList>(&slot)) return fmt::format(" Takes: a list, each {}.", list->takes);
  return {};
}

/// Whether the reader takes a bare number for this key.
bool takes_bare_number(const Key& key, const Slot& slot) { return read_into(key, slot, "1").empty(); }

Schema text_or_number(bool bare) {
  Schema schema;
  schema["type"] = bare ? Schema::array({"string", "number"}) : Schema("string");
  schema["maxLength"] = longest_value;
  return schema;
}

/// What one value looks like.
struct ValueSchema {
  const Key& key;
  const Slot& slot;

  Schema quantity() const {
    // A bare number may be out of range and still be no lack of a unit: zero is in every range that begins there.
    const bool bare = takes_bare_number(key, slot) || read_quantity("0", key.unit->dimension).fault == Fault::none;
    Schema schema = text_or_number(bare);
    if (!bare) schema["pattern"] = more_than_a_number;
    return schema;
  }
  Schema operator()(const Number&) const { return quantity(); }
  Schema operator()(const MaybeNumber&) const { return quantity(); }
  Schema operator()(const Whole&) const {
    Schema schema = {{"type", "integer"}};
    if (key.says.least > -no_bound) schema["minimum"] = static_cast<int>(key.says.least);
    if (key.says.most < no_bound) schema["maximum"] = static_cast<int>(key.says.most);
    return schema;
  }
  Schema operator()(const Flag&) const { return {{"type", "boolean"}}; }
  Schema operator()(const Text&) const { return {{"type", "string"}, {"maxLength", most_letters}}; }
  Schema operator()(const Choice& choice) const {
    Schema schema = {{"type", "string"}, {"enum", Schema::array()}};
    for (const std::string_view name : choice.names) schema["enum"].push_back(name);
    return schema;
  }
  Schema operator()(const Worded&) const { return text_or_number(takes_bare_number(key, slot)); }
  Schema operator()(const WordedList& list) const {
    Schema item = text_or_number(false);
    item["examples"] = Schema::array({list.example});
    return {{"type", "array"}, {"maxItems", most_list_items}, {"items", item}};
  }
  template <class Other>
  Schema operator()(const Other&) const {
    return Schema::object();
  }
};

/// A text as the key's own kind of value. Counts stand without quotes in a design file.
Schema as_value(const Key& key, const Slot& slot, std::string_view text) {
  if (std::holds_alternative<Flag>(slot)) return text == "true" || text == "yes";
  const auto number = read_number(text);
  if (std::holds_alternative<Whole>(slot)) return static_cast<int>(number.value_or(0.0));
  if (number && takes_bare_number(key, slot)) {
    const auto whole = static_cast<int>(*number);
    return whole == *number ? Schema(whole) : Schema(*number);
  }
  return text;
}

Schema examples_of(const Key& key, const Slot& slot) {
  const std::string us = example_of(key, slot, System::us), si = example_of(key, slot, System::si);
  Schema examples = Schema::array({as_value(key, slot, us)});
  if (si != us) examples.push_back(as_value(key, slot, si));
  return examples;
}

Schema schema_of(const Key& key, const Slot& slot) {
  Schema schema = std::visit(ValueSchema{key, slot}, slot);
  schema["description"] = std::string(key.says.meaning) + takes_words(key, slot) + guess_words(key.says);
  const Says& says = key.says;
  const bool list = std::holds_alternative<WordedList>(slot);
  if (!says.us.empty() && (says.si.empty() || says.si == says.us) && !list)
    schema["default"] = as_value(key, slot, says.us);
  else if (!list && !std::holds_alternative<Choice>(slot) && !std::holds_alternative<Flag>(slot) &&
           !std::holds_alternative<Text>(slot))
    schema["examples"] = examples_of(key, slot);
  return schema;
}

Schema object_schema(const Record& record, std::string_view meaning) {
  Schema object = {{"type", "object"}, {"description", meaning}, {"additionalProperties", false}};
  for (const Key& key : record.keys) object["properties"][std::string(key.word)] = schema_of(key, key.slot(record.at));
  return object;
}

}  // namespace

std::string design_schema() {
  Design design;
  Schema whole = {{"$schema", "http://json-schema.org/draft-07/schema#"},
                  {"title", "slabwright design file"},
                  {"description", "A heated concrete floor: one TOML file, values as texts with their unit."},
                  {"type", "object"},
                  {"additionalProperties", false},
                  {"properties", Schema::object()},
                  {"definitions", Schema::object()}};
  for (const Key& key : record_of(design).keys) {
    const std::string word(key.word);
    const Slot slot = key.slot(&design);
    Schema& place = whole["properties"][word];
    if (const auto* record = std::get_if<Record>(&slot)) {
      place = object_schema(*record, key.says.meaning);
    } else if (const auto* rows = std::get_if<Rows>(&slot)) {
      const Schema one = {{"$ref", "#/definitions/" + word}};
      whole["definitions"][word] = object_schema(rows->add(rows->at), key.says.meaning);
      // One alone may stand in single brackets.
      place = {{"description", key.says.meaning},
               {"type", {"array", "object"}},
               {"anyOf", {{{"type", "array"}, {"maxItems", most_rows_of(word)}, {"items", one}}, one}}};
    } else {
      place = schema_of(key, slot);
    }
  }
  return whole.dump(2) + "\n";
}

}  // namespace slabwright
