// Manifolds drawn at random, faults put into them, and what would then be read: all from full solves of the coupled
// plant, by code that shares nothing with what is tested.
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "plant/plants.hpp"
#include "slabwright/balance_readings.hpp"

namespace slabwright::test {

/// Steele, Lea and Flood's generator (2014): the same numbers on every machine.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : state_(seed) {}
  double between(double least, double most);
  std::size_t below(std::size_t count);
  double normal();

 private:
  std::uint64_t next();
  std::uint64_t state_;
};

/// A manifold set for its drawn lengths, or wide open, on the smallest generic pump that serves it.
struct DrawnManifold {
  Piped piped;
  FlowTarget target;
  Plant plant;
  double supply_degC = 0.0;
  OperatingPoint healthy;
};
DrawnManifold draw_manifold(Draw& draw, std::size_t loops, bool set);

enum class Wrong { nothing, longer, cut, meter, swapped };
inline constexpr std::size_t wrongs = 5;

/// `size` as in the stated ranges: length over drawn, flow over healthy, reading over flow.
struct PutFault {
  Wrong wrong = Wrong::nothing;
  std::size_t loop = 0, other = 0;
  double size = 1.0;
};
/// Nothing in one case of seven, else each kind, each loop and each pair alike.
PutFault draw_fault(Draw& draw, std::size_t loops);

/// What ports carry, send back and take until they get warm.
struct True {
  std::vector<double> flow_m3_per_s, return_degC, front_s;
};
True true_state(const DrawnManifold& manifold, const PutFault& fault);

/// Which kinds of reading there are, besides flows.
struct Kinds {
  bool returns = false, fronts = false;
  /// With flows alone: whether a meter that shows wrong is to be told from a loop that carries little, which nobody can
  /// where both show half.
  bool meter_apart = false;
};
/// Meters 10 %, thermometers 0.5 K, times 6 %.
Readings read_with_noise(Draw& draw, const DrawnManifold& manifold, const PutFault& fault, const True& truth);
Readings only(const Readings& all, Kinds kinds);

}  // namespace slabwright::test
