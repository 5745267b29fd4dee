// The electric service: the boiler alone, and with the second source and all else.
#include <fmt/format.h>

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

/// "1 of 2 stages (6 kW)", what the service leaves room for.
std::string stages_words(const ElectricSize& size) {
  return fmt::format("{} of {}", size.room_stages_number, size.stages_number);
}

/// Ways out of a service that cannot carry everything at once: never both heaters, or fewer stages.
void judge_together(const ElectricSize& size, std::vector<Diagnostic>& said) {
  if (!size.main_breaker_A || !size.together_A || *size.together_A <= *size.main_breaker_A) return;
  Diagnostic note{Severity::failure, "plant.service-together", "service.main_breaker", "", {}};
  note.parts = {Measured{*size.together_A, Dimension::current}, Measured{*size.main_breaker_A, Dimension::current},
                stages_words(size)};
  note.sentence = "all at once may take {} on a main breaker of {}: ";
  if (size.one_heats_A && *size.one_heats_A <= *size.main_breaker_A) {
    note.severity = Severity::warning;
    note.sentence +=
        "an interlock so that boiler and second source never heat together is enough, or {} boiler stages "
        "beside the rest. ";
  } else if (size.room_stages_number > 0) {
    note.sentence += "it holds {} boiler stages beside the rest, the others locked out; or take a larger service. ";
  } else {
    note.sentence += "it holds {} boiler stages beside the rest: take a larger service. ";
  }
  note.sentence += "A licensed electrician decides.";
  said.push_back(std::move(note));
}

/// All currents that run for hours count for 125 % where the code family asks for that.
void add_together(const Design& design, ElectricSize& size) {
  size.main_breaker_A = design.service.main_breaker_A;
  const bool second_source = design.second_source.kind != SecondSourceKind::none;
  const auto second_A = second_source ? design.second_source.current_A : std::nullopt;
  if (!size.main_breaker_A && !second_A && !design.service.other_loads_A) return;
  const double hours = size.demand_share.value_or(1.0);
  const double boiler_A = hours * size.current_A, second = hours * second_A.value_or(0.0);
  const double rest_A = design.service.other_loads_A.value_or(0.0);
  size.together_A = boiler_A + second + rest_A;
  if (second_A) size.one_heats_A = std::max(boiler_A, second) + rest_A;
  if (!size.main_breaker_A || boiler_A <= 0.0) return;
  const double room_share = std::clamp((*size.main_breaker_A - second - rest_A) / boiler_A, 0.0, 1.0);
  size.room_stages_number = static_cast<int>(room_share * size.stages_number + 1e-9);
}

/// Many boilers are stated at 240 V and stand on 208 V.
void ask_voltage(const Design& design, const BoilerSize& boiler, std::vector<Diagnostic>& said) {
  constexpr double stated_V = 240.0, least_V = 200.0, most_V = 215.0;
  const double service_V = design.service.voltage_V;
  const bool usual = service_V >= least_V && service_V <= most_V && design.codes == Codes::north_america;
  if (!usual || design.boiler.rated_voltage_V) return;
  const double needed_W = boiler.power_W / element_power_W(1.0, stated_V, service_V);
  said.push_back({boiler.from_file ? Severity::warning : Severity::note,
                  "plant.voltage",
                  "boiler.rated_voltage",
                  "{} on {} takes a boiler stated as {} at {}: power falls with the square of the voltage. Look at its "
                  "plate (boiler.rated_voltage).",
                  {show_as(boiler.power_W, Dimension::power, "kW", 1), Measured{service_V, Dimension::voltage},
                   show_as(needed_W, Dimension::power, "kW", 1), Measured{stated_V, Dimension::voltage}}});
}

}  // namespace

ElectricSize electric_size(const Plant& plant, const BoilerSize& boiler, std::vector<Diagnostic>& said) {
  const Design& design = plant.design;
  ElectricSize size;
  size.voltage_V = design.service.voltage_V;
  size.phases = design.service.phases;
  size.power_W = boiler.power_W;
  size.stages_number = boiler_stages(design.boiler, boiler.power_W);
  size.current_A = electric_current_A(boiler.power_W, size.voltage_V, phases_of(size));
  if (design.codes == Codes::north_america) {
    const NorthAmericanSupply supply = north_american_supply(size.current_A);
    size.demand_share = supply.demand_share;
    size.demand_A = supply.demand_A;
    size.device_A = supply.device_A;
  }
  size.free_A = design.service.current_A;
  size.fits = !size.free_A || size.demand_A.value_or(size.current_A) <= *size.free_A;
  add_together(design, size);
  judge_alone(size, said);
  judge_together(size, said);
  ask_voltage(design, boiler, said);
  return size;
}

}  // namespace slabwright
