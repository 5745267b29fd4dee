// A cold start: thick water, little flow, and how long until both are as planned.
#include <algorithm>
#include <cmath>

#include "plant/piping.hpp"
#include "plant/sizes.hpp"
#include "slabwright/conduction_edge.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double near_planned = 0.95;
/// Stands for a surface held at the slab's own temperature: the water then warms slab, not room.
constexpr double held_face_W_per_m2K = 1e4;

/// Heat of water and slab, and what passes from one to the other.
struct TwoMasses {
  double water_J_per_K = 0.0, slab_J_per_K = 0.0, between_W_per_K = 0.0;

  /// How much warmer the water is after so long at full power: all rises together, and the water runs ahead by what
  /// drives the heat into the slab.
  double water_rise_K(double power_W, double after_s) const {
    const double both = water_J_per_K + slab_J_per_K, slab_share = slab_J_per_K / both;
    const double ahead_K = power_W * slab_share / between_W_per_K;
    const double rate_per_s = between_W_per_K * (1.0 / water_J_per_K + 1.0 / slab_J_per_K);
    return power_W * after_s / both + slab_share * ahead_K * (1.0 - std::exp(-rate_per_s * after_s));
  }
};

/// Of the loop whose water moves least well.
double film_mK_per_W(const Plant& plant, const OperatingPoint& point) {
  double least_W_per_m2K = HUGE_VAL;
  for (const LoopState& loop : point.loop) least_W_per_m2K = std::min(least_W_per_m2K, loop.film_W_per_m2K);
  const double bore_m = tube_of(plant.design).inside_diameter_m;
  return least_W_per_m2K > 0.0 ? 1.0 / (least_W_per_m2K * pi * bore_m) : 0.0;
}

TwoMasses masses_of(const Plant& plant, const OperatingPoint& point) {
  const FluidProperties fluid = properties_of(mixture_of(plant.design.fluid), point.supply_degC);
  return {plant_content_m3(plant) * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK,
          plant.loops.tube_m * plant.floor->section.spacing_m * plant.design.slab.thickness_m * concrete_J_per_m3K,
          water_to_slab_W_per_K(plant, point)};
}

/// What moves when all the water is that warm. What mixes has opened wide to a boiler that is still cold.
class StartFlows {
 public:
  explicit StartFlows(Plant plant) : plant_(std::move(plant)) {
    if (has_setting(plant_.source)) plant_.graph = with_setting(std::move(plant_.graph), plant_.source, 1.0);
  }
  NetworkSolution all(double water_degC) const { return flows_at(plant_, water_degC); }
  double floor_m3_per_s(double water_degC) const { return floor_flow_m3_per_s(plant_, all(water_degC)); }
  double boiler_m3_per_s(double water_degC) const { return all(water_degC).flow_m3_per_s[plant_.source.boiler.at]; }

 private:
  Plant plant_;
};

/// From which temperature on a flow is over zero and stays there: where loops turn turbulent, flow falls for a few
/// kelvin while the water warms, so it is looked for from the warm end. Absent where `most_degC` is not enough.
template <class Over>
std::optional<double> over_from_degC(const Over& over, double least_degC, double most_degC) {
  constexpr double step_K = 2.0;
  if (over(most_degC) < 0.0) return std::nullopt;
  for (double warm_degC = most_degC; warm_degC > least_degC; warm_degC -= step_K) {
    const double cold_degC = std::max(least_degC, warm_degC - step_K);
    if (over(cold_degC) < 0.0) return root_in_bracket(over, cold_degC, warm_degC, {0.01}).x;
  }
  return least_degC;
}

std::optional<double> until_flow_s(const Plant& plant, const StartFlows& flows, const OperatingPoint& point,
                                   double power_W) {
  const double start_degC = plant.design.fluid.start_degC, mean_degC = 0.5 * (point.supply_degC + point.return_degC);
  if (mean_degC <= start_degC) return 0.0;
  const double wanted_m3_per_s = near_planned * flows.floor_m3_per_s(mean_degC);
  const auto over_wanted = [&](double degC) { return flows.floor_m3_per_s(degC) - wanted_m3_per_s; };
  const auto need_degC = over_from_degC(over_wanted, start_degC, mean_degC);
  if (!need_degC) return std::nullopt;
  if (*need_degC <= start_degC) return 0.0;
  if (!plant.floor || power_W <= 0.0) return std::nullopt;
  const TwoMasses masses = masses_of(plant, point);
  const double rise_K = *need_degC - start_degC;
  const auto over = [&](double s) { return masses.water_rise_K(power_W, s) - rise_K; };
  const double most_s = rise_K * (masses.water_J_per_K + masses.slab_J_per_K) / power_W;
  return root_in_bracket(over, 0.0, most_s, {1.0}).x;
}

/// First crystals of a mixture; 0 degC for water.
double freezes_degC(const Mixture& mixture) {
  return mixture.glycol_volume_share > 0.0 ? freezing_point_degC(mixture) : 0.0;
}

