// What to try where loops get too little or too much water: their length, the pump, the valves.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "answer/remedy_tries.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using Tries = std::vector<RemedyTry>;

/// Where loops are known by their count alone.
Tries more_loops(const Design& design) {
  Tries tries;
  for (std::size_t i = 0; i < design.manifold.size(); ++i) {
    RemedyTry loops{fmt::format("manifold[{}].loops", i + 1), {}};
    const double now = design.manifold[i].loops_number.value_or(0.0);
    for (const double by : {2.0, 4.0, 8.0})
      if (now > 0.0 && by * now <= 60.0) loops.texts.push_back(fmt::format("{:.0f}", by * now));
    if (!loops.texts.empty()) tries.push_back(std::move(loops));
  }
  return tries;
}

/// The maker's table with each Kv in proportion.
std::string other_table(const Valve& valve, double by_kv) {
  std::string text;
  for (const ValvePoint& point : valve.points)
    text += fmt::format("{}Kv {:.3g} at {:g} turns", text.empty() ? "" : "; ", by_kv * point.coefficient_kv,
                        point.open_turns);
  return text;
}

RemedyTry smaller_valve(const Valve& valve, const std::vector<double>& by) {
  RemedyTry one{"valve.coefficient", {}};
  for (const double times : by)
    one.texts.push_back(fmt::format("Kv {:.2f}", std::max(0.05, times * valve.coefficient_kv)));
  return one;
}

/// Another valve of the usual shapes; of one with a maker's table a smaller one of its kind.
Tries other_valves(const Valve& valve) {
  if (!valve.points.empty()) return {{"valve.points", {other_table(valve, 0.6), other_table(valve, 0.35)}}};
  const auto turns = [&](double by) { return fmt::format("{:.0f}", std::min(30.0, by * valve.turns)); };
  return {smaller_valve(valve, {0.6, 0.35}),
          {"valve.turns", {turns(1.5), turns(2.0)}},
          {"valve.shape", {"equal percentage"}},
          smaller_valve(valve, {0.2, 1.8, 0.05})};
}

/// All the floor gets too much or too little: no valve's fault.
Tries for_total(const Answer& answer) {
  const std::vector<PortSetting>& ports = answer.balance->port;
  const auto all = [&](auto is) { return std::all_of(ports.begin(), ports.end(), is); };
  if (all([](const PortSetting& port) { return port.after_m3_per_s < port.least_m3_per_s; }))
    return {stronger_pump(answer)};
  if (answer.file.design.boiler.piping == BoilerPiping::tees &&
      all([](const PortSetting& port) { return port.after_m3_per_s > port.most_m3_per_s; }))
    return {boiler_flow(answer), {"boiler.piping", {"separator"}}};
  return {};
}

}  // namespace

std::vector<RemedyTry> usual_loops(const Design& design) {
  const TubeSize* tube = find_tube(design.tube.size.name);
  if (!tube || design.tube.longest_loop_m.value_or(0.0) <= tube->longest_loop_m) return {};
  return {{"tube.longest_loop", {typed_down(tube->longest_loop_m, Dimension::length, design.units)}}};
}

std::vector<RemedyTry> shorter_loops(const Answer& answer) {
  Tries tries = more_loops(answer.file.design);
  if (!tries.empty() || !answer.file.design.loop.empty() || !answer.loops) return tries;
  double longest_m = 0.0;
  for (const Loop& loop : answer.loops->loop) longest_m = std::max(longest_m, loop.length_m);
  const std::vector<double> by = answer.loops->drawing ? std::vector{0.6, 0.35} : std::vector{0.6, 0.35, 0.2};
  return {{"tube.longest_loop", typed_down(longest_m, by, Dimension::length, answer.file.design.units)}};
}

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

std::vector<RemedyTry> wider_valves(const Answer& answer) {
  constexpr double usual_return_kv = 2.0, usual_port_kv = 1.1, chokes_share = 0.5;
  const Valve& valve = answer.file.design.valve;
  Tries tries;
  if (valve.return_coefficient_kv < chokes_share * usual_return_kv)
    tries.push_back({"valve.return_coefficient", {"Kv 2.0"}});
  const double open_kv = open_port_kv(valve);
  if (open_kv >= chokes_share * usual_port_kv) return tries;
  if (valve.points.empty())
    tries.push_back({"valve.coefficient", {"Kv 1.1"}});
  else
    tries.push_back({"valve.points", {other_table(valve, usual_port_kv / open_kv)}});
  return tries;
}

std::vector<RemedyTry> weak_pump_tries(const Answer& answer, const Diagnostic&) {
  if (!answer.balance) return {};
  const Design& design = answer.file.design;
  const System system = design.units;
  const bool drawn = answer.loops && answer.loops->drawing;
  Tries tries = usual_loops(design);
  add_to(tries, wider_valves(answer));
  if (!drawn) add_to(tries, shorter_loops(answer));
  // A bypass that opens below what the loops ask for takes the water of any pump.
  const double duty_Pa = answer.balance->duty_Pa;
  if (design.pump.bypass_opening_Pa.value_or(duty_Pa) < duty_Pa)
    tries.push_back({"pump.bypass_opening", typed_up(duty_Pa, {1.3, 2.0}, Dimension::pressure, system)});
  tries.push_back(stronger_pump(answer));
  const double reach_share = std::max(answer.balance->pump_reach_share, 1e-3);
  if (design.pump.flow_m3_per_s)
    tries.push_back(
        {"pump.flow", typed_down(*design.pump.flow_m3_per_s * reach_share, {0.98, 0.8}, Dimension::flow, system)});
  tries.push_back(
      {"pump.drop", typed_up(std::min(40.0, design.pump.drop_K / reach_share), {1.0, 1.3}, Dimension::rise, system)});
  if (drawn) add_to(tries, shorter_loops(answer));
  return tries;
}

std::vector<RemedyTry> out_of_band_tries(const Answer& answer, const Diagnostic&) {
  if (!answer.balance) return {};
  Tries tries = for_total(answer);
  add_to(tries, other_valves(answer.file.design.valve));
  add_to(tries, shorter_loops(answer));
  return tries;
}

}  // namespace slabwright
