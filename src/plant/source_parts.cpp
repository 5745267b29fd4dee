// What the ways of joining boiler and floor have in common.
#include <algorithm>
#include <cmath>

#include "plant/piping.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/handbook_mixing.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

// Practice: a spring that holds about 20 mbar, in a body that costs two velocity heads.
constexpr double check_valve_Pa = 2e3, check_valve_coefficient = 2.0;
// Practice: straight through each of two tees half a velocity head, and four diameters of pipe between them at most.
constexpr double tee_coefficient = 0.5, tees_apart_diameters = 4.0, pipe_roughness_m = 7e-6;
// Practice: elbows and isolating valves of a boiler's own circuit, and of the two pipes that inject.
constexpr double boiler_circuit_coefficient = 8.0, injection_coefficient = 12.0;
// Flow in a loop where nothing says how much it needs: water at half a metre a second.
constexpr double usual_velocity_m_per_s = 0.5;

double loss_Pa(const std::vector<Element>& elements, const Liquid& liquid, double flow_m3_per_s) {
  HydronicGraph graph;
  const NodeId from = graph.add_node("from"), to = graph.add_node("to");
  return branch_loss(graph, graph.add_branch(from, to, "way", liquid, elements), flow_m3_per_s).pressure_Pa;
}

std::vector<Element> check_valve(const Design& design) {
  return {{Part::pump, CheckValve{check_valve_Pa}}, fittings(design, check_valve_coefficient)};
}

}  // namespace

std::vector<Element> heater(const Design& design) {
  std::vector<Element> all;
  if (design.boiler.kind != BoilerKind::none) {
    all.push_back({Part::boiler, KvValve{design.boiler.coefficient_kv}});
    if (design.boiler.check_valve) {
      all.push_back({Part::boiler, CheckValve{check_valve_Pa}});
      all.push_back({Part::boiler, Fitting{check_valve_coefficient, design.mains.inside_diameter_m}});
    }
  }
  return all;
}

Element fittings(const Design& design, double loss_coefficient) {
  return {Part::mains, Fitting{loss_coefficient, design.mains.inside_diameter_m}};
}

std::vector<Element> close_tees(const Design& design) {
  const double bore_m = design.mains.inside_diameter_m;
  return {fittings(design, 2.0 * tee_coefficient),
          {Part::mains, Bore{tees_apart_diameters * bore_m, bore_m, pipe_roughness_m}}};
}

std::vector<Element> joined(std::vector<Element> first, const std::vector<Element>& second) {
  first.insert(first.end(), second.begin(), second.end());
  return first;
}

SourcePiping with_circulators(HydronicGraph& graph, const SourcePlan& plan, SourcePiping piping, NodeId from,
                              std::vector<Element> more) {
  const PumpEntry& entry = plan.design.pump;
  const auto add = [&](NodeId a, NodeId b, const std::string& name, const std::vector<Element>& elements) {
    piping.branch.push_back(graph.add_branch(a, b, name, plan.liquid, elements));
    return piping.branch.back();
  };
  const auto pump = [&](int i) {
    return Element{Part::pump, i == 1 && plan.second_pump ? *plan.second_pump : plan.floor_pump};
  };
  const std::string whole = piping.mix ? "floor pump" : "pump and heater";
  if (entry.pumps == 1 || entry.together == Together::in_series) {
    std::vector<Element> pumps;
    for (int i = 0; i < entry.pumps; ++i) pumps.push_back(pump(i));
    piping.pump.push_back(add(from, piping.out, whole, joined(pumps, more)));
    piping.way.push_back(piping.pump.front());
    return piping;
  }
  const NodeId inlet = graph.add_node("pumps' inlet");
  more.push_back(fittings(plan.design, tee_coefficient));
  piping.way.push_back(add(from, inlet, "way to the pumps", more));
  for (int i = 0; i < entry.pumps; ++i) {
    piping.pump.push_back(
        add(inlet, piping.out, "floor pump " + std::to_string(i + 1), joined({pump(i)}, check_valve(plan.design))));
  }
  piping.way.push_back(piping.pump.front());
  return piping;
}

