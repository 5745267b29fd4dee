// The pump against the piping: what the system asks for and what the pump gives, over the flow of the whole floor.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/plant.hpp"

namespace slabwright {

/// Everything at one flow through the floor's circulators. Heads are of the water at the pump.
struct CurveRow {
  double flow_m3_per_s = 0.0;  ///< of all circulators together, a bypass's share included
  double system_Pa = 0.0;      ///< asked for by everything but the circulators themselves, valves as they are set
  double system_head_m = 0.0;
  double pump_Pa = 0.0;  ///< given by the circulators; below 0 where water is driven through them
  double pump_head_m = 0.0;
  double loop_m3_per_s = 0.0;  ///< then in the hardest loop
  double loop_Pa = 0.0;        ///< that it loses port to port, without the part that all loops share
  double loop_head_m = 0.0;
};

/// A flow and a pressure, the pressure as a head too.
struct CurvePlace {
  double flow_m3_per_s = 0.0;
  double pressure_Pa = 0.0;
  double head_m = 0.0;
};

struct PlantCurves {
  std::string loop;              ///< the hardest
  std::size_t hardest_loop = 0;  ///< its row in LoopPlan::loop
  CurveRow runs;                 ///< where both curves meet: the operating point
  CurvePlace duty;               ///< the duty to buy: target flows
  CurvePlace pump_end;           ///< where the pump's curve ends
  std::vector<CurveRow> row;     ///< from no flow, rising by a tenth of the flow it runs at, which is row 10
};

/// Total flows are forced through the network with its water as warm as at the operating point, and with the stem or
/// the injecting pump as that has left them: each row is a solve. Rows go on until the pump's curve ends, or to twice
/// the flow it runs at. Absent where no water moves, or where a flow cannot be forced.
std::optional<PlantCurves> plant_curves(const Plant& plant, const OperatingPoint& point, const FlowTarget& target,
                                        double duty_Pa);

Record record_of(CurveRow&);
Record record_of(CurvePlace&);
Record record_of(PlantCurves&);

}  // namespace slabwright
