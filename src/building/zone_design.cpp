// The shop as one zone: its edges, its air and what stands in it.
#include <algorithm>

#include "building/edge_heat.hpp"
#include "slabwright/building_zone.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// Air is densest when it is cold; 5 per cent of it is nothing here.
constexpr double typical_air_degC = 5.0;
/// Shares of the rise hardly depend on how warm the slab is: one that holds most shops in hard frost.
constexpr double typical_slab_degC = 12.0;
/// Rises below this have no shares that mean anything.
constexpr double least_rise_K = 0.1;
constexpr double turn = 2.0 * pi;

bool at_strip(const WatchedPlace& place) { return place.decides && place.edge; }

/// Points at which the deciding places of an edge are read, after the plane in the middle of the floor.
std::vector<EdgePoint> points_at(const WatchedPlaces& watched, std::size_t edge, EdgePoint middle) {
  std::vector<EdgePoint> points{middle};
  for (const WatchedPlace& place : watched.place)
    if (at_strip(place) && *place.edge == edge) points.push_back(place.at);
  return points;
}

double film_of(FloorHeat heat) {
  return heat == FloorHeat::down ? floor_film_down_W_per_m2K
                                 : floor_film(floor_film_rise_K(building::typical_up_W_per_m2)).coefficient_W_per_m2K;
}

FloorStrip strip_of(const EdgeStretch& edge, std::size_t row, const Design& design, const WatchedPlaces& watched,
                    EdgeFields& fields, FloorHeat heat) {
  const EdgeDetail detail = heat == FloorHeat::down ? edge.detail : building::with_heat_going_up(edge.detail, design);
  const double face_m = point_of(detail, {0.0, 0.0}).x_m;
  FloorStrip strip;
  strip.edge = row;
  strip.room = edge.room;
  strip.states = fields.states(detail, points_at(watched, row, {face_m, detail.tube_depth_m}));
  strip.length_m = edge.length_m;
  strip.width_m = detail.half_width_m;
  strip.tubes_m = face_m - detail.last_tube_in_m;
  if (detail.near_air_m > 0.0) strip.near_air_share = design.frost_hold.door_air_share;
  return strip;
}

double air_J_per_K(const Design& design, std::size_t room, double floor_m2) {
  const double height_m = design.room[room].height_m.value_or(design.building.height_m);
  const double density = air_density_kg_per_m3(typical_air_degC, design.climate.altitude_m);
  return floor_m2 * height_m * density * air_J_per_kgK;
}

/// Each room over one slab, without fans and gains.
void add_rooms(Zone& zone, const Design& design, const Envelope& envelope, const FloorPlan& floor) {
  double heated_m2 = 0.0;
  std::vector<double> slab_loss_W_per_m2K(envelope.room.size(), 0.0);
  for (std::size_t row = 0; row < envelope.room.size(); ++row) {
    const RoomLoss& room = envelope.room[row];
    if (!room.heated_floor) continue;
    const double loss_W_per_K = room.total_W_per_K - room.exhaust_counted_W_per_K;
    zone.loss_W_per_K += loss_W_per_K;
    zone.fans_W_per_K += room.exhaust_counted_W_per_K;
    zone.gains_W += room.gains_W;
    zone.capacity_J_per_K += room.floor_m2 * contents_J_per_m2K + air_J_per_K(design, row, room.floor_m2);
    if (floor.room[row].heated_m2 <= 0.0) continue;
    heated_m2 += floor.room[row].heated_m2;
    slab_loss_W_per_m2K[row] = loss_W_per_K / floor.room[row].heated_m2;
  }
  const double outdoor_degC = *design.climate.coldest_degC;
  const auto rise_K = [&](double loss_W_per_m2K) {
    return room_held_by({floor.section, loss_W_per_m2K, 0.0}, typical_slab_degC, outdoor_degC).room_degC - outdoor_degC;
  };
  const double all_K = heated_m2 > 0.0 ? rise_K(zone.loss_W_per_K / heated_m2) : 0.0;
  for (const double loss_W_per_m2K : slab_loss_W_per_m2K) {
    const bool own = loss_W_per_m2K > 0.0 && all_K > least_rise_K;
    zone.room_rise_share.push_back(own ? rise_K(loss_W_per_m2K) / all_K : 1.0);
  }
}

