// The floor at one water temperature: a linear section under a film that follows the heat.
#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "response.hpp"
#include "slabwright/handbook_floor_film.hpp"

namespace slabwright {
namespace {

/// Of the floor's rise: its heat is then settled to about 1e-8 W/m2.
constexpr double settled_K = 1e-9;
/// Four are usual, eight the most seen; bisection alone would need 40.
constexpr int most_rounds = 60;
/// First guesses for a bare slab: its rise over the water's, and how what is left of it falls with the guess.
constexpr double usual_rise_share = 0.4, usual_slope = -1.05;

/// The three temperatures that drive a section, and what lies between water and the tube's outer face.
struct Drive {
  double water_degC = 0.0;
  double tube_mK_per_W = 0.0;
  double room_degC = 0.0;
};

FloorState state_of(const Section& section, const SectionResponse& from_water, const Drive& drive, double film) {
  const double below_degC = section.below_degC;
  const double through_W_per_m = from_water.through_W_per_m_K * (below_degC - drive.room_degC);
  const double up_W_per_m = from_water.room_W_per_m_K * (drive.water_degC - drive.room_degC) + through_W_per_m;
  const double down_W_per_m = from_water.below_W_per_m_K * (drive.water_degC - below_degC) - through_W_per_m;
  const auto at = [&](const SectionWeights& w) {
    return temperature_degC(w, drive.water_degC, drive.room_degC, below_degC);
  };
  FloorState state;
  state.up_W_per_m2 = up_W_per_m / section.spacing_m;
  state.down_W_per_m2 = down_W_per_m / section.spacing_m;
  state.film_W_per_m2K = film;
  state.tube_outside_degC = drive.water_degC - (up_W_per_m + down_W_per_m) * drive.tube_mK_per_W;
  state.floor_mean_degC = at(from_water.floor_mean);
  state.floor_over_tube_degC = at(from_water.floor_over_tube);
  state.floor_midway_degC = at(from_water.floor_midway);
  state.sensor_degC = at(from_water.plane_midway);
  return state;
}

FloorState state_under(const Section& section, double film_W_per_m2K, const Drive& drive) {
  return state_of(section, respond(section, film_W_per_m2K, drive.tube_mK_per_W), drive, film_W_per_m2K);
}

}  // namespace

// The rise of the floor over the room sought is the one that the section gives under that rise's own film. It lies
// between the three temperatures that drive the section. What is left of it falls almost straight with the guess, so
// that a secant finds it; where a cold ground all but takes up the water's heat it does not, and the bracket holds it.
FloorState floor_from_water(const Section& section, double water_degC, double tube_mK_per_W, double room_degC) {
  if (!section.field) return floor_from_water(with_field(section), water_degC, tube_mK_per_W, room_degC);
  const Drive drive{water_degC, tube_mK_per_W, room_degC};
  double low_K = std::min({0.0, water_degC - room_degC, section.below_degC - room_degC});
  double high_K = std::max({0.0, water_degC - room_degC, section.below_degC - room_degC});
  double rise_K = std::clamp(usual_rise_share * (water_degC - room_degC), low_K, high_K);
  double last_K = 0.0, last_left_K = 0.0;
  for (int round = 0; round < most_rounds; ++round) {
    const FloorState state = state_under(section, floor_film(rise_K).coefficient_W_per_m2K, drive);
    const double left_K = state.floor_mean_degC - room_degC - rise_K;
    if (std::abs(left_K) <= settled_K) return state;
    (left_K > 0.0 ? low_K : high_K) = rise_K;
    const double slope = round == 0 ? usual_slope : (left_K - last_left_K) / (rise_K - last_K);
    last_K = rise_K;
    last_left_K = left_K;
    rise_K -= left_K / slope;
    if (!(rise_K > low_K && rise_K < high_K)) rise_K = (low_K + high_K) / 2.0;
  }
  throw std::logic_error("floor_from_water: a temperature that is no number");
}

WaterWanted water_for(const Section& section, double up_W_per_m2, double tube_mK_per_W, double room_degC) {
  if (!section.field) return water_for(with_field(section), up_W_per_m2, tube_mK_per_W, room_degC);
  const double film = floor_film(floor_film_rise_K(up_W_per_m2)).coefficient_W_per_m2K;
  const SectionResponse r = respond(section, film, tube_mK_per_W);
  const double through_W_per_m = r.through_W_per_m_K * (section.below_degC - room_degC);
  const double over_room_K = (up_W_per_m2 * section.spacing_m - through_W_per_m) / r.room_W_per_m_K;
  const Drive drive{room_degC + over_room_K, tube_mK_per_W, room_degC};
  return {drive.water_degC, state_of(section, r, drive, film)};
}

}  // namespace slabwright
