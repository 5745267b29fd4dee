// What elements lose.
#include "hydraulics/branch_law.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "hydraulics/graph.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/hydraulics_network.hpp"
#include "slabwright/hydraulics_valve.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

// Where heating water moves at about this speed, and a valve or a stated law loses about this much, their chords
// resemble the tangents that the solution will have. Only the first guess leans on it.
constexpr double usual_velocity_m_per_s = 0.5;
constexpr double usual_loss_Pa = 1e4;
constexpr double some_flow_m3_per_s = 1e-4;

constexpr double furthest_share = 0.98;  // a row of readings is followed fifty times as far at most

constexpr std::size_t most_terms = 65535;  // what a row can count

// A loss that goes with the square of the flow, in Pa per (m3/s)^2, is that of a flow of one.
double square(const Fitting& fitting, const Liquid& liquid) {
  return fitting_loss(fitting.loss_coefficient, fitting.inside_diameter_m, liquid, 1.0).pressure_Pa;
}
double square(const KvValve& valve, const Liquid& liquid) {
  return valve.kv > 0.0 ? valve_loss(valve.kv, liquid, 1.0).pressure_Pa : 0.0;
}

Loss square_loss(double resistance, double flow) {
  const double per_flow = resistance * std::abs(flow);
  return {per_flow * flow, 2.0 * per_flow};
}

double weight_Pa_per_m(const Liquid& liquid) { return liquid.density_kg_per_m3 * gravity_m_per_s2; }

Loss pump_loss(const PumpHead& head, double weight) { return {-weight * head.head_m, -weight * head.slope_s_per_m2}; }

Loss loss_of(const Bore& bore, const Liquid& liquid, double flow) { return tube_loss(bore, liquid, flow); }
Loss loss_of(const Fitting& fitting, const Liquid& liquid, double flow) {
  return square_loss(square(fitting, liquid), flow);
}
Loss loss_of(const KvValve& valve, const Liquid& liquid, double flow) {
  return square_loss(square(valve, liquid), flow);
}
Loss loss_of(const PowerLaw& law, const Liquid&, double flow) {
  if (law.exponent == 2.0) return square_loss(law.resistance, flow);
  const double per_flow = law.resistance * std::pow(std::abs(flow), law.exponent - 1.0);
  return {per_flow * flow, law.exponent * per_flow};
}
Loss loss_of(const Pump& pump, const Liquid& liquid, double flow) {
  return pump_loss(head_at(pump, flow), weight_Pa_per_m(liquid));
}
Loss loss_of(const CheckValve& valve, const Liquid&, double) { return {valve.opening_Pa, 0.0}; }
Loss loss_of(const BypassValve& valve, const Liquid& liquid, double flow) { return bypass_loss(valve, liquid, flow); }
Loss loss_of(const Shut&, const Liquid&, double) { return {}; }

Loss loss_of_any(const Shape& shape, const Liquid& liquid, double flow) {
  return std::visit([&](const auto& s) { return loss_of(s, liquid, flow); }, shape);
}

bool add_to(Bore& sum, const Bore& bore) {
  if (sum.inside_diameter_m != bore.inside_diameter_m || sum.roughness_m != bore.roughness_m) return false;
  sum.length_m += bore.length_m;
  return true;
}

double usual_flow(const Bore& bore) {
  return 0.25 * pi * bore.inside_diameter_m * bore.inside_diameter_m * usual_velocity_m_per_s;
}
double usual_flow(const Term& term) {
  if (const PowerLaw* law = std::get_if<PowerLaw>(&term)) {
    return std::pow(usual_loss_Pa / law->resistance, 1.0 / law->exponent);
  }
  if (const WeighedPump* pump = std::get_if<WeighedPump>(&term)) return 0.5 * range_m3_per_s(*pump->pump);
  return std::numeric_limits<double>::infinity();
}

