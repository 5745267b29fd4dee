// How heater and floor are joined: the branches it takes, and what runs in them.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/fields.hpp"
#include "slabwright/hydraulics.hpp"

namespace slabwright {

/// What feeds the mains: everything between the node where they leave and the node where they come back.
struct SourcePiping {
  NodeId out, back;
  std::vector<BranchId> branch;         ///< all of it
  std::vector<BranchId> pump;           ///< the floor's circulators, side by side
  BranchId boiler;                      ///< through the heater
  std::vector<BranchId> way;            ///< from `back` to `out` on the floor's own way
  std::optional<BranchId> mix;          ///< from return to supply past the boiler: tees, body or return port
  std::optional<BranchId> injection;    ///< the pump that injects boiler water
  std::optional<BranchId> bypass;       ///< from `out` to `back`, opened by its pressure
  std::optional<ThreeWayValve> mixing;  ///< its hot port in `boiler`, its return port in `mix`
};

/// A circulator as it runs.
struct PumpState {
  std::string name;
  double flow_m3_per_s = 0.0;
  double pressure_Pa = 0.0;  ///< that it gives
  bool stands = false;       ///< its check valve is shut: others press more than it can
  bool outside = false;      ///< it runs beyond its curve as known
};

/// What runs and mixes between boiler and mains. At every meeting T times the sum of Q is the sum of Q times T.
struct SourceState {
  double boiler_m3_per_s = 0.0;
  double boiler_degC = 0.0;             ///< that it must give
  double boiler_in_degC = 0.0;          ///< that it gets back
  double mixed_in_m3_per_s = 0.0;       ///< return water that joins the supply past the boiler
  double straight_back_m3_per_s = 0.0;  ///< boiler water that goes back past the floor
  double bypass_m3_per_s = 0.0;
  std::optional<double> hot_share;      ///< boiler water in the supply, where something mixes to a temperature
  std::optional<double> setting_share;  ///< of the stem's way or of the injecting pump's speed
  bool reached = true;                  ///< false: the supply asked for is more than this piping can make
  std::vector<PumpState> pump;          ///< the floor's first
};

Record record_of(PumpState&);
Record record_of(SourceState&);

}  // namespace slabwright
