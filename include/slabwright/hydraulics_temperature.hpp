// Temperatures that flows carry through a hydronic graph: who mixes with whom, and what then arrives.
#pragma once
#include <string>
#include <vector>

#include "slabwright/hydraulics_graph.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {

/// What leaves a branch as a straight line of what enters it: outlet = added + kept times inlet. A floor loop at a
/// given flow is one, for its floor is linear; what is not linear is told by its tangent. kept from 0 to 1.
struct Outlet {
  double added_degC = 0.0;
  double kept_ratio = 1.0;
};

/// A boiler that holds its outlet, whatever comes back.
Outlet leaves_at(double outlet_degC);

/// Water that cools (or warms) along its way towards its surroundings: kept = exp(-UA / capacity flow), for a flow in
/// plug form. Conductance at zero or above, capacity flow (mass flow times heat capacity) above zero.
Outlet cools_towards(double surroundings_degC, double conductance_W_per_K, double capacity_W_per_K);

/// A heater of a given power; below zero a load. Capacity flow above zero.
Outlet takes_up(double power_W, double capacity_W_per_K);

struct TemperatureOptions {
  double still_degC = 20.0;           ///< where water stands: the temperature around
  double least_flow_m3_per_s = 1e-9;  ///< below it water counts as standing; what a network solver leaves of noise
  double fed_degC = 10.0;             ///< of water that comes in from outside, where the graph is open
};

/// `stop` is `no_solution` where water goes round without meeting anything that sets its temperature (no boiler, no
/// surroundings, perhaps a heater without a load): `undetermined` names a node of that round, and its temperatures stay
/// at `still_degC`.
struct CarriedTemperatures {
  Stop stop = Stop::converged;
  std::string undetermined;
  std::vector<double> node_degC;    ///< by node: of all that flows in, mixed
  std::vector<double> outlet_degC;  ///< by branch, at its downstream end
};

/// Mixes at every node what its branches bring: T times the sum of Q = the sum of Q times T of the outlets. Flows weigh
/// by volume, as the network balances them; density and heat capacity are taken as one all through a circuit (between
/// 20 and 60 degC their product moves by 1.5 %). All rounds, however nested, in one linear system.
CarriedTemperatures carried_temperatures(const HydronicGraph& graph, const std::vector<double>& flow_m3_per_s,
                                         const std::vector<Outlet>& outlets, const TemperatureOptions& options = {});

}  // namespace slabwright
