// Pump curves.
#include <algorithm>
#include <cmath>
#include <utility>

#include "slabwright/contract.hpp"
#include "slabwright/hydraulics_pump.hpp"

namespace slabwright {
namespace {

// Pushed backwards through this share of its range, a pump stands against twice its head. Nobody measures that; it only
// has to be steep.
constexpr double backward_share = 0.01;

Diagnostic refused(const char* code, const char* sentence,
                   std::vector<std::variant<std::string, Measured>> parts = {}) {
  return {Severity::problem, code, {}, sentence, std::move(parts)};
}

Measured flow(double m3_per_s) { return {m3_per_s, Dimension::flow}; }
Measured head(double m) { return {m, Dimension::head}; }

Diagnostic rising(const PumpPoint& before, const PumpPoint& after) {
  return refused("pump.curve.rising",
                 "the head rises from {} at {} to {} at {}; a curve that rises lets the pump hunt between two flows",
                 {head(before.head_m), flow(before.flow_m3_per_s), head(after.head_m), flow(after.flow_m3_per_s)});
}

bool in_order(const std::vector<PumpPoint>& points) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const bool finite = std::isfinite(points[i].flow_m3_per_s) && std::isfinite(points[i].head_m);
    if (!finite || points[i].flow_m3_per_s < 0.0 || points[i].head_m < 0.0) return false;
    if (i > 0 && points[i].flow_m3_per_s <= points[i - 1].flow_m3_per_s) return false;
  }
  return true;
}

// What is wrong with points that any kind of curve would be drawn through.
std::vector<Diagnostic> faults(const std::vector<PumpPoint>& points) {
  if (!in_order(points)) {
    return {
        refused("pump.curve.order", "the points must stand in rising order of flow, with no flow or head below zero")};
  }
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (points[i].head_m > points[i - 1].head_m) return {rising(points[i - 1], points[i])};
  }
  return {};
}

PumpHead backwards(double no_flow_head_m, double range, double flow) {
  const double slope = -no_flow_head_m / (backward_share * range);
  return {no_flow_head_m + slope * flow, slope, true};
}

PumpHead at_full_speed(const PumpLaw& law, double flow) {
  if (flow < 0.0) return backwards(law.no_flow_head_m, law.no_head_flow_m3_per_s, flow);
  const double share = flow / law.no_head_flow_m3_per_s;
  const double lost = law.exponent == 2.0 ? share : std::pow(share, law.exponent - 1.0);
  return {law.no_flow_head_m * (1.0 - lost * share),
          -law.no_flow_head_m * law.exponent * lost / law.no_head_flow_m3_per_s, share > 1.0};
}

PumpHead at_full_speed(const PumpTable& table, double flow) {
  const TablePoint first = table.heads().points().front(), last = table.heads().points().back();
  if (flow < 0.0) return backwards(first.value, last.at, flow);
  const TableValue read = table.heads().at(flow);
  if (flow <= last.at) return {read.value, read.slope, read.clamped};
  const double slope = std::min(table.heads().at(last.at).slope, -first.value / last.at);
  return {last.value + slope * (flow - last.at), slope, true};
}

PumpHead at_full_speed(const PumpLaw& law, double flow, double) { return at_full_speed(law, flow); }
PumpHead at_full_speed(const PumpTable& table, double flow, double) { return at_full_speed(table, flow); }

double full_speed_range(const PumpLaw& law) { return law.no_head_flow_m3_per_s; }
double full_speed_range(const PumpTable& table) { return table.heads().points().back().at; }
double full_speed_range(const ControlledCurve& curve) {
  return std::visit([](const auto& full) { return full_speed_range(full); }, curve.held->full);
}

PumpHead at_full_speed(const ControlledCurve& curve, double flow, double line_flow) {
  const PumpCurve& full = curve.held->full;
  const auto can = [&](double at) {
    return std::visit([&](const auto& f) { return at_full_speed(f, at, line_flow); }, full);
  };
  const double line_m = control_line_m(curve.held->control, line_flow);
  if (flow < 0.0) return backwards(std::min(can(0.0).head_m, line_m), full_speed_range(curve), flow);
  const PumpHead most = can(flow);
  return most.head_m <= line_m ? most : PumpHead{line_m, 0.0, false};
}

}  // namespace

