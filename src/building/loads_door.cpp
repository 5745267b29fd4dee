// Doors that open: one opening stepped through, and a table of openings for the year.
#include <algorithm>
#include <cmath>
#include <limits>

#include "slabwright/building_loads.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double wind_share = 0.025;

/// What acts on the room's air while the door is open.
struct OpenRoom {
  const OpenDoor& door;
  const DoorRoom& room;
  double outdoor_degC, wind_m_per_s;

  double door_W(double air_degC) const { return open_door_W(door, air_degC - outdoor_degC, wind_m_per_s); }
  double shut_W(double air_degC) const { return room.loss_W_per_K * (air_degC - outdoor_degC); }
  double surfaces_W(double air_degC) const { return room.surfaces_W_per_K * (room.surfaces_degC - air_degC); }
};

/// The air and what has passed by the door. The other heats follow from the integral of the air's temperature.
struct Passed {
  double air_degC = 0.0, lost_J = 0.0, air_Ks = 0.0;
};

Passed rate_of(const OpenRoom& open, double air_degC) {
  const double lost_W = open.door_W(air_degC);
  const double gained_W = open.surfaces_W(air_degC) + open.room.heat_W - open.shut_W(air_degC) - lost_W;
  return {gained_W / open.room.air_J_per_K, lost_W, air_degC};
}

Passed stepped(const OpenRoom& open, const Passed& from, double step_s) {
  const Passed first = rate_of(open, from.air_degC);
  const Passed second = rate_of(open, from.air_degC + first.air_degC * step_s / 2.0);
  const Passed third = rate_of(open, from.air_degC + second.air_degC * step_s / 2.0);
  const Passed last = rate_of(open, from.air_degC + third.air_degC * step_s);
  const auto mean = [](double a, double b, double c, double d) { return (a + 2.0 * (b + c) + d) / 6.0; };
  return {from.air_degC + step_s * mean(first.air_degC, second.air_degC, third.air_degC, last.air_degC),
          from.lost_J + step_s * mean(first.lost_J, second.lost_J, third.lost_J, last.lost_J),
          from.air_Ks + step_s * mean(first.air_Ks, second.air_Ks, third.air_Ks, last.air_Ks)};
}

/// The slope of x sqrt(x) is one and a half times its secant, so the air answers that much quicker than its flow says.
double quickest_s(const OpenRoom& open, double air_degC) {
  const double flow = open_door_flow_m3_per_s(open.door, air_degC - open.outdoor_degC, open.wind_m_per_s);
  const double W_per_K = 1.5 * air_stream_W_per_K(flow) + open.room.surfaces_W_per_K + open.room.loss_W_per_K;
  return W_per_K > 0.0 ? open.room.air_J_per_K / W_per_K : std::numeric_limits<double>::infinity();
}

/// Nothing moves any more: the rest of the time is one step, and the little that is still moving goes by the door.
Passed at_rest(const OpenRoom& open, const Passed& at, const Passed& rate, double left_s) {
  const double lost_W = rate.lost_J + open.room.air_J_per_K * rate.air_degC;
  return {at.air_degC, at.lost_J + left_s * lost_W, at.air_Ks + left_s * at.air_degC};
}

Passed through(const OpenRoom& open, double air_degC, double open_s) {
  constexpr double step_share = 0.25, still_K_per_s = 1e-9;
  Passed at{air_degC, 0.0, 0.0};
  double left_s = open_s;
  while (left_s > 0.0) {
    const Passed rate = rate_of(open, at.air_degC);
    if (std::abs(rate.air_degC) < still_K_per_s) return at_rest(open, at, rate, left_s);
    const double step_s = std::min(left_s, step_share * quickest_s(open, at.air_degC));
    at = stepped(open, at, step_s);
    left_s -= step_s;
  }
  return at;
}

/// With the door shut the air goes exponentially to where its heat and its surfaces hold it.
double recovery_s(const DoorRoom& room, double was_degC, double left_degC, double outdoor_degC) {
  constexpr double back_K = 1.0, never = std::numeric_limits<double>::infinity();
  if (std::abs(left_degC - was_degC) <= back_K) return 0.0;
  const double near_degC = was_degC + (left_degC < was_degC ? -back_K : back_K);
  const double W_per_K = room.surfaces_W_per_K + room.loss_W_per_K;
  const double free_W = room.surfaces_W_per_K * room.surfaces_degC + room.loss_W_per_K * outdoor_degC + room.heat_W;
  if (W_per_K == 0.0) {
    const double needed_J = room.air_J_per_K * (near_degC - left_degC);
    return needed_J * room.heat_W > 0.0 ? needed_J / room.heat_W : never;
  }
  const double goes_to_degC = free_W / W_per_K;
  const double remains = (goes_to_degC - near_degC) / (goes_to_degC - left_degC);
  const bool gets_there = (goes_to_degC - near_degC) * (near_degC - left_degC) > 0.0;
  return gets_there ? -room.air_J_per_K / W_per_K * std::log(remains) : never;
}

