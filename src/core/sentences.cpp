// The sentences say what to write, in the units that suit the key.
#include "core/sentences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// The unit that people use for this key: that of its default, else by size (a gap is in inches, a slab in feet).
std::string_view own_unit(const Key& key, System system) {
  const Dimension dimension = key.unit->dimension;
  const Says& says = key.says;
  const std::string_view standard = system == System::si && !says.si.empty() ? says.si : says.us;
  const Reading reading = read_quantity(standard, dimension);
  const bool us = system == System::us;
  if (!standard.empty() && (us || !says.si.empty())) {
    for (const Unit& unit : units()) {
      if (unit.dimension == dimension && unit.text == reading.unit) return unit.text;
    }
  }
  if (dimension == Dimension::length && says.most <= 1.0) return us ? "in" : "mm";
  if (dimension == Dimension::flow && says.most > 1.0) return us ? "cfm" : "m3/h";
  if (dimension == Dimension::power) return "kW";
  if (dimension == Dimension::time && says.least >= day_s) return "d";
  return shown(dimension, system).unit;
}

std::string with_unit(const std::string& number, std::string_view unit, Dimension dimension) {
  if (unit.empty()) return number;
  for (const Unit& row : units()) {
    if (row.dimension == dimension && row.text == unit && row.before) {
      return fmt::format("{}{}{}", unit, unit == "R" ? "-" : " ", number);
    }
  }
  return fmt::format("{} {}", number, unit);
}

/// Two digits where they are within 2 % of the value, else three: "300 mm" for 12 in, "127 mm" for 5 in.
std::string rounded(double value) {
  for (const int digits : {2, 3}) {
    if (value == 0.0) break;
    const double scale = std::pow(10.0, digits - 1 - std::floor(std::log10(std::abs(value))));
    const double round = std::round(value * scale) / scale;
    if (digits == 3 || std::abs(round - value) <= 0.02 * std::abs(value)) return fmt::format("{:.6g}", round);
  }
  return "0";
}

std::string rounded_in(const Key& key, double si, System system) {
  const std::string_view unit = own_unit(key, system);
  const Dimension dimension = key.unit->dimension;
  const double value = in_unit(si, unit, dimension);
  const bool scale = dimension == Dimension::degree || dimension == Dimension::rise;
  return with_unit(scale ? fmt::format("{:.0f}", std::round(value) + 0.0) : rounded(value), unit, dimension);
}

/// 1, 2 or 5 with noughts, the nearest to a value above zero.
double plain_step(double value) {
  const double power = std::floor(std::log10(value) + 1e-9), decade = std::pow(10.0, power);
  double nearest = decade;
  for (const double step : {2.0, 5.0, 10.0}) {
    if (std::abs(std::log(step * decade / value)) < std::abs(std::log(nearest / value))) nearest = step * decade;
  }
  return nearest;
}

/// A likely value of a key without a default, from its limits alone: their middle, for lengths and the like by ratio.
std::string likely(const Key& key, System system) {
  const Dimension dimension = key.unit->dimension;
  const std::string_view unit = own_unit(key, system);
  const double least = key.says.least, most = key.says.most;
  if (dimension == Dimension::degree) {
    return with_unit(
        fmt::format("{:.0f}", 5.0 * std::round(in_unit(0.5 * (least + most), unit, dimension) / 5.0) + 0.0), unit,
        dimension);
  }
  // Parts of a building, shares and the like come near their limits; powers, masses and a bore's roughness are allowed
  // far beyond what is usual.
  const bool near = (dimension == Dimension::length && most >= 1.0) || dimension == Dimension::share ||
                    dimension == Dimension::rise || dimension == Dimension::angle;
  const double middle = least > 0.0 ? std::sqrt(least * most) : most / (near ? 10.0 : 1000.0);
  return with_unit(fmt::format("{:.6g}", plain_step(in_unit(middle, unit, dimension))), unit, dimension);
}

std::string no_unit_sentence(const Key& key, std::string_view text, double written, System system) {
  const Dimension dimension = key.unit->dimension;
  const System other = system == System::us ? System::si : System::us;
  const std::string_view unit = own_unit(key, system);
  const std::string number = excerpt(text);
  const std::string first = with_unit(number, unit, dimension);
  if (unit == own_unit(key, other)) return fmt::format("{} {} has no unit. Write \"{}\".", key.word, number, first);
  const std::string second = rounded_in(key, from_unit(written, unit, dimension), other);
  return fmt::format("{} {} has no unit. Write \"{}\" or \"{}\".", key.word, number, first, second);
}

