// What people break in one `key = value`, mended one thing at a time. Every mend is said; the value goes on to be read.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>

#include "design/scan.hpp"
#include "design/split.hpp"
#include "design/statements.hpp"
#include "design/toml_text.hpp"

namespace slabwright {
namespace {

struct Straight {
  std::string_view curly, plain;
};
constexpr Straight curly_quotes[] = {
    {"\u201C", "\""}, {"\u201D", "\""}, {"\u201E", "\""}, {"\u2018", "'"}, {"\u2019", "'"}};

bool replace_all(std::string& text, std::string_view from, std::string_view to) {
  bool found = false;
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
    found = true;
  }
  return found;
}

bool starts(std::string_view text, char c) { return !text.empty() && text.front() == c; }
bool digit(char c) { return c >= '0' && c <= '9'; }

/// Inch and foot marks as words, other quotes left out: 5'-6" -> 5 ft 6 in.
std::string marks_as_words(std::string_view content) {
  std::string out;
  for (std::size_t i = 0; i < content.size(); ++i) {
    const char c = content[i];
    const bool mark = c == '"' || c == '\'';
    if (!mark) {
      out += c;
    } else if (i > 0 && digit(content[i - 1])) {
      out += c == '"' ? " in" : " ft";
      const bool more = i + 1 < content.size() && (content[i + 1] == '-' || digit(content[i + 1]));
      if (more) out += ' ';
      if (more && content[i + 1] == '-') ++i;
    }
  }
  return out;
}

/// A value put right, and where in the broken one the fault stands.
struct Fix {
  std::string value;
  std::string sentence;
  std::size_t at = 0;
};

std::string write_it(std::string_view key, std::string_view content) {
  return fmt::format("{} = \"{}\"", excerpt(key), excerpt(content));
}

Fix from_content(std::string content, std::string sentence, std::size_t at) {
  return {in_quotes(content), std::move(sentence), at};
}

/// The value begins with a quote, and something is wrong behind it.
Fix fix_quotes(std::string_view key, std::string_view value) {
  const char quote = value.front();
  const std::size_t end = quoted_end(value, 0);
  if (end == std::string_view::npos) {
    const std::string content = marks_as_words(trimmed(value.substr(1)));
    return from_content(content, fmt::format("the closing quote is missing: {}.", write_it(key, content)), 0);
  }
  if (trimmed(value.substr(end)).empty()) {
    const std::string content(value.substr(1, end - 2));
    return from_content(content, "a \\ in a text is written twice: \\\\.", 0);
  }
  const std::size_t last = value.rfind(quote);
  if (last < end) {
    const std::string content(value.substr(1, end - 2));
    return from_content(content, fmt::format("nothing but a # remark may follow the text: {}.", write_it(key, content)),
                        end);
  }
  const std::string content = marks_as_words(value.substr(1, last - 1));
  if (end >= 3 && digit(value[end - 2])) {
    return from_content(content,
                        fmt::format("a {} for {} ends the text here. Write \"{}\".", quote,
                                    quote == '"' ? "inches" : "feet", excerpt(content)),
                        end - 1);
  }
  return from_content(content, fmt::format("one text takes one pair of quotes: {}.", write_it(key, content)), 0);
}

std::optional<std::string> as_flag(std::string_view value) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 6> words{
      {{"true", "true"}, {"yes", "true"}, {"on", "true"}, {"false", "false"}, {"no", "false"}, {"off", "false"}}};
  std::string small;
  for (const char c : value) small += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const auto& [word, flag] : words) {
    if (small == word) return std::string(flag);
  }
  return std::nullopt;
}

Fix fix_scalar(std::string_view key, std::string_view value) {
  if (starts(value, '"') || starts(value, '\'')) return fix_quotes(key, value);
  if (const auto flag = as_flag(value)) return {*flag, fmt::format("write {} = {}.", excerpt(key), *flag), 0};
  const std::string content = marks_as_words(value);
  return from_content(content, fmt::format("text needs quotes: {}.", write_it(key, content)), 0);
}

/// Commas between texts that follow each other.
std::string with_commas(std::string_view list) {
  std::string out;
  for (std::size_t i = 0; i < list.size();) {
    if (list[i] != '"' && list[i] != '\'') {
      out += list[i++];
      continue;
    }
    const std::size_t end = std::min(quoted_end(list, i), list.size());
    out += list.substr(i, end - i);
    const std::size_t next = list.find_first_not_of(" \t\n", end);
    if (next != std::string_view::npos && (list[next] == '"' || list[next] == '\'')) out += ',';
    i = end;
  }
  return out;
}

class Mender {
 public:
  Mender(const std::string& text, int line) : text_(text), line_(line) {}

  Mended run() {
    if (equals_at(text_) == std::string::npos && !add_equals()) {
      say(first_column(), "this is no [section] and no key = \"value\".");
      return done(false);
    }
    return done(mend_key() && mend_value());
  }

