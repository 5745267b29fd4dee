// The system's curve and the pump's: total flows forced through the network in the circulators' place.
#include <algorithm>
#include <cmath>

#include "plant/filled.hpp"
#include "plant/piping.hpp"
#include "slabwright/plant_curves.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// Rows up to the flow it runs at, and how far beyond it they may go.
constexpr int rows_to_point = 10;
constexpr double furthest = 2.0;
/// What the solver leaves of noise in a pressure.
constexpr double noise_Pa = NetworkOptions{}.head_Pa;

double without_noise(double pressure_Pa) { return std::abs(pressure_Pa) < noise_Pa ? 0.0 : pressure_Pa; }

bool is_pump(const Element& element) { return std::holds_alternative<Pump>(element.shape); }

/// What circulators give together, and what else stands in their branches takes, by the flow through each.
struct Given {
  double pump_Pa = 0.0;
  double own_Pa = 0.0;
};
Given given_by(const HydronicGraph& graph, BranchId branch, double flow_m3_per_s) {
  Given given;
  for (const PartLoss& loss : losses_by_part(graph, branch, flow_m3_per_s)) {
    if (loss.part == Part::pump)
      given.pump_Pa -= loss.pressure_Pa;
    else
      given.own_Pa += loss.pressure_Pa;
  }
  return given;
}

/// The floor's circulators alone, side by side between two nodes.
class Circulators {
 public:
  Circulators(const HydronicGraph& graph, const std::vector<BranchId>& branches) : graph_(graph), branches_(branches) {
    in_ = alone_.add_node("in");
    out_ = alone_.add_node("out");
    for (const BranchId branch : branches)
      alone_.add_branch(in_, out_, graph.name(branch), graph.liquid(branch), graph.elements(branch));
    alone_.hold_pressure(in_, 0.0);
  }

  /// Where their curve ends.
  double end_m3_per_s() const {
    double sum = 0.0;
    for (const BranchId branch : branches_) {
      double least = HUGE_VAL;
      for (const Element& e : graph_.elements(branch))
        if (is_pump(e)) least = std::min(least, range_m3_per_s(std::get<Pump>(e.shape)));
      sum += least;
    }
    return sum;
  }

  /// At a total flow; absent where it cannot be shared out. The means of those side by side, by the water in each.
  std::optional<Given> at(double total_m3_per_s) {
    if (total_m3_per_s <= 0.0) return at_rest();
    std::vector<double> flow(branches_.size(), total_m3_per_s);
    if (branches_.size() > 1) {
      alone_.set_demand(out_, total_m3_per_s);
      const NetworkSolution solved = solve_network(alone_);
      if (solved.stop != Stop::converged) return std::nullopt;
      flow = solved.flow_m3_per_s;
    }
    Given mean;
    for (std::size_t i = 0; i < branches_.size(); ++i) {
      const Given one = given_by(graph_, branches_[i], flow[i]);
      mean.pump_Pa += one.pump_Pa * flow[i] / total_m3_per_s;
      mean.own_Pa += one.own_Pa * flow[i] / total_m3_per_s;
    }
    return mean;
  }

 private:
  /// The strongest holds the others' check valves shut.
  Given at_rest() const {
    Given most;
    for (const BranchId branch : branches_)
      most.pump_Pa = std::max(most.pump_Pa, given_by(graph_, branch, 0.0).pump_Pa);
    return most;
  }

  const HydronicGraph& graph_;
  const std::vector<BranchId>& branches_;
  HydronicGraph alone_;
  NodeId in_, out_;
};

/// Everything else, with so much water pressed in where the circulators end and drawn out where they begin.
class ForcedSystem {
 public:
  ForcedSystem(const HydronicGraph& graph, const std::vector<BranchId>& circulators)
      : graph_(without(graph, circulators)),
        solver_(graph_),
        in_(graph.from(circulators.front())),
        out_(graph.to(circulators.front())) {
    graph_.hold_pressure(in_, 0.0);
  }

