// ASHRAE Fundamentals 2001: properties and freezing points of inhibited glycol solutions (as transcribed in the
// CoolProp repository, commit ea27c639), and that repository's own fit to the same tables.
#include "published/fluid/worst.hpp"
#include "slabwright/fluid.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source properties{"ASHRAE Fundamentals 2001", "glycol properties, as transcribed in CoolProp"};
const Source freezing{"ASHRAE Fundamentals 2001", "glycol freezing points, as transcribed in CoolProp"};
const Source fit{"CoolProp, commit ea27c639", "fit to ASHRAE 2001 between its rows", Oracle::derived};

struct Glycol {
  std::string name;
  FluidKind kind;
};
const Glycol glycols[] = {{"propylene", FluidKind::propylene_glycol}, {"ethylene", FluidKind::ethylene_glycol}};

struct Quantity {
  const char* name;
  const char* column;
  double FluidProperties::*member;
  double unit;
  double last_digit;    // of the printed table
  double fit_to_table;  // fit's own distance from the table, and an eighth of the table's second differences, relative
};
constexpr Quantity quantities[] = {
    {"density, kg/m3", "rho_kg_m3", &FluidProperties::density_kg_per_m3, 1.0, 0.01, 0.7e-5 + 1.9e-4 + 1.8e-5},
    {"specific heat, J/(kg K)", "cp_J_kgK", &FluidProperties::specific_heat_J_per_kgK, 1.0, 1.0,
     1.6e-4 + 8.7e-4 + 4e-5},
    {"viscosity, mPa s", "mu_mPas", &FluidProperties::viscosity_Pa_s, 1e-3, 0.01, 2.5e-2 + 2.0e-2 + 3.3e-3},
    {"conductivity, W/(m K)", "k_W_mK", &FluidProperties::conductivity_W_per_mK, 1.0, 0.001, 1.5e-3 + 1.7e-3 + 5e-4},
};

std::vector<Compared> compared(const Glycol& glycol, const Quantity& quantity, const std::string& file) {
  std::vector<Compared> all;
  for (auto& row : read_table("glycol_ashrae_2001/" + file + ".csv")) {
    if (row.count("glycol") && row["glycol"] != glycol.name) continue;
    const Mixture mixture{glycol.kind, number(row, "vol_pct") / 100.0};
    const double ours = properties_of(mixture, number(row, "T_C")).*quantity.member / quantity.unit;
    all.push_back({fmt::format("{} glycol {} %, {} degC, {}", glycol.name, row["vol_pct"], row["T_C"], quantity.name),
                   row[quantity.column], ours});
  }
  return all;
}

}  // namespace

TEST_CASE("ASHRAE's glycol properties at every printed place") {
  for (const Glycol& glycol : glycols) {
    for (const Quantity& quantity : quantities)
      CHECK_WORST_PUBLISHED(properties, compared(glycol, quantity, glycol.name),
                            {0.500001 * quantity.last_digit, 0.0, "half a unit of its last digit"});
  }
}

TEST_CASE("glycol between ASHRAE's rows and columns") {
  for (const Glycol& glycol : glycols) {
    for (const Quantity& quantity : quantities)
      CHECK_WORST_PUBLISHED(fit, compared(glycol, quantity, "fit_between_rows"),
                            {0.0, quantity.fit_to_table, "fit to table, and straight lines to curves"});
  }
}

TEST_CASE("ASHRAE's freezing points, and volume against mass") {
  for (const Glycol& glycol : glycols) {
    std::vector<Compared> points, masses, volumes;
    for (auto& row : read_table("glycol_ashrae_2001/" + glycol.name + "_freezing.csv")) {
      if (number(row, "vol_pct") == 0.0) continue;  // water
      const std::string name = fmt::format("{} glycol, {} % by volume", glycol.name, row["vol_pct"]);
      const Mixture mixture{glycol.kind, number(row, "vol_pct") / 100.0};
      points.push_back({name + ", freezing, degC", row["freeze_C"], freezing_point_degC(mixture)});
      masses.push_back({name + ", % by mass", row["mass_pct"], 100.0 * glycol_mass_share(mixture)});
      const double mass_share = number(row, "mass_pct") / 100.0;
      volumes.push_back({fmt::format("{} glycol, {} % by mass, % by volume", glycol.name, row["mass_pct"]),
                         row["vol_pct"], 100.0 * mixture_by_mass(glycol.kind, mass_share).glycol_volume_share});
    }
    CHECK_WORST_PUBLISHED(freezing, points, {0.0500001, 0.0, "half a unit of its last digit"});
    CHECK_WORST_PUBLISHED(freezing, masses, {0.500001, 0.0, "half a unit of its last digit"});
    CHECK_WORST_PUBLISHED(freezing, volumes, {0.0500001, 0.0, "half a unit of its last digit"});
  }
}

TEST_CASE("a glycol expands by more than water") {
  const Source ratios{"ASHRAE Fundamentals 2001", "expansion over water's, 40 to 120 degF, from the densities",
                      Oracle::derived};
  const double cold = (40.0 - 32.0) / 1.8;
  const double hot = (120.0 - 32.0) / 1.8;
  const auto times_water = [&](const Mixture& mixture) {
    return (volume_ratio(mixture, cold, hot) - 1.0) / (volume_ratio({}, cold, hot) - 1.0);
  };
  CHECK_PUBLISHED(ratios, "ethylene glycol 30 %", "1.5", times_water({FluidKind::ethylene_glycol, 0.3}));
  CHECK_PUBLISHED(ratios, "propylene glycol 30 %", "1.8", times_water({FluidKind::propylene_glycol, 0.3}));
  CHECK_PUBLISHED(ratios, "propylene glycol 50 %", "2.2", times_water({FluidKind::propylene_glycol, 0.5}));
}
