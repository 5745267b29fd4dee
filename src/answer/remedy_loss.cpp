// What to try where a room asks its floor for too much: less of what it loses most by.
#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "answer/remedy_tries.hpp"

namespace slabwright {
namespace {

/// A part of a room's loss and the tries that cut it down to a share.
struct LossPart {
  double loss_W = 0.0;
  std::function<std::vector<RemedyTry>(double share)> tries;
};

/// A resistance that leaves this share of the loss, as R or in SI.
std::string resistance(double m2K_per_W, System system) {
  return system == System::us ? fmt::format("R-{:.0f}", in_unit(m2K_per_W, "R", Dimension::insulance) + 0.5)
                              : fmt::format("{:.1f} m2K/W", m2K_per_W + 0.05);
}

RemedyTry insulated(const std::string& path, const Insulation& now, double share, System system) {
  const double wanted = std::max(now.resistance_m2K_per_W, 0.2) / std::max(share, 0.02);
  return {path, {resistance(wanted, system), resistance(1.5 * wanted, system)}};
}

std::vector<RemedyTry> tempered(const Design& design, const std::string& room) {
  std::vector<RemedyTry> tries;
  for (std::size_t i = 0; i < design.exhaust.size(); ++i) {
    const bool here = design.exhaust[i].room.empty() || design.exhaust[i].room == room;
    if (here && design.exhaust[i].makeup == Makeup::untempered)
      tries.push_back({fmt::format("exhaust[{}].makeup", i + 1), {"tempered"}});
  }
  return tries;
}

std::vector<RemedyTry> by_area(const Design& design, double share) {
  if (!design.building.heat_loss_W) return {{"building.quality", {"usual", "tight"}}};
  return {{"building.heat_loss",
           typed_down(*design.building.heat_loss_W * share, {1.0, 0.8}, Dimension::power, design.units)}};
}

std::vector<LossPart> parts_of(const Answer& answer, const RoomLoss& room, double over_K) {
  const Design& design = answer.file.design;
  const Building& building = design.building;
  const System system = design.units;
  return {
      {room.exhaust_counted_W_per_K * over_K, [&](double) { return tempered(design, room.name); }},
      {room.by_area_W_per_K * over_K, [&](double share) { return by_area(design, share); }},
      {room.air_W_per_K * over_K,
       [&, system](double share) {
         return std::vector<RemedyTry>{{"building.air_changes", typed_down(building.air_changes_per_s * share,
                                                                           {1.0, 0.6}, Dimension::air_change, system)}};
       }},
      {room.walls_W_per_K * over_K,
       [&, system](double share) {
         return std::vector<RemedyTry>{insulated("building.wall_insulation", building.wall_insulation, share, system)};
       }},
      {room.roof_W_per_K * over_K, [&, system](double share) {
         return std::vector<RemedyTry>{insulated("building.roof_insulation", building.roof_insulation, share, system)};
       }}};
}

}  // namespace

std::vector<RemedyTry> less_loss(const Answer& answer, std::size_t room, double excess_W) {
  // What is left of a part is a little less than it may be: figures are rounded, and a floor's film is no straight
  // line.
  constexpr double spared = 0.95;
  if (!answer.envelope || room >= answer.envelope->room.size()) return {};
  const RoomLoss& loss = answer.envelope->room[room];
  std::vector<LossPart> parts = parts_of(answer, loss, loss.indoor_degC - answer.envelope->outdoor_degC);
  std::stable_sort(parts.begin(), parts.end(),
                   [](const LossPart& a, const LossPart& b) { return a.loss_W > b.loss_W; });
  std::vector<RemedyTry> tries;
  for (const LossPart& part : parts) {
    if (part.loss_W <= excess_W) continue;
    const double share = spared * (1.0 - excess_W / part.loss_W);
    for (RemedyTry& one : part.tries(share)) tries.push_back(std::move(one));
  }
  return tries;
}

}  // namespace slabwright
