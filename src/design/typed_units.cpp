// Which system a user thinks in, by what was typed.
#include "design/draft.hpp"

namespace slabwright {
namespace {

/// Counts the units in one text.
void count_units(std::string_view text, int& us, int& si) {
  std::string word;
  for (const char c : plain_characters(text) + " ") {
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) {
      word += c;
      continue;
    }
    for (const std::string_view unit : {"in", "inch", "inches", "ft", "feet", "foot", "sq", "gpm", "psi", "F", "R"}) {
      us += word == unit;
    }
    for (const std::string_view unit : {"mm", "cm", "m", "bar", "kPa", "C", "K", "L"}) si += word == unit;
    us += c == '"' || c == '\'';
    word.clear();
  }
}

void count_units(const FileValue& value, int& us, int& si) {
  if (value.kind == ValueKind::text) count_units(value.text, us, si);
  for (const FileValue& item : value.items) count_units(item, us, si);
  for (const FileEntry& entry : value.entries) count_units(entry.value, us, si);
}

}  // namespace

std::optional<System> typed_units(const FileStatements& statements, const std::vector<Override>& overrides) {
  int us = 0, si = 0, us_elsewhere = 0, si_elsewhere = 0;
  std::string section;
  for (const Statement& statement : statements.statement) {
    if (const auto* header = std::get_if<FileHeader>(&statement)) section = header->name;
    const auto* entry = std::get_if<FileEntry>(&statement);
    if (!entry) continue;
    const bool telling = section == "slab" || section == "tube" || entry->word == "slab" || entry->word == "tube";
    count_units(entry->value, telling ? us : us_elsewhere, telling ? si : si_elsewhere);
  }
  for (const Override& option : overrides) {
    const bool telling = option.path.substr(0, 5) == "slab." || option.path.substr(0, 5) == "tube.";
    count_units(option.text, telling ? us : us_elsewhere, telling ? si : si_elsewhere);
  }
  if (us != si) return us > si ? System::us : System::si;
  if (us_elsewhere != si_elsewhere) return us_elsewhere > si_elsewhere ? System::us : System::si;
  return std::nullopt;
}

}  // namespace slabwright
