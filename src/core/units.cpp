// Printing and converting by the one table.
#include "slabwright/units.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "slabwright/contract.hpp"
#include "slabwright/units_table.hpp"

namespace slabwright {
namespace {

const Unit& row_of(std::string_view text, Dimension dimension) {
  const auto found = std::find_if(std::begin(table::rows), std::end(table::rows),
                                  [&](const Unit& u) { return u.dimension == dimension && u.text == text; });
  expects(found != std::end(table::rows), "a unit that the table does not have in this dimension");
  return *found;
}

/// Text of a value in a unit: "12 in", "R-10", "Kv 1.0", and the bare number where the unit has no text.
std::string with_unit(const std::string& value, const Unit& unit) {
  if (unit.text.empty()) return value;
  if (unit.before) return fmt::format("{}{}{}", unit.text, unit.text == "R" ? "-" : " ", value);
  return fmt::format("{} {}", value, unit.text);
}

struct ShownRow {
  Dimension dimension;
  std::string_view name;
  Shown us, si;
};
constexpr ShownRow shown_rows[] = {
    {Dimension::length, "length", {"ft", 1}, {"m", 2}},
    {Dimension::area, "area", {"ft2", 0}, {"m2", 1}},
    {Dimension::volume, "volume", {"gal", 1}, {"L", 1}},
    {Dimension::degree, "temperature", {"F", 0}, {"C", 1}},
    {Dimension::rise, "temperature difference", {"F", 0}, {"K", 1}},
    {Dimension::pressure, "pressure", {"psi", 1}, {"kPa", 1}},
    {Dimension::head, "head", {"ft", 1}, {"m", 2}},
    {Dimension::flow, "flow", {"gpm", 2}, {"L/min", 2}},
    {Dimension::mass_flow, "mass flow", {"lb/h", 0}, {"kg/s", 4}},
    {Dimension::velocity, "velocity", {"ft/s", 2}, {"m/s", 2}},
    {Dimension::power, "power", {"Btu/h", 0}, {"kW", 2}},
    {Dimension::energy, "energy", {"kWh", 0}, {"kWh", 0}},
    {Dimension::flux, "heat flux", {"Btu/h ft2", 1}, {"W/m2", 1}},
    {Dimension::insulance, "insulation (R)", {"R", 1}, {"m2K/W", 2}},
    {Dimension::conductivity, "conductivity", {"Btu/h ft F", 2}, {"W/mK", 3}},
    {Dimension::transmittance, "U-value", {"Btu/h ft2 F", 2}, {"W/m2K", 2}},
    {Dimension::conductance, "conductance", {"Btu/h F", 0}, {"W/K", 1}},
    {Dimension::line_conductance, "conductance per length", {"Btu/h ft F", 2}, {"W/mK", 2}},
    {Dimension::density, "density", {"lb/ft3", 1}, {"kg/m3", 0}},
    {Dimension::specific_heat, "specific heat", {"Btu/lb F", 3}, {"J/kgK", 0}},
    {Dimension::viscosity, "viscosity", {"mPa s", 2}, {"mPa s", 2}},
    {Dimension::share, "share", {"%", 0}, {"%", 0}},
    {Dimension::voltage, "voltage", {"V", 0}, {"V", 0}},
    {Dimension::current, "current", {"A", 1}, {"A", 1}},
    {Dimension::valve_coefficient, "valve coefficient", {"Cv", 2}, {"Kv", 2}},
    {Dimension::air_change, "air changes", {"per hour", 2}, {"per hour", 2}},
    {Dimension::time, "time", {"h", 1}, {"h", 1}},
    {Dimension::turns, "turns", {"turns", 2}, {"turns", 2}},
    {Dimension::linear_resistance, "resistance of a length", {"mK/W", 3}, {"mK/W", 3}},
    {Dimension::heat_capacity, "heat capacity by volume", {"MJ/m3K", 2}, {"MJ/m3K", 2}},
    {Dimension::mass, "mass", {"lb", 0}, {"kg", 0}},
    {Dimension::angle, "angle", {"deg", 1}, {"deg", 1}},
    {Dimension::carbon, "carbon of an energy", {"lb/MWh", 0}, {"kg/kWh", 3}},
    {Dimension::gradient, "temperature by height", {"F/ft", 2}, {"K/m", 2}},
    {Dimension::energy_per_rise, "energy for a degree", {"kWh/F", 0}, {"kWh/K", 0}},
    {Dimension::rise_time, "degrees over time", {"F h", 0}, {"K h", 0}},
    {Dimension::money, "money", {"", 2}, {"", 2}},
    {Dimension::money_per_rise, "money for a degree", {"per K", 2}, {"per K", 2}},
    {Dimension::number, "number", {"", 2}, {"", 2}},
};

/// The unit that a person of the system would write: short lengths in inches or millimetres.
std::string_view own_unit(double si, Dimension dimension, System system) {
  if (dimension == Dimension::length && std::abs(si) < 1.0 && si != 0.0) return system == System::us ? "in" : "mm";
  return shown(dimension, system).unit;
}

/// Units tried by the writer, first the reader's own.
std::vector<const Unit*> by_preference(double si, Dimension dimension, System system) {
  std::vector<const Unit*> found;
  const std::string_view own = own_unit(si, dimension, system);
  for (const Unit& unit : table::rows) {
    if (unit.dimension == dimension) found.push_back(&unit);
  }
  std::stable_sort(found.begin(), found.end(),
                   [&](const Unit* a, const Unit* b) { return (a->text == own) > (b->text == own); });
  return found;
}

/// Plain decimals, without an exponent and without zeros at the end.
std::string plain_number(double value, int digits) {
  std::string text = fmt::format("{:.{}g}", value, digits);
  if (text.find('e') == std::string::npos) return text;
  text = fmt::format("{:.15f}", std::strtod(text.c_str(), nullptr));
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

bool reads_back(const std::string& text, double si, Dimension dimension) {
  const Reading back = read_quantity(text, dimension);
  return back.fault == Fault::none && back.si == si;
}

/// With as few digits as read back to the last bit; empty where no readable number does.
std::string written_in(const Unit& unit, double si, Dimension dimension) {
  constexpr int readable_digits = 9;
  const double value = si / unit.scale - unit.shift;
  for (int digits = 1; digits <= readable_digits; ++digits) {
    const std::string text = with_unit(plain_number(value, digits), unit);
    if (reads_back(text, si, dimension)) return text;
  }
  return {};
}

/// "12 ft 4 in", to a sixteenth; empty where that is another length.
std::string in_feet_and_inches(double si) {
  const double sixteenths = std::round(in_unit(std::abs(si), "in", Dimension::length) * 16.0);
  const double feet = std::floor(sixteenths / 192.0), inches = (sixteenths - 192.0 * feet) / 16.0;
  if (si < 0.0 || feet < 1.0 || inches == 0.0) return {};
  const std::string text = fmt::format("{} ft {} in", plain_number(feet, 9), plain_number(inches, 6));
  return reads_back(text, si, Dimension::length) ? text : std::string{};
}

}  // namespace

std::span<const Unit> units() { return table::rows; }

std::string_view name_of(Dimension dimension) {
  for (const ShownRow& row : shown_rows) {
    if (row.dimension == dimension) return row.name;
  }
  return {};
}

std::string units_that_fit(Dimension dimension) {
  std::string all;
  for (const Unit& unit : table::rows) {
    if (unit.dimension != dimension || unit.text.empty()) continue;
    if (!all.empty()) all += ", ";
    all += unit.text;
  }
  return all;
}

double in_unit(double si, std::string_view unit, Dimension dimension) {
  const Unit& row = row_of(unit, dimension);
  return si / row.scale - row.shift;
}

double from_unit(double value, std::string_view unit, Dimension dimension) {
  const Unit& row = row_of(unit, dimension);
  return (value + row.shift) * row.scale;
}

Shown shown(Dimension dimension, System system) {
  for (const ShownRow& row : shown_rows) {
    if (row.dimension == dimension) return system == System::us ? row.us : row.si;
  }
  return {"", 2};
}

std::string show_as(double si, Dimension dimension, std::string_view unit, int decimals) {
  double value = in_unit(si, unit, dimension);
  // A rounded zero has no sign.
  if (std::abs(value) < 0.5 * std::pow(10.0, -decimals)) value = 0.0;
  return with_unit(fmt::format("{:.{}f}", value, decimals), row_of(unit, dimension));
}

std::string show(double si, Dimension dimension, System system) {
  const Shown how = shown(dimension, system);
  return show_as(si, dimension, how.unit, how.decimals);
}

std::string write_quantity(double si, Dimension dimension, System system) {
  const std::vector<const Unit*> all = by_preference(si, dimension, system);
  std::string text = written_in(*all.front(), si, dimension);
  if (text.empty() && dimension == Dimension::length && system == System::us) text = in_feet_and_inches(si);
  for (std::size_t i = 1; text.empty() && i < all.size(); ++i) text = written_in(*all[i], si, dimension);
  if (!text.empty()) return text;
  for (const Unit& unit : table::rows) {
    if (unit.dimension == dimension && unit.scale == 1.0 && unit.shift == 0.0)
      return with_unit(fmt::format("{}", si), unit);
  }
  return fmt::format("{}", si);
}

}  // namespace slabwright
