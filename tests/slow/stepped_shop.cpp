#include "slow/stepped_shop.hpp"

#include <algorithm>
#include <cmath>

#include "building/edge_heat.hpp"
#include "conduction/index.hpp"
#include "conduction/time_swing.hpp"

namespace slabwright::test {
namespace {

using conduction::Index;

constexpr double days_year_s = 365.0 * 86400.0;
/// A film that has moved less than this since the last factorisation counts as the same.
constexpr double same_film_share = 0.005;

bool faces_room(std::size_t driver) { return driver == edge_row::indoor || driver == edge_row::near_air; }

std::vector<SteppedStrip::Contact> contacts_of(const conduction::TimeField& field) {
  std::vector<Index> unknown_of(field.network.nodes(), conduction::known);
  for (std::size_t u = 0; u < field.assembly.unknown_nodes.size(); ++u)
    unknown_of[field.assembly.unknown_nodes[u]] = conduction::at(u);
  std::vector<SteppedStrip::Contact> contacts;
  for (const conduction::FilmContact& film : field.network.films)
    if (faces_room(film.driver.at))
      contacts.push_back({unknown_of[film.node], film.driver.at, film.conductance_W_per_mK});
  return contacts;
}

double film_by_law(double up_W_per_m2) {
  if (up_W_per_m2 < 0.0) return floor_film_down_W_per_m2K;
  return std::max(floor_film_down_W_per_m2K, floor_film(floor_film_rise_K(up_W_per_m2)).coefficient_W_per_m2K);
}

/// Drivers of a strip whose room side is so warm.
DriverValues row_for(const FloorStrip& strip, double over_degC, double outdoor_degC, double ground_degC, double tubes) {
  DriverValues row{over_degC, outdoor_degC, ground_degC, tubes};
  if (strip.near_air_share) row.push_back(over_degC + *strip.near_air_share * (outdoor_degC - over_degC));
  return row;
}

PeriodicDrivers years_of(const FloorStrip& strip, const ZoneHistory& history, double ground_degC) {
  const auto row = [&](const ZoneDrivers& at) {
    return row_for(strip, at.air_degC, at.outdoor_degC, ground_degC, at.tube_W_per_m2);
  };
  PeriodicDrivers years{days_year_s, row(history.mean), row(history.coldest_month), {}};
  for (std::size_t i = 0; i < years.mean.size(); ++i) years.cosine[i] -= years.mean[i];
  years.sine.assign(years.mean.size(), 0.0);
  return years;
}

}  // namespace

SteppedShop::SteppedShop(const YearShop& shop, const Design& design, const Envelope& envelope,
                         const ZoneHistory& history, double since_coldest_s)
    : shop_(shop),
      up_W_(shop.room.size(), 0.0),
      floor_m2_(shop.room.size(), 0.0),
      film_W_per_m2K_(shop.room.size(), shop.film_W_per_m2K),
      covering_m2K_per_W_(design.slab.covering.resistance_m2K_per_W) {
  const double turned = std::cos(2.0 * std::acos(-1.0) * since_coldest_s / days_year_s);
  const double air_degC = history.mean.air_degC + turned * (history.coldest_month.air_degC - history.mean.air_degC);
  air_degC_.assign(shop.room.size(), air_degC);
  faces_degC_ = air_degC_;
  for (std::size_t i = 0; i < shop.zone.floor.size(); ++i) {
    SteppedStrip strip;
    strip.of = &shop.zone.floor[i];
    strip.room = shop.strip_room[i];
    const EdgeDetail detail = building::with_heat_going_up(envelope.edge[strip.of->edge].detail, design);
    const double face_m = point_of(detail, {0.0, 0.0}).x_m;
    const FieldPoint middle = point_of(detail, {face_m, detail.tube_depth_m});
    strip.field = conduction::time_field(edge_section(detail), {middle}, {0.01, 1.4, 1.0, false});
    strip.floor = contacts_of(strip.field);
    strip.degC =
        conduction::temperatures_at(strip.field, years_of(*strip.of, history, shop.zone.ground_degC), since_coldest_s);
    floor_m2_[strip.room] += strip.of->length_m * strip.of->width_m;
    strips_.push_back(std::move(strip));
  }
  free_.resize(strips_.size());
  into_W_.resize(strips_.size());
  into_W_per_K_.resize(strips_.size());
}

DriverValues SteppedShop::drivers_of(const SteppedStrip& strip, double over_degC) const {
  return row_for(*strip.of, over_degC, drivers_.outdoor_degC, shop_.zone.ground_degC, drivers_.tube_W_per_m2);
}

/// The floor's film follows the heat that the last step brought, at every node of its face.
void SteppedShop::set_films(double dt_s) {
  const double as_made_m2K_per_W = 1.0 / shop_.film_W_per_m2K + covering_m2K_per_W_;
  for (std::size_t room = 0; room < up_W_.size(); ++room)
    film_W_per_m2K_[room] = film_by_law(up_W_[room] / floor_m2_[room]);
  for (SteppedStrip& strip : strips_) {
    const double share = as_made_m2K_per_W / (1.0 / film_W_per_m2K_[strip.room] + covering_m2K_per_W_);
    const bool same = strip.system && dt_s == made_dt_s_ && std::abs(share / strip.film_share - 1.0) < same_film_share;
    if (same) continue;
    strip.film_share = share;
    strip.now = strip.field.assembly;
    for (const SteppedStrip::Contact& contact : strip.floor) {
      strip.now.conductance.coeffRef(contact.unknown, contact.unknown) += (share - 1.0) * contact.W_per_mK;
      strip.now.drive(contact.unknown, conduction::at(contact.driver)) += (share - 1.0) * contact.W_per_mK;
    }
    strip.system = std::make_unique<conduction::ShiftedSystem>(strip.now, strip.field.capacity_J_per_mK);
    strip.gain = strip.system->solve(1.0 / dt_s, strip.now.drive);
  }
  made_dt_s_ = dt_s;
}

void SteppedShop::step_fields() {
  for (std::size_t i = 0; i < strips_.size(); ++i) {
    SteppedStrip& strip = strips_[i];
    const FloorStrip& of = *strip.of;
    Eigen::MatrixXd stored(strip.degC.size(), 1);
    const double *degC = strip.degC.data(), *capacity = strip.field.capacity_J_per_mK.data();
    for (Index u = 0; u < strip.degC.size(); ++u) stored.data()[u] = capacity[u] * degC[u] / dt_s_;
    free_[i] = strip.system->solve(1.0 / dt_s_, stored);
    const DriverValues cold = drivers_of(strip, 0.0), kelvin = row_for(of, 1.0, 0.0, 0.0, 0.0);
    into_W_[i] = into_W_per_K_[i] = 0.0;
    for (const SteppedStrip::Contact& contact : strip.floor) {
      double idle_degC = free_[i](contact.unknown), per_K = 0.0;
      for (std::size_t d = 0; d < cold.size(); ++d) {
        const double gain = strip.gain(contact.unknown, conduction::at(d));
        idle_degC += gain * cold[d];
        per_K += gain * kelvin[d];
      }
      const double W_per_K = of.length_m * strip.film_share * contact.W_per_mK;
      into_W_[i] += W_per_K * (cold[contact.driver] - idle_degC);
      into_W_per_K_[i] += W_per_K * (kelvin[contact.driver] - per_K);
    }
  }
}

/// Backward in time: stores, walls, air, partitions, and floors that radiate to the faces and warm the air.
void SteppedShop::balance_rooms() {
  const std::size_t rooms = shop_.room.size();
  const auto at = [](std::size_t i) { return conduction::at(i); };
  Eigen::MatrixXd lost = Eigen::MatrixXd::Zero(at(2 * rooms), at(2 * rooms));
  Eigen::VectorXd given = Eigen::VectorXd::Zero(at(2 * rooms)), source = given;
  const auto to = [&](std::size_t row, double W_per_K, double degC) {
    lost(at(row), at(row)) += W_per_K;
    given(at(row)) += W_per_K * degC;
  };
  const auto between = [&](std::size_t one, std::size_t other, double W_per_K) {
    lost(at(one), at(one)) += W_per_K;
    lost(at(other), at(other)) += W_per_K;
    lost(at(one), at(other)) -= W_per_K;
    lost(at(other), at(one)) -= W_per_K;
  };
  for (std::size_t r = 0; r < rooms; ++r) {
    const ShopRoom& room = shop_.room[r];
    const std::size_t air = 2 * r, faces = air + 1;
    to(air, (room.air_J_per_K + room.contents_J_per_K) / dt_s_, air_degC_[r]);
    to(faces, room.faces_J_per_K / dt_s_, faces_degC_[r]);
    to(air, room.light_W_per_K + drivers_.more_W_per_K[r], drivers_.outdoor_degC);
    to(faces, room.opaque_W_per_K, drivers_.outdoor_degC);
    given(at(air)) += drivers_.air_W[r];
    given(at(faces)) += drivers_.faces_W[r];
    const double film = film_W_per_m2K_[r], radiant = floor_radiative_W_per_m2K, convective = film - radiant;
    between(air, faces, room.air_faces_W_per_K + floor_m2_[r] * radiant * convective / film);
    const double share[2] = {convective / film, radiant / film};
    for (std::size_t i = 0; i < strips_.size(); ++i) {
      if (strips_[i].room != r) continue;
      const double sun_K = drivers_.floor_W_per_m2[r] / film;
      const double sun_W = drivers_.floor_W_per_m2[r] * strips_[i].of->length_m * strips_[i].of->width_m;
      for (std::size_t part = 0; part < 2; ++part) {
        given(at(air + part)) += share[part] * (sun_W - into_W_[i] - into_W_per_K_[i] * sun_K);
        for (std::size_t of = 0; of < 2; ++of)
          lost(at(air + part), at(air + of)) += share[part] * into_W_per_K_[i] * share[of];
      }
    }
  }
  for (const ShopLink& link : shop_.link) between(2 * link.one, 2 * link.other, link.W_per_K);
  source(at(2 * shop_.main)) = 1.0;
  const Eigen::PartialPivLU<Eigen::MatrixXd> factor(lost);
  idle_ = factor.solve(given);
  per_source_ = factor.solve(source);
}

StepEnd SteppedShop::reach(const SteppedDrivers& drivers, double dt_s) {
  drivers_ = drivers;
  dt_s_ = dt_s;
  set_films(dt_s);
  step_fields();
  balance_rooms();
  const Index air = conduction::at(2 * shop_.main);
  return {idle_(air), 0.0, per_source_(air)};
}

void SteppedShop::take(double source_W) {
  const auto at_end = [&](std::size_t node) {
    return idle_(conduction::at(node)) + source_W * per_source_(conduction::at(node));
  };
  for (std::size_t r = 0; r < air_degC_.size(); ++r) {
    air_degC_[r] = at_end(2 * r);
    faces_degC_[r] = at_end(2 * r + 1);
    up_W_[r] = drivers_.floor_W_per_m2[r] * floor_m2_[r];
  }
  for (std::size_t i = 0; i < strips_.size(); ++i) {
    SteppedStrip& strip = strips_[i];
    const double film = film_W_per_m2K_[strip.room], to_air = 1.0 - floor_radiative_W_per_m2K / film;
    const double over_degC = to_air * air_degC_[strip.room] + (1.0 - to_air) * faces_degC_[strip.room] +
                             drivers_.floor_W_per_m2[strip.room] / film;
    const DriverValues row = drivers_of(strip, over_degC);
    double* degC = strip.degC.data();
    const double* free = free_[i].data();
    for (Index u = 0; u < strip.degC.size(); ++u) degC[u] = free[u];
    for (std::size_t d = 0; d < row.size(); ++d) {
      const double* gain = strip.gain.data() + conduction::at(d) * strip.gain.rows();
      for (Index u = 0; u < strip.degC.size(); ++u) degC[u] += gain[u] * row[d];
    }
    up_W_[strip.room] -= into_W_[i] + into_W_per_K_[i] * over_degC;
  }
  sensed_W_per_m2_ += -std::expm1(-dt_s_ / shop_.zone.midway_lag_s) * (drivers_.tube_W_per_m2 - sensed_W_per_m2_);
}

double SteppedShop::sensor_degC() const {
  const SteppedStrip& strip = strips_[shop_.zone.sensor_strip];
  const Eigen::VectorXd watched = strip.field.outputs.of_temperatures * strip.degC;
  return watched(0) - shop_.zone.midway_m2K_per_W * sensed_W_per_m2_;
}

double SteppedShop::up_W() const {
  double sum = 0.0;
  for (const double room : up_W_) sum += room;
  return sum;
}

}  // namespace slabwright::test
