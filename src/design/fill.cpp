// Statements into the design: a plain walk over the description.
#include <fmt/format.h>

#include <algorithm>

#include "design/draft.hpp"
#include "design/synonyms.hpp"

namespace slabwright {
namespace {

/// Rows of which each is carried through every run of the cold snap and the winter; see manuals/theory-numerics.md.
struct MostRows {
  std::string_view word;
  std::size_t rows;
};
constexpr MostRows dear_rows[] = {{"room", 40}, {"opening", 60}, {"watch", 60}, {"way", 40}, {"vehicle", 40}};
constexpr std::size_t most_rows = 200;

std::string kind_words(const FileValue& value) {
  switch (value.kind) {
    case ValueKind::list: return "a list";
    case ValueKind::table: return "a table";
    case ValueKind::date: return value.text.empty() ? "a time" : "a date";
    default: return value.text;
  }
}

bool scalar(ValueKind kind) { return kind == ValueKind::text || kind == ValueKind::number || kind == ValueKind::flag; }

/// A date without quotes, where a date is wanted.
bool bare_date(const Slot& slot, const FileValue& value) {
  const auto* worded = std::get_if<Worded>(&slot);
  return worded && worded->takes == Date::takes && value.kind == ValueKind::date && !value.text.empty();
}

bool readable(const FileValue& item) { return scalar(item.kind) && item.text.size() <= longest_value; }

/// What one value of a key should look like in the file.
std::string written_example(const Draft& draft, const Key& key, const Slot& slot) {
  const std::string example = example_of(key, slot, draft.units);
  const bool bare = std::holds_alternative<Flag>(slot) || std::holds_alternative<Whole>(slot);
  return bare ? fmt::format("{} = {}", key.word, example) : fmt::format("{} = \"{}\"", key.word, example);
}

/// Why a value of this kind cannot be read as one text, or nothing where it can.
std::string kind_sentence(const Draft& draft, const Key& key, const Slot& slot, const FileValue& value) {
  if (bare_date(slot, value)) return {};
  if (!scalar(value.kind)) {
    return fmt::format("{} does not take {}. Write {}.", key.word, kind_words(value),
                       written_example(draft, key, slot));
  }
  if (value.kind == ValueKind::flag && !std::holds_alternative<Flag>(slot)) {
    return fmt::format("{} does not take {}. Write {}.", key.word, value.text, written_example(draft, key, slot));
  }
  if (value.kind != ValueKind::number) return {};
  if (std::holds_alternative<Text>(slot)) {
    return fmt::format("text needs quotes: {} = \"{}\".", key.word, excerpt(value.text));
  }
  if (!read_number(value.text)) {
    return fmt::format("{} is no plain number. Write {}.", excerpt(value.text), written_example(draft, key, slot));
  }
  return {};
}

class Filler {
 public:
  explicit Filler(Draft& draft) : draft_(draft) {}

  void run(const FileStatements& statements) {
    here_ = record_of(draft_.design);
    for (const Statement& statement : statements.statement) {
      if (draft_.said.size() >= most_problems) break;
      if (const auto* header = std::get_if<FileHeader>(&statement)) open(*header);
      if (const auto* entry = std::get_if<FileEntry>(&statement)) take(*entry);
    }
    close_unknown();
  }

 private:
  void fault(const std::string& path, const Spot& spot, std::string sentence) {
    draft_.broken.insert(path);
    say(draft_, "file.value", path, spot, std::move(sentence));
  }

  void open(const FileHeader& header) {
    close_unknown();
    std::string name = header.name;
    const Key* key = find_key(record_of(draft_.design), name);
    const auto is_section = [&] {
      const Slot slot = key->slot(&draft_.design);
      return std::holds_alternative<Record>(slot) || std::holds_alternative<Rows>(slot);
    };
    if (key && is_section()) return enter(*key, header);
    const SectionMeant meant = section_meant(name);
    unknown_ = Unknown{header, meant.sentence, meant.section.empty(), false};
    if (meant.section.empty()) {
      section_ = name;
      here_ = Record{};
      return;
    }
    FileHeader as_meant = header;
    as_meant.doubled = true;  // brackets are the smaller problem
    enter(*find_key(record_of(draft_.design), meant.section), as_meant);
  }

