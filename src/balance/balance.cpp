// Preset balancing: the hardest loop open, every other valve takes what is left over.
#include "slabwright/balance.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "balance/circuit.hpp"
#include "balance/loop_returns.hpp"
#include "balance/meter_scale.hpp"
#include "balance/turn_search.hpp"

namespace slabwright {
namespace {

// Hand wheels are marked, if at all, in quarters.
constexpr double turn_step = 0.25;
// Practice, where no heat is known: meters of this kind are true to about 10 %.
constexpr double band_low_share = 0.10, band_high_share = 0.15;

/// Flow band in which a loop's heat stays within `good_enough_heat_share`. With `units` = UA/(m c) at the aim, heat is
/// in proportion to q (1 - exp(-units / q)) for q times the aim.
struct Band {
  double low, high;
};
double heat_over_aim(double q, double units) { return q * (1.0 - std::exp(-units / q)) / (1.0 - std::exp(-units)); }
Band band_of(double units) {
  if (units <= 0.0) return {1.0 - band_low_share, 1.0 + band_high_share};
  const auto heat = [&](double q) { return heat_over_aim(q, units); };
  const auto edge = [&](double from, double to, double share) {
    return root_in_bracket([&](double q) { return heat(q) - share; }, from, to, {1e-6, 0.0, 100}).x;
  };
  // Half or half again is as far as anybody should drift, whatever the heat says.
  return {edge(0.5, 1.0, 1.0 - good_enough_heat_share), edge(1.0, 1.5, 1.0 + good_enough_heat_share)};
}

double units_of(const Plant& plant, std::size_t loop, double flow_m3_per_s, double water_degC) {
  if (!plant.floor) return 0.0;
  const TubeSize tube = tube_of(plant.design);
  const FluidProperties fluid = properties_of(mixture_of(plant.design.fluid), water_degC);
  const Film film = inside_film(bore_of(tube, plant.loops.loop[loop].length_m), fluid, flow_m3_per_s);
  const double tube_mK_per_W =
      plant.floor->section.wall_mK_per_W + film_resistance_mK_per_W(film, tube.inside_diameter_m);
  const SectionResponse r = respond(plant.floor->section, usual_film_W_per_m2K, tube_mK_per_W);
  double length_m = 0.0;
  for (const Stretch& s : plant.loops.loop[loop].along) length_m += heating_m(s);
  return (r.room_W_per_m_K + r.below_W_per_m_K) * length_m /
         (flow_m3_per_s * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK);
}

double rounded_turns(double exact, double most) {
  return std::clamp(std::round(exact / turn_step) * turn_step, turn_step, most);
}

double most_turns(const Valve& valve) { return valve.points.empty() ? valve.turns : valve.points.back().open_turns; }

/// Settings from what each loop leaves over against the hardest.
void set_ports(const Plant& plant, const Circuit& circuit, const std::vector<double>& aim, Balance& balance) {
  const std::vector<double> asks = circuit.port_pressures_Pa(aim);
  balance.hardest = static_cast<std::size_t>(std::max_element(asks.begin(), asks.end()) - asks.begin());
  const ValveCurve curve = port_valve(plant.design.valve);
  const double most = most_turns(plant.design.valve);
  for (std::size_t i = 0; i < aim.size(); ++i) {
    PortSetting& port = balance.port[i];
    const double open_Pa = circuit.open_valve_Pa(i, aim[i]);
    const double left_over_Pa = asks[balance.hardest] - asks[i];
    port.exact_kv = kv_for(aim[i], open_Pa + left_over_Pa, circuit.water());
    port.exact_turns = turns_for_kv(curve, port.exact_kv).open_turns;
    port.open = i == balance.hardest;
    port.set_turns = port.open ? most : rounded_turns(port.exact_turns, most);
    port.open = port.open || port.set_turns >= most;
    port.authority_share = valve_authority(open_Pa, asks[i] - open_Pa);
    balance.turns.push_back(port.set_turns);
  }
}

bool in_band(const PortSetting& port, double flow_m3_per_s) {
  return flow_m3_per_s >= port.least_m3_per_s && flow_m3_per_s <= port.most_m3_per_s;
}

/// Where all ports open are good enough, nobody should kneel down to turn one.
void leave_open_if_enough(Balance& balance, double wide_open) {
  balance.open_is_enough = std::all_of(balance.port.begin(), balance.port.end(),
                                       [](const PortSetting& port) { return in_band(port, port.open_m3_per_s); });
  if (!balance.open_is_enough) return;
  for (PortSetting& port : balance.port) {
    port.open = true;
    port.set_turns = wide_open;
  }
  balance.turns.assign(balance.port.size(), wide_open);
}

/// Aims and bands of the ports, and what they carry wide open. The solve of that.
NetworkSolution fill_ports(const Plant& plant, const std::vector<double>& aim, double water_degC, Balance& balance) {
  const NetworkSolution before = flows_at(with_settings(plant, {}, balance.pump_speed_share), water_degC);
  for (std::size_t i = 0; i < aim.size(); ++i) {
    PortSetting& port = balance.port[i];
    const Loop& loop = plant.loops.loop[i];
    port.loop = loop.name;
    port.port = loop.port;
    port.length_m = loop.length_m;
    port.aim_m3_per_s = aim[i];
    port.open_m3_per_s = before.flow_m3_per_s[plant.loop_branch[i].at];
    port.exchange_number = units_of(plant, i, aim[i], water_degC);
    const Band band = band_of(port.exchange_number);
    port.least_m3_per_s = band.low * aim[i];
    port.most_m3_per_s = band.high * aim[i];
    balance.aim_m3_per_s += port.aim_m3_per_s;
    balance.total_open_m3_per_s += port.open_m3_per_s;
    const double miss = port.open_m3_per_s / aim[i] - 1.0;
    if (std::abs(miss) <= std::abs(balance.untouched_worst_share)) continue;
    balance.untouched_worst_share = miss;
    balance.untouched_loop = port.loop;
  }
  return before;
}

/// Where rounding each port by itself leaves a loop outside its band, they are searched together.
void take_turns(const ValveTurns& turns, double wide_open, Balance& balance) {
  for (std::size_t i = 0; i < turns.size(); ++i) {
    balance.port[i].set_turns = turns[i];
    balance.port[i].open = i == balance.hardest || turns[i] >= wide_open;
  }
  balance.turns = turns;
}

/// The network solved again with the rounded settings.
NetworkSolution try_settings(const Plant& plant, double water_degC, Balance& balance) {
  balance.total_after_m3_per_s = 0.0;
  const NetworkSolution after = flows_at(with_settings(plant, balance.turns, balance.pump_speed_share), water_degC);
  for (std::size_t i = 0; i < balance.port.size(); ++i) {
    PortSetting& port = balance.port[i];
    port.after_m3_per_s = after.flow_m3_per_s[plant.loop_branch[i].at];
    port.within = in_band(port, port.after_m3_per_s);
    balance.total_after_m3_per_s += port.after_m3_per_s;
  }
  return after;
}

/// Where the boiler's own pump drives the floor's water as well, none is left to hold: the least that a control can be
/// set to (practice).
constexpr double least_hold_Pa = 1e3;

/// Aims that keep the target's proportions, and the pump's speed.
std::vector<double> settle_pump(const Plant& plant, const Circuit& circuit, const FlowTarget& target,
                                Balance& balance) {
  std::vector<double> aim = target.loop_m3_per_s;
  balance.pump_reach_share = circuit.reach_share(aim);
  double share = 1.0;
  if (plant.design.pump.control != PumpMode::constant_speed)
    share = std::min(balance.pump_reach_share, 1.0);
  else if (plant.pump_from == PumpFrom::file)
    share = balance.pump_reach_share;
  else if (balance.pump_reach_share < 1.0)
    share = balance.pump_reach_share;
  else
    balance.pump_speed_share = circuit.speed_for(aim);
  for (double& a : aim) a *= share;
  if (plant.design.pump.control != PumpMode::constant_speed) {
    const double total = std::accumulate(aim.begin(), aim.end(), 0.0);
    balance.hold_Pa = std::max(least_hold_Pa, circuit.duty_Pa(aim));
    balance.hold_m3_per_s = total + circuit.bypassed_m3_per_s(circuit.worst_Pa(aim));
  }
  return aim;
}

/// The lowest speed at which every loop can still be set to its target, and what that spares the pump.
void fill_speed(const Circuit& circuit, const FlowTarget& target, Balance& balance) {
  if (target.from_pump || balance.pump_reach_share < 1.0) return;
  balance.least_speed_share = circuit.speed_for(target.loop_m3_per_s);
  const double full = balance.pump_reach_share;
  std::vector<double> at_full = target.loop_m3_per_s;
  for (double& flow : at_full) flow *= full;
  // Flow times pressure in the water; what the pump takes from the mains follows it nearly in proportion.
  balance.speed_saves_share = 1.0 - balance.duty_Pa / (full * circuit.duty_Pa(at_full));
}

/// Of a network, or of several solved in turn.
template <class Solved>
void say_unsettled(const Solved& solved, const char* when, std::vector<Diagnostic>& said) {
  if (solved.stop == Stop::converged) return;
  said.push_back({Severity::warning,
                  "balance.not-settled",
                  "pump",
                  "{} the flows do not settle, and at {} least of all: take them as rough.",
                  {std::string(when), solved.worst_name}});
}

void say_pump(const Plant& plant, const FlowTarget& target, const Balance& balance, std::vector<Diagnostic>& said) {
  // What the pump moves through open loops is never wholly left once ports are set; nobody asked for it either.
  if (target.from_pump || balance.pump_reach_share >= 0.95) return;
  said.push_back({Severity::warning,
                  "balance.pump-too-weak",
                  "pump",
                  "{} moves only {} of the flow wanted: a stronger pump, shorter loops, or a larger drop.",
                  {plant.pump_name, show(balance.pump_reach_share, Dimension::share, System::us)}});
}

}  // namespace

std::optional<double> heat_share_at(const PortSetting& port, double flow_m3_per_s) {
  if (port.exchange_number <= 0.0 || port.aim_m3_per_s <= 0.0) return std::nullopt;
  if (flow_m3_per_s <= 0.0) return 0.0;
  return heat_over_aim(flow_m3_per_s / port.aim_m3_per_s, port.exchange_number);
}

Plant as_balanced(const Plant& plant, const Balance& balance) {
  if (!balance.hold_Pa) return plant;
  return holding(plant, *balance.hold_Pa, *balance.hold_m3_per_s);
}

Checked<Balance> balance_plant(const Plant& as_piped, const FlowTarget& target, double water_degC) {
  if (target.total_m3_per_s <= 0.0) return {};
  const Circuit circuit(as_piped, water_degC);
  Balance balance;
  balance.port.resize(target.loop_m3_per_s.size());
  const std::vector<double> aim = settle_pump(as_piped, circuit, target, balance);
  const Plant plant = as_balanced(as_piped, balance);
  set_ports(plant, circuit, aim, balance);
  balance.duty_Pa = circuit.duty_Pa(target.loop_m3_per_s);
  fill_speed(circuit, target, balance);
  const NetworkSolution open = fill_ports(plant, aim, water_degC, balance);
  leave_open_if_enough(balance, most_turns(plant.design.valve));
  NetworkSolution set = try_settings(plant, water_degC, balance);
  if (std::any_of(balance.port.begin(), balance.port.end(), [](const PortSetting& p) { return !p.within; })) {
    const double most = most_turns(plant.design.valve);
    take_turns(search_turns(plant, balance, {turn_step, most}, water_degC), most, balance);
    set = try_settings(plant, water_degC, balance);
  }
  TurnedInOrder turned = turned_in_order(with_settings(plant, {}, balance.pump_speed_share), balance, water_degC);
  balance.move = std::move(turned.move);
  std::vector<Diagnostic> said;
  // Reach, speed and duty lean on the source by itself.
  say_unsettled(circuit.source_alone(balance.aim_m3_per_s, balance.pump_speed_share), "in pump and boiler alone", said);
  say_unsettled(open, "with every port open", said);
  say_unsettled(set, "with the ports set", said);
  say_unsettled(turned, "while one port is set after the other", said);
  say_pump(plant, target, balance, said);
  balance.meter_most_m3_per_s = meter_most_m3_per_s(plant.design, balance);
  say_meters(balance, said);
  for (const PortSetting& port : balance.port) {
    if (port.within) continue;
    said.push_back({Severity::warning,
                    "balance.out-of-band",
                    port.loop,
                    "{} gets {} where {} to {} is good enough; its valve cannot do better in quarter turns.",
                    {port.loop, Measured{port.after_m3_per_s, Dimension::flow},
                     Measured{port.least_m3_per_s, Dimension::flow}, Measured{port.most_m3_per_s, Dimension::flow}}});
  }
  return {std::move(balance), std::move(said)};
}

}  // namespace slabwright
