// The shop on its way: steps taken, and what it is like between them.
#include <algorithm>
#include <cmath>

#include "building/year_inside.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {

using namespace building;

namespace {

/// As in recoveries: two fifths of what radiates to a person at work is floor.
constexpr double floor_view_share = 0.4;

YearFilm film_at(double film_W_per_m2K, double made_with_W_per_m2K) {
  return {film_W_per_m2K, 1.0 / film_W_per_m2K - 1.0 / made_with_W_per_m2K,
          1.0 - floor_radiative_W_per_m2K / film_W_per_m2K};
}

std::vector<double> films_upward() {
  std::vector<double> rows;
  for (std::size_t heat = 0; heat < film_rows; ++heat) {
    const double film = floor_film(floor_film_rise_K(static_cast<double>(heat))).coefficient_W_per_m2K;
    rows.push_back(std::max(film, floor_film_down_W_per_m2K));
  }
  return rows;
}

/// Straight between rows: a film that jumped would make a choice of the last bit of a heat.
double film_of_heat(const std::vector<double>& rows, double up_W_per_m2) {
  const double at = std::min(up_W_per_m2, static_cast<double>(rows.size() - 1));
  const std::size_t row = std::min(static_cast<std::size_t>(at), rows.size() - 2);
  return rows[row] + (at - static_cast<double>(row)) * (rows[row + 1] - rows[row]);
}

}  // namespace

ShopRun::ShopRun(const YearShop& shop, const ShopState& start) : inside_(std::make_unique<Inside>()) {
  Inside& in = *inside_;
  in.shop = &shop;
  in.strip_m2.assign(shop.room.size(), 0.0);
  for (std::size_t i = 0; i < shop.zone.floor.size(); ++i) {
    in.first.push_back(in.free.size());
    in.strips.push_back(year_strip(shop.zone.floor[i], shop.strip_room[i], shop.zone.ground_degC));
    in.free.resize(in.free.size() + in.strips.back().states, 0.0);
    in.strip_m2[shop.strip_room[i]] += in.strips.back().length_m * in.strips.back().width_m;
  }
  in.tubes_apart.assign(in.strips.size(), 0);
  for (const ZonePlace& place : shop.zone.place)
    if (place.strip && (place.cold_share != 1.0 || place.heat_share != 1.0)) in.tubes_apart[*place.strip] = 1;
  expects(start.strip.size() == in.free.size() && start.air_degC.size() == shop.room.size(), "year: a state too short");
  for (const double dt_s : {hour_s, quarter_s})
    in.sensor_follows[dt_s < hour_s] = -std::expm1(-dt_s / shop.zone.midway_lag_s);
  in.upward_W_per_m2K = films_upward();
  in.downward = film_at(floor_film_down_W_per_m2K, shop.film_W_per_m2K);
  in.passing.resize(in.strips.size());
  in.film.assign(shop.room.size(), in.downward);
  in.up_W_per_m2.assign(shop.room.size(), 0.0);
  in.system = year_system(shop);
  in.state = in.began = start;
  for (std::size_t i = 0; i < in.strips.size(); ++i) {
    std::array<double, 3> sums{};
    for (std::size_t which = 0; which < sums.size(); ++which)
      for (std::size_t k = 0; k < in.strips[i].states; ++k)
        sums[which] += in.strips[i].sum[which][k] * start.strip[in.first[i] + k];
    in.sums.push_back(sums);
    in.tubes_entering_W_per_m.push_back(0.0);
    for (std::size_t k = 0; k < in.strips[i].states; ++k)
      in.tubes_entering_W_per_m.back() += in.strips[i].sum[entering][k] * start.of_tubes[in.first[i] + k];
  }
  for (std::size_t i = 0; i < in.strips.size(); ++i)
    in.up_W_per_m2[in.strips[i].room] -=
        in.into_floor_W_per_m2(i) * in.strips[i].length_m * in.strips[i].width_m / in.strip_m2[in.strips[i].room];
}

ShopRun::~ShopRun() = default;

const StepEnds& ShopRun::reach(const ShopDrivers& drivers, StepLength length) {
  Inside& in = *inside_;
  in.drivers = drivers;
  in.length = length;
  for (std::size_t room = 0; room < in.film.size(); ++room) {
    const double up = in.up_W_per_m2[room];
    in.film[room] = up < 0.0 ? in.downward : film_at(film_of_heat(in.upward_W_per_m2K, up), in.shop->film_W_per_m2K);
    in.system.floor[room] = {};
  }
  for (std::size_t strip = 0; strip < in.strips.size(); ++strip) {
    in.begin_strip(strip);
    in.add_strip(strip);
  }
  for (std::size_t room = 0; room < in.film.size(); ++room) in.add_room(room);
  solve(in.system, in.state, drivers, in.step_s());
  in.find_reach();
  return in.reached;
}

