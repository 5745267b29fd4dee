// The loss of each branch as one function of its flow.
#pragma once
#include <variant>
#include <vector>

#include "slabwright/hydraulics_graph.hpp"

namespace slabwright {

/// What is neither a fitting nor a valve.
using Term = std::variant<Bore, PowerLaw, const Pump*>;

/// Elements in series carry the same flow, so those of a kind are added up once and cost one evaluation: the lengths of
/// one bore, everything that goes with the square of the flow. Points into the graph it was made from.
class BranchLaws {
 public:
  explicit BranchLaws(const HydronicGraph& graph);

  Loss loss(std::size_t branch, double flow_m3_per_s) const;
  bool shut(std::size_t branch) const { return rows_[branch].shut; }
  bool one_way(std::size_t branch) const { return rows_[branch].one_way; }
  bool pump_outside_curve(std::size_t branch, double flow_m3_per_s) const;

  /// A flow of the size that such a branch carries, and the slope of the chord from rest to it: what Newton's method
  /// takes the branch for before it knows better.
  double usual_flow(std::size_t branch) const { return rows_[branch].usual_flow_m3_per_s; }
  double chord(std::size_t branch) const { return rows_[branch].chord_Pa_s_per_m3; }
  std::size_t size() const { return rows_.size(); }

 private:
  struct Row {
    Liquid liquid;
    double square = 0.0;             ///< Pa per (m3/s)^2 of all fittings and valves
    std::size_t first = 0, end = 0;  ///< its other terms
    bool shut = false, one_way = false;
    double usual_flow_m3_per_s = 0.0, chord_Pa_s_per_m3 = 0.0;
  };
  void add(Row& row, const Shape& shape);
  void foresee(std::size_t branch);
  std::vector<Row> rows_;
  std::vector<Term> terms_;
};

}  // namespace slabwright
