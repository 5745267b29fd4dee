// What parts of a work tell of the whole.
#include "slabwright/progress.hpp"

#include <string>
#include <utility>
#include <vector>

#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("parts of a work tell the whole without a step back") {
  std::vector<double> told;
  const Progress whole = [&](double share) { told.push_back(share); };
  for (std::size_t k = 0; k < 3; ++k) {
    const Progress part = part_of(whole, k, 3);
    for (const double share : {0.0, 0.1, 0.999999999999, 1.0}) tell(part_of(part, 0.0, 0.7), share);
    for (const double share : {0.0, 0.5, 1.0}) tell(part_of(part, 0.7, 1.0), share);
  }
  for (std::size_t k = 1; k < told.size(); ++k) CHECK(told[k] >= told[k - 1]);
  CHECK(told.front() == 0.0);
  CHECK(told.back() == 1.0);
}

TEST_CASE("tries that end nobody knows when share out what is left") {
  std::vector<double> told;
  const Progress whole = [&](double share) { told.push_back(share); };
  for (int row = 0; row < 3; ++row) {
    tell(try_of(whole, row), 0.5);
    tell(try_of(whole, row), 1.0);
  }
  CHECK(told == std::vector<double>{0.25, 0.5, 0.625, 0.75, 0.8125, 0.875});
}

TEST_CASE("where nobody asks nothing is told") {
  CHECK_FALSE(part_of(Progress{}, 0.0, 0.5));
  CHECK_FALSE(try_of(Progress{}, 1));
  CHECK_FALSE(work_of(Works{}, "laying tube"));
  tell({}, 0.5);
}

TEST_CASE("a work tells its name") {
  std::vector<std::pair<std::string, double>> told;
  const Works works = [&](std::string_view work, double share) { told.emplace_back(work, share); };
  tell(work_of(works, "laying tube"), 0.5);
  tell(work_of(works, "something else"), 0.1);
  CHECK(told == std::vector<std::pair<std::string, double>>{{"laying tube", 0.5}, {"something else", 0.1}});
}
