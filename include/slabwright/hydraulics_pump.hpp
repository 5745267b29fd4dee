// Pumps: what head they give at a flow.
#pragma once
#include <memory>
#include <variant>
#include <vector>

#include "slabwright/diagnostics.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {

/// A point of a pump's curve; the head is in metres of the liquid that is pumped.
struct PumpPoint {
  double flow_m3_per_s = 0.0;
  double head_m = 0.0;
};

/// H = H0 (1 - (Q / Qm)^n): a pump known by its head at no flow and its flow at no head. All greater than zero, n >= 1.
struct PumpLaw {
  double no_flow_head_m = 0.0;
  double no_head_flow_m3_per_s = 0.0;
  double exponent = 2.0;
};

/// A maker's curve point by point, made by pump_table(), which refuses what no pump should have.
class PumpTable {
 public:
  const MonotoneTable& heads() const { return *heads_; }

 private:
  friend Checked<PumpTable> pump_table(const std::vector<PumpPoint>&);
  explicit PumpTable(MonotoneTable heads) : heads_(std::make_shared<const MonotoneTable>(std::move(heads))) {}
  std::shared_ptr<const MonotoneTable> heads_;  ///< shared, so that an element of a branch stays small
};

/// What a pump's own speed control holds: the head on a straight line, from a share of `head_m` at no flow to all of it
/// at `flow_m3_per_s`, and level beyond. A share of 1 is constant pressure; 0.5 is the control line that EU 641/2009
/// rates circulators on, sold as proportional pressure. Head and flow above zero, the share from 0 to 1.
struct PumpControl {
  double head_m = 1.0;
  double flow_m3_per_s = 1e-3;
  double no_flow_share = 1.0;
};
double control_line_m(const PumpControl& control, double flow_m3_per_s);

struct HeldCurve;
/// A curve of which the pump gives no more than its control asks for; made by held_to(). Pumps side by side that share
/// one (copies of one curve) have one control, which runs them alike; each with its own on a line that rises would take
/// the other's flow.
struct ControlledCurve {
  std::shared_ptr<const HeldCurve> held;  ///< shared, so that an element of a branch stays small
};

using PumpCurve = std::variant<PumpLaw, PumpTable, ControlledCurve>;

struct HeldCurve {
  PumpCurve full;  ///< a law or a table
  PumpControl control;
};
/// A curve that is held already gets the new control.
PumpCurve held_to(const PumpCurve& curve, const PumpControl& control);

/// Below its control line a curve stands as it is: what a pump can give at all.
const PumpCurve& without_control(const PumpCurve& curve);

/// H0 - B Q^C through three points, the first at no flow (the form EPANET 2.2 uses). Refused, with the reason: points
/// out of order, a head that does not fall, a curve steeper at its start than further on (C < 1: give it as a table).
Checked<PumpLaw> pump_law_through(PumpPoint no_flow, PumpPoint middle, PumpPoint far);

/// Two points or more in order of flow, the first at no flow or above, heads at zero or above. A head may stay level
/// (speed-controlled pumps), never rise: two flows would then share a head, and the pump could hunt between them.
Checked<PumpTable> pump_table(const std::vector<PumpPoint>& points);

/// A pump running at a share of the speed its curve was taken at (affinity: flow with the speed, head with its square;
/// a control line is taken along).
struct Pump {
  PumpCurve curve;
  double speed_share = 1.0;  ///< greater than zero
};

struct PumpHead {
  double head_m = 0.0;
  double slope_s_per_m2 = 0.0;  ///< d head / d flow, never above zero
  bool outside = false;         ///< beyond the curve as known: the figure is a guess
};

/// Head at a flow. Beyond the last point the curve falls on at least as steeply as on average before, below zero where
/// water is driven through a pump faster than it can turn it; water pushed backwards meets a head that doubles within a
/// hundredth of the pump's range. Both only lead a solver back onto the curve; `outside` says when they spoke.
///
/// On a control line that rises, the slope is given as zero: a solver reads the line at a flow that stays, and again at
/// the flow it found. The second form is that: the line read at `line_m3_per_s`, which may be infinite.
PumpHead head_at(const Pump& pump, double flow_m3_per_s);
PumpHead head_at(const Pump& pump, double flow_m3_per_s, double line_m3_per_s);

/// The flow where the known curve ends.
double range_m3_per_s(const Pump& pump);

/// Power given to the water, W: flow times pressure rise.
inline double hydraulic_power_W(double flow_m3_per_s, double pressure_rise_Pa) {
  return flow_m3_per_s * pressure_rise_Pa;
}

}  // namespace slabwright
