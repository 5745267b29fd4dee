// A text read as a quantity: a number by a checked grammar, then a unit of the table.
#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "slabwright/units.hpp"

namespace slabwright {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }

bool blank(char c) { return c == '\0' || std::isspace(static_cast<unsigned char>(c)); }

std::size_t digits_from(std::string_view s, std::size_t at) {
  while (at < s.size() && digit(s[at])) ++at;
  return at;
}

/// The number at the front of a text: its value, where it ends, and whether a comma in it can only be a decimal one.
struct Front {
  double value = 0.0;
  std::size_t end = 0;
  bool decimal_comma = false;
};

/// Whole part with thousands commas: "1,080" is read, "0,30" and "1,5" are decimal commas.
std::string whole_part(std::string_view s, std::size_t& at, bool& decimal_comma) {
  const std::size_t start = at;
  at = digits_from(s, at);
  std::string digits(s.substr(start, at - start));
  while (at < s.size() && s[at] == ',' && at + 1 < s.size() && digit(s[at + 1])) {
    const std::size_t end = digits_from(s, at + 1);
    if (end - at != 4 || digits.empty() || digits.size() > 3 * 3 || digits == "0") decimal_comma = true;
    digits += s.substr(at + 1, end - at - 1);
    at = end;
  }
  return digits;
}

/// "/2" after a whole number: a fraction of small whole numbers, as tape measures have them.
bool fraction_end(std::string_view s, std::size_t& at, double& denominator) {
  if (at + 1 >= s.size() || s[at] != '/' || !digit(s[at + 1])) return false;
  const std::size_t end = digits_from(s, at + 1);
  denominator = std::strtod(std::string(s.substr(at + 1, end - at - 1)).c_str(), nullptr);
  if (denominator <= 0.0) return false;
  at = end;
  return true;
}

/// " 1/2" or "-1/2" after a whole number.
double mixed_fraction(std::string_view s, std::size_t& at) {
  std::size_t next = at;
  while (next < s.size() && (s[next] == ' ' || s[next] == '-')) ++next;
  const std::size_t end = digits_from(s, next);
  if (next == at || end == next) return 0.0;
  std::size_t after = end;
  double denominator = 1.0;
  if (!fraction_end(s, after, denominator)) return 0.0;
  const double numerator = std::strtod(std::string(s.substr(next, end - next)).c_str(), nullptr);
  at = after;
  return numerator / denominator;
}

std::size_t exponent_end(std::string_view s, std::size_t at) {
  if (at >= s.size() || (s[at] != 'e' && s[at] != 'E')) return at;
  std::size_t next = at + 1;
  if (next < s.size() && (s[next] == '-' || s[next] == '+')) ++next;
  const std::size_t end = digits_from(s, next);
  return end == next ? at : end;
}

std::optional<Front> number_in_front(std::string_view s) {
  std::size_t at = 0;
  const bool minus = !s.empty() && s[0] == '-';
  if (!s.empty() && (s[0] == '-' || s[0] == '+')) at = 1;
  while (at < s.size() && s[at] == ' ') ++at;
  if (at + 1 < s.size() && s[at] == '0' && (s[at + 1] == 'x' || s[at + 1] == 'X')) return std::nullopt;
  Front front;
  const std::size_t start = at;
  std::string text = whole_part(s, at, front.decimal_comma);
  double denominator = 1.0;
  const bool whole = at > start;
  if (whole && fraction_end(s, at, denominator)) {
    front.value = std::strtod(text.c_str(), nullptr) / denominator;
  } else {
    if (at < s.size() && s[at] == '.') {
      const std::size_t end = digits_from(s, at + 1);
      if (!whole && end == at + 1) return std::nullopt;
      text += s.substr(at, end - at);
      at = end;
    } else if (!whole) {
      return std::nullopt;
    }
    const std::size_t end = exponent_end(s, at);
    text += s.substr(at, end - at);
    const bool plain = end == at && text.find('.') == std::string::npos;
    at = end;
    front.value = std::strtod(text.c_str(), nullptr);
    if (plain) front.value += mixed_fraction(s, at);
  }
  if (minus) front.value = -front.value;
  front.end = at;
  return front;
}

