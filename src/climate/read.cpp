// Which of the two forms a text has.
#include "cells.hpp"
#include "columns.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {

Checked<WeatherFile> read_weather(std::string_view text, const WeatherOptions& options) {
  constexpr int heading_lines = 8;
  expects(options.longest_gap_hours >= 0 && options.longest_gap_hours < 8760, "a gap shorter than a year");
  weather::LineWalk walk(text);
  for (int seen = 1; seen <= heading_lines && walk.next(); ++seen) {
    if (weather::epw_heading(walk.line())) return weather::read_epw(text, options);
    const bool names = seen == 2 && trimmed(walk.line()).substr(0, 4) == "Date";
    if (names) return weather::read_tmy3(text, options);
  }
  return {std::nullopt,
          {weather::refusal("form", 1,
                            "neither EPW (a first line that begins LOCATION) nor TMY3 (a second line that "
                            "begins Date)")}};
}

}  // namespace slabwright
