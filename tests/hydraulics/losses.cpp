// What branches lose: part by part, and its slope.
#include <cmath>
#include <numbers>

#include "hydraulics/branch_law.hpp"
#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

bool near_a_kink(const HydronicGraph& graph, BranchId branch, double flow, double step) {
  const Liquid& liquid = graph.liquid(branch);
  for (const Element& element : graph.elements(branch)) {
    const Bore* bore = std::get_if<Bore>(&element.shape);
    if (!bore) continue;
    for (const double kink : {2300.0, 4000.0}) {
      const double at =
          kink * std::numbers::pi / 4.0 * bore->inside_diameter_m * liquid.viscosity_Pa_s / liquid.density_kg_per_m3;
      if (std::abs(std::abs(flow) - at) < 2.0 * step) return true;
    }
  }
  return false;
}

}  // namespace

TEST_CASE("the slope of a branch is the derivative of its loss") {
  CHECK(rc::check("central difference", [] {
    const HydronicGraph graph = manifold(random_manifold()).graph;
    const BranchId branch{*rc::gen::inRange<std::size_t>(0, graph.branch_count())};
    const double flow = drawn(1e-5, 4e-4), step = 1e-5 * flow;
    RC_PRE(!near_a_kink(graph, branch, flow, step));
    const double rise =
        branch_loss(graph, branch, flow + step).pressure_Pa - branch_loss(graph, branch, flow - step).pressure_Pa;
    const double slope = branch_loss(graph, branch, flow).slope_Pa_s_per_m3;
    // The third derivative leaves step^2 / flow^2 of the slope, rounding 1e-16 of the pressure over the step.
    const double size = std::abs(branch_loss(graph, branch, flow).pressure_Pa);
    RC_ASSERT(std::abs(rise / (2.0 * step) - slope) <= 1e-8 * slope + 1e-15 * size / step);
  }));
}

TEST_CASE("the parts of a branch add up to its loss") {
  CHECK(rc::check("parts", [] {
    const Manifold made = manifold(random_manifold());
    const double flow = drawn(-1e-4, 4e-4);
    for (std::size_t k = 0; k < made.graph.branch_count(); ++k) {
      double sum = 0.0, size = 0.0;
      for (const PartLoss& part : losses_by_part(made.graph, {k}, flow)) {
        sum += part.pressure_Pa;
        size += std::abs(part.pressure_Pa);
      }
      RC_ASSERT(std::abs(sum - branch_loss(made.graph, {k}, flow).pressure_Pa) <= 1e-12 * size);
    }
  }));
}

TEST_CASE("parts come in the order of the water, each once") {
  const Manifold made = manifold({{{80.0, 1.1}, {60.0, 1.1}}, warm_water, {6.0, 1e-3, 2.0}, 12.0, true});
  const std::vector<PartLoss> parts = losses_by_part(made.graph, made.loop[0], 5e-5);
  REQUIRE(parts.size() == 5);
  CHECK(parts[0].part == Part::balancing_valve);
  CHECK(parts[1].part == Part::leader);
  CHECK(parts[2].part == Part::tube);
  CHECK(parts[1].pressure_Pa == Approx(tube_loss({6.0, 0.012, 7e-6}, warm_water, 5e-5).pressure_Pa));
  CHECK(losses_by_part(made.graph, made.pump, 1e-4).front().pressure_Pa < 0.0);
}

TEST_CASE("adding up elements of a kind changes no loss") {
  CHECK(rc::check("laws", [] {
    const HydronicGraph graph = *rc::gen::inRange(0, 2) == 0 ? manifold(random_manifold()).graph : random_mesh(false);
    BranchLaws laws(graph);
    const double flow = drawn(-4e-4, 4e-4);
    for (std::size_t k = 0; k < graph.branch_count(); ++k) {
      const Loss one = branch_loss(graph, {k}, flow), all = laws.loss(k, flow);
      RC_ASSERT(std::abs(one.pressure_Pa - all.pressure_Pa) <= 1e-12 * (std::abs(one.pressure_Pa) + 1e5));
      RC_ASSERT(std::abs(one.slope_Pa_s_per_m3 - all.slope_Pa_s_per_m3) <= 1e-12 * one.slope_Pa_s_per_m3);
    }
  }));
}

TEST_CASE("a law told as a power is that power, backwards too") {
  HydronicGraph graph;
  const NodeId a = graph.add_node("a"), b = graph.add_node("b");
  const BranchId branch = graph.add_branch(a, b, "boiler", warm_water, {{Part::boiler, PowerLaw{1e9, 1.75}}});
  CHECK(branch_loss(graph, branch, 2e-4).pressure_Pa == Approx(1e9 * std::pow(2e-4, 1.75)));
  CHECK(branch_loss(graph, branch, -2e-4).pressure_Pa == Approx(-1e9 * std::pow(2e-4, 1.75)));
}
