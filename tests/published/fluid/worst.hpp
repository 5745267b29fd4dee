// A large table makes one row of the validation page: all its values are compared, the one that holds least well is
// shown.
#pragma once
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "support/published.hpp"

namespace slabwright::test {

struct Compared {
  std::string what;
  std::string printed;
  double ours = 0.0;
};

/// `within` must say its own tolerance, which holds for every value of the table. Worst is judged to a tenth of what is
/// allowed, the first of equals: roundings that differ between C libraries must not choose the row.
inline bool worst_agrees(const Source& source, const std::vector<Compared>& table, const Within& within) {
  const auto tenths_of_allowed = [&](const Compared& one) {
    const double theirs = std::stod(one.printed);
    const double allowed = std::max(within.absolute, within.relative * std::abs(theirs));
    const double tenths = std::floor(10.0 * std::abs(one.ours - theirs) / allowed);
    return std::isnan(tenths) ? HUGE_VAL : tenths;
  };
  REQUIRE_FALSE(table.empty());
  const auto worst = std::max_element(table.begin(), table.end(), [&](const Compared& a, const Compared& b) {
    return tenths_of_allowed(a) < tenths_of_allowed(b);
  });
  return agrees(source, fmt::format("worst of {}: {}", table.size(), worst->what), worst->printed, worst->ours, within);
}

}  // namespace slabwright::test

#define CHECK_WORST_PUBLISHED(...) CHECK(::slabwright::test::worst_agrees(__VA_ARGS__))
