#include "balance/causes.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

// Over a range of sizes the network is solved at this many, and the likelihood summed at so many more: readings of all
// kinds together fix a size to about a thirtieth of its range.
constexpr int solved_sizes = 4;
constexpr int summed_sizes = 40;

/// The logarithms of flows at some sizes of a cause, and the polynomial through them.
class FlowsBySize {
 public:
  template <class Solve>
  FlowsBySize(double least, double most, const Solve& solve) {
    const double middle = 0.5 * (least + most), half = 0.5 * (most - least);
    for (int k = 0; k < solved_sizes; ++k) {
      size_.push_back(middle + half * std::cos(pi * (k + 0.5) / solved_sizes));
      log_flow_.push_back(solve(size_.back()));
      for (double& flow : log_flow_.back()) flow = std::log(std::max(flow, 1e-12));
    }
  }

  std::vector<double> at(double size) const {
    std::vector<double> flow(log_flow_[0].size(), 0.0);
    for (int k = 0; k < solved_sizes; ++k) {
      double weight = 1.0;
      for (int j = 0; j < solved_sizes; ++j) {
        if (j != k) weight *= (size - row(j)) / (row(k) - row(j));
      }
      for (std::size_t i = 0; i < flow.size(); ++i) flow[i] += weight * log_flow_[static_cast<std::size_t>(k)][i];
    }
    for (double& f : flow) f = std::exp(f);
    return flow;
  }

 private:
  double row(int k) const { return size_[static_cast<std::size_t>(k)]; }
  std::vector<double> size_;
  std::vector<std::vector<double>> log_flow_;
};

/// A weighed cause with its likelihood still as a logarithm, its share of what was likely before in it.
struct Scored {
  Suspect suspect;
  double log_weight = 0.0;
  std::vector<double> log_by_size, size;
};

double log_sum(const std::vector<double>& logs) {
  const double most = *std::max_element(logs.begin(), logs.end());
  double sum = 0.0;
  for (const double l : logs) sum += std::exp(l - most);
  return most + std::log(sum);
}

/// Sizes in the middle of equal cells.
double size_at(const CauseRange& range, int cell) {
  return range.least_share + (range.most_share - range.least_share) * (cell + 0.5) / summed_sizes;
}

template <class Ports>
Scored score(const CauseRange& range, const Evidence& evidence, std::size_t loop, const Ports& ports) {
  Scored one;
  one.suspect.cause = range.cause;
  one.suspect.loop = one.suspect.other = loop;
  double best = -1e300;
  const int cells = range.most_share > range.least_share ? summed_sizes : 1;
  for (int cell = 0; cell < cells; ++cell) {
    const double size = cells > 1 ? size_at(range, cell) : range.least_share;
    const Fit fit = evidence.fit(ports(size));
    one.size.push_back(size);
    one.log_by_size.push_back(fit.log_likelihood);
    if (fit.log_likelihood <= best) continue;
    best = fit.log_likelihood;
    one.suspect.misfit_number = std::sqrt(fit.squares / std::max(evidence.count(), 1));
  }
  one.log_weight = log_sum(one.log_by_size) - std::log(cells);
  double mean = 0.0, square = 0.0;
  for (std::size_t k = 0; k < one.size.size(); ++k) {
    const double share = std::exp(one.log_by_size[k] - one.log_weight) / cells;
    mean += share * one.size[k];
    square += share * one.size[k] * one.size[k];
  }
  one.suspect.size_share = mean;
  one.suspect.size_error_share = std::sqrt(std::max(square - mean * mean, 0.0));
  return one;
}

class Weighing {
 public:
  Weighing(ReadNetwork& network, const Evidence& evidence) : network_(network), evidence_(evidence) {}

  std::vector<Scored> one_loop(const CauseRange& range) {
    std::vector<Scored> all;
    const std::size_t loops = network_.healthy_m3_per_s().size();
    for (std::size_t loop = 0; loop < loops; ++loop) all.push_back(at_loop(range, loop));
    return all;
  }

