// The fluids' table of manuals/by-hand.md is what the program takes. To write it anew: SLABWRIGHT_WRITE=1 test_fluid
// "the fluids of*"
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "slabwright/fluid.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const std::vector<double> columns_degC{0.0, 20.0, 30.0, 40.0, 50.0, 60.0};

struct Row {
  const char* name;
  Mixture mixture;
  double cold_degC;  ///< where water is densest, where a mixture begins to freeze
};

std::vector<Row> fluids() {
  std::vector<Row> rows{{"water", {}, 4.0}};
  const auto add = [&](const char* name, double share) {
    const Mixture mixture{FluidKind::propylene_glycol, share};
    rows.push_back({name, mixture, freezing_point_degC(mixture)});
  };
  add("propylene glycol 30 %", 0.30);
  add("propylene glycol 40 %", 0.40);
  return rows;
}

/// A line of the table: one figure at every temperature.
template <class Figure>
std::string line_of(const std::string& name, const Row& row, int decimals, const Figure& figure) {
  const auto at = [&](double degC) {
    return fmt::format("{:.{}f}", figure(properties_of(row.mixture, degC)), decimals);
  };
  std::string line = fmt::format("| {} | {} at {:.1f} |", name, at(row.cold_degC), row.cold_degC);
  for (const double degC : columns_degC) line += fmt::format(" {} |", at(degC));
  return line + "\n";
}

std::string lines_of(const Row& row) {
  const auto line = [&](const char* unit, int decimals, const auto& figure) {
    return line_of(fmt::format("{} | {}", row.name, unit), row, decimals, figure);
  };
  return line("kg/m3", 1, [](const FluidProperties& p) { return p.density_kg_per_m3; }) +
         line("J/kgK", 0, [](const FluidProperties& p) { return p.specific_heat_J_per_kgK; }) +
         line("mPa s", 3, [](const FluidProperties& p) { return 1e3 * p.viscosity_Pa_s; }) +
         line("W/mK", 3, [](const FluidProperties& p) { return p.conductivity_W_per_mK; });
}

std::string table() {
  std::string text = "\n| fluid | unit | coldest, C |";
  for (const double degC : columns_degC) text += fmt::format(" {:.0f} C |", degC);
  text += "\n|---|---|--:|";
  for (std::size_t i = 0; i < columns_degC.size(); ++i) text += "--:|";
  text += "\n";
  for (const Row& row : fluids()) text += lines_of(row);
  return text + "\n";
}

}  // namespace

TEST_CASE("the fluids of the page by hand are the program's") {
  const std::string path = SLABWRIGHT_ROOT "/manuals/by-hand.md", begin = "<!-- fluids -->\n", end = "<!-- end -->";
  std::ifstream in(path);
  std::ostringstream read;
  read << in.rdbuf();
  const std::string page = read.str();
  const std::size_t from = page.find(begin);
  REQUIRE(from != std::string::npos);
  const std::size_t first = from + begin.size(), last = page.find(end, first);
  REQUIRE(last != std::string::npos);
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(path) << page.substr(0, first) << table() << page.substr(last);
  CHECK(page.substr(first, last - first) == table());
}
