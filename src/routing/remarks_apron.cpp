// Leaders before a manifold: how close they lie, and what spreads them.
#include <fmt/format.h>

#include <algorithm>

#include "density.hpp"
#include "lay_out.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::routing {
namespace {

/// More tube than this warms the floor more than a floor is warmed elsewhere (practice): 2.5 ft on a square foot.
constexpr double most_m_per_m2 = 2.5 / foot_m;
/// Ports this far apart keep leaders of any number of loops to about that; the round figure above one over it.
constexpr double us_pitch_m = 5.0 * inch_m, si_pitch_m = 0.125;

using measured::length;

std::string named(const Design& design, std::size_t row) {
  const std::string& name = design.manifold[row].name;
  if (design.manifold.size() == 1 && (name.empty() || name == "manifold")) return "the manifold";
  return name.empty() ? fmt::format("manifold {}", row + 1) : name;
}

}  // namespace

std::vector<Diagnostic> remarks_on_aprons(const Design& design, const LoopPlan& plan) {
  if (!plan.drawing || plan.drawing->check.apron_m_per_m2 <= most_m_per_m2) return {};
  std::vector<Path> tube;
  for (const Loop& loop : plan.loop) tube.push_back(*loop.path);
  const double spacing_m = plan.drawing->task.spacing_m;
  const std::vector<double> all = densest_squares(spacing_m, plan.drawing->apron, tube);
  const auto densest = std::max_element(all.begin(), all.end());
  const auto row = static_cast<std::size_t>(densest - all.begin());
  const double pitch_m = design.manifold[row].port_pitch_m;
  const double wider_m = design.units == System::us ? us_pitch_m : si_pitch_m;
  Diagnostic close{
      Severity::note,
      "layout.dense-apron",
      fmt::format("manifold[{}]", row + 1),
      "before {} leaders lie {} apart on average, on the densest square {} wide; closer than {} the floor "
      "there grows warm. ",
      {named(design, row), length(1.0 / *densest), length(density_square * spacing_m), length(1.0 / most_m_per_m2)}};
  if (pitch_m < wider_m) {
    close.sentence += "Its ports are {} apart: {} apart, or more manifolds with fewer loops each, would spread them; ";
    close.parts.emplace_back(length(pitch_m));
    close.parts.emplace_back(length(wider_m));
  } else {
    close.sentence += "More manifolds with fewer loops each would spread them; ";
  }
  close.sentence += "foam sleeves on the leaders keep the floor cooler";
  return {close};
}

}  // namespace slabwright::routing
