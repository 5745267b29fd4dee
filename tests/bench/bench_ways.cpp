// Ways of running the frame shop's winter: one year of one way after set-up, and the whole answer with its five.
#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>

#include "slabwright/answer.hpp"
#include "winter/way_run.hpp"

using namespace slabwright;

namespace {

DesignFile frame_shop() {
  std::ifstream in(SLABWRIGHT_ROOT "/layouts/frame-shop.toml");
  std::ostringstream text;
  text << in.rdbuf();
  return *read_design(text.str()).checked.value;
}

void one_way_year(benchmark::State& state) {
  const Design design = frame_shop().design;
  EdgeFields fields;
  const Envelope envelope = *envelope_of(design, fields).value;
  const FloorPlan floor = *floor_of(design, *plan_loops(design).value, envelope).value;
  const WatchedPlaces places = watched_places(design, envelope, fields);
  const YearShop shop = *year_shop(design, envelope, floor, places, fields);
  const Snap snap = snap_of(design);
  WaterCurve water;
  water.room_degC = 16.0;
  for (const double supply : {20.0, 35.0, 49.0})
    water.row.push_back({supply, supply - 5.0, 1e-4, 350.0 * (supply - 16.0), 400.0 * (supply - 16.0)});
  const WinterShop of{design, envelope, floor, places, snap, water, 12e3, 60.0, {}, {}, nullptr};
  const winter::Season season = winter::season_of(of, shop);
  const winter::Machines machines = winter::machines_of(of, shop, season);
  WayEntry entry;
  entry.second_source = WaySource::in_working_hours;
  winter::PlanInputs inputs;
  inputs.work_degC = 16.7;
  inputs.hold.floor_air_degC = 8.0;
  inputs.source_lead_h = 2;
  const winter::WayCase way{shop, season, machines, winter::plan_of(entry, season, inputs), 1.0, false, 16.7};
  const ShopState start = unbuilt(shop, design.climate.mean_degC, design.climate.half_swing_K, winter::since_coldest_s);
  winter::RunSpan span;
  span.places = state.range(0) != 0;
  for (auto _ : state) benchmark::DoNotOptimize(winter::run_way(way, start, {}, span).heat.tubes_J);
}

/// Set-up, frost hold and all five ways.
void five_ways(benchmark::State& state) {
  const DesignFile file = frame_shop();
  Wishes wishes;
  wishes.question = Question::winter;
  wishes.sensitivities = false;
  for (auto _ : state) benchmark::DoNotOptimize(answer(file, wishes).winter->way.size());
}

}  // namespace

BENCHMARK(one_way_year)->ArgName("places")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);
BENCHMARK(five_ways)->Unit(benchmark::kMillisecond);
