// One table of units: what may be written in a design file, what a member's name may end in, what is printed.
#pragma once
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace slabwright {

/// What a number measures. The same text may stand in several dimensions ("ft" is a length and a head, "F" a place on
/// the temperature scale and a difference); the dimension asked for decides.
enum class Dimension {
  number,
  length,
  area,
  volume,
  degree,
  rise,
  pressure,
  head,
  flow,
  mass_flow,
  velocity,
  power,
  energy,
  flux,
  insulance,
  conductivity,
  transmittance,
  conductance,
  line_conductance,
  density,
  specific_heat,
  viscosity,
  share,
  voltage,
  current,
  valve_coefficient,
  air_change,
  time,
  turns,
  linear_resistance,
  heat_capacity,
  mass,
  angle,
  carbon,
  gradient,
  energy_per_rise,
  rise_time,
  money,
  money_per_rise
};

/// One row of the table: si = (value + shift) * scale. Inside everything is SI, but for temperatures (Celsius) and
/// valve coefficients (Kv: m3/h of water at 1 bar), which the trade states that way and no formula here mixes.
struct Unit {
  std::string_view text;    ///< as written: "in"
  std::string_view suffix;  ///< what a member that holds the SI value ends in: "_m"; empty on rows that are not SI
  Dimension dimension;
  double scale = 1.0;
  double shift = 0.0;
  bool before = false;  ///< stands before the number: "R-10", "Kv 1.0"
};

/// The units table, in the order in which problems list them.
std::span<const Unit> units();

/// How the answer is printed. It never changes a result.
enum class System { us, si };

/// Why a text is not the quantity asked for.
enum class Fault { none, not_a_number, no_unit, unknown_unit, wrong_kind, decimal_comma, not_finite };

/// Without blanks at both ends: spaces, tabs, ends of lines, and the zeros that broken files hold.
std::string_view trimmed(std::string_view text);

/// A text read as a quantity.
struct Reading {
  double si = 0.0;
  Fault fault = Fault::none;
  double written = 0.0;  ///< the number as it stands in the text
  std::string unit;      ///< the unit as written, folded to plain characters
};

/// Reads "12 in", `12"`, "5'-6", "1,080 sq ft", "-17 °F", "R10", "3 1/2 in". Thousands commas are read, a decimal
/// comma is refused. `dimension` decides between units of the same text.
Reading read_quantity(std::string_view text, Dimension dimension);

/// A plain decimal number by a checked grammar (no hexadecimal, no inf, no nan, no locale); empty where it is not one.
std::optional<double> read_number(std::string_view text);

/// Curly minus, no-break space, degree sign, raised 2 and 3, curly quotes and prime marks as plain characters.
std::string plain_characters(std::string_view text);

/// "length", "place on the temperature scale": what a dimension is called on the reference page.
std::string_view name_of(Dimension dimension);

/// The units that fit, for a sentence: "in, ft, mm, m".
std::string units_that_fit(Dimension dimension);

/// The value in the named unit of the dimension. Throws std::logic_error for a unit the table does not have.
double in_unit(double si, std::string_view unit, Dimension dimension);
double from_unit(double value, std::string_view unit, Dimension dimension);

/// What is printed for a dimension where nothing better is said: unit and number of decimals by system.
struct Shown {
  std::string_view unit;
  int decimals;
};
Shown shown(Dimension dimension, System system);

/// "276.0 ft", "98 F", "R-10", "Kv 1.10".
std::string show(double si, Dimension dimension, System system);

/// The same in a named unit with a number of decimals; thousands are separated by commas in the US system only by the
/// report, never here.
std::string show_as(double si, Dimension dimension, std::string_view unit, int decimals);

/// Shortest text in the system's own unit that reads back to the same double, else SI with 17 digits.
std::string write_quantity(double si, Dimension dimension, System system);

}  // namespace slabwright
