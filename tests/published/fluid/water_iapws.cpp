// IAPWS SR6-08(2011), "Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa", and how far it lies
// from the full formulations IAPWS-95, R12-08 (viscosity) and R15-11 (conductivity).
#include "published/fluid/worst.hpp"
#include "slabwright/fluid.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source release{"IAPWS SR6-08(2011)", "values for checking programs, 0.1 MPa"};
const Source program{"iapws 1.5.2", "SR6-08, 0.1 MPa", Oracle::reference_code};
const Source full{"IAPWS-95, R12-08, R15-11", "101.325 kPa, by iapws 1.5.2", Oracle::reference_code};

struct Quantity {
  const char* name;
  const char* full_column;
  const char* program_column;
  double FluidProperties::*member;
  double unit;
};

constexpr Quantity quantities[] = {
    {"density, kg/m3", "rho95_kg_m3", "rho_SR6-08", &FluidProperties::density_kg_per_m3, 1.0},
    {"specific heat, kJ/(kg K)", "cp95_kJ_kgK", "cp_SR6-08", &FluidProperties::specific_heat_J_per_kgK, 1e3},
    {"viscosity, uPa s", "mu_R12-08_uPas", "mu_SR6-08_uPas", &FluidProperties::viscosity_Pa_s, 1e-6},
    {"conductivity, W/(m K)", "k_R15-11_W_mK", "k_SR6-08", &FluidProperties::conductivity_W_per_mK, 1.0},
};

std::vector<Compared> compared(const Quantity& quantity, const char* column) {
  std::vector<Compared> all;
  for (auto& row : read_table("water_1atm/water_1atm.csv")) {
    const double ours = properties_of({}, number(row, "T_C")).*quantity.member / quantity.unit;
    all.push_back({fmt::format("{} at {} degC", quantity.name, row["T_C"]), row[column], ours});
  }
  return all;
}

}  // namespace

TEST_CASE("SR6-08's values for checking programs") {
  const FluidProperties cold = properties_of({}, 260.0 - 273.15);
  CHECK_PUBLISHED(release, "density at 260 K, kg/m3", "997.068360", cold.density_kg_per_m3);
  CHECK_PUBLISHED(release, "specific heat at 260 K, kJ/(kg K)", "4.30017472", cold.specific_heat_J_per_kgK / 1e3);
  CHECK_PUBLISHED(release, "viscosity at 260 K, uPa s", "3058.36075", cold.viscosity_Pa_s * 1e6);
  CHECK_PUBLISHED(release, "conductivity at 260 K, W/(m K)", "0.515628010", cold.conductivity_W_per_mK);
  const FluidProperties room = properties_of({}, 25.0);
  CHECK_PUBLISHED(release, "density at 298.15 K, kg/m3", "997.047013", room.density_kg_per_m3);
  CHECK_PUBLISHED(release, "specific heat at 298.15 K, kJ/(kg K)", "4.18144618", room.specific_heat_J_per_kgK / 1e3);
  CHECK_PUBLISHED(release, "viscosity at 298.15 K, uPa s", "889.996774", room.viscosity_Pa_s * 1e6);
  CHECK_PUBLISHED(release, "conductivity at 298.15 K, W/(m K)", "0.606502308", room.conductivity_W_per_mK);
  const FluidProperties hot = properties_of({}, 375.0 - 273.15);
  CHECK_PUBLISHED(release, "density at 375 K, kg/m3", "957.009710", hot.density_kg_per_m3);
  CHECK_PUBLISHED(release, "specific heat at 375 K, kJ/(kg K)", "4.21774697", hot.specific_heat_J_per_kgK / 1e3);
  CHECK_PUBLISHED(release, "viscosity at 375 K, uPa s", "276.207245", hot.viscosity_Pa_s * 1e6);
  CHECK_PUBLISHED(release, "conductivity at 375 K, W/(m K)", "0.677913788", hot.conductivity_W_per_mK);
}

TEST_CASE("SR6-08 as another program computes it") {
  for (const Quantity& quantity : quantities)
    CHECK_WORST_PUBLISHED(program, compared(quantity, quantity.program_column),
                          {0.0, 5e-9, "the nine digits it writes"});
}

TEST_CASE("SR6-08 stays near the full formulations at one atmosphere") {
  for (const Quantity& quantity : quantities)
    CHECK_WORST_PUBLISHED(full, compared(quantity, quantity.full_column),
                          {0.0, 4e-5, "the short formulas against the full ones"});
}
