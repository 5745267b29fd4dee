// The design as a hydronic graph: heater, mains, bars port by port, loops.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/plant.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

// Practice: ports stand 2 in apart on a bar of about an inch, and each tee costs the passing water half a velocity
// head.
constexpr double port_spacing_m = 0.05, bar_diameter_m = 0.025, bar_tee_coefficient = 0.5;
// Practice: a mixing valve of the size that goes with inch mains.
constexpr double mixing_valve_kv = 4.0;
// Practice: elbows and tees of the mains, each way.
constexpr double mains_fittings_coefficient = 2.0;

Checked<Pump> pump_of(const Design& design, std::size_t generic) {
  if (design.pump.points.empty()) {
    const GenericPump& row = generic_pumps()[generic];
    return {Pump{PumpLaw{row.shutoff_m, row.most_m3_per_s, 2.0}, 1.0}, {}};
  }
  std::vector<PumpPoint> points;
  for (const PumpCurvePoint& p : design.pump.points) points.push_back({p.flow_m3_per_s, p.head_m});
  std::sort(points.begin(), points.end(),
            [](const PumpPoint& a, const PumpPoint& b) { return a.flow_m3_per_s < b.flow_m3_per_s; });
  const auto table = pump_table(points);
  if (!table) return {std::nullopt, table.said};
  return {Pump{*table.value, 1.0}, {}};
}

/// Half turns of a serpentine over a patch about as wide as it is long.
double half_turns(double patch_m2, double spacing_m) { return std::round(std::sqrt(patch_m2) / spacing_m); }

class Piping {
 public:
  Piping(Plant& plant, const Liquid& liquid) : plant_(plant), liquid_(liquid), tube_(tube_of(plant.design)) {}

  void build(const Pump& pump) {
    const NodeId back = plant_.graph.add_node("heater inlet"), out = plant_.graph.add_node("heater outlet");
    plant_.source_branch = plant_.graph.add_branch(back, out, "pump and heater", liquid_, source(pump));
    plant_.loop_branch.resize(plant_.loops.loop.size());
    for (std::size_t m = 0; m < plant_.design.manifold.size(); ++m) manifold(m, out, back);
  }

 private:
  std::vector<Element> source(const Pump& pump) const {
    std::vector<Element> all{{Part::pump, pump}};
    if (plant_.design.boiler.kind != BoilerKind::none) {
      all.push_back({Part::boiler, KvValve{plant_.design.boiler.coefficient_kv}});
    }
    if (plant_.design.boiler.mixing_valve) all.push_back({Part::mixing_valve, KvValve{mixing_valve_kv}});
    return all;
  }

  std::vector<Element> mains() const {
    const Mains& mains = plant_.design.mains;
    std::vector<Element> all{{Part::mains, Fitting{mains_fittings_coefficient, mains.inside_diameter_m}}};
    if (mains.length_m > 0.0) {
      all.push_back({Part::mains, Bore{mains.length_m, mains.inside_diameter_m, tube_.roughness_m}});
    }
    return all;
  }

  std::vector<Element> bar() const {
    return {{Part::bar, Bore{port_spacing_m, bar_diameter_m, tube_.roughness_m}},
            {Part::bar, Fitting{bar_tee_coefficient, bar_diameter_m}}};
  }

  std::vector<Element> loop(const Loop& one) const {
    double leader_m = 0.0;
    for (const Stretch& s : one.along) leader_m += s.leader ? s.length_m : 0.0;
    std::vector<Element> all{{Part::balancing_valve, KvValve{plant_.design.valve.coefficient_kv}}};
    if (leader_m > 0.0) all.push_back({Part::leader, bore_of(tube_, leader_m)});
    if (one.length_m > leader_m) all.push_back({Part::tube, bore_of(tube_, one.length_m - leader_m)});
    const double turns = one.path ? 0.5 * one.bends_number : half_turns(one.patch_m2, plant_.design.tube.spacing_m);
    const double bends = turns * bend_loss_coefficient(pi);
    const double ends = entry_loss_coefficient + exit_loss_coefficient;
    all.push_back({Part::bend, Fitting{bends + ends, tube_.inside_diameter_m}});
    all.push_back({Part::return_valve, KvValve{plant_.design.valve.return_coefficient_kv}});
    return all;
  }

  /// Direct return: the first port is the nearest to the mains on both bars.
  void manifold(std::size_t m, NodeId out, NodeId back) {
    NodeId supply = out, collector = back;
    bool first = true;
    for (std::size_t i = 0; i < plant_.loops.loop.size(); ++i) {
      const Loop& one = plant_.loops.loop[i];
      if (one.manifold != m) continue;
      const NodeId s = plant_.graph.add_node(fmt::format("supply port of {}", one.name));
      const NodeId r = plant_.graph.add_node(fmt::format("return port of {}", one.name));
      const std::string what = first ? "mains" : "bar";
      const std::vector<Element> way = first ? mains() : bar();
      plant_.supply_side.push_back(plant_.graph.add_branch(supply, s, "supply " + what, liquid_, way));
      plant_.return_side.push_back(plant_.graph.add_branch(r, collector, "return " + what, liquid_, way));
      plant_.loop_branch[i] = plant_.graph.add_branch(s, r, one.name, liquid_, loop(one));
      supply = s;
      collector = r;
      first = false;
    }
  }

  Plant& plant_;
  Liquid liquid_;
  TubeSize tube_;
};

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

Checked<Plant> pipe_up(const Design& design, const LoopPlan& loops, const FloorPlan* floor, std::size_t generic) {
  const auto pump = pump_of(design, generic);
  if (!pump) return {std::nullopt, pump.said};
  Plant plant;
  plant.design = design;
  plant.loops = loops;
  if (floor) plant.floor = *floor;
  plant.pump_from = design.pump.points.empty() ? PumpFrom::generic : PumpFrom::file;
  plant.pump_name = design.pump.points.empty() ? std::string(generic_pumps()[generic].name) : "the pump of the file";
  // Any temperature will do here: every solve sets the liquids anew.
  plant.pump = *pump.value;
  Piping(plant, liquid(mixture_of(design.fluid), 30.0)).build(*pump.value);
  return {std::move(plant), {}};
}

Plant with_settings(const Plant& plant, const ValveTurns& turns, double pump_speed_share) {
  Plant set = plant;
  set.turns = turns;
  set.pump_speed_share = pump_speed_share;
  set.pump.speed_share = pump_speed_share;
  const ValveCurve curve = port_valve(plant.design.valve);
  for (std::size_t i = 0; i < turns.size(); ++i) {
    std::vector<Element> elements = plant.graph.elements(plant.loop_branch[i]);
    for (Element& e : elements) {
      if (e.part == Part::balancing_valve) e.shape = KvValve{kv_at_turns(curve, turns[i])};
    }
    set.graph.set_elements(plant.loop_branch[i], std::move(elements));
  }
  std::vector<Element> source = plant.graph.elements(plant.source_branch);
  for (Element& e : source) {
    if (auto* pump = std::get_if<Pump>(&e.shape)) pump->speed_share = pump_speed_share;
  }
  set.graph.set_elements(plant.source_branch, std::move(source));
  return set;
}

NetworkSolution flows_at(const Plant& plant, double water_degC) {
  HydronicGraph graph = plant.graph;
  const Liquid water = liquid(mixture_of(plant.design.fluid), water_degC);
  for (std::size_t i = 0; i < graph.branch_count(); ++i) graph.set_liquid(BranchId{i}, water);
  return solve_network(graph);
}

}  // namespace slabwright
