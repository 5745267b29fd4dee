#include "fuzz/dictionary.hpp"

#include <fmt/format.h>

#include <set>

#include "fuzz/all_keys.hpp"

namespace slabwright::fuzz {
namespace {

std::string quoted(const std::string& word) {
  std::string out = "\"";
  for (const char c : word) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\')
      out += fmt::format("\\{}", c);
    else if (byte < 0x20 || byte > 0x7E)
      out += fmt::format("\\x{:02X}", byte);
    else
      out += c;
  }
  return out + "\"\n";
}

std::string part(std::string_view title, const std::set<std::string>& words) {
  std::string text = fmt::format("# {}\n", title);
  for (const std::string& word : words) {
    if (!word.empty()) text += quoted(word);
  }
  return text;
}

}  // namespace

std::string dictionary() {
  Design design = every_key();
  std::set<std::string> sections, keys, choices, texts, unit_texts;
  for (const Key& key : record_of(design).keys) {
    const Slot slot = key.slot(&design);
    if (std::holds_alternative<Record>(slot)) sections.insert(fmt::format("[{}]\n", key.word));
    if (std::holds_alternative<Rows>(slot)) sections.insert(fmt::format("[[{}]]\n", key.word));
  }
  walk(record_of(design), [&](const std::string&, const Key& key, const Slot& slot) {
    keys.insert(fmt::format("{} = ", key.word));
    if (const auto* choice = std::get_if<Choice>(&slot)) {
      for (const std::string_view name : choice->names) choices.emplace(name);
    } else {
      texts.insert(example_of(key, slot, System::us));
      texts.insert(example_of(key, slot, System::si));
    }
  });
  for (const Unit& unit : units()) unit_texts.emplace(unit.text);
  return part("Sections.", sections) + part("Keys.", keys) + part("Choices.", choices) + part("Values.", texts) +
         part("Units.", unit_texts);
}

}  // namespace slabwright::fuzz
