// Own weather of a made-up year: a line through the months, a wave each day, and days that remember the day before.
// Into it goes the spell; then the line is chosen so that every month's mean is what it should be.
#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "climate/spell.hpp"
#include "slabwright/climate.hpp"
#include "slabwright/climate_synthetic.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

constexpr std::size_t days = 365, hours = days * 24, months = 12;

/// Evenly between 0 and 1 in steps of 2^-53.
double even(std::mt19937_64& engine) { return static_cast<double>(engine() >> 11) * 0x1p-53; }

/// Twelve even numbers summed: mean 0, spread 1, never beyond 6, and no logarithm that differs between machines.
double bell(std::mt19937_64& engine) {
  double sum = -6.0;
  for (int n = 0; n < 12; ++n) sum += even(engine);
  return sum;
}

/// Noon values with memory `phi` joined by straight lines: a day's mean is (1, 6, 1) / 8 of three noons. These are its
/// variance, and its correlation with the next day.
double variance_of_days(double phi) { return (38.0 + 24.0 * phi + 2.0 * phi * phi) / 64.0; }
double correlation_of_days(double phi) {
  const double next = 38.0 * phi + 12.0 * (1.0 + phi * phi) + phi * (1.0 + phi * phi);
  return next / 64.0 / variance_of_days(phi);
}

/// The memory of noons that gives day means this persistence.
double memory_for(double persistence) {
  double low = 0.0, high = 1.0;
  for (int halving = 0; halving < 53; ++halving) {
    const double middle = (low + high) / 2.0;
    (correlation_of_days(middle) < persistence ? low : high) = middle;
  }
  return (low + high) / 2.0;
}

/// Between which month centres a time lies, and how far on.
struct Between {
  std::size_t low = 0, high = 0;
  double share = 0.0;
  double of(const Monthly& values) const { return values[low] * (1.0 - share) + values[high] * share; }
};

struct Month {
  double first_day = 0.0, length = 0.0;
  double centre() const { return first_day + length / 2.0; }
};

std::array<Month, months> calendar() {
  std::array<Month, months> out{};
  double first = 0.0;
  for (std::size_t month = 0; month < months; ++month) {
    out[month] = {first, static_cast<double>(days_of_month(static_cast<int>(month) + 1, false))};
    first += out[month].length;
  }
  return out;
}

Between months_around(const std::array<Month, months>& year, double day) {
  std::size_t low = months - 1;
  for (std::size_t month = 0; month < months && year[month].centre() <= day; ++month) low = month;
  const std::size_t high = (low + 1) % months;
  const double from = year[low].centre(), span = year[high].centre() - from;
  const double length = static_cast<double>(days), past = day - from;
  return {low, high, (past < 0.0 ? past + length : past) / (span < 0.0 ? span + length : span)};
}

/// All that stays the same while the line through the months is sought.
struct Made {
  std::array<Month, months> year = calendar();
  std::array<double, 24> wave = day_wave();
  std::vector<Between> between;
  std::vector<Taken> spell;
  std::vector<double> noon_K;  ///< of the day before the year, its 365 days and the day behind it
};

Made made_of(const SyntheticYear& of) {
  Made made;
  for (std::size_t hour = 0; hour < hours; ++hour) {
    made.between.push_back(months_around(made.year, (static_cast<double>(hour) + 0.5) / 24.0));
    made.spell.push_back(of.spell ? spell_at(*of.spell, hour, made.wave) : Taken{});
  }
  std::mt19937_64 engine(of.seed);
  const double memory = memory_for(of.persistence_share), fresh = std::sqrt(1.0 - memory * memory);
  const double scale = 1.0 / std::sqrt(variance_of_days(memory));
  double state = bell(engine);
  for (std::size_t day = 0; day < days + 2; ++day) {
    const std::size_t noon = 24 * std::clamp<std::size_t>(day, 1, days) - 12;
    made.noon_K.push_back(state * scale * made.between[noon].of(of.normals.deviation_K));
    state = memory * state + fresh * bell(engine);
  }
  return made;
}

/// Day to day and within the day, without the line through the months.
double own_K(const Made& made, const Monthly& swing_K, std::size_t hour) {
  const double noons = (static_cast<double>(hour) + 0.5) / 24.0 + 0.5;
  const auto before = static_cast<std::size_t>(noons);
  const double share = noons - static_cast<double>(before);
  const double slow = made.noon_K[before] * (1.0 - share) + made.noon_K[before + 1] * share;
  return slow + made.between[hour].of(swing_K) * made.wave[hour % 24];
}

using Rows = std::array<std::array<double, months + 1>, months>;

/// Gauss without exchange of rows. In every hour of a month its own centre weighs more than its neighbours' together,
/// so the diagonal outweighs the rest of the row, whatever hours a spell takes away.
Monthly solved(Rows rows) {
  for (std::size_t pivot = 0; pivot < months; ++pivot) {
    for (std::size_t row = pivot + 1; row < months; ++row) {
      const double factor = rows[row][pivot] / rows[pivot][pivot];
      for (std::size_t column = pivot; column <= months; ++column) rows[row][column] -= factor * rows[pivot][column];
    }
  }
  Monthly out{};
  for (std::size_t row = months; row-- > 0;) {
    double rest = rows[row][months];
    for (std::size_t column = row + 1; column < months; ++column) rest -= rows[row][column] * out[column];
    out[row] = rest / rows[row][row];
  }
  return out;
}

