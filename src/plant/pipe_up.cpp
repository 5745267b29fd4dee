// The design as a hydronic graph: what feeds it, and what its loops are made of. Mains and bars: mains.cpp.
#include <algorithm>
#include <cmath>

#include "plant/piping.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/plant.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

// The control line that EU 641/2009 rates circulators on ends at half its head.
constexpr double proportional_no_flow_share = 0.5;

/// Half turns of a serpentine over a patch about as wide as it is long.
double half_turns(double patch_m2, double spacing_m) { return std::round(std::sqrt(patch_m2) / spacing_m); }

/// The file's curve, where it gives one that the kernel takes.
Checked<Pump> pump_of(const std::vector<PumpCurvePoint>& curve) {
  std::vector<PumpPoint> points;
  for (const PumpCurvePoint& p : curve) points.push_back({p.flow_m3_per_s, p.head_m});
  std::sort(points.begin(), points.end(),
            [](const PumpPoint& a, const PumpPoint& b) { return a.flow_m3_per_s < b.flow_m3_per_s; });
  const auto table = pump_table(points);
  if (!table) return {std::nullopt, table.said};
  return {Pump{*table.value, 1.0}, {}};
}

Checked<Pump> floor_pump(const Design& design, std::size_t generic) {
  if (!design.pump.points.empty()) return pump_of(design.pump.points);
  const GenericPump& row = generic_pumps()[generic];
  return {Pump{PumpLaw{row.shutoff_m, row.most_m3_per_s, 2.0}, 1.0}, {}};
}

Checked<Pump> boiler_pump(const Design& design, const SourceDuty& duty, const Liquid& liquid) {
  if (!design.boiler.pump_points.empty()) return pump_of(design.boiler.pump_points);
  return {pump_for(duty.boiler_m3_per_s, boiler_circuit(design), liquid), {}};
}

SourcePiping add_source(HydronicGraph& graph, const SourcePlan& plan) {
  switch (plan.design.boiler.piping) {
    case BoilerPiping::direct: return pipe_direct(graph, plan);
    case BoilerPiping::tees:
    case BoilerPiping::separator:
    case BoilerPiping::buffer: return pipe_decoupled(graph, plan);
    case BoilerPiping::mixing_valve: return pipe_mixing_valve(graph, plan);
    case BoilerPiping::injection: return pipe_injection(graph, plan);
  }
  return {};
}

void add_bypass(HydronicGraph& graph, const SourcePlan& plan, SourcePiping& piping) {
  const PumpEntry& pump = plan.design.pump;
  if (!pump.bypass_opening_Pa) return;
  BypassValve valve;
  valve.opening_Pa = *pump.bypass_opening_Pa;
  valve.open_kv = pump.bypass_coefficient_kv.value_or(valve.open_kv);
  piping.bypass = graph.add_branch(piping.out, piping.back, "bypass", plan.liquid, {{Part::mains, valve}});
  piping.branch.push_back(*piping.bypass);
}

/// What feeds the mains, and at which setting of its stem or injecting pump.
Plant with_source(Plant plant, const SourceDuty& duty, const SourcePlan& plan) {
  SourcePlan ready = plan;
  if (plan.design.boiler.piping == BoilerPiping::mixing_valve) {
    ready.setting_share = stem_for(plan.design, duty.hot_share, plan.liquid);
  }
  if (plan.design.boiler.piping == BoilerPiping::injection) {
    const double injected = std::max(duty.hot_share, 0.01) * duty.floor_m3_per_s;
    ready.injection_pump =
        pump_for(injected, joined(injection_circuit(plan.design), injection_circuit(plan.design)), plan.liquid);
    ready.setting_share = ready.injection_pump->speed_share;
  }
  plant.source = add_source(plant.graph, ready);
  add_bypass(plant.graph, ready, plant.source);
  plant.source_branch = plant.source.way[plant.source.mix ? 1 : 0];
  plant.setting_share = ready.setting_share;
  return plant;
}

}  // namespace

