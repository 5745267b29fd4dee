// Whole shops: the building with the full field of every edge, its air solved, against the zone of few states that
// settings and hours come from. A power cut, and a cold snap under the heat that a slab sensor calls for.
#include <algorithm>
#include <cmath>

#include "slabwright/building_snap.hpp"
#include "slabwright/building_zone.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/units_exact.hpp"
#include "slow/whole_model.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double year_s = 365.0 * 86400.0;
/// What the fast answer may cost, from an hour after a jump on.
constexpr double fast_K = 0.2, fast_hours_share = 0.03;

struct Shop {
  Design design;
  Envelope envelope;
  WatchedPlaces places;
  Zone zone;
};

/// The edges' own tubes, air and lines; corners are an estimate on top of them, which no section across an edge sees.
Shop shop_of(const std::string& name) {
  static EdgeFields fields;
  const Design design = layout(name).file.design;
  const auto envelope = envelope_of(design, fields);
  const auto loops = plan_loops(design);
  const auto floor = floor_of(design, *loops.value, *envelope.value);
  WatchedPlaces places = watched_places(design, *envelope.value, fields);
  auto& all = places.place;
  all.erase(
      std::remove_if(all.begin(), all.end(), [](const WatchedPlace& p) { return !p.decides || p.corner_share > 1.0; }),
      all.end());
  const auto zone = heated_zone(design, *envelope.value, *floor.value, places, fields);
  REQUIRE(zone);
  return {design, *envelope.value, places, *zone};
}

/// A moment of the fast run, and what was done from there on.
struct Moment {
  ZoneRow row;
  double tube_W_per_m2 = 0.0;
};

DriverValues drivers_of(const Shop& shop, const FloorStrip& strip, const ZoneDrivers& at) {
  const double room_degC = room_air_degC(shop.zone, strip.room, at.air_degC, at.outdoor_degC);
  DriverValues drivers{room_degC, at.outdoor_degC, shop.zone.ground_degC, at.tube_W_per_m2};
  if (strip.near_air_share) drivers.push_back(room_degC + *strip.near_air_share * (at.outdoor_degC - room_degC));
  return drivers;
}

WholeEdge edge_of(const Shop& shop, const FloorStrip& strip, const ZoneHistory& history,
                  const std::vector<Moment>& moments) {
  EdgeDetail detail = shop.envelope.edge[strip.edge].detail;
  const FloorFilm film = floor_film(floor_film_rise_K(50.0));
  detail.indoor_film_m2K_per_W = 1.0 / film.coefficient_W_per_m2K + shop.design.slab.covering.resistance_m2K_per_W;
  WholeEdge edge;
  edge.section = edge_section(detail);
  for (const WatchedPlace& place : shop.places.place)
    if (place.edge && *place.edge == strip.edge) edge.watched.push_back(point_of(detail, place.at));
  edge.length_m = strip.length_m;
  const double rise_share = shop.zone.room_rise_share[strip.room];
  edge.air = {{{edge_row::indoor}, rise_share}};
  if (strip.near_air_share) edge.air.push_back({{edge_row::near_air}, rise_share * (1.0 - *strip.near_air_share)});
  const DriverValues mean = drivers_of(shop, strip, history.mean);
  edge.before = {year_s, mean, drivers_of(shop, strip, history.coldest_month), DriverValues(mean.size(), 0.0)};
  for (std::size_t i = 0; i < mean.size(); ++i) edge.before.cosine[i] -= mean[i];
  edge.drivers = {drivers_of(shop, strip, history.coldest_month)};
  for (std::size_t i = 0; i < moments.size(); ++i) {
    ZoneDrivers at = moments[i].row.at;
    at.tube_W_per_m2 = moments[i].tube_W_per_m2;
    edge.drivers.push_back(drivers_of(shop, strip, at));
    if (i + 1 == moments.size()) break;
    at = moments[i + 1].row.at;
    at.tube_W_per_m2 = moments[i].tube_W_per_m2;
    edge.drivers.push_back(drivers_of(shop, strip, at));
  }
  return edge;
}

/// Every moment twice, before and after its jump of tube heat.
WholeRun whole_of(const Shop& shop, const ZoneHistory& history, const std::vector<Moment>& moments,
                  const ZoneNeeds& needs) {
  WholeBuilding building;
  WholeOptions options;
  const auto add = [&](const Moment& moment) {
    building.times_s.push_back(moment.row.time_s);
    building.outdoor_degC.push_back(moment.row.at.outdoor_degC);
    building.gain_W.push_back(needs.gains_W);
    options.air_guess_degC.push_back(moment.row.at.air_degC);
  };
  add(moments[0]);
  for (std::size_t i = 0; i < moments.size(); ++i) {
    add(moments[i]);
    if (i + 1 < moments.size()) add(moments[i + 1]);
  }
  for (const FloorStrip& strip : shop.zone.floor) building.edges.push_back(edge_of(shop, strip, history, moments));
  building.capacity_J_per_K = shop.zone.capacity_J_per_K;
  building.loss_W_per_K = needs.loss_W_per_K;
  building.start_degC = moments[0].row.at.air_degC;
  options.fields.grid = {0.01, 1.4, 1.0, false};
  options.fields.step_K = 0.005;
  options.air_K = 0.005;
  const WholeRun run = whole_run(building, options);
  REQUIRE(run.moved_K <= options.air_K);
  return run;
}

