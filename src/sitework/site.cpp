// Materials and stake-out of a design.
#include <algorithm>

#include "slabwright/sitework.hpp"
#include "slabwright/sitework_guide.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

bool all_drawn(const LoopPlan& plan) {
  return !plan.loop.empty() && std::all_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.path; });
}

int ports_of(const Design& design, const LoopPlan& plan, std::size_t manifold) {
  const auto loops = static_cast<int>(
      std::count_if(plan.loop.begin(), plan.loop.end(), [&](const Loop& l) { return l.manifold == manifold; }));
  const auto ports = design.manifold[manifold].ports_number;
  return ports ? std::max(loops, static_cast<int>(*ports)) : loops + 1;
}

}  // namespace

std::optional<Materials> materials_of(const Design& design, const LoopPlan& plan) {
  // A poured slab, whose loops are only counted, needs none.
  if (std::any_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.from == LengthFrom::count; }))
    return std::nullopt;
  const LayingPractice practice = laying_practice(design.units);
  Materials all;
  all.drawn = all_drawn(plan);
  all.waste_share = practice.waste_share;
  all.sleeve_m = practice.sleeve_m;
  all.tie_m = practice.tie_m;
  all.loops_number = static_cast<int>(plan.loop.size());
  all.bend_supports_number = 2 * all.loops_number;
  all.manifolds_number = static_cast<int>(design.manifold.size());
  for (std::size_t m = 0; m < design.manifold.size(); ++m) all.ports_number += ports_of(design, plan, m);
  for (const Loop& loop : plan.loop) {
    all.tube_m += loop.length_m + 2.0 * design.tube.tail_m;
    const int ties = loop.path ? ties_along(*loop.path, practice.tie_m)
                               : ties_by_length(loop.length_m, loop.patch_m2, design.tube.spacing_m, practice.tie_m);
    all.loop.push_back({loop.name, ties});
    all.ties_number += ties;
    all.sleeves_number += static_cast<int>(loop.crossing.size());
  }
  const FloorShape floor = floor_shape(design.slab);
  const double with_waste = 1.0 + practice.waste_share;
  if (design.insulation.under.resistance_m2K_per_W > 0.0) all.foam_m2 = with_waste * floor.area_m2;
  if (design.edge.insulation.resistance_m2K_per_W > 0.0) {
    const double edge_m = design.slab.exposed_perimeter_m.value_or(floor.perimeter_m);
    all.edge_foam_m2 = with_waste * edge_m * design.edge.depth_m;
  }
  return all;
}

std::optional<StakeOut> stake_out(const Design& design, const LoopPlan& plan) {
  const auto walls = told_from(design, std::nullopt);
  if (!all_drawn(plan) || !walls) return std::nullopt;
  StakeTask task;
  task.first = {walls->first.name, walls->first.from, walls->first.to};
  task.second = {walls->second.name, walls->second.from, walls->second.to};
  task.step_m = design.units == System::us ? 0.25 * inch_m : 0.005;
  for (const Loop& loop : plan.loop) {
    task.name.push_back(loop.name);
    task.loop.push_back(*loop.path);
  }
  return stake_out(task);
}

}  // namespace slabwright