 private:
  bool parses() const { return std::holds_alternative<FileEntry>(parse_entry(text_, line_)); }

  std::size_t first_column() const { return std::min(text_.find_first_not_of(" \t"), text_.size()); }

  /// Columns count characters, not bytes.
  void say(std::size_t at, std::string sentence) {
    const auto bytes = std::string_view(text_).substr(0, at);
    const auto characters = std::count_if(bytes.begin(), bytes.end(),
                                          [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    problem_.push_back({{line_, static_cast<int>(characters) + 1, {}}, std::move(sentence)});
  }

  Mended done(bool good) { return {good ? text_ : std::string{}, std::move(problem_)}; }

  bool add_equals() {
    const std::size_t start = first_column();
    std::size_t end = start;
    while (end < text_.size() && (std::isalnum(static_cast<unsigned char>(text_[end])) || text_[end] == '_')) ++end;
    const std::string_view rest = trimmed(std::string_view(text_).substr(end));
    if (end == start || rest.empty()) return false;
    const std::string key = text_.substr(start, end - start);
    if (rest.front() == ':') {
      const std::size_t colon = text_.find(':', end);
      say(colon, fmt::format("write {} = ..., with an equals sign.", key));
      text_[colon] = '=';
      return true;
    }
    if (!digit(rest.front()) && rest.front() != '"' && rest.front() != '-' && rest.front() != '[') return false;
    say(end, fmt::format("the equals sign is missing: write {} = ...", key));
    text_.insert(end, " =");
    return true;
  }

  bool mend_key() {
    const std::size_t start = first_column(), equals = equals_at(text_);
    key_ = std::string(trimmed(std::string_view(text_).substr(0, equals)));
    const auto allowed = [](char c) {
      return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '-' || c == '.' || c == '"' || c == '\'';
    };
    if (!key_.empty() && std::all_of(key_.begin(), key_.end(), allowed)) return true;
    std::string whole = key_;
    std::replace(whole.begin(), whole.end(), ' ', '_');
    if (whole.empty() || !std::all_of(whole.begin(), whole.end(), allowed)) {
      say(start, fmt::format("\"{}\" is no key. Write key = \"value\".", excerpt(key_)));
      return false;
    }
    say(start, fmt::format("a key has no blanks in it: write {}.", excerpt(whole)));
    text_.replace(start, key_.size(), whole);
    key_ = whole;
    return true;
  }

  std::size_t value_at() const { return std::min(text_.find_first_not_of(" \t", equals_at(text_) + 1), text_.size()); }

  void set_value(const std::string& value) { text_.replace(value_at(), std::string::npos, value); }

  bool mend_value() {
    const std::size_t at = value_at();
    std::string value = text_.substr(at);
    bool curly = false;
    for (const Straight& quote : curly_quotes) curly = replace_all(value, quote.curly, quote.plain) || curly;
    if (curly) {
      say(at, "curly quotes (from a word processor); use plain \".");
      set_value(value);
    }
    if (parses()) return true;
    if (starts(value, '[') || starts(value, '{')) return mend_list(value);
    value = std::string(trimmed(std::string_view(value).substr(0, std::min(remark_at(value), value.find('\n')))));
    if (value.empty()) {
      say(equals_at(text_),
          fmt::format("{} has no value. Write {} = \"...\", or leave the line out.", excerpt(key_), excerpt(key_)));
      return false;
    }
    if (read_quantity(value, Dimension::number).fault == Fault::not_finite) {
      say(at, fmt::format("{} is too large a number.", excerpt(value)));
      return false;
    }
    const Fix fix = fix_scalar(key_, value);
    say(at + fix.at, fix.sentence);
    set_value(fix.value);
    return parses() || lost();
  }

  bool mend_list(const std::string& value) {
    const std::size_t at = value_at();
    std::string list = value;
    if (scan(list).depth > 0 && starts(list, '[')) {
      say(at, "the closing ] of this list is missing.");
      list += "\n]";
    }
    if (std::string commas = with_commas(list); commas != list) {
      set_value(commas);
      if (parses()) {
        say(at, "a comma is missing between two texts of this list.");
        return true;
      }
    }
    set_value(list);
    if (parses()) return true;
    say(at, fmt::format("{} takes texts in quotes, with commas between: [\"0 ft, 0 ft\", \"40 ft, 0 ft\"].",
                        excerpt(key_)));
    return false;
  }

  bool lost() {
    say(first_column(), fmt::format("this cannot be read. Write {} = \"...\".", excerpt(key_)));
    return false;
  }

  std::string text_;
  int line_;
  std::string key_;
  std::vector<FormProblem> problem_;
};

}  // namespace

Mended mend(const std::string& text, int first_line) { return Mender(text, first_line).run(); }

}  // namespace slabwright
