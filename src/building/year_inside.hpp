// What a run of the shop holds while it goes.
#pragma once
#include <array>
#include <vector>

#include "slabwright/units_exact.hpp"

#include "building/year_strip.hpp"
#include "building/year_system.hpp"

namespace slabwright {
namespace building {

/// Films by heat upward, W/m2, a row for each whole one: the law has a power in it that a year asks for often.
inline constexpr std::size_t film_rows = 257;
inline constexpr double quarter_s = 900.0;

/// What happens to a strip in the step under way.
struct Passing {
  double start_degC = 0.0;       ///< over it, the film's difference taken in
  std::array<double, 3> sums{};  ///< without heat and over an end at 0 degC
  /// Over it at the end: share of the room's, fixed, and per W/m2 of tube heat.
  double share = 1.0, fixed_degC = 0.0, per_tube_K = 0.0;
};

/// A value of a room; none is 0.
inline double of_room(const std::vector<double>& values, std::size_t room) {
  return values.empty() ? 0.0 : values[room];
}

}  // namespace building

struct ShopRun::Inside {
  const YearShop* shop;
  std::vector<building::YearStrip> strips;
  std::vector<std::size_t> first;  ///< [strip]: of its states in a row
  std::vector<double> upward_W_per_m2K;
  building::YearFilm downward;
  ShopState state, began;
  std::vector<std::array<double, 3>> sums;  ///< [strip]: of the states now
  std::vector<double> free;                 ///< states at the end of the step under way, as `Passing::sums`
  std::vector<building::Passing> passing;
  std::vector<building::YearFilm> film;  ///< [room]
  std::vector<double> up_W_per_m2, strip_m2;
  ShopDrivers drivers;
  StepLength length = StepLength::hour;
  building::YearSystem system;
  StepEnds reached;
  ShopHeat flown;
  std::vector<double> tubes_entering_W_per_m;  ///< [strip]: into the floor, of what tube heat alone makes
  std::vector<char> tubes_apart;               ///< [strip]: whether a place at it wants what tube heat alone makes
  std::array<double, 2> sensor_follows{};  ///< [StepLength]: share of a change of heat that the sensor has by the end

  double step_s() const { return length == StepLength::hour ? hour_s : building::quarter_s; }
  const building::StripStep& step_of(std::size_t strip) const {
    return strips[strip].step[length == StepLength::quarter];
  }
  double over_room(std::size_t room, double air_degC, double faces_degC) const;
  void begin_strip(std::size_t strip);
  void add_strip(std::size_t strip);
  void add_room(std::size_t room);
  double plane_free(std::size_t strip) const;
  void find_reach();
  void end_strip(std::size_t strip, double over_degC, double tube_W_per_m2);
  void end_tubes(std::size_t strip, double tube_W_per_m2);
  double into_floor_W_per_m2(std::size_t strip) const;
  double watched_degC(std::size_t strip, std::size_t point, const std::vector<double>& states,
                      double tube_W_per_m2) const;
  void count(const std::vector<double>& air_degC, const std::vector<double>& faces_degC, double tube_W_per_m2,
             double source_W);
};

}  // namespace slabwright
