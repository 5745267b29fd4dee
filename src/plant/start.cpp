// A cold start: thick water, little flow, and how long until both are as planned.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "slabwright/conduction_edge.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/plant_sizes.hpp"

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
  return least_W_per_m2K > 0.0 ? 1.0 / (least_W_per_m2K * std::numbers::pi * bore_m) : 0.0;
}

TwoMasses masses_of(const Plant& plant, const OperatingPoint& point) {
  const FluidProperties fluid = properties_of(mixture_of(plant.design.fluid), point.supply_degC);
  const Section& section = plant.floor->section;
  const SectionResponse r = respond(section, held_face_W_per_m2K, section.wall_mK_per_W + film_mK_per_W(plant, point));
  const double tube_m = plant.loops.tube_m;
  return {plant_content_m3(plant) * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK,
          tube_m * section.spacing_m * plant.design.slab.thickness_m * concrete_J_per_m3K, tube_m * r.room_W_per_m_K};
}

double flow_at(const Plant& plant, double water_degC) {
  return flows_at(plant, water_degC).flow_m3_per_s[plant.source_branch.at];
}

/// The water temperature at which the plant moves so much; absent where it is not reached before `most_degC`.
std::optional<double> degC_for(const Plant& plant, double flow_m3_per_s, double least_degC, double most_degC) {
  const auto over = [&](double degC) { return flow_at(plant, degC) - flow_m3_per_s; };
  if (over(least_degC) >= 0.0) return least_degC;
  if (over(most_degC) < 0.0) return std::nullopt;
  return root_in_bracket(over, least_degC, most_degC, {0.01}).x;
}

std::optional<double> until_flow_s(const Plant& plant, const OperatingPoint& point, double power_W) {
  const double start_degC = plant.design.pressure.start_degC, mean_degC = 0.5 * (point.supply_degC + point.return_degC);
  if (mean_degC <= start_degC) return 0.0;
  const auto need_degC = degC_for(plant, near_planned * flow_at(plant, mean_degC), start_degC, mean_degC);
  if (!need_degC) return std::nullopt;
  if (*need_degC <= start_degC) return 0.0;
  if (!plant.floor || power_W <= 0.0) return std::nullopt;
  const TwoMasses masses = masses_of(plant, point);
  const double rise_K = *need_degC - start_degC;
  const auto over = [&](double s) { return masses.water_rise_K(power_W, s) - rise_K; };
  const double most_s = rise_K * (masses.water_J_per_K + masses.slab_J_per_K) / power_W;
  return root_in_bracket(over, 0.0, most_s, {1.0}).x;
}

}  // namespace

Checked<StartUp> start_up(const Plant& plant, const OperatingPoint& point, const BoilerSize& boiler) {
  expects(!point.loop.empty(), "a plant without loops does not start");
  StartUp start;
  start.water_degC = plant.design.pressure.start_degC;
  const NetworkSolution cold = flows_at(plant, start.water_degC);
  start.flow_m3_per_s = cold.flow_m3_per_s[plant.source_branch.at];
  start.flow_share = point.flow_m3_per_s > 0.0 ? start.flow_m3_per_s / point.flow_m3_per_s : 0.0;
  const Liquid water = liquid(mixture_of(plant.design.fluid), start.water_degC);
  const double bore_m = tube_of(plant.design).inside_diameter_m;
  const auto laminar = std::count_if(plant.loop_branch.begin(), plant.loop_branch.end(), [&](BranchId loop) {
    return reynolds_number(bore_m, water, cold.flow_m3_per_s[loop.at]) < laminar_up_to_reynolds;
  });
  start.laminar_share = static_cast<double>(laminar) / static_cast<double>(plant.loop_branch.size());
  // A mixing valve opens wide to a boiler that is still cold.
  start.flow_enough = start.flow_m3_per_s >= boiler.least_flow_m3_per_s;
  start.until_flow_s = until_flow_s(plant, point, boiler.power_W);
  std::vector<Diagnostic> said;
  if (!start.flow_enough && boiler.flow_enough && boiler.kind == BoilerKind::electric_boiler) {
    said.push_back({Severity::failure,
                    "plant.start-flow",
                    "boiler.least_flow",
                    "with slab and water at {} only {} moves, and the boiler wants {}: it will not fire. Give it a "
                    "bypass or a separator, or a stronger pump.",
                    {Measured{start.water_degC, Dimension::degree}, Measured{start.flow_m3_per_s, Dimension::flow},
                     Measured{boiler.least_flow_m3_per_s, Dimension::flow}}});
  }
  return {start, std::move(said)};
}

}  // namespace slabwright
