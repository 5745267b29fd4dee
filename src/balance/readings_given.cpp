#include "balance/readings_given.hpp"

#include <algorithm>
#include <numeric>

namespace slabwright {
namespace {

Diagnostic problem(const char* code, std::string sentence) {
  return {Severity::problem, code, "readings", std::move(sentence), {}};
}

bool positive_if_any(const std::optional<double>& x) { return !x || *x > 0.0; }

/// Why they cannot be used; empty where they can.
std::vector<Diagnostic> faults_of(const Plant& plant, const Readings& r) {
  std::vector<Diagnostic> said;
  if (r.port.size() != plant.loops.loop.size())
    said.push_back(problem("readings.count", "there must be a reading for each port; write - where none was taken"));
  if (std::none_of(r.port.begin(), r.port.end(), [](const PortReading& p) { return p.flow_m3_per_s.has_value(); }))
    said.push_back(problem("readings.none", "no flow was read at any port"));
  if (!(r.meter_error_share > 0.0 && r.thermometer_error_K > 0.0 && r.front_error_share > 0.0 &&
        r.pump_error_share >= 0.0 && r.heat_error_share >= 0.0))
    said.push_back(problem("readings.error", "errors of meters, thermometers and times must be above zero"));
  for (const PortReading& p : r.port) {
    if (p.flow_m3_per_s.value_or(0.0) >= 0.0 && positive_if_any(p.front_s)) continue;
    said.push_back(problem("readings.below-zero", "a flow cannot be below zero, nor a time zero"));
    break;
  }
  return said;
}

/// Said where return temperatures were read and cannot be used.
std::optional<LoopReturns> returns_of(const Plant& plant, const Readings& readings, const Conditions& conditions,
                                      std::vector<Diagnostic>& said) {
  const bool read = std::any_of(readings.port.begin(), readings.port.end(),
                                [](const PortReading& p) { return p.return_degC.has_value(); });
  if (readings.supply_degC && plant.floor && conditions.room_degC.size() == plant.design.room.size())
    return LoopReturns(plant, conditions, *readings.supply_degC);
  if (read)
    said.push_back({Severity::note,
                    "readings.no-supply",
                    "readings",
                    "return temperatures are left out: they need the supply temperature and the shop's heat",
                    {}});
  return std::nullopt;
}

double mean(const std::vector<double>& flow) {
  return std::accumulate(flow.begin(), flow.end(), 0.0) / static_cast<double>(flow.size());
}

}  // namespace

std::optional<HeldAgainst> held_against(const Plant& plant, const Readings& readings, const Conditions& conditions,
                                        std::vector<Diagnostic>& said) {
  said = faults_of(plant, readings);
  if (!said.empty()) return std::nullopt;
  auto returns = returns_of(plant, readings, conditions, said);
  ReadNetwork network(plant, returns ? returns->point() : OperatingPoint{}, readings.water_degC);
  const double usual = mean(network.healthy_m3_per_s());
  if (usual > 0.0) return HeldAgainst{std::move(returns), std::move(network), usual};
  said = {no_water_moves()};
  return std::nullopt;
}

std::vector<double> volumes(const Plant& plant) {
  std::vector<double> all;
  for (const Loop& loop : plant.loops.loop)
    all.push_back(loop.length_m * water_content_m3_per_m(tube_of(plant.design)));
  return all;
}

Plant reopened(const Plant& plant) {
  constexpr double wide_open_turns = 1e9;
  Plant open = with_settings(plant, ValveTurns(plant.loops.loop.size(), wide_open_turns), plant.pump_speed_share);
  open.turns.clear();
  return open;
}

Diagnostic no_water_moves() {
  return problem("readings.no-flow", "the plant as drawn moves no water; there is nothing to compare with");
}

void say_unsettled_network(const ReadNetwork& network, std::vector<Diagnostic>& said) {
  if (network.unsettled_at().empty()) return;
  said.push_back({Severity::warning,
                  "readings.not-settled",
                  "readings",
                  "flows of the plant as drawn do not settle, and at {} least of all: take what the readings tell as "
                  "rough.",
                  {network.unsettled_at()}});
}

}  // namespace slabwright
