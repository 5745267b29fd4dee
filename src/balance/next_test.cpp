#include "balance/next_test.hpp"

#include <cmath>

namespace slabwright {
namespace {

// Practice: a bucket of 10 l and a watch tell a flow to about 3 %.
constexpr double bucket_error_share = 0.03;
// Four more readings of each meter halve what is random in its error. What is its own for good stays.
constexpr double more_readings = 4.0;
// A harder test must part the two by so much more to be worth the walk.
constexpr double harder_by = 1.25;

/// Readings under two suspects, each with its spread.
double apart(double first, double second, double error) { return std::abs(first - second) / error; }

NextTest front(const Evidence& evidence, const TwoStates& both, std::size_t loop) {
  NextTest test;
  test.kind = TestKind::front;
  test.loop = loop;
  test.first_front_s = evidence.front_s(both.first, loop);
  test.second_front_s = evidence.front_s(both.second, loop);
  const double mean = 0.5 * (*test.first_front_s + *test.second_front_s);
  test.apart_number = apart(*test.first_front_s, *test.second_front_s, evidence.readings().front_error_share * mean);
  return test;
}

NextTest returns(const Evidence& evidence, const TwoStates& both, std::size_t loop) {
  NextTest test;
  test.kind = TestKind::returns;
  test.loop = loop;
  test.first_return_degC = evidence.return_degC(both.first, loop);
  test.second_return_degC = evidence.return_degC(both.second, loop);
  // What nobody knows of the floor's heat moves the drop as a whole.
  const double drop = evidence.supply_degC() - 0.5 * (*test.first_return_degC + *test.second_return_degC);
  const double error = std::hypot(evidence.readings().thermometer_error_K, evidence.readings().heat_error_share * drop);
  test.apart_number = apart(*test.first_return_degC, *test.second_return_degC, error);
  return test;
}

NextTest bucket(const TwoStates& both, std::size_t loop) {
  NextTest test;
  test.kind = TestKind::bucket;
  test.loop = loop;
  test.first_flow_m3_per_s = both.first.flow_m3_per_s[loop];
  test.second_flow_m3_per_s = both.second.flow_m3_per_s[loop];
  const double mean = 0.5 * (*test.first_flow_m3_per_s + *test.second_flow_m3_per_s);
  test.apart_number =
      mean > 0.0 ? apart(*test.first_flow_m3_per_s, *test.second_flow_m3_per_s, bucket_error_share * mean) : 0.0;
  return test;
}

/// All meters, read once or more often; told by the one that moves most.
NextTest meters(TestKind kind, const Evidence& evidence, const TwoStates& both, double times) {
  NextTest test;
  test.kind = kind;
  double squares = 0.0, most = -1.0;
  for (std::size_t i = 0; i < both.first.flow_m3_per_s.size(); ++i) {
    const double first = both.first.flow_m3_per_s[i] * both.first.reading_share[i];
    const double second = both.second.flow_m3_per_s[i] * both.second.reading_share[i];
    const double z = apart(first, second, evidence.meter_error_m3_per_s(0.5 * (first + second)));
    squares += z * z;
    if (z <= most) continue;
    most = z;
    test.loop = i;
    test.first_flow_m3_per_s = first;
    test.second_flow_m3_per_s = second;
  }
  test.apart_number = std::sqrt(times * squares);
  return test;
}

}  // namespace

NextTest next_test(const Evidence& evidence, const TwoSuspects& two, const TwoStates& now,
                   const std::optional<TwoStates>& open) {
  NextTest best = meters(TestKind::read_again, evidence, now, more_readings);
  const auto take = [&](const NextTest& test) {
    if (test.apart_number > harder_by * best.apart_number) best = test;
  };
  if (open) take(meters(TestKind::open_ports, evidence, *open, 1.0));
  for (const std::size_t loop : {two.first.loop, two.first.other, two.second.loop, two.second.other}) {
    const PortReading& read = evidence.readings().port[loop];
    if (evidence.knows_returns() && !read.return_degC) take(returns(evidence, now, loop));
    if (!read.front_s) take(front(evidence, now, loop));
    take(bucket(now, loop));
  }
  return best;
}

}  // namespace slabwright
