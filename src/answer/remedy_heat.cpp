// What to try where water is too cool, too hot, or does not come: the boiler, its circuit, what keeps heat from a room.
#include <fmt/format.h>

#include <algorithm>

#include "answer/remedy_tries.hpp"
#include "slabwright/fluid.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using Tries = std::vector<RemedyTry>;

/// The room that gets the least of what it wants.
std::size_t neediest_room(const Answer& answer) {
  std::size_t neediest = 0;
  double least_share = 1e300;
  for (std::size_t i = 0; i < answer.point->room_up_W.size(); ++i) {
    const double wanted_W = answer.envelope->room[i].wanted_W;
    if (wanted_W <= 0.0 || answer.point->room_up_W[i] / wanted_W >= least_share) continue;
    least_share = answer.point->room_up_W[i] / wanted_W;
    neediest = i;
  }
  return neediest;
}

RemedyTry cooler_room(const Answer& answer, std::size_t room) {
  const Design& design = answer.file.design;
  RemedyTry cooler{indoor_path(answer.file, room), {}};
  const double now_degC = indoor_of(design, design.room[room]), outdoor_degC = answer.envelope->outdoor_degC;
  for (const double left : {0.85, 0.65, 0.4, 0.2})
    cooler.texts.push_back(
        typed_down(std::max(0.0, outdoor_degC + left * (now_degC - outdoor_degC)), Dimension::degree, design.units));
  return cooler;
}

/// What stands between water and room.
Tries nearer_water(const Answer& answer) {
  const Design& design = answer.file.design;
  Tries tries;
  if (design.slab.covering.resistance_m2K_per_W > 0.0) tries.push_back({"slab.covering", {"none"}});
  // A drawn floor would be laid anew with each, for seconds where tube lies close.
  if (!answer.loops->drawing)
    tries.push_back({"tube.spacing", typed_down(design.tube.spacing_m, {0.7, 0.4}, Dimension::length, design.units)});
  if (design.slab.concrete_above_tube_m)
    tries.push_back({"slab.concrete_above_tube",
                     typed_down(*design.slab.concrete_above_tube_m, {0.5}, Dimension::length, design.units)});
  if (design.slab.mats_share) tries.push_back({"slab.mats", {"0 %"}});
  if (design.slab.conductivity_W_per_mK < 1.5) tries.push_back({"slab.conductivity", {"1.75 W/mK"}});
  if (design.tube.conductivity_W_per_mK) tries.push_back({"tube.conductivity", {"0.38 W/mK"}});
  return tries;
}

/// So much water as carries the heat at the drop that is wanted, where the file asks for less; a smaller drop, where
/// the flow follows it.
Tries more_water(const Answer& answer) {
  const Design& design = answer.file.design;
  if (!design.pump.flow_m3_per_s)
    return {{"pump.drop", typed_down(design.pump.drop_K, {0.6, 0.3}, Dimension::rise, design.units)}};
  const FluidProperties water = properties_of(mixture_of(design.fluid), answer.point->supply_degC);
  const double carries_m3_per_s =
      answer.floor->tube_heat_W / (water.density_kg_per_m3 * water.specific_heat_J_per_kgK * design.pump.drop_K);
  if (carries_m3_per_s <= *design.pump.flow_m3_per_s) return {};
  return {{"pump.flow", typed_up(carries_m3_per_s, {1.0, 1.8}, Dimension::flow, design.units)}};
}

/// Less heat for a room that asks for more than its tube can give.
Tries less_wanted(const Answer& answer) {
  const std::size_t room = neediest_room(answer);
  const std::string row = fmt::format("room[{}]", room + 1);
  Tries tries{cooler_room(answer, room)};
  if (answer.file.design.room.size() > 1 && row_is_given(answer.file, row))
    tries.push_back({row + ".heated_floor", {"false"}});
  for (const double share : {0.45, 0.85})
    add_to(tries, less_loss(answer, room, share * answer.envelope->room[room].loss_W));
  return tries;
}