  std::vector<Scored> pairs(const CauseRange& range, const std::vector<std::size_t>& manifold) {
    std::vector<Scored> all;
    for (std::size_t i = 0; i < manifold.size(); ++i) {
      for (std::size_t j = i + 1; j < manifold.size(); ++j) {
        if (manifold[i] != manifold[j]) continue;
        Suspect suspect{range.cause, i, j, 0.0, 1.0, 0.0, 0.0};
        const PortsUnder ports = ports_under(network_, suspect);
        all.push_back(score(range, evidence_, i, [&](double) { return ports; }));
        all.back().suspect.other = j;
      }
    }
    return all;
  }

  Scored healthy(const CauseRange& range) {
    return score(range, evidence_, 0, [&](double) { return network_.healthy(); });
  }

 private:
  Scored at_loop(const CauseRange& range, std::size_t loop) {
    PortsUnder ports = network_.healthy();
    if (range.cause == Cause::meter) {
      return score(range, evidence_, loop, [&](double size) {
        ports.reading_share[loop] = size;
        return ports;
      });
    }
    const bool length = range.cause == Cause::longer || range.cause == Cause::shorter;
    const FlowsBySize flows(range.least_share, range.most_share, [&](double size) {
      return length ? network_.with_length(loop, size) : network_.cut(loop, size);
    });
    return score(range, evidence_, loop, [&](double size) {
      ports.flow_m3_per_s = flows.at(size);
      if (length)
        ports.length_share[loop] = size;
      else
        ports.flow_m3_per_s[loop] = size * network_.healthy_m3_per_s()[loop];
      return ports;
    });
  }

  ReadNetwork& network_;
  const Evidence& evidence_;
};

}  // namespace

const std::vector<CauseRange>& cause_ranges() {
  // A meter that shows nothing is nearly always right: air, or a valve or actuator that is shut.
  constexpr double rare = 0.01, stands = 0.03, none = 1.0 / 7.0, usual = (1.0 - none - 3.0 * rare - stands) / 4.0;
  static const std::vector<CauseRange> ranges{
      {Cause::none, 1.0, 1.0, none},         {Cause::longer, 1.2, 1.5, usual},
      {Cause::restricted, 0.3, 0.7, usual},  {Cause::meter, 0.5, 0.7, 0.5 * usual},
      {Cause::meter, 1.3, 1.5, 0.5 * usual}, {Cause::swapped, 1.0, 1.0, usual},
      {Cause::shorter, 0.67, 0.83, rare},    {Cause::stopped, 0.0, 0.3, rare},
      {Cause::stopped, 0.0, 0.05, stands},   {Cause::meter, 0.0, 0.0, rare},
  };
  return ranges;
}

PortsUnder ports_under(ReadNetwork& network, const Suspect& suspect) {
  PortsUnder ports = network.healthy();
  const std::size_t i = suspect.loop, j = suspect.other;
  switch (suspect.cause) {
    case Cause::none: break;
    case Cause::longer:
    case Cause::shorter:
      ports.flow_m3_per_s = network.with_length(i, suspect.size_share);
      ports.length_share[i] = suspect.size_share;
      break;
    case Cause::restricted:
    case Cause::stopped: ports.flow_m3_per_s = network.cut(i, suspect.size_share); break;
    case Cause::meter: ports.reading_share[i] = suspect.size_share; break;
    case Cause::swapped:
      ports.flow_m3_per_s = network.swapped(i, j);
      std::swap(ports.tube[i], ports.tube[j]);
      break;
  }
  return ports;
}

std::vector<Suspect> weigh_causes(ReadNetwork& network, const Evidence& evidence,
                                  const std::vector<std::size_t>& manifold) {
  Weighing weighing(network, evidence);
  std::vector<Scored> all;
  for (const CauseRange& range : cause_ranges()) {
    std::vector<Scored> found;
    if (range.cause == Cause::none)
      found = {weighing.healthy(range)};
    else if (range.cause == Cause::swapped)
      found = weighing.pairs(range, manifold);
    else
      found = weighing.one_loop(range);
    for (Scored& one : found) {
      one.log_weight += std::log(range.before_share / static_cast<double>(found.size()));
      all.push_back(std::move(one));
    }
  }
  std::vector<double> logs;
  for (const Scored& one : all) logs.push_back(one.log_weight);
  const double whole = log_sum(logs);
  std::vector<Suspect> weighed;
  for (Scored& one : all) {
    one.suspect.probability_share = std::exp(one.log_weight - whole);
    weighed.push_back(one.suspect);
  }
  return weighed;
}

}  // namespace slabwright
