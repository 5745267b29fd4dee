// The slab section as plant and sensitivities ask for it: a 5 in slab with tube every 12 in, film by the law.
#include <benchmark/benchmark.h>

#include "slabwright/section.hpp"

using namespace slabwright;

namespace {

Section shop_slab() {
  Section s;
  s.spacing_m = 0.3048;
  s.outside_diameter_m = 0.015875;
  s.cover_above_m = s.cover_below_m = 0.0635;
  s.concrete_W_per_mK = 1.75;
  s.underside_W_per_m2K = 0.4;
  s.below_degC = 3.0;
  s.wall_mK_per_W = 0.115;
  return s;
}

void section_response(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(respond(shop_slab(), 10.8, 0.13));
}

void section_all_films_and_tubes(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(with_field(shop_slab()));
}

void section_tabled_response(benchmark::State& state) {
  const Section slab = with_field(shop_slab());
  for (auto _ : state) benchmark::DoNotOptimize(respond(slab, 10.8, 0.13));
}

void section_floor_from_water(benchmark::State& state) {
  const Section slab = with_field(shop_slab());
  for (auto _ : state) benchmark::DoNotOptimize(floor_from_water(slab, 38.0, 0.13, 15.0));
}

void section_water_for(benchmark::State& state) {
  const Section slab = with_field(shop_slab());
  for (auto _ : state) benchmark::DoNotOptimize(water_for(slab, 60.0, 0.13, 15.0));
}

}  // namespace

BENCHMARK(section_response)->Unit(benchmark::kMicrosecond);
BENCHMARK(section_all_films_and_tubes)->Unit(benchmark::kMicrosecond);
BENCHMARK(section_tabled_response)->Unit(benchmark::kMicrosecond);
BENCHMARK(section_floor_from_water)->Unit(benchmark::kMicrosecond);
BENCHMARK(section_water_for)->Unit(benchmark::kMicrosecond);
