// ISO 13370:2017: heat from a slab on the ground, year and months. It says nothing about a cold snap of two days.
#pragma once
#include <array>

namespace slabwright {

/// Insulation along the slab's edge, flat (D.5) or upright (D.6).
struct Iso13370Edge {
  enum class Lies { nowhere, flat, upright };
  Lies lies = Lies::nowhere;
  double width_m = 0.0;          ///< D: width of the strip or depth of the skirt
  double layer_m2K_per_W = 0.0;  ///< R_n
  double thickness_m = 0.0;      ///< d_n
};

/// A slab floor as the standard describes it.
struct Iso13370Floor {
  double area_m2 = 0.0;
  double perimeter_m = 0.0;         ///< P, exposed
  double wall_m = 0.3;              ///< d_w,e, whole thickness of the outer wall
  double floor_m2K_per_W = 0.0;     ///< R_f, layers of the floor
  double inside_m2K_per_W = 0.17;   ///< R_si
  double outside_m2K_per_W = 0.04;  ///< R_se
  double ground_W_per_mK = 2.0;
  double penetration_m = 3.2;      ///< delta, see iso13370_penetration_m
  double junction_W_per_mK = 0.0;  ///< psi_wf
  Iso13370Edge edge;
};

/// delta = sqrt(3.15e7 k / (pi rho c)), eq. H.1; the standard's own table rounds it.
double iso13370_penetration_m(double ground_W_per_mK, double ground_J_per_m3K);

struct Iso13370Coefficients {
  double dimension_m = 0.0;            ///< B = 2 A / P, F.(2)
  double equivalent_m = 0.0;           ///< d_f, F.(3)
  double floor_W_per_m2K = 0.0;        ///< U; F.(4), or F.(5) when well insulated; with edge insulation D.3
  double edge_W_per_mK = 0.0;          ///< psi_g,e; negative, 0 without edge insulation
  double steady_W_per_K = 0.0;         ///< H_g, F.(1), D.4
  double inside_swing_W_per_K = 0.0;   ///< H_pi, annex H
  double outside_swing_W_per_K = 0.0;  ///< H_pe, annex H
  double effective_m2K_per_W = 0.0;    ///< R_f,eff = 1/U - R_si, F.(20)
  double virtual_m2K_per_W = 0.0;      ///< R_vi, virtual layer under 0.5 m of ground, F.1
};
/// Area, perimeter, conductivity and penetration depth must be positive.
Iso13370Coefficients iso13370_coefficients(const Iso13370Floor&);

/// psi_g,e for this edge, D.5 and D.6; `equivalent_m` is d_f.
double iso13370_edge_W_per_mK(const Iso13370Edge&, double equivalent_m, double ground_W_per_mK);

/// A year inside and outside: mean and half swing about it, coldest in month `coldest`.
struct Iso13370Year {
  double inside_degC = 20.0;
  double inside_swing_K = 0.0;
  double outside_degC = 0.0;
  double outside_swing_K = 0.0;
  int coldest = 1;      ///< tau; 1 = January, northern hemisphere
  int inside_lead = 0;  ///< alpha, months; 0 for a slab on the ground
  int outside_lag = 1;  ///< beta, months; 1 for a slab on the ground
};
using Months = std::array<double, 12>;

/// Room temperature by month, degC.
Months iso13370_inside_degC(const Iso13370Year&);
/// Heat to the ground by month, W (annex C).
Months iso13370_months_W(const Iso13370Coefficients&, const Iso13370Year&);
/// Temperature of the virtual layer by month, degC: inside less flow / (A U).
Months iso13370_virtual_degC(const Iso13370Floor&, const Iso13370Coefficients&, const Iso13370Year&);
/// Heat in the worst month with a steady inside: H_g (inside - outside) + H_pe half swing.
/// For tubes in the slab (practice, not text of the standard): give the tube plane's mean temperature as the inside,
/// 0 as `inside_m2K_per_W` and only the layers below the tubes as `floor_m2K_per_W`.
double iso13370_peak_W(const Iso13370Coefficients&, const Iso13370Year&);

}  // namespace slabwright
