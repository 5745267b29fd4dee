// Keys set from outside the file: by an option of the command line, or for trying.
#include <fmt/format.h>

#include <algorithm>

#include "design/draft.hpp"
#include "design/synonyms.hpp"

namespace slabwright {
namespace {

/// "room[3].area" names a row that is not there yet: adds it where it is the next one.
void add_next_row(Design& design, std::string_view path) {
  const std::size_t bracket = path.find('['), end = path.find(']');
  if (bracket == std::string_view::npos || end == std::string_view::npos) return;
  const Key* key = find_key(record_of(design), path.substr(0, bracket));
  if (!key) return;
  const Slot slot = key->slot(&design);
  const auto* rows = std::get_if<Rows>(&slot);
  const auto number = read_number(path.substr(bracket + 1, end - bracket - 1));
  if (rows && number && *number == static_cast<double>(rows->size(rows->at) + 1)) rows->add(rows->at);
}

void clear(const Slot& slot) {
  if (const auto* maybe = std::get_if<MaybeNumber>(&slot)) maybe->at->reset();
  if (const auto* list = std::get_if<WordedList>(&slot)) list->clear(list->at);
}

/// Empties the statements whose place this one takes.
void clear_rivals(Design& design, std::vector<std::string>& given, std::string_view path) {
  for (const std::string& rival : rivals_of(path)) {
    const auto at = std::find(given.begin(), given.end(), rival);
    if (at == given.end()) continue;
    given.erase(at);
    const auto found = find_path(record_of(design), rival);
    clear(found->slot);
    const std::string row = rival.substr(0, rival.find('.'));
    if (rival.substr(row.size()) != ".size") continue;
    if (row == "slab")
      design.slab.size.reset();
    else
      design.room[static_cast<std::size_t>(std::stoul(row.substr(5))) - 1].size.reset();
  }
}

void add_once(std::vector<std::string>& given, const std::string& path) {
  if (std::find(given.begin(), given.end(), path) == given.end()) given.push_back(path);
}

bool row_path(const std::string& path) { return path.find('.') == std::string::npos; }

/// Takes the rows that were guessed out again. They stand last in their lists, so that no other row's number changes.
void remove_guessed_rows(DesignFile& file) {
  for (const Assumption& guess : file.assumed) {
    if (!row_path(guess.path)) continue;
    if (guess.path.compare(0, 5, "room[") == 0) file.design.room.pop_back();
    if (guess.path.compare(0, 8, "opening[") == 0) file.design.opening.pop_back();
    if (guess.path.compare(0, 9, "manifold[") == 0) file.design.manifold.pop_back();
  }
}

/// The size, the area and the outline of one floor.
std::vector<std::string> floor_rivals(std::string_view path) {
  const std::size_t dot = path.find('.');
  const std::string_view row = path.substr(0, dot);
  if (dot == std::string_view::npos || (row != "slab" && row.substr(0, 5) != "room[")) return {};
  const std::string_view words[] = {"size", "area", "outline"};
  const std::string_view own = path.substr(dot + 1);
  if (std::find(std::begin(words), std::end(words), own) == std::end(words)) return {};
  std::vector<std::string> rivals;
  for (const std::string_view word : words) {
    if (word != own) rivals.push_back(fmt::format("{}.{}", row, word));
  }
  return rivals;
}

bool is_list(const Design& design, const Key& key) {
  return std::holds_alternative<Rows>(key.slot(reading(design).at));
}

/// Why a path leads to no key.
std::string path_sentence(const Design& design, const std::string& path) {
  const std::size_t dot = path.find('.'), end = std::min(path.find_first_of(".["), path.size());
  const std::string section = path.substr(0, end), row = path.substr(0, dot);
  const Key* key = find_key(reading(design), section);
  if (!key) return dot == std::string::npos ? key_sentence({}, section) : section_meant(section).sentence;
  if (dot == std::string::npos) return fmt::format("{} is a section: name a key of it.", excerpt(path));
  if (!find_path(reading(design), row) || (end == dot && is_list(design, *key))) {
    return fmt::format("there is no {}; rows count from 1: {}[1].", excerpt(row), section);
  }
  return key_sentence(section, path.substr(dot + 1));
}

}  // namespace

std::vector<std::string> rivals_of(std::string_view path) {
  if (path == "climate.coldest") return {"climate.yearly_minimum", "climate.minimum_spread", "climate.return_years"};
  if (path == "climate.yearly_minimum" || path == "climate.minimum_spread") return {"climate.coldest"};
  if (path == "climate.snap") return {"climate.snap_days"};
  if (path == "climate.snap_days") return {"climate.snap"};
  return floor_rivals(path);
}

void apply(Draft& draft, const Override& option) {
  const Spot spot{0, 0, option.option};
  add_next_row(draft.design, option.path);
  const auto found = find_path(record_of(draft.design), option.path);
  const bool section =
      found && (std::holds_alternative<Record>(found->slot) || std::holds_alternative<Rows>(found->slot));
  if (!found || section) {
    return say(draft, "option.key", option.option, spot, path_sentence(draft.design, option.path));
  }
  std::string problem = read_into(*found->key, found->slot, option.text, draft.units);
  if (!problem.empty()) {
    draft.broken.insert(option.path);
    return say(draft, "option.value", option.option, spot, std::move(problem));
  }
  clear_rivals(draft.design, draft.given, option.path);
  add_once(draft.given, option.path);
  draft.spots[option.path] = spot;
}

std::optional<DesignFile> with_key(const DesignFile& file, const std::string& path, std::string_view text) {
  DesignFile changed = file;
  remove_guessed_rows(changed);
  add_next_row(changed.design, path);
  const auto found = find_path(record_of(changed.design), path);
  if (!found || !read_into(*found->key, found->slot, text, changed.design.units).empty()) return std::nullopt;
  clear_rivals(changed.design, changed.given, path);
  add_once(changed.given, path);
  changed.assumed = settle(changed.design, changed.given, changed.known);
  return changed;
}

DesignFile with_known(const DesignFile& file, std::vector<Assumption> known) {
  DesignFile changed = file;
  remove_guessed_rows(changed);
  changed.known = std::move(known);
  changed.assumed = settle(changed.design, changed.given, changed.known);
  return changed;
}

const Key* key_at(const Design& design, std::string_view path) {
  const auto found = find_path(reading(design), path);
  return found ? found->key : nullptr;
}

}  // namespace slabwright
