// A weather file of ordinary size from text to series, its statistics, and a made-up year.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <stdexcept>
#include <string>

#include "slabwright/climate.hpp"
#include "slabwright/climate_statistics.hpp"
#include "slabwright/climate_synthetic.hpp"

using namespace slabwright;

namespace {

/// 1.6 MB: rows as long as those of published files.
std::string weather_text() {
  std::string text = "LOCATION,Coldwell Field,XX,USA,invented,000000,44.88,-93.23,-6.0,254.0\nDATA PERIODS,1,1\n";
  for (std::size_t hour = 0; hour < 8760; ++hour) {
    const CalendarHour at = calendar_hour(hour, false);
    text += fmt::format(
        "1999,{},{},{},0,{},{:.1f},{:.1f},{},{},1234,1367,281,{},{},{},41234,51234,11234,2341,270,4.1,10,"
        "9,16.0,7620,9,999999999,89,0.0600,0,88,0.420,0.0,1.0,{}\r\n",
        at.month, at.day, at.hour, "?9?9?9?9E0?9?9?9?9?9?9?9?9?9?9?9?9?9?9?9*9*9?9?9?9",
        static_cast<double>(hour % 400) / 10.0 - 25.0, static_cast<double>(hour % 400) / 10.0 - 28.0, 60 + hour % 40,
        98000 + hour % 1000, hour % 500, hour % 700, hour % 300, "0.0,0.0");
  }
  return text;
}

void read(benchmark::State& state) {
  const std::string text = weather_text();
  if (!read_weather(text)) throw std::logic_error("the text is no weather file");
  for (auto _ : state) benchmark::DoNotOptimize(read_weather(text));
  state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations() * text.size()));
}
BENCHMARK(read)->Unit(benchmark::kMillisecond);

SyntheticYear made_up() {
  SyntheticYear of;
  of.normals.mean_degC = {-12, -9, -2, 6, 14, 19, 22, 20, 15, 8, 0, -8};
  of.normals.swing_K.fill(10.0);
  of.normals.deviation_K = usual_day_deviation_K(of.normals.mean_degC);
  of.spell = ColdSpell{24, 4, -38.0, 12.0, 1};
  return of;
}

void make(benchmark::State& state) {
  const SyntheticYear of = made_up();
  for (auto _ : state) benchmark::DoNotOptimize(synthetic_year_degC(of));
}
BENCHMARK(make)->Unit(benchmark::kMillisecond);

void statistics(benchmark::State& state) {
  const Hourly hourly = *synthetic_year_degC(made_up()).value;
  for (auto _ : state) {
    benchmark::DoNotOptimize(normals_of(hourly));
    benchmark::DoNotOptimize(reached_degC(hourly, 0.996));
    benchmark::DoNotOptimize(degree_days_Kd(hourly, 18.0));
    for (const int days : {1, 2, 3, 5, 7}) benchmark::DoNotOptimize(coldest_run(hourly, days));
  }
}
BENCHMARK(statistics)->Unit(benchmark::kMicrosecond);

}  // namespace