std::vector<Element> boiler_circuit(const Design& design) {
  return joined(heater(design), {fittings(design, boiler_circuit_coefficient)});
}

std::vector<Element> injection_circuit(const Design& design) { return {fittings(design, injection_coefficient)}; }

Pump pump_for(double flow_m3_per_s, const std::vector<Element>& elements, const Liquid& liquid) {
  const double wanted_m = loss_Pa(elements, liquid, flow_m3_per_s) / (liquid.density_kg_per_m3 * gravity_m_per_s2);
  Pump pump;
  for (const GenericPump& row : generic_pumps()) {
    pump = Pump{PumpLaw{row.shutoff_m, row.most_m3_per_s, 2.0}, 1.0};
    if (head_at(pump, flow_m3_per_s).head_m >= wanted_m) break;
  }
  const auto over = [&](double speed) { return head_at({pump.curve, speed}, flow_m3_per_s).head_m - wanted_m; };
  if (over(1.0) > 0.0) pump.speed_share = root_in_bracket(over, 0.02, 1.0, {1e-9, 0.0, 200}).x;
  return pump;
}

double stem_for(const Design& design, double hot_share, const Liquid& liquid) {
  const std::vector<Element> way = heater(design);
  const auto over = [&](double stem) {
    const ThreeWayPorts ports = ports_at({}, stem);
    const double flow = 1e-3;  // losses go with the square of the flow
    return loss_Pa(joined(way, {{Part::mixing_valve, KvValve{ports.return_kv}}}), liquid, (1.0 - hot_share) * flow) -
           loss_Pa(way, liquid, (1.0 - hot_share) * flow) -
           loss_Pa(joined(way, {{Part::mixing_valve, KvValve{ports.hot_kv}}}), liquid, hot_share * flow);
  };
  return root_in_bracket(over, 0.0, 1.0, {1e-9, 0.0, 200}).x;
}

SourceDuty source_duty(const Design& design, const LoopPlan& loops, const FloorPlan* floor) {
  const auto target = floor ? target_by_heat(design, loops, *floor) : std::nullopt;
  const double bore_m = tube_of(design).inside_diameter_m;
  const double usual = usual_velocity_m_per_s * pi / 4.0 * bore_m * bore_m * static_cast<double>(loops.loop.size());
  SourceDuty duty;
  duty.floor_m3_per_s = target ? target->total_m3_per_s : design.pump.flow_m3_per_s.value_or(usual);
  const double least = design.boiler.least_flow_m3_per_s.value_or(0.0);
  duty.boiler_m3_per_s = design.boiler.flow_m3_per_s.value_or(std::max(duty.floor_m3_per_s, least));
  if (!target) return duty;
  const double back_degC = target->supply_degC - design.pump.drop_K;
  // A boiler that is too cool for the floor goes through unmixed.
  duty.hot_share = mixing_share(target->supply_degC, back_degC, design.boiler.hottest_degC).value_or(1.0);
  return duty;
}

bool has_setting(const SourcePiping& source) { return source.mixing || source.injection; }

HydronicGraph with_setting(HydronicGraph graph, const SourcePiping& source, double setting_share) {
  const auto set = [&](BranchId branch, const auto& change) {
    std::vector<Element> elements = graph.elements(branch);
    for (Element& e : elements) change(e);
    graph.set_elements(branch, std::move(elements));
  };
  const auto port = [](double kv) {
    return [kv](Element& e) {
      if (e.part == Part::mixing_valve) e.shape = KvValve{kv};
    };
  };
  if (source.mixing) {
    const ThreeWayPorts ports = ports_at(*source.mixing, setting_share);
    set(source.boiler, port(ports.hot_kv));
    set(*source.mix, port(ports.return_kv));
  }
  if (source.injection) {
    set(*source.injection, [&](Element& e) {
      if (auto* pump = std::get_if<Pump>(&e.shape)) pump->speed_share = setting_share;
    });
  }
  return graph;
}

}  // namespace slabwright