Loss term_loss(TubeRun& run, double flow) { return run.loss(flow); }
Loss term_loss(const PowerLaw& law, double flow) { return loss_of(law, {}, flow); }
Loss term_loss(const WeighedPump& term, double flow) {
  return pump_loss(head_at(*term.pump, flow, term.line_m3_per_s), term.weight_Pa_per_m);
}
Loss term_loss(const CheckValve& valve, double flow) { return loss_of(valve, {}, flow); }
Loss term_loss(const FilledBypass& term, double flow) { return bypass_loss(term.valve, term.liquid, flow); }

Loss loss_of_term(Term& term, double flow) {
  return std::visit([&](auto& t) { return term_loss(t, flow); }, term);
}

void add(Loss& sum, const Loss& more) {
  sum.pressure_Pa += more.pressure_Pa;
  sum.slope_Pa_s_per_m3 += more.slope_Pa_s_per_m3;
}

}  // namespace

BranchLaws::BranchLaws(const HydronicGraph& graph) {
  const std::vector<Branch>& branches = graph.inside().branches;
  rows_.reserve(branches.size());
  for (const Branch& branch : branches) {
    Row& row = rows_.emplace_back();
    row.first = static_cast<std::uint32_t>(terms_.size());
    bores_.clear();
    for (const Element& element : branch.elements) add(row, element, branch.liquid);
    const double flow = add_tubes(row, branch.liquid);
    expects(terms_.size() - row.first <= most_terms, "hydronic graph: a branch of too many elements");
    row.terms = static_cast<std::uint16_t>(terms_.size() - row.first);
    foresee(row, flow);
  }
}

void BranchLaws::add(Row& row, const Element& element, const Liquid& liquid) {
  row.shut = row.shut || is_shut(element);
  if (const Bore* bore = std::get_if<Bore>(&element.shape)) {
    const auto same = [&](Bore& sum) { return add_to(sum, *bore); };
    if (std::none_of(bores_.begin(), bores_.end(), same)) bores_.push_back(*bore);
  } else if (const Pump* pump = std::get_if<Pump>(&element.shape)) {
    if (const ControlledCurve* curve = std::get_if<ControlledCurve>(&pump->curve)) {
      lines_.push_back({rows_.size() - 1, terms_.size(), curve->held.get()});
    }
    terms_.push_back(WeighedPump{pump, weight_Pa_per_m(liquid), std::numeric_limits<double>::infinity()});
  } else if (const PowerLaw* law = std::get_if<PowerLaw>(&element.shape)) {
    if (law->resistance > 0.0) terms_.push_back(*law);
  } else if (const BypassValve* bypass = std::get_if<BypassValve>(&element.shape)) {
    terms_.push_back(FilledBypass{*bypass, liquid});
    row.one_way = true;
  } else if (const CheckValve* check = std::get_if<CheckValve>(&element.shape)) {
    if (check->opening_Pa > 0.0) terms_.push_back(*check);
    row.one_way = true;
  } else {
    row.square += loss_of_any(element.shape, liquid, 1.0).pressure_Pa;
  }
}

// The flow that is usual in the narrowest of them.
double BranchLaws::add_tubes(Row& row, const Liquid& liquid) {
  double usual = std::numeric_limits<double>::infinity();
  for (const Bore& bore : bores_) {
    usual = std::min(usual, slabwright::usual_flow(bore));
    if (row.tube.empty())
      row.tube = TubeRun(bore, liquid);
    else
      terms_.push_back(TubeRun(bore, liquid));
  }
  return usual;
}

void BranchLaws::foresee(Row& row, double flow) {
  if (row.square * flow * flow > usual_loss_Pa) flow = std::sqrt(usual_loss_Pa / row.square);
  const std::size_t end = row.first + row.terms;
  for (std::size_t i = row.first; i < end; ++i) flow = std::min(flow, slabwright::usual_flow(terms_[i]));
  if (!std::isfinite(flow)) flow = some_flow_m3_per_s;
  double chord = row.square * flow;
  if (!row.tube.empty()) chord += row.tube.rough_chord_Pa_s_per_m3(flow);
  for (std::size_t i = row.first; i < end; ++i) {
    chord += (loss_of_term(terms_[i], flow).pressure_Pa - loss_of_term(terms_[i], 0.0).pressure_Pa) / flow;
  }
  row.usual_flow_m3_per_s = static_cast<float>(flow);
  // A pump whose head stays level has no chord; any small one will do. Rounded down, so that a laminar branch, whose
  // chord is its tangent, is taken at its tangent.
  row.chord_Pa_s_per_m3 = std::nextafter(static_cast<float>(std::max(chord, 1.0 / flow)), 0.0F);
}