  const NetworkSolution* at(double total_m3_per_s) {
    graph_.set_demand(out_, -total_m3_per_s);
    solved_ = solver_.solve(graph_, solved_.flow_m3_per_s);
    return solved_.stop == Stop::converged ? &solved_ : nullptr;
  }
  double lost_Pa() const { return solved_.pressure_Pa[out_.at] - solved_.pressure_Pa[in_.at]; }

 private:
  static HydronicGraph without(HydronicGraph graph, const std::vector<BranchId>& circulators) {
    for (const BranchId branch : circulators) graph.set_elements(branch, {{Part::pump, Shut{}}});
    return graph;
  }

  HydronicGraph graph_;
  NetworkSolver solver_;
  NodeId in_, out_;
  NetworkSolution solved_;
};

class Curves {
 public:
  Curves(const Plant& plant, const OperatingPoint& point)
      : graph_(as_it_runs(plant, point)),
        circulators_(graph_, plant.source.pump),
        system_(graph_, plant.source.pump),
        hardest_(plant.loop_branch[point.hardest_loop]) {
    weight_Pa_per_m_ = liquid(mixture_of(plant.design.fluid), point.return_degC).density_kg_per_m3 * gravity_m_per_s2;
  }

  std::optional<CurveRow> at(double total_m3_per_s) {
    const auto given = circulators_.at(total_m3_per_s);
    const NetworkSolution* solved = system_.at(total_m3_per_s);
    if (!given || !solved) return std::nullopt;
    CurveRow row;
    row.flow_m3_per_s = total_m3_per_s;
    row.system_Pa = without_noise(system_.lost_Pa() + given->own_Pa);
    row.pump_Pa = given->pump_Pa;
    row.loop_m3_per_s = total_m3_per_s > 0.0 ? solved->flow_m3_per_s[hardest_.at] : 0.0;
    row.loop_Pa = branch_loss(graph_, hardest_, row.loop_m3_per_s).pressure_Pa;
    row.system_head_m = row.system_Pa / weight_Pa_per_m_;
    row.pump_head_m = row.pump_Pa / weight_Pa_per_m_;
    row.loop_head_m = row.loop_Pa / weight_Pa_per_m_;
    return row;
  }
  double end_m3_per_s() const { return circulators_.end_m3_per_s(); }
  CurvePlace place(double flow_m3_per_s, double pressure_Pa) const {
    return {flow_m3_per_s, pressure_Pa, pressure_Pa / weight_Pa_per_m_};
  }

 private:
  HydronicGraph graph_;
  Circulators circulators_;
  ForcedSystem system_;
  BranchId hardest_;
  double weight_Pa_per_m_ = 0.0;
};

}  // namespace

std::optional<PlantCurves> plant_curves(const Plant& plant, const OperatingPoint& point, const FlowTarget& target,
                                        double duty_Pa) {
  const double runs_m3_per_s = point.flow_m3_per_s + point.source.bypass_m3_per_s;
  if (point.loop.empty() || runs_m3_per_s <= 0.0) return std::nullopt;
  Curves curves(plant, point);
  PlantCurves all;
  all.hardest_loop = point.hardest_loop;
  all.loop = plant.loops.loop[point.hardest_loop].name;
  all.duty = curves.place(target.total_m3_per_s, duty_Pa);
  const double end_m3_per_s = curves.end_m3_per_s();
  const auto at_end = curves.at(end_m3_per_s);
  if (!at_end) return std::nullopt;
  all.pump_end = curves.place(end_m3_per_s, at_end->pump_Pa);
  const double steps = std::min(furthest, end_m3_per_s / runs_m3_per_s) * rows_to_point;
  for (int i = 0; i <= std::max(rows_to_point, static_cast<int>(steps)); ++i) {
    auto row = curves.at(runs_m3_per_s * i / rows_to_point);
    if (!row) return std::nullopt;
    all.row.push_back(*row);
  }
  all.runs = all.row[rows_to_point];
  return all;
}

}  // namespace slabwright
