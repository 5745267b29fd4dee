// What elements lose.
#include "hydraulics/branch_law.hpp"

#include <algorithm>
#include <cmath>

#include "hydraulics/graph.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/hydraulics_network.hpp"
#include "slabwright/hydraulics_valve.hpp"

namespace slabwright {
namespace {

constexpr double gravity_m_per_s2 = 9.80665;

// Where heating water moves at about this speed, and a valve or a stated law loses about this much, their chords
// resemble the tangents that the solution will have. Only the first guess leans on it.
constexpr double usual_velocity_m_per_s = 0.5;
constexpr double usual_loss_Pa = 1e4;
constexpr double some_flow_m3_per_s = 1e-4;

Term term(const Bore& bore, const Liquid&) { return bore; }
Term term(const Fitting& fitting, const Liquid& liquid) {
  return Square{fitting_loss(fitting.loss_coefficient, fitting.inside_diameter_m, liquid, 1.0).pressure_Pa};
}
Term term(const KvValve& valve, const Liquid& liquid) {
  return Square{valve.kv > 0.0 ? valve_loss(valve.kv, liquid, 1.0).pressure_Pa : 0.0};
}
Term term(const PowerLaw& law, const Liquid&) {
  if (law.exponent == 2.0) return Square{law.resistance};
  return law;
}
Term term(const Pump& pump, const Liquid&) { return &pump; }
Term term(const CheckValve&, const Liquid&) { return Square{}; }
Term term(const Shut&, const Liquid&) { return Square{}; }

Term term_of(const Shape& shape, const Liquid& liquid) {
  return std::visit([&](const auto& s) { return term(s, liquid); }, shape);
}

Loss loss_of(const Bore& bore, const Liquid& liquid, double flow) { return tube_loss(bore, liquid, flow); }
Loss loss_of(const Square& square, const Liquid&, double flow) {
  const double per_flow = square.resistance * std::abs(flow);
  return {per_flow * flow, 2.0 * per_flow};
}
Loss loss_of(const PowerLaw& law, const Liquid&, double flow) {
  const double per_flow = law.resistance * std::pow(std::abs(flow), law.exponent - 1.0);
  return {per_flow * flow, law.exponent * per_flow};
}
// A head counts in metres of the liquid that fills the branch.
Loss loss_of(const Pump* pump, const Liquid& liquid, double flow) {
  const PumpHead head = head_at(*pump, flow);
  const double weight = liquid.density_kg_per_m3 * gravity_m_per_s2;
  return {-weight * head.head_m, -weight * head.slope_s_per_m2};
}

Loss loss_of(const Term& term, const Liquid& liquid, double flow) {
  return std::visit([&](const auto& t) { return loss_of(t, liquid, flow); }, term);
}

double usual_flow(const Bore& bore) {
  return 0.25 * 3.14159265358979323846 * bore.inside_diameter_m * bore.inside_diameter_m * usual_velocity_m_per_s;
}
double usual_flow(const Square& square) { return std::sqrt(usual_loss_Pa / square.resistance); }
double usual_flow(const PowerLaw& law) { return std::pow(usual_loss_Pa / law.resistance, 1.0 / law.exponent); }
double usual_flow(const Pump* pump) { return 0.5 * range_m3_per_s(*pump); }

}  // namespace

BranchLaws::BranchLaws(const HydronicGraph& graph) {
  rows_.reserve(graph.branch_count());
  terms_.reserve(2 * graph.branch_count());
  for (std::size_t i = 0; i < graph.branch_count(); ++i) {
    const Branch& branch = graph.inside().branch(i);
    Row row{branch.liquid, terms_.size(), 0, is_shut(graph, {i}), false, 0.0, 0.0};
    for (const Element& element : branch.elements) {
      add(term_of(element.shape, branch.liquid), row.first);
      row.one_way = row.one_way || std::holds_alternative<CheckValve>(element.shape);
    }
    row.end = terms_.size();
    rows_.push_back(row);
    foresee(i);
  }
}

namespace {

bool add_to(Term& sum, const Bore& bore) {
  Bore* run = std::get_if<Bore>(&sum);
  if (!run || run->inside_diameter_m != bore.inside_diameter_m || run->roughness_m != bore.roughness_m) return false;
  run->length_m += bore.length_m;
  return true;
}
bool add_to(Term& sum, const Square& square) {
  Square* squares = std::get_if<Square>(&sum);
  if (squares) squares->resistance += square.resistance;
  return squares != nullptr;
}
bool add_to(Term&, const PowerLaw&) { return false; }
bool add_to(Term&, const Pump*) { return false; }

}  // namespace

void BranchLaws::add(const Term& term, std::size_t first) {
  const Square* square = std::get_if<Square>(&term);
  if (square && square->resistance == 0.0) return;
  for (std::size_t i = first; i < terms_.size(); ++i) {
    if (std::visit([&](const auto& t) { return add_to(terms_[i], t); }, term)) return;
  }
  terms_.push_back(term);
}

void BranchLaws::foresee(std::size_t branch) {
  Row& row = rows_[branch];
  double flow = some_flow_m3_per_s;
  for (std::size_t i = row.first; i < row.end; ++i) {
    const double own = std::visit([](const auto& t) { return slabwright::usual_flow(t); }, terms_[i]);
    flow = i == row.first ? own : std::min(flow, own);
  }
  row.usual_flow_m3_per_s = flow;
  const double rise_Pa = loss(branch, flow).pressure_Pa - loss(branch, 0.0).pressure_Pa;
  // A pump whose head stays level has no chord; any small one will do.
  row.chord_Pa_s_per_m3 = std::max(rise_Pa, 1.0) / flow;
}

Loss BranchLaws::loss(std::size_t branch, double flow_m3_per_s) const {
  const Row& row = rows_[branch];
  Loss sum;
  for (std::size_t i = row.first; i < row.end; ++i) {
    const Loss loss = loss_of(terms_[i], row.liquid, flow_m3_per_s);
    sum.pressure_Pa += loss.pressure_Pa;
    sum.slope_Pa_s_per_m3 += loss.slope_Pa_s_per_m3;
  }
  return sum;
}

bool BranchLaws::pump_outside_curve(std::size_t branch, double flow_m3_per_s) const {
  const Row& row = rows_[branch];
  for (std::size_t i = row.first; i < row.end; ++i) {
    const Pump* const* pump = std::get_if<const Pump*>(&terms_[i]);
    if (pump && head_at(**pump, flow_m3_per_s).outside) return true;
  }
  return false;
}

Loss branch_loss(const HydronicGraph& graph, BranchId branch, double flow_m3_per_s) {
  Loss sum;
  for (const Element& element : graph.elements(branch)) {
    const Loss loss = loss_of(term_of(element.shape, graph.liquid(branch)), graph.liquid(branch), flow_m3_per_s);
    sum.pressure_Pa += loss.pressure_Pa;
    sum.slope_Pa_s_per_m3 += loss.slope_Pa_s_per_m3;
  }
  return sum;
}

std::vector<PartLoss> losses_by_part(const HydronicGraph& graph, BranchId branch, double flow_m3_per_s) {
  std::vector<PartLoss> parts;
  for (const Element& element : graph.elements(branch)) {
    const Liquid& liquid = graph.liquid(branch);
    const double loss = loss_of(term_of(element.shape, liquid), liquid, flow_m3_per_s).pressure_Pa;
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
