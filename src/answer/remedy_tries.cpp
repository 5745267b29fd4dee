#include "answer/remedy_tries.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/handbook_practice.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using Tries = std::vector<RemedyTry>;

/// Two figures; a degree whole.
std::string typed(double si, Dimension dimension, System system, bool up) {
  constexpr double slack = 1e-9;  // what stands on a step stays there
  const Shown unit = shown(dimension, system);
  const double value = in_unit(si, unit.unit, dimension);
  double step = 1.0;
  int decimals = 0;
  if (dimension != Dimension::degree && value > 0.0) {
    for (; step * 100.0 <= value; step *= 10.0) continue;
    for (; step * 10.0 > value && decimals < 6; step /= 10.0) ++decimals;
  }
  const double steps = up ? std::ceil(value / step - slack) : std::floor(value / step + slack);
  return show_as(from_unit(steps * step, unit.unit, dimension), dimension, unit.unit, decimals);
}

std::string kilowatts(double power_W) { return show_as(std::ceil(power_W / 100.0) * 100.0, Dimension::power, "kW", 1); }

/// "room[2]" of "room[2]", as a number from 0; the first where there is none.
std::size_t row_in(const std::string& about) {
  const std::size_t open = about.find('[');
  return open == std::string::npos ? 0 : static_cast<std::size_t>(std::stoul(about.substr(open + 1))) - 1;
}

std::vector<std::string> hotter(double from_degC, const std::vector<double>& by_K, System system) {
  std::vector<std::string> texts;
  for (const double by : by_K) texts.push_back(typed_up(from_degC + by, Dimension::degree, system));
  return texts;
}

RemedyTry boiler_flow(const Answer& answer) {
  const double floor_m3_per_s = answer.point ? answer.point->flow_m3_per_s : 0.0;
  return {"boiler.flow", typed_up(floor_m3_per_s, {1.1, 1.6, 2.5}, Dimension::flow, answer.file.design.units)};
}

Tries for_cool_boiler(const Answer& answer, const Diagnostic& said) {
  if (!answer.point) return {};
  const System system = answer.file.design.units;
  const double wanted_degC = std::max(answer.point->supply_degC, answer.point->source.boiler_degC);
  RemedyTry hottest{"boiler.hottest", hotter(wanted_degC, {0.5, 3.0, 8.0, 15.0}, system)};
  if (said.about != "boiler.flow") return {std::move(hottest)};
  return {boiler_flow(answer), std::move(hottest)};
}

Tries for_injection(const Answer& answer) {
  if (!answer.point) return {};
  const double hottest_degC = std::max(answer.point->supply_degC, answer.file.design.boiler.hottest_degC);
  return {{"boiler.hottest", hotter(hottest_degC, {4.0, 10.0, 20.0, 35.0}, answer.file.design.units)},
          boiler_flow(answer),
          {"boiler.piping", {"closely spaced tees", "mixing valve"}}};
}

/// Where loops are known by their count alone: more of them, and shorter.
Tries more_loops(const Answer& answer) {
  Tries tries;
  const std::vector<Manifold>& manifolds = answer.file.design.manifold;
  for (std::size_t i = 0; i < manifolds.size(); ++i) {
    RemedyTry loops{fmt::format("manifold[{}].loops", i + 1), {}};
    for (const double by : {2.0, 4.0, 8.0})
      if (manifolds[i].loops_number && by * *manifolds[i].loops_number <= 60.0)
        loops.texts.push_back(fmt::format("{:.0f}", by * *manifolds[i].loops_number));
    if (!loops.texts.empty()) tries.push_back(std::move(loops));
  }
  return tries;
}

/// Strong enough for the hardest loop at the flow wanted, with something to spare.
RemedyTry stronger_pump(const Answer& answer) {
  const System system = answer.file.design.units;
  const Balance& balance = *answer.balance;
  const double head_m = balance.duty_Pa / (1000.0 * gravity_m_per_s2);
  const double flow_m3_per_s = balance.aim_m3_per_s / std::clamp(balance.pump_reach_share, 1e-3, 1.0);
  RemedyTry pump{"pump.points", {}};
  for (const double by : {1.2, 1.8, 3.0}) {
    std::string text;
    for (const auto& [head, flow] : {std::pair{1.4, 0.0}, {1.0, 1.3}, {0.1, 2.6}})
      text += (text.empty() ? "" : "; ") + typed_up(by * head * head_m, Dimension::head, system) + " at " +
              typed_up(flow * flow_m3_per_s, Dimension::flow, system);
    pump.texts.push_back(text);
  }
  return pump;
}

