// Water in the plant, and air out of it.
#include "plant/sizes.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

// Practice: water inside an electric boiler, and a tank heater of 40 gal.
constexpr double boiler_content_m3 = 0.008, tank_heater_content_m3 = 0.150;

}  // namespace

double heater_content_m3(BoilerKind kind) {
  return kind == BoilerKind::tank_heater ? tank_heater_content_m3 : boiler_content_m3;
}

double plant_content_m3(const Plant& plant) {
  const Boiler& boiler = plant.design.boiler;
  const double mains_m2 = pi / 4.0 * plant.design.mains.inside_diameter_m * plant.design.mains.inside_diameter_m;
  const double buffer = boiler.piping == BoilerPiping::buffer ? boiler.buffer_m3.value_or(0.0) : 0.0;
  return plant.loops.tube_m * water_content_m3_per_m(tube_of(plant.design)) +
         2.0 * plant.design.mains.length_m * mains_m2 + heater_content_m3(boiler.kind) + buffer;
}

std::vector<Purge> purge_loops(const Plant& plant) {
  const ValveTurns open(plant.loops.loop.size(), static_cast<double>(plant.design.valve.turns));
  HydronicGraph graph = with_settings(plant, open, 1.0).graph;
  const Liquid water = liquid(mixture_of(plant.design.fluid), plant.design.fluid.start_degC);
  const TubeSize tube = tube_of(plant.design);
  const double bore_m2 = water_content_m3_per_m(tube);
  std::vector<Purge> all;
  for (std::size_t i = 0; i < plant.loops.loop.size(); ++i) {
    const Loop& loop = plant.loops.loop[i];
    Purge purge{loop.name, loop.port, purge_good_m_per_s.value * bore_m2, 0.0, purge_least_m_per_s.value * bore_m2,
                0.0};
    graph.set_liquid(plant.loop_branch[i], water);
    purge.loss_Pa = branch_loss(graph, plant.loop_branch[i], purge.flow_m3_per_s).pressure_Pa;
    purge.for_s = purge_changes.value * loop.length_m * bore_m2 / purge.flow_m3_per_s;
    all.push_back(std::move(purge));
  }
  return all;
}

}  // namespace slabwright
