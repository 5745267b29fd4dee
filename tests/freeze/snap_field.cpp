// Superposition against the whole field: an edge through a cold snap after years of a frost hold.
#include <algorithm>
#include <cmath>

#include "freeze/holds.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/units_exact.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double year_s = 365.0 * 86400.0;

/// Room, outdoors, ground, tube heat and the air near the door.
DriverValues drivers(const Design& d, double air_degC, double outdoor_degC) {
  return {air_degC, outdoor_degC, d.climate.mean_degC, 0.0,
          air_degC + d.frost_hold.door_air_share * (outdoor_degC - air_degC)};
}

/// The edge as the zone has it: with the film of a floor that warms the air.
EdgeDetail with_film_up(EdgeDetail detail) {
  detail.indoor_film_m2K_per_W = 1.0 / floor_film(floor_film_rise_K(50.0)).coefficient_W_per_m2K;
  return detail;
}

/// From the coldest month of the year's wave, then the snap's hours, straight between them.
FieldRun whole_field(const Line& line, const EdgeStretch& edge, double air_degC) {
  const Design& d = line.design;
  const double month_degC = d.climate.mean_degC - d.climate.half_swing_K;
  PeriodicDrivers before{year_s, drivers(d, air_degC, d.climate.mean_degC), drivers(d, air_degC, month_degC),
                         DriverValues(5, 0.0)};
  for (std::size_t i = 0; i < 5; ++i) before.cosine[i] -= before.mean[i];
  DriverSeries series{{0.0}, {drivers(d, air_degC, month_degC)}};
  for (std::size_t hour = 0; hour < line.snap.hourly_degC.size(); ++hour) {
    series.times_s.push_back(hour_s * static_cast<double>(hour + 1));
    series.drivers.push_back(drivers(d, air_degC, line.snap.hourly_degC[hour]));
  }
  const EdgeDetail detail = with_film_up(edge.detail);
  TimeOptions options;
  options.grid = EdgeFields::weight_grid;
  return field_run(edge_section(detail), {point_of(detail, {edge.tube_in_m, detail.tube_depth_m})}, before, series,
                   options);
}

}  // namespace

TEST_CASE("the tube at a door through a snap is the whole field's, for a setting that was never run") {
  constexpr double superposition_K = 0.05, dial_degC = 9.0;
  Design design = door_shop();  // a second source keeps the floor off in any weather: the air alone drives the edge
  design.opening[0].tube_distance_m = 0.3;
  Line line = line_of(design);
  EdgeFields fields;
  const auto zone = heated_zone(design, line.envelope, line.floor, line.places, fields);
  REQUIRE(zone);
  const SnapCurves curves = snap_curves(*zone, snap_case(design, line.snap, 0));
  for (std::size_t i = 0; i < line.places.place.size(); ++i) {
    const WatchedPlace& place = line.places.place[i];
    if (place.kind != PlaceKind::tube || place.name.find("big door") == std::string::npos) continue;
    const FieldRun run = whole_field(line, line.envelope.edge[*place.edge], dial_degC);
    const PlaceCurve& curve = curves.air[i];
    double worst_K = 0.0;
    for (std::size_t moment = 2; moment < curve.gain_share.size(); moment += 3) {  // on the hours
      const double fast_degC = curve.gain_share[moment] * dial_degC + curve.base_degC[moment];
      const std::size_t row = 1 + moment / 3;
      worst_K = std::max(worst_K, std::abs(fast_degC - run.temperatures_degC[row][0]));
    }
    CAPTURE(place.name, worst_K);
    CHECK(worst_K < superposition_K);
    CHECK(curve.gain_share.size() == 3 * line.snap.hourly_degC.size());
    return;
  }
  FAIL("no tube at the big door");
}

TEST_CASE("curves are straight in the dial: three settings lie on one line, and asked is where it meets the limit") {
  PlaceCurve curve{{0.5, 0.8, 0.6}, {-2.0, -4.0, -5.0}};
  CHECK(coldest_degC(curve, 10.0) == Approx(1.0));
  REQUIRE(asked_dial_degC(curve, 2.0));
  CHECK(*asked_dial_degC(curve, 2.0) == Approx(7.0 / 0.6));
  CHECK(coldest_degC(curve, *asked_dial_degC(curve, 2.0)) == Approx(2.0));
  CHECK(asking_moment(curve, 2.0) == 2);
  curve.gain_share[1] = 0.0;
  CHECK_FALSE(asked_dial_degC(curve, 2.0));  // a moment below the limit that no dial moves
  curve.base_degC[1] = 3.0;
  CHECK(asked_dial_degC(curve, 2.0));
}
