// The hydronic graph: what water flows through, from node to node.
#pragma once
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "slabwright/hydraulics_pump.hpp"
#include "slabwright/hydraulics_valve.hpp"
#include "slabwright/ids.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {

using NodeId = Id<struct NodeTag>;
using BranchId = Id<struct BranchTag>;

/// Which part of the system an element belongs to, so that a head can be told part by part.
enum class Part { pump, boiler, mixing_valve, mains, bar, balancing_valve, return_valve, leader, tube, bend };

/// A bend, a tee, an entry: K times the velocity pressure in its bore. K >= 0.
struct Fitting {
  double loss_coefficient = 0.0;
  double inside_diameter_m = 0.0;
};

/// A valve by its flow coefficient (m3/h at 1 bar); at zero it is shut.
struct KvValve {
  double kv = 0.0;
};

/// A loss that its source states as a law: Pa = resistance times (m3/s)^exponent. resistance >= 0, exponent >= 1.
struct PowerLaw {
  double resistance = 0.0;
  double exponent = 2.0;
};

/// Lets water go from the branch's start to its end only, once its spring gives way. At zero or above; what an open
/// valve loses beyond its spring is a KvValve or a Fitting beside it.
struct CheckValve {
  double opening_Pa = 0.0;
};

struct Shut {};  ///< lets nothing pass

/// A Bore is a straight run of tube; a Pump drives water from the branch's start to its end, and a BypassValve opens
/// that way.
using Shape = std::variant<Bore, Fitting, KvValve, PowerLaw, Pump, CheckValve, BypassValve, Shut>;

struct Element {
  Part part = Part::tube;
  Shape shape;
};

/// Nodes joined by branches; a branch is elements in series, all filled with one liquid. Pressures are gauge and leave
/// out height: in a circuit that closes, height lifts nothing. A closed circuit needs no pressure given anywhere; an
/// open one has nodes whose pressure is held from outside, and demands. Numbers that are no numbers, sizes at or below
/// zero and branches from a node to itself are bugs of the caller (std::logic_error).
class HydronicGraph {
 public:
  HydronicGraph();
  HydronicGraph(const HydronicGraph& other);
  HydronicGraph& operator=(const HydronicGraph& other);
  HydronicGraph(HydronicGraph&&) noexcept;
  HydronicGraph& operator=(HydronicGraph&&) noexcept;
  ~HydronicGraph();

  NodeId add_node(std::string name);
  /// Flow counts as positive from `from` to `to`.
  BranchId add_branch(NodeId from, NodeId to, std::string name, const Liquid& liquid, std::vector<Element> elements);

  void hold_pressure(NodeId node, double pressure_Pa);
  void set_demand(NodeId node, double demand_m3_per_s);  ///< water taken out of the graph there
  void set_liquid(BranchId branch, const Liquid& liquid);
  void set_elements(BranchId branch, std::vector<Element> elements);

  std::size_t node_count() const;
  std::size_t branch_count() const;
  const std::string& name(NodeId node) const;
  const std::string& name(BranchId branch) const;
  NodeId from(BranchId branch) const;
  NodeId to(BranchId branch) const;
  const Liquid& liquid(BranchId branch) const;
  const std::vector<Element>& elements(BranchId branch) const;

  struct Inside;  ///< the nodes and branches themselves, for the sources of this module
  const Inside& inside() const { return *inside_; }

 private:
  std::unique_ptr<Inside> inside_;
};

/// Whether something in the branch is shut.
bool is_shut(const HydronicGraph& graph, BranchId branch);

/// For each node the number, from 0, of the connected part of the graph it lies in; shut branches join nothing.
std::vector<std::size_t> connected_parts(const HydronicGraph& graph);

/// The branches in which water must stand: shut ones, and those with no way back (bridges), counting the outside as a
/// way between all nodes with a demand or a held pressure. In order of id.
std::vector<BranchId> branches_without_flow(const HydronicGraph& graph);

/// Which way branches are walked.
enum class Walk { along, against };

/// For each node the fewest branches that a walk takes from one of `from` to it, along the branches' own directions or
/// against them, through none of `closed`; absent where no walk leads.
std::vector<std::optional<std::size_t>> steps_from(const HydronicGraph& graph, const std::vector<NodeId>& from,
                                                   const std::vector<BranchId>& closed, Walk walk);

/// A branch in a round trip; `forward` when the trip takes it from its start to its end.
struct Leg {
  BranchId branch;
  bool forward = true;
};

/// Round trips, one for each open branch that a spanning tree leaves out, beginning with it: around every closed trip
/// in the graph the heads add up to zero if they do around these.
std::vector<std::vector<Leg>> independent_loops(const HydronicGraph& graph);

}  // namespace slabwright
