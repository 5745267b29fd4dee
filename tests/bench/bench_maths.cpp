// Samples and response surfaces in seven dimensions.
#include <benchmark/benchmark.h>

#include "slabwright/maths_surface.hpp"

using namespace slabwright;

namespace {

constexpr std::size_t dimensions = 7;

std::vector<std::vector<double>> values_at(const SamplePoints& points, std::size_t outputs) {
  std::vector<std::vector<double>> values;
  for (const auto& point : points) {
    double sum = 1.0;
    for (const double x : point) sum = sum * (1.0 + 0.3 * x) - x;
    values.emplace_back(outputs, sum);
  }
  return values;
}

void sample(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(quasi_random(4096, dimensions, 1));
}

void fit_ten_outputs(benchmark::State& state) {
  const SamplePoints points = surface_points(dimensions, 72, 1);
  const auto values = values_at(points, 10);
  for (auto _ : state) benchmark::DoNotOptimize(fit_surface(points, values));
}

/// Time of one evaluation of one output.
void evaluate(benchmark::State& state) {
  const SamplePoints points = surface_points(dimensions, 72, 1), sample = quasi_random(4096, dimensions, 2);
  const Surface surface = fit_surface(points, values_at(points, 1)).surface;
  std::size_t i = 0;
  for (auto _ : state) benchmark::DoNotOptimize(surface_value(surface, sample[++i % 4096]));
}

}  // namespace

BENCHMARK(sample)->Unit(benchmark::kMillisecond);
BENCHMARK(fit_ten_outputs)->Unit(benchmark::kMicrosecond);
BENCHMARK(evaluate)->Unit(benchmark::kNanosecond);
