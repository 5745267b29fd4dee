// What to try where a room asks its floor for too much: less of what it loses most by, a cooler room, more tube.
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

/// One figure for the whole building, of which this room's share is less by what is too much.
RemedyTry stated_loss(const Answer& answer, const RoomLoss& room, double excess_W) {
  const double share = 1.0 - excess_W / room.loss_W;
  return {"building.heat_loss",
          typed_down(share * answer.envelope->loss_W, {0.95, 0.6, 0.3}, Dimension::power, answer.file.design.units)};
}

/// "room[2]" of "room[2]", as a number from 0; the first where there is none.
std::size_t row_in(const std::string& about) {
  const std::size_t open = about.find('[');
  return open == std::string::npos ? 0 : static_cast<std::size_t>(std::stoul(about.substr(open + 1))) - 1;
}

/// The warmest that the floor keeps this room within its limit: what is lost and what is given both nearly straight
/// lines over the room's temperature.
double kept_degC(const Answer& answer, const RoomLoss& loss, const RoomFloor& floor) {
  const double gives_W_per_K = floor.given_W_per_m2 * floor.heated_m2 / (floor.limit_degC - loss.indoor_degC);
  return (gives_W_per_K * floor.limit_degC + loss.total_W_per_K * answer.envelope->outdoor_degC + loss.gains_W) /
         (gives_W_per_K + loss.total_W_per_K);
}

RemedyTry kept_cooler(const Answer& answer, std::size_t row, double from_degC, const std::vector<double>& less_K) {
  RemedyTry indoor{indoor_path(answer.file, row), {}};
  for (const double less : less_K)
    indoor.texts.push_back(typed_down(std::max(0.0, from_degC - less), Dimension::degree, answer.file.design.units));
  return indoor;
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
    add_to(tries, part.tries(share));
  }
  // No part of it is enough: all of it together.
  if (!answer.file.design.building.heat_loss_W && loss.loss_W > excess_W)
    tries.push_back(stated_loss(answer, loss, excess_W));
  return tries;
}

std::vector<RemedyTry> warm_floor_tries(const Answer& answer, const Diagnostic& said) {
  const std::size_t row = row_in(said.about);
  if (!answer.envelope || !answer.floor || row >= answer.envelope->room.size()) return {};
  const Design& design = answer.file.design;
  const RoomLoss& loss = answer.envelope->room[row];
  const RoomFloor& floor = answer.floor->room[row];
  if (floor.limit_degC <= loss.indoor_degC) return {kept_cooler(answer, row, floor.limit_degC, {3.0, 8.0})};
  // A little cooler is milder than a whole building made tighter; much cooler is the last way out.
  constexpr double little_K = 4.0;
  const double kept = kept_degC(answer, loss, floor);
  std::vector<RemedyTry> tries{closer_tube(answer)};
  add_to(tries, less_loss(answer, row, floor.shortfall_W));
  const RemedyTry cooler = kept_cooler(answer, row, kept, {0.0, 1.0, 2.5, 5.0});
  const bool milder = kept >= loss.indoor_degC - little_K;
  tries.insert(milder ? tries.begin() + 1 : tries.end(), cooler);
  constexpr double usual_from_walls_m = 0.16;
  if (design.tube.from_walls_m > usual_from_walls_m)
    tries.push_back({"tube.from_walls", {design.units == System::us ? "6 in" : "150 mm"}});
  const std::string path = fmt::format("room[{}]", row + 1);
  if (design.room.size() > 1 && row_is_given(answer.file, path)) tries.push_back({path + ".heated_floor", {"false"}});
  return tries;
}

}  // namespace slabwright
