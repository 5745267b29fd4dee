// Water vapour in air: saturation, dew points, what settles on a cold slab.
#include <array>

#include "slabwright/handbook_psychrometrics.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source library{"Hyland and Wexler, ASHRAE Fundamentals chapter 1", "psychrometric library of its formulas, 1.1.1",
                     Oracle::reference_code};
const Source slab{"ASHRAE Fundamentals, psychrometrics of a cold slab", "by a script with the same library",
                  Oracle::derived};
const Source release{"IAPWS-95", "Table 8", Oracle::published};

std::string short_of(double value) {
  std::string text = std::to_string(value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

double degC_of_F(double degF) { return (degF - 32.0) / 1.8; }
double dew_degC(double air_degC, double share) { return dew_point_degC(share * saturation_Pa(air_degC)); }

}  // namespace

TEST_CASE("saturation pressure over ice and water") {
  struct Row {
    double at_degC;
    const char* pressure;
  };
  for (const Row& row :
       {Row{-20, "103.260"}, Row{-10, "259.903"}, Row{0, "611.154"}, Row{4.4444, "839.252"}, Row{5, "872.487"},
        Row{10, "1227.995"}, Row{15, "1705.448"}, Row{20, "2338.804"}, Row{25, "3169.216"}, Row{30, "4246.030"}})
    CHECK_PUBLISHED(library, "saturation at " + short_of(row.at_degC) + " degC, Pa", row.pressure,
                    saturation_Pa(row.at_degC));
  CHECK_PUBLISHED(library, "saturation over water at 0 degC, Pa", "611.213", saturation_over_water_Pa(0.0));
  CHECK_PUBLISHED(release, "saturation at 275 K, Pa", "698.451167", saturation_Pa(275.0 - 273.15),
                  Within{0.0, 1e-4, "the formula of 1983 against the formulation of 1995"});
}

TEST_CASE("dew and frost points") {
  struct Row {
    double air, percent;
    const char* dew;
  };
  for (const Row& row : {Row{20, 50, "9.2724"}, Row{25, 50, "13.8640"}, Row{10, 80, "6.7130"}, Row{15, 90, "13.3745"},
                         Row{18, 70, "12.4526"}, Row{0, 80, "-2.68"}, Row{-10, 70, "-13.9568"}})
    CHECK_PUBLISHED(library, "dew point of " + short_of(row.air) + " degC, " + short_of(row.percent) + " %, degC",
                    row.dew, dew_degC(row.air, row.percent / 100.0));
  for (const Row& row : {Row{75, 55, "57.7541"}, Row{60, 80, "53.8202"}, Row{55, 75, "47.2334"}, Row{50, 90, "47.1870"},
                         Row{68, 50, "48.6903"}, Row{70, 30, "37.1774"}})
    CHECK_PUBLISHED(library, "dew point of " + short_of(row.air) + " degF, " + short_of(row.percent) + " %, degF",
                    row.dew, 32.0 + 1.8 * dew_degC(degC_of_F(row.air), row.percent / 100.0));
}

TEST_CASE("when a cold slab sweats") {
  struct Row {
    double slab_F;
    const char *wet_degC, *dry_degC;     // dew points at 80 and 60 % on the slab
    std::array<const char*, 4> percent;  // humidity of air at 10, 15, 18, 21 degC that just sweats
  };
  for (const Row& row : {Row{40, "1.30", "-2.33", {"68.3", "49.2", "40.7", "33.7"}},
                         Row{45, "4.01", "-0.01", {"82.8", "59.7", "49.3", "40.9"}},
                         Row{50, "6.71", "2.60", {"100", "72.0", "59.5", "49.4"}},
                         Row{55, "9.42", "5.22", {nullptr, "86.6", "71.5", "59.3"}}}) {
    const std::string at = "slab " + short_of(row.slab_F) + " degF: ";
    const double slab_degC = degC_of_F(row.slab_F);
    CHECK_PUBLISHED(slab, at + "dew point for 80 % on it, degC", row.wet_degC, dew_degC(slab_degC, 0.8));
    CHECK_PUBLISHED(slab, at + "dew point for 60 % on it, degC", row.dry_degC, dew_degC(slab_degC, 0.6));
    const double airs_degC[] = {10.0, 15.0, 18.0, 21.0};
    for (std::size_t air = 0; air < 4; ++air) {
      if (row.percent[air] == nullptr) continue;
      const double full_share = surface_humidity_share(saturation_Pa(airs_degC[air]), slab_degC);
      CHECK_PUBLISHED(slab, at + "air of " + short_of(airs_degC[air]) + " degC sweats at, %", row.percent[air],
                      100.0 / full_share);
    }
  }
}

TEST_CASE("how much settles on it") {
  constexpr double sea_Pa = 101325.0;
  const double cold = humidity_ratio_of(5.0, 1.0, sea_Pa), warm = humidity_ratio_of(18.0, 0.7, sea_Pa);
  CHECK_PUBLISHED(slab, "humidity ratio at 5 degC, saturated", ".0054019", cold);
  CHECK_PUBLISHED(slab, "humidity ratio at 18 degC, 70 %", ".0089979", warm);
  struct Row {
    std::string at;
    double air_degC, share, slab_degC;
    std::array<const char*, 3> grams;  // at 1, 3 and 5 W/m2K
  };
  for (const Row& row : {Row{"18 degC, 70 % on 5 degC", 18.0, 0.7, 5.0, {"12.87", "38.61", "64.34"}},
                         Row{"12.778 degC, 75 % on 4.444 degC", 12.778, 0.75, 4.444, {"6.00", "18.00", "30.00"}},
                         Row{"10 degC, 80 % on 5 degC", 10.0, 0.8, 5.0, {"2.46", "7.38", "12.30"}}}) {
    const double air = humidity_ratio_of(row.air_degC, row.share, sea_Pa);
    const double surface = humidity_ratio_of(row.slab_degC, 1.0, sea_Pa);
    const double convections[] = {1.0, 3.0, 5.0};
    for (std::size_t at = 0; at < 3; ++at)
      CHECK_PUBLISHED(slab, row.at + ", h " + short_of(convections[at]) + ": settles, g/m2h", row.grams[at],
                      3.6e6 * settling_kg_per_sm2(convections[at], air, surface));
  }
  const char* const latent[] = {"8.9", "26.8", "44.7"};
  for (std::size_t at = 0; at < 3; ++at)
    CHECK_PUBLISHED(
        slab, "18 degC, 70 % on 5 degC, h " + short_of(1.0 + 2.0 * static_cast<double>(at)) + ": heat, W/m2",
        latent[at], vaporisation_J_per_kg * settling_kg_per_sm2(1.0 + 2.0 * static_cast<double>(at), warm, cold));
}
