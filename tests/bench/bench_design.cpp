// The whole line from a design file's text to the answer, with ranges and what matters most, and without.
#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>
#include <string>

#include "slabwright/answer.hpp"

namespace {

std::string frame_shop() {
  std::ifstream in(SLABWRIGHT_ROOT "/layouts/frame-shop.toml");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

void design(benchmark::State& state) {
  const std::string text = frame_shop();
  const bool sensitivities = state.range(0) != 0;
  for (auto _ : state) {
    const slabwright::ReadDesign read = slabwright::read_design(text);
    benchmark::DoNotOptimize(slabwright::answer(*read.checked.value, {slabwright::Question::design, sensitivities}));
  }
}
BENCHMARK(design)->ArgName("ranges")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void read(benchmark::State& state) {
  const std::string text = frame_shop();
  for (auto _ : state) benchmark::DoNotOptimize(slabwright::read_design(text));
}
BENCHMARK(read)->Unit(benchmark::kMicrosecond);

}  // namespace
