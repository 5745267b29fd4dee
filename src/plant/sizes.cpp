// What to buy: pump, boiler, tank, electric supply.
#include "plant/sizes.hpp"

#include <algorithm>

#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_electrical.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/handbook_tank.hpp"
#include "slabwright/plant_sizes.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

Customary customary(const Design& design) { return design.units == System::us ? Customary::us : Customary::si; }

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

/// What its maker asks for it must get; what we put in its place is only where its water warms by more than is usual.
void judge_flow(const Plant& plant, const BoilerSize& size, double flow_m3_per_s, std::vector<Diagnostic>& said) {
  if (size.flow_enough || plant.design.boiler.kind != BoilerKind::electric_boiler) return;
  const bool makers = plant.design.boiler.least_flow_m3_per_s.has_value();
  const std::string_view mend = plant.source.mix && !plant.source.mixing
                                    ? "its own pump should be a stronger one."
                                    : "give it a bypass, or a pump of its own and a separator.";
  const std::string_view asks = makers
                                    ? "the boiler wants a flow of at least {} and gets {}: it does not fire, or trips; "
                                    : "the boiler should have a flow of {} or more (ask its maker), and gets {}: ";
  said.push_back({makers ? Severity::failure : Severity::warning,
                  "plant.boiler-flow",
                  "boiler.least_flow",
                  std::string(asks).append(mend),
                  {Measured{size.least_flow_m3_per_s, Dimension::flow}, Measured{flow_m3_per_s, Dimension::flow}}});
}

/// An element on another voltage than it was made for: on a lower one it gives less, on a higher one it burns.
void judge_voltage(double rated_W, double rated_V, double service_V, std::vector<Diagnostic>& said) {
  constexpr double most_over = 1.06;  // a service may stand a few percent above its name
  if (rated_V == service_V) return;
  const bool burns = service_V > most_over * rated_V;
  said.push_back({burns ? Severity::failure : Severity::note,
                  "plant.voltage",
                  "boiler.rated_voltage",
                  burns ? "a boiler made for {} must not be put on {}: its {} would be {} until it burns out."
                        : "made for {} and put on {}, the boiler's {} become {}: power falls with the square of the "
                          "voltage.",
                  {Measured{rated_V, Dimension::voltage}, Measured{service_V, Dimension::voltage},
                   show_as(rated_W, Dimension::power, "kW", 1),
                   show_as(element_power_W(rated_W, rated_V, service_V), Dimension::power, "kW", 1)}});
}

/// The file's power at the service's voltage.
double given_W(const Design& design, std::vector<Diagnostic>& said) {
  const double rated_W = *design.boiler.power_W, service_V = design.service.voltage_V;
  const double rated_V = design.boiler.rated_voltage_V.value_or(service_V);
  judge_voltage(rated_W, rated_V, service_V, said);
  return element_power_W(rated_W, rated_V, service_V);
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
  const double through_boiler = point.source.boiler_m3_per_s;
  size.flow_enough = through_boiler >= size.least_flow_m3_per_s;
  judge_boiler(plant, size, said);
  say_second_source(plant.design, said);
  judge_flow(plant, size, through_boiler, said);
  return size;
}

/// Water that the tank must give back on the way down to the coldest stands in it at the start: its air is tighter
/// then.
double start_gauge_Pa(const TankSize& size, double held_m3, double atmosphere_Pa) {
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
  const double atmosphere_Pa = air_pressure_Pa(design.climate.altitude_m);
  const auto tank =
      diaphragm_tank_m3(size.expansion_m3, {size.fill_Pa + atmosphere_Pa, size.most_Pa + atmosphere_Pa, atmosphere_Pa});
  size.tank_m3 = tank.value_or(0.0);
  size.start_degC = design.fluid.start_degC;
  const double drawn_in = std::max(0.0, volume_ratio(mixture, size.coldest_degC, size.start_degC) - 1.0);
  size.start_Pa = start_gauge_Pa(size, drawn_in * size.fluid_m3, atmosphere_Pa);
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
  sizes.electric = electric_size(plant, sizes.boiler, said);
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
