#include <algorithm>
#include <cmath>

#include "en1264_tables.hpp"
#include "interpolate.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/handbook_en1264.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

namespace tables = handbook::en1264;
using handbook::interpolate;

constexpr double widest_m = 0.375;         ///< last row of the tables
constexpr double film_W_per_m2K = 10.8;    ///< alpha
constexpr double plain_B_W_per_m2K = 6.7;  ///< B0, for the wall below
constexpr double plain_wall_m = 0.002;
constexpr double plain_wall_W_per_mK = 0.35;
constexpr double plain_cover_m = 0.045;  ///< s_u0, over lambda_u0 = 1 W/mK
constexpr double thick_m = 0.065;        ///< no cover counts as thick below it

double capped_spacing_m(const En1264Floor& f) { return std::min(f.spacing_m, widest_m); }

/// s_u*, the cover at which the power function stops.
double thick_from_m(const En1264Floor& f) {
  const double spacing = capped_spacing_m(f);
  return spacing <= 0.200 ? 0.100 : 0.5 * spacing;
}

bool is_thick(const En1264Floor& f) { return f.cover_m > thick_from_m(f) && f.cover_m > thick_m; }

/// Resistance of a tube wall per metre of tube.
double wall_mK_per_W(double outside_m, double wall_m, double wall_W_per_mK) {
  return std::log(outside_m / (outside_m - 2.0 * wall_m)) / (2.0 * pi * wall_W_per_mK);
}

double wall_corrected_B(const En1264Floor& f, double product) {
  const double extra = wall_mK_per_W(f.outside_m, f.wall_m, f.wall_W_per_mK) -
                       wall_mK_per_W(f.outside_m, plain_wall_m, plain_wall_W_per_mK);
  return 1.0 / (1.0 / plain_B_W_per_m2K + 1.1 * product * capped_spacing_m(f) * extra);
}

/// K_H of the power function alone, at the capped spacing.
double power_function(const En1264Floor& f) {
  const double product = en1264_factors(f).product_ratio;
  return wall_corrected_B(f, product) * product;
}

/// K_H at the capped spacing.
double capped_coefficient(const En1264Floor& f) {
  if (!is_thick(f)) return power_function(f);
  En1264Floor at_limit = f;
  at_limit.cover_m = thick_from_m(f);
  return 1.0 / (1.0 / power_function(at_limit) + (f.cover_m - at_limit.cover_m) / f.screed_W_per_mK);
}

void expects_floor(const En1264Floor& f) {
  expects(f.spacing_m > 0.0 && f.cover_m > 0.0 && f.screed_W_per_mK > 0.0, "EN 1264: a length is not positive");
  expects(f.wall_m > 0.0 && f.wall_W_per_mK > 0.0 && f.outside_m > 2.0 * std::max(f.wall_m, plain_wall_m),
          "EN 1264: the tube has no bore");
  expects(f.covering_m2K_per_W >= 0.0, "EN 1264: a covering has a negative resistance");
}

}  // namespace

MadeFor made_for(const En1264Floor& f) {
  MadeFor answer;
  const auto require = [&](bool inside, std::string_view why) {
    if (!inside) answer.why_not.push_back(why);
  };
  require(f.tube_on_insulation, "the tubes do not lie on insulation");
  require(f.screed_W_per_mK >= 0.8 && f.screed_W_per_mK <= 1.3, "the concrete conducts other than 0.8 to 1.3 W/mK");
  require(f.cover_m >= 0.010 && f.cover_m <= thick_m, "the cover over the tube is not 10 to 65 mm");
  require(f.spacing_m >= 0.050 && f.spacing_m <= widest_m, "the spacing is not 50 to 375 mm");
  require(f.outside_m >= 0.008 && f.outside_m <= 0.030, "the tube is not 8 to 30 mm outside");
  require(f.covering_m2K_per_W <= 0.15, "the covering resists more than 0.15 m2K/W");
  require(f.cover_m >= 0.01 * f.screed_W_per_mK, "the cover resists less than 0.01 m2K/W");
  return answer;
}

