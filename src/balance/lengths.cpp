// All lengths at once, from readings.
#include <algorithm>
#include <cmath>

#include "balance/evidence.hpp"
#include "balance/readings_given.hpp"
#include "slabwright/balance_lengths.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths_least_squares.hpp"

namespace slabwright {
namespace {

// Half of what was not known has gone.
constexpr double told_share = 0.5;
constexpr double unexplained_number = 2.0;
// A flow is odd where its leaving out takes three standard errors from what is left over.
constexpr double odd_squares = 9.0;

/// Unknowns: the logarithm of each length over its guess, then those that all readings have in common.
class LengthFit {
 public:
  LengthFit(ReadNetwork& network, const Evidence& evidence, const Plant& plant, const LengthsBefore& before)
      : network_(network), evidence_(evidence), before_(before), loops_(plant.loops.loop.size()) {
    for (const Loop& loop : plant.loops.loop) guess_m_.push_back(loop.length_m);
    const Readings& readings = evidence.readings();
    if (readings.pump_error_share > 0.0) pump_at_ = unknowns_++;
    if (readings.heat_error_share > 0.0 && evidence.knows_returns()) heat_at_ = unknowns_++;
    unknowns_ += loops_;
    pump_at_ += loops_;
    heat_at_ += loops_;
    pump_known_ = readings.pump_error_share <= 0.0;
    heat_known_ = readings.heat_error_share <= 0.0 || !evidence.knows_returns();
  }

  std::size_t unknowns() const { return unknowns_; }
  double pump(const std::vector<double>& x) const { return pump_known_ ? 0.0 : x[pump_at_]; }
  double heat(const std::vector<double>& x) const { return heat_known_ ? 0.0 : x[heat_at_]; }
  std::optional<std::size_t> pump_at() const { return pump_known_ ? std::nullopt : std::optional(pump_at_); }

  std::vector<double> leftovers(const std::vector<double>& x) const {
    std::vector<double> all = of_before(x);
    const std::vector<double> read = of_readings(x);
    all.insert(all.end(), read.begin(), read.end());
    return all;
  }

  std::vector<double> of_readings(const std::vector<double>& x) const {
    PortsUnder ports = network_.healthy();
    for (std::size_t i = 0; i < loops_; ++i) ports.length_share[i] = std::exp(x[i]);
    ports.flow_m3_per_s = network_.with_lengths(ports.length_share);
    for (double& flow : ports.flow_m3_per_s) flow *= std::exp(pump(x));
    const double heat_share = std::exp(heat(x));
    std::vector<double> all;
    for (std::size_t i = 0; i < loops_; ++i) add_port(ports, i, heat_share, all);
    return all;
  }

 private:
  /// What was known before, each over its error.
  std::vector<double> of_before(const std::vector<double>& x) const {
    std::vector<double> all;
    double guess = 0.0, total = 0.0;
    for (std::size_t i = 0; i < loops_; ++i) {
      all.push_back(x[i] / before_.each_error_share);
      guess += guess_m_[i];
      total += guess_m_[i] * std::exp(x[i]);
    }
    all.push_back(std::log(total / guess) / before_.total_error_share);
    if (!pump_known_) all.push_back(pump(x) / evidence_.readings().pump_error_share);
    if (!heat_known_) all.push_back(heat(x) / evidence_.readings().heat_error_share);
    return all;
  }

  /// Flows and times by their logarithms, so that twice and half are as far off.
  void add_port(const PortsUnder& ports, std::size_t i, double heat_share, std::vector<double>& all) const {
    const Readings& readings = evidence_.readings();
    const PortReading& port = readings.port[i];
    if (port.flow_m3_per_s.value_or(0.0) > 0.0)
      all.push_back(std::log(*port.flow_m3_per_s / ports.flow_m3_per_s[i]) / readings.meter_error_share);
    if (port.front_s) all.push_back(std::log(*port.front_s / evidence_.front_s(ports, i)) / readings.front_error_share);
    if (!port.return_degC || !evidence_.knows_returns()) return;
    const double drop = evidence_.supply_degC() - evidence_.return_degC(ports, i);
    all.push_back((*port.return_degC - evidence_.supply_degC() + heat_share * drop) / readings.thermometer_error_K);
  }

