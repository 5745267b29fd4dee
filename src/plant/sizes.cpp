// What to buy: pump, boiler, tank, electric supply.
#include <algorithm>
#include <cmath>

#include "slabwright/handbook_electrical.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/handbook_tank.hpp"
#include "slabwright/plant.hpp"

namespace slabwright {
namespace {

constexpr double gravity_m_per_s2 = 9.80665;
constexpr double atmosphere_Pa = 101325.0;
// Practice: water inside an electric boiler, and a tank heater of 40 gal.
constexpr double boiler_content_m3 = 0.008, tank_heater_content_m3 = 0.150;
constexpr double pi = 3.14159265358979323846;

Customary customary(const Design& design) { return design.units == System::us ? Customary::us : Customary::si; }

PumpSize pump_size(const Plant& plant, const OperatingPoint& point, const FlowTarget& target, double duty_Pa) {
  const double density = liquid(mixture_of(plant.design.fluid), point.return_degC).density_kg_per_m3;
  PumpSize size;
  size.flow_m3_per_s = target.total_m3_per_s;
  size.head_m = duty_Pa / (density * gravity_m_per_s2);
  size.hydraulic_W = hydraulic_power_W(target.total_m3_per_s, duty_Pa);
  size.tried_on = plant.pump_name;
  size.runs_m3_per_s = point.flow_m3_per_s;
  size.runs_head_m = point.pump_Pa / (density * gravity_m_per_s2);
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
  const bool own_pump = plant.source.mix && !plant.source.mixing;
  said.push_back({Severity::warning,
                  "plant.boiler-flow",
                  "boiler.least_flow",
                  own_pump ? "the boiler wants a flow of at least {} and its own pump gives it {}: a stronger one."
                           : "the boiler wants a flow of at least {} and gets {}: give it a bypass, or a pump of its "
                             "own and a separator.",
                  {Measured{size.least_flow_m3_per_s, Dimension::flow}, Measured{flow_m3_per_s, Dimension::flow}}});
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
  size.power_W = boiler.power_W.value_or(step.value_or(size.wanted_W));
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
  size.mixing_share = point.source.hot_share;
  const double through_boiler = point.source.boiler_m3_per_s;
  size.flow_enough = through_boiler >= size.least_flow_m3_per_s;
  judge_boiler(plant, size, said);
  say_second_source(plant.design, said);
  judge_flow(plant, size, through_boiler, said);
  return size;
}

double content_m3(const Plant& plant) {
  const double mains_m2 = pi / 4.0 * plant.design.mains.inside_diameter_m * plant.design.mains.inside_diameter_m;
  const double heater =
      plant.design.boiler.kind == BoilerKind::tank_heater ? tank_heater_content_m3 : boiler_content_m3;
  const double buffer =
      plant.design.boiler.piping == BoilerPiping::buffer ? plant.design.boiler.buffer_m3.value_or(0.0) : 0.0;
  return plant.loops.tube_m * water_content_m3_per_m(tube_of(plant.design)) +
         2.0 * plant.design.mains.length_m * mains_m2 + heater + buffer;
}

TankSize tank_size(const Plant& plant, std::vector<Diagnostic>& said) {
  const Design& design = plant.design;
  const Mixture mixture = mixture_of(design.fluid);
  TankSize size;
  size.fluid_m3 = content_m3(plant);
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
  if (!tank) {
    said.push_back({Severity::failure,
                    "plant.no-room-for-expansion",
                    "pressure",
                    "the fill of {} leaves no room below {}, nine tenths of the relief valve: fill lower.",
                    {Measured{size.fill_Pa, Dimension::pressure}, Measured{size.most_Pa, Dimension::pressure}}});
  }
  return size;
}

ElectricSize electric_size(const Plant& plant, double power_W, std::vector<Diagnostic>& said) {
  const Design& design = plant.design;
  ElectricSize size;
  size.power_W = power_W;
  size.voltage_V = design.service.voltage_V;
  size.phases = design.service.phases;
  size.current_A = electric_current_A(power_W, size.voltage_V, size.phases == 3 ? Phases::three : Phases::one);
  if (design.codes == Codes::north_america) {
    const NorthAmericanSupply supply = north_american_supply(size.current_A);
    size.demand_A = supply.demand_A;
    size.device_A = supply.device_A;
  }
  size.free_A = design.service.current_A;
  size.fits = !size.free_A || size.demand_A.value_or(size.current_A) <= *size.free_A;
  if (!size.fits) {
    said.push_back({Severity::failure,
                    "plant.service-too-small",
                    "service.current",
                    "the boiler takes {} and the service has {} free: a smaller boiler, more phases, or a larger "
                    "service; a licensed electrician decides.",
                    {Measured{size.demand_A.value_or(size.current_A), Dimension::current},
                     Measured{*size.free_A, Dimension::current}}});
  }
  return size;
}

}  // namespace

Checked<PlantSizes> size_plant(const Plant& plant, const Envelope& envelope, const OperatingPoint& point,
                               const FlowTarget& target, double duty_Pa) {
  std::vector<Diagnostic> said;
  PlantSizes sizes;
  sizes.pump = pump_size(plant, point, target, duty_Pa);
  sizes.boiler = boiler_size(plant, envelope, point, said);
  sizes.tank = tank_size(plant, said);
  sizes.electric = electric_size(plant, sizes.boiler.power_W, said);
  return {std::move(sizes), std::move(said)};
}

}  // namespace slabwright
