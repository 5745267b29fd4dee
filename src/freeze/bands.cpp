// Bands of settings and hours: few whole solves, a surface through them, many draws from it.
#include "slabwright/freeze_bands.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "freeze/held_zone.hpp"
#include "slabwright/maths_sampling.hpp"
#include "slabwright/maths_surface.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace freeze;

/// Settings move by their difference to the best figure's own grid, so that a coarse one does.
constexpr FieldOptions coarse_grid{0.02, 1.5, 1.0, false};
constexpr double longest_s = 96.0 * hour_s;
constexpr std::uint64_t check_seed_step = 1000;

/// Coordinates of the unit box.
constexpr std::size_t soil = 0, leaks = 1, wet = 2, crushed = 3, tubes = 4, sensor = 5, dimensions = 6;
const std::vector<std::string> words{"conductivity of the soil", "air leaks",          "wet foam", "crushed foam",
                                     "where the tubes lie",      "error of the sensor"};
/// What was entered: foam dry and whole.
const std::vector<double> as_entered{0.5, 0.5, 0.0, 0.0, 0.5, 0.5};

std::vector<double> widths_of(const Unknowns& unknowns) {
  return {unknowns.soil_share,    unknowns.leak_share, unknowns.wet_share,
          unknowns.crushed_share, unknowns.tube_m,     unknowns.sensor_error_K};
}

/// From the unit box to minus one and one.
double both_ways(double unit) { return 2.0 * unit - 1.0; }

void spoil(std::optional<double>& share, double more) { share = share.value_or(0.0) + more; }

/// The design at one point of the box.
Design design_at(const Design& design, const Unknowns& unknowns, const std::vector<double>& at) {
  Design moved = design;
  moved.ground.conductivity_W_per_mK *= 1.0 + unknowns.soil_share * both_ways(at[soil]);
  moved.building.air_changes_per_s *= 1.0 + unknowns.leak_share * both_ways(at[leaks]);
  for (auto* wet_share : {&moved.insulation.wet_share, &moved.edge.wet_share})
    spoil(*wet_share, at[wet] * unknowns.wet_share);
  for (auto* lost : {&moved.insulation.crushed_share, &moved.edge.crushed_share})
    spoil(*lost, at[crushed] * unknowns.crushed_share);
  return moved;
}

/// Losses by area hold leaks too: the share that practice gives them.
constexpr double leaks_of_area_share = 0.35;

Envelope envelope_at(const HeldShop& held, const Design& moved, const Unknowns& unknowns,
                     const std::vector<double>& at) {
  Envelope envelope = held.envelope;
  envelope.edge = edges_of(moved);
  const double more = unknowns.leak_share * both_ways(at[leaks]);
  for (RoomLoss& room : envelope.room)
    room.total_W_per_K += more * (room.air_W_per_K + leaks_of_area_share * room.by_area_W_per_K);
  return envelope;
}

WatchedPlaces places_at(const WatchedPlaces& watched, const Unknowns& unknowns, const std::vector<double>& at) {
  constexpr double nearest_m = 0.02;
  WatchedPlaces moved = watched;
  for (WatchedPlace& place : moved.place)
    if (place.kind == PlaceKind::tube)
      place.at.in_m = std::max(nearest_m, place.at.in_m + unknowns.tube_m * both_ways(at[tubes]));
  return moved;
}