Diagnostic frozen_said(const Mixture& mixture, double start_degC) {
  if (mixture.glycol_volume_share <= 0.0) {
    return {Severity::failure,
            "plant.start-frozen",
            "fluid.start",
            "water filled into a slab of {} freezes in the tubes before it is warm: fill with glycol, or warm the shop "
            "until the whole slab is over {}.",
            {Measured{start_degC, Dimension::degree}, Measured{0.0, Dimension::degree}}};
  }
  return {Severity::failure,
          "plant.start-frozen",
          "fluid.start",
          "at {} this mixture is slush and does not move: it freezes from {} on. More glycol, or warm the slab first.",
          {Measured{start_degC, Dimension::degree}, Measured{freezing_point_degC(mixture), Dimension::degree}}};
}

Diagnostic unsettled_said(double start_degC, const std::string& worst) {
  return {Severity::warning,
          "plant.start-not-settled",
          "fluid.start",
          "cold, at {}, the flows do not settle, and at {} least of all: take the first start as rough.",
          {Measured{start_degC, Dimension::degree}, worst}};
}

/// What its maker asks for it must get, or it does not fire; what we put in its place only warms its water by more.
Diagnostic short_flow_said(const Plant& plant, const StartUp& start, const BoilerSize& boiler) {
  const bool makers = plant.design.boiler.least_flow_m3_per_s.has_value();
  Diagnostic said{
      makers ? Severity::failure : Severity::warning,
      "plant.start-flow",
      "boiler.least_flow",
      makers
          ? "cold, at {}, only {} goes through the boiler and it wants {}: it does not fire. A bypass or a separator "
            "at the boiler mends it, or a stronger pump"
          : "cold, at {}, only {} goes through the boiler, and at full power it should have {} (ask its maker). "
            "Fewer stages at first, a bypass or a separator mends it",
      {Measured{start.water_degC, Dimension::degree}, Measured{start.boiler_m3_per_s, Dimension::flow},
       Measured{boiler.least_flow_m3_per_s, Dimension::flow}}};
  if (start.fires_from_degC) {
    said.sentence += ", or a slab warmed to {} before the first start";
    said.parts.push_back(Measured{*start.fires_from_degC, Dimension::degree});
  }
  said.sentence += ".";
  return said;
}

/// Share of loops whose water moves laminar.
double laminar_share(const Plant& plant, const NetworkSolution& flows, const Liquid& water) {
  const double bore_m = tube_of(plant.design).inside_diameter_m;
  const auto laminar = std::count_if(plant.loop_branch.begin(), plant.loop_branch.end(), [&](BranchId loop) {
    return reynolds_number(bore_m, water, flows.flow_m3_per_s[loop.at]) < laminar_up_to_reynolds;
  });
  return static_cast<double>(laminar) / static_cast<double>(plant.loop_branch.size());
}

}  // namespace

double water_to_slab_W_per_K(const Plant& plant, const OperatingPoint& point) {
  if (!plant.floor) return 0.0;
  const Section& section = plant.floor->section;
  const double wall_mK_per_W = section.wall_mK_per_W + film_mK_per_W(plant, point);
  return plant.loops.tube_m * respond(section, held_face_W_per_m2K, wall_mK_per_W).room_W_per_m_K;
}

Checked<StartUp> start_up(const Plant& plant, const OperatingPoint& point, const BoilerSize& boiler) {
  expects(!point.loop.empty(), "a plant without loops does not start");
  const Mixture mixture = mixture_of(plant.design.fluid);
  StartUp start;
  start.water_degC = plant.design.fluid.start_degC;
  start.frozen = start.water_degC <= freezes_degC(mixture);
  start.flow_enough = !start.frozen;
  if (start.frozen) return {start, {frozen_said(mixture, start.water_degC)}};
  const StartFlows flows(plant);
  const NetworkSolution cold = flows.all(start.water_degC);
  start.flow_m3_per_s = floor_flow_m3_per_s(plant, cold);
  start.boiler_m3_per_s = cold.flow_m3_per_s[plant.source.boiler.at];
  start.flow_share = point.flow_m3_per_s > 0.0 ? start.flow_m3_per_s / point.flow_m3_per_s : 0.0;
  start.laminar_share = laminar_share(plant, cold, liquid(mixture, start.water_degC));
  start.until_flow_s = until_flow_s(plant, flows, point, boiler.power_W);
  // A tank heater asks for no flow.
  start.flow_enough = boiler.kind != BoilerKind::electric_boiler || start.boiler_m3_per_s >= boiler.least_flow_m3_per_s;
  const auto fires = [&](double degC) { return flows.boiler_m3_per_s(degC) - boiler.least_flow_m3_per_s; };
  start.fires_from_degC = start.flow_enough
                              ? start.water_degC
                              : over_from_degC(fires, start.water_degC, std::max(start.water_degC, point.supply_degC));
  std::vector<Diagnostic> said;
  if (cold.stop != Stop::converged) said.push_back(unsettled_said(start.water_degC, cold.worst_name));
  if (!start.flow_enough && boiler.flow_enough) said.push_back(short_flow_said(plant, start, boiler));
  return {start, std::move(said)};
}

}  // namespace slabwright