  ReadNetwork& network_;
  const Evidence& evidence_;
  const LengthsBefore& before_;
  std::size_t loops_;
  std::size_t unknowns_ = 0, pump_at_ = 0, heat_at_ = 0;
  bool pump_known_ = true, heat_known_ = true;
  std::vector<double> guess_m_;
};

FittedLengths lengths_of(const Plant& plant, const LengthFit& fit, const LeastSquares& found,
                         const LengthsBefore& before) {
  FittedLengths all;
  all.stop = found.stop;
  const std::size_t loops = plant.loops.loop.size();
  for (std::size_t i = 0; i < loops; ++i) {
    const Loop& loop = plant.loops.loop[i];
    const double error_share = std::sqrt(found.covariance[i][i]);
    FittedLength one{loop.name, loop.length_m, loop.length_m * std::exp(found.x[i]), 0.0, 0.0, false};
    one.error_m = one.length_m * error_share;
    one.learned_share = std::clamp(1.0 - error_share / before.each_error_share, 0.0, 1.0);
    one.told = one.learned_share >= told_share;
    all.total_m += one.length_m;
    all.loop.push_back(std::move(one));
  }
  double variance = 0.0;
  for (std::size_t i = 0; i < loops; ++i) {
    for (std::size_t j = 0; j < loops; ++j)
      variance += all.loop[i].length_m * all.loop[j].length_m * found.covariance[i][j];
  }
  all.total_error_m = std::sqrt(std::max(variance, 0.0));
  all.common_share = std::exp(fit.pump(found.x));
  if (const auto at = fit.pump_at()) all.common_error_share = all.common_share * std::sqrt(found.covariance[*at][*at]);
  all.heat_share = std::exp(fit.heat(found.x));
  const std::vector<double> left = fit.of_readings(found.x);
  for (const double z : left) all.misfit_number += z * z / static_cast<double>(left.size());
  all.misfit_number = std::sqrt(all.misfit_number);
  return all;
}

LeastSquares least_of(const LengthFit& fit) {
  return least_squares(std::vector<double>(fit.unknowns(), 0.0),
                       [&](const std::vector<double>& x) { return fit.leftovers(x); });
}

struct Given {
  const Plant& plant;
  const LengthsBefore& before;
  const LoopReturns* returns;
  double usual_m3_per_s;
};

/// Readings without one flow, and the fit to them.
struct WithoutOne {
  std::size_t port = 0;
  Readings readings;
  LeastSquares found;
};

/// The flow whose leaving out helps most, where that is more than chance does. Where nothing but a flow was read, what
/// it has against it is that no loop of this floor should be so long.
std::optional<WithoutOne> without_odd(ReadNetwork& network, const Given& given, const Readings& readings,
                                      double squares) {
  std::optional<WithoutOne> odd;
  double least = squares - odd_squares;
  for (std::size_t i = 0; i < readings.port.size(); ++i) {
    if (readings.port[i].flow_m3_per_s.value_or(0.0) <= 0.0) continue;
    Readings without = readings;
    without.port[i].flow_m3_per_s.reset();
    const Evidence evidence(without, volumes(given.plant), given.returns, given.usual_m3_per_s);
    LeastSquares found = least_of(LengthFit(network, evidence, given.plant, given.before));
    if (found.squares >= least || found.covariance.empty()) continue;
    least = found.squares;
    odd = WithoutOne{i, std::move(without), std::move(found)};
  }
  return odd;
}

void say_lengths(const FittedLengths& lengths, const Readings& readings, std::vector<Diagnostic>& said) {
  for (std::size_t i = 0; i < lengths.loop.size(); ++i) {
    const FittedLength& one = lengths.loop[i];
    if (readings.port[i].flow_m3_per_s && *readings.port[i].flow_m3_per_s <= 0.0)
      said.push_back({Severity::warning,
                      "readings.stands",
                      one.loop,
                      "the meter of {} shows nothing: purge it and read again; its length is a guess",
                      {one.loop}});
    else if (!one.told)
      said.push_back({Severity::note,
                      "readings.length-untold",
                      one.loop,
                      "these readings hardly tell the length of {}: {} to {}; time its warm front",
                      {one.loop, Measured{one.length_m - one.error_m, Dimension::length},
                       Measured{one.length_m + one.error_m, Dimension::length}}});
  }
  if (!lengths.odd_loop.empty())
    said.push_back(
        {Severity::warning,
         "readings.odd-flow",
         lengths.odd_loop,
         "the flow of {} does not go with what else is known of it: it is choked (air, a kink, a valve partly shut) "
         "or its meter shows wrong; measure it with a bucket",
         {lengths.odd_loop}});
  if (lengths.misfit_number > unexplained_number)
    said.push_back({Severity::warning,
                    "readings.unexplained",
                    "readings",
                    "no lengths explain these readings: a loop may be choked, or a meter wrong",
                    {}});
}

}  // namespace

Plant with_lengths(const Plant& plant, const std::vector<double>& length_m) {
  expects(length_m.size() == plant.loops.loop.size(), "with_lengths: a length for each loop");
  Plant changed = plant;
  for (std::size_t i = 0; i < length_m.size(); ++i) {
    lengthen(changed, i, length_m[i] / plant.loops.loop[i].length_m);
  }
  return changed;
}

Checked<Balance> set_fitted(const Plant& plant, const FlowTarget& target, double water_degC) {
  return balance_plant(reopened(plant), target, water_degC);
}

Checked<FittedLengths> fit_lengths(const Plant& plant, const Readings& readings, const Conditions& conditions,
                                   const LengthsBefore& before) {
  expects(before.each_error_share > 0.0 && before.total_error_share > 0.0, "fit_lengths: errors above zero");
  std::vector<Diagnostic> said;
  std::optional<HeldAgainst> against = held_against(plant, readings, conditions, said);
  if (!against) return {{}, std::move(said)};
  auto& [returns, network, usual] = *against;
  const Given given{plant, before, returns ? &*returns : nullptr, usual};
  const Evidence evidence(readings, volumes(plant), given.returns, usual);
  const LengthFit fit(network, evidence, plant, before);
  const LeastSquares found = least_of(fit);
  if (found.covariance.empty()) return {{}, {no_water_moves()}};
  FittedLengths lengths = lengths_of(plant, fit, found, before);
  if (const auto odd = without_odd(network, given, readings, found.squares)) {
    const Evidence rest(odd->readings, volumes(plant), given.returns, usual);
    lengths = lengths_of(plant, LengthFit(network, rest, plant, before), odd->found, before);
    lengths.odd_loop = lengths.loop[odd->port].loop;
  }
  say_lengths(lengths, readings, said);
  return {std::move(lengths), std::move(said)};
}

}  // namespace slabwright
