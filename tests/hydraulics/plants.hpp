// Plants as the trade pipes them, at random: the harder half of what a solver meets.
#pragma once
#include <random>

#include "slabwright/hydraulics.hpp"

namespace slabwright::test {

/// Numbers that are the same on every machine.
class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  double between(double low, double high) { return low + (high - low) * static_cast<double>(engine_()) / 4294967295.0; }
  std::size_t below(std::size_t n) { return engine_() % n; }
  bool once_in(std::size_t n) { return below(n) == 0; }

 private:
  std::mt19937 engine_;
};

/// One to three circulators in parallel, some behind check valves; a primary circuit with closely spaced tees; two to
/// four manifolds on mains with direct or reverse return, some mains a ring; zones shut; a bypass valve that opens by
/// differential pressure; a cross connection in which water runs either way. All in closed circuits, always looped.
HydronicGraph random_plant(Dice& dice);

/// No plant at all: tubes between nodes at random with pumps, valves, bypass and check valves anywhere in them, in
/// closed circuits; as little sense as a solver will ever be shown. With `some_bare`, a sixth of the branches have no
/// tube, so that some rounds resist nothing and flow in them is not determined.
HydronicGraph random_tangle(Dice& dice, bool some_bare = false);

}  // namespace slabwright::test