  void enter(const Key& key, const FileHeader& header) {
    section_ = std::string(key.word);
    const Slot slot = key.slot(&draft_.design);
    if (const auto* rows = std::get_if<Rows>(&slot)) {
      second_single(key, *rows, header);
      add_row(key, *rows, header.spot);
      return;
    }
    path_ = section_ + ".";
    here_ = std::get<Record>(slot);
    const auto [first, fresh] = seen_.emplace(section_, header.spot);
    if (header.doubled && !unknown_) {
      say(draft_, "file.section", {}, header.spot, fmt::format("[[{0}]] takes single brackets: [{0}].", section_));
    } else if (!fresh && !unknown_) {
      say(draft_, "file.section", {}, header.spot,
          fmt::format("a second [{}]; put its keys under the first, in line {}.", section_, first->second.line));
    }
  }

  void second_single(const Key& key, const Rows& rows, const FileHeader& header) {
    const bool earlier = rows.size(rows.at) > 0;
    if (header.doubled || !earlier || !seen_.emplace("second " + section_, header.spot).second) return;
    say(draft_, "file.section", {}, header.spot,
        fmt::format("a second [{0}]. Where there are several write [[{0}]], double brackets, for each.", key.word));
  }

  void add_row(const Key& key, const Rows& rows, const Spot& spot) {
    if (const std::size_t most = most_rows_of(key.word); rows.size(rows.at) >= most) {
      if (seen_.emplace(fmt::format("too many {}", key.word), spot).second) {
        say(draft_, "file.rows", {}, spot,
            fmt::format("more than {} of [[{}]]: leave some out, or cut the floor into designs of their own.", most,
                        key.word));
      }
      here_ = Record{};
      section_.clear();
      return;
    }
    here_ = rows.add(rows.at);
    const std::string row = fmt::format("{}[{}]", key.word, rows.size(rows.at));
    draft_.spots[row] = spot;
    path_ = row + ".";
  }

  void take(const FileEntry& entry) {
    if (here_.keys.empty()) return take_unknown(entry);
    into(here_, path_, entry);
  }

  void take_unknown(const FileEntry& entry) {
    if (section_.empty() || !belongs_elsewhere(section_, entry.word)) return;
    unknown_->placed = true;
    say(draft_, "file.key", {}, entry.spot, key_sentence(section_, entry.word));
  }

  /// A section that nobody knows is said once, unless its keys were told where they belong.
  void close_unknown() {
    if (unknown_ && !(unknown_->nameless && unknown_->placed)) {
      say(draft_, "file.section", {}, unknown_->header.spot, unknown_->sentence);
    }
    unknown_.reset();
  }

  void into(const Record& record, const std::string& prefix, const FileEntry& entry) {
    const std::string path = prefix + entry.word;
    const Key* key = find_key(record, entry.word);
    if (!key) return unknown_key(entry);
    const Slot slot = key->slot(record.at);
    if (entry.value.kind == ValueKind::table && inner(*key, slot, entry)) return;
    if (const auto* rows = std::get_if<Rows>(&slot)) return several(*key, *rows, entry);
    if (std::holds_alternative<Record>(slot)) {
      return fault(path, entry.spot, fmt::format("{0} is a section: write [{0}] above its keys.", key->word));
    }
    if (const auto twice = draft_.spots.find(path); twice != draft_.spots.end()) {
      say(draft_, "file.twice", {}, entry.spot,
          fmt::format("{} is given twice, first in line {}. Keep one.", entry.word, twice->second.line));
      return;
    }
    draft_.spots[path] = entry.value.spot;
    value(*key, slot, path, entry.value);
  }

