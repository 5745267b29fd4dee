#include "slabwright/report_number.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright::report {
namespace {

/// Unit and decimals in one system. With `three_digits` a figure of ten or more has a decimal less, and so on, so that
/// small and large figures both keep three digits that mean something.
struct Form {
  std::string_view unit;
  int decimals;
  bool three_digits = false;
};
struct KindRow {
  Kind kind;
  Dimension dimension;
  Form us, si;
};

constexpr KindRow kinds[] = {
    {Kind::length, Dimension::length, {"ft", 0}, {"m", 1}},
    {Kind::short_length, Dimension::length, {"in", 1}, {"mm", 0}},
    {Kind::area, Dimension::area, {"ft2", 0}, {"m2", 1}},
    {Kind::degree, Dimension::degree, {"F", 0}, {"C", 1}},
    {Kind::dial, Dimension::degree, {"F", 0}, {"C", 1}},
    {Kind::fine_degree, Dimension::degree, {"F", 1}, {"C", 1}},
    {Kind::typed_degree, Dimension::degree, {"F", 1}, {"C", 1}},
    {Kind::rise, Dimension::rise, {"F", 1}, {"K", 1}},
    {Kind::heat, Dimension::power, {"Btu/h", -2}, {"kW", 2, true}},
    {Kind::boiler, Dimension::power, {"kW", 1}, {"kW", 1}},
    {Kind::watts, Dimension::power, {"W", 0}, {"W", 0}},
    {Kind::flow, Dimension::flow, {"gpm", 2}, {"L/min", 2, true}},
    {Kind::head, Dimension::head, {"ft", 1}, {"m", 2}},
    {Kind::pressure, Dimension::pressure, {"psi", 2}, {"kPa", 1}},
    {Kind::gauge, Dimension::pressure, {"psi", 0}, {"bar", 1}},
    {Kind::volume, Dimension::volume, {"gal", 1}, {"L", 1}},
    {Kind::least_volume, Dimension::volume, {"gal", 1}, {"L", 1}},
    {Kind::velocity, Dimension::velocity, {"ft/s", 2}, {"m/s", 2}},
    {Kind::current, Dimension::current, {"A", 1}, {"A", 1}},
    {Kind::voltage, Dimension::voltage, {"V", 0}, {"V", 0}},
    {Kind::share, Dimension::share, {"%", 0}, {"%", 0}},
    {Kind::ratio, Dimension::number, {"", 1}, {"", 1}},
    {Kind::hours, Dimension::time, {"h", 0}, {"h", 0}},
    {Kind::minutes, Dimension::time, {"min", 0}, {"min", 0}},
    {Kind::turns, Dimension::turns, {"turns", 2}, {"turns", 2}},
    {Kind::valve, Dimension::valve_coefficient, {"Cv", 2}, {"Kv", 2}},
    {Kind::conductance, Dimension::conductance, {"Btu/h F", 0}, {"W/K", 1}},
    {Kind::transmittance, Dimension::transmittance, {"Btu/h ft2 F", 3}, {"W/m2K", 2}},
    {Kind::line_conductance, Dimension::line_conductance, {"Btu/h ft F", 3}, {"W/mK", 3}},
    {Kind::conductivity, Dimension::conductivity, {"Btu/h ft F", 2}, {"W/mK", 2}},
    {Kind::insulance, Dimension::insulance, {"R", 1}, {"m2K/W", 2}},
    {Kind::flux, Dimension::flux, {"Btu/h ft2", 1}, {"W/m2", 1}},
    {Kind::film, Dimension::transmittance, {"Btu/h ft2 F", 0}, {"W/m2K", 0}},
    {Kind::energy, Dimension::energy, {"kWh", 0}, {"kWh", 0}},
    {Kind::money, Dimension::money, {"", 2}, {"", 2}},
    {Kind::count, Dimension::number, {"", 0}, {"", 0}},
};

const KindRow& row_of(Kind kind) {
  for (const KindRow& row : kinds) {
    if (row.kind == kind) return row;
  }
  throw std::logic_error("report: a kind of figure without a row");
}

const Form& form_of(const KindRow& row, System system) { return system == System::us ? row.us : row.si; }

int decimals_of(const Form& form, double value) {
  int decimals = form.decimals;
  // Hundreds of Btu/h are noise in a shop's heat, and all there is in a small one's.
  if (decimals < 0 && std::abs(value) < 1000.0) return -1;
  for (double ten = 10.0; form.three_digits && decimals > 0 && std::abs(value) >= ten; ten *= 10.0) --decimals;
  return decimals;
}

/// The digits of a value; a rounded zero has no sign.
std::string digits(double value, int decimals) {
  expects(std::isfinite(value), "report: a figure that is not a finite number");
  const double step = std::pow(10.0, -decimals);
  const double rounded = decimals < 0 ? std::round(value / step) * step : value;
  const double shown = std::abs(rounded) < 0.5 * step ? 0.0 : rounded;
  return fmt::format("{:.{}f}", shown, std::max(decimals, 0));
}

std::string with_commas(const std::string& text) {
  const std::size_t point = std::min(text.find('.'), text.size());
  std::string out = text;
  for (std::size_t at = point; at > 3 && text[at - 4] != '-'; at -= 3) out.insert(at - 3, 1, ',');
  return out;
}

/// What is bought "or more" may not come out smaller than it must be; a billionth of a digit is no reason for the next.
double rounded_up(double value, int decimals) {
  const double step = std::pow(10.0, -decimals);
  return std::ceil(value / step - 1e-9) * step;
}

/// Where zeros after the point say nothing: "12 in", "9 kW", "36 C", but "0.60 gpm".
bool drops_zeros(Kind kind) {
  switch (kind) {
    case Kind::length:
    case Kind::short_length:
    case Kind::degree:
    case Kind::dial:
    case Kind::typed_degree:
    case Kind::rise:
    case Kind::boiler:
    case Kind::current: return true;
    default: return false;
  }
}

std::string without_end_zeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string digits_of(Kind kind, double si, System system) {
  const KindRow& row = row_of(kind);
  const Form& form = form_of(row, system);
  const double value = in_unit(si, form.unit, row.dimension);
  const int decimals = decimals_of(form, value);
  return digits(kind == Kind::least_volume ? rounded_up(value, decimals) : value, decimals);
}

std::string with_unit(Kind kind, const std::string& text, System system) {
  const std::string_view name = unit(kind, system);
  if (name.empty()) return text;
  if (name == "R") return fmt::format("R-{}", text);
  if (kind == Kind::valve) return fmt::format("{} {}", name, text);
  return fmt::format("{} {}", text, name);
}

}  // namespace

