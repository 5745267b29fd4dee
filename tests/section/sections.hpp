// Sections that the tests of this folder share.
#pragma once
#include <rapidcheck.h>

#include <vector>

#include "slabwright/section.hpp"

namespace slabwright::test {

/// A 5 in slab on foam, 1/2 in tube every 12 in at mid-depth.
inline Section shop_slab() {
  Section s;
  s.spacing_m = 0.3048;
  s.outside_diameter_m = 0.015875;
  s.cover_above_m = s.cover_below_m = 0.0635;
  s.concrete_W_per_mK = 1.75;
  s.underside_W_per_m2K = 0.4;
  s.below_degC = 3.0;
  s.wall_mK_per_W = 0.115;
  return s;
}

/// Thin and thick, bare and covered, tube near the top and near the foam.
inline std::vector<Section> sections() {
  Section screed;
  screed.spacing_m = 0.15;
  screed.outside_diameter_m = 0.016;
  screed.cover_above_m = 0.053;
  screed.cover_below_m = 0.010;
  screed.concrete_W_per_mK = 1.2;
  screed.covering_m2K_per_W = 0.10;
  screed.underside_W_per_m2K = 0.7;
  screed.below_degC = 10.0;
  screed.wall_mK_per_W = 0.131;
  Section high = shop_slab();
  high.cover_above_m = 0.03;
  high.cover_below_m = 0.17;
  high.underside_W_per_m2K = 3.0;
  high.below_degC = -4.0;
  Section adiabatic = shop_slab();
  adiabatic.underside_W_per_m2K = 0.0;
  return {shop_slab(), screed, high, adiabatic};
}

/// Any section that a workshop might have. Members are drawn as whole parts of a range.
inline Section any_section() {
  const auto between = [](double least, double most) {
    return least + (most - least) * static_cast<double>(*rc::gen::inRange(0, 1001)) / 1000.0;
  };
  Section s;
  s.outside_diameter_m = between(0.012, 0.029);
  s.spacing_m = between(0.1, 0.6);
  s.cover_above_m = s.outside_diameter_m * 0.5 + between(0.005, 0.2);
  s.cover_below_m = s.outside_diameter_m * 0.5 + between(0.0, 0.2);
  s.concrete_W_per_mK = between(0.8, 2.5);
  s.covering_m2K_per_W = between(0.0, 0.2);
  s.underside_W_per_m2K = between(0.0, 1.5);  // bare ground gives about 1
  s.below_degC = between(-10.0, 20.0);
  s.wall_mK_per_W = between(0.0, 0.2);
  return s;
}

}  // namespace slabwright::test