/// A decimal comma mended: "0,30 m" -> "0.30 m".
std::string with_point(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  return text;
}

/// Both systems' limit, the reader's first.
std::string limit(const Key& key, double si, System system) {
  if (!key.unit) return fmt::format("{}", si);
  const System other = system == System::us ? System::si : System::us;
  const std::string first = rounded_in(key, si, system), second = rounded_in(key, si, other);
  return first == second ? first : fmt::format("{} ({})", first, second);
}

}  // namespace

std::string fault_sentence(const Key& key, std::string_view text, const Reading& reading, System system) {
  const Dimension dimension = key.unit->dimension;
  const std::string fit = units_that_fit(dimension);
  const std::string said = excerpt(text);
  switch (reading.fault) {
    case Fault::none: return {};
    case Fault::not_a_number:
      return fmt::format("\"{}\" is not a number with a unit. Write {} = \"{}\".", said, key.word,
                         example_of(key, Number{nullptr}, system));
    case Fault::no_unit: return no_unit_sentence(key, text, reading.written, system);
    case Fault::unknown_unit:
      if (fit.empty()) return fmt::format("{} takes a number alone, not \"{}\".", key.word, said);
      return fmt::format("\"{}\" is no unit known here. Units that fit {}: {}.", excerpt(reading.unit), key.word, fit);
    case Fault::wrong_kind:
      if (fit.empty()) return fmt::format("{} takes a number alone, not \"{}\".", key.word, said);
      return fmt::format("\"{}\" does not fit {}. Units that fit: {}.", excerpt(reading.unit), key.word, fit);
    case Fault::decimal_comma: return fmt::format("decimal comma: write \"{}\".", with_point(said));
    case Fault::not_finite: return fmt::format("{} is too large a number.", said);
  }
  return {};
}

std::string range_sentence(const Key& key, std::string_view text, double si, System system) {
  const std::string said = excerpt(text);
  if (si < key.says.least) {
    return fmt::format("{} {} is too small: at least {}.", key.word, said, limit(key, key.says.least, system));
  }
  if (si > key.says.most) {
    return fmt::format("{} {} is too large: at most {}.", key.word, said, limit(key, key.says.most, system));
  }
  return {};
}

std::string choice_sentence(const Key& key, const Choice& choice, std::string_view text) {
  std::string all;
  for (std::size_t i = 0; i < choice.names.size(); ++i) {
    const std::string_view joint = i == 0 ? "" : i + 1 == choice.names.size() ? " or " : ", ";
    all += fmt::format("{}\"{}\"", joint, choice.names[i]);
  }
  return fmt::format("{} is {}, not \"{}\".", key.word, all, excerpt(text));
}

std::string example_of(const Key& key, const Slot& slot, System system) {
  if (system == System::si && !key.says.si.empty()) return std::string(key.says.si);
  if (!key.says.us.empty()) return std::string(key.says.us);
  if (key.unit) return likely(key, system);
  if (const auto* worded = std::get_if<Worded>(&slot)) return std::string(worded->example);
  if (const auto* list = std::get_if<WordedList>(&slot)) return std::string(list->example);
  if (const auto* choice = std::get_if<Choice>(&slot)) return std::string(choice->names[0]);
  if (std::holds_alternative<Flag>(slot)) return "true";
  if (std::holds_alternative<Whole>(slot)) return "1";
  return "...";
}

std::string excerpt(std::string_view text) {
  constexpr std::size_t most = 40;
  std::string out;
  for (const char c : plain_characters(text.substr(0, 4 * most))) {
    const auto byte = static_cast<unsigned char>(c);
    out += byte < 0x20 || byte == 0x7f ? '?' : c;
  }
  if (out.size() <= most && text.size() <= 4 * most) return out;
  std::size_t end = std::min(most - 3, out.size());
  while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0) == 0x80) --end;  // never half a character
  return out.substr(0, end) + "...";
}

}  // namespace slabwright
