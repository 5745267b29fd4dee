// Temperatures and flow of the water that a floor of EN 1264 needs.
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_en1264.hpp"

namespace slabwright {
namespace {

constexpr double water_J_per_kgK = 4190.0;

}  // namespace

double en1264_surface_heat_W_per_m2(double surface_rise_K) {
  expects(surface_rise_K >= 0.0, "EN 1264: the basic characteristic is for a floor warmer than the room");
  return 8.92 * std::pow(surface_rise_K, 1.1);
}

double en1264_surface_rise_K(double heat_W_per_m2) {
  expects(heat_W_per_m2 >= 0.0, "EN 1264: the basic characteristic is for heat upward");
  return std::pow(heat_W_per_m2 / 8.92, 1.0 / 1.1);
}

std::optional<double> log_mean_excess_K(WaterExcess over) {
  if (!(over.return_K > 0.0) || !(over.supply_K >= over.return_K)) return std::nullopt;
  const double spread = over.supply_K - over.return_K;
  // log1p keeps the digits where the spread is small; at none at all the mean is the temperature itself.
  return spread == 0.0 ? over.supply_K : spread / std::log1p(spread / over.return_K);
}

double supply_excess_K(double mean_K, double spread_K) {
  expects(mean_K > 0.0 && spread_K >= 0.0, "water excess temperature must be positive");
  // s E / (E - 1) with E = exp(s / mean), written so that it neither overflows nor loses digits.
  return spread_K == 0.0 ? mean_K : -spread_K / std::expm1(-spread_K / mean_K);
}

double supply_excess_series_K(double mean_K, double spread_K) {
  expects(mean_K > 0.0 && spread_K >= 0.0, "water excess temperature must be positive");
  return mean_K + spread_K / 2.0 + spread_K * spread_K / (12.0 * mean_K);
}

std::optional<double> second_room_spread_K(double supply_K, double mean_K) {
  if (!(mean_K > 0.0) || !(supply_K >= mean_K)) return std::nullopt;
  return 3.0 * mean_K * (std::sqrt(1.0 + 4.0 * (supply_K - mean_K) / (3.0 * mean_K)) - 1.0);
}

std::optional<double> second_room_spread_exact_K(double supply_K, double mean_K) {
  const std::optional<double> series = second_room_spread_K(supply_K, mean_K);
  if (!series || *series == 0.0) return series;
  // Supply over mean is convex in x = spread / mean, so Newton from the series' guess settles from one side.
  const double ratio = supply_K / mean_K;
  double x = *series / mean_K;
  for (int round = 0; round < 20; ++round) {
    const double fall = -std::expm1(-x);
    const double value = x / fall;
    const double slope = (1.0 - x * (1.0 - fall) / fall) / fall;
    x -= (value - ratio) / slope;
  }
  return x * mean_K;
}

double en1264_down_W_per_m2(const En1264Layers& layers, double up_W_per_m2, double room_over_below_K) {
  expects(layers.below_m2K_per_W > 0.0, "EN 1264: nothing resists the heat downward");
  return (layers.above_m2K_per_W * up_W_per_m2 + room_over_below_K) / layers.below_m2K_per_W;
}

double en1264_water_kg_per_sm2(double up_W_per_m2, double down_W_per_m2, double spread_K) {
  expects(spread_K > 0.0, "EN 1264: no spread carries no heat");
  return (up_W_per_m2 + down_W_per_m2) / (spread_K * water_J_per_kgK);
}

}  // namespace slabwright
