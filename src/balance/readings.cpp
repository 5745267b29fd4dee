// Readings back: from readings to ranked causes, the next test and new settings.
#include <algorithm>
#include <cmath>

#include "balance/causes.hpp"
#include "balance/circuit.hpp"
#include "balance/next_test.hpp"
#include "balance/readings_given.hpp"

namespace slabwright {
namespace {

// The first is called clear where it is so many times as likely as the second.
constexpr double clear_times = 10.0;
// A cause of a group is spoken of from this share of it on.
constexpr double worth_saying_share = 0.1;
// A port at which a length that is off by so much stays unseen is ruled by its valve.
constexpr double hidden_length_share = 0.6;
// A small change of length to see what it does to the flow.
constexpr double small_length_share = 1.05;

/// Which causes at a loop count as one with what was read there.
CauseGroup group_of(const Suspect& s, bool parted) {
  switch (s.cause) {
    case Cause::none: return CauseGroup::healthy;
    case Cause::longer: return parted ? CauseGroup::longer : CauseGroup::reads_less;
    case Cause::restricted:
    case Cause::stopped: return parted ? CauseGroup::restricted : CauseGroup::reads_less;
    case Cause::shorter: return parted ? CauseGroup::shorter : CauseGroup::reads_more;
    case Cause::meter:
      if (parted) return CauseGroup::meter;
      return s.size_share < 1.0 ? CauseGroup::reads_less : CauseGroup::reads_more;
    case Cause::swapped: return CauseGroup::swapped;
  }
  return CauseGroup::healthy;
}

/// A front or a return temperature tells a long loop from a choked one, which holds no more water than drawn, and both
/// from a meter that shows wrong while the water flows as it should.
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
  const auto healthy =
      std::find_if(all.begin(), all.end(), [](const SuspectGroup& g) { return g.group == CauseGroup::healthy; });
  if (all.front().probability_share <= named_times * healthy->probability_share)
    std::rotate(all.begin(), healthy, healthy + 1);
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
    case CauseGroup::reads_less: return "{} resists more than drawn: air, a kink, a shut valve, or it is longer";
    case CauseGroup::reads_more: return "{} resists less than drawn: it is shorter, or its meter shows too much";
    case CauseGroup::longer: return "{} is longer than drawn";
    case CauseGroup::shorter: return "{} is shorter than drawn";
    case CauseGroup::restricted: return "{} is choked: air, a kink, or a valve partly shut";
    case CauseGroup::meter: return "the meter of {} shows wrong";
    case CauseGroup::swapped: return "{} and {} have changed places: tubes or labels";
  }
  return "";
}

bool is_vague(CauseGroup group) { return group == CauseGroup::reads_less || group == CauseGroup::reads_more; }

/// What the group's sentence leaves out where its meter may well be at fault.
bool meter_too(const SuspectGroup& group) {
  double of_meter = 0.0;
  for (const Suspect& s : group.member) of_meter += s.cause == Cause::meter ? s.probability_share : 0.0;
  return group.group == CauseGroup::reads_less && of_meter > worth_saying_share * group.probability_share;
}

void say_verdict(const Plant& plant, const ReadBack& back, std::vector<Diagnostic>& said) {
  const SuspectGroup& first = back.ranked.front();
  Diagnostic verdict{first.group == CauseGroup::healthy ? Severity::note : Severity::warning,
                     back.clear ? "readings.verdict" : "readings.likely",
                     plant.loops.loop[first.loop].name,
                     sentence_of(first.group),
                     {}};
  if (meter_too(first)) verdict.sentence += "; or its meter shows too little";
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
  const auto [seen, hidden] =
      std::minmax_element(back.least_seen_length_share.begin(), back.least_seen_length_share.end());
  said.push_back({Severity::note,
                  "readings.unseen-length",
                  "readings",
                  "a length that is off by less than {} cannot be seen on these meters",
                  {Measured{*seen, Dimension::share}}});
  if (*hidden < hidden_length_share) return;
  said.push_back({Severity::note,
                  "readings.ports-set",
                  "readings",
                  "read with all ports wide open: a valve that is nearly shut hides the tube behind it",
                  {}});
}

/// What the ports carry with a suspect's cause in place and every port open.
PortsUnder opened(const Plant& plant, const Suspect& suspect, double water_degC) {
  PortsUnder ports = ReadNetwork(reopened(with_cause(plant, suspect, water_degC)), {}, water_degC).healthy();
  if (suspect.cause == Cause::meter) ports.reading_share[suspect.loop] = suspect.size_share;
  return ports;
}