Loss BranchLaws::loss(std::size_t branch, double flow_m3_per_s) {
  Row& row = rows_[branch];
  Loss sum = square_loss(row.square, flow_m3_per_s);
  if (!row.tube.empty()) slabwright::add(sum, row.tube.loss(flow_m3_per_s));
  for (std::size_t i = 0; i < row.terms; ++i) slabwright::add(sum, loss_of_term(terms_[row.first + i], flow_m3_per_s));
  return sum;
}

double BranchLaws::shared_flow(const HeldCurve* held) const {
  double sum = 0.0;
  int running = 0;
  for (const Line& line : lines_) {
    const double flow = rows_[line.row].motion.flow;
    if (line.held != held || flow <= 0.0) continue;
    sum += flow;
    ++running;
  }
  return running > 0 ? sum / running : 0.0;
}

double BranchLaws::read_lines() {
  double most_Pa = 0.0;
  std::vector<double> found;
  for (const Line& line : lines_) found.push_back(shared_flow(line.held));
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    WeighedPump& term = std::get<WeighedPump>(terms_[lines_[i].term]);
    const double flow = rows_[lines_[i].row].motion.flow, before_Pa = term_loss(term, flow).pressure_Pa;
    // Beyond its design flow a line is level.
    const double level_from = lines_[i].held->control.flow_m3_per_s * term.pump->speed_share;
    const double from = std::min(term.line_m3_per_s, level_from);
    term.line_m3_per_s = std::min(found[i], level_from);
    most_Pa = std::max(most_Pa, std::abs(term_loss(term, flow).pressure_Pa - before_Pa));
    term.line_m3_per_s = from + lines_[i].ahead(term.line_m3_per_s - from);
  }
  return most_Pa;
}

/// Every other reading goes on to where the last two point (Aitken, Steffensen): where a bypass opens, line and circuit
/// may run nearly alongside each other.
double BranchLaws::Line::ahead(double change) {
  const double share = last_change == 0.0 ? 0.0 : change / last_change;
  last_change = share == 0.0 ? change : 0.0;
  return std::abs(share) < furthest_share ? change / (1.0 - share) : change;
}

bool BranchLaws::pump_outside_curve(std::size_t branch, double flow_m3_per_s) const {
  const Row& row = rows_[branch];
  for (std::size_t i = 0; i < row.terms; ++i) {
    const WeighedPump* term = std::get_if<WeighedPump>(&terms_[row.first + i]);
    if (term && head_at(*term->pump, flow_m3_per_s).outside) return true;
  }
  return false;
}

Loss branch_loss(const HydronicGraph& graph, BranchId branch, double flow_m3_per_s) {
  Loss sum;
  for (const Element& element : graph.elements(branch)) {
    add(sum, loss_of_any(element.shape, graph.liquid(branch), flow_m3_per_s));
  }
  return sum;
}

std::vector<PartLoss> losses_by_part(const HydronicGraph& graph, BranchId branch, double flow_m3_per_s) {
  std::vector<PartLoss> parts;
  for (const Element& element : graph.elements(branch)) {
    const double loss = loss_of_any(element.shape, graph.liquid(branch), flow_m3_per_s).pressure_Pa;
    const auto same = [&](const PartLoss& part) { return part.part == element.part; };
    const auto found = std::find_if(parts.begin(), parts.end(), same);
    if (found == parts.end())
      parts.push_back({element.part, loss});
    else
      found->pressure_Pa += loss;
  }
  return parts;
}

}  // namespace slabwright