/// [deciding place]: wall thermostat, slab sensor, and hours of a cut, in that order one behind the other.
std::vector<double> whole_solve(const HeldShop& held, const Freeze& freeze, const Unknowns& unknowns,
                                const std::vector<double>& at) {
  const Design design = design_at(held.design, unknowns, at);
  const Envelope envelope = envelope_at(held, design, unknowns, at);
  const WatchedPlaces watched = places_at(held.watched, unknowns, at);
  EdgeFields fields(coarse_grid);
  const HeldShop shop{design, envelope, held.floor, watched, held.snap};
  const auto zone = held_zone(shop, fields);
  const SnapCurves curves = snap_curves(zone->zone, snap_case(design, held.snap, zone->shop.first));
  const double outdoor_degC = *design.climate.coldest_degC;
  const ZoneStep dark = without_power(*zone, outdoor_degC);
  const double reads_off_K = unknowns.sensor_error_K * both_ways(at[sensor]);
  const double air_degC = std::max(outdoor_degC, freeze.air->dial_degC - reads_off_K);
  const std::vector<ZoneRow> rows =
      run_until_frozen(*zone, held_at_dial(*zone, air_degC, outdoor_degC), [&](const ZoneRow&) { return dark; });
  std::vector<double> air, slab, lasts;
  for (std::size_t i = 0; i < zone->places.place.size(); ++i) {
    const WatchedPlace& place = zone->places.place[i];
    if (!place.decides) continue;
    constexpr double never_degC = 60.0;
    air.push_back(asked_dial_degC(curves.air[i], place.limit_degC).value_or(never_degC));
    slab.push_back(asked_dial_degC(curves.slab[i], place.limit_degC).value_or(never_degC));
    // Hours spread over powers of two; their logarithm is nearly straight.
    lasts.push_back(std::log(std::max(600.0, freezes_after_s(*zone, i, rows, Water::stands).value_or(longest_s))));
  }
  std::vector<double> all = std::move(air);
  all.insert(all.end(), slab.begin(), slab.end());
  all.insert(all.end(), lasts.begin(), lasts.end());
  return all;
}

/// The most of some outputs, or the least.
double most_of(const Surface& surface, const std::vector<double>& at, std::size_t from, std::size_t to) {
  double most = surface_value(surface, at, from);
  for (std::size_t i = from + 1; i < to; ++i) most = std::max(most, surface_value(surface, at, i));
  return most;
}
double least_of(const Surface& surface, const std::vector<double>& at, std::size_t from, std::size_t to) {
  double least = surface_value(surface, at, from);
  for (std::size_t i = from + 1; i < to; ++i) least = std::min(least, surface_value(surface, at, i));
  return least;
}

struct Fitted {
  Surface surface;
  std::size_t places = 0;
  double air_error_K = 0.0, slab_error_K = 0.0, lasts_error = 0.0;  ///< of the deciding one; the last of a logarithm

  double air_degC(const std::vector<double>& at) const { return most_of(surface, at, 0, places); }
  double slab_degC(const std::vector<double>& at) const { return most_of(surface, at, places, 2 * places); }
  double lasts_s(const std::vector<double>& at) const {
    return std::min(longest_s, std::exp(least_of(surface, at, 2 * places, 3 * places)));
  }
};

/// What is known does not vary.
void flatten(SamplePoints& points, const Unknowns& unknowns) {
  const std::vector<double> widths = widths_of(unknowns);
  for (std::vector<double>& point : points)
    for (std::size_t d = 0; d < dimensions; ++d)
      if (widths[d] <= 0.0) point[d] = as_entered[d];
}

double most(const std::vector<double>& values, std::size_t from, std::size_t to) {
  return *std::max_element(values.begin() + static_cast<std::ptrdiff_t>(from),
                           values.begin() + static_cast<std::ptrdiff_t>(to));
}
double least(const std::vector<double>& values, std::size_t from, std::size_t to) {
  return *std::min_element(values.begin() + static_cast<std::ptrdiff_t>(from),
                           values.begin() + static_cast<std::ptrdiff_t>(to));
}

/// Differences to what was entered, on top of the best figures: those have a finer grid, and a real thermostat.
struct Draw {
  double air_degC, slab_degC, lasts_s;  ///< the second means nothing where no slab setting is enough
};
Draw draw_at(const Fitted& fitted, const Freeze& freeze, const Unknowns& unknowns, const std::vector<double>& at) {
  const double off_K = unknowns.sensor_error_K * both_ways(at[sensor]);
  Draw draw{freeze.air->best_degC + off_K + fitted.air_degC(at) - fitted.air_degC(as_entered), 0.0, fitted.lasts_s(at)};
  if (freeze.slab)
    draw.slab_degC = freeze.slab->best_degC + off_K + fitted.slab_degC(at) - fitted.slab_degC(as_entered);
  return draw;
}

/// One unknown from end to end, the others as entered.
std::vector<BandInput> inputs_of(const Fitted& fitted, const Freeze& freeze, const Unknowns& unknowns) {
  std::vector<BandInput> inputs;
  for (std::size_t d = 0; d < dimensions; ++d) {
    if (widths_of(unknowns)[d] <= 0.0) continue;
    std::vector<double> low = as_entered, high = as_entered;
    low[d] = 0.0;
    high[d] = 1.0;
    const Draw from = draw_at(fitted, freeze, unknowns, low), to = draw_at(fitted, freeze, unknowns, high);
    inputs.push_back({words[d], std::abs(to.air_degC - from.air_degC), {}});
    if (freeze.slab) inputs.back().slab_K = std::abs(to.slab_degC - from.slab_degC);
  }
  std::stable_sort(inputs.begin(), inputs.end(), [](const auto& a, const auto& b) { return a.air_K > b.air_K; });
  return inputs;
}

