// A cold spell as it takes over from a year's own weather.
#pragma once
#include <array>
#include <cstddef>

#include "slabwright/climate_synthetic.hpp"

namespace slabwright {

/// How far the spell has taken over, 0 to 1, and its own temperature.
struct Taken {
  double share = 0.0;
  double degC = 0.0;
};
/// `hour` of the year; `wave` is day_wave.
Taken spell_at(const ColdSpell& spell, std::size_t hour, const std::array<double, 24>& wave);

/// Throws std::logic_error where the spell does not lie within a year of so many days, or is no spell.
void check_spell(const ColdSpell& spell, int year_days);

}  // namespace slabwright