Tries for_weak_pump(const Answer& answer) {
  const System system = answer.file.design.units;
  Tries tries = more_loops(answer);
  // A bypass that opens below what the loops ask for takes the water of any pump.
  const double duty_Pa = answer.balance->duty_Pa;
  if (answer.file.design.pump.bypass_opening_Pa.value_or(duty_Pa) < duty_Pa)
    tries.push_back({"pump.bypass_opening", typed_up(duty_Pa, {1.3, 2.0}, Dimension::pressure, system)});
  tries.push_back(stronger_pump(answer));
  if (answer.file.design.pump.flow_m3_per_s)
    tries.push_back({"pump.flow", typed_down(*answer.file.design.pump.flow_m3_per_s * answer.balance->pump_reach_share,
                                             {0.98, 0.8}, Dimension::flow, system)});
  tries.push_back(
      {"pump.drop", typed_up(std::min(40.0, answer.file.design.pump.drop_K / answer.balance->pump_reach_share),
                             {1.0, 1.3}, Dimension::rise, system)});
  return tries;
}

/// The maker's table with its turns spread out.
std::string finer_table(const Valve& valve, double by, System system) {
  std::string text;
  for (ValvePoint point : valve.points) {
    point.open_turns *= by;
    text += (text.empty() ? "" : "; ") + write_words(point, system);
  }
  return text;
}

Tries for_valve(const Answer& answer) {
  const Valve& valve = answer.file.design.valve;
  const System system = answer.file.design.units;
  if (!valve.points.empty())
    return {{"valve.points",
             {finer_table(valve, 2.0, system), finer_table(valve, 4.0, system), finer_table(valve, 10.0, system)}}};
  const auto turns = [&](double by) { return fmt::format("{:.0f}", std::min(30.0, by * valve.turns)); };
  return {
      {"valve.coefficient",
       {fmt::format("Kv {:.2f}", 0.6 * valve.coefficient_kv), fmt::format("Kv {:.2f}", 0.35 * valve.coefficient_kv)}},
      {"valve.turns", {turns(2.0), turns(4.0), turns(6.0)}},
      {"valve.shape", {"equal percentage"}},
      {"valve.coefficient",
       {fmt::format("Kv {:.2f}", 0.2 * valve.coefficient_kv), fmt::format("Kv {:.2f}", 1.8 * valve.coefficient_kv)}}};
}

/// The warmest that the floor keeps this room within its limit: what is lost and what is given both nearly straight
/// lines over the room's temperature.
Tries for_warm_floor(const Answer& answer, std::size_t row) {
  if (!answer.envelope || !answer.floor || row >= answer.envelope->room.size()) return {};
  const RoomLoss& loss = answer.envelope->room[row];
  const RoomFloor& floor = answer.floor->room[row];
  const double below_limit_K = floor.limit_degC - loss.indoor_degC;
  if (below_limit_K <= 0.0)
    return {{indoor_path(answer.file, row),
             {typed_down(floor.limit_degC - 3.0, Dimension::degree, answer.file.design.units),
              typed_down(floor.limit_degC - 8.0, Dimension::degree, answer.file.design.units)}}};
  const double gives_W_per_K = floor.given_W_per_m2 * floor.heated_m2 / below_limit_K;
  const double kept_degC =
      (gives_W_per_K * floor.limit_degC + loss.total_W_per_K * answer.envelope->outdoor_degC + loss.gains_W) /
      (gives_W_per_K + loss.total_W_per_K);
  Tries tries = less_loss(answer, row, floor.shortfall_W);
  RemedyTry indoor{indoor_path(answer.file, row), {}};
  for (const double less_K : {0.0, 1.0, 2.5, 5.0})
    indoor.texts.push_back(typed_down(std::max(0.0, kept_degC - less_K), Dimension::degree, answer.file.design.units));
  tries.push_back(std::move(indoor));
  return tries;
}

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

/// Too little water, too much between water and room, or a room that asks for more than its tube can give.
Tries for_hot_supply(const Answer& answer) {
  if (!answer.point || !answer.envelope) return {};
  Tries tries = more_loops(answer);
  if (answer.balance && answer.balance->pump_reach_share < 0.9) tries.push_back(stronger_pump(answer));
  const Tries nearer = nearer_water(answer);
  tries.insert(tries.end(), nearer.begin(), nearer.end());
  const std::size_t room = neediest_room(answer);
  const std::string row = fmt::format("room[{}]", room + 1);
  tries.push_back(cooler_room(answer, room));
  if (answer.file.design.room.size() > 1 && row_is_given(answer.file, row))
    tries.push_back({row + ".heated_floor", {"false"}});
  return tries;
}

Tries for_frozen_start(const Answer& answer) {
  const Mixture mixture = mixture_of(answer.file.design.fluid);
  const double freezes_degC = mixture.glycol_volume_share > 0.0 ? freezing_point_degC(mixture) : 0.0;
  return {{"fluid.start", hotter(freezes_degC, {0.5, 2.0}, answer.file.design.units)}};
}

Tries for_expansion(const Answer& answer) {
  const Design& design = answer.file.design;
  return {{"pressure.relief", typed_up(design.pressure.fill_Pa, {1.5, 2.0, 3.0}, Dimension::pressure, design.units)},
          {"pressure.fill", typed_down(design.pressure.relief_Pa, {0.5, 0.3}, Dimension::pressure, design.units)}};
}

