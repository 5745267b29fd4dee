// Winters with a cold snap each: other days from the same normals, or a measured year with another snap laid in.
#include <random>

#include "climate/spell.hpp"
#include "slabwright/climate_winter.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// A day from 10 December to 20 February on which the snap may begin, so that it and its blending lie within the year
/// and it is over by then.
int snap_day(std::mt19937_64& engine, const SnapOptions& snap, int year_days) {
  const int december = year_days - 22, new_year = year_days - snap.days - snap.blend_days;
  const int february_20 = 51, last = february_20 - snap.days;
  const int before = new_year - december + 1, after = last - snap.blend_days + 1;
  const auto drawn = static_cast<int>(engine() % static_cast<std::uint64_t>(before + after));
  return drawn < before ? december + drawn : snap.blend_days + drawn - before;
}

ColdSpell drawn_spell(std::mt19937_64& engine, const SnapOptions& snap, double lowest_degC, int year_days) {
  expects(snap.days >= 1 && snap.days <= 10 && snap.blend_days >= 1 && snap.blend_days <= 3, "a snap of days");
  const ColdSpell spell{snap_day(engine, snap, year_days), snap.days, lowest_degC, snap.swing_K, snap.blend_days};
  check_spell(spell, year_days);
  return spell;
}

Checked<WeatherYear> with_room(MadeUpWinter of) {
  constexpr int most_cuts = 10;
  constexpr double cut_share = 0.9;
  Checked<WeatherYear> year = made_up_winter(of);
  for (int cut = 0; !year && cut < most_cuts; ++cut) {
    for (double& deviation_K : of.dry_bulb.normals.deviation_K) deviation_K *= cut_share;
    year = made_up_winter(of);
  }
  return year;
}

/// Air, dew point and infrared of one hour go down together.
void lower(WeatherYear& year, std::size_t hour, double to_degC) {
  double& air_degC = year.dry_bulb_degC[hour];
  if (to_degC >= air_degC) return;
  if (!year.dew_point_degC.empty()) year.dew_point_degC[hour] += to_degC - air_degC;
  const double share = (to_degC + zero_degC_K) / (air_degC + zero_degC_K), square = share * share;
  if (!year.sky_infrared_W_per_m2.empty()) year.sky_infrared_W_per_m2[hour] *= square * square;
  air_degC = to_degC;
}

}  // namespace

Checked<std::vector<StressWinter>> stress_winters(const MadeUpWinter& of, const std::vector<double>& lowest_degC,
                                                  const SnapOptions& snap) {
  std::mt19937_64 engine(snap.seed);
  std::vector<StressWinter> out;
  for (const double lowest : lowest_degC) {
    MadeUpWinter one = of;
    one.dry_bulb.spell = drawn_spell(engine, snap, lowest, 365);
    one.dry_bulb.seed = engine();
    auto year = with_room(one);
    if (!year) return {std::nullopt, std::move(year.said)};
    out.push_back({std::move(*year.value), *one.dry_bulb.spell});
  }
  return {std::move(out), {}};
}

std::vector<StressWinter> stress_winters(const WeatherYear& year, const std::vector<double>& lowest_degC,
                                         const SnapOptions& snap) {
  const int year_days = is_leap_year(year.dry_bulb_degC.size()) ? 366 : 365;
  const std::array<double, 24> wave = day_wave();
  std::mt19937_64 engine(snap.seed);
  std::vector<StressWinter> out;
  for (const double lowest : lowest_degC) {
    StressWinter winter{year, drawn_spell(engine, snap, lowest, year_days)};
    for (std::size_t hour = 0; hour < year.dry_bulb_degC.size(); ++hour) {
      const Taken taken = spell_at(winter.spell, hour, wave);
      const double own = year.dry_bulb_degC[hour];
      if (taken.share > 0.0) lower(winter.year, hour, own + taken.share * (taken.degC - own));
    }
    out.push_back(std::move(winter));
  }
  return out;
}

}  // namespace slabwright
