// The loss of each branch as one function of its flow.
#pragma once
#include <cstdint>
#include <limits>
#include <variant>
#include <vector>

#include "slabwright/hydraulics_graph.hpp"
#include "slabwright/tube_run.hpp"

namespace slabwright {

/// A head counts in metres of the liquid that fills the branch: Pa in a metre of it.
/// A control line is read at a flow that stays while flows are sought: `line_m3_per_s`, at first far out.
struct WeighedPump {
  const Pump* pump = nullptr;
  double weight_Pa_per_m = 0.0;
  double line_m3_per_s = std::numeric_limits<double>::infinity();
};

struct FilledBypass {
  BypassValve valve;
  Liquid liquid;
};

/// What is neither a branch's tube nor goes with the square of the flow. A TubeRun is tube of a second bore.
using Term = std::variant<TubeRun, PowerLaw, WeighedPump, CheckValve, FilledBypass>;

/// Where a branch is in the course of a solve: its flow and what it loses there, and what a full step moves it by.
struct Motion {
  double flow = 0.0, change = 0.0;
  Loss loss;
};

/// Elements in series carry the same flow, so those of a kind are added up once and cost one evaluation: the lengths of
/// one bore, everything that goes with the square of the flow. Points into the graph it was made from, and remembers
/// the friction found last.
class BranchLaws {
 public:
  explicit BranchLaws(const HydronicGraph& graph);

  Loss loss(std::size_t branch, double flow_m3_per_s);
  bool shut(std::size_t branch) const { return rows_[branch].shut; }
  bool one_way(std::size_t branch) const { return rows_[branch].one_way; }
  bool pump_outside_curve(std::size_t branch, double flow_m3_per_s) const;

  /// Reads every pump's control line again at the flow now found. The most that this moved a head by, Pa. Read from far
  /// out, where lines are highest, heads fall towards the highest answer there is, for more head never moves less
  /// water.
  double read_lines();

  /// A flow of the size that such a branch carries, and the slope of the chord from rest to it: what Newton's method
  /// takes the branch for before it knows better.
  double usual_flow(std::size_t branch) const { return rows_[branch].usual_flow_m3_per_s; }
  double chord(std::size_t branch) const { return rows_[branch].chord_Pa_s_per_m3; }
  std::size_t size() const { return rows_.size(); }

  const Motion& motion(std::size_t branch) const { return rows_[branch].motion; }
  void aim(std::size_t branch, double change) { rows_[branch].motion.change = change; }
  void move_to(std::size_t branch, double flow_m3_per_s) {
    rows_[branch].motion.flow = flow_m3_per_s;
    rows_[branch].motion.loss = loss(branch, flow_m3_per_s);
  }

 private:
  /// Law and motion side by side: a round passes through all branches and needs both. Most branches have tube of one
  /// bore, which stands here too.
  struct Row {
    double square = 0.0;  ///< Pa per (m3/s)^2 of all fittings and valves
    TubeRun tube;
    float usual_flow_m3_per_s = 0.0F, chord_Pa_s_per_m3 = 0.0F;  ///< rough by nature
    std::uint32_t first = 0;                                     ///< of its other terms
    std::uint16_t terms = 0;
    bool shut = false, one_way = false;
    Motion motion;
  };
  /// A pump with a control. Those that share one run alike: its line is read at the mean of their flows.
  struct Line {
    std::size_t row = 0, term = 0;
    const HeldCurve* held = nullptr;
    double last_change = 0.0;
    double ahead(double change);  ///< how far to go where a plain reading would change so much
  };
  double shared_flow(const HeldCurve* held) const;
  void add(Row& row, const Element& element, const Liquid& liquid);
  double add_tubes(Row& row, const Liquid& liquid);
  void foresee(Row& row, double flow_m3_per_s);
  std::vector<Row> rows_;
  std::vector<Term> terms_;
  std::vector<Line> lines_;
  std::vector<Bore> bores_;  ///< of the branch that is being added up
};

}  // namespace slabwright
