// Room and floor in balance, steady.
#include <algorithm>

#include "slabwright/building.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

/// More than the ground ever puts between a room and the warmer or the colder of its slab and the weather, but for what
/// gains make of it.
constexpr double apart_K = 200.0;
/// Gains that go down into a cold floor pass its film, its covering and concrete: less than this and the covering.
constexpr double downward_m2K_per_W = 1.0;
/// Far below what a thermometer shows, far above rounding.
const RootOptions to_a_hair{.x_tolerance = 1e-9};

/// A linear system of two unknowns, the water and the room, under one film. Nobody asks for the water.
HeldRoom held_with_film(const SlabHold& hold, double sensor_degC, double outdoor_degC, double film_W_per_m2K) {
  const SectionResponse r = respond(hold.section, film_W_per_m2K, hold.section.wall_mK_per_W);
  const SectionWeights& w = r.plane_midway;
  const double below_degC = hold.section.below_degC, spacing_m = hold.section.spacing_m;
  // sensor: w.tube tube + w.room room = sensor - w.below below,
  // heat:   room_W tube - (room_W + through + W loss) room = -W (loss outdoor + gains) - through below
  const double tube_share = r.room_W_per_m_K;
  const double room_share = -(r.room_W_per_m_K + r.through_W_per_m_K + spacing_m * hold.loss_W_per_m2K);
  const double reading = sensor_degC - w.below_share * below_degC;
  const double heat =
      -spacing_m * (hold.loss_W_per_m2K * outdoor_degC + hold.gains_W_per_m2) - r.through_W_per_m_K * below_degC;
  const double determinant = w.tube_share * room_share - w.room_share * tube_share;
  HeldRoom held;
  held.room_degC = (w.tube_share * heat - tube_share * reading) / determinant;
  held.sensor_degC = sensor_degC;
  held.film_W_per_m2K = film_W_per_m2K;
  held.up_W_per_m2 = hold.loss_W_per_m2K * (held.room_degC - outdoor_degC) - hold.gains_W_per_m2;
  const double tube_degC = (reading * room_share - w.room_share * heat) / determinant;
  held.down_W_per_m2 =
      (r.below_W_per_m_K * (tube_degC - below_degC) - r.through_W_per_m_K * (below_degC - held.room_degC)) / spacing_m;
  held.floor_over_tube_degC = temperature_degC(r.floor_over_tube, tube_degC, held.room_degC, below_degC);
  return held;
}

}  // namespace

SlabHold slab_hold(const Section& section, const RoomLoss& room, double heated_m2) {
  expects(heated_m2 > 0.0, "slab_hold: a room without tube");
  return {section, room.total_W_per_K / heated_m2, room.gains_W / heated_m2};
}

HeldRoom held_at(const SlabHold& hold, double room_degC, double outdoor_degC) {
  const double up_W_per_m2 = hold.loss_W_per_m2K * (room_degC - outdoor_degC) - hold.gains_W_per_m2;
  const FloorState floor = water_for(hold.section, up_W_per_m2, hold.section.wall_mK_per_W, room_degC).floor;
  HeldRoom held;
  held.room_degC = room_degC;
  held.sensor_degC = floor.sensor_degC;
  held.floor_over_tube_degC = floor.floor_over_tube_degC;
  held.up_W_per_m2 = floor.up_W_per_m2;
  held.down_W_per_m2 = floor.down_W_per_m2;
  held.film_W_per_m2K = floor.film_W_per_m2K;
  return held;
}

HeldRoom room_held_by(const SlabHold& hold, double sensor_degC, double outdoor_degC,
                      std::optional<double> film_W_per_m2K) {
  if (!hold.section.field) {
    const SlabHold solved{with_field(hold.section), hold.loss_W_per_m2K, hold.gains_W_per_m2};
    return room_held_by(solved, sensor_degC, outdoor_degC, film_W_per_m2K);
  }
  if (film_W_per_m2K) return held_with_film(hold, sensor_degC, outdoor_degC, *film_W_per_m2K);
  const auto reads_over = [&](double room_degC) {
    return held_at(hold, room_degC, outdoor_degC).sensor_degC - sensor_degC;
  };
  const double by_gains_K = hold.gains_W_per_m2 * (downward_m2K_per_W + hold.section.covering_m2K_per_W);
  // A room that loses much over a slab far beyond any setting, where searches begin, stands near the weather.
  const double low_degC = std::min(sensor_degC, outdoor_degC) - apart_K;
  const double high_degC = std::max(sensor_degC, outdoor_degC) + apart_K + by_gains_K;
  const Root room = root_in_bracket(reads_over, low_degC, high_degC, to_a_hair);
  expects(room.stop == Stop::converged, "room_held_by: no room is in balance with this slab");
  return held_at(hold, room.x, outdoor_degC);
}

}  // namespace slabwright