/// Temperatures of the month centres that give each month its mean.
Monthly centres_degC(const Made& made, const MonthlyNormals& normals) {
  Rows rows{};
  for (std::size_t month = 0; month < months; ++month) {
    auto& row = rows[month];
    const auto first = static_cast<std::size_t>(made.year[month].first_day) * 24;
    const auto count = static_cast<std::size_t>(made.year[month].length) * 24;
    row[months] = normals.mean_degC[month] * static_cast<double>(count);
    for (std::size_t hour = first; hour < first + count; ++hour) {
      const Taken& spell = made.spell[hour];
      const Between& between = made.between[hour];
      const double left = 1.0 - spell.share;
      row[between.low] += left * (1.0 - between.share);
      row[between.high] += left * between.share;
      row[months] -= left * own_K(made, normals.swing_K, hour) + spell.share * spell.degC;
    }
  }
  return solved(rows);
}

std::vector<double> hours_degC(const Made& made, const MonthlyNormals& normals) {
  const Monthly centres = centres_degC(made, normals);
  std::vector<double> out;
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const Taken& spell = made.spell[hour];
    const double own = made.between[hour].of(centres) + own_K(made, normals.swing_K, hour);
    out.push_back(spell.share == 1.0 ? spell.degC : own + spell.share * (spell.degC - own));
  }
  return out;
}

/// Lifts the days that are colder than the spell, in their noons; false where there is none.
bool lift_cold_days(Made& made, const std::vector<double>& hourly_degC, const ColdSpell& spell) {
  constexpr double least_step_K = 0.05;  // small against weather, and the rounds come to an end
  const std::vector<double> means = day_means_degC(hourly_degC);
  const auto first = static_cast<std::size_t>(spell.first_day), behind = first + static_cast<std::size_t>(spell.days);
  std::vector<double> lift(days + 2, 0.0);
  bool any = false;
  for (std::size_t day = 0; day < days; ++day) {
    if (day >= first && day < behind) continue;
    const auto begin = hourly_degC.begin() + static_cast<std::ptrdiff_t>(24 * day);
    const double lowest = *std::min_element(begin, begin + 24);
    const double lacks = std::max(means[first] - means[day], spell.lowest_degC - lowest);
    if (lacks <= 0.0) continue;
    any = true;
    for (std::size_t noon = day; noon <= day + 2; ++noon) lift[noon] = std::max(lift[noon], lacks + least_step_K);
  }
  for (std::size_t noon = 0; noon < lift.size(); ++noon) made.noon_K[noon] += lift[noon];
  return any;
}

void check(const SyntheticYear& of) {
  for (std::size_t month = 0; month < months; ++month) {
    expects(std::isfinite(of.normals.mean_degC[month]), "a mean for every month");
    expects(of.normals.swing_K[month] >= 0.0 && of.normals.deviation_K[month] >= 0.0, "no negative spread");
    expects(of.normals.swing_K[month] < 100.0 && of.normals.deviation_K[month] < 100.0, "spreads of this earth");
  }
  expects(of.persistence_share >= 0.35 && of.persistence_share <= 0.9, "a persistence from 0.35 to 0.9");
  if (of.spell) check_spell(*of.spell, 365);
}

Diagnostic no_room(const ColdSpell& spell) {
  return {Severity::problem,
          "weather.spell",
          "",
          "a cold spell of {} days down to {} cannot be the year's coldest: the months' means leave the other days no "
          "room above it",
          {std::to_string(spell.days), Measured{spell.lowest_degC, Dimension::degree}}};
}

}  // namespace

Taken spell_at(const ColdSpell& spell, std::size_t hour, const std::array<double, 24>& wave) {
  const double at = static_cast<double>(hour) + 0.5, first = 24.0 * spell.first_day;
  const double last = first + 24.0 * spell.days, blend = 24.0 * spell.blend_days;
  const double share = std::min({1.0, 1.0 + (at - first) / blend, 1.0 + (last - at) / blend});
  const double deepest = *std::min_element(wave.begin(), wave.end());
  return {std::max(0.0, share), spell.lowest_degC + spell.swing_K * (wave[hour % 24] - deepest)};
}

void check_spell(const ColdSpell& spell, int year_days) {
  expects(spell.days >= 1 && spell.days <= 10 && spell.blend_days >= 1 && spell.blend_days <= 3, "a spell of days");
  expects(spell.first_day >= spell.blend_days && spell.first_day + spell.days + spell.blend_days <= year_days,
          "a spell within the year, with its blending");
  expects(std::isfinite(spell.lowest_degC) && spell.swing_K >= 0.0 && spell.swing_K < 100.0, "a spell of numbers");
}

const std::array<double, 24>& daily_range_shares() {
  static constexpr std::array<double, 24> shares{.88, .92, .95, .98, 1.00, .98, .91, .74, .55, .38, .23, .13,
                                                 .05, .00, .00, .06, .14,  .24, .39, .50, .59, .68, .75, .82};
  return shares;
}

std::array<double, 24> day_wave() {
  const std::array<double, 24>& shares = daily_range_shares();
  double sum = 0.0;
  for (const double share : shares) sum += share;
  std::array<double, 24> wave{};
  for (std::size_t hour = 0; hour < 24; ++hour) wave[hour] = sum / 24.0 - shares[hour];
  return wave;
}

Checked<std::vector<double>> synthetic_year_degC(const SyntheticYear& of) {
  // A lift of one round is paid back by the line through the months, so a few rounds follow; where there is no room
  // they never end.
  constexpr int most_rounds = 200;
  check(of);
  Made made = made_of(of);
  for (int round = 0; round < most_rounds; ++round) {
    std::vector<double> hourly = hours_degC(made, of.normals);
    if (!of.spell || !lift_cold_days(made, hourly, *of.spell)) return {std::move(hourly), {}};
  }
  return {std::nullopt, {no_room(*of.spell)}};
}

}  // namespace slabwright
