// Worded values: shares of glycol, leaders, the points of curves, and the days of a cold snap.
#include <fmt/format.h>

#include "design/split.hpp"
#include "design/words_when.hpp"
#include "slabwright/design_words.hpp"
#include "slabwright/fields.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double most_head_m = 200.0;
constexpr double most_flow_m3_per_s = 1.0;

const Reading no_reading{0.0, Fault::not_a_number, 0.0, {}};

/// `text` without the words at its end.
bool take_end(std::string_view& text, std::string_view words) {
  if (text.size() < words.size() || text.substr(text.size() - words.size()) != words) return false;
  text = trimmed(text.substr(0, text.size() - words.size()));
  return true;
}

/// A head in feet or metres, or as a pressure of cold water.
Reading read_head(std::string_view text) {
  const Reading head = read_quantity(text, Dimension::head);
  if (head.fault == Fault::none) return head;
  Reading pressure = read_quantity(text, Dimension::pressure);
  if (pressure.fault != Fault::none) return head;
  pressure.si /= metre_of_water_Pa;
  return pressure;
}

}  // namespace

std::string read_words(std::string_view text, GlycolShare& share) {
  const std::string plain = plain_characters(text);
  std::string_view rest = trimmed(plain);
  const bool by_mass = take_end(rest, "by mass") || take_end(rest, "by weight");
  if (!by_mass) take_end(rest, "by volume");
  const Reading reading = read_quantity(rest, Dimension::share);
  if (reading.fault == Fault::none && reading.unit.empty() && reading.si != 0.0) {
    return fmt::format("glycol {} of what? Write \"30 %\" (by volume) or \"30 % by mass\".", excerpt(text));
  }
  if (reading.fault != Fault::none) {
    return fmt::format("\"{}\" is no share of glycol. Write \"30 %\" (by volume) or \"30 % by mass\".", excerpt(text));
  }
  if (reading.si < 0.0 || reading.si > 1.0) {
    return fmt::format("\"{}\": a share of glycol lies between 0 and 100 %.", excerpt(text));
  }
  share = {reading.si, by_mass};
  return {};
}

std::string write_words(const GlycolShare& share, System system) {
  return write_quantity(share.share, Dimension::share, system) + (share.by_mass ? " by mass" : "");
}

std::string read_words(std::string_view text, Leaders& leaders) {
  const std::string plain = plain_characters(text);
  std::string_view rest = trimmed(plain);
  if (rest == "included") {
    leaders = {};
    return {};
  }
  const bool each_way = take_end(rest, "each way");
  const Reading reading = read_quantity(rest, Dimension::length);
  if (!each_way || reading.fault != Fault::none) {
    return fmt::format("leaders are \"included\" in the length, or added: \"{} each way\"; not \"{}\".",
                       !each_way && reading.fault == Fault::none ? excerpt(rest) : "15 ft", excerpt(text));
  }
  if (reading.si < 0.0 || reading.si > 60.0) {
    return fmt::format("\"{}\": leaders are at most 60 m (197 ft) each way.", excerpt(text));
  }
  leaders = {false, reading.si};
  return {};
}

std::string write_words(const Leaders& leaders, System system) {
  return leaders.included ? "included" : write_quantity(leaders.each_way_m, Dimension::length, system) + " each way";
}

std::string read_words(std::string_view text, PumpCurvePoint& point) {
  const std::string plain = plain_characters(text);
  const auto parts = split_at(plain, " at ");
  const Reading head = parts ? read_head(parts->first) : no_reading;
  const Reading flow = parts ? read_quantity(parts->second, Dimension::flow) : no_reading;
  if (head.fault != Fault::none || flow.fault != Fault::none) {
    return fmt::format("\"{}\" is no point of a pump's curve. Write \"15 ft at 3 gpm\" or \"4.5 m at 12 L/min\".",
                       excerpt(text));
  }
  if (head.si < 0.0 || flow.si < 0.0) {
    return fmt::format("\"{}\": head and flow of a pump are not below zero.", excerpt(text));
  }
  if (head.si > most_head_m || flow.si > most_flow_m3_per_s) {
    return fmt::format("\"{}\" is too much for a floor: at most 200 m (656 ft) and 3600 m3/h.", excerpt(text));
  }
  point = {head.si, flow.si};
  return {};
}

