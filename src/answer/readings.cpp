// Readings brought along, held against the plant.
#include <algorithm>

#include "answer/pass.hpp"

namespace slabwright {
namespace {

// Which pump stands there and how fast it turns is our guess: its flow may be half as much again.
constexpr double guessed_pump_error_share = 0.4;
// Water of a manifold that is read with nothing said about heat.
constexpr double usual_water_degC = 35.0;

/// Mean in the loops: as said, else from the temperatures read, else as the balance has it.
double water_of(const MeterSheet& sheet, const Readings& readings, const FlowTarget& target) {
  if (sheet.water_degC) return *sheet.water_degC;
  double sum = 0.0;
  int count = 0;
  for (const PortReading& port : readings.port) {
    if (!port.return_degC) continue;
    sum += *port.return_degC;
    ++count;
  }
  if (readings.supply_degC && count > 0) return 0.5 * (*readings.supply_degC + sum / count);
  if (readings.supply_degC) return *readings.supply_degC;
  return target.water_degC > 0.0 ? target.water_degC : usual_water_degC;
}

/// Loops by their number alone: nobody knows how long they are.
bool only_counted(const LoopPlan& plan) {
  return std::any_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.from == LengthFrom::count; });
}

void fit(Answer& answer, const Plant& plant, const Conditions& conditions) {
  answer.fitted = keep(fit_lengths(plant, answer.meters->readings, conditions), answer.said);
  if (!answer.fitted) return;
  std::vector<double> length_m;
  for (const FittedLength& loop : answer.fitted->loop) length_m.push_back(loop.length_m);
  const Plant found = with_lengths(plant, length_m);
  const FlowTarget target = target_flows(found, answer.envelope ? &*answer.envelope : nullptr);
  answer.fitted->settings = keep(set_fitted(found, target, answer.meters->readings.water_degC), answer.said);
}

}  // namespace

void add_readings(Answer& answer, const MeterSheet& sheet, const Balanced& hydronics) {
  auto meters = keep(match_meters(sheet, hydronics.plant.loops, hydronics.plant.design), answer.said);
  if (!meters) return;
  Readings& readings = meters->readings;
  readings.water_degC = water_of(sheet, readings, hydronics.target);
  readings.scale_most_m3_per_s = hydronics.plant.design.valve.meter_most_m3_per_s;
  if (hydronics.plant.pump_from != PumpFrom::file) readings.pump_error_share = guessed_pump_error_share;
  const Plant plant = with_settings(hydronics.plant, meters->turns, hydronics.balance.pump_speed_share);
  // Where these flows do not settle it is said when readings are held against them.
  const NetworkSolution expected = flows_at(plant, readings.water_degC);
  std::vector<double> expected_m3_per_s;
  for (const BranchId branch : plant.loop_branch) expected_m3_per_s.push_back(expected.flow_m3_per_s[branch.at]);
  if (auto mistaken = unit_mistaken(sheet, readings, expected_m3_per_s, plant.design.units)) {
    answer.said.push_back(std::move(*mistaken));
    return;
  }
  Conditions conditions;
  if (answer.envelope) conditions = conditions_at(*answer.envelope);
  if (sheet.room_degC) conditions.room_degC.assign(conditions.room_degC.size(), *sheet.room_degC);
  answer.meters = *meters;
  if (only_counted(plant.loops)) return fit(answer, plant, conditions);
  answer.read_back = keep(read_back(plant, readings, conditions, hydronics.target), answer.said);
}

}  // namespace slabwright
