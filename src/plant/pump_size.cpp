// The pump: what to buy, what it takes from the wall, where it runs on its curve.
#include <cmath>

#include "plant/sizes.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_circulator.hpp"
#include "slabwright/handbook_practice.hpp"

namespace slabwright {
namespace {

/// At the pump, which stands in the return beside the tank: the fill pressure less what boils, at its worst.
double suction_m(const Plant& plant, const OperatingPoint& point) {
  const double hottest_degC = plant.design.boiler.hottest_degC;
  const Liquid water = liquid(mixture_of(plant.design.fluid), hottest_degC);
  const double speed_m_per_s = velocity_m_per_s(plant.design.mains.inside_diameter_m, point.flow_m3_per_s);
  return suction_head_m({plant.design.pressure.fill_Pa + air_pressure_Pa(plant.design.climate.altitude_m),
                         water_vapour_pressure_Pa(hottest_degC), water.density_kg_per_m3, speed_m_per_s});
}

/// What somebody gets who adds up what the loops ask for at their design flows, each valve open.
double added_heads_m(const Plant& plant, const FlowTarget& target, double density_kg_per_m3) {
  const HydronicGraph open = with_settings(plant, {}, 1.0).graph;
  double sum_Pa = 0.0;
  for (std::size_t i = 0; i < plant.loop_branch.size(); ++i)
    sum_Pa += branch_loss(open, plant.loop_branch[i], target.loop_m3_per_s[i]).pressure_Pa;
  return sum_Pa / (density_kg_per_m3 * gravity_m_per_s2);
}

/// A pump as strong as all loops one after another was bought by adding up what lies side by side.
void say_too_strong(const PumpSize& size, double has_m, std::vector<Diagnostic>& said) {
  constexpr double far_too_strong = 2.0, near_sum = 0.3;
  if (has_m < far_too_strong * size.head_m) return;
  const bool added = std::abs(has_m - size.added_head_m) < near_sum * size.added_head_m;
  said.push_back(
      {Severity::warning,
       "plant.pump-too-strong",
       "pump.points",
       added ? "at {} the pump gives {}, where {} is enough: about the loops' heads added up. They lie side by "
               "side, so only the hardest loop counts: take a smaller pump."
             : "at {} the pump gives {}, where {} is enough: a smaller one, or a lower speed, saves power, "
               "noise and throttling.",
       {Measured{size.flow_m3_per_s, Dimension::flow}, Measured{has_m, Dimension::head},
        Measured{size.head_m, Dimension::head}}});
}

void judge_curve(const Plant& plant, const PumpSize& size, std::vector<Diagnostic>& said) {
  constexpr double end_of_curve = 0.85;
  if (plant.pump_from != PumpFrom::file) return;
  if (size.head_m > 0.0) say_too_strong(size, head_at(plant.pump, size.flow_m3_per_s).head_m, said);
  if (size.runs_share < end_of_curve) return;
  said.push_back(
      {Severity::warning,
       "plant.pump-end",
       "pump.points",
       "the pump runs at {} where its curve ends at {}: near its end a pump is loud and wears; a larger one, "
       "or settings further shut, bring it back to the middle.",
       {Measured{size.runs_m3_per_s, Dimension::flow},
        Measured{size.runs_m3_per_s / size.runs_share, Dimension::flow}}});
}

void judge_suction(const Plant& plant, const PumpSize& size, std::vector<Diagnostic>& said) {
  if (size.suction_m >= pump_suction_m.value) return;
  said.push_back(
      {Severity::warning,
       "plant.pump-suction",
       "pressure.fill",
       "filled to {}, water of {} leaves the pump {} of suction head: it may boil there. Fill higher, or set "
       "the boiler lower.",
       {Measured{plant.design.pressure.fill_Pa, Dimension::pressure},
        Measured{plant.design.boiler.hottest_degC, Dimension::degree}, Measured{size.suction_m, Dimension::head}}});
}

}  // namespace

PumpSize pump_size(const Plant& plant, const OperatingPoint& point, const FlowTarget& target, double duty_Pa,
                   std::vector<Diagnostic>& said) {
  const double density = liquid(mixture_of(plant.design.fluid), point.return_degC).density_kg_per_m3;
  const PumpEntry& entry = plant.design.pump;
  PumpSize size;
  size.flow_m3_per_s = target.total_m3_per_s;
  size.head_m = duty_Pa / (density * gravity_m_per_s2);
  size.added_head_m = added_heads_m(plant, target, density);
  size.hydraulic_W = hydraulic_power_W(target.total_m3_per_s, duty_Pa);
  size.tried_on = plant.pump_name;
  size.runs_m3_per_s = point.flow_m3_per_s;
  size.runs_head_m = point.pump_Pa / (density * gravity_m_per_s2);
  size.runs_share = point.flow_m3_per_s / range_m3_per_s(plant.pump);
  size.electric_W = hydraulic_power_W(point.flow_m3_per_s, point.pump_Pa) / entry.efficiency_share;
  size.season_J = size.electric_W * entry.season_s;
  size.suction_m = suction_m(plant, point);
  judge_curve(plant, size, said);
  judge_suction(plant, size, said);
  return size;
}

}  // namespace slabwright
