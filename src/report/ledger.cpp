#include "report/ledger.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "slabwright/contract.hpp"
#include "slabwright/units.hpp"

namespace slabwright::report {
namespace {

constexpr std::size_t question_width = 12, about_width = 12, table_gap = 2;
constexpr std::string_view table_indent = "  ";

/// U+00C0 to U+00FF without their accents.
constexpr std::string_view latin_letters = "AAAAAAACEEEEIIIIDNOOOOOxOUUUUYTsaaaaaaaceeeeiiiidnooooo/ouuuuyty";

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u; }

/// The letter that stands for the character that begins at `at`.
char plain_letter(std::string_view text, std::size_t at) {
  const auto lead = static_cast<unsigned char>(text[at]);
  if (lead != 0xC3u || at + 1 == text.size() || !continues(text[at + 1])) return '?';
  return latin_letters[static_cast<unsigned char>(text[at + 1]) & 0x3Fu];
}

bool is_unit(std::string_view word) {
  const std::string_view bare = word.substr(0, word.find_first_of(".,;:)"));
  if (bare == "~" || bare == "%") return true;
  const auto all = units();
  return std::any_of(all.begin(), all.end(), [&](const Unit& u) { return !u.text.empty() && u.text == bare; });
}

/// Words that stay on one line: "12 ft", "49 F ~" are one.
std::vector<std::string> unbroken(std::string_view text) {
  std::vector<std::string> words;
  bool number = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    at = end + 1;
    if (word.empty()) continue;
    const bool glued = !words.empty() && (word.front() == '~' || (number && is_unit(word)));
    if (glued) {
      words.back() += ' ';
      words.back() += word;
    } else {
      words.emplace_back(word);
    }
    number = word.back() >= '0' && word.back() <= '9';
  }
  return words;
}

std::vector<std::size_t> widths_of(const Table& table) {
  std::vector<std::size_t> widths;
  std::size_t others = table_indent.size();
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    std::size_t width = std::max(table.columns[c].head.size(), table.columns[c].below.size());
    for (const auto& row : table.rows) width = std::max(width, row[c].size());
    widths.push_back(width);
    if (c > 0) others += table_gap;
    if (c != table.wraps) others += width;
  }
  expects(others < page_width, "report: a table wider than the page");
  widths[table.wraps] = std::min(widths[table.wraps], page_width - others);
  return widths;
}

std::string cell(const std::string& text, std::size_t width, bool right) {
  return right ? fmt::format("{:>{}}", text, width) : fmt::format("{:<{}}", text, width);
}

std::string without_end_spaces(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

void add_cells(Page& page, const Table& table, const std::vector<std::size_t>& widths,
               const std::vector<std::string>& cells) {
  const std::vector<std::string> wrapping = wrapped(cells[table.wraps], widths[table.wraps]);
  for (std::size_t i = 0; i < std::max<std::size_t>(1, wrapping.size()); ++i) {
    std::string line(table_indent);
    for (std::size_t c = 0; c < cells.size(); ++c) {
      const std::string text =
          c == table.wraps ? (i < wrapping.size() ? wrapping[i] : std::string{}) : (i == 0 ? cells[c] : std::string{});
      line += cell(text, widths[c], table.columns[c].right);
      if (c + 1 < cells.size()) line += std::string(table_gap, ' ');
    }
    page.lines.push_back(without_end_spaces(line));
  }
}

}  // namespace

std::string ascii(std::string_view text) {
  const std::string folded = plain_characters(text);
  std::string out;
  for (std::size_t i = 0; i < folded.size(); ++i) {
    const auto c = static_cast<unsigned char>(folded[i]);
    if (c >= 0x20u && c < 0x7Fu)
      out += folded[i];
    else if (!continues(folded[i]))
      out += plain_letter(folded, i);
  }
  return out;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  expects(width > 0, "report: no room for a word");
  std::vector<std::string> lines;
  std::string line;
  for (std::string word : unbroken(text)) {
    if (!line.empty() && line.size() + 1 + word.size() > width) lines.push_back(std::exchange(line, {}));
    for (; word.size() > width; word.erase(0, width)) lines.push_back(word.substr(0, width));
    if (!line.empty()) line += ' ';
    line += word;
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

Column left_column(std::string head) { return {std::move(head), {}, false}; }

void add_blank(Page& page) { page.lines.emplace_back(); }

void add_gap(Page& page) {
  if (!page.lines.empty() && !page.lines.back().empty()) add_blank(page);
}

void add_text(Page& page, std::string_view text, std::string_view first) {
  std::string before(first);
  for (const std::string& line : wrapped(ascii(text), page_width - first.size())) {
    page.lines.push_back(before + line);
    before.assign(first.size(), ' ');
  }
}

void add_row(Page& page, std::string_view question, std::string_view about, std::string_view answer) {
  const std::string head = ascii(about);
  const std::string lead = fmt::format("{:<{}}{:<{}}", question, question_width, head, about_width);
  // A head that is too long for its column keeps a space before the answer.
  add_text(page, answer, head.size() < about_width ? lead : lead + " ");
}

std::string text_of(const Page& page) {
  std::string text;
  for (const std::string& line : page.lines) text += line + '\n';
  return text;
}

void add_table(Page& page, const Table& table) {
  Table plain = table;
  for (auto& row : plain.rows) {
    for (std::string& text : row) text = ascii(text);
  }
  const std::vector<std::size_t> widths = widths_of(plain);
  for (std::string Column::*part : {&Column::head, &Column::below}) {
    std::vector<std::string> heads;
    for (const Column& column : plain.columns) heads.push_back(column.*part);
    const bool any = std::any_of(heads.begin(), heads.end(), [](const std::string& h) { return !h.empty(); });
    if (any) add_cells(page, plain, widths, heads);
  }
  for (const auto& row : plain.rows) add_cells(page, plain, widths, row);
}

}  // namespace slabwright::report