En1264Factors en1264_factors(const En1264Floor& f) {
  expects_floor(f);
  const double spacing = capped_spacing_m(f);
  En1264Factors x;
  // The floor's own cover enters through a_U alone; a_B compares conductivities at the cover s_u0.
  x.covering_ratio = (1.0 / film_W_per_m2K + plain_cover_m) /
                     (1.0 / film_W_per_m2K + plain_cover_m / f.screed_W_per_mK + f.covering_m2K_per_W);
  x.spacing_ratio = interpolate(tables::covering_m2K_per_W, tables::a_W, f.covering_m2K_per_W);
  x.cover_ratio =
      interpolate(tables::spacing_m, tables::covering_m2K_per_W, tables::a_U, spacing, f.covering_m2K_per_W);
  x.outside_ratio =
      interpolate(tables::spacing_m, tables::covering_m2K_per_W, tables::a_D, spacing, f.covering_m2K_per_W);
  x.spacing_exponent = 1.0 - spacing / 0.075;
  x.cover_exponent = 100.0 * (0.045 - f.cover_m);
  x.outside_exponent = 250.0 * (f.outside_m - 0.020);
  x.product_ratio = x.covering_ratio * std::pow(x.spacing_ratio, x.spacing_exponent) *
                    std::pow(x.cover_ratio, x.cover_exponent) * std::pow(x.outside_ratio, x.outside_exponent);
  return x;
}

double en1264_wall_coefficient_W_per_m2K(const En1264Floor& f) {
  return wall_corrected_B(f, en1264_factors(f).product_ratio);
}

double en1264_coefficient_W_per_m2K(const En1264Floor& f) {
  return capped_coefficient(f) * capped_spacing_m(f) / f.spacing_m;
}

En1264Limit en1264_limit(const En1264Floor& f, double surface_rise_K) {
  expects_floor(f);
  expects(surface_rise_K > 0.0, "EN 1264: the floor's limit is not above the room");
  const double spacing = capped_spacing_m(f);
  const double cover_m2K_per_W = f.cover_m / f.screed_W_per_mK;
  const double phi = std::pow(surface_rise_K / 9.0, 1.1);

  En1264Limit limit;
  if (cover_m2K_per_W <= tables::cover_m2K_per_W.back()) {
    limit.base_W_per_m2 =
        interpolate(tables::spacing_m, tables::cover_m2K_per_W, tables::B_G, spacing, cover_m2K_per_W);
    limit.exponent =
        interpolate(tables::exponent_spacing_m, tables::cover_m2K_per_W, tables::n_G, spacing, cover_m2K_per_W);
  } else {
    limit.base_W_per_m2 = interpolate(tables::thick_ratio, tables::thick_B_G, f.cover_m / spacing);
    limit.exponent = interpolate(tables::thick_ratio, tables::thick_n_G, f.cover_m / spacing);
  }
  limit.excess_K = phi * std::pow(limit.base_W_per_m2 / capped_coefficient(f), 1.0 / (1.0 - limit.exponent));
  limit.heat_W_per_m2 = phi * limit.base_W_per_m2 * std::pow(limit.excess_K / phi, limit.exponent);
  if (f.spacing_m <= widest_m) return limit;

  // Wider rows: the limit of 0.375 m thinned out, less so where the cover evens the floor (A.22 to A.24).
  const double thinned_W_per_m2 = limit.heat_W_per_m2 * widest_m / f.spacing_m;
  const double flat = f.cover_m / f.spacing_m - 0.173;
  double f_G = 1.0;
  if (flat > 0.0) {
    const double most_W_per_m2 = en1264_surface_heat_W_per_m2(surface_rise_K);
    f_G = (most_W_per_m2 - (most_W_per_m2 - thinned_W_per_m2) * std::exp(-20.0 * flat * flat)) / thinned_W_per_m2;
  }
  limit.heat_W_per_m2 = thinned_W_per_m2 * f_G;
  limit.excess_K *= f_G;
  return limit;
}

double en1264_above_m2K_per_W(const En1264Floor& f) {
  expects_floor(f);
  return 1.0 / film_W_per_m2K + f.covering_m2K_per_W + f.cover_m / f.screed_W_per_mK;
}

}  // namespace slabwright
