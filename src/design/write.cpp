// The user's part of a design as a file.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "design/draft.hpp"
#include "design/toml_text.hpp"

namespace slabwright {
namespace {

constexpr std::size_t line_width = 100;

/// ["0 ft, 0 ft", "40 ft, 0 ft"], an item a line where one line is too short.
std::string list_text(const WordedList& list, System units) {
  std::vector<std::string> items;
  std::size_t width = 0;
  for (std::size_t i = 0; i < list.size(list.at); ++i) {
    const Worded item = list.item(list.at, i);
    items.push_back(in_quotes(item.write(item.at, units)));
    width += items.back().size() + 2;
  }
  const bool one_line = width < line_width;
  std::string text = "[";
  for (std::size_t i = 0; i < items.size(); ++i) {
    text += one_line ? (i ? ", " : "") : "\n  ";
    text += items[i];
    if (!one_line) text += ",";
  }
  return text + (one_line ? "]" : "\n]");
}

std::string value_text(const Key& key, const Slot& slot, System units) {
  if (const auto* list = std::get_if<WordedList>(&slot)) return list_text(*list, units);
  const std::string text = write_out(key, slot, units);
  return stands_bare(key, slot) ? text : in_quotes(text);
}

class Writer {
 public:
  explicit Writer(const DesignFile& file) : units_(file.design.units), given_(file.given.begin(), file.given.end()) {
    for (const Assumption& guess : file.assumed) guessed_.insert(guess.path);
  }

  std::string run(const Record& design) {
    for (const Key& key : design.keys) {
      const Slot slot = key.slot(design.at);
      const std::string word(key.word);
      if (const auto* section = std::get_if<Record>(&slot)) {
        write_section(fmt::format("[{}]", word), *section, word + ".", false);
      } else if (const auto* rows = std::get_if<Rows>(&slot)) {
        write_rows(word, *rows);
      } else if (given_.count(word)) {
        text_ += fmt::format("{} = {}\n", word, value_text(key, slot, units_));
      }
    }
    return std::move(text_);
  }

 private:
  void write_rows(const std::string& word, const Rows& rows) {
    for (std::size_t i = 0; i < rows.size(rows.at); ++i) {
      const std::string row = fmt::format("{}[{}]", word, i + 1);
      if (guessed_.count(row)) continue;
      write_section(fmt::format("[[{}]]", word), rows.row(rows.at, i), row + ".", true);
    }
  }

  /// A row stands in the file even where none of its keys is given.
  void write_section(const std::string& header, const Record& record, const std::string& prefix, bool always) {
    std::string keys;
    for (const Key& key : record.keys) {
      if (!given_.count(prefix + std::string(key.word))) continue;
      keys += fmt::format("{} = {}\n", key.word, value_text(key, key.slot(record.at), units_));
    }
    if (keys.empty() && !always) return;
    if (!text_.empty()) text_ += '\n';
    text_ += header + '\n' + keys;
  }

  System units_;
  std::set<std::string> given_, guessed_;
  std::string text_;
};

}  // namespace

std::string write_design(const DesignFile& file) {
  const System units = file.design.units;
  std::string text = Writer(file).run(reading(file.design));
  const bool given = std::find(file.given.begin(), file.given.end(), "units") != file.given.end();
  if (given || typed_units(cut(text), {}).value_or(System::us) == units) return text;
  const bool section = !text.empty() && text.front() == '[';
  return fmt::format("units = \"{}\"\n{}{}", units == System::us ? "US" : "SI", section ? "\n" : "", text);
}

}  // namespace slabwright
