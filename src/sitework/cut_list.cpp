// The cut list of a plan.
#include <algorithm>
#include <numeric>

#include "slabwright/sitework.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {

std::vector<double> usual_coils_m(System system) {
  if (system == System::si) return {100.0, 120.0, 200.0, 240.0, 500.0};
  return {100.0 * foot_m, 300.0 * foot_m, 500.0 * foot_m, 1000.0 * foot_m};
}

Checked<CutList> cut_list(const Design& design, const LoopPlan& plan) {
  // A poured slab, whose loops are only counted, buys none.
  if (std::any_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.from == LengthFrom::count; }))
    return {std::nullopt, {}};
  std::vector<double> pieces_m, coils_m;
  for (const Loop& loop : plan.loop) pieces_m.push_back(loop.length_m + 2.0 * design.tube.tail_m);
  for (const CoilLength& coil : design.tube.coils) coils_m.push_back(coil.length_m);
  if (coils_m.empty()) coils_m = usual_coils_m(design.units);
  const CoilChoice choice = cut_coils(pieces_m, coils_m);
  if (choice.coil.empty() && !pieces_m.empty()) {
    const double longest_m = *std::max_element(pieces_m.begin(), pieces_m.end());
    return {std::nullopt,
            {{Severity::warning,
              "sitework.no-coil",
              "tube.coils",
              "a loop needs {} in one piece, and the longest coil has {}: no splice may lie in the slab",
              {Measured{longest_m, Dimension::length},
               Measured{*std::max_element(coils_m.begin(), coils_m.end()), Dimension::length}}}}};
  }
  CutList list;
  list.least = choice.least;
  for (std::size_t i = 0; i < choice.coil.size(); ++i) {
    CutCoil coil{0, choice.length_m[i], choice.length_m[i], {}};
    for (const std::size_t row : choice.coil[i]) {
      const double from_m = coil.length_m - coil.left_m;
      coil.piece.push_back({plan.loop[row].name, pieces_m[row], from_m, from_m + pieces_m[row]});
      coil.left_m -= pieces_m[row];
    }
    list.bought_m += coil.length_m;
    list.left_m += coil.left_m;
    list.coil.push_back(std::move(coil));
  }
  std::stable_sort(list.coil.begin(), list.coil.end(),
                   [](const CutCoil& a, const CutCoil& b) { return a.length_m > b.length_m; });
  for (std::size_t i = 0; i < list.coil.size(); ++i) list.coil[i].number = static_cast<int>(i) + 1;
  list.gap_m = std::max(0.0, list.bought_m - choice.bound_m);
  return {std::move(list), {}};
}

}  // namespace slabwright
