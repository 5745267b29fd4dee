// What is tried with bytes that nobody thought of: one function for each target, run by the fuzzer's programs and by an
// ordinary test over everything that ever broke one.
#pragma once
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

namespace slabwright::fuzz {

/// What a target promises does not hold. Nothing catches it but a test.
struct Broken : std::runtime_error {
  using std::runtime_error::runtime_error;
};

inline void must(bool holds, const std::string& what) {
  if (!holds) throw Broken(what);
}

/// Each throws where something is broken, and else returns whether the bytes were accepted.
bool units(std::string_view bytes);     ///< quantities of every dimension, and every key's text
bool design(std::string_view bytes);    ///< a design file through the reader and the writer
bool weather(std::string_view bytes);   ///< edits of an invented weather file, see weather.cpp
bool meters(std::string_view bytes);    ///< readings of a manifold against a small floor
bool polygons(std::string_view bytes);  ///< two polygons, a path and a floor with a hole
bool run(std::string_view bytes);       ///< a design file through one question, with every face; see run.cpp

struct Target {
  std::string_view name;  ///< of the folder in tests/fuzz/found
  bool (*one)(std::string_view bytes);
};
inline constexpr Target all_targets[] = {{"units", units},   {"design", design},     {"weather", weather},
                                         {"meters", meters}, {"polygons", polygons}, {"run", run}};

}  // namespace slabwright::fuzz
