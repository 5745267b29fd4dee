// All sheets of the frame shop from an answer, and one drawing.
#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>

#include "slabwright/report_quotes.hpp"
#include "slabwright/sheets.hpp"

namespace {

using namespace slabwright;

const Answer& shop() {
  static const Answer made = [] {
    std::ifstream file(SLABWRIGHT_ROOT "/layouts/frame-shop.toml");
    std::stringstream text;
    text << file.rdbuf();
    Wishes wishes;
    wishes.question = Question::sheets;
    return answer(*read_design(text.str()).checked.value, wishes);
  }();
  return made;
}

/// Bar: 1 s.
void every_sheet(benchmark::State& state) {
  const Answer& answer = shop();
  std::size_t largest = 0;
  for (auto _ : state) {
    largest = 0;
    for (const ReaderSheet& page : reader_sheets(answer)) largest = std::max(largest, page.sheet.content.size());
  }
  state.counters["largest_kB"] = static_cast<double>(largest) / 1000.0;
}
BENCHMARK(every_sheet)->Unit(benchmark::kMillisecond);

void quotes_of_an_answer(benchmark::State& state) {
  const Answer& answer = shop();
  for (auto _ : state) benchmark::DoNotOptimize(Quotes(answer));
}
BENCHMARK(quotes_of_an_answer)->Unit(benchmark::kMillisecond);

}  // namespace
