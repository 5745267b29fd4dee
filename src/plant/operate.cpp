// The one coupled operating point: viscosity moves flow, flow moves film and temperature, temperature moves viscosity.
#include <algorithm>
#include <cmath>
#include <map>

#include "slabwright/contract.hpp"
#include "slabwright/plant.hpp"

namespace slabwright {
namespace {

/// Water that is warmed through a run: exponential decline towards the temperature at which the run takes no heat.
struct Run {
  double end_degC = 0.0;
  double up_W = 0.0;
  double down_W = 0.0;
  double floor_mean_degC = 0.0;
  double floor_peak_degC = 0.0;
};

/// One loop's water through its stretches. Leaders are taken to give no heat: they lie in floor that the loops heat
/// already, and the supply temperature found is then on the careful side.
class Decline {
 public:
  Decline(const Plant& plant, const Conditions& conditions)
      : plant_(plant), conditions_(conditions), tube_(tube_of(plant.design)), room_share_(room_shares(plant)) {}

  /// Heat and temperatures along a loop at `capacity_W_per_K` = m c and the film of its flow.
  Run along(const Loop& loop, double supply_degC, double return_degC, double capacity_W_per_K, double film_mK_per_W) {
    Run run{supply_degC, 0.0, 0.0, 0.0, 0.0};
    const double mean_degC = 0.5 * (supply_degC + return_degC);
    for (const Stretch& stretch : loop.along) {
      if (stretch.leader || stretch.length_m <= 0.0) continue;
      pass(stretch, mean_degC, capacity_W_per_K, film_mK_per_W, run);
    }
    return run;
  }

 private:
  /// Floor there is, over floor the tube could heat at its spacing: tube beyond the floor's need adds no floor.
  static std::vector<double> room_shares(const Plant& plant) {
    std::vector<double> shares;
    for (std::size_t i = 0; i < plant.design.room.size(); ++i) {
      const double could_m2 = plant.loops.room_tube_m[i] * plant.design.tube.spacing_m;
      const double is_m2 = floor_shape(plant.design.room[i]).area_m2;
      shares.push_back(could_m2 > is_m2 && could_m2 > 0.0 ? is_m2 / could_m2 : 1.0);
    }
    return shares;
  }

  void pass(const Stretch& stretch, double mean_degC, double capacity_W_per_K, double film_mK_per_W, Run& run) {
    const Section& section = plant_.floor->section;
    const double room_degC = conditions_.room_degC[stretch.room];
    const double tube_mK_per_W = section.wall_mK_per_W + film_mK_per_W;
    const FloorState floor = floor_from_water(section, mean_degC, tube_mK_per_W, room_degC);
    const SectionResponse r = in_series(respond(section, floor.film_W_per_m2K), tube_mK_per_W);
    const double length_m = stretch.length_m * room_share_[stretch.room];
    const double both = r.room_W_per_m_K + r.below_W_per_m_K;
    const double rest_degC = (r.room_W_per_m_K * room_degC + r.below_W_per_m_K * section.below_degC) / both;
    const double units = both * length_m / capacity_W_per_K;
    const double in_degC = run.end_degC;
    run.end_degC = rest_degC + (in_degC - rest_degC) * std::exp(-units);
    // Mean of the water over the run, so that water heat = up + down to rounding.
    const double water_degC =
        units > 1e-12 ? rest_degC + (in_degC - run.end_degC) / units : 0.5 * (in_degC + run.end_degC);
    const double through_W = r.through_W_per_m_K * (section.below_degC - room_degC) * length_m;
    run.up_W += r.room_W_per_m_K * (water_degC - room_degC) * length_m + through_W;
    run.down_W += r.below_W_per_m_K * (water_degC - section.below_degC) * length_m - through_W;
    run.floor_mean_degC = temperature_degC(r.floor_mean, water_degC, room_degC, section.below_degC);
    run.floor_peak_degC =
        std::max(run.floor_peak_degC, temperature_degC(r.floor_over_tube, in_degC, room_degC, section.below_degC));
  }

