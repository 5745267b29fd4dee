// Plots that are hard to write words into.
#pragma once
#include <string>
#include <vector>

#include "slabwright/drawing_plot.hpp"

namespace plots {

using namespace slabwright;

inline PlotWords words(const std::string& text) { return {{text, ""}}; }

inline PlotLine line(const std::string& name, std::vector<PlotPoint> at, PlotInk ink = PlotInk::solid) {
  PlotLine made;
  made.at = std::move(at);
  if (!name.empty()) made.words = words(name);
  made.ink = ink;
  return made;
}

inline Plot plot_of(const PlotPanel& panel, const std::string& x = "time, h", const std::string& y = "heat, kW") {
  Plot plot;
  plot.title = "a plot";
  plot.description = "lines over an axis";
  plot.x.title = x;
  plot.panel = {panel};
  if (plot.panel[0].y.title.empty()) plot.panel[0].y.title = y;
  return plot;
}

inline PlotPanel lines(std::vector<PlotLine> all) {
  PlotPanel panel;
  panel.line = std::move(all);
  return panel;
}

inline PlotPanel bars(std::size_t months, std::size_t ways, bool stacked) {
  PlotPanel panel;
  panel.stacked = stacked;
  constexpr PlotTone tones[] = {PlotTone::dark, PlotTone::light, PlotTone::hatched, PlotTone::middle, PlotTone::dotted};
  for (std::size_t w = 0; w < ways; ++w) {
    PlotBars series{{}, words("way " + std::string(1, static_cast<char>('a' + w))), tones[w % 5]};
    for (std::size_t m = 0; m < months; ++m) {
      const double far = static_cast<double>(m) - 0.5 * static_cast<double>(months - 1);
      series.value.push_back(900.0 - 20.0 * far * far + 60.0 * static_cast<double>((m * 7 + w * 5) % 4));
    }
    panel.bars.push_back(series);
  }
  return panel;
}

inline const std::vector<std::string>& months() {
  static const std::vector<std::string> all{"Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
                                            "Jan", "Feb", "Mar", "Apr", "May", "Jun"};
  return all;
}

inline Plot month_plot(const PlotPanel& panel) {
  Plot plot = plot_of(panel, "", "energy, kWh a month");
  plot.x = axis_of_words("", std::vector<std::string>(months().begin(), months().begin() + 12));
  return plot;
}

struct Case {
  std::string name;
  Plot plot;
};

inline std::vector<PlotLine> fan() {
  const PlotInk inks[] = {PlotInk::solid, PlotInk::dashes, PlotInk::dash_dot, PlotInk::rings, PlotInk::heavy};
  std::vector<PlotLine> all;
  for (int k = 0; k < 5; ++k) {
    const std::string name = "way number " + std::string(1, static_cast<char>('a' + k));
    all.push_back(line(name, {{0, 0}, {1, 1.0 + 0.2 * k}}, inks[k]));
  }
  return all;
}

/// Lines alone.
inline std::vector<Case> awkward_lines() {
  std::vector<Case> all;
  const auto add = [&](const std::string& name, Plot plot) { all.push_back({name, std::move(plot)}); };
  add("one flat line", plot_of(lines({line("steady", {{0, 5}, {10, 5}})})));
  add("flat at zero", plot_of(lines({line("nothing", {{0, 0}, {10, 0}})})));
  add("one point", plot_of(lines({line("the only one", {{3, 7}})})));
  add("two lines that cross", plot_of(lines({line("falling heat pump", {{-20, 12}, {60, 0}}),
                                             line("rising load of the shop", {{-20, 0}, {60, 12}}, PlotInk::dashes)})));
  add("two lines that are one",
      plot_of(lines({line("this", {{0, 1}, {10, 2}}), line("the same", {{0, 1}, {10, 2}}, PlotInk::dashes)})));
  add("five lines from one point", plot_of(lines(fan())));
  std::vector<PlotPoint> wave;
  for (int k = 0; k <= 168; ++k) wave.push_back({1.0 * k, 10.0 * ((k * k) % 17) - 60.0});
  Plot week = plot_of(lines({line("restless", wave), line("calm", {{0, 20}, {168, 25}}, PlotInk::heavy)}));
  week.x.steps = PlotSteps::hours;
  add("a restless week", week);
  add("steep", plot_of(lines({line("up", {{0, 0}, {0.001, 100}}), line("far", {{10, 50}, {11, 50}}, PlotInk::rings)})));
  add("huge", plot_of(lines({line("very much", {{1e9, 2e11}, {2e9, 9e11}})})));
  add("small", plot_of(lines({line("hardly any", {{1e-9, 2e-11}, {2e-9, 9e-11}})})));
  add("large with small change", plot_of(lines({line("so", {{1e6, 1e6 + 0.001}, {1e6 + 0.01, 1e6 + 0.002}})})));
  add("negative", plot_of(lines({line("below", {{-40, -900}, {-30, -100}}),
                                 line("lower", {{-40, -950}, {-30, -960}}, PlotInk::dashes)})));
  Plot empty;
  empty.panel.resize(1);
  add("nothing at all", empty);
  return all;
}

/// Words for which there is a place in all of them.
inline std::vector<Case> awkward() {
  std::vector<Case> all = awkward_lines();
  const auto add = [&](const std::string& name, Plot plot) { all.push_back({name, std::move(plot)}); };
  for (const bool stacked : {false, true}) {
    for (const std::size_t ways : {1u, 2u, 5u})
      add(std::to_string(ways) + (stacked ? " ways stacked" : " ways side by side"),
          month_plot(bars(12, ways, stacked)));
  }
  PlotPanel walled = lines({line("cost of a winter", {{40, 900}, {45, 1100}, {55, 1500}, {65, 2050}})});
  walled.wall.push_back({46, PlotBeyond::left, {{"the pipe freezes", ""}, {"at the big door", ""}}});
  walled.mark.push_back({{46, 1136}, {{"lowest setting", ""}}, false});
  walled.y.least = 0.0;
  walled.y.commas = true;
  add("a wall at the left",
      plot_of(walled, "slab setpoint, F", "electricity for a whole winter, every month of it, kWh"));
  PlotPanel low =
      lines({line("slab", {{0, 48}, {96, 30}}), line("air", {{0, 46}, {10, 20}, {96, 5}}, PlotInk::dashes)});
  low.wall.push_back({32, PlotBeyond::below, words("freezing")});
  low.band.push_back({{{0, 40, 52}, {48, 33, 46}, {96, 24, 37}}, words("what nobody knows")});
  low.mark.push_back({{85, 32}, words("first to freeze"), true});
  Plot outage = plot_of(low, "hours after the cut", "temperature, F");
  outage.x.steps = PlotSteps::hours;
  add("a wall below, a band and a mark", outage);
  PlotPanel crowd = lines(fan());
  for (int k = 0; k < 8; ++k)
    crowd.mark.push_back(
        {{0.1 * k + 0.1, 0.12 * k + 0.1}, words("place " + std::string(1, static_cast<char>('a' + k))), false});
  crowd.height_m = 0.06;
  add("eight marks on five lines", plot_of(crowd));
  Plot panels = plot_of(low, "h", "temperature, F");
  PlotPanel second = lines({line("floor", {{0, 3}, {50, 0}, {70, 4}, {96, 4}})});
  second.line[0].steps = true;
  second.height_m = 0.018;
  second.y.title = "heat, kW";
  second.heading = words("what heats");
  panels.panel.push_back(second);
  panels.panel.push_back(second);
  add("panels below one another", panels);
  return all;
}

}  // namespace plots
