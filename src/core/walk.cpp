// Paths into a described struct, and the walk over all of it.
#include <fmt/format.h>

#include "slabwright/fields.hpp"

namespace slabwright {
namespace {

/// "room[2]" as a word and a row number; 0 where there is none. Empty where the brackets hold no number.
struct Step {
  std::string_view word;
  std::size_t row = 0;
};

std::optional<Step> step_of(std::string_view text) {
  const std::size_t bracket = text.find('[');
  if (bracket == std::string_view::npos) return Step{text};
  if (text.size() < bracket + 3 || text.back() != ']') return std::nullopt;
  std::size_t row = 0;
  for (const char c : text.substr(bracket + 1, text.size() - bracket - 2)) {
    if (c < '0' || c > '9' || row > 100000) return std::nullopt;
    row = 10 * row + static_cast<std::size_t>(c - '0');
  }
  return row > 0 ? std::optional<Step>({text.substr(0, bracket), row}) : std::nullopt;
}

/// The record that a step enters: a section, or a row of a list.
std::optional<Record> entered(const Slot& slot, std::size_t row) {
  if (const auto* record = std::get_if<Record>(&slot); record && row == 0) return *record;
  const auto* rows = std::get_if<Rows>(&slot);
  if (!rows || row == 0 || row > rows->size(rows->at)) return std::nullopt;
  return rows->row(rows->at, row - 1);
}

void walk_from(const Record& record, const std::string& prefix,
               const std::function<void(const std::string&, const Key&, const Slot&)>& visit) {
  for (const Key& key : record.keys) {
    const std::string path = prefix + std::string(key.word);
    const Slot slot = key.slot(record.at);
    if (const auto* inner = std::get_if<Record>(&slot)) {
      walk_from(*inner, path + ".", visit);
    } else if (const auto* rows = std::get_if<Rows>(&slot)) {
      for (std::size_t i = 0; i < rows->size(rows->at); ++i) {
        walk_from(rows->row(rows->at, i), fmt::format("{}[{}].", path, i + 1), visit);
      }
    } else {
      visit(path, key, slot);
    }
  }
}

}  // namespace

const Key* find_key(const Record& record, std::string_view word) {
  for (const Key& key : record.keys) {
    if (key.word == word) return &key;
  }
  return nullptr;
}

std::optional<Found> find_path(const Record& record, std::string_view path) {
  const std::size_t dot = path.find('.');
  const auto step = step_of(path.substr(0, dot));
  const Key* key = step ? find_key(record, step->word) : nullptr;
  if (!key) return std::nullopt;
  const Slot slot = key->slot(record.at);
  const auto inner = entered(slot, step->row);
  if (dot == std::string_view::npos) return step->row == 0 || inner ? std::optional<Found>({key, slot}) : std::nullopt;
  return inner ? find_path(*inner, path.substr(dot + 1)) : std::nullopt;
}

void walk(const Record& record, const std::function<void(const std::string& path, const Key&, const Slot&)>& visit) {
  walk_from(record, {}, visit);
}

}  // namespace slabwright
