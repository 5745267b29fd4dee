#include "envelope/foam.hpp"

#include "slabwright/handbook_materials.hpp"

namespace slabwright::envelope {
namespace {

/// Less resistance than this is no board: it would be thinner than a sheet of paper.
constexpr double least_board_m2K_per_W = 0.01;

}  // namespace

Spoiled spoiled(const FloorInsulation& insulation) {
  return {insulation.wet_share.value_or(0.0), insulation.crushed_share.value_or(0.0)};
}

Spoiled spoiled(const Edge& edge) { return {edge.wet_share.value_or(0.0), edge.crushed_share.value_or(0.0)}; }

std::optional<InsulatingBoard> board_of(const Insulation& insulation, const Spoiled& by) {
  const double thickness_m =
      insulation.resistance_m2K_per_W * find_insulation("XPS")->conductivity_W_per_mK * (1.0 - by.crushed_share);
  const double resistance = insulation.resistance_m2K_per_W * (1.0 - by.crushed_share) / (1.0 + by.wet_share);
  if (resistance < least_board_m2K_per_W) return std::nullopt;
  return InsulatingBoard{resistance, thickness_m};
}

std::optional<InsulatingBoard> board_of(const std::optional<Insulation>& insulation, const Spoiled& by) {
  return insulation ? board_of(*insulation, by) : std::nullopt;
}

std::vector<InsulatingBoard> boards_under(const Design& design) {
  const Spoiled by = spoiled(design.insulation);
  std::vector<InsulatingBoard> boards;
  if (const auto board = board_of(design.insulation.under, by)) boards.push_back(*board);
  for (const Insulation& layer : design.insulation.more_layers) {
    if (const auto board = board_of(layer, by)) boards.push_back(*board);
  }
  return boards;
}

double foam_under_m2K_per_W(const Design& design) {
  double all = 0.0;
  for (const InsulatingBoard& board : boards_under(design)) all += board.resistance_m2K_per_W;
  return all;
}

double foam_under_m(const Design& design) {
  double all_m = 0.0;
  for (const InsulatingBoard& board : boards_under(design)) all_m += board.thickness_m;
  return all_m;
}

}  // namespace slabwright::envelope
