// The section as a linear response, and what a resistance at the tube does to it.
#include <cmath>
#include <limits>
#include <stdexcept>

#include "section/sections.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// A solved field: some thousand roundings.
constexpr double rounding = 1e-9;

struct Heat {
  double up_W_per_m = 0.0;
  double down_W_per_m = 0.0;
};

Heat heat(const SectionResponse& r, double tube, double room, double below) {
  const double through = r.through_W_per_m_K * (below - room);
  return {r.room_W_per_m_K * (tube - room) + through, r.below_W_per_m_K * (tube - below) - through};
}

double sum(const SectionWeights& w) { return w.tube_share + w.room_share + w.below_share; }

constexpr double walled = 0.13;  ///< mK/W, a plastic tube with fast water

TubeRow row_of(const Section& s, double film) {
  return {s.spacing_m,
          s.outside_diameter_m,
          s.cover_above_m,
          {{s.cover_above_m + s.cover_below_m, s.concrete_W_per_mK}},
          1.0 / (1.0 / film + s.covering_m2K_per_W),
          s.underside_W_per_m2K};
}

bool near(double a, double b, double within) { return std::abs(a - b) <= within; }

}  // namespace

TEST_CASE("heat upward leaves through the film at the floor's own face") {
  for (const Section& bare : sections()) {
    for (const Section& s : {bare, with_field(bare)}) {
      const double film = 9.3;
      const SectionResponse r = respond(s, film, walled);
      const double floor_degC = temperature_degC(r.floor_mean, 31.0, 16.0, 4.0);
      // Rounding of a solved field: some thousand operations.
      CHECK(heat(r, 31.0, 16.0, 4.0).up_W_per_m == Approx(film * (floor_degC - 16.0) * s.spacing_m).epsilon(1e-9));
    }
  }
}

TEST_CASE("every weight adds up to one, whatever resists at the tube") {
  for (const Section& bare : sections()) {
    for (const Section& s : {bare, with_field(bare)}) {
      for (double tube_mK_per_W : {0.0, 0.13, 5.0}) {
        const SectionResponse r = respond(s, 8.0, tube_mK_per_W);
        for (const SectionWeights& w : {r.floor_mean, r.floor_over_tube, r.floor_midway, r.plane_midway})
          CHECK(sum(w) == Approx(1.0).epsilon(1e-9));
      }
    }
  }
}

TEST_CASE("one temperature everywhere moves no heat") {
  for (const Section& s : sections()) {
    const Heat none = heat(respond(s, 8.0, 0.1), 12.0, 12.0, 12.0);
    CHECK(none.up_W_per_m == 0.0);
    CHECK(none.down_W_per_m == 0.0);
  }
}

TEST_CASE("a section gives what its row of tubes gives") {
  constexpr double asked = 1e-5;  // the section's tolerance
  for (const Section& s : sections()) {
    for (const double tube_mK_per_W : {0.0, 0.12, 0.25}) {
      const TubeRowResponse row = tube_row_responses(row_of(s, 9.0), {tube_mK_per_W}).front();
      const SectionResponse r = respond(s, 9.0, tube_mK_per_W);
      CHECK(r.room_W_per_m_K == Approx(row.above_W_per_m_K).epsilon(asked));
      CHECK(r.below_W_per_m_K == Approx(row.below_W_per_m_K).epsilon(asked));
      CHECK(r.plane_midway.tube_share == Approx(row.plane_midway.tube_share).epsilon(asked));
    }
  }
}

TEST_CASE("what lies between the tabled films and tubes is what would be solved") {
  CHECK(rc::check([] {
    const Section s = any_section();
    const Section tabled = with_field(s);
    const double film = static_cast<double>(*rc::gen::inRange(550, 1401)) / 100.0;
    const double tube_mK_per_W = static_cast<double>(*rc::gen::inRange(0, 500)) / 1000.0;
    const SectionResponse between = respond(tabled, film, tube_mK_per_W), solved = respond(s, film, tube_mK_per_W);
    constexpr double within = 2e-4;
    RC_ASSERT(near(between.room_W_per_m_K, solved.room_W_per_m_K, within * solved.room_W_per_m_K));
    RC_ASSERT(near(between.below_W_per_m_K, solved.below_W_per_m_K, within * solved.room_W_per_m_K));
    RC_ASSERT(near(between.floor_mean.tube_share, solved.floor_mean.tube_share, within));
    RC_ASSERT(near(between.floor_over_tube.tube_share, solved.floor_over_tube.tube_share, within));
    RC_ASSERT(near(between.floor_midway.tube_share, solved.floor_midway.tube_share, within));
    RC_ASSERT(near(between.plane_midway.tube_share, solved.plane_midway.tube_share, within));
    RC_ASSERT(near(between.plane_midway.room_share, solved.plane_midway.room_share, within));
  }));
}