  /// A section written as one table, or as the first part of a dotted key.
  bool inner(const Key& key, const Slot& slot, const FileEntry& entry) {
    const auto* record = std::get_if<Record>(&slot);
    if (!record && !std::holds_alternative<Rows>(slot)) return false;
    const std::string section = section_;
    section_ = std::string(key.word);
    if (record) {
      for (const FileEntry& each : entry.value.entries) into(*record, section_ + ".", each);
    } else {
      row_of(key, std::get<Rows>(slot), entry.value);
    }
    section_ = section;
    return true;
  }

  void row_of(const Key& key, const Rows& rows, const FileValue& table) {
    const auto [here, path] = std::pair{here_, path_};
    add_row(key, rows, table.spot);
    for (const FileEntry& each : table.entries) take(each);
    here_ = here;
    path_ = path;
  }

  void several(const Key& key, const Rows& rows, const FileEntry& entry) {
    const auto& items = entry.value.items;
    const bool tables =
        std::all_of(items.begin(), items.end(), [](const FileValue& item) { return item.kind == ValueKind::table; });
    if (entry.value.kind != ValueKind::list || !tables) {
      return fault(std::string(key.word), entry.spot,
                   fmt::format("{0} is a section: write [[{0}]] above its keys, once for each.", key.word));
    }
    const std::string section = section_;
    for (const FileValue& item : items) {
      section_ = std::string(key.word);
      row_of(key, rows, item);
    }
    section_ = section;
  }

  void unknown_key(const FileEntry& entry) {
    if (entry.word == "units" || entry.word == "codes") {
      say(draft_, "file.key", {}, entry.spot,
          fmt::format("{} belongs above the first [section]; move it to line 1.", entry.word));
      return;
    }
    say(draft_, "file.key", {}, entry.spot, key_sentence(section_, entry.word));
  }

  void value(const Key& key, const Slot& slot, const std::string& path, const FileValue& value) {
    if (const auto* list = std::get_if<WordedList>(&slot)) return items(key, *list, path, value);
    std::string problem = kind_sentence(draft_, key, slot, value);
    if (problem.empty()) problem = read_into(key, slot, value.text, draft_.units);
    if (!problem.empty()) return fault(path, value.spot, std::move(problem));
    draft_.given.push_back(path);
  }

  void items(const Key& key, const WordedList& list, const std::string& path, const FileValue& value) {
    if (value.kind != ValueKind::list) {
      return fault(path, value.spot, fmt::format("{} takes a list: {} = [\"...\", \"...\"].", key.word, key.word));
    }
    if (value.items.size() > most_list_items) {
      return fault(path, value.spot, fmt::format("{} has more than {} items.", key.word, most_list_items));
    }
    for (const FileValue& item : value.items) {
      const Worded place = list.add(list.at);
      std::string problem =
          readable(item) ? place.read(place.at, item.text) : fmt::format("{} takes short texts in quotes.", key.word);
      if (!problem.empty()) return fault(path, item.spot, std::move(problem));
    }
    draft_.given.push_back(path);
  }

  struct Unknown {
    FileHeader header;
    std::string sentence;
    bool nameless;  ///< no section of ours is meant
    bool placed;    ///< one of its keys was told where it belongs
  };

  Draft& draft_;
  Record here_;
  std::string section_, path_;
  std::map<std::string, Spot> seen_;
  std::optional<Unknown> unknown_;
};

}  // namespace

std::size_t most_rows_of(std::string_view word) {
  const auto* dear = std::find_if(std::begin(dear_rows), std::end(dear_rows),
                                  [word](const MostRows& most) { return most.word == word; });
  return dear == std::end(dear_rows) ? most_rows : dear->rows;
}

void say(Draft& draft, std::string code, std::string about, Spot spot, std::string sentence) {
  if (about.empty()) about = fmt::format("line {}, column {}", spot.line, spot.column);
  draft.spots[about] = std::move(spot);
  draft.said.push_back({Severity::problem, std::move(code), std::move(about), std::move(sentence), {}});
}

bool is_given(const Draft& draft, const std::string& path) {
  return std::find(draft.given.begin(), draft.given.end(), path) != draft.given.end();
}

void fill(Draft& draft, const FileStatements& statements) { Filler(draft).run(statements); }

}  // namespace slabwright