  const Plant& plant_;
  const Conditions& conditions_;
  TubeSize tube_;
  std::vector<double> room_share_;
};

/// The graph filled with water of these temperatures.
void fill(HydronicGraph& graph, const Plant& plant, double supply_degC, const std::vector<double>& return_degC) {
  const Mixture mixture = mixture_of(plant.design.fluid);
  double mixed_degC = 0.0;
  for (std::size_t i = 0; i < return_degC.size(); ++i) {
    graph.set_liquid(plant.loop_branch[i], liquid(mixture, 0.5 * (supply_degC + return_degC[i])));
    mixed_degC += return_degC[i] / static_cast<double>(return_degC.size());
  }
  for (const BranchId branch : plant.supply_side) graph.set_liquid(branch, liquid(mixture, supply_degC));
  for (const BranchId branch : plant.return_side) graph.set_liquid(branch, liquid(mixture, mixed_degC));
  // The pump stands in the return, where water is cooler and lasts longer.
  graph.set_liquid(plant.source_branch, liquid(mixture, mixed_degC));
}

/// All that follows from a set of return temperatures.
class Coupling {
 public:
  Coupling(const Plant& plant, const Conditions& conditions, double supply_degC)
      : plant_(plant),
        supply_degC_(supply_degC),
        graph_(plant.graph),
        solver_(graph_),
        decline_(plant, conditions),
        tube_(tube_of(plant.design)),
        mixture_(mixture_of(plant.design.fluid)) {}

  std::vector<double> next(const std::vector<double>& return_degC) {
    solve(return_degC);
    std::vector<double> found(return_degC.size());
    for (std::size_t i = 0; i < found.size(); ++i) found[i] = loop_at(i, return_degC[i]).return_degC;
    return found;
  }

  OperatingPoint point(const std::vector<double>& return_degC) {
    solve(return_degC);
    OperatingPoint point;
    point.supply_degC = supply_degC_;
    point.room_up_W.assign(plant_.design.room.size(), 0.0);
    point.room_floor_degC.assign(plant_.design.room.size(), 0.0);
    point.room_floor_peak_degC.assign(plant_.design.room.size(), 0.0);
    for (std::size_t i = 0; i < return_degC.size(); ++i) add(point, i, return_degC[i]);
    finish(point);
    return point;
  }

 private:
  void solve(const std::vector<double>& return_degC) {
    fill(graph_, plant_, supply_degC_, return_degC);
    network_ = solver_.solve(graph_, network_.flow_m3_per_s);
  }

  LoopState loop_at(std::size_t i, double return_degC) {
    const BranchId branch = plant_.loop_branch[i];
    LoopState state;
    state.flow_m3_per_s = network_.flow_m3_per_s[branch.at];
    const FluidProperties fluid = properties_of(mixture_, 0.5 * (supply_degC_ + return_degC));
    const Film film = inside_film(bore_of(tube_, plant_.loops.loop[i].length_m), fluid, state.flow_m3_per_s);
    state.film_W_per_m2K = film.coefficient_W_per_m2K;
    state.regime = film.regime;
    state.reynolds_number = film.reynolds;
    state.velocity_m_per_s = velocity_m_per_s(tube_.inside_diameter_m, state.flow_m3_per_s);
    state.return_degC = supply_degC_;
    const double capacity = state.flow_m3_per_s * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK;
    if (!plant_.floor || capacity <= 0.0) return state;
    run_ = decline_.along(plant_.loops.loop[i], supply_degC_, return_degC, capacity,
                          film_resistance_mK_per_W(film, tube_.inside_diameter_m));
    state.return_degC = run_.end_degC;
    state.up_W = run_.up_W;
    state.down_W = run_.down_W;
    return state;
  }

