// The one coupled operating point: viscosity moves flow, flow moves film and temperature, temperature moves viscosity.
#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "plant/filled.hpp"
#include "plant/source_state.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/plant.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// A share of the stem's way that moves the supply by about a kelvin.
constexpr double setting_scale = 0.03;

/// What the water of one loop meets on its way. Heat and floor by room.
struct Way {
  double end_degC = 0.0;
  std::vector<double> up_W, down_W;
  std::vector<double> floor_degC_m;  ///< mean surface times metres of tube
  std::vector<double> floor_peak_degC;

  explicit Way(double supply_degC, std::size_t rooms)
      : end_degC(supply_degC),
        up_W(rooms, 0.0),
        down_W(rooms, 0.0),
        floor_degC_m(rooms, 0.0),
        floor_peak_degC(rooms, coldest_degC) {}
  static constexpr double coldest_degC = -zero_degC_K;
};

/// One loop's water through its stretches. Leaders that nobody has drawn are taken to give no heat: they lie in floor
/// that the loops heat already, and the supply temperature found is then on the careful side.
class Decline {
 public:
  Decline(const Plant& plant, const Conditions& conditions) : plant_(plant), conditions_(conditions) {}

  /// Heat and temperatures along a loop at `capacity_W_per_K` = m c and the film of its flow. The floor's own film
  /// follows the water's temperature from piece to piece: the far end of a long loop is as cold as it is in truth.
  Way along(const Loop& loop, double supply_degC, double capacity_W_per_K, double film_mK_per_W) const {
    Way way(supply_degC, conditions_.room_degC.size());
    for (const Stretch& stretch : loop.along) {
      const double heating = heating_m(stretch);
      if (heating <= 0.0) continue;
      const double pieces = std::ceil(heating / longest_piece_m);
      for (int i = 0; i < static_cast<int>(pieces); ++i)
        pass(stretch.room, heating / pieces, capacity_W_per_K, film_mK_per_W, way);
    }
    return way;
  }

 private:
  /// Water falls by 2 K at most over this; the floor's film by less than a hundredth.
  static constexpr double longest_piece_m = 15.0;

  /// Water cools exponentially towards the temperature at which the piece takes no heat.
  struct Piece {
    SectionResponse response;
    double end_degC, water_degC;  ///< the mean, so that water heat = up + down to rounding
  };
  Piece cooled(double in_degC, double film_at_degC, double room_degC, double tube_mK_per_W,
               double metres_K_per_W) const {
    const Section& section = plant_.floor->section;
    const FloorState floor = floor_from_water(section, film_at_degC, tube_mK_per_W, room_degC);
    const SectionResponse r = respond(section, floor.film_W_per_m2K, tube_mK_per_W);
    const double both = r.room_W_per_m_K + r.below_W_per_m_K;
    const double rest_degC = (r.room_W_per_m_K * room_degC + r.below_W_per_m_K * section.below_degC) / both;
    const double units = both * metres_K_per_W;
    const double end_degC = rest_degC + (in_degC - rest_degC) * std::exp(-units);
    const double water_degC = units > 1e-12 ? rest_degC + (in_degC - end_degC) / units : 0.5 * (in_degC + end_degC);
    return {r, end_degC, water_degC};
  }

  void pass(std::size_t room, double tube_m, double capacity_W_per_K, double film_mK_per_W, Way& way) const {
    const double room_degC = conditions_.room_degC[room], below_degC = plant_.floor->section.below_degC;
    const double tube_mK_per_W = plant_.floor->section.wall_mK_per_W + film_mK_per_W;
    // As much tube at the section's spacing as makes the floor there is.
    const double length_m = tube_m * heated_m2_per_m(plant_.loops, room) / plant_.floor->section.spacing_m;
    const double in_degC = way.end_degC;
    // The floor's film at the water coming in, then at the mean that this gives: a third time would move nothing.
    Piece piece = cooled(in_degC, in_degC, room_degC, tube_mK_per_W, length_m / capacity_W_per_K);
    piece = cooled(in_degC, piece.water_degC, room_degC, tube_mK_per_W, length_m / capacity_W_per_K);
    const SectionResponse& r = piece.response;
    way.end_degC = piece.end_degC;
    const double through_W = r.through_W_per_m_K * (below_degC - room_degC) * length_m;
    way.up_W[room] += r.room_W_per_m_K * (piece.water_degC - room_degC) * length_m + through_W;
    way.down_W[room] += r.below_W_per_m_K * (piece.water_degC - below_degC) * length_m - through_W;
    way.floor_degC_m[room] += temperature_degC(r.floor_mean, piece.water_degC, room_degC, below_degC) * tube_m;
    way.floor_peak_degC[room] =
        std::max(way.floor_peak_degC[room], temperature_degC(r.floor_over_tube, in_degC, room_degC, below_degC));
  }