/// Where tube is drawn each of these lays it anew, for seconds where it lies close.
Tries laid_otherwise(const Answer& answer) {
  const Design& design = answer.file.design;
  Tries tries = shorter_loops(answer);
  tries.push_back({"tube.spacing", typed_down(design.tube.spacing_m, {0.7}, Dimension::length, design.units)});
  return tries;
}

/// Too little water, too much between water and room, or a room that asks for more than its tube can give.
Tries cooler_supply(const Answer& answer) {
  if (!answer.point || !answer.envelope || !answer.floor || !answer.loops) return {};
  Tries tries = usual_loops(answer.file.design);
  tries.push_back(closer_tube(answer));
  add_to(tries, wider_valves(answer));
  if (!answer.loops->drawing) add_to(tries, shorter_loops(answer));
  if (answer.balance && answer.balance->pump_reach_share < 0.9) tries.push_back(stronger_pump(answer));
  for (Tries more : {more_water(answer), nearer_water(answer), less_wanted(answer)}) add_to(tries, std::move(more));
  return tries;
}

}  // namespace

RemedyTry closer_tube(const Answer& answer) {
  const Design& design = answer.file.design;
  RemedyTry closer{"tube.spacing", {}};
  const bool us = design.units == System::us;
  for (const auto& [spacing_m, text] :
       {std::pair{foot_m, us ? "12 in" : "300 mm"}, {0.2286, us ? "9 in" : "225 mm"}, {0.1524, us ? "6 in" : "150 mm"}})
    if (design.tube.spacing_m > 1.1 * spacing_m) closer.texts.push_back(text);
  return closer;
}

RemedyTry boiler_flow(const Answer& answer) {
  const double floor_m3_per_s = answer.point ? answer.point->flow_m3_per_s : 0.0;
  const double least_m3_per_s = answer.file.design.boiler.least_flow_m3_per_s.value_or(0.0);
  return {"boiler.flow", typed_up(std::max(floor_m3_per_s, least_m3_per_s), {1.1, 1.6, 2.5}, Dimension::flow,
                                  answer.file.design.units)};
}

std::vector<RemedyTry> cool_boiler_tries(const Answer& answer, const Diagnostic& said) {
  if (!answer.point) return {};
  // Hotter than a floor may have it is no way out.
  if (any_code(answer.said, "plant.supply-too-hot")) return cooler_supply(answer);
  const double wanted_degC = std::max(answer.point->supply_degC, answer.point->source.boiler_degC);
  Tries tries{closer_tube(answer)};
  if (said.about == "boiler.flow") tries.push_back(boiler_flow(answer));
  tries.push_back({"boiler.hottest", typed_above(wanted_degC, {0.5, 3.0, 8.0, 15.0}, answer.file.design.units)});
  return tries;
}

std::vector<RemedyTry> injection_tries(const Answer& answer, const Diagnostic&) {
  if (!answer.point) return {};
  const double hottest_degC = std::max(answer.point->supply_degC, answer.file.design.boiler.hottest_degC);
  return {{"boiler.hottest", typed_above(hottest_degC, {4.0, 10.0, 20.0, 35.0}, answer.file.design.units)},
          boiler_flow(answer),
          {"boiler.piping", {"closely spaced tees", "mixing valve"}}};
}

std::vector<RemedyTry> hot_supply_tries(const Answer& answer, const Diagnostic&) {
  Tries tries = cooler_supply(answer);
  if (!tries.empty() && answer.loops->drawing) add_to(tries, laid_otherwise(answer));
  return tries;
}

std::vector<RemedyTry> circuit_tries(const Answer& answer, const Diagnostic&) {
  Tries tries;
  if (answer.file.design.pump.pumps > 1) tries.push_back({"pump.pumps", {"1"}});
  tries.push_back(boiler_flow(answer));
  tries.push_back({"pump.together", {"in series"}});
  tries.push_back({"pump.control", {"constant speed"}});
  tries.push_back({"boiler.piping", {"closely spaced tees", "direct"}});
  return tries;
}

}  // namespace slabwright
