// EN 1264-2:2021 / ISO 11855-2:2021 Annex A: characteristic, limit curves, downward heat, basic characteristic.
#include "slabwright/handbook_en1264.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source hand{"EN 1264-2:2021", "tables A.1 to A.7", Oracle::derived};

En1264Floor thin_screed(double covering_m2K_per_W) {
  En1264Floor f;
  f.spacing_m = 0.15;
  f.outside_m = 0.016;
  f.cover_m = 0.045;
  f.screed_W_per_mK = 1.2;
  f.covering_m2K_per_W = covering_m2K_per_W;
  return f;
}

}  // namespace

TEST_CASE("K_H with thick covers, metal tubes and wide spacings") {
  for (const auto& row : read_table("en1264_paper_2021/coefficients.csv")) {
    En1264Floor f;
    f.spacing_m = number(row, "spacing_m");
    f.cover_m = number(row, "cover_m");
    f.outside_m = number(row, "outside_m");
    f.covering_m2K_per_W = number(row, "covering_m2K_per_W");
    f.screed_W_per_mK = number(row, "screed_W_per_mK");
    f.wall_m = number(row, "wall_m");
    f.wall_W_per_mK = number(row, "wall_W_per_mK");
    const double coefficient = en1264_coefficient_W_per_m2K(f);
    const std::string where = "W " + row.at("spacing_m") + " s_u " + row.at("cover_m") + " D " + row.at("outside_m") +
                              " R_B " + row.at("covering_m2K_per_W") + ": ";
    CHECK_PUBLISHED(hand, where + "K_H, W/m2K", row.at("coefficient"), coefficient);
    CHECK_PUBLISHED(hand, where + "q at 15 K, W/m2", row.at("heat_at_15_K"), 15.0 * coefficient);
  }
}

TEST_CASE("factors of the power function one by one") {
  En1264Floor f = thin_screed(0.10);
  f.spacing_m = 0.10;
  f.outside_m = 0.017;
  f.cover_m = 0.060;
  const En1264Factors narrow = en1264_factors(f);
  CHECK_PUBLISHED(hand, "EN-1 a_B", "0.59799", narrow.covering_ratio);
  CHECK_PUBLISHED(hand, "EN-1 a_W", "1.156", narrow.spacing_ratio);
  CHECK_PUBLISHED(hand, "EN-1 a_U", "1.039", narrow.cover_ratio);
  CHECK_PUBLISHED(hand, "EN-1 a_D", "1.022", narrow.outside_ratio);
  CHECK_PUBLISHED(hand, "EN-1 m_W", "-0.33333", narrow.spacing_exponent);
  CHECK_PUBLISHED(hand, "EN-1 m_U", "-1.5", narrow.cover_exponent);
  CHECK_PUBLISHED(hand, "EN-1 m_D", "-0.75", narrow.outside_exponent);
  CHECK_PUBLISHED(hand, "EN-1 product", "0.52929", narrow.product_ratio);
  f.spacing_m = 0.35;
  const En1264Factors between = en1264_factors(f);
  CHECK_PUBLISHED(hand, "EN-3 a_U, between table rows", "1.02007", between.cover_ratio);
  CHECK_PUBLISHED(hand, "EN-3 a_D, between table rows", "1.04533", between.outside_ratio);
  CHECK_PUBLISHED(hand, "EN-3 product", "0.32996", between.product_ratio);

  En1264Floor copper = thin_screed(0.10);
  copper.spacing_m = 0.20;
  copper.outside_m = 0.017;
  copper.wall_m = 0.001;
  copper.wall_W_per_mK = 390.0;
  CHECK_PUBLISHED(hand, "B of a copper tube, W/m2K", "7.3005", en1264_wall_coefficient_W_per_m2K(copper));
}

TEST_CASE("a second public value") {
  En1264Floor f;
  f.spacing_m = 0.10;
  f.cover_m = 0.02;
  f.outside_m = 0.016;
  f.covering_m2K_per_W = 0.05;
  f.screed_W_per_mK = 1.0;
  const double coefficient = en1264_coefficient_W_per_m2K(f);
  const double excess_K = log_mean_excess_K({20.0, 15.0}).value();
  CHECK_PUBLISHED(hand, "W 0.10 s_u 0.02: K_H, W/m2K", "5.11405", coefficient);
  CHECK_PUBLISHED(hand, "40/35/20 degC: dTH, K", "17.3803", excess_K);
  CHECK_PUBLISHED({"ISO 11855-2:2021 Annex A, a public script", "its example", Oracle::reference_code},
                  "W 0.10 s_u 0.02, 40/35/20 degC: q, W/m2", "88.89", coefficient * excess_K,
                  {0, 1e-4, "the script reads the tables by splines, the standard's own cases prove straight lines"});
}