Tries for_tube_in_slab(const Answer& answer) {
  const Design& design = answer.file.design;
  const TubeSize* tube = find_tube(design.tube.size.name);
  if (!tube) return {};
  const double spare_m = design.slab.thickness_m - tube->outside_diameter_m;
  return {{"slab.concrete_above_tube", typed_down(spare_m, {0.5, 0.3}, Dimension::length, design.units)}};
}

Tries for_circuits(const Answer& answer) {
  Tries tries;
  if (answer.file.design.pump.pumps > 1) tries.push_back({"pump.pumps", {"1"}});
  tries.push_back(boiler_flow(answer));
  tries.push_back({"pump.together", {"in series"}});
  tries.push_back({"pump.control", {"constant speed"}});
  tries.push_back({"boiler.piping", {"closely spaced tees", "direct"}});
  return tries;
}

}  // namespace

std::string typed_up(double si, Dimension dimension, System system) { return typed(si, dimension, system, true); }
std::string typed_down(double si, Dimension dimension, System system) { return typed(si, dimension, system, false); }

std::vector<std::string> typed_up(double si, const std::vector<double>& by, Dimension dimension, System system) {
  std::vector<std::string> texts;
  for (const double times : by) texts.push_back(typed_up(times * si, dimension, system));
  return texts;
}

std::vector<std::string> typed_down(double si, const std::vector<double>& by, Dimension dimension, System system) {
  std::vector<std::string> texts;
  for (const double times : by) texts.push_back(typed_down(times * si, dimension, system));
  return texts;
}

std::string indoor_path(const DesignFile& file, std::size_t room) {
  const std::string row = fmt::format("room[{}]", room + 1);
  const bool own = file.design.room[room].indoor_degC.has_value();
  return own && row_is_given(file, row) ? row + ".indoor" : "climate.indoor";
}

bool row_is_given(const DesignFile& file, const std::string& row) {
  return std::any_of(file.given.begin(), file.given.end(),
                     [&](const std::string& path) { return path.compare(0, row.size() + 1, row + ".") == 0; });
}

RemedyTry larger_boilers(const Answer& answer) {
  const Design& design = answer.file.design;
  double wanted_W = answer.freeze ? answer.freeze->hold_W : 0.0, stated_over_given = 1.0;
  if (answer.sizes) wanted_W = std::max(wanted_W, answer.sizes->boiler.floor_W);
  // An element on another voltage than its own gives another power than its plate says.
  if (answer.sizes && design.boiler.power_W && answer.sizes->boiler.power_W > 0.0)
    stated_over_given = *design.boiler.power_W / answer.sizes->boiler.power_W;
  RemedyTry boilers{"boiler.power", {}};
  for (const double by : {1.02, 1.5, 3.0, 8.0}) {
    const double power_W = by * stated_over_given * wanted_W;
    const auto step = next_boiler_W(power_W, design.units == System::us ? Customary::us : Customary::si);
    boilers.texts.push_back(kilowatts(step.value_or(power_W)));
  }
  return boilers;
}

std::vector<RemedyTry> remedy_tries(const Answer& answer, const Diagnostic& said) {
  const std::string& code = said.code;
  const auto is = [&](std::string_view word) { return code == word; };
  if (code.compare(0, 7, "layout.") == 0) return layout_tries(answer, said);
  if (code.compare(0, 7, "freeze.") == 0) return frost_tries(answer, said);
  if (is("plant.boiler-too-small")) return {larger_boilers(answer)};
  if (is("plant.boiler-too-cool")) return for_cool_boiler(answer, said);
  if (is("plant.injection-short")) return for_injection(answer);
  if (is("plant.no-boiler-water") || is("plant.pump-stands")) return for_circuits(answer);
  if (is("plant.not-settled") || is("balance.not-settled")) return for_circuits(answer);
  if (is("plant.supply-too-hot")) return for_hot_supply(answer);
  if (is("plant.start-frozen")) return for_frozen_start(answer);
  if (is("plant.no-room-for-expansion")) return for_expansion(answer);
  if (is("floor.too-warm")) return for_warm_floor(answer, row_in(said.about));
  if (is("floor.no-tube")) return {{said.about + ".heated_floor", {"false"}}};
  if (is("balance.pump-too-weak") && answer.balance) return for_weak_pump(answer);
  if (is("balance.out-of-band")) return for_valve(answer);
  if (is("slab.tube-does-not-fit")) return for_tube_in_slab(answer);
  const System system = answer.file.design.units;
  if (is("tube.leader-too-long"))
    return {{"tube.leader", typed_down(std::get<Measured>(said.parts[1]).si, {0.2, 0.1}, Dimension::length, system)}};
  if (is("loops.no-floor")) return {{"slab.size", {system == System::us ? "36 x 30 ft" : "11 x 9 m"}}};
  return {};
}

}  // namespace slabwright
