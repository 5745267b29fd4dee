// The star with its series against exact conduction around a row of tubes in a slab (cases SL; two independent methods
// agree on them within 5e-5). The plain line is held to its named error, the dipole to the benchmark's own tolerance.
#include <cmath>
#include <limits>
#include <numbers>

#include "slabwright/handbook_star.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Row = std::map<std::string, std::string>;

const Within exact{0, 1e-3, "the benchmark's own 0.1 %"};

StarGeometry geometry_of(const Row& row) {
  StarGeometry g;
  g.concrete_W_per_mK = number(row, "k");
  g.spacing_m = number(row, "W");
  g.outside_m = number(row, "d");
  g.cover_above_m = number(row, "S1");
  g.cover_below_m = number(row, "S2");
  g.above_W_per_m2K = number(row, "h1");
  g.below_W_per_m2K = number(row, "h2");
  return g;
}

Row benchmark(const std::string& id) {
  for (const Row& row : read_table("tube_row_benchmarks/isothermal.csv"))
    if (row.at("id") == id) return row;
  throw std::runtime_error("no benchmark " + id);
}

/// A line source leaves out the dipole, which at the nearer face is (radius / (2 cover))^2 of the field.
double named_error(const StarGeometry& g) {
  const double cover = std::min(g.cover_above_m, g.cover_below_m);
  return std::pow(g.outside_m / (4.0 * cover), 2);
}

}  // namespace

TEST_CASE("heat and temperatures of the isothermal rows") {
  for (const Row& row : read_table("tube_row_benchmarks/isothermal.csv")) {
    const StarGeometry g = geometry_of(row);
    const Source source{"Tube-row benchmarks", row.at("id"), Oracle::derived};
    const StarSection line = star_section(g).value(), round = star_section(g, TubeField::dipole).value();
    CHECK_PUBLISHED(source, "R_x of the series, m2K/W", row.at("R_x"), line.series_m2K_per_W);

    const double named = row.at("id") == "SL-5" ? 0.007 : 0.003;
    const Within heat{0, named, "a line source in place of a tube"};
    CHECK_PUBLISHED(source, "line: heat upward, W/m2K", row.at("q_up"), line.up_W_per_m2K, heat);
    CHECK_PUBLISHED(source, "line: heat downward, W/m2K", row.at("q_down"), line.down_W_per_m2K, heat);
    CHECK_PUBLISHED(source, "dipole: heat upward, W/m2K", row.at("q_up"), round.up_W_per_m2K, exact);
    CHECK_PUBLISHED(source, "dipole: heat downward, W/m2K", row.at("q_down"), round.down_W_per_m2K, exact);

    const Within dipole_left_out{0, named_error(g), "the dipole left out: (radius / (2 cover))^2 at the nearer face"};
    const std::pair<const char*, StarWeights StarSection::*> places[] = {
        {"top_over", &StarSection::top_over_tube},   {"top_mid", &StarSection::top_midway},
        {"top_mean", &StarSection::top_mean},        {"bottom_under", &StarSection::bottom_under_tube},
        {"bottom_mid", &StarSection::bottom_midway}, {"plane_mid", &StarSection::plane_midway}};
    for (const auto& [column, place] : places) {
      const std::string what = std::string("temperature ") + column;
      CHECK_PUBLISHED(source, "line: " + what, row.at(column), (line.*place).tube_share, dipole_left_out);
      CHECK_PUBLISHED(source, "dipole: " + what, row.at(column), (round.*place).tube_share, exact);
    }
  }
}

