// A pressure test on air by the gas law, worked out apart from the program from absolute temperatures in degrees
// Rankine and the standard atmosphere of 14.696 psi.
#include "slabwright/fluid.hpp"
#include "slabwright/handbook_pressure_test.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

double psi_at(double psi, double then_degF, double now_degF, double atmosphere_psi) {
  return air_reading_Pa({psi * psi_Pa, (then_degF - 32.0) / 1.8}, (now_degF - 32.0) / 1.8, atmosphere_psi * psi_Pa) /
         psi_Pa;
}

}  // namespace

TEST_CASE("a tight test on air in the cold") {
  const Source law{"gas law at constant volume", "(60 + 14.696) 479.67/529.67 - 14.696 and the like", Oracle::derived};
  CHECK_PUBLISHED(law, "60 psi at 70 F, read at 20 F, psi", "52.949", psi_at(60.0, 70.0, 20.0, 14.696));
  CHECK_PUBLISHED(law, "100 psi at 50 F, read at 0 F, psi", "88.748", psi_at(100.0, 50.0, 0.0, 14.696));
  CHECK_PUBLISHED(law, "60 psi at 70 F, read at 20 F at 12.2 psi of air, psi", "53.184",
                  psi_at(60.0, 70.0, 20.0, 12.2));
  CHECK_PUBLISHED(law, "3 bar at 15 C, read at -10 C, bar", "2.6518",
                  air_reading_Pa({3e5, 15.0}, -10.0, 101325.0) / 1e5);
  CHECK_PUBLISHED(law, "of the absolute pressure lost from 65 to 60 F, %", "0.953",
                  100.0 * (60.0 - psi_at(60.0, 65.0, 60.0, 14.696)) / (60.0 + 14.696));
}

TEST_CASE("the bore of PE-X grows more than water where floors are tested") {
  const PexBore tube;
  for (double degC = 1.0; degC <= 40.0; degC += 1.0) {
    INFO(degC);
    const double growth_per_K = volume_ratio(Mixture{}, degC - 0.5, degC + 0.5) - 1.0;
    CHECK(growth_per_K < tube.least_growth_per_K);
  }
}