Checked<PumpLaw> pump_law_through(PumpPoint no_flow, PumpPoint middle, PumpPoint far) {
  std::vector<Diagnostic> found = faults({no_flow, middle, far});
  if (!found.empty()) return {{}, std::move(found)};
  if (no_flow.flow_m3_per_s != 0.0) {
    return {{}, {refused("pump.curve.start", "the first of three points must be the head at no flow")}};
  }
  const double middle_fall = no_flow.head_m - middle.head_m, far_fall = no_flow.head_m - far.head_m;
  if (!(middle_fall > 0.0 && far_fall > middle_fall)) {
    return {{}, {refused("pump.curve.level", "the head must fall from each of the three points to the next")}};
  }
  const double exponent = std::log(far_fall / middle_fall) / std::log(far.flow_m3_per_s / middle.flow_m3_per_s);
  // Three points on a straight line give 1 but for rounding.
  if (exponent < 1.0 - 1e-9) {
    return {{}, {refused("pump.curve.steep-start", "the curve falls most steeply at its start; give it as a table")}};
  }
  const double range = middle.flow_m3_per_s * std::pow(no_flow.head_m / middle_fall, 1.0 / exponent);
  return {PumpLaw{no_flow.head_m, range, std::max(exponent, 1.0)}, {}};
}

Checked<PumpTable> pump_table(const std::vector<PumpPoint>& points) {
  if (points.size() < 2) return {{}, {refused("pump.curve.short", "a pump curve needs two points or more")}};
  std::vector<Diagnostic> found = faults(points);
  if (!found.empty()) return {{}, std::move(found)};
  if (points.front().head_m == 0.0) return {{}, {refused("pump.curve.no-head", "the first point has no head")}};
  std::vector<TablePoint> rows;
  for (const PumpPoint& point : points) rows.push_back({point.flow_m3_per_s, point.head_m});
  return {PumpTable(MonotoneTable(std::move(rows))), {}};
}

double control_line_m(const PumpControl& control, double flow_m3_per_s) {
  const double rises = (1.0 - control.no_flow_share) * std::clamp(flow_m3_per_s / control.flow_m3_per_s, 0.0, 1.0);
  return control.head_m * (control.no_flow_share + rises);
}

PumpCurve held_to(const PumpCurve& curve, const PumpControl& control) {
  expects(control.head_m > 0.0 && control.flow_m3_per_s > 0.0, "held_to: a head and a flow above zero");
  expects(control.no_flow_share >= 0.0 && control.no_flow_share <= 1.0, "held_to: a share from 0 to 1");
  return ControlledCurve{std::make_shared<const HeldCurve>(HeldCurve{without_control(curve), control})};
}

const PumpCurve& without_control(const PumpCurve& curve) {
  const ControlledCurve* controlled = std::get_if<ControlledCurve>(&curve);
  return controlled ? controlled->held->full : curve;
}

PumpHead head_at(const Pump& pump, double flow_m3_per_s) { return head_at(pump, flow_m3_per_s, flow_m3_per_s); }

PumpHead head_at(const Pump& pump, double flow_m3_per_s, double line_m3_per_s) {
  expects(pump.speed_share > 0.0 && !std::isnan(flow_m3_per_s), "head_at: a speed above zero, a flow that is a number");
  const double n = pump.speed_share;
  const PumpHead full = std::visit(
      [&](const auto& curve) { return at_full_speed(curve, flow_m3_per_s / n, line_m3_per_s / n); }, pump.curve);
  return {n * n * full.head_m, n * full.slope_s_per_m2, full.outside};
}

double range_m3_per_s(const Pump& pump) {
  return pump.speed_share * std::visit([](const auto& curve) { return full_speed_range(curve); }, pump.curve);
}

}  // namespace slabwright
