// What libFuzzer calls. The build names the target; for designs also the changes that leave most of a design standing.
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>

#include "fuzz/mutated.hpp"
#include "fuzz/targets.hpp"

namespace {

struct Count {
  unsigned long long runs = 0, accepted = 0;
} counted;

/// Of the processor. libFuzzer's own limit is of the clock, on which a nice process waits for others.
double processor_s() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

void print_count() { std::fprintf(stderr, "accepted %llu of %llu\n", counted.accepted, counted.runs); }

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (counted.runs++ == 0) std::atexit(print_count);
  const double begun_s = processor_s();
  if (slabwright::fuzz::SLABWRIGHT_TARGET({reinterpret_cast<const char*>(data), size})) ++counted.accepted;
  slabwright::fuzz::must(processor_s() - begun_s <= SLABWRIGHT_MOST_S, "it takes too long");
  return 0;
}

#ifdef SLABWRIGHT_WHOLE_DESIGNS
extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace {

std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

std::size_t put(const std::string& text, std::uint8_t* out) {
  std::memcpy(out, text.data(), text.size());
  return text.size();
}

}  // namespace

/// One change in SLABWRIGHT_WHOLE_DESIGNS is libFuzzer's own, to bytes, so that the reader sees what no design holds.
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
  if (seed % SLABWRIGHT_WHOLE_DESIGNS == 0) return LLVMFuzzerMutate(data, size, most);
  return put(slabwright::fuzz::SLABWRIGHT_CHANGE(text_of(data, size), seed, most), data);
}

extern "C" std::size_t LLVMFuzzerCustomCrossOver(const std::uint8_t* a, std::size_t a_size, const std::uint8_t* b,
                                                 std::size_t b_size, std::uint8_t* out, std::size_t most,
                                                 unsigned seed) {
  return put(slabwright::fuzz::crossed(text_of(a, a_size), text_of(b, b_size), seed, most), out);
}
#endif
