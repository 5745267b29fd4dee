// From the source to every port and back: mains, then bars port by port.
#include <fmt/format.h>

#include <algorithm>

#include "plant/piping.hpp"

namespace slabwright {
namespace {

// Practice: ports stand 2 in apart on a bar of about an inch, and each tee costs the passing water half a velocity
// head.
constexpr double port_spacing_m = 0.05, bar_diameter_m = 0.025, bar_tee_coefficient = 0.5;
// Practice: elbows and tees of the mains, each way.
constexpr double mains_fittings_coefficient = 2.0;

/// A node, and the branches that lead to it from the source, or from it back there.
struct Reached {
  NodeId node;
  std::vector<BranchId> by;
};

class MainsPiping {
 public:
  MainsPiping(Plant& plant, const Liquid& liquid) : plant_(plant), liquid_(liquid), tube_(tube_of(plant.design)) {}

  void build() {
    const std::size_t manifolds = plant_.design.manifold.size();
    plant_.way.resize(plant_.loops.loop.size());
    plant_.loop_branch.resize(plant_.loops.loop.size());
    const Reached out{plant_.source.out, {}}, back{plant_.source.back, {}};
    if (manifolds == 1 || plant_.design.mains.return_way == ReturnWay::each_its_own) {
      for (std::size_t m = 0; m < manifolds; ++m) manifold(m, out, back, mains(plant_.design.mains.length_m));
      return;
    }
    const std::vector<Reached> supply = chain(true, out, false);
    const std::vector<Reached> collect = chain(false, back, plant_.design.mains.return_way == ReturnWay::reverse);
    for (std::size_t m = 0; m < manifolds; ++m) manifold(m, supply[m], collect[m], bar());
  }

 private:
  std::vector<Element> mains(double length_m) const {
    const double bore_m = plant_.design.mains.inside_diameter_m;
    std::vector<Element> all{{Part::mains, Fitting{mains_fittings_coefficient, bore_m}}};
    if (length_m > 0.0) all.push_back({Part::mains, Bore{length_m, bore_m, tube_.roughness_m}});
    return all;
  }

  std::vector<Element> bar() const {
    return {{Part::bar, Bore{port_spacing_m, bar_diameter_m, tube_.roughness_m}},
            {Part::bar, Fitting{bar_tee_coefficient, bar_diameter_m}}};
  }

  /// One more piece of the supply side, away from the source, or of the return side, towards it.
  Reached further(bool supply, const Reached& from, NodeId to, const std::string& what,
                  const std::vector<Element>& elements) {
    const NodeId first = supply ? from.node : to, last = supply ? to : from.node;
    const std::string name = (supply ? "supply " : "return ") + what;
    const BranchId branch = plant_.graph.add_branch(first, last, name, liquid_, elements);
    (supply ? plant_.supply_side : plant_.return_side).push_back(branch);
    Reached reached{to, from.by};
    reached.by.push_back(branch);
    return reached;
  }

  /// Common mains from manifold to manifold, a row for each; from the last one first where they run on and come back.
  std::vector<Reached> chain(bool supply, const Reached& source, bool from_last) {
    const Mains& design = plant_.design.mains;
    const std::size_t n = plant_.design.manifold.size();
    const double between_m = design.between_m.value_or(design.length_m);
    const double comes_back_m = from_last ? static_cast<double>(n - 1) * between_m : 0.0;
    std::vector<Reached> all(n);
    for (std::size_t k = 0; k < n; ++k) {
      const std::size_t m = from_last ? n - 1 - k : k;
      const std::string what = "mains at " + plant_.design.manifold[m].name;
      const NodeId node = plant_.graph.add_node((supply ? "supply " : "return ") + what);
      const Reached& before = k == 0 ? source : all[from_last ? m + 1 : m - 1];
      all[m] = further(supply, before, node, what, mains(k == 0 ? design.length_m + comes_back_m : between_m));
    }
    return all;
  }

  /// The first port is the nearest to the mains on the supply bar, and on the return bar too unless it is reversed.
  void manifold(std::size_t m, const Reached& supply, const Reached& collect, const std::vector<Element>& first) {
    std::vector<std::size_t> mine;
    for (std::size_t i = 0; i < plant_.loops.loop.size(); ++i) {
      if (plant_.loops.loop[i].manifold == m) mine.push_back(i);
    }
    std::vector<Reached> supplies(mine.size()), returns(mine.size());
    for (std::size_t k = 0; k < mine.size(); ++k) {
      const std::string& name = plant_.loops.loop[mine[k]].name;
      supplies[k].node = plant_.graph.add_node(fmt::format("supply port of {}", name));
      returns[k].node = plant_.graph.add_node(fmt::format("return port of {}", name));
    }
    const bool common = first.front().part == Part::bar;
    for (std::size_t k = 0; k < mine.size(); ++k) {
      const std::string what = k == 0 && !common ? "mains" : "bar";
      const std::vector<Element> way = k == 0 ? first : bar();
      const bool reverse = plant_.design.manifold[m].reverse_return;
      const std::size_t r = reverse ? mine.size() - 1 - k : k, before = reverse ? r + 1 : r - 1;
      supplies[k] = further(true, k == 0 ? supply : supplies[k - 1], supplies[k].node, what, way);
      returns[r] = further(false, k == 0 ? collect : returns[before], returns[r].node, what, way);
    }
    for (std::size_t k = 0; k < mine.size(); ++k) {
      std::vector<BranchId>& all = plant_.way[mine[k]];
      // Supply and return in turn, as water meets them from the source outwards.
      for (std::size_t j = 0; j < std::max(supplies[k].by.size(), returns[k].by.size()); ++j) {
        if (j < supplies[k].by.size()) all.push_back(supplies[k].by[j]);
        if (j < returns[k].by.size()) all.push_back(returns[k].by[j]);
      }
      const Loop& one = plant_.loops.loop[mine[k]];
      plant_.loop_branch[mine[k]] = plant_.graph.add_branch(supplies[k].node, returns[k].node, one.name, liquid_,
                                                            loop_elements(plant_.design, one));
    }
  }

  Plant& plant_;
  Liquid liquid_;
  TubeSize tube_;
};

}  // namespace

Plant with_mains(Plant plant, const Liquid& liquid) {
  MainsPiping(plant, liquid).build();
  return plant;
}

}  // namespace slabwright
