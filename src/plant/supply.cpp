// Which supply temperature, and which flows.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "plant/judge_source.hpp"
#include "plant/piping.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/plant.hpp"

namespace slabwright {
namespace {

// Tube and concrete: above 49 C (120 F) a floor supply warns, above 60 C (140 F) it is refused (practice in North
// America; EN 1264-4 stops at 55 C round the tube, from memory).
constexpr double warm_supply_degC = 49.0, hottest_supply_degC = 60.0;
// Beyond any floor: the end of the search.
constexpr double search_to_degC = 95.0;

/// How much of what it wants the neediest room lacks, as a share; negative when all are served.
double lacking_share(const OperatingPoint& point, const std::vector<double>& wanted_W) {
  double worst = -1.0;
  for (std::size_t i = 0; i < wanted_W.size(); ++i) {
    if (wanted_W[i] > 0.0) worst = std::max(worst, 1.0 - point.room_up_W[i] / wanted_W[i]);
  }
  return worst;
}

Diagnostic about_supply(Severity severity, std::string code, std::string sentence, double supply_degC, double limit) {
  return {severity,
          std::move(code),
          "tube",
          std::move(sentence),
          {Measured{supply_degC, Dimension::degree}, Measured{limit, Dimension::degree}}};
}

void judge_supply(const Plant& plant, const OperatingPoint& point, std::vector<Diagnostic>& said) {
  const Boiler& boiler = plant.design.boiler;
  const double supply_degC = point.supply_degC;
  if (supply_degC > hottest_supply_degC) {
    said.push_back(about_supply(Severity::failure, "plant.supply-too-hot",
                                "the floor would need water of {}; more than {} must not go into a floor. Closer "
                                "tube, less loss, or a second source for the rest.",
                                supply_degC, hottest_supply_degC));
  } else if (supply_degC > warm_supply_degC) {
    said.push_back(about_supply(Severity::warning, "plant.supply-warm",
                                "the floor needs water of {}; above {} ask whoever made the floor and the tube.",
                                supply_degC, warm_supply_degC));
  }
  if (boiler.kind == BoilerKind::none) return;
  if (boiler.hottest_degC < supply_degC) {
    said.push_back(about_supply(Severity::failure, "plant.boiler-too-cool",
                                "the floor needs water of {} and the boiler stops at {}.", supply_degC,
                                boiler.hottest_degC));
  }
  if (boiler.hottest_degC > warm_supply_degC && !has_setting(plant.source)) {
    said.push_back({Severity::warning,
                    "plant.no-mixing",
                    "boiler.piping",
                    "the boiler can run to {}, too hot for a floor: fit a mixing valve, or a high limit at {}.",
                    {Measured{boiler.hottest_degC, Dimension::degree}, Measured{warm_supply_degC, Dimension::degree}}});
  }
}

Diagnostic no_heat_wanted() {
  return {Severity::note,
          "plant.no-heat-wanted",
          "gains",
          "what machines, lamps and people give is more than the rooms lose: at the coldest their floors are asked for "
          "nothing",
          {}};
}

/// Heat of each loop at design: its patch times what its room's floor gives up and down.
std::vector<double> design_heat_W(const LoopPlan& loops, const FloorPlan& plan) {
  std::vector<double> heat;
  for (const Loop& loop : loops.loop) {
    double sum = 0.0;
    for (const Stretch& s : loop.along) {
      const FloorState& floor = plan.room[s.room].floor;
      const double patch_m2 = heating_m(s) * heated_m2_per_m(loops, s.room);
      sum += patch_m2 * std::max(0.0, floor.up_W_per_m2 + floor.down_W_per_m2);
    }
    heat.push_back(sum);
  }
  return heat;
}

double warmest_mean_degC(const FloorPlan& floor) {
  double warmest = -273.0;
  for (const RoomFloor& room : floor.room) {
    if (room.heated_m2 > 0.0) warmest = std::max(warmest, room.water_degC);
  }
  return warmest;
}

void scale_to(std::vector<double>& flows, double total) {
  double sum = 0.0;
  for (const double f : flows) sum += f;
  for (double& f : flows) f *= sum > 0.0 ? total / sum : 0.0;
}

/// Lengths alone: in proportion to length, the total from the file or from the open loops on the pump.
FlowTarget by_length(const Plant& plant) {
  // Warm floor water; without heat asked for no temperature is known, and 40 C is what meters are read at.
  FlowTarget target{{}, 0.0, 40.0, 40.0, !plant.design.pump.flow_m3_per_s};
  for (const Loop& loop : plant.loops.loop) target.loop_m3_per_s.push_back(loop.length_m);
  // Flows that do not settle are said by whoever balances this very network.
  const NetworkSolution open = flows_at(plant, target.water_degC);
  target.total_m3_per_s = plant.design.pump.flow_m3_per_s.value_or(std::abs(floor_flow_m3_per_s(plant, open)));
  scale_to(target.loop_m3_per_s, target.total_m3_per_s);
  return target;
}

}  // namespace

std::optional<FlowTarget> target_by_heat(const Design& design, const LoopPlan& loops, const FloorPlan& floor) {
  FlowTarget target;
  target.loop_m3_per_s = design_heat_W(loops, floor);
  const double heat_W = std::accumulate(target.loop_m3_per_s.begin(), target.loop_m3_per_s.end(), 0.0);
  if (heat_W <= 0.0) return std::nullopt;
  // A loop that is all leader, or nearly, still takes some water: a part of what its length would get.
  constexpr double least_share = 0.1;
  double tube_m = 0.0;
  for (const Loop& loop : loops.loop) tube_m += loop.length_m;
  for (std::size_t i = 0; i < loops.loop.size(); ++i) {
    double& heat = target.loop_m3_per_s[i];
    heat = std::max(heat, least_share * heat_W / tube_m * loops.loop[i].length_m);
  }
  const double drop_K = design.pump.drop_K;
  target.water_degC = warmest_mean_degC(floor);
  target.supply_degC = target.water_degC + 0.5 * drop_K;
  const FluidProperties fluid = properties_of(mixture_of(design.fluid), target.water_degC);
  const double by_heat = heat_W / (fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK * drop_K);
  target.total_m3_per_s = design.pump.flow_m3_per_s.value_or(by_heat);
  scale_to(target.loop_m3_per_s, target.total_m3_per_s);
  return target;
}

FlowTarget target_flows(const Plant& plant, const Envelope* envelope) {
  if (!plant.floor || !envelope) return by_length(plant);
  const auto target = target_by_heat(plant.design, plant.loops, *plant.floor);
  return target ? *target : by_length(plant);
}

Checked<OperatingPoint> supply_for(const Plant& plant, const Conditions& conditions,
                                   const std::vector<double>& room_wanted_W) {
  if (!plant.floor) return {};
  std::optional<OperatingPoint> last;
  const auto lack = [&](double supply_degC) {
    last = operate(plant, conditions, supply_degC, last ? &*last : nullptr);
    return lacking_share(*last, room_wanted_W);
  };
  const double coldest = *std::min_element(conditions.room_degC.begin(), conditions.room_degC.end());
  RootOptions options;
  options.x_tolerance = 1e-4;      // of a kelvin
  options.value_tolerance = 1e-6;  // of a room's heat
  const Root root = root_in_bracket(lack, coldest, search_to_degC, options);
  // Rooms that ask their floors for nothing are served by the coolest water there is, not by the hottest.
  const bool nothing_wanted = root.stop == Stop::no_solution && root.value < 0.0;
  OperatingPoint point = operate(plant, conditions, nothing_wanted ? coldest : root.x, last ? &*last : nullptr);
  std::vector<Diagnostic> said;
  if (nothing_wanted) said.push_back(no_heat_wanted());
  if (point.stop != Stop::converged) {
    said.push_back({Severity::warning,
                    "plant.not-settled",
                    "tube",
                    "flow and temperature of {} did not settle together; take its figures as rough.",
                    {point.worst}});
  }
  judge_supply(plant, point, said);
  judge_source(plant, point, said);
  return {std::move(point), std::move(said)};
}

}  // namespace slabwright