/// What people write or leave out: spaces, dots, brackets, "^", "*", hyphens.
bool idle(char c) { return c == ' ' || c == '(' || c == ')' || c == '^' || c == '*' || c == '.' || c == '-'; }
char lower(char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); }

/// Lower case without idle characters, "deg" (but where it is all of it) and the r of "/hr".
std::string fold(std::string_view unit) {
  std::string out;
  for (const char c : unit) {
    if (!idle(c)) out += lower(c);
  }
  if (out == "deg" || out == "degree" || out == "degrees") return out;
  for (const auto& [word, plain] : {std::pair{"deg", ""}, {"/hr", "/h"}}) {
    if (const std::size_t at = out.find(word); at != std::string::npos) out.replace(at, 3, plain);
  }
  return out;
}

/// Whether a text of the table folds to this, without building it: the table is searched for every value read.
bool folds_to(std::string_view unit, std::string_view folded) {
  std::size_t at = 0;
  for (const char c : unit) {
    if (idle(c)) continue;
    if (at == folded.size() || lower(c) != folded[at++]) return false;
  }
  return at == folded.size();
}

using Alias = std::pair<std::string_view, std::string_view>;
constexpr std::array<Alias, 52> aliases{{
    {"\"", "in"},        {"inch", "in"},
    {"inches", "in"},    {"''", "in"},
    {"'", "ft"},         {"foot", "ft"},
    {"feet", "ft"},      {"yards", "yd"},
    {"yard", "yd"},      {"meter", "m"},
    {"metre", "m"},      {"meters", "m"},
    {"metres", "m"},     {"sqft", "ft2"},
    {"sqfeet", "ft2"},   {"squarefeet", "ft2"},
    {"sqm", "m2"},       {"sqin", "in2"},
    {"gallon", "gal"},   {"gallons", "gal"},
    {"liter", "l"},      {"litre", "l"},
    {"liters", "l"},     {"litres", "l"},
    {"lpm", "l/min"},    {"cuft", "ft3"},
    {"fahrenheit", "f"}, {"celsius", "c"},
    {"kelvin", "k"},     {"psig", "psi"},
    {"watts", "w"},      {"btuh", "btu/h"},
    {"w/mc", "w/mk"},    {"w/m2c", "w/m2k"},
    {"/h", "perhour"},   {"1/h", "perhour"},
    {"ach", "perhour"},  {"airchangesperhour", "perhour"},
    {"turn", "turns"},   {"percent", "%"},
    {"hours", "h"},      {"hr", "h"},
    {"pounds", "lb"},    {"lbs", "lb"},
    {"minutes", "min"},  {"degree", "deg"},
    {"degrees", "deg"},  {"c/m", "k/m"},
    {"kgs", "kg"},       {"minute", "min"},
    {"days", "d"},       {"day", "d"},
}};

std::string canonical(std::string_view unit) {
  const std::string folded = fold(unit);
  for (const Alias& alias : aliases) {
    if (alias.first == folded) return std::string(alias.second);
  }
  return folded;
}

const Unit* find(std::string_view canonical_unit, Dimension dimension) {
  for (const Unit& unit : units()) {
    if (unit.dimension == dimension && !unit.before && folds_to(unit.text, canonical_unit)) return &unit;
  }
  return nullptr;
}

bool known_elsewhere(std::string_view canonical_unit) {
  for (const Unit& unit : units()) {
    if (!unit.text.empty() && folds_to(unit.text, canonical_unit)) return true;
  }
  return false;
}

bool same_letters(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) { return lower(x) == lower(y); });
}

