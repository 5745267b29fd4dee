// A branch of the plant in words.
#include <algorithm>

#include "plant/scheme.hpp"
#include "slabwright/handbook_practice.hpp"

namespace slabwright {
namespace {

bool holds(const std::vector<BranchId>& branches, BranchId branch) {
  return std::find(branches.begin(), branches.end(), branch) != branches.end();
}

SchemeElement one(SchemeKind kind, const char* word, int stands_for) { return {kind, word, stands_for}; }

class InWords {
 public:
  InWords(const Plant& plant, BranchId branch, const PlantSizes* sizes)
      : plant_(plant), branch_(branch), sizes_(sizes) {}

  std::vector<SchemeElement> all() {
    for (const Element& element : plant_.graph.elements(branch_)) add(element);
    if (branch_ == plant_.source.boiler && plant_.design.boiler.kind == BoilerKind::none) {
      out_.push_back(one(SchemeKind::boiler, "heater", 0));
      out_.back().by_others = true;
    }
    return std::move(out_);
  }

 private:
  void add(const Element& element) {
    switch (element.part) {
      case Part::pump: return add_pump(element);
      case Part::boiler: return add_heater(element);
      case Part::mixing_valve:
        return push(SchemeKind::mixing_valve,
                    branch_ == plant_.source.boiler ? "mixing valve, hot port" : "mixing valve, return port");
      case Part::mains: return add_mains(element);
      case Part::bar: return merge(SchemeKind::bar, "bar");
      case Part::balancing_valve: return add_port(element);
      case Part::leader:
      case Part::tube:
      case Part::bend: return add_tube(element);
      case Part::return_valve: return push(SchemeKind::return_valve, "return valve");
    }
  }

  void push(SchemeKind kind, const char* word) { out_.push_back(one(kind, word, 1)); }

  /// Part of what stands before it, where that is of the same kind.
  void merge(SchemeKind kind, const char* word) {
    if (!out_.empty() && out_.back().kind == kind)
      ++out_.back().stands_for_number;
    else
      push(kind, word);
  }

  void add_pump(const Element& element) {
    if (std::holds_alternative<CheckValve>(element.shape)) return push(SchemeKind::check_valve, "check valve");
    if (!std::holds_alternative<Pump>(element.shape))
      return merge(out_.empty() ? SchemeKind::pipe : out_.back().kind, "pipe");
    const bool floor = holds(plant_.source.pump, branch_);
    const bool injects = plant_.source.injection && branch_ == *plant_.source.injection;
    push(SchemeKind::pump, floor ? "floor pump" : injects ? "injection pump" : "boiler pump");
  }

  void add_heater(const Element& element) {
    if (std::holds_alternative<CheckValve>(element.shape)) return push(SchemeKind::check_valve, "check valve");
    if (!std::holds_alternative<KvValve>(element.shape))
      return merge(out_.empty() ? SchemeKind::pipe : out_.back().kind, "pipe");
    const bool tank = plant_.design.boiler.kind == BoilerKind::tank_heater;
    push(SchemeKind::boiler, tank ? "tank heater" : "electric boiler");
    if (sizes_) out_.back().power_W = sizes_->boiler.power_W;
    add_safety();
  }

  /// What stands by the heater before anything that could shut it off.
  void add_safety() {
    out_.push_back(one(SchemeKind::low_water, "low-water cut-off, where required", 0));
    out_.back().by_others = true;
    out_.push_back(one(SchemeKind::relief_valve, "relief valve", 0));
    out_.back().opening_Pa = plant_.design.pressure.relief_Pa;
    out_.push_back(one(SchemeKind::air_separator, "air separator with vent", 0));
    out_.back().by_others = true;
  }

  void add_mains(const Element& element) {
    if (std::holds_alternative<BypassValve>(element.shape)) {
      push(SchemeKind::bypass_valve, "bypass valve");
      out_.back().opening_Pa = plant_.design.pump.bypass_opening_Pa;
      return;
    }
    if (shared()) return add_shared();
    // A fitting that belongs to a valve or a pump stands with it; the rest is pipe.
    merge(SchemeKind::pipe, "mains");
    if (const auto* bore = std::get_if<Bore>(&element.shape))
      out_.back().length_m = out_.back().length_m.value_or(0.0) + bore->length_m;
  }

  bool between_boiler_tees() const {
    const bool source = holds(plant_.source.branch, branch_);
    const auto& elements = plant_.graph.elements(branch_);
    const bool bore = std::any_of(elements.begin(), elements.end(),
                                  [](const Element& e) { return std::holds_alternative<Bore>(e.shape); });
    return plant_.source.injection && source && bore;
  }

