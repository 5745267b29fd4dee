// What must hold of ISO 13370 whatever the floor.
#include <algorithm>
#include <numeric>

#include "slabwright/handbook_iso13370.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

Iso13370Floor workshop(double floor_m2K_per_W) {
  Iso13370Floor f;
  f.area_m2 = 216.0;
  f.perimeter_m = 60.0;
  f.floor_m2K_per_W = floor_m2K_per_W;
  return f;
}

}  // namespace

TEST_CASE("a strip of twice the width does what a skirt does") {
  for (const double depth : {0.2, 0.6, 1.5})
    for (const double resistance : {0.9, 1.76, 3.5}) {
      Iso13370Floor flat = workshop(1.0), upright = flat;
      flat.edge = {Iso13370Edge::Lies::flat, 2.0 * depth, resistance, 0.05};
      upright.edge = {Iso13370Edge::Lies::upright, depth, resistance, 0.05};
      const Iso13370Coefficients a = iso13370_coefficients(flat), b = iso13370_coefficients(upright);
      CHECK(a.edge_W_per_mK == Approx(b.edge_W_per_mK).epsilon(1e-14));
      CHECK(a.steady_W_per_K == Approx(b.steady_W_per_K).epsilon(1e-14));
      CHECK(a.outside_swing_W_per_K == Approx(b.outside_swing_W_per_K).epsilon(1e-14));
      CHECK(a.edge_W_per_mK < 0.0);
    }
}

TEST_CASE("steady coefficient is area times U plus the junction") {
  Iso13370Floor f = workshop(1.76);
  f.edge = {Iso13370Edge::Lies::upright, 0.6, 1.76, 0.05};
  f.junction_W_per_mK = 0.08;
  const Iso13370Coefficients c = iso13370_coefficients(f);
  CHECK(c.steady_W_per_K == Approx(f.area_m2 * c.floor_W_per_m2K + f.perimeter_m * 0.08).epsilon(1e-14));
  // The standard reads R_f,eff from U with the film that it began with.
  CHECK(1.0 / (c.effective_m2K_per_W + f.inside_m2K_per_W) == Approx(c.floor_W_per_m2K).epsilon(1e-14));
  CHECK(c.virtual_m2K_per_W + 0.5 / f.ground_W_per_mK + f.floor_m2K_per_W ==
        Approx(c.effective_m2K_per_W).epsilon(1e-14));
}

TEST_CASE("insulation lowers every coefficient") {
  double last_U = 10.0, last_pe = 1e9;
  for (const double resistance : {0.0, 0.5, 1.0, 2.0, 4.0, 8.0}) {
    const Iso13370Coefficients c = iso13370_coefficients(workshop(resistance));
    CHECK(c.floor_W_per_m2K < last_U);
    CHECK(c.outside_swing_W_per_K < last_pe);
    last_U = c.floor_W_per_m2K;
    last_pe = c.outside_swing_W_per_K;
  }
}

TEST_CASE("the two forms of U meet where d_f equals B, within what the standard allows itself") {
  // d_f = B = 7.2 m at R_f = (7.2 - 0.3) / 2 - 0.21
  const double meeting = (7.2 - 0.3) / 2.0 - 0.21;
  const double before = iso13370_coefficients(workshop(meeting - 1e-9)).floor_W_per_m2K;
  const double after = iso13370_coefficients(workshop(meeting + 1e-9)).floor_W_per_m2K;
  CHECK(before == Approx(after).epsilon(0.01));
}

TEST_CASE("a year's flows average to the steady part") {
  const Iso13370Floor f = workshop(1.76);
  const Iso13370Coefficients c = iso13370_coefficients(f);
  Iso13370Year year;
  year.inside_degC = 18.0;
  year.inside_swing_K = 1.0;
  year.outside_degC = 7.0;
  year.outside_swing_K = 12.0;
  const Months heat = iso13370_months_W(c, year);
  CHECK(std::accumulate(heat.begin(), heat.end(), 0.0) / 12.0 == Approx(c.steady_W_per_K * 11.0).epsilon(1e-12));
  // Heat lags the air by a month; with a steady inside the worst month carries the peak.
  year.inside_swing_K = 0.0;
  const Months steady = iso13370_months_W(c, year);
  CHECK(*std::max_element(steady.begin(), steady.end()) == Approx(iso13370_peak_W(c, year)).epsilon(1e-12));
  CHECK(std::max_element(steady.begin(), steady.end()) - steady.begin() == 1);
  year.coldest = 7;  // southern hemisphere
  const Months south = iso13370_months_W(c, year);
  CHECK(std::max_element(south.begin(), south.end()) - south.begin() == 7);
}

TEST_CASE("floors that cannot be are a caller's fault") {
  Iso13370Floor f = workshop(1.0);
  f.perimeter_m = 0.0;
  CHECK_THROWS_AS(iso13370_coefficients(f), std::logic_error);
  f = workshop(0.0);
  f.wall_m = f.inside_m2K_per_W = f.outside_m2K_per_W = 0.0;
  CHECK_THROWS_AS(iso13370_coefficients(f), std::logic_error);
  CHECK_THROWS_AS(iso13370_penetration_m(0.0, 2e6), std::logic_error);
}
