// One drawn design through the answers, and what came of it.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "random/scenario.hpp"
#include "slabwright/answer.hpp"

namespace slabwright::test {

/// What is told of a stop that no single change ends.
inline const std::string none_helps = "no single change";
/// Before a value that no shop would come to.
inline const std::string on_paper = "on paper ";

/// A stated value tried in place of what stopped a solve.
struct Tried {
  std::string code;
  bool solved = false;
  std::string told;  ///< "boiler.power = 9 kW" of which design, where it did not
};

struct Outcome {
  std::uint64_t number = 0;
  bool nearly_broken = false;
  std::string ended;                ///< "works", "mend", "fails", "lacking", or the code of the first problem
  std::vector<std::string> asked;   ///< the answers that were made
  std::vector<std::string> stops;   ///< codes of what stopped early
  std::vector<std::string> faults;  ///< what may never be; empty as a rule
  std::vector<Tried> tried;
  double worst_share = 0.0;  ///< of all identities that hold to `adds_up_share`
  std::string worst_of;
  double cpu_s = 0.0;
};

/// Reads it, asks what its number asks, holds every identity, tries what remedies state.
Outcome run(const DrawnDesign& drawn);

/// No design may take longer, by the processor's clock: the largest floors that are drawn take a few.
inline constexpr double longest_s = 60.0;

}  // namespace slabwright::test