std::string spoken(Kind kind, double si, System system) {
  const std::string text = digits_of(kind, si, system);
  const std::string shown = drops_zeros(kind) ? without_end_zeros(text) : text;
  return system == System::us ? with_commas(shown) : shown;
}

std::string figure(Kind kind, double si, System system) { return with_unit(kind, spoken(kind, si, system), system); }

std::string bare(Kind kind, double si, System system) {
  const std::string text = digits_of(kind, si, system);
  return system == System::us ? with_commas(text) : text;
}

std::string plain(Kind kind, double si, System system) { return digits_of(kind, si, system); }

std::string_view unit(Kind kind, System system) { return form_of(row_of(kind), system).unit; }

std::string against(double head_m, double pressure_Pa, System system) {
  const std::string head = figure(Kind::head, head_m, system);
  if (system == System::us) return head + " of head";
  return fmt::format("{} ({} of head)", figure(Kind::pressure, pressure_Pa, system), head);
}

std::string from_to(Kind kind, double least_si, double most_si, System system) {
  const std::string least = spoken(kind, least_si, system), most = figure(kind, most_si, system);
  return figure(kind, least_si, system) == most ? most : fmt::format("{} to {}", least, most);
}

std::string ranged(Kind kind, const Three& three, System system) {
  const std::string usual = spoken(kind, three.usual, system);
  const std::string tight = spoken(kind, three.tight, system), poor = spoken(kind, three.poor, system);
  const bool alike = tight == usual && poor == usual;
  return figure(kind, three.usual, system) +
         (alike ? " ~ (tight or poor)" : fmt::format(" ~ ({} if tight, {} if poor)", tight, poor));
}

std::string counted(std::size_t number) {
  constexpr std::array<std::string_view, 11> words{"no",  "one",   "two",   "three", "four", "five",
                                                   "six", "seven", "eight", "nine",  "ten"};
  return number < words.size() ? std::string(words[number]) : fmt::format("{}", number);
}

std::string several(std::size_t number, std::string_view one) {
  return fmt::format("{} {}{}", number, one, number == 1 ? "" : "s");
}

}  // namespace slabwright::report
