// Which source answers for a mixture, and where it ends.
#include "slabwright/fluid.hpp"

#include <algorithm>
#include <cmath>

#include "fluid/sources.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

bool is_water(const Mixture& mixture) {
  expects(mixture.glycol_volume_share >= 0.0 && mixture.glycol_volume_share <= 1.0, "fluid: a share is 0 to 1");
  expects(mixture.kind != FluidKind::water || mixture.glycol_volume_share == 0.0, "fluid: water holds no glycol");
  return mixture.glycol_volume_share == 0.0;
}

double melinder_share(const Mixture& mixture) { return std::min(glycol_mass_share(mixture), melinder_most_mass_share); }

double nearest(double temperature_degC, const Window& window) {
  expects(std::isfinite(temperature_degC), "fluid: a temperature that is no number");
  return std::clamp(temperature_degC, window.lowest_degC, window.highest_degC);
}

Range strength_range(const Mixture& mixture, Family family) {
  if (is_water(mixture)) return Range::inside;
  if (family == Family::pure) {
    const bool known = glycol_mass_share(mixture) <= melinder_most_mass_share + share_rounding;
    return known ? Range::inside : Range::too_strong;
  }
  const std::span<const AshraeColumn> columns = columns_of(mixture.kind);
  if (mixture.glycol_volume_share < columns.front().volume_share - share_rounding) return Range::too_weak;
  if (mixture.glycol_volume_share > columns.back().volume_share + share_rounding) return Range::too_strong;
  return Range::inside;
}

double AshraeStrength::*const by_volume = &AshraeStrength::volume_percent;
double AshraeStrength::*const by_mass = &AshraeStrength::mass_percent;
double AshraeStrength::*const by_freezing = &AshraeStrength::freezing_degC;

// A straight line between two rows; beyond the last row, its value.
double between(std::span<const AshraeStrength> rows, double percent, double AshraeStrength::*from,
               double AshraeStrength::*to) {
  if (percent >= rows.back().*from) return rows.back().*to;
  std::size_t at = 1;
  while (rows[at].*from < percent) ++at;
  const AshraeStrength& low = rows[at - 1];
  const AshraeStrength& high = rows[at];
  return low.*to + (high.*to - low.*to) * (percent - low.*from) / (high.*from - low.*from);
}

// A share in other terms. Past the last row, straight on to pure glycol, which is 100 % in both.
double share_between(FluidKind kind, double share, double AshraeStrength::*from, double AshraeStrength::*to) {
  const std::span<const AshraeStrength> rows = strengths_of(kind);
  const double percent = 100.0 * share;
  const AshraeStrength& last = rows.back();
  if (percent <= last.*from) return 0.01 * between(rows, percent, from, to);
  return 0.01 * (last.*to + (100.0 - last.*to) * (percent - last.*from) / (100.0 - last.*from));
}

double relative(double pure, double inhibited) { return (pure - inhibited) / inhibited; }

}  // namespace

Window window_of(const Mixture& mixture, Family family) {
  if (is_water(mixture)) return water_window;
  if (family == Family::pure) return {freezing_point_degC(mixture, family), melinder_highest_degC};
  return inhibited_window(mixture.kind, mixture.glycol_volume_share);
}

Range range_of(const Mixture& mixture, double temperature_degC, Family family) {
  expects(std::isfinite(temperature_degC), "fluid: a temperature that is no number");
  const Range strength = strength_range(mixture, family);
  if (strength != Range::inside) return strength;
  const Window window = window_of(mixture, family);
  if (temperature_degC < window.lowest_degC) return Range::too_cold;
  if (temperature_degC > window.highest_degC) return Range::too_hot;
  return Range::inside;
}

FluidProperties properties_of(const Mixture& mixture, double temperature_degC, Family family) {
  const double temperature = nearest(temperature_degC, window_of(mixture, family));
  if (is_water(mixture)) return water_properties(temperature);
  if (family == Family::pure) return melinder_properties(mixture.kind, melinder_share(mixture), temperature);
  return inhibited_properties(mixture.kind, mixture.glycol_volume_share, temperature);
}

Liquid liquid(const Mixture& mixture, double temperature_degC, Family family) {
  const double temperature = nearest(temperature_degC, window_of(mixture, family));
  if (is_water(mixture)) return water_liquid(temperature);
  if (family == Family::inhibited) return inhibited_liquid(mixture.kind, mixture.glycol_volume_share, temperature);
  const FluidProperties pure = melinder_properties(mixture.kind, melinder_share(mixture), temperature);
  return {pure.density_kg_per_m3, pure.viscosity_Pa_s};
}

double freezing_point_degC(const Mixture& mixture, Family family) {
  if (is_water(mixture)) return 0.0;
  if (family == Family::pure) return melinder_freezing_point_degC(mixture.kind, melinder_share(mixture));
  return between(strengths_of(mixture.kind), 100.0 * mixture.glycol_volume_share, by_volume, by_freezing);
}

Range freezing_range_of(const Mixture& mixture, Family family) {
  if (is_water(mixture)) return Range::inside;
  if (family == Family::pure) return strength_range(mixture, family);
  const double strongest = 0.01 * strengths_of(mixture.kind).back().volume_percent;
  return mixture.glycol_volume_share <= strongest + share_rounding ? Range::inside : Range::too_strong;
}

std::optional<double> glycol_that_keeps_share(FluidKind kind, double coldest_degC) {
  constexpr int least_percent = 25, most_percent = 50;
  const FluidKind filled = kind == FluidKind::water ? FluidKind::propylene_glycol : kind;
  for (int percent = least_percent; percent <= most_percent; ++percent)
    if (freezing_point_degC({filled, percent / 100.0}) < coldest_degC) return percent / 100.0;
  return std::nullopt;
}

FamilySpread family_spread(const Mixture& mixture, double temperature_degC) {
  if (is_water(mixture)) return {};
  const Window one = window_of(mixture, Family::inhibited);
  const Window other = window_of(mixture, Family::pure);
  const double temperature = nearest(
      temperature_degC, {std::max(one.lowest_degC, other.lowest_degC), std::min(one.highest_degC, other.highest_degC)});
  const FluidProperties inhibited = properties_of(mixture, temperature, Family::inhibited);
  const FluidProperties pure = properties_of(mixture, temperature, Family::pure);
  return {relative(pure.density_kg_per_m3, inhibited.density_kg_per_m3),
          relative(pure.specific_heat_J_per_kgK, inhibited.specific_heat_J_per_kgK),
          relative(pure.viscosity_Pa_s, inhibited.viscosity_Pa_s),
          relative(pure.conductivity_W_per_mK, inhibited.conductivity_W_per_mK),
          freezing_point_degC(mixture, Family::pure) - freezing_point_degC(mixture, Family::inhibited)};
}

double glycol_mass_share(const Mixture& mixture) {
  if (is_water(mixture)) return 0.0;
  return share_between(mixture.kind, mixture.glycol_volume_share, by_volume, by_mass);
}

Mixture mixture_by_mass(FluidKind kind, double glycol_mass_share) {
  expects(glycol_mass_share >= 0.0 && glycol_mass_share <= 1.0, "fluid: a share is 0 to 1");
  if (glycol_mass_share == 0.0) return {kind, 0.0};
  return {kind, share_between(kind, glycol_mass_share, by_mass, by_volume)};
}

double volume_ratio(const Mixture& mixture, double from_degC, double to_degC, Family family) {
  return liquid(mixture, from_degC, family).density_kg_per_m3 / liquid(mixture, to_degC, family).density_kg_per_m3;
}

}  // namespace slabwright
