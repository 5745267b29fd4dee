// The plant's graph in ranks and columns, from the source outward.
#include "plant/scheme.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright {
namespace {

class Scheme {
 public:
  Scheme(const Plant& plant, const OperatingPoint* point, const PlantSizes* sizes)
      : plant_(plant), graph_(plant.graph), shut_(with_shut(plant, loops_shut(plant.design, plant.loops))) {
    add_nodes(point);
    add_branches(point, sizes);
    add_devices(sizes);
    place(graph_.to(plant.source.boiler).at);
    for (std::size_t node = 0; node < out_.node.size(); ++node) {
      if (!seen_[node] && out_.node[node].side == SchemeSide::supply) place(node);
    }
    place_returns();
    number_columns();
  }

  PipingScheme result() { return std::move(out_); }

 private:
  /// What stands in one column.
  struct Column {
    std::vector<int*> number;      ///< where it is told
    bool return_side_free = true;  ///< only something of the supply side stands there
  };

  /// Through no loop, no heater and none of the ways past it.
  std::vector<BranchId> closed() const {
    std::vector<BranchId> all = plant_.loop_branch;
    all.push_back(plant_.source.boiler);
    if (plant_.source.mix) all.push_back(*plant_.source.mix);
    if (plant_.source.bypass) all.push_back(*plant_.source.bypass);
    return all;
  }

  void add_nodes(const OperatingPoint* point) {
    std::vector<NodeId> starts, ends;
    for (const BranchId loop : plant_.loop_branch) {
      starts.push_back(graph_.from(loop));
      ends.push_back(graph_.to(loop));
    }
    const NodeId hot = graph_.to(plant_.source.boiler), cool = graph_.from(plant_.source.boiler);
    const auto sent = steps_from(graph_, {hot}, closed(), Walk::along);
    const auto sends = steps_from(graph_, starts, closed(), Walk::against);
    const auto back = steps_from(graph_, {cool}, closed(), Walk::against);
    const auto comes = steps_from(graph_, ends, closed(), Walk::along);
    for (std::size_t i = 0; i < graph_.node_count(); ++i) {
      const bool returns = back[i] && comes[i] && !(sent[i] && sends[i]);
      SchemeNode node{graph_.name(NodeId{i}), returns ? SchemeSide::return_side : SchemeSide::supply};
      node.rank_number = static_cast<int>(returns ? *back[i] : sent[i].value_or(0));
      if (point && i == plant_.source.out.at) node.water_degC = point->supply_degC;
      if (point && i == plant_.source.back.at) node.water_degC = point->return_degC;
      out_.node.push_back(std::move(node));
    }
    seen_.assign(out_.node.size(), false);
    at_.resize(out_.node.size());
  }

  void add_branches(const OperatingPoint* point, const PlantSizes* sizes) {
    const auto flows = point ? scheme_flows(plant_, *point) : std::vector<std::optional<double>>(graph_.branch_count());
    for (std::size_t i = 0; i < graph_.branch_count(); ++i) {
      const BranchId id{i};
      SchemeBranch branch{graph_.name(id), graph_.from(id).at, graph_.to(id).at};
      if (flows[i]) {
        branch.flow_m3_per_s = std::abs(*flows[i]);
        branch.runs_back = *flows[i] < 0.0;
      }
      if (point && id == plant_.source.boiler && plant_.design.boiler.kind != BoilerKind::none)
        branch.out_degC = point->source.boiler_degC;
      branch.element = scheme_elements(shut_, id, sizes);
      at_[branch.from].push_back(i);
      at_[branch.to].push_back(i);
      out_.branch.push_back(std::move(branch));
    }
    for (std::size_t k = 0; k < plant_.loop_branch.size(); ++k)
      out_.branch[plant_.loop_branch[k].at].loop_name = plant_.loops.loop[k].name;
  }

  void add_devices(const PlantSizes* sizes) {
    const std::size_t suction = graph_.from(plant_.source.pump.front()).at;
    for (SchemeElement& one : scheme_devices(plant_, sizes)) out_.device.push_back({suction, 0, std::move(one)});
  }

  bool crosses(const SchemeBranch& branch) const { return out_.node[branch.from].side != out_.node[branch.to].side; }

