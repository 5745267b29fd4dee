// A hundred made-up bills: how often the band holds the truth, and how wide it is.
#include <iostream>

#include "winter/bills.hpp"

using namespace slabwright;
using namespace slabwright::test;
using namespace slabwright::winter;

namespace {

constexpr std::size_t bills = 100, seed = 20261;
constexpr double noise_share = 0.03;

/// A coordinate of the unit box for the truth and two for each month's normal draw, in several boxes beside each other.
struct Hundred {
  SamplePoints truth = quasi_random(128, 3, seed);
  SamplePoints reading = quasi_random(128, 12, seed + 1), reading_turn = quasi_random(128, 12, seed + 2);
  SamplePoints weather = quasi_random(128, 12, seed + 3), weather_turn = quasi_random(128, 12, seed + 4);
};

struct Counted {
  int loss = 0, ground = 0, indoor = 0;
  double width = 0.0;  ///< of the band of the loss, mean
};

Counted counted(const BillErrors& errors) {
  const Hundred drawn;
  Counted count;
  for (std::size_t i = 0; i < bills; ++i) {
    const std::vector<double>& at = drawn.truth[i];
    const BillPoint truth{0.6 * std::pow(1.6 / 0.6, at[0]), 0.6 * std::pow(2.0 / 0.6, at[1]), 2.0 * at[2] - 1.0};
    MonthsOfUse noise{}, outdoor_K{};
    for (std::size_t month = 0; month < 12; ++month) {
      noise[month] = noise_share * normal_from(drawn.reading[i][month], drawn.reading_turn[i][month]);
      outdoor_K[month] = errors.month_K * normal_from(drawn.weather[i][month], drawn.weather_turn[i][month]);
    }
    const BillFit fit = answer_of(billed(), bill_of(billed(), truth, noise, outdoor_K), errors).fit;
    count.loss += fit.loss_low_share <= truth.loss_share && truth.loss_share <= fit.loss_high_share;
    count.ground += fit.ground_low_share <= truth.ground_share && truth.ground_share <= fit.ground_high_share;
    count.indoor += fit.indoor_low_K <= truth.indoor_K && truth.indoor_K <= fit.indoor_high_K;
    count.width += (fit.loss_high_share - fit.loss_low_share) / fit.loss_share / static_cast<double>(bills);
  }
  return count;
}

void check(const Counted& count) {
  std::cout << "loss in its band " << count.loss << ", ground " << count.ground << ", indoor " << count.indoor
            << " of 100; band of the loss " << count.width << " of its middle\n";
  CHECK(count.loss >= 85);
  CHECK(count.ground >= 85);
  CHECK(count.indoor >= 85);
  // What is held beforehand alone: exp(1.645 x 0.35) less its inverse, 1.22.
  CHECK(count.width < 0.85);
}

}  // namespace

TEST_CASE("of a hundred bills of a winter that is known the truth is in the band", "[whole]") {
  check(counted({noise_share, 0.0}));
}

TEST_CASE("and of a winter whose months were warmer and colder than the file's", "[whole]") {
  check(counted({noise_share, 1.0}));
}