/// Whether they ask for the same work at the same place.
bool alike(const Suspect& a, const Suspect& b) {
  const auto chokes = [](const Suspect& s) { return s.cause == Cause::restricted || s.cause == Cause::stopped; };
  return a.loop == b.loop && (a.cause == b.cause || (chokes(a) && chokes(b)));
}

/// The first of the first two groups, or the first causes of a vague group that ask for different work.
std::optional<TwoSuspects> two_to_part(const ReadBack& back) {
  const SuspectGroup &first = back.ranked[0], &second = back.ranked[1];
  const auto other = std::find_if(first.member.begin(), first.member.end(),
                                  [&](const Suspect& s) { return !alike(s, first.member[0]); });
  const bool split = is_vague(first.group) && other != first.member.end();
  if (split && (back.clear || other->probability_share > second.probability_share))
    return TwoSuspects{first.member[0], *other};
  if (back.clear || alike(first.member[0], second.member[0])) return std::nullopt;
  return TwoSuspects{first.member[0], second.member[0]};
}

/// The ports with the pump that fits what was read, and the same with these other ports.
struct Paced {
  PortsUnder now, open;
};
Paced paced(const Evidence& evidence, PortsUnder now, PortsUnder open) {
  const double share = evidence.fit(now).common_share;
  for (double& flow : now.flow_m3_per_s) flow *= share;
  for (double& flow : open.flow_m3_per_s) flow *= share;
  return {std::move(now), std::move(open)};
}

NextTest next_of(const Plant& plant, ReadNetwork& network, const Evidence& evidence, const ReadBack& back) {
  const std::optional<TwoSuspects> two = two_to_part(back);
  if (!two) return {};
  const double water_degC = evidence.readings().water_degC;
  const bool turned = !plant.turns.empty();
  const auto of = [&](const Suspect& s) {
    return paced(evidence, ports_under(network, s), turned ? opened(plant, s, water_degC) : PortsUnder{});
  };
  const Paced first = of(two->first), second = of(two->second);
  std::optional<TwoStates> open;
  if (turned) open = TwoStates{first.open, second.open};
  NextTest next = next_test(evidence, *two, {first.now, second.now}, open);
  next.first = two->first;
  next.second = two->second;
  return next;
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
    lengthen(changed, s.loop, s.size_share);
  } else if (s.cause == Cause::restricted || s.cause == Cause::stopped) {
    const std::optional<double> kv = ReadNetwork(plant, {}, water_degC).cutting_kv(s.loop, s.size_share);
    const Shape shape = kv ? Shape{KvValve{*kv}} : Shape{Shut{}};
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
  std::vector<Diagnostic> said;
  std::optional<HeldAgainst> against = held_against(plant, readings, conditions, said);
  if (!against) return {{}, std::move(said)};
  auto& [returns, network, usual] = *against;
  const Evidence evidence(readings, volumes(plant), returns ? &*returns : nullptr, usual);
  std::vector<std::size_t> manifold;
  for (const Loop& loop : plant.loops.loop) manifold.push_back(loop.manifold);

  ReadBack back;
  back.ranked = grouped(weigh_causes(network, evidence, manifold), readings, returns.has_value());
  const SuspectGroup &first = back.ranked[0], &second = back.ranked[1];
  const PortsUnder ports = ports_under(network, first.member[0]);
  back.healthy = first.group == CauseGroup::healthy;
  back.clear = first.probability_share >= clear_times * second.probability_share;
  back.common_share = evidence.fit(ports).common_share;
  for (const double flow : network.healthy_m3_per_s()) back.healthy_m3_per_s.push_back(back.common_share * flow);
  for (const double flow : ports.flow_m3_per_s) back.flow_m3_per_s.push_back(back.common_share * flow);
  back.least_seen_length_share = least_seen(network, readings.meter_error_share);
  // The stated ranges are practice: a group of several causes asks for the test that parts them, however sure it is.
  if (!back.clear || is_vague(first.group)) back.next = next_of(plant, network, evidence, back);
  set_anew(plant, readings, target, back, said);
  say_unsettled_network(network, said);
  say_verdict(plant, back, said);
  return {std::move(back), std::move(said)};
}

}  // namespace slabwright