/// Row of the whole run just before the jump of moment i.
std::size_t whole_row(std::size_t i) { return i == 0 ? 0 : 2 * i; }

/// Temperature of a place by the fields and the air that goes with them.
double whole_degC(const Shop& shop, const WholeRun& run, std::size_t place, std::size_t row, double outdoor_degC) {
  const WatchedPlace& watched = shop.places.place[place];
  if (!watched.edge) {
    const double room_degC = room_air_degC(shop.zone, watched.room, run.air_degC[row], outdoor_degC);
    return temperature_at(watched.idle, {room_degC, outdoor_degC, shop.zone.ground_degC, 0.0});
  }
  for (std::size_t strip = 0; strip < shop.zone.floor.size(); ++strip) {
    if (shop.zone.floor[strip].edge != *watched.edge) continue;
    std::size_t point = 0;
    for (std::size_t before = 0; before < place; ++before)
      if (shop.places.place[before].edge == watched.edge) ++point;
    return run.edges[strip].temperatures_degC[row][point];
  }
  throw std::logic_error("no strip for a place");
}

double worst_K(const Shop& shop, const WholeRun& run, const std::vector<Moment>& moments, double from_s) {
  double worst = 0.0;
  for (std::size_t i = 0; i < moments.size(); ++i) {
    if (moments[i].row.time_s < from_s) continue;
    for (std::size_t place = 0; place < shop.places.place.size(); ++place) {
      const double degC = whole_degC(shop, run, place, whole_row(i), moments[i].row.at.outdoor_degC);
      worst = std::max(worst, std::abs(degC - moments[i].row.place_degC[place]));
    }
  }
  return worst;
}

/// Hours until a place is at its freezing point, or nothing.
template <class At>
std::optional<double> hours_to(const Shop& shop, std::size_t place, const std::vector<Moment>& moments, At at) {
  const double freezes_degC = shop.places.place[place].freezes_degC;
  for (std::size_t i = 1; i < moments.size(); ++i) {
    const double before_K = at(i - 1) - freezes_degC, above_K = at(i) - freezes_degC;
    if (above_K > 0.0 || before_K <= 0.0) continue;
    return (moments[i - 1].row.time_s + 600.0 * before_K / (before_K - above_K)) / hour_s;
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("hours of a power cut are the whole building's") {
  for (const std::string name : {"ten-lines", "old-pour", "frame-shop"}) {
    const Shop shop = shop_of(name);
    const double outdoor_degC = *shop.design.climate.outdoor_degC;
    ZoneDrivers before = held_by_air(shop.zone, needs_at_work(shop.zone), 8.0, outdoor_degC);
    const ZoneHistory history = steady_history(before);
    ZoneStep dark;
    dark.outdoor_degC = outdoor_degC;
    dark.needs = needs_without_power(shop.zone);
    ZoneRun fast(shop.zone, history, 600.0);
    std::vector<Moment> moments{{fast.row(), 0.0}};
    while (moments.back().row.time_s < 36.0 * hour_s) {
      fast.step(dark);
      moments.push_back({fast.row(), 0.0});
    }
    const WholeRun whole = whole_of(shop, history, moments, dark.needs);
    CAPTURE(name, whole.rounds);
    CHECK(worst_K(shop, whole, moments, hour_s) < fast_K);
    int frozen = 0;
    for (std::size_t place = 0; place < shop.places.place.size(); ++place) {
      CAPTURE(shop.places.place[place].name);
      const auto by_fast =
          hours_to(shop, place, moments, [&](std::size_t i) { return moments[i].row.place_degC[place]; });
      const auto by_whole = hours_to(shop, place, moments, [&](std::size_t i) {
        return whole_degC(shop, whole, place, whole_row(i), outdoor_degC);
      });
      if (!by_fast || !by_whole) continue;
      CHECK(*by_fast == Approx(*by_whole).epsilon(fast_hours_share));
      ++frozen;
    }
    CHECK(frozen > 0);
  }
}

TEST_CASE("a cold snap under a slab sensor is the whole building's") {
  for (const std::string name : {"ten-lines", "old-pour", "cold-door"}) {
    const Shop shop = shop_of(name);
    const Climate& climate = shop.design.climate;
    const ZoneNeeds needs = needs_at_work(shop.zone);
    const double month_degC = climate.mean_degC - climate.half_swing_K, sensor_degC = 15.0;
    const ZoneHistory history{held_by_sensor(shop.zone, needs, sensor_degC, climate.mean_degC),
                              held_by_sensor(shop.zone, needs, sensor_degC, month_degC)};
    const Snap snap = snap_of(shop.design);
    ZoneRun fast(shop.zone, history, hour_s);
    std::vector<Moment> moments{{fast.row(), 0.0}};
    for (const double outdoor_degC : snap.hourly_degC) {
      ZoneStep step;
      step.outdoor_degC = outdoor_degC;
      step.needs = needs;
      step.tube_W_per_m2 = std::max(0.0, fast.tube_heat_for_sensor(step, sensor_degC));
      moments.back().tube_W_per_m2 = step.tube_W_per_m2;
      fast.step(step);
      moments.push_back({fast.row(), step.tube_W_per_m2});
    }
    const WholeRun whole = whole_of(shop, history, moments, needs);
    CAPTURE(name, whole.rounds);
    CHECK(worst_K(shop, whole, moments, hour_s * static_cast<double>(snap.lead_hours)) < fast_K);
  }
}
