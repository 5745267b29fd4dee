// manuals/materials.md is what the tables hold. To write it anew: SLABWRIGHT_WRITE=1 test_design "the page of*"
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

#include "slabwright/handbook_materials.hpp"
#include "slabwright/tube.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double inch_m = 0.0254, R_m2K_per_W = 0.176110184;

std::string other_names(const Material& material) {
  std::string names;
  for (const std::string_view name : material.also)
    if (!name.empty()) names += fmt::format("{}`{}`", names.empty() ? "" : ", ", name);
  return names;
}

std::string insulation_rows() {
  std::string rows =
      "| name | other names | R per inch | W/mK | kg/m3 | J/kgK | source |\n|---|---|--:|--:|--:|--:|---|\n";
  for (const Material& m : insulations())
    rows += fmt::format("| `{}` | {} | {:.1f} | {:.3f} | {:.0f} | {:.0f} | {} |\n", m.name, other_names(m),
                        inch_m / m.conductivity_W_per_mK / R_m2K_per_W, m.conductivity_W_per_mK, m.density_kg_per_m3,
                        m.heat_J_per_kgK, m.source);
  return rows;
}

std::string other_rows() {
  std::string rows = "| name | other names | W/mK | kg/m3 | J/kgK | source |\n|---|---|--:|--:|--:|---|\n";
  for (const Material& m : concretes())
    rows += fmt::format("| `{}` | {} | {:.2f} | {:.0f} | {:.0f} | {} |\n", m.name, other_names(m),
                        m.conductivity_W_per_mK, m.density_kg_per_m3, m.heat_J_per_kgK, m.source);
  rows += "\n## Soils\n\n| name | W/mK | MJ/m3K | depth of a yearly wave, m | source |\n|---|--:|--:|--:|---|\n";
  for (const Soil& soil : soils())
    rows += fmt::format("| `{}` | {:.1f} | {:.1f} | {:.1f} | {} |\n", soil.name, soil.conductivity_W_per_mK,
                        soil.volumetric_J_per_m3K / 1e6, soil.penetration_m, soil.source);
  rows += "\n## Coverings\n\n| name | m2K/W | source |\n|---|--:|---|\n";
  for (const Covering& covering : coverings())
    rows += fmt::format("| `{}` | {:.2f} | {} |\n", covering.name, covering.layer_m2K_per_W, covering.source);
  rows += "\n## Walls of tube\n\n| name | W/mK | source |\n|---|--:|---|\n";
  for (const Material& m : tube_materials())
    rows += fmt::format("| {} | {:.2f} | {} |\n", m.name, m.conductivity_W_per_mK, m.source);
  return rows;
}

std::string tube_rows() {
  constexpr double mm = 1e3;
  std::string rows =
      "| name | outside mm | wall mm | inside mm, mean | longest loop m | least radius mm | holds L/m |\n"
      "|---|--:|--:|--:|--:|--:|--:|\n";
  for (const std::string_view name : tube_names()) {
    const TubeSize& tube = *find_tube(name);
    rows += fmt::format("| `{}` | {:.2f} | {:.2f} | {:.2f} | {:.1f} | {:.0f} | {:.4f} |\n", name,
                        mm * tube.outside_diameter_m, mm * tube.wall_m, mm * tube.inside_diameter_m,
                        tube.longest_loop_m, mm * tube.least_bend_radius_m, mm * water_content_m3_per_m(tube));
  }
  return rows;
}

constexpr const char* head =
    "# Materials\n\n"
    "The names that a design file may use, and the figures behind them. Small or large letters, blanks, hyphens and\n"
    "points in a name do not count. A test writes this page from the tables (`src/handbook/materials.cpp`,\n"
    "`src/tube/sizes.cpp`).\n\n"
    "## Insulation\n\n"
    "With a thickness before it: `\"2 in XPS\"`, `\"50 mm EPS\"`.\n\n";

constexpr const char* sizes =
    "\n## Tube sizes\n\n"
    "Inch sizes: a table of dimensions after ASTM F876 and F877; the wall is the mean, least wall and half its\n"
    "tolerance; the longest loop is CSA B214-12's Table 1. Metric sizes: ISO 15875-2 and ISO 22391-2, nominal; the\n"
    "longest loop is practice. It counts leaders in, and a file may say another (`tube.longest_loop`). Roughness "
    "0.007\n"
    "mm, a trade page's. Least radius: to the tube's middle line, of a trade table.\n\n";

std::string page_of_materials() {
  return head + insulation_rows() + "\n## Concrete\n\n" + other_rows() + sizes + tube_rows();
}

}  // namespace

TEST_CASE("the page of materials is what the tables hold") {
  const std::string path = SLABWRIGHT_ROOT "/manuals/materials.md", page = page_of_materials();
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(path) << page;
  std::ifstream in(path);
  std::ostringstream text;
  text << in.rdbuf();
  CHECK(text.str() == page);
}
