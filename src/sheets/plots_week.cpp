// The week of the cold snap, hour by hour.
#include <fmt/format.h>

#include <algorithm>

#include "sheets/plots_parts.hpp"

namespace slabwright::sheets {
namespace {

constexpr int day_h = 24;
constexpr int days_of[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

/// Midnights, with their dates; hours are counted from the week's first.
std::vector<PlotTick> midnights(const WinterWeek& week) {
  std::vector<PlotTick> ticks;
  int month = week.month - 1, day = week.day;
  const int hour = week.first_hour % day_h;
  const auto number = static_cast<int>(week.outdoor_degC.size());
  for (int at = hour == 0 ? 0 : day_h - hour; at <= number; at += day_h) {
    if (at > 0) ++day;
    if (day > days_of[month]) {
      day = 1;
      month = (month + 1) % 12;
    }
    ticks.push_back({static_cast<double>(at), fmt::format("{} {}", month_words[month], day)});
  }
  return ticks;
}

/// A value for each hour's end.
PlotLine ends_of(PlotLine line, const std::vector<double>& value, const InUnits& units) {
  for (std::size_t k = 0; k < value.size(); ++k) line.at.push_back({static_cast<double>(k + 1), units(value[k])});
  return line;
}

/// A mean for each hour, from its beginning to its end.
PlotLine means_of(PlotLine line, const std::vector<double>& value, const InUnits& units) {
  line.steps = true;
  for (std::size_t k = 0; k < value.size(); ++k) line.at.push_back({static_cast<double>(k), units(value[k])});
  if (!value.empty()) line.at.push_back({static_cast<double>(value.size()), units(value.back())});
  return line;
}

double largest(const std::vector<double>& value) {
  double most = 0.0;
  for (const double one : value) most = std::max(most, one);
  return most;
}

/// What one source gives, on the scale of whichever gives most.
PlotPanel strip(const std::vector<double>& value, const char* title, const WinterWeek& week, const InUnits& heat) {
  PlotPanel panel;
  panel.y = heat.axis(title);
  panel.y.least = 0.0;
  panel.y.reaches = heat(std::max(largest(week.floor_heat_W), largest(week.source_heat_W)));
  panel.height_m = 0.017;
  panel.line.push_back(means_of(line_of(PlotInk::solid, {}), value, heat));
  return panel;
}

}  // namespace

std::optional<DrawnPlot> week_plot(const Quotes& q) {
  if (!q.answer().winter || !q.answer().winter->series || !q.answer().winter->series->week) return std::nullopt;
  const WinterWeek& week = *q.answer().winter->series->week;
  if (week.outdoor_degC.empty()) return std::nullopt;
  const InUnits degree(Kind::degree, q.system()), heat(Kind::heat, q.system());
  PlotPanel temperatures;
  temperatures.heading = heading_of(q.words("winter.series.week.way"));
  temperatures.y = degree.axis("temperature");
  temperatures.line = {ends_of(line_of(PlotInk::dashes, {tell("outdoors")}), week.outdoor_degC, degree),
                       ends_of(line_of(PlotInk::solid, {tell("air")}), week.air_degC, degree),
                       ends_of(line_of(PlotInk::heavy, {tell("slab")}), week.slab_degC, degree)};
  temperatures.height_m = 0.048;
  Plot plot{"The coldest week",
            "Outdoor air, room air and slab through a cold snap, and below which source heats.",
            hours_axis(""),
            {temperatures, strip(week.floor_heat_W, "heat of the floor", week, heat)}};
  if (largest(week.source_heat_W) > 0.0)
    plot.panel.push_back(strip(week.source_heat_W, "heat of the second source", week, heat));
  plot.x.tick = midnights(week);
  plot.x.least = 0.0;
  plot.x.most = static_cast<double>(week.outdoor_degC.size());
  return draw_plot(plot);
}

}  // namespace slabwright::sheets
