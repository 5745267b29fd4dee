// The design piped up as a graph, and the one coupled operating point. What follows for the purchase: plant_sizes.hpp.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/hydraulics.hpp"
#include "slabwright/plant_piping.hpp"
#include "slabwright/section.hpp"

namespace slabwright {

/// What each port's balancing valve is set to; empty: all wide open.
using ValveTurns = std::vector<double>;

/// Where the pump's curve comes from.
enum class PumpFrom { file, generic, none };

/// A design piped up: pump, boiler, mixing valve where there is one, mains, bars port by port, and a branch for each
/// loop with its balancing valve, leaders, tube, bends and return valve in series.
struct Plant {
  Design design;
  LoopPlan loops;
  std::optional<FloorPlan> floor;  ///< absent where no heat was asked for: a manifold balanced by lengths alone
  HydronicGraph graph;
  SourcePiping source;                ///< what feeds the mains
  BranchId source_branch;             ///< of it, the one that all water to the mains passes
  std::vector<BranchId> loop_branch;  ///< a row for each loop
  std::vector<BranchId> supply_side;  ///< mains and bars that carry the supply
  std::vector<BranchId> return_side;
  std::vector<std::vector<BranchId>> way;  ///< of each loop: the branches of both sides that its water passes
  PumpFrom pump_from = PumpFrom::generic;
  std::string pump_name;
  Pump pump;
  double pump_speed_share = 1.0;  ///< generic pumps are taken to have a speed to set
  double setting_share = 0.5;     ///< of a mixing valve's stem or an injecting pump's speed; operate() finds its own
  ValveTurns turns;               ///< empty: all wide open
};
/// `floor` may be null. The pump is the file's, or the generic one in row `generic` of generic_pumps(). Absent where
/// the file's pump or valve table is refused by the kernel; the reader has said so before.
Checked<Plant> pipe_up(const Design& design, const LoopPlan& loops, const FloorPlan* floor, std::size_t generic = 0);

/// The same plant with its balancing valves set and its pump at a share of its speed.
Plant with_settings(const Plant& plant, const ValveTurns& turns, double pump_speed_share);

/// The same plant with its pump's control, where the design has one, holding so much at a flow of the whole floor.
Plant holding(const Plant& plant, double pressure_Pa, double flow_m3_per_s);

/// The same plant with the zone valves of some loops shut, by their rows.
Plant with_shut(const Plant& plant, const std::vector<std::size_t>& loops);

/// The loops whose zone valves the design has shut: their own, or those of all rooms that they heat.
std::vector<std::size_t> loops_shut(const Design& design, const LoopPlan& loops);

/// How a port's valve follows its turns: the file's table, or its shape.
ValveCurve port_valve(const Valve& valve);
/// Its Kv wide open: of the table's last row, where there is a table.
double open_port_kv(const Valve& valve);

/// The plant's tube with what the file says otherwise about roughness and wall.
TubeSize tube_of(const Design& design);

/// The same water everywhere: flows with no heat asked for.
NetworkSolution flows_at(const Plant& plant, double water_degC);

/// Of all loops together.
double floor_flow_m3_per_s(const Plant& plant, const NetworkSolution& solved);

/// What the floor stands between.
struct Conditions {
  std::vector<double> room_degC;  ///< a row for each Design::room
  double outdoor_degC = 0.0;
};

struct LoopState {
  double flow_m3_per_s = 0.0;
  double return_degC = 0.0;
  double up_W = 0.0;
  double down_W = 0.0;
  double velocity_m_per_s = 0.0;
  double reynolds_number = 0.0;
  Regime regime = Regime::laminar;
  double film_W_per_m2K = 0.0;  ///< inside the tube
  double loss_Pa = 0.0;         ///< port to port
  std::vector<PartLoss> part;
};

/// Flows and temperatures that agree with each other: viscosity moves flow, flow moves temperature.
struct OperatingPoint {
  Stop stop = Stop::rounds_spent;
  int rounds = 0;
  std::string worst;  ///< the unknown that moved most in the last round
  double supply_degC = 0.0;
  double return_degC = 0.0;  ///< mixed
  double flow_m3_per_s = 0.0;
  double pump_Pa = 0.0;
  double up_W = 0.0;
  double down_W = 0.0;
  double water_W = 0.0;  ///< heat the water gives up: up + down
  std::vector<LoopState> loop;
  std::vector<double> room_up_W;
  std::vector<double> room_floor_degC;       ///< mean surface
  std::vector<double> room_floor_peak_degC;  ///< over the warmest tube
  std::vector<PartLoss> hardest_part;        ///< the hardest loop's whole circuit, by part
  std::size_t hardest_loop = 0;
  SourceState source;
};
/// The one coupling loop of the whole tool. Unknowns: the return temperature of each loop, and where something mixes to
/// a temperature, its setting. `supply_degC` is what enters the mains; the boiler gives what that takes. A plant
/// without a floor runs at one temperature and gives no heat.
OperatingPoint operate(const Plant& plant, const Conditions& conditions, double supply_degC,
                       const OperatingPoint* warm = nullptr);

/// The lowest supply temperature at which every room's floor gives what it is asked for: a bracketed root on operate().
/// Said: supply above 49 C warns, above 60 C is refused for a floor, rooms that cannot be served.
Checked<OperatingPoint> supply_for(const Plant& plant, const Conditions& conditions,
                                   const std::vector<double>& room_wanted_W);

/// Loop flows that carry each loop's heat at the working drop (or share the total given in the file).
/// From lengths alone: in proportion to length.
struct FlowTarget {
  std::vector<double> loop_m3_per_s;
  double total_m3_per_s = 0.0;
  double supply_degC = 0.0;  ///< first estimate
  double water_degC = 0.0;   ///< of the whole round: halfway from there to the return
  bool from_pump = false;    ///< the total is what the pump moves through the open loops, not a wish
};
FlowTarget target_flows(const Plant& plant, const Envelope* envelope);

Record record_of(PartLoss&);
Record record_of(LoopState&);
Record record_of(OperatingPoint&);

}  // namespace slabwright
