// What must add up in any answer, whatever its figures: mass, heat, money. Written once, and asked of every layout and
// of every drawn design.
#pragma once
#include <string>
#include <vector>

#include "slabwright/answer.hpp"

namespace slabwright::test {

/// What adds up does so to this share of its largest term: far above rounding, far below what any figure is printed to.
inline constexpr double adds_up_share = 1e-8;
/// What follows from flow and temperature settled together does so as well as those: 1e-5 K of return temperature and
/// as little of a stem's way, over the few kelvin by which the water falls.
inline constexpr double settled_share = 1e-5;

/// Two ways to one figure.
struct Identity {
  std::string what;
  double left = 0.0, right = 0.0;
  double largest = 0.0;  ///< of the terms that either is made of
  double allowed_share = adds_up_share;
  /// Of the largest term.
  double off_share() const;
};

/// Of all stages that the answer has.
std::vector<Identity> identities_of(const Answer& answer);

/// What leaves a node of the hydronic graph has come in, for every node, and each loop carries what the operating point
/// says: solved again with the answer's own settings and temperatures. Empty without an operating point.
std::vector<Identity> identities_of_graph(const Answer& answer);

}  // namespace slabwright::test
