// The frost hold of the frame shop: one answer, its bands, and one setting after set-up.
#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>

#include "slabwright/answer.hpp"

using namespace slabwright;

namespace {

DesignFile frame_shop() {
  std::ifstream in(SLABWRIGHT_ROOT "/layouts/frame-shop.toml");
  std::ostringstream text;
  text << in.rdbuf();
  return *read_design(text.str()).checked.value;
}

Wishes frost_hold(bool bands) {
  Wishes wishes;
  wishes.question = Question::freeze;
  wishes.sensitivities = false;
  wishes.bands = bands;
  return wishes;
}

void one_answer(benchmark::State& state) {
  const DesignFile file = frame_shop();
  for (auto _ : state) benchmark::DoNotOptimize(answer(file, frost_hold(false)).freeze->air->dial_degC);
}

void with_bands(benchmark::State& state) {
  const DesignFile file = frame_shop();
  for (auto _ : state) benchmark::DoNotOptimize(answer(file, frost_hold(true)).bands->air_high_degC);
}

/// Every deciding place through the snap at one setting.
void one_setting(benchmark::State& state) {
  const Answer set_up = answer(frame_shop(), frost_hold(false));
  double dial_degC = 5.0, coldest = 0.0;
  for (auto _ : state) {
    dial_degC += 1e-6;
    for (const PlaceAtSetting& place : set_up.freeze->place)
      if (place.decides) coldest += coldest_degC(place.air, dial_degC);
  }
  benchmark::DoNotOptimize(coldest);
}

}  // namespace

BENCHMARK(one_answer)->Unit(benchmark::kMillisecond);
BENCHMARK(with_bands)->Unit(benchmark::kMillisecond);
BENCHMARK(one_setting)->Unit(benchmark::kMicrosecond);
