// The tube row of the conduction kernel against exact conduction around a row of tubes in a slab: cases SL, thin
// covers, adiabatic undersides and shape factors, all to the last digit they come with.
#include "slabwright/conduction_tube_row.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Row = std::map<std::string, std::string>;

/// Holds a face at the temperature beyond its film: k / (film z), 2e-8 of the drop at most, is left in the film, and
/// the figures have seven digits.
constexpr double held_W_per_m2K = 1e9;

TubeRow tube_row_of(const Row& row) {
  const double above_m = number(row, "S1"), below_m = number(row, "S2");
  return {number(row, "W"),  number(row, "d"), above_m, {{above_m + below_m, number(row, "k")}},
          number(row, "h1"), number(row, "h2")};
}

TubeRow benchmark(const std::string& id) {
  for (const Row& row : read_table("tube_row_benchmarks/isothermal.csv"))
    if (row.at("id") == id) return tube_row_of(row);
  throw std::runtime_error("no benchmark " + id);
}

TubeRowResponse isothermal(const TubeRow& row) { return tube_row_responses(row, {0.0}).front(); }

Source source(const std::string& place) { return {"Tube-row benchmarks", place, Oracle::derived}; }

}  // namespace

TEST_CASE("conduction: heat and temperatures of the isothermal rows") {
  for (const Row& row : read_table("tube_row_benchmarks/isothermal.csv")) {
    const TubeRow tubes = tube_row_of(row);
    const TubeRowResponse r = isothermal(tubes);
    const Source from = source(row.at("id"));
    CHECK_PUBLISHED(from, "conduction: heat upward, W/m2K", row.at("q_up"), r.above_W_per_m_K / tubes.spacing_m);
    CHECK_PUBLISHED(from, "conduction: heat downward, W/m2K", row.at("q_down"), r.below_W_per_m_K / tubes.spacing_m);
    const std::pair<const char*, TubeRowWeights TubeRowResponse::*> places[] = {
        {"top_over", &TubeRowResponse::floor_over_tube}, {"top_mid", &TubeRowResponse::floor_midway},
        {"top_mean", &TubeRowResponse::floor_mean},      {"bottom_under", &TubeRowResponse::under_tube},
        {"bottom_mid", &TubeRowResponse::under_midway},  {"plane_mid", &TubeRowResponse::plane_midway}};
    for (const auto& [column, place] : places) {
      CHECK_PUBLISHED(from, std::string("conduction: temperature ") + column, row.at(column), (r.*place).tube_share);
    }
  }
}

TEST_CASE("conduction: SL-7, three temperatures at once") {
  const double tube = 38.0, room = 18.0, below = 8.0;
  const TubeRow tubes = benchmark("SL-1");
  const TubeRowResponse r = isothermal(tubes);
  const Source from = source("SL-7");
  const double up = r.above_W_per_m_K * (tube - room) + r.through_W_per_m_K * (below - room);
  const double down = r.below_W_per_m_K * (tube - below) - r.through_W_per_m_K * (below - room);
  CHECK_PUBLISHED(from, "conduction: heat upward, W/m2", "109.848", up / tubes.spacing_m);
  CHECK_PUBLISHED(from, "conduction: heat downward, W/m2", "12.0926", down / tubes.spacing_m);
  const auto at = [&](const TubeRowWeights& w) {
    return w.tube_share * tube + w.above_share * room + w.below_share * below;
  };
  CHECK_PUBLISHED(from, "conduction: top over the tube, degC", "29.4292", at(r.floor_over_tube));
  CHECK_PUBLISHED(from, "conduction: top midway, degC", "27.1733", at(r.floor_midway));
  CHECK_PUBLISHED(from, "conduction: top mean, degC", "28.1711", at(r.floor_mean));
  CHECK_PUBLISHED(from, "conduction: bottom under the tube, degC", "33.6775", at(r.under_tube));
  CHECK_PUBLISHED(from, "conduction: bottom midway, degC", "30.9666", at(r.under_midway));
}

