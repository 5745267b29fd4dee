// ISO 13370:2017. The official demonstration case (workbook of ISO/DIS 13370, June 2015), and a workshop worked from
// the standard's formulas by a second program.
#include "slabwright/handbook_iso13370.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Iso13370Floor demonstration() {
  Iso13370Floor f;
  f.area_m2 = 100.0;
  f.perimeter_m = 40.0;
  f.wall_m = 0.30;
  f.floor_m2K_per_W = 2.5;
  f.junction_W_per_mK = 0.05;
  return f;
}

Iso13370Year demonstration_year() {
  Iso13370Year year;
  year.inside_degC = 20.0;
  year.inside_swing_K = 2.0;
  year.outside_degC = 10.0;
  year.outside_swing_K = 12.0;
  return year;
}

}  // namespace

TEST_CASE("ISO 13370 demonstration case: coefficients") {
  const Source workbook{"ISO/DIS 13370 demonstration workbook (2015)", "case A"};
  const Iso13370Coefficients c = iso13370_coefficients(demonstration());
  CHECK_PUBLISHED(workbook, "B, m", "5.000", c.dimension_m);
  CHECK_PUBLISHED(workbook, "d_f, m", "5.720", c.equivalent_m);
  CHECK_PUBLISHED(workbook, "U, W/m2K", "0.2498438", c.floor_W_per_m2K);
  CHECK_PUBLISHED(workbook, "H_g, W/K", "26.984385", c.steady_W_per_K);
  CHECK_PUBLISHED(workbook, "H_pi, W/K", "26.692209", c.inside_swing_W_per_K);
  CHECK_PUBLISHED(workbook, "H_pe, W/K", "13.152083", c.outside_swing_W_per_K);
  CHECK_PUBLISHED(workbook, "R_f,eff, m2K/W", "3.8325", c.effective_m2K_per_W);
  CHECK_PUBLISHED(workbook, "R_vi, m2K/W", "1.0825", c.virtual_m2K_per_W);
}

TEST_CASE("ISO 13370 demonstration case: months") {
  const Source workbook{"ISO/DIS 13370 demonstration workbook (2015)", "case A, months"};
  const Iso13370Floor floor = demonstration();
  const Iso13370Coefficients c = iso13370_coefficients(floor);
  const Months heat = iso13370_months_W(c, demonstration_year());
  const Months below = iso13370_virtual_degC(floor, c, demonstration_year());
  const auto rows = read_table("iso13370_demonstration/months.csv");
  REQUIRE(rows.size() == 12);
  for (std::size_t month = 0; month < 12; ++month) {
    const std::string name = "month " + rows[month].at("month");
    CHECK_PUBLISHED(workbook, name + ": heat to the ground, W", rows[month].at("heat_W"), heat[month]);
    CHECK_PUBLISHED(workbook, name + ": virtual layer, degC", rows[month].at("virtual_degC"), below[month]);
  }
}

TEST_CASE("ISO 13370 for a workshop with and without edge insulation") {
  for (const auto& row : read_table("iso13370_demonstration/variants.csv")) {
    Iso13370Floor f;
    f.area_m2 = 216.0;
    f.perimeter_m = 60.0;
    f.floor_m2K_per_W = number(row, "R_f");
    const Iso13370Edge::Lies lies[] = {Iso13370Edge::Lies::nowhere, Iso13370Edge::Lies::flat,
                                       Iso13370Edge::Lies::upright};
    f.edge = {lies[static_cast<int>(number(row, "edge"))], number(row, "width_m"), number(row, "R_n"),
              number(row, "d_n")};
    const Iso13370Coefficients c = iso13370_coefficients(f);
    const Source hand{"ISO 13370:2017", "12 x 18 m, " + row.at("what"), Oracle::derived};
    CHECK_PUBLISHED(hand, "d_f, m", row.at("d_f"), c.equivalent_m);
    CHECK_PUBLISHED(hand, "U, W/m2K", row.at("U"), c.floor_W_per_m2K);
    CHECK_PUBLISHED(hand, "psi_g,e, W/mK", row.at("psi"), c.edge_W_per_mK);
    CHECK_PUBLISHED(hand, "H_g, W/K", row.at("H_g"), c.steady_W_per_K);
    CHECK_PUBLISHED(hand, "H_pi, W/K", row.at("H_pi"), c.inside_swing_W_per_K);
    CHECK_PUBLISHED(hand, "H_pe, W/K", row.at("H_pe"), c.outside_swing_W_per_K);
  }
}

TEST_CASE("ISO 13370 penetration depth") {
  const Source table{"ISO 13370:2017", "periodic penetration depth", Oracle::published};
  const Within rounded{0.05, 0, "the table rounds to 0.1 m"};
  CHECK_PUBLISHED(table, "clay or silt, m", "2.2", iso13370_penetration_m(1.5, 3.0e6), rounded);
  CHECK_PUBLISHED(table, "sand or gravel, m", "3.2", iso13370_penetration_m(2.0, 2.0e6), rounded);
  CHECK_PUBLISHED(table, "rock, m", "4.2", iso13370_penetration_m(3.5, 2.0e6), rounded);
  const Source formula{"ISO 13370:2017", "eq. H.1", Oracle::derived};
  CHECK_PUBLISHED(formula, "clay or silt, m", "2.239", iso13370_penetration_m(1.5, 3.0e6));
  CHECK_PUBLISHED(formula, "sand or gravel, m", "3.167", iso13370_penetration_m(2.0, 2.0e6));
  CHECK_PUBLISHED(formula, "rock, m", "4.189", iso13370_penetration_m(3.5, 2.0e6));
}

TEST_CASE("ISO 13370 against the exact floor of the ground-coupled benchmark") {
  // 12 x 12 m, ground 1.9 W/mK, 20 K, equivalent thickness 0.24 m, as NREL/TP-550-43388 case GC10a describes it.
  Iso13370Floor f;
  f.area_m2 = 144.0;
  f.perimeter_m = 48.0;
  f.wall_m = 0.24;
  f.inside_m2K_per_W = f.outside_m2K_per_W = 0.0;
  f.ground_W_per_mK = 1.9;
  const double heat_W = 20.0 * iso13370_coefficients(f).steady_W_per_K;
  CHECK_PUBLISHED({"ISO 13370:2017", "F.(4) for the floor of GC10a", Oracle::derived}, "heat, W", "2508.9", heat_W);
  CHECK_PUBLISHED({"NREL/TP-550-43388", "case GC10a, exact"}, "heat, W", "2432.597", heat_W,
                  {0, 0.05, "a correlation: a band of 5 % about the exact floor"});
}
