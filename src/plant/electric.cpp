// The electric service: the boiler alone, and with the second source and all else.
#include <algorithm>

#include "plant/sizes.hpp"
#include "slabwright/handbook_electrical.hpp"

namespace slabwright {
namespace {

Phases phases_of(const ElectricSize& size) { return size.phases == 3 ? Phases::three : Phases::one; }

void judge_alone(const ElectricSize& size, std::vector<Diagnostic>& said) {
  if (size.fits) return;
  said.push_back({Severity::failure,
                  "plant.service-too-small",
                  "service.current",
                  "the boiler takes {} and the service has {} free: a smaller boiler, more phases, or a larger "
                  "service; a licensed electrician decides.",
                  {Measured{size.demand_A.value_or(size.current_A), Dimension::current},
                   Measured{*size.free_A, Dimension::current}}});
}

/// Ways out of a service that cannot carry everything at once: never both heaters, or fewer stages.
void judge_together(const ElectricSize& size, std::vector<Diagnostic>& said) {
  if (!size.main_A || !size.together_A || *size.together_A <= *size.main_A) return;
  const bool one_heats = size.one_heats_A && *size.one_heats_A <= *size.main_A;
  Diagnostic note{Severity::failure, "plant.service-together", "service.main", "", {}};
  note.parts = {Measured{*size.together_A, Dimension::current}, Measured{*size.main_A, Dimension::current},
                show_as(size.room_W.value_or(0.0), Dimension::power, "kW", 1)};
  note.sentence =
      "boiler, second source and all else may take {} at once, and the main breaker is {}: {} of boiler "
      "find room beside the rest (lock stages out), or a larger service; a licensed electrician decides.";
  if (one_heats) {
    note.severity = Severity::warning;
    note.sentence =
        "boiler, second source and all else may take {} at once, and the main breaker is {}: an interlock "
        "that never lets both heat at once is enough, or a boiler held to {}; a licensed electrician "
        "decides.";
  }
  said.push_back(std::move(note));
}

/// All currents that run for hours count for 125 % where the code family asks for that.
void add_together(const Design& design, ElectricSize& size) {
  size.main_A = design.service.main_A;
  const auto second_A = design.second_source.current_A;
  if (!size.main_A && !second_A && !design.service.other_A) return;
  const double boiler_A = size.demand_A.value_or(size.current_A), rest_A = design.service.other_A.value_or(0.0);
  const double second = second_A.value_or(0.0) * (size.demand_A ? 1.25 : 1.0);
  size.together_A = boiler_A + second + rest_A;
  if (second_A) size.one_heats_A = std::max(boiler_A, second) + rest_A;
  if (!size.main_A) return;
  const double room_A = std::max(0.0, *size.main_A - second - rest_A) / (size.demand_A ? 1.25 : 1.0);
  const double ampere_W = size.power_W > 0.0 ? size.power_W / size.current_A : 0.0;
  size.room_W = std::min(size.power_W, room_A * ampere_W);
}

}  // namespace

ElectricSize electric_size(const Plant& plant, double power_W, std::vector<Diagnostic>& said) {
  const Design& design = plant.design;
  ElectricSize size;
  size.voltage_V = design.service.voltage_V;
  size.phases = design.service.phases;
  size.power_W = power_W;
  size.current_A = electric_current_A(power_W, size.voltage_V, phases_of(size));
  if (design.codes == Codes::north_america) {
    const NorthAmericanSupply supply = north_american_supply(size.current_A);
    size.demand_A = supply.demand_A;
    size.device_A = supply.device_A;
  }
  size.free_A = design.service.current_A;
  size.fits = !size.free_A || size.demand_A.value_or(size.current_A) <= *size.free_A;
  add_together(design, size);
  judge_alone(size, said);
  judge_together(size, said);
  return size;
}

}  // namespace slabwright
