// The section as a linear response, and what a resistance at the tube does to it.
#include <cmath>
#include <limits>
#include <stdexcept>

#include "section/sections.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Additions and multiplications of numbers near 1: some tens of roundings.
constexpr double rounding = 1e-12;

struct Heat {
  double up_W_per_m = 0.0;
  double down_W_per_m = 0.0;
};

Heat heat(const SectionResponse& r, double tube, double room, double below) {
  const double through = r.through_W_per_m_K * (below - room);
  return {r.room_W_per_m_K * (tube - room) + through, r.below_W_per_m_K * (tube - below) - through};
}

StarGeometry star_of(const Section& s, double film, double tube_mK_per_W) {
  return {s.spacing_m,           s.outside_diameter_m, s.cover_above_m,
          s.cover_below_m,       s.concrete_W_per_mK,  lumped_coefficient_W_per_m2K(film, s.covering_m2K_per_W),
          s.underside_W_per_m2K, tube_mK_per_W};
}

double sum(const StarWeights& w) { return w.tube_share + w.room_share + w.below_share; }

}  // namespace

TEST_CASE("heat upward leaves through the film at the floor's own face") {
  for (const Section& s : sections()) {
    const double film = 9.3;
    const SectionResponse r = respond(s, film);
    const double floor_degC = temperature_degC(r.floor_mean, 31.0, 16.0, 4.0);
    CHECK(heat(r, 31.0, 16.0, 4.0).up_W_per_m == Approx(film * (floor_degC - 16.0) * s.spacing_m).epsilon(rounding));
  }
}

TEST_CASE("every weight adds up to one, with and without a resistance at the tube") {
  for (const Section& s : sections()) {
    for (double tube_mK_per_W : {0.0, 0.13, 5.0}) {
      const SectionResponse r = in_series(respond(s, 8.0), tube_mK_per_W);
      for (const StarWeights& w : {r.floor_mean, r.floor_over_tube, r.floor_midway, r.plane_midway})
        CHECK(sum(w) == Approx(1.0).epsilon(rounding));
    }
  }
}

TEST_CASE("one temperature everywhere moves no heat") {
  for (const Section& s : sections()) {
    const Heat none = heat(in_series(respond(s, 8.0), 0.1), 12.0, 12.0, 12.0);
    CHECK(none.up_W_per_m == 0.0);
    CHECK(none.down_W_per_m == 0.0);
  }
}

TEST_CASE("a resistance in series is the star's own resistance at the tube") {
  CHECK(rc::check([] {
    const Section s = any_section();
    const double tube_mK_per_W = static_cast<double>(*rc::gen::inRange(0, 1000)) / 1000.0;
    const SectionResponse r = in_series(respond(s, 9.0), tube_mK_per_W);
    const StarSection star = star_section(star_of(s, 9.0, tube_mK_per_W), TubeField::line).value();
    RC_ASSERT(std::abs(r.room_W_per_m_K / star.up_W_per_mK - 1.0) < rounding);
    RC_ASSERT(std::abs(r.below_W_per_m_K - star.down_W_per_mK) < rounding);
    RC_ASSERT(std::abs(r.through_W_per_m_K - star.through_W_per_m2K * s.spacing_m) < rounding);
    RC_ASSERT(std::abs(r.plane_midway.tube_share - star.plane_midway.tube_share) < rounding);
    RC_ASSERT(std::abs(r.plane_midway.room_share - star.plane_midway.room_share) < rounding);
  }));
}

TEST_CASE("the error named is the round tube's difference, and less is left behind a plastic wall") {
  for (const Section& s : sections()) {
    const SectionResponse r = respond(s, 10.8);
    const StarSection bare = star_section(star_of(s, 10.8, 0.0), TubeField::dipole).value();
    CHECK(r.error_share == Approx(std::abs(r.room_W_per_m_K / bare.up_W_per_mK - 1.0)).epsilon(1e-9));
    CHECK(r.error_share < 0.03);
    const StarSection walled = star_section(star_of(s, 10.8, s.wall_mK_per_W), TubeField::dipole).value();
    const double left = std::abs(in_series(r, s.wall_mK_per_W).room_W_per_m_K / walled.up_W_per_mK - 1.0);
    CHECK(left < 0.3 * r.error_share);
  }
}

TEST_CASE("a resistance at the tube keeps the heat between water and the tube's face") {
  for (const Section& s : sections()) {
    const double tube_mK_per_W = 0.13;
    const SectionResponse outer = respond(s, 9.0), water = in_series(outer, tube_mK_per_W);
    const Heat from_water = heat(water, 40.0, 15.0, 2.0);
    const double face_degC = 40.0 - tube_mK_per_W * (from_water.up_W_per_m + from_water.down_W_per_m);
    const Heat from_face = heat(outer, face_degC, 15.0, 2.0);
    CHECK(from_face.up_W_per_m == Approx(from_water.up_W_per_m).epsilon(rounding));
    CHECK(from_face.down_W_per_m == Approx(from_water.down_W_per_m).epsilon(rounding));
    CHECK(temperature_degC(outer.floor_midway, face_degC, 15.0, 2.0) ==
          Approx(temperature_degC(water.floor_midway, 40.0, 15.0, 2.0)).epsilon(rounding));
  }
}

TEST_CASE("a slab turned over changes room and below") {
  Section up = shop_slab();
  up.cover_above_m = 0.05;
  up.cover_below_m = 0.08;
  up.underside_W_per_m2K = 2.5;
  Section down = up;
  std::swap(down.cover_above_m, down.cover_below_m);
  down.underside_W_per_m2K = 8.0;
  const SectionResponse a = respond(up, 8.0), b = respond(down, 2.5);
  CHECK(a.room_W_per_m_K == Approx(b.below_W_per_m_K).epsilon(rounding));
  CHECK(a.below_W_per_m_K == Approx(b.room_W_per_m_K).epsilon(rounding));
  CHECK(a.through_W_per_m_K == Approx(b.through_W_per_m_K).epsilon(rounding));
  CHECK(a.plane_midway.tube_share == Approx(b.plane_midway.tube_share).epsilon(rounding));
}

TEST_CASE("broken contracts are refused") {
  Section shallow = shop_slab();
  shallow.cover_above_m = 0.005;
  CHECK_THROWS_AS(respond(shallow, 8.0), std::logic_error);
  CHECK_THROWS_AS(respond(shop_slab(), 0.0), std::logic_error);
  CHECK_THROWS_AS(respond(shop_slab(), std::numeric_limits<double>::quiet_NaN()), std::logic_error);
  CHECK_THROWS_AS(in_series(respond(shop_slab(), 8.0), -0.1), std::logic_error);
}