/// Row or column of the table at equal steps of `most`, and where a value's square stands between two of them.
struct BetweenRows {
  std::size_t low = 0;
  double share = 0.0;
};
BetweenRows between_rows(double value, double most, std::size_t rows) {
  const double at = std::min(value / most, 1.0) * static_cast<double>(rows - 1);
  const std::size_t low = std::min(static_cast<std::size_t>(at), rows - 2);
  const auto from = static_cast<double>(low);
  return {low, (at * at - from * from) / (2.0 * from + 1.0)};
}

}  // namespace

double wind_flow_m3_per_s(const OpenDoor& door, double wind_m_per_s) {
  expects(wind_m_per_s >= 0.0, "a wind has a speed");
  return wind_share * door.width_m * door.height_m * wind_m_per_s;
}

double open_door_flow_m3_per_s(const OpenDoor& door, double difference_K, double wind_m_per_s) {
  const double buoyant = door_air_m3_per_s(door, difference_K), wind = wind_flow_m3_per_s(door, wind_m_per_s);
  return std::sqrt(buoyant * buoyant + wind * wind);
}

double open_door_W(const OpenDoor& door, double difference_K, double wind_m_per_s, double density_kg_per_m3) {
  const double flow = open_door_flow_m3_per_s(door, difference_K, wind_m_per_s);
  return air_stream_W_per_K(flow, density_kg_per_m3) * difference_K;
}

DoorOpening door_opening(const OpenDoor& door, const DoorRoom& room, double air_degC, double outdoor_degC,
                         double open_s, double wind_m_per_s) {
  expects(room.air_J_per_K > 0.0, "air stores heat");
  expects(room.surfaces_W_per_K >= 0.0 && room.loss_W_per_K >= 0.0, "conductances are not negative");
  expects(door.width_m > 0.0 && door.height_m > 0.0 && open_s >= 0.0, "a door that opens");
  const OpenRoom open{door, room, outdoor_degC, wind_m_per_s};
  const Passed end = through(open, air_degC, open_s);
  DoorOpening out;
  out.lost_J = end.lost_J;
  out.surfaces_J = room.surfaces_W_per_K * (room.surfaces_degC * open_s - end.air_Ks);
  out.air_J = room.air_J_per_K * (air_degC - end.air_degC);
  out.shut_J = room.loss_W_per_K * (end.air_Ks - outdoor_degC * open_s);
  out.heat_J = room.heat_W * open_s;
  // One equation of the first order goes one way only.
  out.coldest_degC = std::min(air_degC, end.air_degC);
  out.left_degC = end.air_degC;
  out.recovers_s = recovery_s(room, air_degC, end.air_degC, outdoor_degC);
  return out;
}

DoorUse door_use(const OpenDoor& door, const DoorRoom& room, double open_s) {
  constexpr double least_K = 1e-3;  // the lowest row is a limit: heat and difference go to 0 together
  DoorUse use;
  const double root_step = std::sqrt(DoorUse::most_K) / static_cast<double>(DoorUse::differences - 1);
  for (std::size_t row = 0; row < DoorUse::differences; ++row) {
    const double root = root_step * static_cast<double>(row), difference_K = std::max(least_K, root * root);
    DoorRoom steady = room;
    steady.surfaces_degC = difference_K;
    steady.heat_W = room.loss_W_per_K * difference_K;
    for (std::size_t column = 0; column < DoorUse::winds; ++column) {
      const double wind = DoorUse::most_m_per_s * static_cast<double>(column) / static_cast<double>(DoorUse::winds - 1);
      use.J_per_K[row][column] = door_opening(door, steady, difference_K, 0.0, open_s, wind).lost_J / difference_K;
    }
  }
  return use;
}

double opening_J_per_K(const DoorUse& use, double difference_K, double wind_m_per_s) {
  expects(wind_m_per_s >= 0.0, "a wind has a speed");
  const double root = std::sqrt(std::abs(difference_K));
  const BetweenRows row = between_rows(root, std::sqrt(DoorUse::most_K), DoorUse::differences);
  const BetweenRows column = between_rows(wind_m_per_s, DoorUse::most_m_per_s, DoorUse::winds);
  // The square of the flow is a straight line over the difference and over the square of the wind.
  const auto along = [&](const std::array<double, DoorUse::winds>& of) {
    const double low = of[column.low], high = of[column.low + 1];
    return low * low * (1.0 - column.share) + high * high * column.share;
  };
  return std::sqrt(along(use.J_per_K[row.low]) * (1.0 - row.share) + along(use.J_per_K[row.low + 1]) * row.share);
}

double door_W_per_K(const DoorUse& use, double openings_per_h, double difference_K, double wind_m_per_s) {
  expects(openings_per_h >= 0.0, "openings are not negative");
  return openings_per_h * opening_J_per_K(use, difference_K, wind_m_per_s) / hour_s;
}

}  // namespace slabwright