  /// What hangs on a place comes before what lies further along the mains.
  static bool is_bar(const SchemeBranch& branch) {
    return std::all_of(branch.element.begin(), branch.element.end(),
                       [](const SchemeElement& e) { return e.kind == SchemeKind::bar; });
  }

  void place_devices(std::size_t node) {
    for (SchemeDevice& device : out_.device) {
      if (device.node == node && device.column_number == 0) push(&device.column_number, false);
    }
  }

  void push(int* number, bool return_side_free) {
    *number = -1;  // placed; numbered in the end
    column_.push_back({{number}, return_side_free});
  }

  /// Depth first: a node's crossings, its devices, then what lies beyond it.
  void place(std::size_t node) {
    seen_[node] = true;
    const std::size_t before = column_.size();
    std::vector<std::size_t> returns;
    for (const std::size_t i : at_[node]) {
      SchemeBranch& branch = out_.branch[i];
      if (!crosses(branch) || branch.column_number != 0) continue;
      push(&branch.column_number, false);
      returns.push_back(branch.from == node ? branch.to : branch.from);
    }
    for (const std::size_t other : returns) place_devices(other);
    place_devices(node);
    if (column_.size() == before) push(&out_.node[node].column_number, true);
    for (const bool bars : {true, false}) {
      for (const std::size_t i : at_[node]) {
        const SchemeBranch& branch = out_.branch[i];
        const std::size_t other = branch.from == node ? branch.to : branch.from;
        if (!crosses(branch) && !seen_[other] && is_bar(branch) == bars) place(other);
      }
    }
  }

  /// The first column in which the node has something, counted from 0; none where it has nothing.
  std::optional<std::size_t> first_column(std::size_t node) const {
    for (std::size_t c = 0; c < column_.size(); ++c) {
      for (const int* number : column_[c].number) {
        if (number == &out_.node[node].column_number) return c;
        for (const std::size_t i : at_[node]) {
          if (number == &out_.branch[i].column_number) return c;
        }
      }
    }
    return std::nullopt;
  }

  /// Meetings of returns where nothing crosses: beside the first of what they gather.
  void place_return(std::size_t node) {
    std::optional<std::size_t> first;
    for (const std::size_t i : at_[node]) {
      const SchemeBranch& branch = out_.branch[i];
      const std::size_t other = branch.from == node ? branch.to : branch.from;
      if (out_.node[other].rank_number < out_.node[node].rank_number) continue;
      const auto column = first_column(other);
      if (column && (!first || *column < *first)) first = column;
    }
    const std::size_t c = first.value_or(column_.size());
    int* number = &out_.node[node].column_number;
    *number = -1;
    if (c > 0 && column_[c - 1].return_side_free) {
      column_[c - 1].number.push_back(number);
      column_[c - 1].return_side_free = false;
    } else {
      column_.insert(column_.begin() + static_cast<std::ptrdiff_t>(c), Column{{number}, false});
    }
  }

  void place_returns() {
    // From the farthest in, so that what a meeting gathers is placed before it.
    std::vector<std::size_t> bare;
    for (std::size_t node = 0; node < out_.node.size(); ++node) {
      if (out_.node[node].side == SchemeSide::return_side && !first_column(node)) bare.push_back(node);
    }
    std::stable_sort(bare.begin(), bare.end(),
                     [&](std::size_t a, std::size_t b) { return out_.node[a].rank_number > out_.node[b].rank_number; });
    for (const std::size_t node : bare) place_return(node);
  }

  void number_columns() {
    out_.columns_number = static_cast<int>(column_.size());
    for (std::size_t c = 0; c < column_.size(); ++c) {
      for (int* number : column_[c].number) *number = static_cast<int>(c) + 1;
    }
  }

  const Plant& plant_;
  const HydronicGraph& graph_;
  Plant shut_;  ///< with the zone valves that the design has shut
  PipingScheme out_;
  std::vector<bool> seen_;
  std::vector<std::vector<std::size_t>> at_;  ///< branches of each node
  std::vector<Column> column_;
};

}  // namespace

PipingScheme piping_scheme(const Plant& plant, const OperatingPoint* point, const PlantSizes* sizes) {
  return Scheme(plant, point, sizes).result();
}

}  // namespace slabwright
