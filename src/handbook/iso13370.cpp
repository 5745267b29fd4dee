#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_iso13370.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// How far the edge's insulation reaches along the path of the heat: an upright skirt counts twice.
double reach_m(const Iso13370Edge& edge) {
  switch (edge.lies) {
    case Iso13370Edge::Lies::nowhere: return 0.0;
    case Iso13370Edge::Lies::flat: return edge.width_m;
    case Iso13370Edge::Lies::upright: return 2.0 * edge.width_m;
  }
  return 0.0;
}

/// d' = R' lambda: what the edge's insulation adds over the ground it displaces (D.1, D.2).
double added_m(const Iso13370Edge& edge, double ground_W_per_mK) {
  if (edge.lies == Iso13370Edge::Lies::nowhere) return 0.0;
  return edge.layer_m2K_per_W * ground_W_per_mK - edge.thickness_m;
}

double outside_swing_W_per_K(const Iso13370Floor& f, double equivalent_m) {
  const double shielded = 1.0 - std::exp(-reach_m(f.edge) / f.penetration_m);
  const double bare = std::log(f.penetration_m / equivalent_m + 1.0);
  const double covered = std::log(f.penetration_m / (equivalent_m + added_m(f.edge, f.ground_W_per_mK)) + 1.0);
  return 0.37 * f.perimeter_m * f.ground_W_per_mK * (shielded * covered + (1.0 - shielded) * bare);
}

double wave(int month, int shift) { return std::cos(2.0 * pi * (month - shift) / 12.0); }

}  // namespace

double iso13370_penetration_m(double ground_W_per_mK, double ground_J_per_m3K) {
  expects(ground_W_per_mK > 0.0 && ground_J_per_m3K > 0.0, "ISO 13370: the ground's figures are not positive");
  return std::sqrt(3.15e7 * ground_W_per_mK / (pi * ground_J_per_m3K));
}

double iso13370_edge_W_per_mK(const Iso13370Edge& edge, double equivalent_m, double ground_W_per_mK) {
  const double reach = reach_m(edge);
  return -ground_W_per_mK / pi *
         (std::log(reach / equivalent_m + 1.0) -
          std::log(reach / (equivalent_m + added_m(edge, ground_W_per_mK)) + 1.0));
}

Iso13370Coefficients iso13370_coefficients(const Iso13370Floor& f) {
  expects(f.area_m2 > 0.0 && f.perimeter_m > 0.0, "ISO 13370: the floor has no area or no perimeter");
  expects(f.ground_W_per_mK > 0.0 && f.penetration_m > 0.0, "ISO 13370: the ground's figures are not positive");
  const double ground = f.ground_W_per_mK;
  Iso13370Coefficients c;
  c.dimension_m = 2.0 * f.area_m2 / f.perimeter_m;
  c.equivalent_m = f.wall_m + ground * (f.inside_m2K_per_W + f.floor_m2K_per_W + f.outside_m2K_per_W);
  expects(c.equivalent_m > 0.0, "ISO 13370: neither wall nor layers have a thickness");
  const double d = c.equivalent_m, width = pi * c.dimension_m;

  const double without_edge =
      d < c.dimension_m ? 2.0 * ground / (width + d) * std::log(width / d + 1.0) : ground / (0.457 * c.dimension_m + d);
  c.edge_W_per_mK = iso13370_edge_W_per_mK(f.edge, d, ground);
  c.floor_W_per_m2K = without_edge + 2.0 * c.edge_W_per_mK / c.dimension_m;
  c.steady_W_per_K = f.area_m2 * without_edge + f.perimeter_m * (f.junction_W_per_mK + c.edge_W_per_mK);

  const double depth = 1.0 + f.penetration_m / d;
  c.inside_swing_W_per_K = f.area_m2 * ground / d * std::sqrt(2.0 / (depth * depth + 1.0));
  c.outside_swing_W_per_K = outside_swing_W_per_K(f, d);
  c.effective_m2K_per_W = 1.0 / c.floor_W_per_m2K - f.inside_m2K_per_W;
  c.virtual_m2K_per_W = c.effective_m2K_per_W - f.floor_m2K_per_W - 0.5 / ground;
  return c;
}

Months iso13370_inside_degC(const Iso13370Year& year) {
  Months inside{};
  for (int month = 1; month <= 12; ++month)
    inside[static_cast<std::size_t>(month - 1)] = year.inside_degC - year.inside_swing_K * wave(month, year.coldest);
  return inside;
}

Months iso13370_months_W(const Iso13370Coefficients& c, const Iso13370Year& year) {
  Months heat{};
  for (int month = 1; month <= 12; ++month)
    heat[static_cast<std::size_t>(month - 1)] =
        c.steady_W_per_K * (year.inside_degC - year.outside_degC) -
        c.inside_swing_W_per_K * year.inside_swing_K * wave(month, year.coldest - year.inside_lead) +
        c.outside_swing_W_per_K * year.outside_swing_K * wave(month, year.coldest + year.outside_lag);
  return heat;
}

Months iso13370_virtual_degC(const Iso13370Floor& f, const Iso13370Coefficients& c, const Iso13370Year& year) {
  Months below = iso13370_inside_degC(year);
  const Months heat = iso13370_months_W(c, year);
  for (std::size_t month = 0; month < below.size(); ++month)
    below[month] -= heat[month] / (f.area_m2 * c.floor_W_per_m2K);
  return below;
}

double iso13370_peak_W(const Iso13370Coefficients& c, const Iso13370Year& year) {
  return c.steady_W_per_K * (year.inside_degC - year.outside_degC) + c.outside_swing_W_per_K * year.outside_swing_K;
}

}  // namespace slabwright