TubeSize tube_of(const Design& design) {
  const TubeSize* row = find_tube(design.tube.size.name);
  expects(row != nullptr, "the reader lets only known tubes pass");
  TubeSize tube = *row;
  tube.roughness_m = design.tube.roughness_m.value_or(tube.roughness_m);
  tube.conductivity_W_per_mK = design.tube.conductivity_W_per_mK.value_or(tube.conductivity_W_per_mK);
  return tube;
}

ValveCurve port_valve(const Valve& valve) {
  if (!valve.points.empty()) {
    std::vector<TurnPoint> rows;
    for (const ValvePoint& p : valve.points) rows.push_back({p.open_turns, p.coefficient_kv});
    if (const auto table = valve_table(rows)) return *table.value;
  }
  if (valve.shape == ValveShape::equal_percentage) {
    return EqualPercentageValve{valve.coefficient_kv, static_cast<double>(valve.turns)};
  }
  return LinearValve{valve.coefficient_kv, static_cast<double>(valve.turns)};
}

double open_port_kv(const Valve& valve) {
  return valve.points.empty() ? valve.coefficient_kv : valve.points.back().coefficient_kv;
}

std::vector<Element> loop_elements(const Design& design, const Loop& loop) {
  const TubeSize tube = tube_of(design);
  double leader_m = 0.0;
  for (const Stretch& s : loop.along) leader_m += s.leader ? s.length_m : 0.0;
  std::vector<Element> all{{Part::balancing_valve, KvValve{open_port_kv(design.valve)}}};
  if (leader_m > 0.0) all.push_back({Part::leader, bore_of(tube, leader_m)});
  if (loop.length_m > leader_m) all.push_back({Part::tube, bore_of(tube, loop.length_m - leader_m)});
  const double turns = loop.path ? 0.5 * loop.bends_number : half_turns(loop.patch_m2, design.tube.spacing_m);
  const double bends = turns * bend_loss_coefficient(pi);
  const double ends = entry_loss_coefficient + exit_loss_coefficient;
  all.push_back({Part::bend, Fitting{bends + ends, tube.inside_diameter_m}});
  all.push_back({Part::return_valve, KvValve{design.valve.return_coefficient_kv}});
  return all;
}

Checked<Plant> pipe_up(const Design& design, const LoopPlan& loops, const FloorPlan* floor, std::size_t generic) {
  // Any temperature will do here: every solve sets the liquids anew.
  const Liquid water = liquid(mixture_of(design.fluid), 30.0);
  const SourceDuty duty = source_duty(design, loops, floor);
  const auto pump = floor_pump(design, generic), boilers = boiler_pump(design, duty, water);
  if (!pump) return {std::nullopt, pump.said};
  if (!boilers) return {std::nullopt, boilers.said};
  SourcePlan plan{design, water, *pump.value, boilers.value, std::nullopt};
  if (!design.pump.second_points.empty()) {
    const auto second = pump_of(design.pump.second_points);
    if (!second) return {std::nullopt, second.said};
    plan.second_pump = second.value;
  }
  Plant plant;
  plant.design = design;
  plant.loops = loops;
  if (floor) plant.floor = *floor;
  plant.pump_from = design.pump.points.empty() ? PumpFrom::generic : PumpFrom::file;
  plant.pump_name = design.pump.points.empty() ? std::string(generic_pumps()[generic].name) : "the pump of the file";
  plant.pump = *pump.value;
  plant = with_source(std::move(plant), duty, plan);
  return {with_mains(std::move(plant), water), {}};
}

namespace {

/// Changes the floor's circulators.
template <class Change>
Plant with_pumps(Plant plant, const Change& change) {
  for (const BranchId branch : plant.source.pump) {
    std::vector<Element> elements = plant.graph.elements(branch);
    for (Element& e : elements) {
      if (auto* pump = std::get_if<Pump>(&e.shape)) *pump = change(*pump);
    }
    plant.graph.set_elements(branch, std::move(elements));
  }
  return plant;
}

}  // namespace

