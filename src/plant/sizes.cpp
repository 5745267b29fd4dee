// What to buy: pump, boiler, tank, electric supply.
#include "plant/sizes.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/handbook_circulator.hpp"
#include "slabwright/handbook_electrical.hpp"
#include "slabwright/handbook_mixing.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/handbook_tank.hpp"
#include "slabwright/plant_sizes.hpp"

namespace slabwright {
namespace {

constexpr double gravity_m_per_s2 = 9.80665;
constexpr double atmosphere_Pa = 101325.0;

Customary customary(const Design& design) { return design.units == System::us ? Customary::us : Customary::si; }

/// At the pump, which stands in the return beside the tank: the fill pressure less what its own suction pipe loses.
double suction_m(const Plant& plant, const OperatingPoint& point) {
  const Liquid water = liquid(mixture_of(plant.design.fluid), plant.design.boiler.hottest_degC);
  const double speed_m_per_s = velocity_m_per_s(plant.design.mains.inside_diameter_m, point.flow_m3_per_s);
  return suction_head_m({plant.design.pressure.fill_Pa + atmosphere_Pa,
                         water_vapour_pressure_Pa(plant.design.boiler.hottest_degC), water.density_kg_per_m3,
                         speed_m_per_s});
}

/// A pump as strong as all loops one after another was bought by adding up what lies side by side.
void say_added_heads(const Plant& plant, const OperatingPoint& point, const PumpSize& size,
                     std::vector<Diagnostic>& said) {
  constexpr double far_too_strong = 2.0, near_sum = 0.3;
  if (plant.pump_from != PumpFrom::file || size.head_m <= 0.0 || point.loop.size() < 2) return;
  double sum_m = 0.0;
  for (const LoopState& loop : point.loop) sum_m += loop.loss_Pa * size.head_m / point.pump_Pa;
  const double has_m = head_at(plant.pump, size.flow_m3_per_s).head_m;
  if (has_m < far_too_strong * size.head_m) return;
  const bool added = std::abs(has_m - sum_m) < near_sum * sum_m;
  said.push_back({Severity::warning,
                  "plant.pump-too-strong",
                  "pump.points",
                  added ? "the pump gives {} at {}, where {} is enough: that is about what the loops lose one after "
                          "another. They lie side by side, and their heads do not add up: the hardest loop counts."
                        : "the pump gives {} at {}, where {} is enough: a smaller one, or a lower speed, saves power "
                          "and noise.",
                  {Measured{has_m, Dimension::head}, Measured{size.flow_m3_per_s, Dimension::flow},
                   Measured{size.head_m, Dimension::head}}});
}

PumpSize pump_size(const Plant& plant, const OperatingPoint& point, const FlowTarget& target, double duty_Pa,
                   std::vector<Diagnostic>& said) {
  const double density = liquid(mixture_of(plant.design.fluid), point.return_degC).density_kg_per_m3;
  PumpSize size;
  size.flow_m3_per_s = target.total_m3_per_s;
  size.head_m = duty_Pa / (density * gravity_m_per_s2);
  size.hydraulic_W = hydraulic_power_W(target.total_m3_per_s, duty_Pa);
  size.tried_on = plant.pump_name;
  size.runs_m3_per_s = point.flow_m3_per_s;
  size.runs_head_m = point.pump_Pa / (density * gravity_m_per_s2);
  size.runs_share = point.flow_m3_per_s / range_m3_per_s(plant.pump);
  const PumpEntry& entry = plant.design.pump;
  size.electric_W = hydraulic_power_W(point.flow_m3_per_s, point.pump_Pa) / entry.efficiency_share;
  size.season_J = size.electric_W * entry.season_s;
  size.suction_m = suction_m(plant, point);
  say_added_heads(plant, point, size, said);
  return size;
}

/// Outdoors, where a floor that takes `floor_W` at `outdoor` takes just `power_W`; heat grows with the difference.
double fails_below_degC(double indoor_degC, double outdoor_degC, double floor_W, double power_W) {
  return indoor_degC - (indoor_degC - outdoor_degC) * power_W / floor_W;
}

/// A second source that can cut out saves no boiler power; say from where on the boiler is alone.
void say_second_source(const Design& design, std::vector<Diagnostic>& said) {
  if (design.second_source.kind == SecondSourceKind::none) return;
  Diagnostic note{Severity::note, "plant.second-source", "second_source", "", {}};
  if (design.second_source.cut_out_degC) {
    note.sentence = "the second source stops below {} outside; the boiler is sized to carry everything alone.";
    note.parts.push_back(Measured{*design.second_source.cut_out_degC, Dimension::degree});
  } else {
    note.sentence = "where the second source stops is not given (cut_out); the boiler is sized to carry everything.";
  }
  said.push_back(std::move(note));
}

void judge_boiler(const Plant& plant, const BoilerSize& size, std::vector<Diagnostic>& said) {
  if (!size.from_file || plant.design.boiler.kind == BoilerKind::none) return;
  if (size.power_W < size.floor_W) {
    said.push_back({Severity::failure,
                    "plant.boiler-too-small",
                    "boiler.power",
                    "a boiler of {} cannot keep the floor, which takes {}; the working air falls below its setting "
                    "when it is colder than {} outside.",
                    {show_as(size.power_W, Dimension::power, "kW", 1), show_as(size.floor_W, Dimension::power, "kW", 1),
                     Measured{*size.fails_working_degC, Dimension::degree}}});
  }
}

void judge_flow(const Plant& plant, const BoilerSize& size, double flow_m3_per_s, std::vector<Diagnostic>& said) {
  if (size.flow_enough || plant.design.boiler.kind != BoilerKind::electric_boiler) return;
  said.push_back({Severity::warning,
                  "plant.boiler-flow",
                  "boiler.least_flow",
                  "the boiler wants a flow of at least {} and the floor takes {}: give it a bypass or a separator.",
                  {Measured{size.least_flow_m3_per_s, Dimension::flow}, Measured{flow_m3_per_s, Dimension::flow}}});
}

/// The file's power at the service's voltage.
double given_W(const Design& design, std::vector<Diagnostic>& said) {
  const double rated_W = *design.boiler.power_W, service_V = design.service.voltage_V;
  const double rated_V = design.boiler.rated_V.value_or(service_V);
  const double power_W = element_power_W(rated_W, rated_V, service_V);
  if (rated_V != service_V) {
    said.push_back({Severity::note,
                    "plant.voltage",
                    "boiler.rated_voltage",
                    "made for {}, the boiler's {} become {} on {}.",
                    {Measured{rated_V, Dimension::voltage}, show_as(rated_W, Dimension::power, "kW", 1),
                     show_as(power_W, Dimension::power, "kW", 1), Measured{service_V, Dimension::voltage}}});
  }
  return power_W;
}

BoilerSize boiler_size(const Plant& plant, const Envelope& envelope, const OperatingPoint& point,
                       std::vector<Diagnostic>& said) {
  const Boiler& boiler = plant.design.boiler;
  BoilerSize size;
  size.kind = boiler.kind;
  size.floor_W = std::max(point.water_W, 0.0);
  size.pickup_W = boiler_pickup_share.value * size.floor_W;
  size.wanted_W = size.floor_W + size.pickup_W;
  size.from_file = boiler.power_W.has_value();
  const auto step = next_boiler_W(size.wanted_W, customary(plant.design));
  size.power_W = size.from_file ? given_W(plant.design, said) : step.value_or(size.wanted_W);
  if (!size.from_file && !step) {
    said.push_back({Severity::warning,
                    "plant.no-boiler-step",
                    "boiler",
                    "no single boiler of the usual steps gives {}; plan for several.",
                    {show_as(size.wanted_W, Dimension::power, "kW", 1)}});
  }
  if (size.floor_W > 0.0) {
    size.spare_share = size.power_W / size.floor_W - 1.0;
    size.fails_working_degC =
        fails_below_degC(plant.design.climate.indoor_degC, envelope.outdoor_degC, size.floor_W, size.power_W);
  }
  const FluidProperties fluid = properties_of(mixture_of(plant.design.fluid), point.supply_degC);
  const double rise = fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK * boiler_water_rise_K.value;
  size.least_flow_m3_per_s = boiler.least_flow_m3_per_s.value_or(size.power_W / rise);
  if (boiler.mixing_valve) size.mixing_share = mixing_share(point.supply_degC, point.return_degC, boiler.hottest_degC);
  const double through_boiler = point.flow_m3_per_s * size.mixing_share.value_or(1.0);
  size.flow_enough = through_boiler >= size.least_flow_m3_per_s;
  judge_boiler(plant, size, said);
  say_second_source(plant.design, said);
  judge_flow(plant, size, through_boiler, said);
  return size;
}

/// Water that the tank must give back on the way down to the coldest stands in it at the start: its air is tighter
/// then.
double start_gauge_Pa(const TankSize& size, double held_m3) {
  if (size.tank_m3 <= held_m3) return size.fill_Pa;
  const double fill_Pa = size.fill_Pa + atmosphere_Pa;
  return fill_Pa * size.tank_m3 / (size.tank_m3 - held_m3) - atmosphere_Pa;
}

TankSize tank_size(const Plant& plant, std::vector<Diagnostic>& said) {
  const Design& design = plant.design;
  const Mixture mixture = mixture_of(design.fluid);
  TankSize size;
  size.fluid_m3 = plant_content_m3(plant);
  size.glycol_m3 = size.fluid_m3 * mixture.glycol_volume_share;
  // Water is densest at 4 C; a mixture may stand as cold as the weather, but not colder than its first crystals.
  size.coldest_degC = mixture.glycol_volume_share > 0.0
                          ? std::max(freezing_point_degC(mixture), design.climate.coldest_degC.value_or(0.0))
                          : 4.0;
  size.hottest_degC = design.boiler.hottest_degC;
  const double growth = std::max(0.0, volume_ratio(mixture, size.coldest_degC, size.hottest_degC) - 1.0);
  size.expansion_m3 = expansion_m3(size.fluid_m3, growth, 0.0, size.hottest_degC - size.coldest_degC);
  size.fill_Pa = design.pressure.fill_Pa;
  size.most_Pa = planned_most_gauge_Pa(design.pressure.relief_Pa);
  const auto tank =
      diaphragm_tank_m3(size.expansion_m3, {size.fill_Pa + atmosphere_Pa, size.most_Pa + atmosphere_Pa, atmosphere_Pa});
  size.tank_m3 = tank.value_or(0.0);
  size.start_degC = design.pressure.start_degC;
  const double drawn_in = std::max(0.0, volume_ratio(mixture, size.coldest_degC, size.start_degC) - 1.0);
  size.start_Pa = start_gauge_Pa(size, drawn_in * size.fluid_m3);
  const double column_Pa =
      liquid(mixture, size.coldest_degC).density_kg_per_m3 * gravity_m_per_s2 * design.pressure.height_m;
  size.top_Pa = size.fill_Pa - column_Pa;
  if (size.top_Pa < least_top_gauge_Pa.value) {
    said.push_back({Severity::warning,
                    "plant.low-fill",
                    "pressure.fill",
                    "a fill of {} leaves {} at the highest pipe when all is coldest; {} keep air from being drawn in: "
                    "fill to {} or more.",
                    {Measured{size.fill_Pa, Dimension::pressure}, Measured{size.top_Pa, Dimension::pressure},
                     Measured{least_top_gauge_Pa.value, Dimension::pressure},
                     Measured{column_Pa + least_top_gauge_Pa.value, Dimension::pressure}}});
  }
  if (!tank) {
    said.push_back({Severity::failure,
                    "plant.no-room-for-expansion",
                    "pressure",
                    "the fill of {} leaves no room below {}, nine tenths of the relief valve: fill lower.",
                    {Measured{size.fill_Pa, Dimension::pressure}, Measured{size.most_Pa, Dimension::pressure}}});
  }
  return size;
}

}  // namespace

Checked<PlantSizes> size_plant(const Plant& plant, const Envelope& envelope, const OperatingPoint& point,
                               const FlowTarget& target, double duty_Pa) {
  std::vector<Diagnostic> said;
  PlantSizes sizes;
  sizes.pump = pump_size(plant, point, target, duty_Pa, said);
  sizes.boiler = boiler_size(plant, envelope, point, said);
  sizes.tank = tank_size(plant, said);
  sizes.tank.relief_W = sizes.boiler.power_W;
  sizes.electric = electric_size(plant, sizes.boiler.power_W, said);
  sizes.purge = purge_loops(plant);
  const auto keep = [&](auto checked) {
    said.insert(said.end(), checked.said.begin(), checked.said.end());
    return checked.value.value();
  };
  sizes.start = keep(start_up(plant, point, sizes.boiler));
  sizes.cycle = keep(boiler_cycle(plant, point, sizes.boiler));
  return {std::move(sizes), std::move(said)};
}

}  // namespace slabwright