/// From the section: the plane under its film, and how the sensor between two tubes differs from the plane's mean.
void add_section(Zone& zone, const Section& section, FloorHeat heat) {
  const double film_W_per_m2K = film_of(heat);
  zone.plane_m2K_per_W =
      1.0 / film_W_per_m2K + section.covering_m2K_per_W + section.cover_above_m / section.concrete_W_per_mK;
  for (const FlatLayer& layer : section.above) zone.plane_m2K_per_W += layer.thickness_m / layer.conductivity_W_per_mK;
  const SectionResponse r = respond(section, film_W_per_m2K, section.wall_mK_per_W);
  const double tube_W_per_m2 = (r.room_W_per_m_K + r.below_W_per_m_K) / section.spacing_m;
  const double mean_share = r.room_W_per_m_K / section.spacing_m * zone.plane_m2K_per_W;
  zone.midway_m2K_per_W = std::max(0.0, (mean_share - r.plane_midway.tube_share) / tube_W_per_m2);
  // The wave from tube to tube dies away by itself.
  const double wave_per_m = turn / section.spacing_m;
  zone.midway_lag_s = concrete_J_per_m3K / (section.concrete_W_per_mK * wave_per_m * wave_per_m);
}

/// What steady tube heat makes of a watched point.
double heat_gain_m2K_per_W(const FewStates& states, std::size_t point) {
  const DriverValues heat{0.0, 0.0, 0.0, 1.0};
  DriverValues drivers(states.direct[point].size(), 0.0);
  std::copy(heat.begin(), heat.end(), drivers.begin());
  return watched_value(states, point, steady_state(states, drivers), drivers);
}

void add_places(Zone& zone, const WatchedPlaces& watched) {
  std::vector<std::size_t> next(zone.floor.size(), 1);
  for (const WatchedPlace& place : watched.place) {
    ZonePlace at;
    at.room = place.room;
    at.weights = place.idle;
    at.cold_share = place.corner_share;
    for (std::size_t strip = 0; at_strip(place) && strip < zone.floor.size(); ++strip) {
      if (zone.floor[strip].edge != *place.edge) continue;
      at.strip = strip;
      at.point = next[strip]++;
      const double point_m2K_per_W = heat_gain_m2K_per_W(zone.floor[strip].states, at.point);
      if (place.corner_share > 1.0) at.heat_share = place.running.tube_m2K_per_W / point_m2K_per_W;
    }
    zone.place.push_back(at);
  }
}

}  // namespace

std::optional<Zone> heated_zone(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                                const WatchedPlaces& watched, EdgeFields& fields, FloorHeat heat) {
  expects(design.climate.coldest_degC.has_value(), "zone: no coldest hour");
  Zone zone;
  zone.ground_degC = design.climate.mean_degC;
  add_rooms(zone, design, envelope, floor);
  double floor_m2 = 0.0, covered_m2 = 0.0;
  for (const RoomLoss& room : envelope.room) floor_m2 += room.heated_floor ? room.floor_m2 : 0.0;
  for (std::size_t row = 0; row < envelope.edge.size(); ++row) {
    const EdgeStretch& edge = envelope.edge[row];
    if (!envelope.room[edge.room].heated_floor) continue;
    zone.floor.push_back(strip_of(edge, row, design, watched, fields, heat));
    covered_m2 += edge.length_m * edge.detail.half_width_m;
  }
  if (covered_m2 <= 0.0 || tubes_m2(zone) <= 0.0) return std::nullopt;
  for (FloorStrip& strip : zone.floor) strip.length_m *= floor_m2 / covered_m2;
  const auto longest = std::max_element(zone.floor.begin(), zone.floor.end(),
                                        [](const auto& a, const auto& b) { return a.length_m < b.length_m; });
  zone.sensor_strip = static_cast<std::size_t>(longest - zone.floor.begin());
  add_section(zone, floor.section, heat);
  add_places(zone, watched);
  return zone;
}

}  // namespace slabwright
