// The line pass: where each statement begins and ends, whatever is broken inside it.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "design/scan.hpp"
#include "design/split.hpp"
#include "design/statements.hpp"

namespace slabwright {
namespace {

constexpr int deepest_brackets = 8;  // nothing in a design file needs more than two
constexpr int most_dots = 16;        // "a.b.c" in a key: each dot is a table in a table for the parser

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

bool word_character(char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '-'; }

/// `[name]`, `[[name]` and the like: letters first, so that it is no list of numbers.
bool header_like(std::string_view line) {
  line = trimmed(line);
  std::size_t at = line.find_first_not_of('[');
  if (at == 0 || at == std::string_view::npos || at > 2) return false;
  if (!std::isalpha(static_cast<unsigned char>(line[at]))) return false;
  while (at < line.size() && (word_character(line[at]) || line[at] == '.')) ++at;
  const std::string_view rest = trimmed(line.substr(at));
  return rest.empty() || rest.front() == ']' || rest.front() == '#';
}

/// `word =`.
bool entry_like(std::string_view line) {
  line = trimmed(line);
  std::size_t at = 0;
  while (at < line.size() && (word_character(line[at]) || line[at] == '.')) ++at;
  const std::string_view rest = trimmed(line.substr(at));
  return at > 0 && !rest.empty() && rest.front() == '=';
}

/// How far a list that began with an open bracket goes on, or a text in three quotes.
std::size_t last_line(const std::vector<std::string_view>& lines, std::size_t first) {
  const std::string_view value = after_equals(lines[first]);
  for (const std::string_view quotes : {"\"\"\"", "'''"}) {
    if (value.substr(0, 3) != quotes || value.substr(3).find(quotes) != std::string_view::npos) continue;
    for (std::size_t i = first + 1; i < lines.size(); ++i) {
      if (lines[i].find(quotes) != std::string_view::npos) return i;
    }
    return first;
  }
  int depth = scan(value).depth;
  std::size_t last = first;
  while (depth > 0 && last + 1 < lines.size()) {
    if (header_like(lines[last + 1]) || entry_like(lines[last + 1])) break;
    depth += scan(lines[++last]).depth;
  }
  return last;
}

class Cutter {
 public:
  explicit Cutter(std::string_view text) : lines_(lines_of(text)) {}

  FileStatements run() {
    for (std::size_t i = 0; i < lines_.size() && found_.problem.size() < most_problems;) {
      const std::string_view line = trimmed(lines_[i]);
      if (line.empty() || line.front() == '#') {
        ++i;
      } else if (line.front() == '[') {
        header(i++);
      } else {
        i = entry(i);
      }
    }
    return std::move(found_);
  }

 private:
  void problem(std::size_t line, std::size_t column, std::string sentence) {
    found_.problem.push_back({{static_cast<int>(line) + 1, static_cast<int>(column) + 1, {}}, std::move(sentence)});
  }

  void header(std::size_t i) {
    const std::string_view line = lines_[i];
    const std::size_t start = line.find('[');
    std::size_t at = start;
    while (at < line.size() && line[at] == '[') ++at;
    const std::size_t opened = at - start;
    const std::size_t end = std::min(line.find_first_of("]#=", at), line.size());
    std::string name(trimmed(line.substr(at, end - at)));
    std::size_t after = end;
    while (after < line.size() && line[after] == ']') ++after;
    const std::size_t closed = after - end;
    const bool doubled = opened >= 2;
    name.erase(std::remove_if(name.begin(), name.end(), [](char c) { return c == '"' || c == '\''; }), name.end());
    if (name.empty()) return problem(i, start, "a section without a name. Write [slab], for example.");
    const std::string right = fmt::format("{0}{1}{2}", doubled ? "[[" : "[", excerpt(name), doubled ? "]]" : "]");
    if (opened != closed || opened > 2) problem(i, start, fmt::format("brackets do not match: write {}.", right));
    found_.statement.push_back(FileHeader{name, doubled, {static_cast<int>(i) + 1, static_cast<int>(start) + 1, {}}});
    const std::string_view rest = trimmed(line.substr(after));
    if (rest.empty() || rest.front() == '#') return;
    problem(i, after, fmt::format("{} stands on a line of its own; what follows it goes on the next.", right));
    // Blanks keep the columns.
    std::string text(line.size() - line.substr(after).size(), ' ');
    text += line.substr(after);
    statement(text, i);
  }

  std::size_t entry(std::size_t first) {
    const std::size_t last = last_line(lines_, first);
    std::string text(lines_[first]);
    for (std::size_t i = first + 1; i <= last; ++i) text.append("\n").append(lines_[i]);
    statement(text, first);
    return last + 1;
  }

  void statement(const std::string& text, std::size_t line) {
    const int number = static_cast<int>(line) + 1;
    const Scan all = scan(text);
    if (all.deepest > deepest_brackets || all.dots > most_dots) {
      return problem(line, 0, "brackets or dots nested too deep. A value is one text, or one list of texts.");
    }
    auto parsed = parse_entry(text, number);
    if (std::holds_alternative<Spot>(parsed)) {
      Mended mended = mend(text, number);
      found_.problem.insert(found_.problem.end(), mended.problem.begin(), mended.problem.end());
      if (mended.text.empty()) return;
      parsed = parse_entry(mended.text, number);
    }
    if (auto* found = std::get_if<FileEntry>(&parsed)) found_.statement.push_back(std::move(*found));
  }

  std::vector<std::string_view> lines_;
  FileStatements found_;
};

}  // namespace

FileStatements cut(std::string_view text) { return Cutter(text).run(); }

}  // namespace slabwright
