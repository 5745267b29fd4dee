// All lengths at once, from readings.
#include <algorithm>
#include <cmath>
#include <limits>

#include "balance/evidence.hpp"
#include "balance/readings_given.hpp"
#include "slabwright/balance_lengths.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths_least_squares.hpp"

namespace slabwright {
namespace {

// Half of what was not known has gone.
constexpr double told_share = 0.5;
// A flow is odd where its leaving out takes three standard errors from what is left over.
constexpr double odd_squares = 9.0;
// One of the two ways in which it may be is told where the other leaves two standard errors more.
constexpr double told_squares = 4.0;
// A choked loop may carry anything: by e either way is as good as not known.
constexpr double choked_error_share = 1.0;

struct Given {
  const Plant& plant;
  const LengthsBefore& before;
  const LoopReturns* returns;
  double usual_m3_per_s;
};

/// Unknowns: the logarithm of each length over its guess, then those that all readings have in common.
class LengthFit {
 public:
  /// `choked`: a loop that carries a share of what its length would let through. What the others then gain, a few
  /// percent at most, is left to what all flows have in common.
  LengthFit(ReadNetwork& network, const Evidence& evidence, const Given& given, std::optional<std::size_t> choked = {})
      : network_(network),
        evidence_(evidence),
        before_(given.before),
        loops_(given.plant.loops.loop.size()),
        choked_(choked) {
    for (const Loop& loop : given.plant.loops.loop) guess_m_.push_back(loop.length_m);
    const Readings& readings = evidence.readings();
    if (readings.pump_error_share > 0.0) pump_at_ = unknowns_++;
    if (readings.heat_error_share > 0.0 && evidence.knows_returns()) heat_at_ = unknowns_++;
    unknowns_ += loops_ + (choked_ ? 1 : 0);
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
    if (choked_) ports.flow_m3_per_s[*choked_] *= std::exp(x.back());
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
    if (choked_) all.push_back(x.back() / choked_error_share);
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
  std::optional<std::size_t> choked_;
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

/// A loop whose flow is odd, why, and the lengths without it.
struct Odd {
  std::size_t loop = 0;
  Cause cause = Cause::none;  ///< `restricted`, `meter`, or none where these readings tell nothing
  FittedLengths lengths;
};

/// A fit of what is read, and what it leaves over.
struct Tried {
  LeastSquares found;
  FittedLengths lengths;
};
Tried tried(ReadNetwork& network, const Given& given, const Readings& readings, std::optional<std::size_t> choked) {
  const Evidence evidence(readings, volumes(given.plant), given.returns, given.usual_m3_per_s);
  const LengthFit fit(network, evidence, given, choked);
  LeastSquares found = least_of(fit);
  if (found.covariance.empty()) {
    found.squares = std::numeric_limits<double>::infinity();
    return {std::move(found), {}};
  }
  FittedLengths lengths = lengths_of(given.plant, fit, found, given.before);
  return {std::move(found), std::move(lengths)};
}

/// A length that depends on which of the two it is: no better known than they are apart.
FittedLength either(FittedLength one, const FittedLength& other, double before_error_share) {
  one.error_m = std::hypot(one.error_m, one.length_m - other.length_m);
  one.learned_share = std::clamp(1.0 - one.error_m / one.length_m / before_error_share, 0.0, 1.0);
  one.told = one.learned_share >= told_share;
  return one;
}

/// The loop for which it helps most that its meter is wrong, or that it is choked, where that is more than chance does.
/// Where nothing but a flow was read, what it has against it is that no loop of this floor should be so long.
std::optional<Odd> odd_of(ReadNetwork& network, const Given& given, const Readings& readings, double squares) {
  std::optional<Odd> odd;
  double least = squares - odd_squares;
  for (std::size_t i = 0; i < readings.port.size(); ++i) {
    if (readings.port[i].flow_m3_per_s.value_or(0.0) <= 0.0) continue;
    Readings without = readings;
    without.port[i].flow_m3_per_s.reset();
    Tried meter = tried(network, given, without, {}), choked = tried(network, given, readings, i);
    const double best = std::min(meter.found.squares, choked.found.squares);
    if (best >= least) continue;
    least = best;
    const double apart = meter.found.squares - choked.found.squares;
    const Cause cause = apart > told_squares ? Cause::restricted : apart < -told_squares ? Cause::meter : Cause::none;
    Tried &likelier = apart > 0.0 ? choked : meter, &other = apart > 0.0 ? meter : choked;
    if (cause == Cause::none && !other.found.covariance.empty())
      likelier.lengths.loop[i] = either(likelier.lengths.loop[i], other.lengths.loop[i], given.before.each_error_share);
    odd = Odd{i, cause, std::move(likelier.lengths)};
  }
  return odd;
}

const char* odd_sentence(Cause cause) {
  if (cause == Cause::restricted)
    return "the flow of {} goes with its front or return, and not with any length: it is choked (air, a kink, a valve "
           "partly shut)";
  if (cause == Cause::meter) return "the flow of {} does not go with its front or return: its meter shows wrong";
  return "the flow of {} does not go with what else is known of it: it is choked (air, a kink, a valve partly shut) or "
         "its meter shows wrong; measure it with a bucket";
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
    said.push_back({Severity::warning,
                    "readings.odd-flow",
                    lengths.odd_loop,
                    odd_sentence(lengths.odd_cause),
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
  Tried all = tried(network, given, readings, {});
  if (all.found.covariance.empty()) return {{}, {no_water_moves()}};
  FittedLengths lengths = std::move(all.lengths);
  if (auto odd = odd_of(network, given, readings, all.found.squares)) {
    lengths = std::move(odd->lengths);
    lengths.odd_loop = lengths.loop[odd->loop].loop;
    lengths.odd_cause = odd->cause;
  }
  say_unsettled_network(network, said);
  say_lengths(lengths, readings, said);
  return {std::move(lengths), std::move(said)};
}

}  // namespace slabwright
