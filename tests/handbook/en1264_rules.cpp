// The rules around the power function: what it was made for, thick covers, wide spacings, limits, water.
#include <cmath>
#include <limits>

#include "slabwright/handbook_en1264.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

En1264Floor screed() {
  En1264Floor f;
  f.spacing_m = 0.15;
  f.outside_m = 0.016;
  f.cover_m = 0.045;
  f.screed_W_per_mK = 1.2;
  return f;
}

/// No floor gives more than one that is hottest everywhere, yet the printed curves do where coverings resist most.
/// The header says by how much; a scan of the standard's whole range finds 8.4 %.
constexpr double printed_curves_pass = 0.085;

std::size_t complaints(void (*change)(En1264Floor&)) {
  En1264Floor f = screed();
  change(f);
  return made_for(f).why_not.size();
}

}  // namespace

TEST_CASE("the standard says what it was made for") {
  CHECK(made_for(screed()).holds());
  CHECK(complaints([](En1264Floor& f) { f.tube_on_insulation = false; }) == 1);
  CHECK(complaints([](En1264Floor& f) { f.screed_W_per_mK = 1.75; }) == 1);
  CHECK(complaints([](En1264Floor& f) { f.cover_m = 0.066; }) == 1);
  CHECK(complaints([](En1264Floor& f) { f.cover_m = 0.009; }) == 2);  // also thinner than 0.01 m2K/W
  CHECK(complaints([](En1264Floor& f) { f.spacing_m = 0.45; }) == 1);
  CHECK(complaints([](En1264Floor& f) { f.spacing_m = 0.04; }) == 1);
  CHECK(complaints([](En1264Floor& f) { f.outside_m = 0.032; }) == 1);
  CHECK(complaints([](En1264Floor& f) { f.covering_m2K_per_W = 0.2; }) == 1);
  En1264Floor structural = screed();
  structural.tube_on_insulation = false;
  structural.screed_W_per_mK = 1.75;
  structural.cover_m = 0.068;
  CHECK(made_for(structural).why_not.size() == 3);
}

TEST_CASE("the rules for thick covers and wide spacings take over without a step") {
  // At the cover where the thick rule begins, both give the same.
  En1264Floor f = screed();
  f.cover_m = 0.100;
  const double at = en1264_coefficient_W_per_m2K(f);
  f.cover_m = 0.100 + 1e-9;
  CHECK(en1264_coefficient_W_per_m2K(f) == Approx(at).epsilon(1e-7));
  f = screed();
  f.spacing_m = 0.375;
  const double widest = en1264_coefficient_W_per_m2K(f);
  f.spacing_m = 0.750;
  CHECK(en1264_coefficient_W_per_m2K(f) == Approx(0.5 * widest).epsilon(1e-12));
}

TEST_CASE("heat falls with spacing, covering and cover") {
  const double plain = en1264_coefficient_W_per_m2K(screed());
  for (void (*worse)(En1264Floor&) :
       {+[](En1264Floor& f) { f.spacing_m = 0.16; }, +[](En1264Floor& f) { f.covering_m2K_per_W = 0.01; },
        +[](En1264Floor& f) { f.cover_m = 0.050; }, +[](En1264Floor& f) { f.screed_W_per_mK = 1.1; },
        +[](En1264Floor& f) { f.wall_W_per_mK = 0.22; }, +[](En1264Floor& f) { f.outside_m = 0.014; }}) {
    En1264Floor f = screed();
    worse(f);
    CHECK(en1264_coefficient_W_per_m2K(f) < plain);
  }
  CHECK(en1264_wall_coefficient_W_per_m2K(screed()) == Approx(6.7).epsilon(1e-14));
}

TEST_CASE("the characteristic meets the limit curve where the limit says") {
  for (const double spacing : {0.05, 0.10, 0.15, 0.24, 0.30, 0.35, 0.375, 0.45, 0.60})
    for (const double cover : {0.020, 0.045, 0.065, 0.105, 0.150})
      for (const double covering : {0.0, 0.07, 0.15})
        for (const double rise : {9.0, 15.0}) {
          En1264Floor f = screed();
          f.spacing_m = spacing;
          f.cover_m = cover;
          f.covering_m2K_per_W = covering;
          const En1264Limit limit = en1264_limit(f, rise);
          CAPTURE(spacing, cover, covering, rise);
          CHECK(en1264_coefficient_W_per_m2K(f) * limit.excess_K == Approx(limit.heat_W_per_m2).epsilon(1e-12));
          CHECK(limit.heat_W_per_m2 <= en1264_surface_heat_W_per_m2(rise) * (1.0 + printed_curves_pass));
        }
}

TEST_CASE("log mean, its inverse and its limits") {
  for (const double mean : {2.0, 10.0, 30.0})
    for (const double spread : {0.0, 1e-9, 0.5, 5.0, 40.0}) {
      const double supply = supply_excess_K(mean, spread);
      CAPTURE(mean, spread);
      if (supply - spread > 0.01)
        CHECK(log_mean_excess_K({supply, supply - spread}).value() == Approx(mean).epsilon(1e-9));
    }
  CHECK(supply_excess_K(15.0, 5.0) == Approx(supply_excess_series_K(15.0, 5.0)).epsilon(1e-4));
  CHECK_FALSE(log_mean_excess_K({20.0, 0.0}));
  CHECK_FALSE(log_mean_excess_K({10.0, 20.0}));
  CHECK_FALSE(log_mean_excess_K({std::numeric_limits<double>::quiet_NaN(), 1.0}));
  CHECK(std::isfinite(supply_excess_K(1e-3, 10.0)));
}

TEST_CASE("spread of a second room") {
  for (const double mean : {5.0, 10.0, 16.0})
    for (const double spread : {0.1, 3.0, 12.0, 60.0}) {
      const double supply = supply_excess_K(mean, spread);
      CAPTURE(mean, spread);
      CHECK(second_room_spread_exact_K(supply, mean).value() == Approx(spread).epsilon(1e-9));
    }
  // The square root solves the series, not the log mean.
  CHECK(second_room_spread_K(supply_excess_series_K(10.0, 7.0), 10.0).value() == Approx(7.0).epsilon(1e-12));
  CHECK(second_room_spread_K(10.0, 10.0).value() == 0.0);
  CHECK(second_room_spread_exact_K(10.0, 10.0).value() == 0.0);
  CHECK_FALSE(second_room_spread_K(9.0, 10.0));
  CHECK_FALSE(second_room_spread_exact_K(9.0, 10.0));
  CHECK_FALSE(second_room_spread_K(9.0, 0.0));
}

TEST_CASE("impossible floors are a caller's fault") {
  En1264Floor f = screed();
  f.wall_m = 0.009;
  CHECK_THROWS_AS(en1264_coefficient_W_per_m2K(f), std::logic_error);
  f = screed();
  f.screed_W_per_mK = 0.0;
  CHECK_THROWS_AS(en1264_limit(f, 9.0), std::logic_error);
  CHECK_THROWS_AS(en1264_surface_heat_W_per_m2(-1.0), std::logic_error);
  CHECK(en1264_surface_rise_K(en1264_surface_heat_W_per_m2(6.3)) == Approx(6.3).epsilon(1e-12));
}
