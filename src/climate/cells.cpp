#include "cells.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

#include "slabwright/units.hpp"

namespace slabwright::weather {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }
bool blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\0'; }

/// Powers of ten that a double holds exactly.
constexpr std::array<double, 23> tens{1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                      1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

/// A number's digits without its point: value = digits * 10^exponent.
struct Digits {
  std::uint64_t digits = 0;
  int count = 0;  ///< behind leading zeros
  int exponent = 0;
  bool any = false;
  std::size_t end = 0;
};

Digits digits_in_front(std::string_view s) {
  Digits out;
  bool behind_point = false;
  for (; out.end < s.size(); ++out.end) {
    const char c = s[out.end];
    if (c == '.' && !behind_point) {
      behind_point = true;
      continue;
    }
    if (!digit(c)) break;
    out.any = true;
    if (out.count < 18) out.digits = out.digits * 10 + static_cast<std::uint64_t>(c - '0');
    if (out.digits > 0) ++out.count;
    if (behind_point) --out.exponent;
  }
  return out;
}

/// Where an exponent that begins at `at` ends; `at` itself where there is none.
std::size_t exponent_end(std::string_view s, std::size_t at) {
  if (at >= s.size() || (s[at] != 'e' && s[at] != 'E')) return at;
  std::size_t end = at + 1;
  if (end < s.size() && (s[end] == '-' || s[end] == '+')) ++end;
  const std::size_t first = end;
  while (end < s.size() && digit(s[end])) ++end;
  return end == first ? at : end;
}

}  // namespace

std::optional<double> plain_decimal(std::string_view s) {
  s = trimmed(s);
  const bool minus = !s.empty() && s.front() == '-';
  if (!s.empty() && (s.front() == '-' || s.front() == '+')) s = trimmed(s.substr(1));
  const Digits front = digits_in_front(s);
  if (!front.any || exponent_end(s, front.end) != s.size()) return std::nullopt;
  // Fifteen digits and a power of ten are both exact, so one division rounds once (Clinger 1990, the fast path).
  if (front.end == s.size() && front.count <= 15 && front.exponent >= -22) {
    const double value = static_cast<double>(front.digits) / tens[static_cast<std::size_t>(-front.exponent)];
    return minus ? -value : value;
  }
  const std::optional<double> value = read_number(s);
  return value && minus ? std::optional(-*value) : value;
}

std::optional<int> plain_whole(std::string_view s) {
  s = trimmed(s);
  if (s.empty() || s.size() > 9) return std::nullopt;
  int value = 0;
  for (const char c : s) {
    if (!digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

std::vector<std::string_view> cells_of(std::string_view line, bool quoted) {
  std::vector<std::string_view> cells;
  bool inside = false;
  std::size_t start = 0;
  for (std::size_t at = 0; at <= line.size(); ++at) {
    if (at < line.size() && quoted && line[at] == '"') inside = !inside;
    if (at < line.size() && (line[at] != ',' || inside)) continue;
    std::string_view cell = trimmed(line.substr(start, at - start));
    if (quoted && cell.size() >= 2 && cell.front() == '"' && cell.back() == '"') cell = cell.substr(1, cell.size() - 2);
    cells.push_back(cell);
    start = at + 1;
  }
  return cells;
}

std::string shown_cell(std::string_view s) {
  constexpr std::size_t most = 24;
  s = trimmed(s);
  std::string out(s.substr(0, most));
  std::replace_if(
      out.begin(), out.end(), [](char c) { return c < ' ' || c > '~'; }, '?');
  return s.size() > most ? out + "..." : out;
}

LineWalk::LineWalk(std::string_view text) : rest_(text) {
  if (rest_.substr(0, 3) == "\xEF\xBB\xBF") rest_.remove_prefix(3);
  while (!rest_.empty() && blank(rest_.back())) rest_.remove_suffix(1);
}

bool LineWalk::next() {
  while (!rest_.empty()) {
    const std::size_t end = std::min(rest_.find('\n'), rest_.size());
    line_ = rest_.substr(0, end);
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    ++number_;
    if (!trimmed(line_).empty()) return true;
  }
  return false;
}

const std::vector<std::string_view>& LineWalk::cells() {
  cells_.clear();
  std::string_view left = line_;
  for (std::size_t end = left.find(','); end != left.npos; end = left.find(',')) {
    cells_.push_back(left.substr(0, end));
    left.remove_prefix(end + 1);
  }
  cells_.push_back(left);
  return cells_;
}

}  // namespace slabwright::weather
