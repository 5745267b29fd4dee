// Leaders close before a manifold: what is said of them, and what spreads them.
#include <algorithm>

#include "routing/density.hpp"
#include "slabwright/routing.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace slabwright::test;

namespace {

constexpr double foot_m = 0.3048, inch_m = 0.0254;
/// 2.5 ft of tube on a square foot.
constexpr double most_m_per_m2 = 2.5 / foot_m;

std::vector<Diagnostic> said_of(const Design& design) {
  LaidBefore laid;
  auto plan = plan_loops(design, &laid);
  REQUIRE(plan);
  const bool dense = plan.value->drawing->check.apron_m_per_m2 > most_m_per_m2;
  std::erase_if(plan.said, [](const Diagnostic& d) { return d.code != "layout.dense-apron"; });
  CHECK(plan.said.empty() == !dense);
  return plan.said;
}

}  // namespace

TEST_CASE("the densest square of an apron is found where tube lies closest") {
  // Tube 0.1 m apart, a metre long, on the left half of an apron whose other tube lies 0.25 m apart; derived by hand:
  // on a square of 0.4 m lie four lines or more, no line counted beyond its ends.
  std::vector<Path> tube;
  for (int k = 0; k < 10; ++k) tube.push_back({line({0.05 + 0.1 * k, 0.0}, {0.05 + 0.1 * k, 1.0})});
  for (int k = 0; k < 4; ++k) tube.push_back({line({1.125 + 0.25 * k, 0.0}, {1.125 + 0.25 * k, 1.0})});
  const Polygon left{{0, 0}, {1, 0}, {1, 1}, {0, 1}}, right{{1, 0}, {2, 0}, {2, 1}, {1, 1}};
  const auto found = densest_squares(0.2, {left, right, {}}, tube);
  REQUIRE(found.size() == 3);
  CHECK(found[0] == Approx(10.0).epsilon(1e-9));
  CHECK(found[1] == Approx(2.0 * 0.4 / 0.16).epsilon(1e-9));
  CHECK(found[2] == 0.0);
}

TEST_CASE("leaders that lie close are said with what spreads them, and wider ports do") {
  Design design = layout("ten-lines").file.design;
  const auto close = said_of(design);
  REQUIRE(close.size() == 1);
  CHECK(close[0].severity == Severity::note);
  CHECK(close[0].about == "manifold[1]");
  REQUIRE(close[0].parts.size() == 6);
  CHECK(std::get<std::string>(close[0].parts[0]) == "the manifold");
  const auto length = [&](std::size_t k) { return std::get<Measured>(close[0].parts[k]).si; };
  // Measured once: 2.9 ft on a square foot.
  CHECK(length(1) == Approx(foot_m / 2.9).epsilon(0.03));
  CHECK(length(2) == Approx(2.0 * foot_m));
  CHECK(length(3) == Approx(foot_m / 2.5));
  CHECK(length(4) == Approx(2.0 * inch_m));
  CHECK(length(5) == Approx(5.0 * inch_m));
  design.manifold.front().port_pitch_m = 5.0 * inch_m;
  CHECK(said_of(design).empty());
}

TEST_CASE("of several manifolds the one with the closest leaders is named") {
  const auto said = said_of(layout("county-garage").file.design);
  REQUIRE(said.size() == 1);
  // Eight loops leave it, seven each of the others.
  CHECK(said[0].about == "manifold[2]");
}
