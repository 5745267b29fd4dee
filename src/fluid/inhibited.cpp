// Reading ASHRAE's tables between their rows and columns.
#include <algorithm>
#include <cmath>

#include "fluid/sources.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

// A share between two columns; on a column both are the same one.
struct Columns {
  const AshraeColumn& weaker;
  const AshraeColumn& stronger;
  double toward_stronger;
};

Columns columns_at(FluidKind kind, double volume_share) {
  const std::span<const AshraeColumn> all = columns_of(kind);
  const double share = std::clamp(volume_share, all.front().volume_share, all.back().volume_share);
  std::size_t at = 0;
  while (all[at].volume_share < share - share_rounding) ++at;
  if (all[at].volume_share <= share + share_rounding) return {all[at], all[at], 0.0};
  const AshraeColumn& weaker = all[at - 1];
  return {weaker, all[at], (share - weaker.volume_share) / (all[at].volume_share - weaker.volume_share)};
}

double lowest_of(const Columns& columns) { return std::max(columns.weaker.first_degC, columns.stronger.first_degC); }

struct Rows {
  const AshraeRow& colder;
  const AshraeRow& warmer;
  double toward_warmer;
};

Rows rows_at(const AshraeColumn& column, double temperature_degC) {
  const double steps = (temperature_degC - column.first_degC) / ashrae_step_K;
  const std::size_t at = std::min(static_cast<std::size_t>(steps), column.rows.size() - 2);
  return {column.rows[at], column.rows[at + 1], steps - static_cast<double>(at)};
}

// The four printed rows around a place, and how much of each.
struct Corner {
  const AshraeRow& row;
  double weight;
};
struct Corners {
  Corner all[4];
};

Corners corners_at(FluidKind kind, double volume_share, double temperature_degC) {
  const Columns columns = columns_at(kind, volume_share);
  const double temperature = std::clamp(temperature_degC, lowest_of(columns), ashrae_highest_degC);
  const Rows weak = rows_at(columns.weaker, temperature);
  const Rows strong = rows_at(columns.stronger, temperature);
  const double x = columns.toward_stronger;
  return {{{weak.colder, (1.0 - x) * (1.0 - weak.toward_warmer)},
           {weak.warmer, (1.0 - x) * weak.toward_warmer},
           {strong.colder, x * (1.0 - strong.toward_warmer)},
           {strong.warmer, x * strong.toward_warmer}}};
}

double mean(const Corners& corners, double AshraeRow::*property) {
  double sum = 0.0;
  for (const Corner& corner : corners.all) sum += corner.weight * corner.row.*property;
  return sum;
}

// Viscosity falls by up to a third in one step; its logarithm runs nearly straight (0.2 % off in mid-step).
double mean_viscosity(const Corners& corners) {
  double sum = 0.0;
  for (const Corner& corner : corners.all) {
    if (corner.weight > 0.0) sum += corner.weight * std::log(corner.row.viscosity_milliPa_s);
  }
  return 1e-3 * std::exp(sum);
}

}  // namespace

std::span<const AshraeColumn> columns_of(FluidKind kind) {
  expects(kind != FluidKind::water, "inhibited: water is no glycol");
  return kind == FluidKind::propylene_glycol ? propylene_columns() : ethylene_columns();
}

Window inhibited_window(FluidKind kind, double volume_share) {
  return {lowest_of(columns_at(kind, volume_share)), ashrae_highest_degC};
}

FluidProperties inhibited_properties(FluidKind kind, double volume_share, double temperature_degC) {
  const Corners corners = corners_at(kind, volume_share, temperature_degC);
  return {mean(corners, &AshraeRow::density_kg_per_m3), mean(corners, &AshraeRow::specific_heat_J_per_kgK),
          mean_viscosity(corners), mean(corners, &AshraeRow::conductivity_W_per_mK)};
}

Liquid inhibited_liquid(FluidKind kind, double volume_share, double temperature_degC) {
  const Corners corners = corners_at(kind, volume_share, temperature_degC);
  return {mean(corners, &AshraeRow::density_kg_per_m3), mean_viscosity(corners)};
}

std::span<const AshraeStrength> strengths_of(FluidKind kind) {
  expects(kind != FluidKind::water, "inhibited: water is no glycol");
  return kind == FluidKind::propylene_glycol ? propylene_strengths() : ethylene_strengths();
}

}  // namespace slabwright
