// Readings back: from readings to ranked causes, the next test and new settings.
#include <algorithm>
#include <cmath>

#include "balance/causes.hpp"
#include "balance/circuit.hpp"
#include "balance/next_test.hpp"

namespace slabwright {
namespace {

// The first is called clear where it is so many times as likely as the second.
constexpr double clear_times = 10.0;
// Root mean square of leftovers beyond which one cause alone explains nothing.
constexpr double unexplained_number = 2.0;
// A small change of length to see what it does to the flow.
constexpr double small_length_share = 1.05;

Diagnostic problem(const char* code, std::string sentence) {
  return {Severity::problem, code, "readings", std::move(sentence), {}};
}

bool positive_if_any(const std::optional<double>& x) { return !x || *x > 0.0; }

std::vector<Diagnostic> refused(const Plant& plant, const Readings& r) {
  std::vector<Diagnostic> said;
  if (r.port.size() != plant.loops.loop.size())
    said.push_back(problem("readings.count", "there must be a reading for each port; write - where none was taken"));
  if (std::none_of(r.port.begin(), r.port.end(), [](const PortReading& p) { return p.flow_m3_per_s.has_value(); }))
    said.push_back(problem("readings.none", "no flow was read at any port"));
  if (!(r.meter_error_share > 0.0 && r.thermometer_error_K > 0.0 && r.front_error_share > 0.0 &&
        r.pump_error_share >= 0.0 && r.heat_error_share >= 0.0))
    said.push_back(problem("readings.error", "errors of meters, thermometers and times must be above zero"));
  for (const PortReading& p : r.port) {
    if (p.flow_m3_per_s.value_or(0.0) >= 0.0 && positive_if_any(p.front_s)) continue;
    said.push_back(problem("readings.below-zero", "a flow cannot be below zero, nor a time zero"));
    break;
  }
  return said;
}

std::optional<LoopReturns> returns_of(const Plant& plant, const Readings& readings, const Conditions& conditions,
                                      std::vector<Diagnostic>& said) {
  const bool read = std::any_of(readings.port.begin(), readings.port.end(),
                                [](const PortReading& p) { return p.return_degC.has_value(); });
  if (readings.supply_degC && plant.floor && conditions.room_degC.size() == plant.design.room.size())
    return LoopReturns(plant, conditions, *readings.supply_degC);
  if (read)
    said.push_back({Severity::note,
                    "readings.no-supply",
                    "readings",
                    "return temperatures are left out: they need the supply temperature and the shop's heat",
                    {}});
  return std::nullopt;
}

std::vector<double> volumes(const Plant& plant) {
  std::vector<double> all;
  for (const Loop& loop : plant.loops.loop)
    all.push_back(loop.length_m * water_content_m3_per_m(tube_of(plant.design)));
  return all;
}

/// Which causes at a loop count as one with what was read there.
CauseGroup group_of(const Suspect& s, bool parted) {
  switch (s.cause) {
    case Cause::none: return CauseGroup::healthy;
    case Cause::longer: return parted ? CauseGroup::longer : CauseGroup::resists_more;
    case Cause::restricted:
    case Cause::stopped: return parted ? CauseGroup::restricted : CauseGroup::resists_more;
    case Cause::shorter: return CauseGroup::shorter;
    case Cause::meter: return CauseGroup::meter;
    case Cause::swapped: return CauseGroup::swapped;
  }
  return CauseGroup::healthy;
}

/// A front or a return temperature tells a long loop from a choked one: the one holds more water, the other does not.
bool parted(const Readings& readings, bool knows_returns, std::size_t loop) {
  const PortReading& port = readings.port[loop];
  return port.front_s.has_value() || (knows_returns && port.return_degC.has_value());
}

std::vector<SuspectGroup> grouped(const std::vector<Suspect>& suspects, const Readings& readings, bool knows_returns) {
  std::vector<SuspectGroup> all;
  for (const Suspect& s : suspects) {
    const CauseGroup group = group_of(s, parted(readings, knows_returns, s.loop));
    const auto same = [&](const SuspectGroup& g) { return g.group == group && g.loop == s.loop && g.other == s.other; };
    auto found = std::find_if(all.begin(), all.end(), same);
    if (found == all.end()) {
      all.push_back({group, s.loop, s.other, 0.0, {}});
      found = all.end() - 1;
    }
    found->probability_share += s.probability_share;
    found->member.push_back(s);
  }
  const auto likelier = [](const auto& a, const auto& b) { return a.probability_share > b.probability_share; };
  for (SuspectGroup& g : all) std::stable_sort(g.member.begin(), g.member.end(), likelier);
  std::stable_sort(all.begin(), all.end(), likelier);
  return all;
}

/// How far a length must be off before its own meter moves by its error.
std::vector<double> least_seen(ReadNetwork& network, double meter_error_share) {
  std::vector<double> seen;
  for (std::size_t i = 0; i < network.healthy_m3_per_s().size(); ++i) {
    const double moved = network.with_length(i, small_length_share)[i] / network.healthy_m3_per_s()[i];
    const double slope = -std::log(moved) / std::log(small_length_share);
    seen.push_back(slope > 1e-6 ? std::pow(1.0 - std::min(meter_error_share, 0.9), -1.0 / slope) - 1.0 : 1e6);
  }
  return seen;
}

const char* sentence_of(CauseGroup group) {
  switch (group) {
    case CauseGroup::healthy: return "nothing is wrong that these readings can show";
    case CauseGroup::resists_more: return "{} resists more than drawn: air, a kink, a shut valve, or it is longer";
    case CauseGroup::longer: return "{} is longer than drawn";
    case CauseGroup::shorter: return "{} is shorter than drawn";
    case CauseGroup::restricted: return "{} is choked: air, a kink, or a valve partly shut";
    case CauseGroup::meter: return "the meter of {} shows wrong";
    case CauseGroup::swapped: return "{} and {} have changed places: tubes or labels";
  }
  return "";
}

void say_verdict(const Plant& plant, const ReadBack& back, std::vector<Diagnostic>& said) {
  const SuspectGroup& first = back.ranked.front();
  Diagnostic verdict{first.group == CauseGroup::healthy ? Severity::note : Severity::warning,
                     back.clear ? "readings.verdict" : "readings.likely",
                     plant.loops.loop[first.loop].name,
                     sentence_of(first.group),
                     {}};
  if (first.group == CauseGroup::healthy)
    verdict.about = "readings";
  else
    verdict.parts.push_back(plant.loops.loop[first.loop].name);
  if (first.group == CauseGroup::swapped) verdict.parts.push_back(plant.loops.loop[first.other].name);
  said.push_back(std::move(verdict));
  if (first.member.front().misfit_number > unexplained_number)
    said.push_back({Severity::warning,
                    "readings.unexplained",
                    "readings",
                    "no one cause explains these readings: read again, or look for two faults at once",
                    {}});
  const auto seen = std::min_element(back.least_seen_length_share.begin(), back.least_seen_length_share.end());
  said.push_back({Severity::note,
                  "readings.unseen-length",
                  "readings",
                  "a length that is off by less than {} cannot be seen on these meters",
                  {Measured{*seen, Dimension::share}}});
}

Plant reopened(const Plant& plant) {
  constexpr double wide_open_turns = 1e9;
  Plant open = with_settings(plant, ValveTurns(plant.loops.loop.size(), wide_open_turns), plant.pump_speed_share);
  open.turns.clear();
  return open;
}

/// A loop that lets nothing pass cannot be set. Where two tubes have changed places so have their targets.
void set_anew(const Plant& plant, const Readings& readings, FlowTarget target, ReadBack& back,
              std::vector<Diagnostic>& said) {
  const Suspect& s = back.ranked[0].member[0];
  if (target.total_m3_per_s <= 0.0 || s.cause == Cause::stopped) return;
  if (s.cause == Cause::swapped) std::swap(target.loop_m3_per_s[s.loop], target.loop_m3_per_s[s.other]);
  auto balance = balance_plant(reopened(with_cause(plant, s, readings.water_degC)), target, readings.water_degC);
  back.settings = std::move(balance.value);
  said.insert(said.end(), balance.said.begin(), balance.said.end());
}

}  // namespace

Plant with_cause(const Plant& plant, const Suspect& s, double water_degC) {
  Plant changed = plant;
  const BranchId a = plant.loop_branch[s.loop], b = plant.loop_branch[s.other];
  std::vector<Element> elements = plant.graph.elements(a);
  if (s.cause == Cause::longer || s.cause == Cause::shorter) {
    changed.graph.set_elements(a, lengthened(elements, s.size_share));
    Loop& loop = changed.loops.loop[s.loop];
    loop.length_m *= s.size_share;
    for (Stretch& stretch : loop.along) {
      stretch.start_m *= s.size_share;
      stretch.length_m *= s.size_share;
    }
  } else if (s.cause == Cause::restricted || s.cause == Cause::stopped) {
    const bool shut = s.size_share <= 0.0;
    const Shape shape =
        shut ? Shape{Shut{}} : Shape{KvValve{ReadNetwork(plant, {}, water_degC).cutting_kv(s.loop, s.size_share)}};
    elements.push_back({Part::tube, shape});
    changed.graph.set_elements(a, std::move(elements));
  } else if (s.cause == Cause::swapped) {
    changed.graph.set_elements(a, with_tube_of(elements, plant.graph.elements(b)));
    changed.graph.set_elements(b, with_tube_of(plant.graph.elements(b), elements));
    Loop &one = changed.loops.loop[s.loop], &other = changed.loops.loop[s.other];
    std::swap(one, other);
    std::swap(one.port, other.port);
    std::swap(one.name, other.name);
  }
  return changed;
}

Checked<ReadBack> read_back(const Plant& plant, const Readings& readings, const Conditions& conditions,
                            const FlowTarget& target) {
  std::vector<Diagnostic> said = refused(plant, readings);
  if (!said.empty()) return {{}, std::move(said)};
  const std::optional<LoopReturns> returns = returns_of(plant, readings, conditions, said);
  ReadNetwork network(plant, returns ? returns->point() : OperatingPoint{}, readings.water_degC);
  double usual = 0.0;
  for (const double flow : network.healthy_m3_per_s()) usual += flow / static_cast<double>(readings.port.size());
  if (usual <= 0.0) return {{}, {problem("readings.no-flow", "the plant as drawn moves no water; nothing to compare")}};
  const Evidence evidence(readings, volumes(plant), returns ? &*returns : nullptr, usual);
  std::vector<std::size_t> manifold;
  for (const Loop& loop : plant.loops.loop) manifold.push_back(loop.manifold);

  ReadBack back;
  back.ranked = grouped(weigh_causes(network, evidence, manifold), readings, returns.has_value());
  const SuspectGroup &first = back.ranked[0], &second = back.ranked[1];
  const PortsUnder ports = ports_under(network, first.member[0]);
  back.healthy = first.group == CauseGroup::healthy;
  back.clear = first.probability_share >= clear_times * second.probability_share;
  back.healthy_m3_per_s = network.healthy_m3_per_s();
  back.flow_m3_per_s = ports.flow_m3_per_s;
  back.least_seen_length_share = least_seen(network, readings.meter_error_share);
  if (!back.clear) back.next = next_test(network, evidence, first.member[0], second.member[0]);
  set_anew(plant, readings, target, back, said);
  say_verdict(plant, back, said);
  return {std::move(back), std::move(said)};
}

}  // namespace slabwright
