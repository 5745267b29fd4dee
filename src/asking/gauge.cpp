// gauge: two readings in words.
#include <fmt/format.h>

#include "asking/parts.hpp"

namespace slabwright {
namespace {

constexpr double most_gauge_Pa = 25e5, coldest_degC = -60.0, warmest_degC = 80.0;
constexpr double most_error_share = 0.5;  // of the first reading: a coarser gauge reads nothing

/// A reading with the units that it was typed in, or a sentence that says what to write.
struct TypedReading {
  TestReading reading;
  GaugeOptions units;
  std::string problem;
};

std::string no_reading(std::string_view option, std::string_view text, std::string_view example) {
  return fmt::format("{} takes a pressure at a temperature: {} \"{}\"; not \"{}\".", option, option, example,
                     excerpt(text));
}

/// Whether a pressure is typed as an absolute one, which no test gauge shows.
bool absolute(const std::string& pressure) {
  return pressure.find("psia") != std::string::npos || pressure.find("abs") != std::string::npos;
}

std::string limits_of(std::string_view option, const TestReading& reading) {
  if (reading.gauge_Pa < 0.0) return fmt::format("{}: a pressure below 0 is no reading of a test.", option);
  if (reading.gauge_Pa > most_gauge_Pa)
    return fmt::format("{}: more than 25 bar (363 psi); no floor tube is tested so high. See the unit.", option);
  if (reading.degC < coldest_degC || reading.degC > warmest_degC)
    return fmt::format("{}: a temperature from -76 to 176 F (-60 to 80 C). See the unit.", option);
  return {};
}

TypedReading read_typed(std::string_view option, const std::string& text, std::string_view example) {
  TypedReading typed;
  const std::string plain = plain_characters(text);
  const std::size_t at = plain.find(" at ");
  if (at == std::string::npos) return {{}, {}, no_reading(option, text, example)};
  const std::string pressure_text = plain.substr(0, at);
  const Reading pressure = read_quantity(pressure_text, Dimension::pressure);
  const Reading degree = read_quantity(plain.substr(at + 4), Dimension::degree);
  if (absolute(pressure_text))
    return {{}, {}, fmt::format("{}: a gauge shows pressure over the air outside. Write \"{}\".", option, example)};
  if (pressure.fault == Fault::decimal_comma || degree.fault == Fault::decimal_comma)
    return {{}, {}, fmt::format("{} \"{}\": decimal comma. Write a point.", option, excerpt(text))};
  if (pressure.fault == Fault::no_unit || degree.fault == Fault::no_unit)
    return {
        {}, {}, fmt::format("{} \"{}\": each number needs its unit. Write \"{}\".", option, excerpt(text), example)};
  if (pressure.fault != Fault::none || degree.fault != Fault::none) return {{}, {}, no_reading(option, text, example)};
  typed.reading = {pressure.si, degree.si};
  for (const Unit& unit : units()) {
    if (unit.dimension == Dimension::pressure &&
        from_unit(pressure.written, unit.text, Dimension::pressure) == pressure.si)
      typed.units.pressure_unit = std::string(unit.text);
    if (unit.dimension == Dimension::degree && from_unit(degree.written, unit.text, Dimension::degree) == degree.si)
      typed.units.degree_unit = std::string(unit.text);
  }
  typed.problem = limits_of(option, typed.reading);
  return typed;
}

/// One quantity of an option above zero; nothing where it is not given.
std::string read_quantity_of(const Asked& words, const char* option, Dimension dimension, const char* example,
                             std::optional<double>& into) {
  const std::string& text = own_text(words, option);
  if (text.empty()) return {};
  const Reading reading = read_quantity(text, dimension);
  if (reading.fault != Fault::none || reading.si <= 0.0)
    return fmt::format("{} takes a number above 0 with its unit: {} \"{}\"; not \"{}\".", option, option, example,
                       excerpt(text));
  into = reading.si;
  return {};
}

std::string read_medium(const std::string& text, TestMedium& medium) {
  if (text.empty() || text == "air") return {};
  medium = TestMedium::water;
  return text == "water" ? std::string{} : fmt::format("--test is \"air\" or \"water\"; not \"{}\".", excerpt(text));
}

std::string read_more(const Asked& words, GaugeAsked& asked) {
  std::optional<double> altitude_m;
  std::string problem = read_medium(own_text(words, "--test"), asked.medium);
  const bool us = asked.system == System::us;
  for (const auto& [option, dimension, example, into] :
       {std::tuple{"--gauge-error", Dimension::pressure, us ? "1 psi" : "0.1 bar", &asked.gauge_error_Pa},
        {"--thermometer-error", Dimension::rise, us ? "2 F" : "1 K", &asked.thermometer_error_K},
        {"--altitude", Dimension::length, us ? "5,300 ft" : "1600 m", &altitude_m},
        {"--after", Dimension::time, "16 h", &asked.after_s}}) {
    if (problem.empty()) problem = read_quantity_of(words, option, dimension, example, *into);
  }
  if (!problem.empty()) return problem;
  constexpr double highest_m = 6000.0, most_thermometer_K = 20.0;
  asked.altitude_m = altitude_m.value_or(0.0);
  if (asked.altitude_m > highest_m) return "--altitude: at most 6000 m (19,700 ft). See the unit.";
  if (asked.gauge_error_Pa.value_or(0.0) > most_error_share * asked.then.gauge_Pa)
    return "--gauge-error is more than half of the first reading: such a gauge tells nothing.";
  if (asked.thermometer_error_K.value_or(0.0) > most_thermometer_K)
    return "--thermometer-error is more than 36 F (20 K): such a thermometer tells nothing.";
  return {};
}

std::string fault_of_test(const Asked& words, PreparedGauge& prepared) {
  const std::string &then_text = own_text(words, "--then"), &now_text = own_text(words, "--now");
  if (then_text.empty() || now_text.empty())
    return "gauge needs two readings, the first and the one now:\n"
           "  slabwright gauge --then \"60 psi at 70 F\" --now \"53 psi at 20 F\"";
  const TypedReading then = read_typed("--then", then_text, "60 psi at 70 F");
  if (!then.problem.empty()) return then.problem;
  const TypedReading now = read_typed("--now", now_text, "53 psi at 20 F");
  if (!now.problem.empty()) return now.problem;
  if (then.reading.gauge_Pa <= 0.0) return "--then: a test begins above 0. Write what it was pumped up to.";
  prepared.units = then.units;
  prepared.asked.then = then.reading;
  prepared.asked.now = now.reading;
  prepared.asked.system = then.units.pressure_unit == "psi" ? System::us : System::si;
  return read_more(words, prepared.asked);
}

}  // namespace

PreparedGauge prepare_gauge(const Asked& asked) {
  PreparedGauge prepared;
  if (const std::string problem = fault_of_test(asked, prepared); !problem.empty())
    prepared.refusal = asking::refusal_of(problem, bad_words);
  return prepared;
}

}  // namespace slabwright
