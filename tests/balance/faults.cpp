#include "balance/faults.hpp"

#include <cmath>

#include "slabwright/handbook_practice.hpp"

namespace slabwright::test {
namespace {

constexpr double pi = 3.14159265358979323846;

Design design_of(const std::vector<double>& length_m) {
  double tube_m = 0.0;
  std::vector<std::pair<std::string, std::string>> keys{{"units", "SI"}};
  for (std::size_t i = 0; i < length_m.size(); ++i) {
    keys.push_back({"loop[" + std::to_string(i + 1) + "].length", std::to_string(length_m[i]) + " m"});
    tube_m += length_m[i];
  }
  const double width_m = 10.0, spacing_m = 0.3;
  keys.push_back({"slab.size", std::to_string(tube_m * spacing_m / width_m) + " x 10 m"});
  keys.push_back({"tube.size", "1/2 in"});
  keys.push_back({"tube.spacing", "300 mm"});
  keys.push_back({"climate.outdoor", "-20 C"});
  keys.push_back({"climate.indoor", "16 C"});
  return from_keys(keys).design;
}

/// The tube of a loop and its fittings, without the port's two valves.
std::vector<Element> tube_part(const std::vector<Element>& all, bool valves) {
  std::vector<Element> part;
  for (const Element& e : all) {
    if ((e.part == Part::balancing_valve || e.part == Part::return_valve) == valves) part.push_back(e);
  }
  return part;
}

std::vector<Element> joined(std::vector<Element> a, const std::vector<Element>& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

void lengthen(Plant& plant, const PutFault& fault) {
  std::vector<Element> elements = plant.graph.elements(plant.loop_branch[fault.loop]);
  for (Element& e : elements) {
    if (auto* bore = std::get_if<Bore>(&e.shape)) bore->length_m *= fault.size;
  }
  plant.graph.set_elements(plant.loop_branch[fault.loop], elements);
  Loop& loop = plant.loops.loop[fault.loop];
  loop.length_m *= fault.size;
  for (Stretch& s : loop.along) s.length_m *= fault.size;
}

/// A power law in series, found by bisection, so that the loop carries the share of its healthy flow.
void choke(Plant& plant, const DrawnManifold& manifold, const PutFault& fault) {
  const BranchId branch = plant.loop_branch[fault.loop];
  const std::vector<Element> open = plant.graph.elements(branch);
  const double degC = 0.5 * (manifold.supply_degC + manifold.healthy.loop[fault.loop].return_degC);
  const double healthy = flows_at(plant, degC).flow_m3_per_s[branch.at];
  const auto share_over = [&](double log_resistance) {
    plant.graph.set_elements(branch, joined(open, {{Part::tube, PowerLaw{std::exp(log_resistance), 2.0}}}));
    return flows_at(plant, degC).flow_m3_per_s[branch.at] / healthy - fault.size;
  };
  share_over(root_in_bracket(share_over, std::log(1e10), std::log(1e16), {1e-9, 1e-6, 100}).x);
}

void change_over(Plant& plant, const PutFault& fault) {
  const BranchId a = plant.loop_branch[fault.loop], b = plant.loop_branch[fault.other];
  const std::vector<Element> of_a = plant.graph.elements(a), of_b = plant.graph.elements(b);
  plant.graph.set_elements(a, joined(tube_part(of_a, true), tube_part(of_b, false)));
  plant.graph.set_elements(b, joined(tube_part(of_b, true), tube_part(of_a, false)));
  std::swap(plant.loops.loop[fault.loop].length_m, plant.loops.loop[fault.other].length_m);
  std::swap(plant.loops.loop[fault.loop].along, plant.loops.loop[fault.other].along);
}

}  // namespace

std::uint64_t Draw::next() {
  std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ULL);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}
double Draw::between(double least, double most) {
  return least + (most - least) * static_cast<double>(next() >> 11) * 0x1.0p-53;
}
std::size_t Draw::below(std::size_t count) { return static_cast<std::size_t>(next() % count); }
double Draw::normal() {
  const double u = 1.0 - between(0.0, 1.0), v = between(0.0, 1.0);
  return std::sqrt(-2.0 * std::log(u)) * std::cos(2.0 * pi * v);
}

DrawnManifold draw_manifold(Draw& draw, std::size_t loops, bool set) {
  std::vector<double> length_m;
  for (std::size_t i = 0; i < loops; ++i) length_m.push_back(draw.between(30.0, 91.0));
  DrawnManifold m;
  const Design design = design_of(length_m);
  for (std::size_t pump = 0; pump < generic_pumps().size(); ++pump) {
    m.piped = piped(design);
    m.piped.plant = pipe_up(design, m.piped.loops, &m.piped.floor, pump).value.value();
    m.target = target_flows(m.piped.plant, &m.piped.envelope);
    m.supply_degC = m.target.supply_degC;
    const Balance balance = balance_plant(m.piped.plant, m.target, m.supply_degC).value.value();
    m.plant = with_settings(m.piped.plant, set ? balance.turns : ValveTurns{}, balance.pump_speed_share);
    if (balance.pump_reach_share >= 1.0) break;
  }
  m.healthy = operate(m.plant, m.piped.conditions, m.supply_degC);
  return m;
}

PutFault draw_fault(Draw& draw, std::size_t loops) {
  PutFault fault;
  fault.loop = draw.below(loops);
  fault.other = fault.loop;
  if (draw.between(0.0, 7.0) < 1.0) return fault;
  fault.wrong = static_cast<Wrong>(1 + draw.below(wrongs - 1));
  if (fault.wrong == Wrong::longer) fault.size = draw.between(1.2, 1.5);
  if (fault.wrong == Wrong::cut) fault.size = draw.between(0.3, 0.7);
  if (fault.wrong == Wrong::meter) fault.size = draw.below(2) == 0 ? draw.between(0.5, 0.7) : draw.between(1.3, 1.5);
  if (fault.wrong == Wrong::swapped) {
    fault.other = (fault.loop + 1 + draw.below(loops - 1)) % loops;
    if (fault.other < fault.loop) std::swap(fault.loop, fault.other);
  }
  return fault;
}

True true_state(const DrawnManifold& manifold, const PutFault& fault) {
  Plant plant = manifold.plant;
  if (fault.wrong == Wrong::longer) lengthen(plant, fault);
  if (fault.wrong == Wrong::cut) choke(plant, manifold, fault);
  if (fault.wrong == Wrong::swapped) change_over(plant, fault);
  const OperatingPoint point = operate(plant, manifold.piped.conditions, manifold.supply_degC, &manifold.healthy);
  True truth;
  const double bore_m = tube_of(plant.design).inside_diameter_m;
  for (std::size_t i = 0; i < point.loop.size(); ++i) {
    truth.flow_m3_per_s.push_back(point.loop[i].flow_m3_per_s);
    truth.return_degC.push_back(point.loop[i].return_degC);
    const double volume_m3 = 0.25 * pi * bore_m * bore_m * plant.loops.loop[i].length_m;
    truth.front_s.push_back(volume_m3 / point.loop[i].flow_m3_per_s);
  }
  return truth;
}

Readings read_with_noise(Draw& draw, const DrawnManifold& manifold, const PutFault& fault, const True& truth) {
  Readings readings;
  readings.supply_degC = manifold.supply_degC;
  readings.water_degC = manifold.supply_degC;
  readings.pump_error_share = readings.heat_error_share = 0.0;
  for (std::size_t i = 0; i < truth.flow_m3_per_s.size(); ++i) {
    const double meter = fault.wrong == Wrong::meter && i == fault.loop ? fault.size : 1.0;
    PortReading port;
    port.flow_m3_per_s = std::max(0.0, meter * truth.flow_m3_per_s[i] * (1.0 + 0.10 * draw.normal()));
    port.return_degC = truth.return_degC[i] + 0.5 * draw.normal();
    port.front_s = std::max(1.0, truth.front_s[i] * (1.0 + 0.06 * draw.normal()));
    readings.port.push_back(port);
  }
  return readings;
}

Readings only(const Readings& all, Kinds kinds) {
  Readings some = all;
  if (!kinds.returns) some.supply_degC.reset();
  for (PortReading& port : some.port) {
    if (!kinds.returns) port.return_degC.reset();
    if (!kinds.fronts) port.front_s.reset();
  }
  return some;
}

}  // namespace slabwright::test
