#include <algorithm>
#include <cmath>

#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double upward_W_per_m2K = 8.92;  ///< at 1 K
constexpr double upward_power = 1.1;
constexpr double still_W_per_m2K = 6.0;
/// The laws of the two directions are joined over less than a thermometer can tell.
constexpr double join_K = 0.1;

/// A cubic from (0, 0) to (length, heat) with slopes given at both ends.
struct Join {
  double length_K = 0.0;
  double heat_W_per_m2 = 0.0;
  double first_W_per_m2K = 0.0;
  double last_W_per_m2K = 0.0;
};

FloorFilm along(const Join& join, double rise_K) {
  const double t = rise_K / join.length_K;
  const double chord = join.heat_W_per_m2 / join.length_K;
  const double square = 3.0 * chord - 2.0 * join.first_W_per_m2K - join.last_W_per_m2K;
  const double cube = join.first_W_per_m2K + join.last_W_per_m2K - 2.0 * chord;
  const double coefficient = join.first_W_per_m2K + t * (square + t * cube);
  return {coefficient * rise_K, join.first_W_per_m2K + t * (2.0 * square + 3.0 * t * cube), coefficient};
}

FloorFilm upward(double rise_K) {
  const double coefficient = upward_W_per_m2K * std::pow(rise_K, upward_power - 1.0);
  return {coefficient * rise_K, upward_power * coefficient, coefficient};
}

FloorFilm downward(double rise_K) {
  return {floor_film_down_W_per_m2K * rise_K, floor_film_down_W_per_m2K, floor_film_down_W_per_m2K};
}

FloorFilm joined(double rise_K) {
  const FloorFilm end = rise_K > 0.0 ? upward(join_K) : downward(-join_K);
  return along({std::copysign(join_K, rise_K), end.heat_W_per_m2, still_W_per_m2K, end.slope_W_per_m2K}, rise_K);
}

double to_the_fourth(double degC) {
  const double kelvin = degC + zero_degC_K;
  return kelvin * kelvin * kelvin * kelvin;
}

}  // namespace

FloorFilm floor_film(double rise_K) {
  if (rise_K >= join_K) return upward(rise_K);
  if (rise_K <= -join_K) return downward(rise_K);
  return joined(rise_K);
}

double floor_film_rise_K(double heat_W_per_m2) {
  if (heat_W_per_m2 >= upward(join_K).heat_W_per_m2)
    return std::pow(heat_W_per_m2 / upward_W_per_m2K, 1.0 / upward_power);
  if (heat_W_per_m2 <= downward(-join_K).heat_W_per_m2) return heat_W_per_m2 / floor_film_down_W_per_m2K;
  // The cubics are all but straight: Newton gains three digits a round.
  double rise_K = heat_W_per_m2 / still_W_per_m2K;
  for (int round = 0; round < 8; ++round) {
    const FloorFilm film = joined(rise_K);
    rise_K += (heat_W_per_m2 - film.heat_W_per_m2) / film.slope_W_per_m2K;
  }
  return rise_K;
}

double ashrae_panel_radiation_W_per_m2(const RadiantRoom& room) {
  return 5e-8 * (to_the_fourth(room.floor_degC) - to_the_fourth(room.surfaces_degC));
}

double ashrae_panel_convection_W_per_m2(const RadiantRoom& room) {
  const double rise_K = room.floor_degC - room.air_degC;
  return 2.13 * std::pow(std::abs(rise_K), 0.31) * rise_K;
}

double ashrae_panel_convection_W_per_m2(const RadiantRoom& room, double equivalent_diameter_m) {
  const double rise_K = room.floor_degC - room.air_degC;
  return 2.42 * std::pow(std::abs(rise_K), 0.31) * rise_K / std::pow(equivalent_diameter_m, 0.08);
}

}  // namespace slabwright
