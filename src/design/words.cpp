// Worded values: lengths in pairs, tube, insulation, glycol. (The points of curves: words_points.cpp.)
#include <fmt/format.h>

#include <cmath>

#include "design/split.hpp"
#include "slabwright/design_words.hpp"
#include "slabwright/fields.hpp"
#include "slabwright/handbook_materials.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

constexpr double longest_m = 1000.0;              // a floor beyond that is a slip of the pen
constexpr double most_resistance_m2K_per_W = 20;  // no wall or roof has more

/// Two lengths where the unit may stand at one of them only: "36 x 30 ft", "40 ft, 0".
struct LengthPair {
  Reading first, second;
  bool has_unit = true;
};

LengthPair read_pair(std::string_view first, std::string_view second) {
  LengthPair pair{read_quantity(first, Dimension::length), read_quantity(second, Dimension::length)};
  const auto borrow = [](Reading& to, std::string_view text, const Reading& from) {
    if (to.fault == Fault::no_unit && from.fault == Fault::none) {
      to = read_quantity(fmt::format("{} {}", text, from.unit), Dimension::length);
    }
  };
  borrow(pair.first, first, pair.second);
  borrow(pair.second, second, pair.first);
  pair.has_unit = pair.first.fault != Fault::no_unit || pair.second.fault != Fault::no_unit;
  return pair;
}

/// What is wrong with one length of a pair; nothing where it was read.
std::string length_fault(const Reading& reading, std::string_view text, std::string_view example) {
  switch (reading.fault) {
    case Fault::none: return {};
    case Fault::decimal_comma: return fmt::format("decimal comma in \"{}\": write a point.", excerpt(text));
    case Fault::unknown_unit:
    case Fault::wrong_kind:
      return fmt::format("\"{}\" is no length. Units that fit: {}.", excerpt(reading.unit),
                         units_that_fit(Dimension::length));
    default: return fmt::format("\"{}\" is no length. Write it as \"{}\".", excerpt(text), example);
  }
}

}  // namespace

std::string read_words(std::string_view text, Size& size) {
  constexpr std::string_view example = "36 ft x 30 ft";
  const std::string plain = plain_characters(text);
  auto parts = split_at(plain, " by ");
  if (!parts) parts = split_at(plain, "x");
  if (!parts) parts = split_at(plain, "X");
  if (!parts) return fmt::format("\"{}\" is not two lengths. Write them as \"{}\".", excerpt(text), example);
  const LengthPair pair = read_pair(parts->first, parts->second);
  if (!pair.has_unit) {
    return fmt::format("{} of what? Write \"{} x {} ft\" or \"{} x {} m\".", excerpt(plain), parts->first,
                       parts->second, parts->first, parts->second);
  }
  for (const auto& [reading, part] : {std::pair{pair.first, parts->first}, std::pair{pair.second, parts->second}}) {
    if (std::string fault = length_fault(reading, part, example); !fault.empty()) return fault;
    if (reading.si <= 0.0) return fmt::format("\"{}\": a length must be greater than zero.", excerpt(text));
    if (reading.si > longest_m) return fmt::format("\"{}\" is too long: at most 1000 m (3280 ft).", excerpt(text));
  }
  size = {pair.first.si, pair.second.si};
  return {};
}

std::string write_words(const Size& size, System system) {
  return write_quantity(size.width_m, Dimension::length, system) + " x " +
         write_quantity(size.depth_m, Dimension::length, system);
}

std::string read_words(std::string_view text, Place& place) {
  constexpr std::string_view example = "26 ft, 14 ft";
  const std::string plain = plain_characters(text);
  auto parts = split_at(plain, ", ");
  if (!parts) parts = split_at(plain, ",");
  if (!parts) {
    return fmt::format("\"{}\" is no place. Write it as \"{}\": to the right, then up.", excerpt(text), example);
  }
  const LengthPair pair = read_pair(parts->first, parts->second);
  // Zero is zero in any unit.
  if (!pair.has_unit && (pair.first.written != 0.0 || pair.second.written != 0.0)) {
    return fmt::format("{} of what? Write \"{}, {} ft\" or \"{}, {} m\".", excerpt(plain), parts->first, parts->second,
                       parts->first, parts->second);
  }
  for (const auto& [reading, part] : {std::pair{pair.first, parts->first}, std::pair{pair.second, parts->second}}) {
    if (!pair.has_unit) continue;
    if (std::string fault = length_fault(reading, part, example); !fault.empty()) return fault;
    if (std::abs(reading.si) > longest_m) {
      return fmt::format("\"{}\" lies too far out: at most 1000 m (3280 ft).", excerpt(text));
    }
  }
  place = {pair.first.si, pair.second.si};
  return {};
}

