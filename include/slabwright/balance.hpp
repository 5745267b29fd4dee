// Valve settings so that each loop carries its design flow, and the moves that get there by hand.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/plant.hpp"

namespace slabwright {

struct PortSetting {
  std::string loop;
  int port = 0;
  double length_m = 0.0;
  double open_m3_per_s = 0.0;  ///< all ports wide open
  double aim_m3_per_s = 0.0;
  double least_m3_per_s = 0.0;  ///< good enough: from here ...
  double most_m3_per_s = 0.0;   ///< ... to here
  double exact_kv = 0.0;        ///< coefficient that would give the aim exactly
  double exact_turns = 0.0;
  double set_turns = 0.0;  ///< rounded to a quarter turn; open for the hardest loop
  bool open = false;
  double after_m3_per_s = 0.0;  ///< the network solved again with the rounded settings
  double authority_share = 0.0;
  bool within = true;  ///< after lies between least and most
  /// UA over heat capacity of its water at the aim; 0 where no heat is known.
  double exchange_number = 0.0;
};

/// Heat of a port's loop at a flow over that at its aim; nothing where no heat is known. flow >= 0.
std::optional<double> heat_share_at(const PortSetting& port, double flow_m3_per_s);

/// One move at the manifold, with what the other meters should then read.
struct BalanceMove {
  std::string loop;
  int port = 0;
  double until_m3_per_s = 0.0;
  double to_turns = 0.0;
  std::vector<double> then_m3_per_s;  ///< all ports, in their order
};

struct Balance {
  std::vector<PortSetting> port;
  bool open_is_enough = false;  ///< all ports wide open leave every loop inside its band: none is turned
  std::vector<BalanceMove> move;
  ValveTurns turns;  ///< what `port` is set to
  std::size_t hardest = 0;
  double duty_Pa = 0.0;       ///< pump pressure at which every loop carries its aim, hardest loop open
  double aim_m3_per_s = 0.0;  ///< of all ports
  double total_open_m3_per_s = 0.0;
  double total_after_m3_per_s = 0.0;
  double untouched_worst_share = 0.0;  ///< worst relative miss of the aim if nothing is set
  std::string untouched_loop;
  double meter_most_m3_per_s = 0.0;  ///< highest mark of the flow meters: the file's, or a scale that shows all of it
  double pump_speed_share = 1.0;     ///< generic pumps: the speed at which the hardest loop carries its aim
  std::optional<double> hold_Pa;     ///< what the pump's own control holds at `hold_m3_per_s`, where it has one
  std::optional<double> hold_m3_per_s;
  double pump_reach_share = 1.0;   ///< of the target that the pump could carry at full speed, all loops in balance
  double least_speed_share = 1.0;  ///< of any pump: the speed at which every loop can just be set to its target
  double speed_saves_share = 0.0;  ///< of the work on the water at full speed, ports set, that this speed saves
};

/// "Good enough" is what costs a loop at most this much of its heat.
inline constexpr double good_enough_heat_share = 0.03;

/// Settings for the target with water at `water_degC`. A pump with a control of its own holds the duty. Without one a
/// generic pump is slowed to it; a pump of the file runs as it is: the aims keep their proportions and take up what it
/// moves. Said: a pump that cannot carry the target, ports that no setting brings into their band, flows that a meter
/// cannot show well.
Checked<Balance> balance_plant(const Plant& plant, const FlowTarget& target, double water_degC);

/// The plant with its pump's control, where it has one, holding what the balance found; ports and speed as they were.
Plant as_balanced(const Plant& plant, const Balance& balance);

Record record_of(PortSetting&);
Record record_of(BalanceMove&);
Record record_of(Balance&);

}  // namespace slabwright