TEST_CASE("limit curves") {
  const En1264Limit bare = en1264_limit(thin_screed(0.0), 9.0), bare_edge = en1264_limit(thin_screed(0.0), 15.0);
  CHECK_PUBLISHED(hand, "B_G, W/m2", "76.3", bare.base_W_per_m2);
  CHECK_PUBLISHED(hand, "n_G", "0.076", bare.exponent);
  CHECK_PUBLISHED(hand, "R_B 0, 9 K: dTH,G, K", "17.090", bare.excess_K);
  CHECK_PUBLISHED(hand, "R_B 0, 9 K: q_G, W/m2", "94.670", bare.heat_W_per_m2);
  CHECK_PUBLISHED(hand, "R_B 0, 15 K: dTH,G, K", "29.976", bare_edge.excess_K);
  CHECK_PUBLISHED(hand, "R_B 0, 15 K: q_G, W/m2", "166.053", bare_edge.heat_W_per_m2);
  const En1264Limit covered = en1264_limit(thin_screed(0.10), 9.0),
                    covered_edge = en1264_limit(thin_screed(0.10), 15.0);
  CHECK_PUBLISHED(hand, "R_B 0.10, 9 K: dTH,G, K", "29.281", covered.excess_K);
  CHECK_PUBLISHED(hand, "R_B 0.10, 9 K: q_G, W/m2", "98.625", covered.heat_W_per_m2);
  CHECK_PUBLISHED(hand, "R_B 0.10, 15 K: dTH,G, K", "51.360", covered_edge.excess_K);
  CHECK_PUBLISHED(hand, "R_B 0.10, 15 K: q_G, W/m2", "172.989", covered_edge.heat_W_per_m2);
}

TEST_CASE("basic characteristic") {
  const Source table{"EN 1264-2:2021 basic characteristic", "q = 8.92 dT^1.1", Oracle::derived};
  CHECK_PUBLISHED(table, "q at 1 K, W/m2", "8.920", en1264_surface_heat_W_per_m2(1.0));
  CHECK_PUBLISHED(table, "q at 2 K, W/m2", "19.12", en1264_surface_heat_W_per_m2(2.0));
  CHECK_PUBLISHED(table, "q at 5 K, W/m2", "52.39", en1264_surface_heat_W_per_m2(5.0));
  CHECK_PUBLISHED(table, "q at 7 K, W/m2", "75.85", en1264_surface_heat_W_per_m2(7.0));
  CHECK_PUBLISHED(table, "q at 9 K, W/m2", "100.007", en1264_surface_heat_W_per_m2(9.0));
  CHECK_PUBLISHED(table, "q at 10 K, W/m2", "112.30", en1264_surface_heat_W_per_m2(10.0));
  CHECK_PUBLISHED(table, "q at 15 K, W/m2", "175.41", en1264_surface_heat_W_per_m2(15.0));
  CHECK_PUBLISHED(table, "rise at 43.1 W/m2, K", "4.187", en1264_surface_rise_K(43.1));
  CHECK_PUBLISHED(table, "rise at 48.5 W/m2, K", "4.661", en1264_surface_rise_K(48.5));
  CHECK_PUBLISHED(table, "rise at 54.1 W/m2, K", "5.148", en1264_surface_rise_K(54.1));
  CHECK_PUBLISHED(table, "rise at 100 W/m2, K", "8.9994", en1264_surface_rise_K(100.0));
  CHECK_PUBLISHED(table, "rise at 175 W/m2, K", "14.968", en1264_surface_rise_K(175.0));
}

TEST_CASE("heat downward and the water that carries it") {
  const Source worked{"ISO 11855-2:2021", "A.29 to A.32, worked examples", Oracle::derived};
  En1264Floor f = thin_screed(0.0);
  const double above = en1264_above_m2K_per_W(f);
  const double down = en1264_down_W_per_m2({above, 1.25 + 0.1 / 1.9}, 50.0, 15.0);
  CHECK_PUBLISHED(worked, "bare floor: R_o, m2K/W", "0.13009", above);
  CHECK_PUBLISHED(worked, "bare floor: q_U, W/m2", "16.509", down);
  CHECK_PUBLISHED(worked, "bare floor: water, kg/h m2", "11.429", 3600.0 * en1264_water_kg_per_sm2(50.0, down, 5.0));
  f.cover_m = 0.065;
  f.covering_m2K_per_W = 0.05;
  const double covered_above = en1264_above_m2K_per_W(f);
  const double covered_down = en1264_down_W_per_m2({covered_above, 2.05263}, 60.0, 10.0);
  CHECK_PUBLISHED(worked, "covered floor: R_o, m2K/W", "0.19676", covered_above);
  CHECK_PUBLISHED(worked, "covered floor: q_U, W/m2", "10.623", covered_down);
  CHECK_PUBLISHED(worked, "covered floor: water, kg/h m2", "12.136",
                  3600.0 * en1264_water_kg_per_sm2(60.0, covered_down, 5.0));
}