Bands bands_from(const Fitted& fitted, const Freeze& freeze, const Unknowns& unknowns, const BandOptions& options) {
  SamplePoints draws = quasi_random(options.samples, dimensions, options.seed);
  flatten(draws, unknowns);
  std::vector<double> air, slab, lasts;
  for (const std::vector<double>& at : draws) {
    const Draw draw = draw_at(fitted, freeze, unknowns, at);
    air.push_back(draw.air_degC);
    slab.push_back(draw.slab_degC);
    lasts.push_back(draw.lasts_s);
  }
  const Band by_air = band_of(air), by_slab = band_of(slab), by_hours = band_of(lasts);
  Bands bands;
  bands.air_low_degC = by_air.low - fitted.air_error_K;
  bands.air_middle_degC = by_air.middle;
  bands.air_high_degC = by_air.high + fitted.air_error_K;
  if (freeze.slab) {
    bands.slab_low_degC = by_slab.low - fitted.slab_error_K;
    bands.slab_middle_degC = by_slab.middle;
    bands.slab_high_degC = by_slab.high + fitted.slab_error_K;
    bands.slab_error_K = fitted.slab_error_K;
  }
  bands.lasts_low_s = by_hours.low * std::exp(-fitted.lasts_error);
  bands.lasts_middle_s = by_hours.middle;
  bands.lasts_high_s = std::min(longest_s, by_hours.high * std::exp(fitted.lasts_error));
  bands.air_error_K = fitted.air_error_K;
  bands.lasts_error_share = fitted.lasts_error;
  bands.solves = static_cast<int>(options.solves);
  bands.checks = static_cast<int>(options.checks);
  bands.samples = static_cast<int>(options.samples);
  bands.input = inputs_of(fitted, freeze, unknowns);
  return bands;
}

}  // namespace

Unknowns usual_unknowns(const Design& design) {
  Unknowns usual;
  usual.sensor_error_K = design.frost_hold.sensor_error_K;
  return usual;
}

std::optional<Bands> freeze_bands(const HeldShop& held, const Freeze& freeze, const Unknowns& unknowns,
                                  const BandOptions& options, const Progress& progress) {
  if (!freeze.air) return std::nullopt;
  SamplePoints asked = surface_points(dimensions, options.solves, options.seed);
  SamplePoints checks = quasi_random(options.checks, dimensions, options.seed + check_seed_step);
  flatten(asked, unknowns);
  flatten(checks, unknowns);
  const double all = static_cast<double>(asked.size() + checks.size());
  double done = 0.0;
  const auto solved = [&](const SamplePoints& points) {
    std::vector<std::vector<double>> values;
    for (const std::vector<double>& at : points) {
      values.push_back(whole_solve(held, freeze, unknowns, at));
      done += 1.0;
      tell(progress, done / all);
    }
    return values;
  };
  const auto values = solved(asked);
  Fitted fitted{fit_surface(asked, values).surface, values.front().size() / 3};
  const auto truth = solved(checks);
  const std::size_t places = fitted.places;
  for (std::size_t i = 0; i < checks.size(); ++i) {
    fitted.air_error_K = std::max(fitted.air_error_K, std::abs(fitted.air_degC(checks[i]) - most(truth[i], 0, places)));
    fitted.slab_error_K =
        std::max(fitted.slab_error_K, std::abs(fitted.slab_degC(checks[i]) - most(truth[i], places, 2 * places)));
    fitted.lasts_error =
        std::max(fitted.lasts_error, std::abs(least_of(fitted.surface, checks[i], 2 * places, 3 * places) -
                                              least(truth[i], 2 * places, 3 * places)));
  }
  return bands_from(fitted, freeze, unknowns, options);
}

LeastDials covering(const Bands& bands) {
  LeastDials least;
  least.air_degC = bands.air_high_degC;
  if (bands.slab_high_degC) least.slab_degC = *bands.slab_high_degC;
  return least;
}

}  // namespace slabwright
