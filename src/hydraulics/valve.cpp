// Valves.
#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/hydraulics_valve.hpp"
#include "slabwright/maths.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double bar_Pa = 1e5;
constexpr double water_kg_per_m3 = 1000.0;  // the density that the definition of Kv means

// A US gallon (231 cubic inches) a minute in m3/h over the square root of a pound-force a square inch in bar.
const double kv_per_cv = gallon_m3 * 60.0 / std::sqrt(psi_Pa / bar_Pa);

bool all_above_zero(const std::vector<double>& values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return value > 0.0; });
}

// K velocity pressures and (Q/Kv)^2 bar are the same loss when K kv^2 is this.
double loss_coefficient_times_kv_squared(double inside_diameter_m) {
  const double area = 0.25 * pi * inside_diameter_m * inside_diameter_m;
  return 2.0 * bar_Pa / water_kg_per_m3 * (hour_s * area) * (hour_s * area);
}

template <class Curve>
double open_share(const Curve& curve, double turns_open) {
  expects(curve.open_kv > 0.0 && curve.turns > 0.0 && curve.shut_share > 0.0 && curve.shut_share < 1.0,
          "valve: Kv and turns above zero, share at shut between 0 and 1");
  return std::clamp(turns_open / curve.turns, 0.0, 1.0);
}

double kv(const LinearValve& curve, double turns_open) {
  const double share = open_share(curve, turns_open);
  return curve.open_kv * (curve.shut_share + (1.0 - curve.shut_share) * share);
}

double kv(const EqualPercentageValve& curve, double turns_open) {
  return curve.open_kv * std::pow(curve.shut_share, 1.0 - open_share(curve, turns_open));
}

double kv(const ValveTable& curve, double turns_open) {
  std::vector<TablePoint> rows;
  for (const TurnPoint& point : curve.points()) rows.push_back({point.turns, point.kv});
  return linear_in_table(rows, turns_open).value;
}

double turns(const LinearValve& curve, double wanted_kv) {
  return curve.turns * (wanted_kv / curve.open_kv - curve.shut_share) / (1.0 - curve.shut_share);
}

double turns(const EqualPercentageValve& curve, double wanted_kv) {
  return curve.turns * (1.0 - std::log(wanted_kv / curve.open_kv) / std::log(curve.shut_share));
}

double turns(const ValveTable& curve, double wanted_kv) {
  std::vector<TablePoint> rows;
  for (const TurnPoint& point : curve.points()) rows.push_back({point.kv, point.turns});
  return linear_in_table(rows, wanted_kv).value;
}

struct Travel {
  double shut_turns = 0.0;
  double open_turns = 0.0;
};

template <class Curve>
Travel travel(const Curve& curve) {
  return {0.0, curve.turns};
}
Travel travel(const ValveTable& curve) { return {curve.points().front().turns, curve.points().back().turns}; }

}  // namespace

double kv_from_cv(double cv) { return kv_per_cv * cv; }
double cv_from_kv(double kv) { return kv / kv_per_cv; }

Loss valve_loss(double kv, const Liquid& liquid, double flow_m3_per_s) {
  expects(kv > 0.0 && liquid.density_kg_per_m3 > 0.0, "valve_loss: a Kv and a density above zero");
  const double hourly = hour_s / kv;
  const double per_flow =
      bar_Pa * hourly * hourly * liquid.density_kg_per_m3 / water_kg_per_m3 * std::abs(flow_m3_per_s);
  return {per_flow * flow_m3_per_s, 2.0 * per_flow};
}

// Below the band's end, with s = sqrt(dp): s^3 - opening s = band Q sqrt(R), where R Q^2 is the drop of the open valve.
// On the side of its largest root where s is too great the cubic is convex, so that Newton comes down to it and stops
// when rounding stops it.
Loss bypass_loss(const BypassValve& valve, const Liquid& liquid, double flow_m3_per_s) {
  expects(valve.opening_Pa > 0.0 && valve.band_Pa > 0.0, "bypass_loss: an opening pressure and a band above zero");
  const Loss open = valve_loss(valve.open_kv, liquid, flow_m3_per_s);
  const double open_from = valve.opening_Pa + valve.band_Pa;
  if (open.pressure_Pa >= open_from) return open;
  const double root_of_resistance = std::sqrt(valve_loss(valve.open_kv, liquid, 1.0).pressure_Pa);
  const double slope_of_right = valve.band_Pa * root_of_resistance;
  if (flow_m3_per_s <= 0.0) {
    const double slope = slope_of_right / std::sqrt(valve.opening_Pa);
    return {valve.opening_Pa + slope * flow_m3_per_s, slope};
  }
  const auto cubic_slope = [&](double s) { return 3.0 * s * s - valve.opening_Pa; };
  double s = std::sqrt(open_from), before = 2.0 * s;
  while (s < before) {
    before = s;
    s -= ((s * s - valve.opening_Pa) * s - slope_of_right * flow_m3_per_s) / cubic_slope(s);
  }
  return {s * s, 2.0 * s * slope_of_right / cubic_slope(s)};
}

