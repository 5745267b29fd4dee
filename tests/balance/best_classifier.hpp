// The best possible answer: the posterior of every fault under the very model that the readings are drawn from, each
// state a full solve of the coupled plant, each size summed over numerically.
#pragma once
#include <vector>

#include "balance/faults.hpp"

namespace slabwright::test {

/// What is answered, and about which loop or pair. Flows alone cannot tell long from choked: both are `less`.
enum class Told { healthy, less, more, longer, choked, meter, swapped, shorter };
inline constexpr std::size_t tolds = 8;
struct Answered {
  Told told = Told::healthy;
  std::size_t loop = 0, other = 0;
};
bool same(const Answered& a, const Answered& b);

/// What ought to be answered.
Answered right_answer(const PutFault& fault, Kinds kinds);

/// What read_back() answered.
Answered answer_of(const ReadBack& back, Kinds kinds);

class BestClassifier {
 public:
  explicit BestClassifier(const DrawnManifold& manifold);
  /// The most likely answer, and its probability.
  Answered answer(const Readings& readings, Kinds kinds, double* probability = nullptr) const;

 private:
  struct States {
    PutFault fault;
    double least = 1.0, most = 1.0;
    std::vector<True> at;  ///< at sizes equally far apart
  };
  double log_of(const States& states, const Readings& readings) const;

  std::vector<States> states_;
  std::vector<double> log_before_;
};

}  // namespace slabwright::test
