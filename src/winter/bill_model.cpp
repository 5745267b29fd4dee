#include "winter/bill_model.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::winter {
namespace {

/// From 1 July to the end of April: what comes after heats nothing.
constexpr std::size_t to_end_of_season = hours_of_year - 61 * 24;
constexpr double box_errors = 2.5, box_errors_ground = 2.0;
constexpr std::uint64_t unseen_seed_step = 1000;
constexpr int season_months[] = {10, 11, 12, 1, 2, 3, 4};
constexpr std::size_t box_dimensions = 3;

std::vector<Dials> turned_up(std::vector<Dials> dials, double more_K) {
  for (Dials& hour : dials)
    for (double* dial : {&hour.floor_air_degC, &hour.floor_slab_degC, &hour.source_degC})
      if (*dial > not_set_degC) *dial += more_K;
  return dials;
}

std::vector<double> outdoors(const Season& season, const MonthsOfUse& warmer_K) {
  std::vector<double> degC;
  for (const SeasonHour& hour : season.hour)
    degC.push_back(hour.outdoor_degC + warmer_K[static_cast<std::size_t>(hour.month - 1)]);
  return degC;
}

BillPoint in_box(const BillModel& model, const std::vector<double>& unit) {
  const auto between = [](double low, double high, double share) { return low + share * (high - low); };
  return {between(model.low.loss_share, model.high.loss_share, unit[0]),
          between(model.low.ground_share, model.high.ground_share, unit[1]),
          between(model.low.indoor_K, model.high.indoor_K, unit[2])};
}

std::vector<double> coordinates(const BillPoint& at) { return {at.loss_share, at.ground_share, at.indoor_K}; }

std::vector<double> of_season(const MonthsOfUse& use) {
  std::vector<double> values;
  for (const int month : season_months) values.push_back(use[static_cast<std::size_t>(month - 1)]);
  return values;
}

/// Points of the box and what whole runs say of them.
struct Asked {
  SamplePoints points;
  std::vector<std::vector<double>> values;
};
Asked asked(const BillCase& of, const BillModel& model, const SamplePoints& unit) {
  Asked all;
  for (const std::vector<double>& at : unit) {
    const BillPoint point = in_box(model, at);
    all.points.push_back(coordinates(point));
    all.values.push_back(of_season(heat_use(of, point)));
  }
  return all;
}

void add_errors(BillModel& model, const Asked& unseen) {
  const std::vector<SurfaceError> errors = surface_error(model.surface, unseen.points, unseen.values);
  double mean_J = 0.0;
  for (const double use_J : of_season(model.designed_J)) mean_J += use_J / static_cast<double>(errors.size());
  for (std::size_t i = 0; i < errors.size(); ++i) {
    model.error_J[static_cast<std::size_t>(season_months[i] - 1)] = errors[i].rms;
    if (mean_J > 0.0) model.largest_error_share = std::max(model.largest_error_share, errors[i].largest / mean_J);
  }
}

}  // namespace

MonthsOfUse heat_use(const BillCase& of, const BillPoint& at, const MonthsOfUse& outdoor_K) {
  const YearShop shop = shop_at(of.range, at.loss_share, at.ground_share);
  const WayCase way{
      shop,         of.way.season,    of.way.machines,  turned_up(of.way.dials, at.indoor_K), of.way.deadband_K,
      of.way.reset, of.way.work_degC, of.way.has_source};
  RunSpan span;
  span.places = false;
  const ShopState start = begun(shop, of.history, since_coldest_s);
  const ShopState years = carried_on(shop, start, run_way(way, start, {}, span).end, year_long_s);
  const std::vector<double> outdoor_degC = outdoors(of.way.season, outdoor_K);
  span.count = to_end_of_season;
  span.outdoor_degC = &outdoor_degC;
  const WayYear year = run_way(way, years, {}, span);
  MonthsOfUse use{};
  for (std::size_t i = 0; i < year.hour.size(); ++i) {
    const WayHour& hour = year.hour[i];
    use[static_cast<std::size_t>(way.season.hour[i].month - 1)] += hour.boiler_J + hour.source_J + hour.pump_J;
  }
  return use;
}

BillModel bill_model(const BillCase& of, const BillPriors& priors, const BillModelOptions& options) {
  BillModel model;
  const auto end = [](double error, double count) { return std::exp(count * error); };
  const double loss = end(priors.loss_share, box_errors), ground = end(priors.ground_share, box_errors_ground);
  model.low = {1.0 / loss, std::max(of.range.less_share, 1.0 / ground), -box_errors * priors.indoor_K};
  model.high = {loss, std::min(of.range.more_share, ground), box_errors * priors.indoor_K};
  model.designed_J = heat_use(of, {});
  MonthsOfUse warmer_K;
  warmer_K.fill(1.0);
  const MonthsOfUse warmer = heat_use(of, {}, warmer_K);
  for (std::size_t i = 0; i < warmer.size(); ++i) model.per_outdoor_J_per_K[i] = model.designed_J[i] - warmer[i];
  const Asked seen = asked(of, model, surface_points(box_dimensions, options.solves, options.seed));
  model.surface = fit_surface(seen.points, seen.values).surface;
  add_errors(model, asked(of, model, quasi_random(options.checks, box_dimensions, options.seed + unseen_seed_step)));
  return model;
}

double heat_in_month(const BillModel& model, const BillPoint& at, int month) {
  const std::size_t row = static_cast<std::size_t>(
      std::find(std::begin(season_months), std::end(season_months), month) - std::begin(season_months));
  const std::vector<double> point{std::clamp(at.loss_share, model.low.loss_share, model.high.loss_share),
                                  std::clamp(at.ground_share, model.low.ground_share, model.high.ground_share),
                                  std::clamp(at.indoor_K, model.low.indoor_K, model.high.indoor_K)};
  return std::max(0.0, surface_value(model.surface, point, row) + model.shift_J[static_cast<std::size_t>(month - 1)]);
}

void anchor(BillModel& model, const BillCase& of, const BillPoint& at) {
  const MonthsOfUse whole = heat_use(of, at);
  model.shift_J.fill(0.0);
  MonthsOfUse shift_J{};
  for (const int month : season_months) {
    const std::size_t row = static_cast<std::size_t>(month - 1);
    shift_J[row] = whole[row] - heat_in_month(model, at, month);
  }
  model.shift_J = shift_J;
}

}  // namespace slabwright::winter