double bypass_flow_m3_per_s(const BypassValve& valve, const Liquid& liquid, double pressure_Pa) {
  if (pressure_Pa <= valve.opening_Pa) return 0.0;
  const double open_share = std::min((pressure_Pa - valve.opening_Pa) / valve.band_Pa, 1.0);
  return open_share * std::sqrt(pressure_Pa / valve_loss(valve.open_kv, liquid, 1.0).pressure_Pa);
}

ThreeWayPorts ports_at(const ThreeWayValve& valve, double hot_share) {
  expects(valve.open_kv > 0.0 && valve.leak_share >= 0.0 && valve.leak_share < 1.0, "ports_at: a valve");
  expects(hot_share >= 0.0 && hot_share <= 1.0, "ports_at: a share between 0 and 1");
  return {valve.open_kv * std::max(hot_share, valve.leak_share),
          valve.open_kv * std::max(1.0 - hot_share, valve.leak_share)};
}

double kv_for(double flow_m3_per_s, double pressure_Pa, const Liquid& liquid) {
  expects(flow_m3_per_s > 0.0 && pressure_Pa > 0.0, "kv_for: a flow and a drop above zero");
  return hour_s * flow_m3_per_s * std::sqrt(liquid.density_kg_per_m3 / water_kg_per_m3 * bar_Pa / pressure_Pa);
}

double kv_in_series(const std::vector<double>& kvs) {
  expects(!kvs.empty() && all_above_zero(kvs), "kv_in_series: valves with a Kv above zero");
  double resistance = 0.0;
  for (const double kv : kvs) resistance += 1.0 / (kv * kv);
  return 1.0 / std::sqrt(resistance);
}

double kv_in_parallel(const std::vector<double>& kvs) {
  expects(!kvs.empty() && all_above_zero(kvs), "kv_in_parallel: valves with a Kv above zero");
  double sum = 0.0;
  for (const double kv : kvs) sum += kv;
  return sum;
}

double loss_coefficient_from_kv(double kv, double inside_diameter_m) {
  expects(kv > 0.0 && inside_diameter_m > 0.0, "loss_coefficient_from_kv: both above zero");
  return loss_coefficient_times_kv_squared(inside_diameter_m) / (kv * kv);
}

double kv_from_loss_coefficient(double loss_coefficient, double inside_diameter_m) {
  expects(loss_coefficient > 0.0 && inside_diameter_m > 0.0, "kv_from_loss_coefficient: both above zero");
  return std::sqrt(loss_coefficient_times_kv_squared(inside_diameter_m) / loss_coefficient);
}

Checked<ValveTable> valve_table(const std::vector<TurnPoint>& points) {
  bool good = points.size() >= 2;
  for (std::size_t i = 0; i < points.size(); ++i) {
    good = good && std::isfinite(points[i].turns) && std::isfinite(points[i].kv);
    good = good && points[i].turns >= 0.0 && points[i].kv >= 0.0;
    if (i > 0) good = good && points[i].turns > points[i - 1].turns && points[i].kv > points[i - 1].kv;
  }
  if (good) return {ValveTable(points), {}};
  const char* sentence = "a valve table needs two rows or more, with turns and flow coefficient rising from row to row";
  return {{}, {{Severity::problem, "valve.table", {}, sentence, {}}}};
}

double kv_at_turns(const ValveCurve& curve, double turns_open) {
  expects(!std::isnan(turns_open), "kv_at_turns: turns that are a number");
  return std::visit([&](const auto& c) { return kv(c, turns_open); }, curve);
}

TurnSetting turns_for_kv(const ValveCurve& curve, double wanted_kv) {
  expects(wanted_kv > 0.0, "turns_for_kv: a Kv above zero");
  const Travel ends = std::visit([](const auto& c) { return travel(c); }, curve);
  if (wanted_kv < kv_at_turns(curve, ends.shut_turns)) return {ends.shut_turns, false};
  if (wanted_kv > kv_at_turns(curve, ends.open_turns)) return {ends.open_turns, false};
  const double found = std::visit([&](const auto& c) { return turns(c, wanted_kv); }, curve);
  return {std::clamp(found, ends.shut_turns, ends.open_turns), true};
}

double valve_authority(double open_valve_drop_Pa, double rest_of_circuit_drop_Pa) {
  expects(open_valve_drop_Pa >= 0.0 && rest_of_circuit_drop_Pa >= 0.0, "valve_authority: drops at zero or above");
  const double whole = open_valve_drop_Pa + rest_of_circuit_drop_Pa;
  expects(whole > 0.0, "valve_authority: a circuit that loses nothing");
  return open_valve_drop_Pa / whole;
}

double installed_flow_share(double kv_share, double authority_share) {
  expects(kv_share > 0.0 && kv_share <= 1.0, "installed_flow_share: a share of the open Kv");
  expects(authority_share > 0.0 && authority_share <= 1.0, "installed_flow_share: an authority between 0 and 1");
  return 1.0 / std::sqrt(1.0 + authority_share * (1.0 / (kv_share * kv_share) - 1.0));
}

}  // namespace slabwright