std::string write_words(const PumpCurvePoint& point, System system) {
  return write_quantity(point.head_m, Dimension::head, system) + " at " +
         write_quantity(point.flow_m3_per_s, Dimension::flow, system);
}

std::string read_words(std::string_view text, ValvePoint& point) {
  const std::string plain = plain_characters(text);
  const auto parts = split_at(plain, " at ");
  const Reading coefficient = parts ? read_quantity(parts->first, Dimension::valve_coefficient) : no_reading;
  const Reading open = parts ? read_quantity(parts->second, Dimension::turns) : no_reading;
  if (coefficient.fault != Fault::none || open.fault != Fault::none) {
    return fmt::format("\"{}\" is no point of a valve's table. Write \"Kv 0.45 at 2 turns\" (or Cv).", excerpt(text));
  }
  if (coefficient.si < 0.0 || coefficient.si > 1000.0 || open.si < 0.0 || open.si > 100.0) {
    return fmt::format("\"{}\": a valve's table lies between Kv 0 and 1000, 0 and 100 turns.", excerpt(text));
  }
  point = {coefficient.si, open.si};
  return {};
}

std::string write_words(const ValvePoint& point, System system) {
  return write_quantity(point.coefficient_kv, Dimension::valve_coefficient, system) + " at " +
         write_quantity(point.open_turns, Dimension::turns, system);
}

std::string read_words(std::string_view text, DayLow& low) {
  const Reading reading = read_quantity(text, Dimension::degree);
  if (reading.fault != Fault::none) {
    return fmt::format("\"{}\" is no temperature. Write \"-24 F\" or \"-31 C\", one for each day.", excerpt(text));
  }
  if (reading.si < -70.0 || reading.si > 30.0) {
    return fmt::format("\"{}\": the lowest of a cold day lies between -70 and 30 C (-94 and 86 F).", excerpt(text));
  }
  low = {reading.si};
  return {};
}

std::string write_words(const DayLow& low, System system) {
  return write_quantity(low.lowest_degC, Dimension::degree, system);
}

std::string read_words(std::string_view text, CoilLength& coil) {
  const Reading reading = read_quantity(text, Dimension::length);
  if (reading.fault != Fault::none || reading.si < 10.0 || reading.si > 2000.0) {
    return fmt::format("\"{}\" is no coil that is sold. Write \"300 ft\" or \"200 m\", 10 to 2000 m.", excerpt(text));
  }
  coil = {reading.si};
  return {};
}

std::string write_words(const CoilLength& coil, System system) {
  return write_quantity(coil.length_m, Dimension::length, system);
}

std::string read_words(std::string_view text, SourcePoint& point) {
  const std::string plain = plain_characters(text);
  const auto ends = split_at(plain, ":");
  const std::vector<std::string> parts = comma_parts(ends ? ends->second : "");
  const Reading outdoor = ends ? read_quantity(ends->first, Dimension::degree) : no_reading;
  const Reading capacity = parts.size() == 2 ? read_quantity(parts[0], Dimension::power) : no_reading;
  const bool cop = parts.size() == 2 && in_small_letters(parts[1].substr(0, 3)) == "cop";
  const auto number = cop ? read_number(parts[1].substr(3)) : std::nullopt;
  if (outdoor.fault != Fault::none || capacity.fault != Fault::none || !number) {
    return fmt::format("\"{}\" is no row of a heat pump's table. Write \"{}\".", excerpt(text), SourcePoint::example);
  }
  if (outdoor.si < -60.0 || outdoor.si > 30.0 || capacity.si <= 0.0 || capacity.si > 1e6) {
    return fmt::format("\"{}\": a heat pump's table lies between -60 and 30 C (-76 and 86 F), up to 1000 kW.",
                       excerpt(text));
  }
  if (*number <= 0.0 || *number > 20.0) return fmt::format("\"{}\": a COP lies between 0 and 20.", excerpt(text));
  point = {outdoor.si, capacity.si, *number};
  return {};
}

std::string write_words(const SourcePoint& point, System system) {
  return fmt::format("{}: {}, COP {}", write_quantity(point.outdoor_degC, Dimension::degree, system),
                     write_quantity(point.capacity_W, Dimension::power, system), point.cop_number);
}

}  // namespace slabwright