/// "R-10", "Kv 1.0": the unit stands before the number.
std::optional<Reading> prefixed(std::string_view s, Dimension dimension) {
  for (const Unit& unit : units()) {
    if (!unit.before || s.size() <= unit.text.size()) continue;
    if (!same_letters(s.substr(0, unit.text.size()), unit.text)) continue;
    // "R-10" is no negative number, "Kv -1" is.
    const std::string_view behind = s.substr(unit.text.size());
    const bool joined = behind.front() == '-' || behind.front() == '=';
    const std::string_view rest = trimmed(behind.substr(joined ? 1 : 0));
    const auto front = number_in_front(rest);
    if (!front || front->end != rest.size()) continue;
    Reading reading;
    reading.written = front->value;
    reading.unit = std::string(unit.text);
    reading.si = (front->value + unit.shift) * unit.scale;
    if (unit.dimension != dimension)
      reading.fault = Fault::wrong_kind;
    else if (front->decimal_comma)
      reading.fault = Fault::decimal_comma;
    return reading;
  }
  return std::nullopt;
}

/// "5'-6", "5 ft 6 in": feet, then inches.
std::optional<Reading> feet_and_inches(std::string_view s) {
  const auto feet = number_in_front(s);
  if (!feet || feet->decimal_comma) return std::nullopt;
  std::string_view rest = trimmed(s.substr(feet->end));
  std::size_t unit_end = 0;
  while (unit_end < rest.size() && !digit(rest[unit_end]) && rest[unit_end] != '-' && rest[unit_end] != ' ') ++unit_end;
  if (canonical(rest.substr(0, unit_end)) != "ft") return std::nullopt;
  rest = trimmed(rest.substr(unit_end));
  if (!rest.empty() && rest.front() == '-') rest = trimmed(rest.substr(1));
  const auto inches = number_in_front(rest);
  if (!inches || inches->decimal_comma || inches->value < 0.0) return std::nullopt;
  const std::string last = canonical(trimmed(rest.substr(inches->end)));
  if (!last.empty() && last != "in") return std::nullopt;
  Reading reading;
  reading.written = feet->value + (feet->value < 0.0 ? -1.0 : 1.0) * inches->value / 12.0;
  reading.unit = "ft";
  reading.si = from_unit(reading.written, "ft", Dimension::length);
  return reading;
}

Reading number_then_unit(std::string_view s, Dimension dimension) {
  Reading reading;
  const auto front = number_in_front(s);
  if (!front) {
    reading.fault = Fault::not_a_number;
    return reading;
  }
  const std::string_view rest = trimmed(s.substr(front->end));
  reading.written = front->value;
  reading.unit = std::string(rest);
  if (front->decimal_comma) {
    reading.fault = Fault::decimal_comma;
    return reading;
  }
  const std::string unit = canonical(rest);
  const Unit* row = find(unit, dimension);
  if (!row) {
    reading.fault = rest.empty() ? Fault::no_unit : known_elsewhere(unit) ? Fault::wrong_kind : Fault::unknown_unit;
    return reading;
  }
  reading.si = (front->value + row->shift) * row->scale;
  return reading;
}

}  // namespace

std::string_view trimmed(std::string_view s) {
  while (!s.empty() && blank(s.front())) s.remove_prefix(1);
  while (!s.empty() && blank(s.back())) s.remove_suffix(1);
  return s;
}

Reading read_quantity(std::string_view text, Dimension dimension) {
  const std::string plain = plain_characters(text);
  const std::string_view s = trimmed(plain);
  std::optional<Reading> found = prefixed(s, dimension);
  if (!found && (dimension == Dimension::length || dimension == Dimension::head)) found = feet_and_inches(s);
  Reading reading = found ? *found : number_then_unit(s, dimension);
  if (!std::isfinite(reading.si) || !std::isfinite(reading.written)) reading.fault = Fault::not_finite;
  return reading;
}

std::optional<double> read_number(std::string_view text) {
  const std::string plain = plain_characters(text);
  const std::string_view s = trimmed(plain);
  const auto front = number_in_front(s);
  if (!front || front->decimal_comma || front->end != s.size() || !std::isfinite(front->value)) return std::nullopt;
  return front->value;
}

}  // namespace slabwright