  /// The short wide piece that two circuits have in common.
  bool shared() const {
    const bool mixes = plant_.source.mix && branch_ == *plant_.source.mix;
    return (mixes && !plant_.source.mixing) || between_boiler_tees();
  }

  void add_shared() {
    const BoilerPiping piping = plant_.design.boiler.piping;
    const char* word = piping == BoilerPiping::separator ? "separator"
                       : piping == BoilerPiping::buffer  ? "buffer tank"
                                                         : "closely spaced tees";
    merge(SchemeKind::shared_piece, word);
    if (piping == BoilerPiping::buffer) out_.back().volume_m3 = plant_.design.boiler.buffer_m3;
  }

  void add_port(const Element& element) {
    if (std::holds_alternative<Shut>(element.shape))
      push(SchemeKind::zone_valve, "zone valve, shut");
    else
      push(SchemeKind::balancing_valve, "balancing valve");
  }

  void add_tube(const Element& element) {
    merge(SchemeKind::tube, "tube");
    if (const auto* bore = std::get_if<Bore>(&element.shape))
      out_.back().length_m = out_.back().length_m.value_or(0.0) + bore->length_m;
  }

  const Plant& plant_;
  BranchId branch_;
  const PlantSizes* sizes_;
  std::vector<SchemeElement> out_;
};

/// Flows that follow because what comes to a node leaves it.
class FlowBalance {
 public:
  FlowBalance(const HydronicGraph& graph, std::vector<std::optional<double>> known)
      : graph_(graph), flow_(std::move(known)) {
    at_.resize(graph.node_count());
    for (std::size_t i = 0; i < graph.branch_count(); ++i) {
      at_[graph.from({i}).at].push_back(i);
      at_[graph.to({i}).at].push_back(i);
    }
  }

  std::vector<std::optional<double>> result() {
    for (bool more = true; more;) {
      more = false;
      for (std::size_t node = 0; node < at_.size(); ++node) more = settle(node) || more;
    }
    return std::move(flow_);
  }

 private:
  bool settle(std::size_t node) {
    std::optional<std::size_t> open;
    double left = 0.0;
    for (const std::size_t i : at_[node]) {
      if (!flow_[i] && open) return false;
      if (!flow_[i])
        open = i;
      else
        left += graph_.to({i}).at == node ? *flow_[i] : -*flow_[i];
    }
    if (!open) return false;
    flow_[*open] = graph_.from({*open}).at == node ? left : -left;
    return true;
  }

  const HydronicGraph& graph_;
  std::vector<std::optional<double>> flow_;
  std::vector<std::vector<std::size_t>> at_;
};

}  // namespace

std::vector<SchemeElement> scheme_elements(const Plant& plant, BranchId branch, const PlantSizes* sizes) {
  return InWords(plant, branch, sizes).all();
}

std::vector<SchemeElement> scheme_devices(const Plant& plant, const PlantSizes* sizes) {
  SchemeElement tank{SchemeKind::tank, "expansion tank", 0};
  if (sizes) tank.volume_m3 = sizes->tank.tank_m3;
  SchemeElement fill{SchemeKind::fill, "fill with backflow protection", 0};
  fill.by_others = true;
  fill.opening_Pa = sizes ? sizes->tank.fill_Pa : plant.design.pressure.fill_Pa;
  return {tank, fill};
}

std::vector<std::optional<double>> scheme_flows(const Plant& plant, const OperatingPoint& point) {
  std::vector<std::optional<double>> known(plant.graph.branch_count());
  for (std::size_t i = 0; i < plant.loop_branch.size(); ++i)
    known[plant.loop_branch[i].at] = point.loop[i].flow_m3_per_s;
  const SourceState& source = point.source;
  known[plant.source.boiler.at] = source.boiler_m3_per_s;
  if (plant.source.mix) known[plant.source.mix->at] = source.mixed_in_m3_per_s - source.straight_back_m3_per_s;
  if (plant.source.bypass) known[plant.source.bypass->at] = source.bypass_m3_per_s;
  for (std::size_t i = 0; i < plant.source.pump.size() && i < source.pump.size(); ++i)
    known[plant.source.pump[i].at] = source.pump[i].flow_m3_per_s;
  return FlowBalance(plant.graph, std::move(known)).result();
}

}  // namespace slabwright