  void add(OperatingPoint& point, std::size_t i, double return_degC) {
    run_ = Run{};
    LoopState state = loop_at(i, return_degC);
    const BranchId branch = plant_.loop_branch[i];
    state.part = losses_by_part(graph_, branch, state.flow_m3_per_s);
    state.loss_Pa = branch_loss(graph_, branch, state.flow_m3_per_s).pressure_Pa;
    point.flow_m3_per_s += state.flow_m3_per_s;
    point.up_W += state.up_W;
    point.down_W += state.down_W;
    const Loop& loop = plant_.loops.loop[i];
    for (const Stretch& s : loop.along) {
      if (s.leader) continue;
      // A loop of one room in this form; its heat is that room's.
      point.room_up_W[s.room] += state.up_W;
      point.room_floor_degC[s.room] += run_.floor_mean_degC * s.length_m / plant_.loops.room_tube_m[s.room];
      point.room_floor_peak_degC[s.room] = std::max(point.room_floor_peak_degC[s.room], run_.floor_peak_degC);
    }
    point.loop.push_back(std::move(state));
  }

  void finish(OperatingPoint& point) {
    const auto hardest = std::max_element(point.loop.begin(), point.loop.end(),
                                          [](const LoopState& a, const LoopState& b) { return a.loss_Pa < b.loss_Pa; });
    point.hardest_loop = static_cast<std::size_t>(hardest - point.loop.begin());
    double flow = 0.0, mixed = 0.0;
    for (const LoopState& loop : point.loop) {
      flow += loop.flow_m3_per_s;
      mixed += loop.flow_m3_per_s * loop.return_degC;
    }
    point.return_degC = flow > 0.0 ? mixed / flow : supply_degC_;
    point.water_W = point.up_W + point.down_W;
    point.hardest_part = circuit(point);
    for (const PartLoss& part : point.hardest_part) point.pump_Pa += part.pressure_Pa;
  }

  /// The whole round of the hardest loop, by part, without the pump that drives it.
  std::vector<PartLoss> circuit(const OperatingPoint& point) {
    std::map<Part, double> sum;
    const auto take = [&](BranchId branch) {
      for (const PartLoss& p : losses_by_part(graph_, branch, network_.flow_m3_per_s[branch.at])) {
        if (p.part != Part::pump) sum[p.part] += p.pressure_Pa;
      }
    };
    take(plant_.source_branch);
    take(plant_.loop_branch[point.hardest_loop]);
    const std::size_t manifold = plant_.loops.loop[point.hardest_loop].manifold;
    std::size_t side = 0;
    for (std::size_t m = 0; m <= manifold; ++m) {
      for (std::size_t i = 0; i < plant_.loops.loop.size(); ++i) {
        if (plant_.loops.loop[i].manifold != m) continue;
        if (m == manifold && i <= point.hardest_loop) {
          take(plant_.supply_side[side]);
          take(plant_.return_side[side]);
        }
        ++side;
      }
    }
    std::vector<PartLoss> parts;
    for (const auto& [part, pressure] : sum) parts.push_back({part, pressure});
    return parts;
  }

  const Plant& plant_;
  double supply_degC_;
  HydronicGraph graph_;
  NetworkSolver solver_;
  Decline decline_;
  TubeSize tube_;
  Mixture mixture_;
  NetworkSolution network_;
  Run run_;
};

}  // namespace

OperatingPoint operate(const Plant& plant, const Conditions& conditions, double supply_degC,
                       const OperatingPoint* warm) {
  expects(!plant.floor || conditions.room_degC.size() == plant.design.room.size(), "a temperature for each room");
  Coupling coupling(plant, conditions, supply_degC);
  std::vector<double> start(plant.loops.loop.size(), supply_degC - (plant.floor ? plant.design.pump.drop_K : 0.0));
  if (warm && warm->loop.size() == start.size()) {
    for (std::size_t i = 0; i < start.size(); ++i)
      start[i] += warm->loop[i].return_degC - warm->supply_degC + plant.design.pump.drop_K;
  }
  // A hundredth of a millikelvin is far below what any figure is printed to.
  FixedPointOptions options;
  options.tolerance = 1e-5;
  const std::vector<double> scale(start.size(), 1.0);
  const FixedPoint fixed = fixed_point(
      std::move(start), scale, [&](const std::vector<double>& x) { return coupling.next(x); }, options);
  OperatingPoint point = coupling.point(fixed.x);
  point.stop = fixed.stop;
  point.rounds = fixed.rounds;
  if (fixed.worst_unknown < plant.loops.loop.size()) point.worst = plant.loops.loop[fixed.worst_unknown].name;
  return point;
}

}  // namespace slabwright
