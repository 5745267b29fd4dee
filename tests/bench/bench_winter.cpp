// A winter's weather made up, its sun on a building, a year of vapour, and single door openings.
#include <benchmark/benchmark.h>

#include "slabwright/building_loads.hpp"
#include "slabwright/building_sun.hpp"
#include "slabwright/building_vapour.hpp"
#include "slabwright/climate_winter.hpp"

using namespace slabwright;

namespace {

MadeUpWinter inland() {
  MadeUpWinter of;
  of.station.latitude_deg = 45.0;
  of.dry_bulb.normals = usual_normals(7.0, 13.0);
  return of;
}

void make_winter(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(made_up_winter(inland()));
}
BENCHMARK(make_winter)->Unit(benchmark::kMillisecond);

void sun_and_sky(benchmark::State& state) {
  const WeatherYear year = *made_up_winter(inland()).value;
  for (auto _ : state) benchmark::DoNotOptimize(sol_air_of(year, building_sun(year)));
}
BENCHMARK(sun_and_sky)->Unit(benchmark::kMillisecond);

void vapour(benchmark::State& state) {
  const std::vector<double> outdoor = outdoor_ratios(*made_up_winter(inland()).value);
  const VapourRoom room{600.0, 150.0, 1.0, 20.0 / 86400.0};
  std::vector<VapourHour> hours;
  for (const double ratio : outdoor) hours.push_back({ratio, 0.1, 0.3 / 3600.0, 14.0, 8.0});
  for (auto _ : state) benchmark::DoNotOptimize(vapour_year(room, hours));
}
BENCHMARK(vapour)->Unit(benchmark::kMillisecond);

DoorRoom room_behind() { return {4.8e5, 900.0, 15.0, 200.0, 5000.0}; }

void one_opening(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(door_opening({3.66, 3.05}, room_behind(), 15.0, -10.0, 180.0, 3.0));
}
BENCHMARK(one_opening)->Unit(benchmark::kNanosecond);

void table_of_openings(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(door_use({3.66, 3.05}, room_behind(), 180.0));
}
BENCHMARK(table_of_openings)->Unit(benchmark::kMicrosecond);

}  // namespace