  const Plant& plant_;
  const Conditions& conditions_;
};

/// All that follows from a set of return temperatures and, behind them, a setting where the source has one.
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

  std::vector<double> next(const std::vector<double>& unknown) {
    solve(unknown);
    std::vector<double> found(unknown.size());
    for (std::size_t i = 0; i < loops(); ++i) found[i] = loop_at(i, unknown[i]).return_degC;
    if (found.size() > loops()) {
      const std::vector<double> returns(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(loops()));
      found.back() = next_setting(plant_, SourceFlows{graph_, network_, returns, supply_degC_}, unknown.back());
    }
    return found;
  }

  OperatingPoint point(const std::vector<double>& unknown) {
    solve(unknown);
    OperatingPoint point;
    point.supply_degC = supply_degC_;
    point.room_up_W.assign(plant_.design.room.size(), 0.0);
    point.room_floor_degC.assign(plant_.design.room.size(), 0.0);
    point.room_floor_peak_degC.assign(plant_.design.room.size(), 0.0);
    std::vector<double> returns;
    for (std::size_t i = 0; i < loops(); ++i) {
      add(point, i, unknown[i]);
      returns.push_back(point.loop.back().return_degC);
    }
    finish(point);
    point.source = source_state(plant_, SourceFlows{graph_, network_, returns, supply_degC_});
    if (unknown.size() > loops()) point.source.setting_share = settled(plant_, unknown.back());
    return point;
  }

  /// The flows found last.
  const NetworkSolution& network() const { return network_; }

 private:
  std::size_t loops() const { return plant_.loop_branch.size(); }

  void solve(const std::vector<double>& unknown) {
    const auto end = unknown.begin() + static_cast<std::ptrdiff_t>(loops());
    fill(graph_, plant_, supply_degC_, std::vector<double>(unknown.begin(), end));
    if (unknown.size() > loops()) {
      graph_ = with_setting(std::move(graph_), plant_.source, settled(plant_, unknown.back()));
    }
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
    way_ = Way(supply_degC_, plant_.design.room.size());
    if (!plant_.floor || capacity <= 0.0) return state;
    way_ = decline_.along(plant_.loops.loop[i], supply_degC_, capacity,
                          film_resistance_mK_per_W(film, tube_.inside_diameter_m));
    state.return_degC = way_.end_degC;
    state.up_W = std::accumulate(way_.up_W.begin(), way_.up_W.end(), 0.0);
    state.down_W = std::accumulate(way_.down_W.begin(), way_.down_W.end(), 0.0);
    return state;
  }

  void add(OperatingPoint& point, std::size_t i, double return_degC) {
    LoopState state = loop_at(i, return_degC);
    const BranchId branch = plant_.loop_branch[i];
    state.part = losses_by_part(graph_, branch, state.flow_m3_per_s);
    state.loss_Pa = branch_loss(graph_, branch, state.flow_m3_per_s).pressure_Pa;
    point.flow_m3_per_s += state.flow_m3_per_s;
    point.up_W += state.up_W;
    point.down_W += state.down_W;
    for (std::size_t room = 0; room < point.room_up_W.size(); ++room) {
      point.room_up_W[room] += way_.up_W[room];
      const double tube_m = plant_.loops.room_tube_m[room];
      if (tube_m > 0.0) point.room_floor_degC[room] += way_.floor_degC_m[room] / tube_m;
      point.room_floor_peak_degC[room] = std::max(point.room_floor_peak_degC[room], way_.floor_peak_degC[room]);
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
    for (const BranchId branch : plant_.source.way) take(branch);
    take(plant_.loop_branch[point.hardest_loop]);
    for (const BranchId branch : plant_.way[point.hardest_loop]) take(branch);
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
  Way way_{0.0, 0};
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
  std::vector<double> scale(start.size(), 1.0);
  if (has_setting(plant.source)) {
    start.push_back(warm && warm->source.setting_share ? *warm->source.setting_share : plant.setting_share);
    scale.push_back(setting_scale);
  }
  // A hundredth of a millikelvin is far below what any figure is printed to.
  FixedPointOptions options;
  options.tolerance = 1e-5;
  const FixedPoint fixed = fixed_point(
      std::move(start), scale, [&](const std::vector<double>& x) { return coupling.next(x); }, options);
  OperatingPoint point = coupling.point(fixed.x);
  point.stop = fixed.stop;
  point.rounds = fixed.rounds;
  if (fixed.worst_unknown >= plant.loops.loop.size())
    point.worst = "what mixes boiler water in";
  else
    point.worst = plant.loops.loop[fixed.worst_unknown].name;
  // Temperatures may agree with flows that are themselves not settled.
  if (coupling.network().stop != Stop::converged) {
    point.stop = coupling.network().stop;
    point.worst = coupling.network().worst_name;
  }
  return point;
}

}  // namespace slabwright
