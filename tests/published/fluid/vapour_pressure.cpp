// Vapour pressure of water against the full formulation IAPWS-95, printed (Table 8) and as a program computes it.
#include "published/fluid/worst.hpp"
#include "slabwright/fluid.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("vapour pressure stays near the full formulation") {
  const Within formulas{0.0, 1e-4, "the short saturation line against the full formulation"};
  const Source release{"IAPWS-95", "Table 8"};
  CHECK_PUBLISHED(release, "vapour pressure at 275 K, kPa", "0.698451167",
                  water_vapour_pressure_Pa(275.0 - 273.15) / 1e3, formulas);
  CHECK_PUBLISHED(release, "vapour pressure at 450 K, kPa", "932.203564",
                  water_vapour_pressure_Pa(450.0 - 273.15) / 1e3, formulas);
  std::vector<Compared> all;
  for (auto& row : read_table("water_1atm/vapour_pressure.csv")) {
    const std::string at = row["T_C"];
    all.push_back(
        {"vapour pressure at " + at + " degC, kPa", row["psat_kPa"], water_vapour_pressure_Pa(std::stod(at)) / 1e3});
  }
  CHECK_WORST_PUBLISHED(Source{"IAPWS-95", "saturation, by iapws 1.5.2", Oracle::reference_code}, all, formulas);
}
