// Melinder, "Properties of secondary working fluids for indirect systems", IIF/IIR 2010: the polynomials as another
// program evaluates them. The coefficients were read in the CoolProp repository (commit ea27c639), not in the book.
#include "published/fluid/worst.hpp"
#include "slabwright/fluid.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source melinder{"Melinder 2010", "coefficients by the CoolProp repository, evaluated in Python", Oracle::derived};

struct Glycol {
  const char* name;
  const char* word;  // in the table
  FluidKind kind;
};
constexpr Glycol glycols[] = {{"propylene glycol", "MPG", FluidKind::propylene_glycol},
                              {"ethylene glycol", "MEG", FluidKind::ethylene_glycol}};

struct Quantity {
  const char* name;
  const char* column;
  double FluidProperties::*member;
  double unit;
};
constexpr Quantity quantities[] = {
    {"density, kg/m3", "rho_kg_m3", &FluidProperties::density_kg_per_m3, 1.0},
    {"specific heat, J/(kg K)", "cp_J_kgK", &FluidProperties::specific_heat_J_per_kgK, 1.0},
    {"viscosity, mPa s", "mu_mPas", &FluidProperties::viscosity_Pa_s, 1e-3},
    {"conductivity, W/(m K)", "k_W_mK", &FluidProperties::conductivity_W_per_mK, 1.0},
};

}  // namespace

TEST_CASE("Melinder's polynomials") {
  for (const Glycol& glycol : glycols) {
    std::vector<Compared> by_quantity[std::size(quantities)], freezing;
    for (auto& row : read_table("glycol_melinder_2010/values.csv")) {
      if (row["fluid"] != glycol.word) continue;
      const Mixture mixture = mixture_by_mass(glycol.kind, number(row, "x"));
      const FluidProperties ours = properties_of(mixture, number(row, "T_C"), Family::pure);
      const std::string place = fmt::format("{}, mass share {}, {} degC", glycol.name, row["x"], row["T_C"]);
      for (std::size_t i = 0; i < std::size(quantities); ++i)
        by_quantity[i].push_back({fmt::format("{}, {}", place, quantities[i].name), row[quantities[i].column],
                                  ours.*quantities[i].member / quantities[i].unit});
      freezing.push_back({fmt::format("{}, mass share {}, freezing point, degC", glycol.name, row["x"]),
                          row["Tfreeze_C"], freezing_point_degC(mixture, Family::pure)});
    }
    for (const std::vector<Compared>& table : by_quantity)
      CHECK_WORST_PUBLISHED(melinder, table, {0.0, 5e-8, "the eight digits it writes"});
    CHECK_WORST_PUBLISHED(melinder, freezing, {0.0, 5e-6, "the six digits it writes"});
  }
}
