// Temperatures in the source: who mixes with whom, what the boiler must make.
#include "plant/source_state.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright {
namespace {

constexpr double least_speed_share = 0.02;
// Shares nearer to none or all than this cannot be told apart by any valve.
constexpr double least_share = 1e-4;
// A floor that the boiler's water reaches less than this is not heated by it.
constexpr double least_reach = 1e-6;
// Of the largest flow: less than this mixes with nothing.
constexpr double left_out_share = 1e-10;
constexpr double rounding_m3_per_s = 1e-15;

CarriedTemperatures carried(const Plant& plant, const SourceFlows& at, double boiler_degC) {
  std::vector<Outlet> outlets(plant.graph.branch_count());
  for (std::size_t i = 0; i < plant.loop_branch.size(); ++i) {
    outlets[plant.loop_branch[i].at] = leaves_at(at.return_degC[i]);
  }
  outlets[plant.source.boiler.at] = leaves_at(boiler_degC);
  TemperatureOptions options;
  options.still_degC = at.supply_degC;
  double most = 0.0;
  for (const double flow : at.network.flow_m3_per_s) most = std::max(most, std::abs(flow));
  // Where nothing goes round, all of it is the solver's noise; else the heat of what is left out must not be missed.
  if (most > options.least_flow_m3_per_s)
    options.least_flow_m3_per_s = std::max(rounding_m3_per_s, left_out_share * most);
  return carried_temperatures(at.graph, at.network.flow_m3_per_s, outlets, options);
}

/// Mixing is a straight line: what leaves for the floor is some of the boiler's temperature and some of the returns'.
struct Reach {
  double returns_degC = 0.0;  ///< the rest
  double boiler_share = 0.0;
};
Reach reach_of(const Plant& plant, const SourceFlows& at) {
  const auto out_at = [&](double boiler_degC) {
    return carried(plant, at, boiler_degC).node_degC[plant.source.out.at];
  };
  const double cold = out_at(0.0);
  return {cold, (out_at(100.0) - cold) / 100.0};
}

double flow(const SourceFlows& at, BranchId branch) { return at.network.flow_m3_per_s[branch.at]; }

bool among(const std::vector<BranchId>& branches, BranchId branch) {
  return std::find(branches.begin(), branches.end(), branch) != branches.end();
}

std::vector<PumpState> pumps(const Plant& plant, const SourceFlows& at) {
  std::vector<PumpState> all;
  const auto add = [&](BranchId branch) {
    PumpState pump;
    pump.name = at.graph.name(branch);
    pump.flow_m3_per_s = flow(at, branch);
    for (const PartLoss& loss : losses_by_part(at.graph, branch, pump.flow_m3_per_s)) {
      if (loss.part == Part::pump) pump.pressure_Pa = -loss.pressure_Pa;
    }
    pump.stands = among(at.network.checked, branch);
    pump.outside = among(at.network.outside_curve, branch);
    all.push_back(std::move(pump));
  };
  for (const BranchId branch : plant.source.pump) add(branch);
  const auto drives = [&](BranchId branch) {
    const std::vector<Element>& elements = at.graph.elements(branch);
    return std::any_of(elements.begin(), elements.end(),
                       [](const Element& e) { return std::holds_alternative<Pump>(e.shape); });
  };
  for (const BranchId branch : plant.source.branch) {
    if (drives(branch) && !among(plant.source.pump, branch)) add(branch);
  }
  return all;
}

}  // namespace

SourceState source_state(const Plant& plant, const SourceFlows& at) {
  const SourcePiping& source = plant.source;
  SourceState state;
  state.boiler_m3_per_s = flow(at, source.boiler);
  if (source.mix) state.mixed_in_m3_per_s = std::max(flow(at, *source.mix), 0.0);
  if (source.mix) state.straight_back_m3_per_s = std::max(-flow(at, *source.mix), 0.0);
  if (source.bypass) state.bypass_m3_per_s = flow(at, *source.bypass);
  state.boiler_degC = at.supply_degC;
  if (has_setting(source)) {
    state.boiler_degC = plant.design.boiler.hottest_degC;
  } else if (source.mix) {
    const Reach reach = reach_of(plant, at);
    state.reached = reach.boiler_share > least_reach;
    if (state.reached) state.boiler_degC = (at.supply_degC - reach.returns_degC) / reach.boiler_share;
  }
  const CarriedTemperatures carries = carried(plant, at, state.boiler_degC);
  state.boiler_in_degC = carries.node_degC[at.graph.from(source.boiler).at];
  if (has_setting(source)) {
    const double out_degC = carries.node_degC[source.out.at], back_degC = carries.node_degC[source.back.at];
    state.hot_share = state.boiler_degC > back_degC ? (out_degC - back_degC) / (state.boiler_degC - back_degC) : 1.0;
    constexpr double near_enough_K = 0.01;
    state.reached = out_degC > at.supply_degC - near_enough_K;
  }
  state.pump = pumps(plant, at);
  return state;
}

double settled(const Plant& plant, double setting_share) {
  return std::clamp(setting_share, plant.source.injection ? least_speed_share : 0.0, 1.0);
}

double next_setting(const Plant& plant, const SourceFlows& at, double setting_share) {
  const CarriedTemperatures carries = carried(plant, at, plant.design.boiler.hottest_degC);
  const double back_degC = carries.node_degC[plant.source.back.at];
  const double over_K = plant.design.boiler.hottest_degC - back_degC;
  if (over_K <= 0.0) return 1.0;
  const auto share = [&](double degC) {
    return std::clamp((degC - back_degC) / over_K, least_share, 1.0 - least_share);
  };
  const double is = share(carries.node_degC[plant.source.out.at]), wanted = share(at.supply_degC);
  const double now = std::clamp(settled(plant, setting_share), least_share, 1.0 - least_share);
  if (plant.source.injection) return settled(plant, now * wanted / is);
  // Hot to return water goes with the stem's way to what is left of it.
  const double hot = now * wanted * (1.0 - is), cool = (1.0 - now) * is * (1.0 - wanted);
  return hot / (hot + cool);
}

}  // namespace slabwright
