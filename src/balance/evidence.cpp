#include "balance/evidence.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright {
namespace {

// A meter's float has an error of its own near the bottom: this share of a usual flow counts as flow.
constexpr double least_flow_share = 0.05;
// No front comes through a loop that stands: times are finite from here on.
constexpr double standing_share = 1e-3;
constexpr int most_rounds = 8;
constexpr double settled = 1e-6;

double square(double x) { return x * x; }

}  // namespace

/// Sums over the readings at one common factor: squares, logarithms of errors, and the normal equations.
struct Evidence::Sums {
  double squares = 0.0, log_errors = 0.0;
  double by_flow = 0.0, by_heat = 0.0;  ///< half the slope of squares and log_errors
  double flow_flow = 0.0, flow_heat = 0.0, heat_heat = 0.0;

  /// A leftover over its error, its slopes by the two unknowns, and the error's logarithm with its slope.
  void add(double z, double z_by_flow, double z_by_heat, double log_error, double log_error_by_flow) {
    squares += z * z;
    log_errors += log_error;
    by_flow += z * z_by_flow + log_error_by_flow;
    by_heat += z * z_by_heat;
    flow_flow += z_by_flow * z_by_flow;
    flow_heat += z_by_flow * z_by_heat;
    heat_heat += z_by_heat * z_by_heat;
  }
};

Evidence::Evidence(const Readings& readings, std::vector<double> volume_m3, const LoopReturns* returns,
                   double usual_m3_per_s)
    : readings_(readings), volume_m3_(std::move(volume_m3)), returns_(returns), usual_m3_per_s_(usual_m3_per_s) {
  for (const PortReading& port : readings_.port) {
    count_ += port.flow_m3_per_s ? 1 : 0;
    count_ += port.front_s ? 1 : 0;
    count_ += port.return_degC && returns_ ? 1 : 0;
  }
}

double Evidence::meter_error_m3_per_s(double flow) const {
  return readings_.meter_error_share * std::sqrt(square(flow) + square(least_flow_share * usual_m3_per_s_));
}

double Evidence::front_s(const PortsUnder& ports, std::size_t port) const {
  const double flow = std::max(ports.flow_m3_per_s[port], standing_share * usual_m3_per_s_);
  return volume_m3_[ports.tube[port]] * ports.length_share[port] / flow;
}

double Evidence::return_degC(const PortsUnder& ports, std::size_t port) const {
  return returns_->supply_degC() -
         returns_->drop_K(ports.tube[port], ports.flow_m3_per_s[port], ports.length_share[port]);
}

void Evidence::add_flow(const PortsUnder& ports, std::size_t port, double flow, Sums& sums) const {
  const double shown = flow * ports.reading_share[port];
  const double error = meter_error_m3_per_s(shown), read = *readings_.port[port].flow_m3_per_s;
  const auto& most = readings_.scale_most_m3_per_s;
  if (most && read >= *most) {
    // At the end of its scale a meter says "this or more": the chance of that, which has no error to divide by.
    sums.log_errors -= std::log(std::max(0.5 * std::erfc((*most - shown) / error * std::sqrt(0.5)), 1e-300));
    return;
  }
  const double error_by_flow = square(shown) / (square(shown) + square(least_flow_share * usual_m3_per_s_));
  const double z = (read - shown) / error;
  sums.add(z, -shown / error - z * error_by_flow, 0.0, std::log(error), error_by_flow);
}

void Evidence::add_front(const PortsUnder& ports, std::size_t port, double flow, Sums& sums) const {
  const double standing = std::max(flow, standing_share * usual_m3_per_s_);
  const double due_s = volume_m3_[ports.tube[port]] * ports.length_share[port] / standing;
  const double ratio = *readings_.port[port].front_s / due_s, error = readings_.front_error_share;
  sums.add((ratio - 1.0) / error, ratio / error, 0.0, std::log(error * due_s), -1.0);
}

void Evidence::add_return(const PortsUnder& ports, std::size_t port, double flow, double heat_share, Sums& sums) const {
  const double error = readings_.thermometer_error_K, step = 1e-3;
  const std::size_t tube = ports.tube[port];
  const double length = ports.length_share[port];
  const double drop = heat_share * returns_->drop_K(tube, flow, length);
  double by_flow = 0.0;
  if (readings_.pump_error_share > 0.0)
    by_flow = (heat_share * returns_->drop_K(tube, flow * (1.0 + step), length) - drop) / step;
  const double z = (*readings_.port[port].return_degC - (returns_->supply_degC() - drop)) / error;
  sums.add(z, by_flow / error, drop / error, std::log(error), 0.0);
}

Evidence::Sums Evidence::at(const PortsUnder& ports, Common common) const {
  Sums sums;
  const double flow_share = std::exp(common.flow), heat_share = std::exp(common.heat);
  for (std::size_t i = 0; i < readings_.port.size(); ++i) {
    const double flow = flow_share * ports.flow_m3_per_s[i];
    if (readings_.port[i].flow_m3_per_s) add_flow(ports, i, flow, sums);
    if (readings_.port[i].front_s) add_front(ports, i, flow, sums);
    if (readings_.port[i].return_degC && returns_) add_return(ports, i, flow, heat_share, sums);
  }
  return sums;
}

Fit Evidence::fit(const PortsUnder& ports) const {
  const double pump = readings_.pump_error_share, heat = returns_ ? readings_.heat_error_share : 0.0;
  Common common;
  Sums sums = at(ports, common);
  if (pump <= 0.0 && heat <= 0.0) return {-0.5 * sums.squares - sums.log_errors, sums.squares, 1.0};
  // An unknown that is known is held by a weight that nothing moves.
  const double of_flow = pump > 0.0 ? 1.0 / square(pump) : 1e18, of_heat = heat > 0.0 ? 1.0 / square(heat) : 1e18;
  double determinant = 1.0;
  for (int round = 0; round < most_rounds; ++round) {
    const double a = sums.flow_flow + of_flow, b = sums.flow_heat, c = sums.heat_heat + of_heat;
    const double u = -sums.by_flow - of_flow * common.flow, v = -sums.by_heat - of_heat * common.heat;
    determinant = a * c - b * b;
    const double flow = (c * u - b * v) / determinant, heat_step = (a * v - b * u) / determinant;
    // Where a loop nearly stands the leftovers are far from straight lines: no step of more than a half.
    common.flow += std::clamp(flow, -0.5, 0.5);
    common.heat += std::clamp(heat_step, -0.5, 0.5);
    sums = at(ports, common);
    if (std::abs(flow) + std::abs(heat_step) < settled) break;
  }
  const double before = of_flow * square(common.flow) + of_heat * square(common.heat);
  const double spread = 0.5 * std::log(determinant / (of_flow * of_heat));
  return {-0.5 * (sums.squares + before) - sums.log_errors - spread, sums.squares, std::exp(common.flow)};
}

}  // namespace slabwright