TEST_CASE("SL-7: three temperatures at once") {
  const Source source{"Tube-row benchmarks", "SL-7", Oracle::derived};
  const double tube = 38.0, room = 18.0, below = 8.0;
  const StarGeometry g = geometry_of(benchmark("SL-1"));
  const StarSection line = star_section(g).value(), round = star_section(g, TubeField::dipole).value();
  const auto up = [&](const StarSection& s) {
    return s.up_W_per_m2K * (tube - room) + s.through_W_per_m2K * (below - room);
  };
  const auto down = [&](const StarSection& s) {
    return s.down_W_per_m2K * (tube - below) - s.through_W_per_m2K * (below - room);
  };
  const Within heat{0, 0.003, "a line source in place of a tube"};
  CHECK_PUBLISHED(source, "line: heat upward, W/m2", "109.848", up(line), heat);
  CHECK_PUBLISHED(source, "line: heat downward, W/m2", "12.0926", down(line), heat);
  CHECK_PUBLISHED(source, "dipole: heat upward, W/m2", "109.848", up(round), exact);
  CHECK_PUBLISHED(source, "dipole: heat downward, W/m2", "12.0926", down(round), exact);
  const auto at = [&](const StarWeights& w) { return temperature_degC(w, tube, room, below); };
  const Within of_drive{0.001 * (tube - below), 0, "0.1 % of the 30 K that drive it"};
  CHECK_PUBLISHED(source, "dipole: top over the tube, degC", "29.4292", at(round.top_over_tube), of_drive);
  CHECK_PUBLISHED(source, "dipole: top midway, degC", "27.1733", at(round.top_midway), of_drive);
  CHECK_PUBLISHED(source, "dipole: top mean, degC", "28.1711", at(round.top_mean), of_drive);
  CHECK_PUBLISHED(source, "dipole: bottom under the tube, degC", "33.6775", at(round.bottom_under_tube), of_drive);
  CHECK_PUBLISHED(source, "dipole: bottom midway, degC", "30.9666", at(round.bottom_midway), of_drive);
}

TEST_CASE("water behind wall and film") {
  struct Walled {
    const char *id, *of;
    double tube_mK_per_W;
    const char *up, *down, *star_up;
  };
  for (const Walled& w : {Walled{"SL-1w", "SL-1", 0.111417, "4.62775", "0.30447", "4.62853"},
                          Walled{"SL-3w", "SL-3", 0.119136, "4.00115", "0.33822", "4.00177"}}) {
    StarGeometry g = geometry_of(benchmark(w.of));
    g.tube_mK_per_W = w.tube_mK_per_W;
    const Source source{"Tube-row benchmarks", w.id, Oracle::derived};
    const StarSection line = star_section(g).value(), round = star_section(g, TubeField::dipole).value();
    CHECK_PUBLISHED(source, "star and series: heat upward, W/m2K", w.star_up, line.up_W_per_m2K);
    CHECK_PUBLISHED(source, "line: heat upward, W/m2K", w.up, line.up_W_per_m2K, exact);
    CHECK_PUBLISHED(source, "line: heat downward, W/m2K", w.down, line.down_W_per_m2K, exact);
    CHECK_PUBLISHED(source, "dipole: heat upward, W/m2K", w.up, round.up_W_per_m2K);
    CHECK_PUBLISHED(source, "dipole: heat downward, W/m2K", w.down, round.down_W_per_m2K);
  }
}

TEST_CASE("covers from thin to thick") {
  for (const Row& row : read_table("tube_row_benchmarks/thin_covers.csv")) {
    StarGeometry g;
    g.spacing_m = 0.30;
    g.outside_m = 0.020;
    g.cover_above_m = g.cover_below_m = number(row, "share") * g.spacing_m;
    g.concrete_W_per_mK = 1.8;
    g.above_W_per_m2K = 10.8;
    g.below_W_per_m2K = 5.8824;
    const Source source{"Tube-row benchmarks", "covers of " + row.at("share") + " of the spacing", Oracle::derived};
    const StarSection line = star_section(g).value();
    const double truth = number(row, "exact");
    CHECK_PUBLISHED(source, "line: error, %", row.at("series_error"), 100.0 * (line.up_W_per_m2K / truth - 1.0));
    CHECK_PUBLISHED(source, "dipole: heat upward, W/m2K", row.at("exact"),
                    star_section(g, TubeField::dipole)->up_W_per_m2K, exact);

    // The plain star: R_x without the series, between the same two paths.
    StarCircuit circuit{g.spacing_m, g.outside_m, 0.002, 0.35, 100.0, 0.01};
    const double plain = star_resistances(circuit, g.concrete_W_per_mK).plain_m2K_per_W;
    const double up = 1.0 / (1.0 / g.above_W_per_m2K + g.cover_above_m / g.concrete_W_per_mK);
    const double down = 1.0 / (1.0 / g.below_W_per_m2K + g.cover_below_m / g.concrete_W_per_mK);
    CHECK_PUBLISHED(source, "plain R_x: error, %", row.at("plain_error"),
                    100.0 * (up / (1.0 + plain * (up + down)) / truth - 1.0));
  }
}

