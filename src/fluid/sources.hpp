// What each source knows, in its own terms; fluid.cpp chooses among them.
#pragma once
#include <span>

#include "slabwright/fluid.hpp"

namespace slabwright {

/// A share that was computed may miss its column by a few roundings.
inline constexpr double share_rounding = 1e-12;

// IAPWS SR6-08(2011), from 253.15 to 383.15 K.
inline constexpr Window water_window{-20.0, 110.0};
FluidProperties water_properties(double temperature_degC);
Liquid water_liquid(double temperature_degC);

// Melinder 2010, from the freezing point to 100 degC, glycol up to 60 % by mass.
inline constexpr double melinder_highest_degC = 100.0;
inline constexpr double melinder_most_mass_share = 0.60;
FluidProperties melinder_properties(FluidKind kind, double mass_share, double temperature_degC);
double melinder_freezing_point_degC(FluidKind kind, double mass_share);

// ASHRAE Fundamentals 2001, as printed: a row every 5 K from the column's first temperature to 100 degC.
struct AshraeRow {
  double density_kg_per_m3;
  double specific_heat_J_per_kgK;
  double viscosity_milliPa_s;
  double conductivity_W_per_mK;
};
struct AshraeColumn {
  double volume_share;
  double first_degC;
  std::span<const AshraeRow> rows;
};
inline constexpr double ashrae_step_K = 5.0;
inline constexpr double ashrae_highest_degC = 100.0;
std::span<const AshraeColumn> propylene_columns();
std::span<const AshraeColumn> ethylene_columns();

// The same source's freezing points, against the share by volume and by mass.
struct AshraeStrength {
  double volume_percent;
  double mass_percent;
  double freezing_degC;
};
std::span<const AshraeStrength> propylene_strengths();
std::span<const AshraeStrength> ethylene_strengths();

// Readings of those tables. Shares and temperatures beyond them are taken to their ends.
Window inhibited_window(FluidKind kind, double volume_share);
FluidProperties inhibited_properties(FluidKind kind, double volume_share, double temperature_degC);
Liquid inhibited_liquid(FluidKind kind, double volume_share, double temperature_degC);
std::span<const AshraeColumn> columns_of(FluidKind kind);
std::span<const AshraeStrength> strengths_of(FluidKind kind);

}  // namespace slabwright
