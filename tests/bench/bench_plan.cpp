// A floor's temperatures in plan: the slab made ready, floors of three sizes under tube every 12 in, and the drawn
// frame shop with both solutions and what is said of its rooms; then with its apron and the sleeves that are tried
// there.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

#include "slabwright/conduction_plan.hpp"
#include "slabwright/plant_floor_field.hpp"

using namespace slabwright;

namespace {

constexpr double foot_m = 0.3048, cell_m = foot_m / 4.0;

TubeRow slab() { return {foot_m, 0.015875, 0.0635, {{0.127, 1.75}, {0.0508, 0.035}}, 10.0, 1.0}; }

/// A ring of cells without floor goes round.
PlanFloor floor_of(double width_ft, double depth_ft) {
  PlanFloor floor;
  floor.corner = {-cell_m, -cell_m};
  floor.cell_m = cell_m;
  floor.columns = static_cast<std::size_t>(4.0 * width_ft) + 2;
  floor.rows = static_cast<std::size_t>(4.0 * depth_ft) + 2;
  floor.cell.resize(floor.columns * floor.rows);
  for (std::size_t j = 1; j + 1 < floor.rows; ++j) {
    for (std::size_t i = 1; i + 1 < floor.columns; ++i) {
      floor.cell[j * floor.columns + i] = {10.0, 18.0, 1.0, 5.0, 0.0, 0.0};
    }
  }
  return floor;
}

/// Strips as wide as the floor, to and fro, 300 ft of tube or less in each loop.
std::vector<PlanTube> tubes_on(double width_ft, double depth_ft) {
  std::vector<PlanTube> tubes;
  const double lines = std::max(1.0, std::floor(300.0 / width_ft));
  for (double first = 0.5; first < depth_ft; first += lines) {
    PlanTube tube{{}, 40.0, 300.0, 0.08, {}};
    bool right = true;
    for (double y = first; y < std::min(first + lines, depth_ft); y += 1.0, right = !right) {
      tube.line.push_back({(right ? 0.5 : width_ft - 0.5) * foot_m, y * foot_m});
      tube.line.push_back({(right ? width_ft - 0.5 : 0.5) * foot_m, y * foot_m});
    }
    tubes.push_back(tube);
  }
  return tubes;
}

void ready(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(plan_slab(slab(), 0.08, cell_m));
}

void field(benchmark::State& state) {
  const double width_ft = static_cast<double>(state.range(0)), depth_ft = static_cast<double>(state.range(1));
  const PlanSlab plate = plan_slab(slab(), 0.08, cell_m);
  const PlanFloor floor = floor_of(width_ft, depth_ft);
  const std::vector<PlanTube> tubes = tubes_on(width_ft, depth_ft);
  int rounds = 0;
  for (auto _ : state) rounds = plan_field(plate, floor, tubes).rounds;
  state.counters["rounds"] = rounds;
}

void shop(benchmark::State& state) {
  std::ifstream in(SLABWRIGHT_ROOT "/layouts/frame-shop.toml");
  std::ostringstream text;
  text << in.rdbuf();
  const Design design = read_design(text.str()).checked.value->design;
  LaidBefore before;
  const LoopPlan loops = *plan_loops(design, &before).value;
  const Envelope envelope = *envelope_of(design).value;
  const FloorPlan floor = *floor_of(design, loops, envelope).value;
  const Plant plant = *pipe_up(design, loops, &floor).value;
  Conditions conditions;
  for (const RoomLoss& room : envelope.room) conditions.room_degC.push_back(room.indoor_degC);
  LaidFloor laid;
  for (const Loop& loop : loops.loop) laid.tube.push_back({loop.path.value()});
  if (state.range(0) != 0) laid.apron = loops.drawing->apron;
  const OperatingPoint point = operate(plant, conditions, 45.0);
  for (auto _ : state) benchmark::DoNotOptimize(floor_field(plant, conditions, point, laid));
}

BENCHMARK(shop)->ArgName("apron")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);
BENCHMARK(ready)->Unit(benchmark::kMillisecond);
BENCHMARK(field)->Args({40, 28})->Args({120, 70})->Args({200, 120})->Unit(benchmark::kMillisecond);

}  // namespace
