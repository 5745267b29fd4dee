// A strip of floor made ready for years: its few states with what drives them folded together, row after row in memory.
#pragma once
#include <array>
#include <vector>

#include "slabwright/building_year.hpp"

namespace slabwright::building {

/// What drives a strip: the temperature over its floor, the outdoor air, and what never changes. Tube heat is apart.
struct Pulls {
  double over_degC = 0.0, outdoor_degC = 0.0;
};

/// Of some output: straight from the drivers, without the states.
struct Straight {
  double per_over = 0.0, per_outdoor = 0.0, fixed = 0.0, per_tube = 0.0;
  double at(const Pulls& pulls, double tube_W_per_m2) const {
    return per_over * pulls.over_degC + per_outdoor * pulls.outdoor_degC + fixed + per_tube * tube_W_per_m2;
  }
};

/// What one step of a given length does to each state: kept, and gained from drivers at its start and its end.
struct StripStep {
  double dt_s = 0.0;
  std::vector<double> keep, over_start, over_end, outdoor_start, outdoor_end, fixed, tube;
  /// Of the three dots below, over what a kelvin over the floor at the end and 1 W/m2 bring about.
  std::array<double, 3> per_over{}, per_tube{};
  double plane_per_over = 0.0, plane_per_tube = 0.0;  ///< the first watched point at the end of the step
};

/// The three sums over the states that a step needs: heat into the floor at this moment, and the two stores whose
/// change is what the mean over a step lags behind.
enum StripSum : std::size_t { entering, store_of_entering, store_of_leaving };

struct YearStrip {
  std::size_t room = 0;  ///< row of YearShop::room
  double length_m = 0.0, width_m = 0.0, tubes_m = 0.0;
  std::size_t states = 0;
  std::array<std::vector<double>, 3> sum;  ///< [StripSum][state]
  Straight into_floor;                     ///< W/m at a moment, beside `sum[entering]`
  Straight steady_in, steady_out;          ///< W/m at rest: into the floor; out to air, ground and edge
  std::vector<double> store;               ///< [state] J/m of all of it, above what nothing drives
  std::size_t points = 0;                  ///< watched: plane first
  std::vector<double> watched;             ///< [point x states], point after point
  std::vector<Straight> straight;          ///< [point]
  std::array<StripStep, 2> step;           ///< [StepLength]
};
/// Broken contract (std::logic_error): states that do not fit their rows.
YearStrip year_strip(const FloorStrip& strip, std::size_t room, double ground_degC);

/// The drivers of few_states in this strip's order, for starts and checks.
DriverValues drivers_of(const FloorStrip& strip, const Pulls& pulls, double ground_degC, double tube_W_per_m2);

/// What lies between the floor's own film and the one that its states were made with, m2K/W; and how the film shares
/// heat between air and faces.
struct YearFilm {
  double film_W_per_m2K = 0.0, extra_m2K_per_W = 0.0;
  double to_air_share = 0.0;
};

}  // namespace slabwright::building