std::string write_words(const Place& place, System system) {
  return write_quantity(place.x_m, Dimension::length, system) + ", " +
         write_quantity(place.y_m, Dimension::length, system);
}

std::string read_words(std::string_view text, TubeName& name) {
  if (const TubeSize* size = find_tube(plain_characters(text))) {
    name.name = std::string(size->name);
    return {};
  }
  const std::string said = excerpt(text);
  const Reading reading = read_quantity(text, Dimension::length);
  if (reading.fault == Fault::no_unit) {
    return fmt::format("{} what? \"{}\" (nominal) or \"16 x 2 mm\" (outside x wall).", said,
                       find_tube(said + " in") ? said + " in" : "1/2 in");
  }
  if (reading.fault == Fault::none && reading.unit == "mm") {
    return fmt::format("{} with which wall? Write \"{:.6g} x 2 mm\" (outside x wall).", said, reading.written);
  }
  std::string all;
  for (const std::string_view known : tube_names()) all += fmt::format("{}{}", all.empty() ? "" : ", ", known);
  return fmt::format("no tube \"{}\" is known here. Known: {}.", said, all);
}

std::string write_words(const TubeName& name, System) { return name.name; }

namespace {

constexpr std::string_view insulation_forms = "R (\"R-10\") or a thickness with a material (\"2 in XPS\")";

std::string too_insulating(std::string_view text) {
  return fmt::format("\"{}\" is too large: at most R-113 (20 m2K/W).", excerpt(text));
}

/// "2 in XPS", "50 mm of EPS", "3 1/2 in glass wool": the longest front that is a length, the rest a material.
std::optional<std::string> read_layer(std::string_view text, Insulation& insulation) {
  std::optional<std::string> problem;
  for (std::size_t space = text.find(' '); space != std::string_view::npos; space = text.find(' ', space + 1)) {
    const Reading thickness = read_quantity(text.substr(0, space), Dimension::length);
    std::string_view material = trimmed(text.substr(space));
    if (material.substr(0, 3) == "of ") material = trimmed(material.substr(3));
    if (thickness.fault != Fault::none || material.empty()) continue;
    const Material* found = find_insulation(material);
    if (found && thickness.si >= 0.0) {
      const double resistance = thickness.si / found->conductivity_W_per_mK;
      if (resistance > most_resistance_m2K_per_W) return too_insulating(text);
      insulation.resistance_m2K_per_W = resistance;
      return std::string{};
    }
    problem = fmt::format("no insulation \"{}\" is known here. Write {}.", excerpt(material), insulation_forms);
  }
  return problem;
}

bool u_value(std::string_view plain) {
  const Reading reading = read_quantity(plain, Dimension::transmittance);
  return reading.fault == Fault::none || (plain.size() > 1 && (plain[0] == 'U' || plain[0] == 'u'));
}

}  // namespace

std::string read_words(std::string_view text, Insulation& insulation) {
  const std::string plain(trimmed(plain_characters(text)));
  if (plain == "none") {
    insulation = {};
    return {};
  }
  const Reading reading = read_quantity(plain, Dimension::insulance);
  if (reading.fault == Fault::none) {
    if (reading.si < 0.0) return fmt::format("\"{}\" is less than nothing. Write \"none\" or R.", excerpt(text));
    if (reading.si > most_resistance_m2K_per_W) return too_insulating(text);
    insulation.resistance_m2K_per_W = reading.si;
    return {};
  }
  if (reading.fault == Fault::decimal_comma) return length_fault(reading, text, {});
  if (u_value(plain)) return fmt::format("\"{}\" is a U-value; insulation takes {}.", excerpt(text), insulation_forms);
  if (reading.fault == Fault::no_unit) {
    return fmt::format("{0} of what? Write \"R-{0}\", \"{0} m2K/W\" or a thickness with a material (\"2 in XPS\").",
                       excerpt(plain));
  }
  if (const auto layer = read_layer(plain, insulation)) return *layer;
  if (read_quantity(plain, Dimension::length).fault == Fault::none) {
    return fmt::format("{0} of what? Write \"{0} XPS\", or R (\"R-10\").", excerpt(plain));
  }
  return fmt::format("\"{}\" is no insulation known here. Write {}.", excerpt(text), insulation_forms);
}

std::string write_words(const Insulation& insulation, System system) {
  if (insulation.resistance_m2K_per_W == 0.0) return "none";
  return write_quantity(insulation.resistance_m2K_per_W, Dimension::insulance, system);
}

}  // namespace slabwright
