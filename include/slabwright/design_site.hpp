// Where the shop stands and what it is: climate, building, rooms, openings.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "design_words.hpp"
#include "fields.hpp"

namespace slabwright {

/// Whose codes pick test pressure, electrical wording and the steps of boiler sizes.
enum class Codes { north_america, europe, none };

struct Project {
  std::string name;
  std::optional<Date> poured{};  ///< the concrete, or the topping that the tube lies in
  friend bool operator==(const Project&, const Project&) = default;
};

struct Climate {
  std::optional<double> outdoor_degC;  ///< the coldest weather to plan for: sizes boiler and floor (99.6 % hour)
  std::optional<double> coldest_degC;  ///< the n-year minimum: decides what freezes
  double indoor_degC = 0.0;
  double mean_degC = 0.0;     ///< yearly mean, which deep ground keeps
  double half_swing_K = 0.0;  ///< half the difference between the warmest and the coldest month
  double altitude_m = 0.0;
  double wind_m_per_s = 0.0;  ///< with the coldest weather: the outdoor film of the slab's edges
  std::string weather{};      ///< name of an hourly weather file, as written; who answers must bring it
  std::optional<double> yearly_minimum_degC{};  ///< mean of the yearly lowest hours, from published station statistics
  std::optional<double> minimum_spread_K{};     ///< their standard deviation
  int return_years = 20;                        ///< n of the n-year minimum; only beside the two above
  int snap_days = 3;                            ///< how long a cold snap lasts at its lowest
  double snap_swing_K = 10.0;                   ///< highest less lowest of its days
  std::vector<DayLow> snap{};                   ///< the user's own snap, day by day, in place of the two above
  std::optional<double> latitude_deg{};         ///< north; without it, and without a weather file, no sun is counted
  friend bool operator==(const Climate&, const Climate&) = default;
};

struct Ground {
  double conductivity_W_per_mK = 0.0;
  friend bool operator==(const Ground&, const Ground&) = default;
};

/// How well the building keeps its heat where it is not described in more detail.
enum class Quality { tight, usual, poor };

/// What stores heat on the inner side of walls and roof: boards on a frame or steel; boards on masonry; bare masonry.
enum class Mass { light, medium, heavy };

struct Building {
  Quality quality = Quality::usual;
  Insulation wall_insulation;
  Insulation roof_insulation;
  Insulation door_insulation;
  double height_m = 0.0;
  double air_changes_per_s = 0.0;
  bool big_door = true;  ///< false: no big door is assumed where none is given
  Mass mass = Mass::light;
  std::optional<double> heat_loss_W;  ///< all rooms together at `climate.outdoor`, without ground, when it is known
  /// No key: true once insulation, height, air changes or heat loss above, a room's wall or height, or an opening's
  /// size or insulation is the user's own. Quality alone picks between the three guesses of loss by floor area.
  bool described = false;
  friend bool operator==(const Building&, const Building&) = default;
};

struct Room {
  std::string name;
  std::optional<Size> size;
  std::optional<double> area_m2;
  std::vector<Place> outline;
  std::optional<double> indoor_degC;   ///< the climate's when absent
  std::optional<double> outer_wall_m;  ///< length of its walls that face outdoors; shared out by area when absent
  std::optional<double> height_m;      ///< the building's when absent
  bool heated_floor = true;
  bool own_loops = false;  ///< its tube belongs to loops that heat nothing else
  bool shut = false;       ///< the zone valves of its loops
  friend bool operator==(const Room&, const Room&) = default;
};

enum class OpeningKind { big_door, door, window };

struct Opening {
  std::string name;
  OpeningKind kind = OpeningKind::big_door;
  std::string room;
  Size size;                              ///< width x height
  std::optional<PlanPlace> place;         ///< of its middle, at a wall
  std::optional<Insulation> insulation;   ///< big door: the building's; door R-5, window R-2 when absent (practice)
  std::optional<Insulation> strip;        ///< foam across the slab at a big door; the edge's `door_strip` when absent
  std::optional<double> tube_distance_m;  ///< nearest tube inside it; the tube's `from_doors` when absent
  std::optional<double> tube_spacing_m;   ///< closer tube before it
  std::optional<double> band_width_m;     ///< how far in that reaches; settled where there is a spacing
  double opened_number = 0.0;             ///< times on a day of work; by its kind when it is not given
  double open_s = 0.0;                    ///< each time
  double sun_share = 0.0;                 ///< of the sun outside that comes in; none but through a window
  friend bool operator==(const Opening&, const Opening&) = default;
};

/// What becomes of the air an exhaust fan takes out.
enum class Makeup { tempered, untempered };

struct Exhaust {
  std::string room;
  double flow_m3_per_s = 0.0;
  Makeup makeup = Makeup::tempered;
  std::optional<ClockSpan> hours{};  ///< on days of work; the working hours when absent
  friend bool operator==(const Exhaust&, const Exhaust&) = default;
};

struct Gains {
  std::string room;
  double power_W = 0.0;
  std::optional<ClockSpan> hours{};  ///< on days of work; always when absent
  friend bool operator==(const Gains&, const Gains&) = default;
};

Record record_of(Project&);
Record record_of(Climate&);
Record record_of(Ground&);
Record record_of(Building&);
Record record_of(Room&);
Record record_of(Opening&);
Record record_of(Exhaust&);
Record record_of(Gains&);

}  // namespace slabwright