Plant with_settings(const Plant& plant, const ValveTurns& turns, double pump_speed_share) {
  Plant set = plant;
  set.turns = turns;
  set.pump_speed_share = pump_speed_share;
  set.pump.speed_share = pump_speed_share;
  const ValveCurve curve = port_valve(plant.design.valve);
  for (std::size_t i = 0; i < turns.size(); ++i) {
    std::vector<Element> elements = plant.graph.elements(plant.loop_branch[i]);
    for (Element& e : elements) {
      if (e.part == Part::balancing_valve && !std::holds_alternative<Shut>(e.shape)) {
        e.shape = KvValve{kv_at_turns(curve, turns[i])};
      }
    }
    set.graph.set_elements(plant.loop_branch[i], std::move(elements));
  }
  return with_pumps(std::move(set), [&](const Pump& pump) { return Pump{pump.curve, pump_speed_share}; });
}

Plant holding(const Plant& plant, double pressure_Pa, double flow_m3_per_s) {
  const PumpEntry& entry = plant.design.pump;
  if (entry.control == PumpMode::constant_speed) return plant;
  const double n = entry.pumps;
  const bool series = entry.together == Together::in_series;
  const double weight = plant.graph.liquid(plant.source_branch).density_kg_per_m3 * gravity_m_per_s2;
  const PumpControl control{pressure_Pa / weight / (series ? n : 1.0), flow_m3_per_s / (series ? 1.0 : n),
                            entry.control == PumpMode::constant_pressure ? 1.0 : proportional_no_flow_share};
  // Pumps of one kind have one control, which runs them alike.
  std::optional<PumpCurve> first, second;
  int number = 0;
  return with_pumps(plant, [&](const Pump& pump) {
    std::optional<PumpCurve>& held = number++ == 1 && !entry.second_points.empty() ? second : first;
    if (!held) held = held_to(pump.curve, control);
    return Pump{*held, pump.speed_share};
  });
}

Plant with_shut(const Plant& plant, const std::vector<std::size_t>& loops) {
  Plant set = plant;
  for (const std::size_t i : loops) {
    std::vector<Element> elements = set.graph.elements(set.loop_branch[i]);
    for (Element& e : elements) {
      if (e.part == Part::balancing_valve) e.shape = Shut{};
    }
    set.graph.set_elements(set.loop_branch[i], std::move(elements));
  }
  return set;
}

NetworkSolution flows_at(const Plant& plant, double water_degC) {
  HydronicGraph graph = plant.graph;
  const Liquid water = liquid(mixture_of(plant.design.fluid), water_degC);
  for (std::size_t i = 0; i < graph.branch_count(); ++i) graph.set_liquid(BranchId{i}, water);
  return solve_network(graph);
}

std::vector<std::size_t> loops_shut(const Design& design, const LoopPlan& loops) {
  std::vector<std::size_t> shut;
  for (std::size_t i = 0; i < loops.loop.size(); ++i) {
    const Loop& loop = loops.loop[i];
    bool warms = false, warms_open = false;
    for (const Stretch& s : loop.along) {
      if (s.leader || s.length_m <= 0.0) continue;
      warms = true;
      warms_open = warms_open || !design.room[s.room].shut;
    }
    const bool own = loop.entry && design.loop[*loop.entry].shut;
    if (own || (warms && !warms_open)) shut.push_back(i);
  }
  return shut;
}

double floor_flow_m3_per_s(const Plant& plant, const NetworkSolution& solved) {
  double sum = solved.flow_m3_per_s[plant.source_branch.at];
  if (plant.source.bypass) sum -= solved.flow_m3_per_s[plant.source.bypass->at];
  return sum;
}

}  // namespace slabwright
