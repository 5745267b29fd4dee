// What elements lose.
#include "hydraulics/branch_law.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "hydraulics/graph.hpp"
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

// A loss that goes with the square of the flow, in Pa per (m3/s)^2, is that of a flow of one.
double square(const Fitting& fitting, const Liquid& liquid) {
  return fitting_loss(fitting.loss_coefficient, fitting.inside_diameter_m, liquid, 1.0).pressure_Pa;
}
double square(const KvValve& valve, const Liquid& liquid) {
  return valve.kv > 0.0 ? valve_loss(valve.kv, liquid, 1.0).pressure_Pa : 0.0;
}
double square(const CheckValve&, const Liquid&) { return 0.0; }
double square(const Shut&, const Liquid&) { return 0.0; }

Loss square_loss(double resistance, double flow) {
  const double per_flow = resistance * std::abs(flow);
  return {per_flow * flow, 2.0 * per_flow};
}

Loss loss_of(const Bore& bore, const Liquid& liquid, double flow) { return tube_loss(bore, liquid, flow); }
Loss loss_of(const PowerLaw& law, const Liquid&, double flow) {
  if (law.exponent == 2.0) return square_loss(law.resistance, flow);
  const double per_flow = law.resistance * std::pow(std::abs(flow), law.exponent - 1.0);
  return {per_flow * flow, law.exponent * per_flow};
}
// A head counts in metres of the liquid that fills the branch.
Loss loss_of(const Pump& pump, const Liquid& liquid, double flow) {
  const PumpHead head = head_at(pump, flow);
  const double weight = liquid.density_kg_per_m3 * gravity_m_per_s2;
  return {-weight * head.head_m, -weight * head.slope_s_per_m2};
}
Loss loss_of(const Pump* pump, const Liquid& liquid, double flow) { return loss_of(*pump, liquid, flow); }
template <class Squared>
Loss loss_of(const Squared& shape, const Liquid& liquid, double flow) {
  return square_loss(square(shape, liquid), flow);
}

template <class Variant>
Loss loss_of_any(const Variant& kind, const Liquid& liquid, double flow) {
  return std::visit([&](const auto& k) { return loss_of(k, liquid, flow); }, kind);
}

bool add_to(Term& sum, const Bore& bore) {
  Bore* run = std::get_if<Bore>(&sum);
  if (!run || run->inside_diameter_m != bore.inside_diameter_m || run->roughness_m != bore.roughness_m) return false;
  run->length_m += bore.length_m;
  return true;
}

double usual_flow(const Bore& bore) {
  return 0.25 * std::numbers::pi * bore.inside_diameter_m * bore.inside_diameter_m * usual_velocity_m_per_s;
}
double usual_flow(const PowerLaw& law) { return std::pow(usual_loss_Pa / law.resistance, 1.0 / law.exponent); }
double usual_flow(const Pump* pump) { return 0.5 * range_m3_per_s(*pump); }

}  // namespace

BranchLaws::BranchLaws(const HydronicGraph& graph) {
  rows_.reserve(graph.branch_count());
  terms_.reserve(2 * graph.branch_count());
  for (std::size_t i = 0; i < graph.branch_count(); ++i) {
    const Branch& branch = graph.inside().branch(i);
    Row row;
    row.liquid = branch.liquid;
    row.shut = is_shut(graph, {i});
    row.first = terms_.size();
    for (const Element& element : branch.elements) {
      add(row, element.shape);
      row.one_way = row.one_way || std::holds_alternative<CheckValve>(element.shape);
    }
    row.end = terms_.size();
    rows_.push_back(row);
    foresee(i);
  }
}

void BranchLaws::add(Row& row, const Shape& shape) {
  if (const Bore* bore = std::get_if<Bore>(&shape)) {
    for (std::size_t i = row.first; i < terms_.size(); ++i) {
      if (add_to(terms_[i], *bore)) return;
    }
    terms_.push_back(*bore);
  } else if (const Pump* pump = std::get_if<Pump>(&shape)) {
    terms_.push_back(pump);
  } else if (const PowerLaw* law = std::get_if<PowerLaw>(&shape)) {
    if (law->resistance > 0.0) terms_.push_back(*law);
  } else {
    row.square += loss_of_any(shape, row.liquid, 1.0).pressure_Pa;
  }
}

void BranchLaws::foresee(std::size_t branch) {
  Row& row = rows_[branch];
  double flow = row.square > 0.0 ? std::sqrt(usual_loss_Pa / row.square) : std::numeric_limits<double>::infinity();
  for (std::size_t i = row.first; i < row.end; ++i) {
    flow = std::min(flow, std::visit([](const auto& t) { return slabwright::usual_flow(t); }, terms_[i]));
  }
  if (!std::isfinite(flow)) flow = some_flow_m3_per_s;
  row.usual_flow_m3_per_s = flow;
  const double rise_Pa = loss(branch, flow).pressure_Pa - loss(branch, 0.0).pressure_Pa;
  // A pump whose head stays level has no chord; any small one will do.
  row.chord_Pa_s_per_m3 = std::max(rise_Pa, 1.0) / flow;
}

Loss BranchLaws::loss(std::size_t branch, double flow_m3_per_s) const {
  const Row& row = rows_[branch];
  Loss sum = square_loss(row.square, flow_m3_per_s);
  for (std::size_t i = row.first; i < row.end; ++i) {
    const Loss loss = loss_of_any(terms_[i], row.liquid, flow_m3_per_s);
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
    const Loss loss = loss_of_any(element.shape, graph.liquid(branch), flow_m3_per_s);
    sum.pressure_Pa += loss.pressure_Pa;
    sum.slope_Pa_s_per_m3 += loss.slope_Pa_s_per_m3;
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
