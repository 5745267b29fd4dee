// A power cut by few states against the whole field under the same air.
#include <algorithm>
#include <cmath>

#include "slabwright/handbook_floor_film.hpp"
#include "zone_shop.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// The air of the fast run over one strip, with the jump of the tube heat at the cut.
DriverSeries air_series(const Zone& zone, const FloorStrip& strip, const std::vector<ZoneRow>& rows) {
  DriverSeries series;
  const auto add = [&](const ZoneRow& row, double tube_W_per_m2) {
    series.times_s.push_back(row.time_s);
    const double outdoor_degC = row.at.outdoor_degC;
    const double room_degC = room_air_degC(zone, strip.room, row.at.air_degC, outdoor_degC);
    series.drivers.push_back({room_degC, outdoor_degC, zone.ground_degC, tube_W_per_m2});
    if (strip.near_air_share)
      series.drivers.back().push_back(room_degC + *strip.near_air_share * (outdoor_degC - room_degC));
  };
  add(rows[0], rows[0].at.tube_W_per_m2);
  for (const ZoneRow& row : rows) add(row, 0.0);
  return series;
}

/// The edge as the strips see it: with the film of a floor that warms the air.
EdgeDetail detail_of_strip(const Design& design, const EdgeStretch& edge) {
  EdgeDetail detail = edge.detail;
  const FloorFilm film = floor_film(floor_film_rise_K(50.0));
  detail.indoor_film_m2K_per_W = 1.0 / film.coefficient_W_per_m2K + design.slab.covering.resistance_m2K_per_W;
  return detail;
}

constexpr std::size_t plane_points = 12;

/// The nearest tube, then points spread evenly over the tubes' plane.
std::vector<FieldPoint> watched_in(const EdgeDetail& detail, const EdgeStretch& edge) {
  std::vector<FieldPoint> points{point_of(detail, {edge.tube_in_m, detail.tube_depth_m})};
  const double wide_m = point_of(detail, {detail.last_tube_in_m, 0.0}).x_m;
  for (std::size_t i = 0; i < plane_points; ++i)
    points.push_back({wide_m * (static_cast<double>(i) + 0.5) / plane_points, -detail.tube_depth_m});
  return points;
}

/// Heat from the strip into the air, through as many stretches as there are.
double up_W_per_m(const FieldSection& section, const FieldRun& run, std::size_t row) {
  std::vector<std::vector<double>> by_boundary;
  for (const double heat : run.heat_in_W_per_m[row]) by_boundary.push_back({heat});
  const auto heat = heat_by_driver(section, by_boundary);
  double in_W_per_m = heat[edge_row::indoor][0];
  if (heat.size() > edge_row::near_air_heat) in_W_per_m += heat[edge_row::near_air_heat][0];
  return -in_W_per_m;
}

/// What leaving out states may cost a tube from an hour after a jump on, and within it: what is fast is left out.
constexpr double few_states_K = 0.05, within_the_hour_K = 0.2;
/// What taking the plane from the heat upward may cost; 0.14 K when this was written, on the cold side.
constexpr double plane_K = 0.2;

}  // namespace

TEST_CASE("a day without power is the whole field's, at the tubes and in the heat") {
  EdgeFields fields;
  const ZoneShop shop = zone_shop(bare_shop(), fields);
  const ZoneDrivers before = held_by_air(shop.zone, needs_at_work(shop.zone), 8.0, -20.0);
  const auto rows = rows_of(shop.zone, steady_history(before), dark(shop.zone, -20.0), 600.0, 24.0 * hour_s);
  // The grid of the steady answers: what few states do, not what a grid does.
  TimeOptions options;
  options.grid = EdgeFields::weight_grid;
  std::vector<double> field_up_W(rows.size(), 0.0), plane_degC(rows.size(), 0.0);
  for (const FloorStrip& strip : shop.zone.floor) {
    const EdgeStretch& edge = shop.envelope.edge[strip.edge];
    CAPTURE(edge.name);
    const EdgeDetail detail = detail_of_strip(shop.design, edge);
    const FieldSection section = edge_section(detail);
    const DriverSeries series = air_series(shop.zone, strip, rows);
    const FieldRun run =
        field_run(section, watched_in(detail, edge), steady_drivers(series.drivers[0]), series, options);
    const std::size_t tube = place_row(shop.places, edge.name);
    double worst_K = 0.0, early_K = 0.0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      double& worst = rows[i].time_s < hour_s ? early_K : worst_K;
      worst = std::max(worst, std::abs(run.temperatures_degC[i + 1][0] - rows[i].place_degC[tube]));
    }
    CHECK(worst_K < few_states_K);
    CHECK(early_K < within_the_hour_K);
    for (std::size_t i = 0; i < rows.size(); ++i)
      for (std::size_t p = 1; p <= plane_points; ++p)
        plane_degC[i] += run.temperatures_degC[i + 1][p] / plane_points * strip.length_m * strip.width_m / 108.0;
    for (std::size_t i = 0; i < rows.size(); ++i) field_up_W[i] += strip.length_m * up_W_per_m(section, run, i + 1);
  }
  // Heat that comes out of the concrete over the tubes counts as if it came through: a tenth of a kelvin.
  for (std::size_t i = 6; i < rows.size(); i += 6) {
    CAPTURE(rows[i].time_s, plane_degC[i]);
    CHECK(rows[i].water_degC == Approx(plane_degC[i]).margin(plane_K));
  }
  // From the first hour on: fast states are left out.
  double fast_J = 0.0, field_J = 0.0;
  for (std::size_t i = 6; i < rows.size(); ++i) {
    fast_J += rows[i].up_W * 600.0;
    field_J += field_up_W[i] * 600.0;
  }
  CHECK(fast_J == Approx(field_J).epsilon(0.005));
}
