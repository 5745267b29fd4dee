// The design-file reference page, made from the same descriptions that read the file.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "slabwright/design.hpp"

namespace slabwright {
namespace {

constexpr std::string_view opening_words = R"(# The design file

One plain text file (TOML), saved as UTF-8. `[slab]` begins a section, `[[room]]` a section of which there may be
several, once for each. Below it stand keys: `thickness = "5 in"`. A `#` begins a remark. Values are texts in quotes
with their unit; `true`, `false` and plain counts stand without quotes.

No key is required. What is not given is our guess: the columns *US* and *SI* say which, by `units`; *source* says
where it comes from. An answer that lacks a key it cannot guess says so.

Forgiving in form: `12"`, `5'-6"`, `1,080 sq ft`, `ft²`, `-17 F`, `-17 °F`, `R10`, `R-10`. Strict in meaning: a decimal
comma, a number without a unit, an unknown key are problems, and the file is not computed until they are mended.
Glycol is by volume unless `by mass` is written. Insulation takes R, or a thickness with a material (`"2 in XPS"`); a
U-value is refused.

Places are counted from the lower left inside corner of the slab, to the right and up: `"26 ft, 14 ft"`. An outline
may be closed or open and turn either way.

An editor that completes TOML by a JSON Schema takes `design-file.schema.json`, beside this page: set it as the schema
of your design files. It then offers sections, keys and choices, each with its meaning, units and our guess, and marks a
wrong key or a number without its unit as you type. What a figure must lie between, `slabwright check` says.
)";

/// A bar or a line end would break the table.
std::string cell(std::string_view text) {
  std::string out;
  for (const char c : text) out += c == '|' ? "\\|" : std::string(1, c);
  return out;
}

std::string code(std::string_view text) { return text.empty() ? std::string{} : fmt::format("`{}`", text); }

std::string choices(const Choice& choice) {
  std::string all;
  for (const std::string_view name : choice.names) all += fmt::format("{}`\"{}\"`", all.empty() ? "" : ", ", name);
  return all;
}

/// What a key takes, in words.
std::string takes(const Key& key, const Slot& slot) {
  if (key.unit) return std::string(name_of(key.unit->dimension));
  if (const auto* worded = std::get_if<Worded>(&slot)) {
    return fmt::format("{}: `\"{}\"`", worded->takes, worded->example);
  }
  if (const auto* list = std::get_if<WordedList>(&slot)) {
    return fmt::format("a list, each {}: `\"{}\"`", list->takes, list->example);
  }
  if (const auto* choice = std::get_if<Choice>(&slot)) return choices(*choice);
  if (std::holds_alternative<Flag>(slot)) return "`true` or `false`";
  if (std::holds_alternative<Whole>(slot)) return "a whole number";
  return "text";
}

constexpr std::string_view table_head = "\n| key | meaning | takes | US | SI | source |\n|---|---|---|---|---|---|\n";

std::string row(const Key& key, const Slot& slot) {
  const Says& says = key.says;
  const std::string_view si = says.si.empty() ? says.us : says.si;
  return fmt::format("| `{}` | {} | {} | {} | {} | {} |\n", key.word, cell(says.meaning), cell(takes(key, slot)),
                     code(says.us), code(si), cell(says.source));
}

std::string keys_table(const Record& record) {
  std::string text(table_head);
  for (const Key& key : record.keys) text += row(key, key.slot(record.at));
  return text;
}

void add_dimensions(const Record& record, std::set<Dimension>& used) {
  for (const Key& key : record.keys) {
    if (key.unit) used.insert(key.unit->dimension);
  }
}

std::string units_table(const std::set<Dimension>& used) {
  std::string text =
      "\n## Units\n\nThe same letters may stand for two things: `ft` is a length and a head, `F` a temperature and a "
      "difference of\ntemperatures. The key decides: `drop = \"20 F\"` is a difference, and so is `\"11 C\"` there.\n"
      "\n| for | units |\n|---|---|\n";
  for (const Dimension dimension : used) {
    const std::string fit = units_that_fit(dimension);
    text += fmt::format("| {} | {} |\n", name_of(dimension), fit.empty() ? "a number alone" : fit);
  }
  return text;
}

}  // namespace

std::string design_reference() {
  Design design;
  std::string text(opening_words), sections;
  std::string top(table_head);
  // Worded values measure in these beside what the keys themselves take.
  std::set<Dimension> used{Dimension::length, Dimension::insulance, Dimension::head, Dimension::turns};
  for (const Key& key : record_of(design).keys) {
    const Slot slot = key.slot(&design);
    if (const auto* record = std::get_if<Record>(&slot)) {
      sections += fmt::format("\n## [{}]\n\n{}\n{}", key.word, key.says.meaning, keys_table(*record));
      add_dimensions(*record, used);
    } else if (const auto* rows = std::get_if<Rows>(&slot)) {
      const Record one = rows->add(rows->at);
      sections += fmt::format("\n## [[{}]]\n\n{}\n{}", key.word, key.says.meaning, keys_table(one));
      add_dimensions(one, used);
    } else {
      top += row(key, slot);
    }
  }
  return text + "\n## Above the first section\n" + top + sections + units_table(used);
}

}  // namespace slabwright
