// The sizes of tube. Inch sizes: PEX CTS. Metric sizes: PE-X and PE-RT.
#include <cmath>
#include <string>

#include "slabwright/contract.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double millimetre = 1e-3;

// 0.007 mm for PE-X and multilayer tube (a trade page). Drawn tube of 0.0015 mm would lose about 2 % less.
constexpr double plastic_roughness_m = 7e-6;
// PE-X 0.38 W/(m K) in US tables (0.38 to 0.41), 0.35 in EN 1264-2 Table A.13; both from memory.
constexpr double inch_conductivity = 0.38;
constexpr double metric_conductivity = 0.35;

// Outside diameter and least wall by a table of dimensions after ASTM F876/F877 (SDR 9, no wall under 0.070 in). The
// mean wall is the least wall and half the plus-tolerance, 0.010 in (0.013 in for 1 in), which the water contents
// printed beside that table confirm. Longest loop: CSA B214-12 Table 1, its feet (a reprint).
constexpr TubeSize inch_size(std::string_view name, double outside_in, double mean_wall_in, double longest_loop_ft) {
  return {name,
          outside_in * inch_m,
          mean_wall_in * inch_m,
          (outside_in - 2.0 * mean_wall_in) * inch_m,
          longest_loop_ft * foot_m,
          least_bend_radius_per_diameter * outside_in * inch_m,
          plastic_roughness_m,
          inch_conductivity,
          false};
}

// Nominal sizes of ISO 15875-2 and ISO 22391-2. Longest loop: practice.
constexpr TubeSize metric_size(std::string_view name, double outside_mm, double wall_mm, double longest_loop_m) {
  return {name,
          outside_mm * millimetre,
          wall_mm * millimetre,
          (outside_mm - 2.0 * wall_mm) * millimetre,
          longest_loop_m,
          least_bend_radius_per_diameter * outside_mm * millimetre,
          plastic_roughness_m,
          metric_conductivity,
          true};
}

constexpr TubeSize sizes[] = {
    inch_size("3/8 in", 0.500, 0.0750, 250),  inch_size("1/2 in", 0.625, 0.0750, 300),
    inch_size("5/8 in", 0.750, 0.0880, 400),  inch_size("3/4 in", 0.875, 0.1020, 500),
    inch_size("1 in", 1.125, 0.1315, 750),    metric_size("12 x 2 mm", 12, 2.0, 60),
    metric_size("14 x 2 mm", 14, 2.0, 80),    metric_size("16 x 2 mm", 16, 2.0, 100),
    metric_size("16 x 2.2 mm", 16, 2.2, 100), metric_size("17 x 2 mm", 17, 2.0, 110),
    metric_size("18 x 2 mm", 18, 2.0, 120),   metric_size("20 x 2 mm", 20, 2.0, 150),
    metric_size("20 x 2.8 mm", 20, 2.8, 120), metric_size("25 x 2.3 mm", 25, 2.3, 150),
    metric_size("25 x 3.5 mm", 25, 3.5, 150),
};

struct Spelling {
  std::string_view written;
  std::string_view meant;
};

// In this order: "inches" before "in".
constexpr Spelling spellings[] = {
    {" ", ""},         {"\t", ""},        {"\u00a0", ""},  {"-", ""},        {"\u00bd", "1/2"}, {"\u00be", "3/4"},
    {"\u215c", "3/8"}, {"\u215d", "5/8"}, {"\u00d7", "x"}, {"\u2033", "\""}, {"\u201d", "\""},  {"''", "\""},
    {"inches", "\""},  {"inch", "\""},    {"in.", "\""},   {"in", "\""},     {"mm", ""},
};

void replace_all(std::string& text, const Spelling& spelling) {
  for (std::size_t at = 0; (at = text.find(spelling.written, at)) != std::string::npos; at += spelling.meant.size())
    text.replace(at, spelling.written.size(), spelling.meant);
}

// "2.20" -> "2.2", "16.0" -> "16", "20" -> "20".
std::string without_idle_zeros(std::string number) {
  if (number.find('.') == std::string::npos) return number;
  number.erase(number.find_last_not_of('0') + 1);
  if (number.back() == '.') number.pop_back();
  return number;
}

// One spelling for all that mean the same: 1/2" and 16x2.2.
std::string plain(std::string_view text) {
  std::string word(text);
  for (char& c : word) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  for (const Spelling& spelling : spellings) replace_all(word, spelling);
  const std::size_t times = word.find('x');
  if (times == std::string::npos) return word;
  return without_idle_zeros(word.substr(0, times)) + "x" + without_idle_zeros(word.substr(times + 1));
}

}  // namespace

std::vector<std::string_view> tube_names() {
  std::vector<std::string_view> names;
  for (const TubeSize& size : sizes) names.push_back(size.name);
  return names;
}

const TubeSize* find_tube(std::string_view text) {
  const std::string wanted = plain(text);
  for (const TubeSize& size : sizes) {
    if (plain(size.name) == wanted) return &size;
  }
  return nullptr;
}

double water_content_m3_per_m(const TubeSize& tube) {
  return 0.25 * pi * tube.inside_diameter_m * tube.inside_diameter_m;
}

double velocity_m_per_s(double inside_diameter_m, double flow_m3_per_s) {
  expects(inside_diameter_m > 0.0, "velocity: a bore of no size");
  return flow_m3_per_s / (0.25 * pi * inside_diameter_m * inside_diameter_m);
}

double wall_resistance_mK_per_W(const TubeSize& tube) {
  expects(tube.inside_diameter_m > 0.0 && tube.outside_diameter_m > tube.inside_diameter_m, "tube: no wall");
  expects(tube.conductivity_W_per_mK > 0.0, "tube: a wall that conducts nothing");
  return std::log(tube.outside_diameter_m / tube.inside_diameter_m) / (2.0 * pi * tube.conductivity_W_per_mK);
}

Bore bore_of(const TubeSize& tube, double length_m) { return {length_m, tube.inside_diameter_m, tube.roughness_m}; }

}  // namespace slabwright