TEST_CASE("the error named is small") {
  for (const Section& s : sections()) CHECK(respond(s, 10.8, 0.0).error_share < 1e-3);
}

TEST_CASE("a tube of any resistance leaves the floor the heat that passes it") {
  for (const Section& s : sections()) {
    double last = 1e300;
    for (const double tube_mK_per_W : {0.0, 0.05, 0.13, 0.5, 2.0}) {
      const double up = respond(s, 9.0, tube_mK_per_W).room_W_per_m_K;
      CHECK(up < last);
      CHECK(up < 1.0 / (tube_mK_per_W + 1e-9));
      last = up;
    }
  }
}

TEST_CASE("mats over part of the floor stand side by side with the bare rest") {
  Section s = shop_slab();
  const SectionResponse bare = respond(s, 9.0, walled);
  s.matted_share = 1.0;
  s.mat_m2K_per_W = 0.15;
  const SectionResponse matted = respond(s, 9.0, walled);
  s.matted_share = 0.3;
  const SectionResponse both = respond(s, 9.0, walled);
  CHECK(matted.room_W_per_m_K < bare.room_W_per_m_K);
  CHECK(both.room_W_per_m_K ==
        Approx(bare.room_W_per_m_K + 0.3 * (matted.room_W_per_m_K - bare.room_W_per_m_K)).epsilon(1e-3));
  Section covered = shop_slab();
  covered.covering_m2K_per_W = 0.15;
  CHECK(respond(covered, 9.0, walled).room_W_per_m_K == Approx(matted.room_W_per_m_K).epsilon(1e-12));
}

TEST_CASE("layers of the same concrete are one layer") {
  Section whole = shop_slab(), parted = shop_slab();
  parted.above = {{0.03, 1.75}};
  parted.cover_above_m -= 0.03;
  parted.under = {{0.02, 1.75}};
  parted.cover_below_m -= 0.02;
  const SectionResponse a = respond(whole, 9.0, walled), b = respond(parted, 9.0, walled);
  CHECK(b.room_W_per_m_K == Approx(a.room_W_per_m_K).epsilon(1e-4));
  CHECK(b.below_W_per_m_K == Approx(a.below_W_per_m_K).epsilon(1e-4));
  CHECK(b.plane_midway.tube_share == Approx(a.plane_midway.tube_share).epsilon(1e-4));
}

TEST_CASE("a slab turned over changes room and below") {
  Section up = shop_slab();
  up.cover_above_m = 0.05;
  up.cover_below_m = 0.08;
  up.underside_W_per_m2K = 2.5;
  Section down = up;
  std::swap(down.cover_above_m, down.cover_below_m);
  down.underside_W_per_m2K = 8.0;
  const SectionResponse a = respond(up, 8.0, walled), b = respond(down, 2.5, walled);
  CHECK(a.room_W_per_m_K == Approx(b.below_W_per_m_K).epsilon(rounding));
  CHECK(a.below_W_per_m_K == Approx(b.room_W_per_m_K).epsilon(rounding));
  CHECK(a.through_W_per_m_K == Approx(b.through_W_per_m_K).epsilon(rounding));
  CHECK(a.plane_midway.tube_share == Approx(b.plane_midway.tube_share).epsilon(rounding));
}

TEST_CASE("broken contracts are refused") {
  Section shallow = shop_slab();
  shallow.cover_above_m = 0.005;
  CHECK_THROWS_AS(respond(shallow, 8.0, walled), std::logic_error);
  CHECK_THROWS_AS(respond(shop_slab(), 0.0, walled), std::logic_error);
  CHECK_THROWS_AS(respond(shop_slab(), std::numeric_limits<double>::quiet_NaN(), walled), std::logic_error);
  CHECK_THROWS_AS(respond(shop_slab(), 8.0, -0.1), std::logic_error);
}
