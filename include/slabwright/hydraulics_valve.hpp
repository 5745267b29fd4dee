// Valves: flow coefficients, how they follow the turns of the handle, and how much a valve rules its circuit.
#pragma once
#include <variant>
#include <vector>

#include "slabwright/diagnostics.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {

// Kv: m3/h of water at a drop of 1 bar. Cv: US gpm at a drop of 1 psi. Both hold for fully turbulent flow: a valve with
// thick glycol at little flow loses more.
double kv_from_cv(double cv);
double cv_from_kv(double kv);

/// Pressure lost in a valve: 1 bar times (Q / Kv)^2 times the density over 1000 kg/m3. kv > 0.
Loss valve_loss(double kv, const Liquid& liquid, double flow_m3_per_s);

/// The Kv that loses the given pressure at the given flow. Both greater than zero.
double kv_for(double flow_m3_per_s, double pressure_Pa, const Liquid& liquid);

/// One valve in place of several. All greater than zero, one at least.
double kv_in_series(const std::vector<double>& kvs);
double kv_in_parallel(const std::vector<double>& kvs);

/// The loss coefficient (times velocity pressure in the given bore) of a valve, and back. Both greater than zero.
double loss_coefficient_from_kv(double kv, double inside_diameter_m);
double kv_from_loss_coefficient(double loss_coefficient, double inside_diameter_m);

/// A differential-pressure bypass valve: shut up to its opening pressure, from there open in proportion to the pressure
/// across it, fully open a band further on. All greater than zero. (A spring that obeys Hooke under a disc; the trade
/// states just these three figures.)
struct BypassValve {
  double opening_Pa = 2e4;
  double band_Pa = 1e4;
  double open_kv = 2.5;
};

/// The pressure across an open bypass valve at a flow: with y = (dp - opening) / band up to 1, Q = y Kv sqrt(dp). At no
/// flow its opening pressure, and backwards a straight line from there, which only leads a solver back: a bypass valve
/// lets no water back.
Loss bypass_loss(const BypassValve& valve, const Liquid& liquid, double flow_m3_per_s);

/// The flow that a pressure across it drives through; none below its opening pressure.
double bypass_flow_m3_per_s(const BypassValve& valve, const Liquid& liquid, double pressure_Pa);

/// A three-way mixing valve: hot water and return water come in, and what one port loses in opening the other gains.
struct ThreeWayValve {
  double open_kv = 4.0;      ///< of either port when it is open and the other shut
  double leak_share = 1e-3;  ///< of its open Kv that a shut port lets through; 0 or above
};

struct ThreeWayPorts {
  double hot_kv = 0.0;
  double return_kv = 0.0;
};

/// The ports with the stem at a share of its way from all return (0) to all hot (1), straight and complementary, so
/// that together they pass about the same in any place. In a graph they are two branches that end in one node.
ThreeWayPorts ports_at(const ThreeWayValve& valve, double hot_share);

/// Kv in a straight line with the turns, from a leak when shut. The share at shut is one over the valve's range (R).
struct LinearValve {
  double open_kv = 1.1;
  double turns = 5.0;
  double shut_share = 0.02;
};

/// Each turn multiplies Kv by the same factor: Kv = open Kv R^(h - 1), with R one over the share at shut.
struct EqualPercentageValve {
  double open_kv = 1.1;
  double turns = 5.0;
  double shut_share = 0.02;
};

struct TurnPoint {
  double turns = 0.0;
  double kv = 0.0;
};

/// A maker's table, made by valve_table(); straight lines between its rows.
class ValveTable {
 public:
  const std::vector<TurnPoint>& points() const { return points_; }

 private:
  friend Checked<ValveTable> valve_table(const std::vector<TurnPoint>&);
  explicit ValveTable(std::vector<TurnPoint> points) : points_(std::move(points)) {}
  std::vector<TurnPoint> points_;
};

/// Two rows or more; turns and Kv both at zero or above and rising from row to row, else refused with the reason.
Checked<ValveTable> valve_table(const std::vector<TurnPoint>& points);

using ValveCurve = std::variant<LinearValve, EqualPercentageValve, ValveTable>;

/// Kv at a number of turns open; beyond either end the end's.
double kv_at_turns(const ValveCurve& curve, double turns_open);

/// `reached` is false where the valve cannot give that Kv; the turns are then those of the nearer end.
struct TurnSetting {
  double open_turns = 0.0;
  bool reached = true;
};

/// How far to open a valve for a Kv > 0.
TurnSetting turns_for_kv(const ValveCurve& curve, double kv);

/// Valve authority: the share of its circuit's whole drop that the valve takes when it is fully open.
double valve_authority(double open_valve_drop_Pa, double rest_of_circuit_drop_Pa);

/// Flow as a share of the flow with the valve open, when the valve is at `kv_share` of its open Kv, in a circuit whose
/// whole drop stays the same: 1 / sqrt(1 + N (1 / phi^2 - 1)). Both above 0 and at most 1.
double installed_flow_share(double kv_share, double authority_share);

}  // namespace slabwright