TEST_CASE("adiabatic underside") {
  for (const Row& row : read_table("tube_row_benchmarks/adiabatic_underside.csv")) {
    StarGeometry g;
    g.spacing_m = number(row, "W");
    g.outside_m = number(row, "d");
    g.cover_above_m = g.cover_below_m = number(row, "S");
    g.concrete_W_per_mK = number(row, "k");
    g.above_W_per_m2K = 10.8;
    const Source source{"Tube-row benchmarks", "adiabatic below, W " + row.at("W"), Oracle::derived};
    CHECK_PUBLISHED(source, "dipole: heat upward, W/m2K", row.at("exact"),
                    star_section(g, TubeField::dipole)->up_W_per_m2K, exact);
    CHECK_PUBLISHED(source, "line: heat upward, W/m2K", row.at("exact"), star_section(g)->up_W_per_m2K,
                    {0, 0.005, "a line source in place of a tube, tubes as near as 0.15 m"});
  }
}

TEST_CASE("shape factors of a row") {
  const double held = std::numeric_limits<double>::infinity();
  for (const Row& row : read_table("tube_row_benchmarks/shape_factors.csv")) {
    StarGeometry g;
    g.spacing_m = number(row, "W");
    g.outside_m = number(row, "D");
    g.cover_above_m = number(row, "z");
    g.concrete_W_per_mK = 1.0;
    g.above_W_per_m2K = held;
    const bool between_two = row.at("planes") == "2";
    g.cover_below_m = between_two ? g.cover_above_m : 50.0 * g.spacing_m;  // deep ground
    g.below_W_per_m2K = between_two ? held : 0.0;
    const Source source{"Shape factors of a row of tubes",
                        row.at("planes") + " planes, z " + row.at("z") + " W " + row.at("W"), Oracle::derived};
    const StarSection line = star_section(g).value(), round = star_section(g, TubeField::dipole).value();
    CHECK_PUBLISHED(source, "series: S per metre", row.at("formula"), line.up_W_per_mK + line.down_W_per_mK);
    CHECK_PUBLISHED(source, "dipole: S per metre", row.at("exact"), round.up_W_per_mK + round.down_W_per_mK, exact);
  }
}

TEST_CASE("one cylinder below an isothermal plane") {
  StarGeometry g;
  g.spacing_m = 1e5;
  g.outside_m = 1.0;
  g.cover_above_m = 100.0;
  g.cover_below_m = 1e7;
  g.concrete_W_per_mK = 1.0;
  g.above_W_per_m2K = std::numeric_limits<double>::infinity();
  // What a row spaced W adds to one tube: (2 pi z / W)^2 / 6 in the logarithm of 4 z / D.
  const double row_share = std::pow(2.0 * std::numbers::pi * g.cover_above_m / g.spacing_m, 2) / 6.0 / std::log(400.0);
  CHECK_PUBLISHED({"Kreith, Manglik, Bohn, Principles of Heat Transfer (2010), shape factors", "D 1, z 100, L 3"},
                  "S of a buried cylinder, m", "3.146071454894645",
                  3.0 * star_section(g, TubeField::dipole)->up_W_per_mK,
                  {0, 2.0 * row_share, "a row far apart stands for one tube: twice its (2 pi z / W)^2 / 6"});
}