void ShopRun::take(double tube_W_per_m2, double source_W) {
  Inside& in = *inside_;
  ShopState& state = in.state;
  const std::size_t rooms = in.film.size();
  std::vector<double>& air_degC = in.system.air_degC;
  std::vector<double>& faces_degC = in.system.faces_degC;
  for (std::size_t room = 0; room < rooms; ++room) {
    air_degC[room] = in.system.solved.air[room].at(tube_W_per_m2, source_W);
    faces_degC[room] = in.system.solved.faces[room].at(tube_W_per_m2, source_W);
    in.up_W_per_m2[room] = of_room(in.drivers.floor_W_per_m2, room);
  }
  in.count(air_degC, faces_degC, tube_W_per_m2, source_W);
  for (std::size_t i = 0; i < in.strips.size(); ++i) {
    const Passing& pass = in.passing[i];
    const std::size_t room = in.strips[i].room;
    const double over_degC = in.over_room(room, air_degC[room], faces_degC[room]);
    in.end_strip(i, pass.share * over_degC + pass.fixed_degC + pass.per_tube_K * tube_W_per_m2, tube_W_per_m2);
  }
  state.air_degC.swap(air_degC);
  state.faces_degC.swap(faces_degC);
  state.outdoor_degC = in.drivers.outdoor_degC;
  state.tube_W_per_m2 = tube_W_per_m2;
  state.sensed_W_per_m2 +=
      in.sensor_follows[in.length == StepLength::quarter] * (tube_W_per_m2 - state.sensed_W_per_m2);
  for (std::size_t i = 0; i < in.strips.size(); ++i) {
    const YearStrip& strip = in.strips[i];
    in.up_W_per_m2[strip.room] -= in.into_floor_W_per_m2(i) * strip.length_m * strip.width_m / in.strip_m2[strip.room];
  }
}

const ShopState& ShopRun::state() const { return inside_->state; }

ShopNow ShopRun::now() const {
  const Inside& in = *inside_;
  const std::size_t main = in.shop->main;
  ShopNow now;
  now.air_degC = in.state.air_degC[main];
  now.faces_degC = in.state.faces_degC[main];
  const Zone& zone = in.shop->zone;
  now.plane_degC = in.watched_degC(zone.sensor_strip, 0, in.state.strip, in.state.tube_W_per_m2);
  now.sensor_degC = now.plane_degC - zone.midway_m2K_per_W * in.state.sensed_W_per_m2;
  for (std::size_t i = 0; i < in.strips.size(); ++i) {
    const YearStrip& strip = in.strips[i];
    if (strip.room != main) continue;
    const double face_degC = in.state.effective_degC[i] - in.into_floor_W_per_m2(i) / in.shop->film_W_per_m2K;
    now.floor_degC += face_degC * strip.length_m * strip.width_m / in.strip_m2[main];
  }
  for (std::size_t room = 0; room < in.strip_m2.size(); ++room) now.up_W += in.up_W_per_m2[room] * in.strip_m2[room];
  const double around_degC = floor_view_share * now.floor_degC + (1.0 - floor_view_share) * now.faces_degC;
  now.operative_degC = 0.5 * (now.air_degC + around_degC);
  return now;
}

void ShopRun::places(std::vector<double>& degC) const {
  const Inside& in = *inside_;
  const Zone& zone = in.shop->zone;
  degC.resize(zone.place.size());
  for (std::size_t row = 0; row < zone.place.size(); ++row) {
    const ZonePlace& place = zone.place[row];
    const std::size_t room = in.shop->place_room[row];
    const double air_degC = in.state.air_degC[room];
    if (!place.strip) {
      degC[row] =
          temperature_at(place.weights, {air_degC, in.state.outdoor_degC, zone.ground_degC, in.state.tube_W_per_m2});
      continue;
    }
    const double warm_degC = in.watched_degC(*place.strip, place.point, in.state.strip, in.state.tube_W_per_m2);
    if (place.cold_share == 1.0 && place.heat_share == 1.0) {
      degC[row] = warm_degC;
      continue;
    }
    const YearStrip& strip = in.strips[*place.strip];
    const Straight& straight = strip.straight[place.point];
    double of_tubes_K =
        straight.per_tube * in.state.tube_W_per_m2 + straight.per_over * in.state.tubes_over_K[*place.strip];
    for (std::size_t k = 0; k < strip.states; ++k)
      of_tubes_K += strip.watched[place.point * strip.states + k] * in.state.of_tubes[in.first[*place.strip] + k];
    const double cold_K = air_degC - (warm_degC - of_tubes_K);
    degC[row] = air_degC - (cold_K > 0.0 ? place.cold_share : 1.0) * cold_K + place.heat_share * of_tubes_K;
  }
}

ShopHeat ShopRun::heat() const {
  const Inside& in = *inside_;
  ShopHeat heat = in.flown;
  for (std::size_t row = 0; row < in.film.size(); ++row) {
    const ShopRoom& room = in.shop->room[row];
    const double air_K = in.state.air_degC[row] - in.began.air_degC[row];
    heat.air_J += room.air_J_per_K * air_K;
    heat.contents_J += room.contents_J_per_K * air_K;
    heat.faces_J += room.faces_J_per_K * (in.state.faces_degC[row] - in.began.faces_degC[row]);
  }
  double plane_Km2 = 0.0, floor_m2 = 0.0, stored_J = 0.0;
  for (std::size_t i = 0; i < in.strips.size(); ++i) {
    const YearStrip& strip = in.strips[i];
    const double strip_m2 = strip.length_m * strip.width_m;
    for (std::size_t k = 0; k < strip.states; ++k) {
      const double moved = in.state.strip[in.first[i] + k] - in.began.strip[in.first[i] + k];
      stored_J += strip.length_m * strip.store[k] * moved;
      plane_Km2 += strip_m2 * strip.watched[k] * moved;
    }
    floor_m2 += strip_m2;
  }
  // Concrete follows its middle; what that leaves is the soil's and the edge's.
  heat.slab_J = in.shop->slab_J_per_K * plane_Km2 / floor_m2;
  heat.soil_J = stored_J - heat.slab_J;
  return heat;
}

double ShopHeat::missing_J() const {
  return in_J() - (light_J + more_J + opaque_J + layered_J + ground_J) -
         (air_J + contents_J + faces_J + slab_J + soil_J);
}

}  // namespace slabwright
