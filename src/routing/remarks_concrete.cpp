// Tube in concrete: what the saw leaves over it, and what codes ask of its cover, its size and its spacing.
#include <fmt/format.h>

#include <algorithm>

#include "lay_out.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::routing {
namespace {

/// A saw is set by hand, and tube floats up a little in the pour (practice): half an inch, 15 mm.
constexpr double us_saw_margin_m = 0.0127, si_saw_margin_m = 0.015;
/// Control joints are sawn a quarter of the slab deep (practice) where nobody says otherwise.
constexpr double usual_saw_share = 0.25;
/// California Mechanical Code 1217.5: tube in a structural slab.
constexpr double least_cover_m = 2.0 * inch_m, most_of_slab_share = 1.0 / 3.0, least_spacing_per_diameter = 3.0;
/// A figure typed in sixteenths of an inch is not too small for a rounding.
constexpr double rounding_m = 2e-4;

using measured::length;

/// The least concrete over the tube that is cut from above.
double concrete_over_tube_m(const Design& design, const TubeSize& tube) {
  return tube_axis_depth_m(design) - 0.5 * tube.outside_diameter_m;
}

void add_saw_cuts(const Design& design, const TubeSize& tube, std::vector<Diagnostic>& said) {
  const double over_m = concrete_over_tube_m(design, tube);
  const double margin_m = design.units == System::us ? us_saw_margin_m : si_saw_margin_m;
  for (std::size_t i = 0; i < design.joint.size(); ++i) {
    const Joint& joint = design.joint[i];
    if (joint.kind != JointKind::sawn) continue;
    const double saw_m = joint.saw_depth_m.value_or(usual_saw_share * floor_thickness_m(design.slab));
    if (saw_m + margin_m <= over_m + rounding_m) continue;
    said.push_back(
        {Severity::failure,
         "joint.saw-near-tube",
         fmt::format("joint[{}]", i + 1),
         "the saw goes {} deep at {}, and only {} of concrete lies over the tube: leave {} between them; lay "
         "the tube deeper or saw less",
         {length(saw_m), joint.name.empty() ? fmt::format("joint {}", i + 1) : joint.name, length(over_m),
          length(margin_m)}});
  }
}

/// Where the concrete is still to be poured.
bool can_be_mended(const LoopPlan& plan) {
  return std::none_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.from == LengthFrom::count; });
}

void add_code(const Design& design, const TubeSize& tube, const LoopPlan& plan, std::vector<Diagnostic>& said) {
  if (design.codes != Codes::north_america) return;
  const Severity severity = can_be_mended(plan) ? Severity::warning : Severity::note;
  const double over_m = concrete_over_tube_m(design, tube);
  if (over_m < least_cover_m - rounding_m) {
    said.push_back({severity,
                    "code.cover",
                    "slab.concrete_above_tube",
                    "{} of concrete over the tube; codes of a structural slab ask for {} (California Mechanical Code "
                    "1217.5)",
                    {length(over_m), length(least_cover_m)}});
  }
  const double slab_m = floor_thickness_m(design.slab);
  if (tube.outside_diameter_m > most_of_slab_share * slab_m + rounding_m) {
    said.push_back({severity,
                    "code.tube-size",
                    "tube.size",
                    "tube {} thick in {} of concrete; codes of a structural slab allow a third (California Mechanical "
                    "Code 1217.5)",
                    {length(tube.outside_diameter_m), length(slab_m)}});
  }
  double spacing_m = design.tube.spacing_m;
  if (plan.drawing)
    spacing_m = std::min(spacing_m, plan.drawing->check.separation_ratio * plan.drawing->task.spacing_m);
  if (spacing_m >= least_spacing_per_diameter * tube.outside_diameter_m - rounding_m) return;
  said.push_back({severity,
                  "code.spacing",
                  "tube.spacing",
                  "tubes lie {} apart; codes of a structural slab ask for three diameters, {}, but near the manifold "
                  "(California Mechanical Code 1217.5)",
                  {length(spacing_m), length(least_spacing_per_diameter * tube.outside_diameter_m)}});
}

}  // namespace

std::vector<Diagnostic> remarks_on_concrete(const Design& design, const LoopPlan& plan) {
  std::vector<Diagnostic> said;
  const TubeSize* tube = find_tube(design.tube.size.name);
  if (!tube || design.slab.thickness_m <= 0.0) return said;
  add_saw_cuts(design, *tube, said);
  add_code(design, *tube, plan, said);
  return said;
}

}  // namespace slabwright::routing
