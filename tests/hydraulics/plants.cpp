#include "plants.hpp"

#include <string>
#include <utility>

namespace slabwright::test {
namespace {

constexpr double per_hour = 3600.0;
constexpr Liquid warm_water{992.2, 652.7e-6};
constexpr Liquid cold_glycol{1036.2, 4.57e-3};

struct Pair {
  NodeId supply, back;
};

class Piping {
 public:
  explicit Piping(Dice& dice) : dice_(dice), liquid_(dice.once_in(2) ? warm_water : cold_glycol) {}

  HydronicGraph plant() {
    const Pair heater = pair("heater");
    source(heater);
    const Pair secondary = tees(heater);
    const Pair far = mains(secondary);
    if (dice_.once_in(2)) mains(heater);
    if (dice_.once_in(2)) join(far.supply, heater.supply, "cross connection", pipe(5.0, 0.016));
    return std::move(graph_);
  }

 private:
  NodeId node(const std::string& name) { return graph_.add_node(name); }
  Pair pair(const std::string& name) {
    const NodeId supply = node(name + " supply"), back = node(name + " return");
    return {supply, back};
  }
  void join(NodeId from, NodeId to, const std::string& name, std::vector<Element> elements) {
    graph_.add_branch(from, to, name, liquid_, std::move(elements));
  }
  static std::vector<Element> pipe(double length_m, double bore_m) {
    return {{Part::mains, Bore{length_m, bore_m, 7e-6}}, {Part::mains, Fitting{0.9, bore_m}}};
  }
  std::vector<Element> circulator() {
    const double head = dice_.between(1.0, 7.0), range = dice_.between(1.5, 5.0) / per_hour;
    PumpCurve curve = PumpLaw{head, range, dice_.between(1.2, 2.5)};
    if (dice_.once_in(4)) curve = held_to(curve, {dice_.between(0.4, 0.9) * head, 0.5 * range, 1.0});
    return {{Part::pump, Pump{curve, dice_.between(0.6, 1.0)}}, {Part::mains, Bore{1.0, 0.022, 7e-6}}};
  }

  // Heater and circulators in parallel, often unlike each other, so that a weak one would be pushed back.
  void source(Pair heater) {
    const NodeId inlet = node("inlet");
    join(heater.back, inlet, "boiler", {{Part::boiler, PowerLaw{dice_.between(1e9, 1e10), 1.9}}});
    const std::size_t pumps = 1 + dice_.below(3);
    for (std::size_t i = 0; i < pumps; ++i) {
      std::vector<Element> elements = circulator();
      const bool spring = dice_.once_in(2);
      if (pumps > 1 && !dice_.once_in(4)) elements.push_back({Part::pump, CheckValve{spring ? 800.0 : 0.0}});
      join(inlet, heater.supply, "circulator", elements);
    }
  }

  // Two tees close together in the primary circuit; between them the secondary one, with a circulator of its own.
  Pair tees(Pair heater) {
    const Pair tee = pair("tee"), secondary = pair("secondary");
    join(heater.supply, tee.supply, "primary supply", pipe(4.0, 0.028));
    join(tee.supply, tee.back, "between the tees", pipe(0.1, 0.028));
    join(tee.back, heater.back, "primary return", pipe(4.0, 0.028));
    join(tee.supply, secondary.supply, "secondary circulator", circulator());
    join(secondary.back, tee.back, "secondary return", pipe(2.0, 0.028));
    return secondary;
  }

  // Manifolds along a pair of mains. The return leaves at the near end, or, in a reverse return, at the far one.
  Pair mains(Pair from) {
    const std::size_t manifolds = 2 + dice_.below(3);
    const bool reverse = dice_.once_in(2);
    Pair first, last;
    for (std::size_t i = 0; i < manifolds; ++i) {
      const Pair bars = pair("manifold");
      join(i == 0 ? from.supply : last.supply, bars.supply, "supply main", run());
      if (i > 0) join(reverse ? last.back : bars.back, reverse ? bars.back : last.back, "return main", run());
      if (i == 0) first = bars;
      loops(bars);
      last = bars;
    }
    join(reverse ? last.back : first.back, from.back, "return main", run());
    if (dice_.once_in(2)) join(last.supply, first.supply, "ring", run());
    join(last.supply, last.back, "bypass", {{Part::mains, bypass()}, {Part::mains, Bore{0.5, 0.02, 7e-6}}});
    return last;
  }
  std::vector<Element> run() {
    const double length_m = dice_.between(2.0, 20.0);
    return pipe(length_m, dice_.between(0.016, 0.028));
  }
  BypassValve bypass() { return {dice_.between(3e3, 4e4), dice_.between(2e3, 2e4), dice_.between(0.5, 4.0)}; }

  void loops(Pair bars) {
    const std::size_t count = 1 + dice_.below(3);
    const bool zone_shut = dice_.once_in(5);
    for (std::size_t i = 0; i < count; ++i) {
      std::vector<Element> elements{{Part::balancing_valve, KvValve{dice_.between(0.2, 1.2)}},
                                    {Part::tube, Bore{dice_.between(20.0, 110.0), 0.012, 7e-6}}};
      if (zone_shut || dice_.once_in(8)) elements.push_back({Part::balancing_valve, Shut{}});
      join(bars.supply, bars.back, "loop", elements);
    }
  }

  Dice& dice_;
  Liquid liquid_;
  HydronicGraph graph_;
};

Shape anything(Dice& dice) {
  switch (dice.below(7)) {
    case 0: return Pump{PumpLaw{dice.between(0.5, 9.0), dice.between(0.3, 5.0) / per_hour, dice.between(1.0, 3.0)}};
    case 1: return Pump{*pump_table({{0.0, 5.0}, {2e-4, 5.0}, {5e-4, 1.0}}).value};
    case 2: return KvValve{dice.between(0.05, 4.0)};
    case 3: return CheckValve{dice.once_in(2) ? 0.0 : dice.between(0.0, 5e3)};
    case 4: return BypassValve{dice.between(100.0, 4e4), dice.between(10.0, 2e4), dice.between(0.1, 5.0)};
    case 5: return PowerLaw{dice.between(1e8, 1e11), dice.between(1.0, 3.0)};
    default: return dice.once_in(2) ? Shape{Shut{}} : Shape{Fitting{dice.between(0.0, 20.0), 0.012}};
  }
}

}  // namespace

HydronicGraph random_tangle(Dice& dice, bool some_bare) {
  HydronicGraph graph;
  const std::size_t nodes = 3 + dice.below(10), branches = nodes + dice.below(nodes);
  for (std::size_t i = 0; i < nodes; ++i) graph.add_node("node");
  for (std::size_t k = 0; k < branches; ++k) {
    // The first branches reach every node, the others close loops.
    std::size_t to = k + 1 < nodes ? k + 1 : 1 + dice.below(nodes - 1), from = dice.below(to);
    if (dice.once_in(2)) std::swap(from, to);
    std::vector<Element> elements{{Part::tube, Bore{dice.between(1.0, 60.0), dice.between(0.008, 0.03), 7e-6}}};
    if (some_bare && dice.once_in(6)) elements.clear();
    if (!dice.once_in(3)) elements.push_back({Part::tube, anything(dice)});
    graph.add_branch({from}, {to}, "branch", warm_water, elements);
  }
  return graph;
}

HydronicGraph random_plant(Dice& dice) { return Piping(dice).plant(); }

}  // namespace slabwright::test