TEST_CASE("conduction: water behind wall and film") {
  struct Walled {
    const char *id, *of;
    double tube_mK_per_W;
    const char *up, *down;
  };
  for (const Walled& w : {Walled{"SL-1w", "SL-1", 0.111417, "4.62775", "0.30447"},
                          Walled{"SL-3w", "SL-3", 0.119136, "4.00115", "0.33822"}}) {
    const TubeRow tubes = benchmark(w.of);
    const TubeRowResponse r = tube_row_responses(tubes, {w.tube_mK_per_W}).front();
    // The resistance has six digits and is a fifth of the whole: 1e-6 of the heat, a unit of its last digit.
    const Within digits{1e-5, 0, "a unit of the last digit: the tube's resistance is given to six digits"};
    CHECK_PUBLISHED(source(w.id), "conduction: heat upward, W/m2K", w.up, r.above_W_per_m_K / tubes.spacing_m, digits);
    CHECK_PUBLISHED(source(w.id), "conduction: heat downward, W/m2K", w.down, r.below_W_per_m_K / tubes.spacing_m);
  }
}

TEST_CASE("conduction: covers from thin to thick") {
  for (const Row& row : read_table("tube_row_benchmarks/thin_covers.csv")) {
    const double cover_m = number(row, "share") * 0.30;
    const TubeRow tubes{0.30, 0.020, cover_m, {{2.0 * cover_m, 1.8}}, 10.8, 5.8824};
    CHECK_PUBLISHED(source("covers of " + row.at("share") + " of the spacing"), "conduction: heat upward, W/m2K",
                    row.at("exact"), isothermal(tubes).above_W_per_m_K / tubes.spacing_m);
  }
}

TEST_CASE("conduction: adiabatic underside") {
  for (const Row& row : read_table("tube_row_benchmarks/adiabatic_underside.csv")) {
    const double cover_m = number(row, "S");
    const TubeRow tubes{number(row, "W"), number(row, "d"), cover_m, {{2.0 * cover_m, number(row, "k")}}, 10.8};
    const TubeRowResponse r = isothermal(tubes);
    CHECK_PUBLISHED(source("adiabatic below, W " + row.at("W")), "conduction: heat upward, W/m2K", row.at("exact"),
                    r.above_W_per_m_K / tubes.spacing_m);
    CHECK(r.below_W_per_m_K == Approx(0.0).margin(1e-12));
  }
}

TEST_CASE("conduction: shape factors of a row") {
  for (const Row& row : read_table("tube_row_benchmarks/shape_factors.csv")) {
    const bool between_two = row.at("planes") == "2";
    const double spacing_m = number(row, "W"), cover_m = number(row, "z");
    const double below_m = between_two ? cover_m : 50.0 * spacing_m;  // deep ground
    const TubeRow tubes{spacing_m,      number(row, "D"),
                        cover_m,        {{cover_m + below_m, 1.0}},
                        held_W_per_m2K, between_two ? held_W_per_m2K : 0.0};
    const TubeRowResponse r = isothermal(tubes);
    const Source from{"Shape factors of a row of tubes",
                      row.at("planes") + " planes, z " + row.at("z") + " W " + row.at("W"), Oracle::derived};
    CHECK_PUBLISHED(from, "conduction: S per metre", row.at("exact"), r.above_W_per_m_K + r.below_W_per_m_K);
  }
}

TEST_CASE("conduction: one cylinder midway between two isothermal planes") {
  // Neighbours 100 m away, ten times the planes' distance: what is left of them is exp(-pi 10).
  const TubeRow tubes{100.0, 0.1, 5.0, {{10.0, 1.0}}, held_W_per_m2K, held_W_per_m2K};
  const TubeRowResponse r = isothermal(tubes);
  CHECK_PUBLISHED(
      {"Kreith, Manglik, Bohn, Principles of Heat Transfer (2010), shape factors", "D 0.1, z 5"},
      "conduction: S of a cylinder between two planes, m", "1.2963749299921428", r.above_W_per_m_K + r.below_W_per_m_K,
      {0, 1e-8, "the formula takes the tube for a line, which leaves out (D / 4 z)^4; faces held to 2e-10"});
}
