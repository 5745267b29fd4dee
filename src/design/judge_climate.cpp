// What cannot be meant of the coldest hour, the cold snap and the weather file.
#include <fmt/format.h>

#include "design/judge.hpp"

namespace slabwright {
namespace {

constexpr double least_degC = -70.0;  // as for `coldest` itself
constexpr std::size_t most_days = 10;

using measured::degree;

void judge_minima(Judge& judge) {
  const std::string mean = "climate.yearly_minimum", spread = "climate.minimum_spread", years = "climate.return_years";
  if (!judge.sound({mean, spread, years})) return;
  const bool both = judge.given(mean) && judge.given(spread);
  if (judge.given(mean) && !both) {
    judge.problem(mean, "climate.minima",
                  "yearly_minimum needs minimum_spread beside it: the standard deviation of the yearly lowest hours.");
  }
  if (judge.given(spread) && !both) {
    judge.problem(spread, "climate.minima",
                  "minimum_spread needs yearly_minimum beside it: the mean of the yearly lowest hours.");
  }
  if (judge.given(years) && !both) {
    judge.problem(years, "climate.minima",
                  "return_years needs yearly_minimum and minimum_spread beside it: the coldest hour is worked out from "
                  "the three.");
  }
  if (both && judge.given("climate.coldest")) {
    judge.problem(mean, "climate.minima", "coldest and yearly_minimum say the same thing twice: keep one.");
  }
}

/// What the statistics come to has the limits of `coldest`.
void judge_outcome(Judge& judge) {
  const Climate& climate = judge.design.climate;
  const std::string mean = "climate.yearly_minimum";
  if (!climate.yearly_minimum_degC || !climate.minimum_spread_K || judge.given("climate.coldest")) return;
  if (!judge.sound({mean, "climate.minimum_spread", "climate.return_years", "climate.outdoor"})) return;
  const std::string years = std::to_string(climate.return_years);
  const double coldest_degC = *climate.coldest_degC;
  if (coldest_degC < least_degC) {
    judge.problem(mean, "climate.minima",
                  "yearly_minimum and minimum_spread make the coldest hour in {} years {}: at "
                  "least {}.",
                  {years, degree(coldest_degC), degree(least_degC)});
  }
  if (climate.outdoor_degC && coldest_degC > *climate.outdoor_degC) {
    judge.problem(mean, "climate.minima",
                  "yearly_minimum and minimum_spread make the coldest hour in {} years {}, warmer than outdoor {}.",
                  {years, degree(coldest_degC), degree(*climate.outdoor_degC)});
  }
}

void judge_snap(Judge& judge) {
  const std::size_t days = judge.design.climate.snap.size();
  if (!judge.sound({"climate.snap"}) || days == 0) return;
  if (days > most_days) {
    judge.problem("climate.snap", "climate.snap", fmt::format("snap has {} days: at most {}.", days, most_days));
  }
  if (judge.given("climate.snap_days")) {
    judge.problem("climate.snap_days", "climate.snap",
                  "snap_days beside snap: the list has a day for each of its temperatures. Remove snap_days.");
  }
}

}  // namespace

void judge_climate(Judge& judge) {
  judge_minima(judge);
  judge_outcome(judge);
  judge_snap(judge);
  if (judge.given("climate.weather") && judge.design.climate.weather.empty()) {
    judge.problem("climate.weather", "climate.weather", "weather names a file: weather = \"town.epw\".");
  }
}

}  // namespace slabwright
