// The winter: what a setting costs, what each way uses by month, when the floor sweats.
#include <algorithm>

#include "sheets/plots_parts.hpp"

namespace slabwright::sheets {
namespace {

constexpr std::size_t most_ways = 5;
/// A season from summer to summer, so that a winter stands in one piece.
constexpr std::size_t season_begins = 6;

/// Settings of one sensor, and where something freezes below.
struct Settings {
  const std::vector<SettingCost>& row;
  const std::optional<double>& lowest_degC;
  std::string key, lowest_key;
  const char* axis;
};
Settings settings_of(const WinterSeries& series) {
  if (series.slab.size() > 1 && series.slab_lowest_degC)
    return {series.slab, series.slab_lowest_degC, "winter.series.slab", "winter.series.slab_lowest_degC",
            "setting of the slab sensor"};
  return {series.air, series.air_lowest_degC, "winter.series.air", "winter.series.air_lowest_degC",
          "setting of the wall thermostat"};
}

PlotAxis cost_axis(const Quotes& q, bool money, const char* words) {
  if (!money) return InUnits(Kind::energy, q.system()).axis(std::string("electricity of ") + words);
  const std::string& currency = q.answer().file.design.electricity.currency;
  PlotAxis axis;
  axis.title = std::string("cost of ") + words + (currency.empty() ? "" : ", " + currency);
  axis.commas = q.system() == System::us;
  return axis;
}

Quote used(const Quotes& q, const std::string& row, bool money) {
  return money ? q.money(row + ".money") : q.figure(row + ".use_J", Kind::energy, Lean::winter);
}

/// The largest month of all ways, so that their panels have one scale.
double largest_month_J(const std::vector<WayResult>& ways) {
  double most = 0.0;
  for (std::size_t k = 0; k < std::min(ways.size(), most_ways); ++k) {
    for (const WayMonth& month : ways[k].month) most = std::max(most, month.boiler_J + month.source_J);
  }
  return most;
}

PlotWords way_heading(const Quotes& q, std::size_t way) {
  const std::string row = key_of_row("winter.way", way);
  const Quote use = used(q, row, q.answer().winter->way[way].money.has_value());
  const Quote name = q.words(row + ".way.name");
  const KeyedText whole = tell(name, ": ", use);
  if (fits(whole.text)) return {whole};
  PlotWords lines = heading_of(name);
  lines.push_back(tell(use));
  return lines;
}

PlotPanel way_panel(const Quotes& q, std::size_t way, const InUnits& energy) {
  PlotBars boiler{{}, {tell("boiler")}, PlotTone::dark}, source{{}, {tell("second source")}, PlotTone::hatched};
  double of_source = 0.0;
  for (std::size_t k = 0; k < 12; ++k) {
    const WayMonth& month = q.answer().winter->way[way].month[(k + season_begins) % 12];
    boiler.value.push_back(energy(month.boiler_J));
    source.value.push_back(energy(month.source_J));
    of_source = std::max(of_source, month.source_J);
  }
  PlotPanel panel;
  panel.stacked = true;
  panel.heading = way_heading(q, way);
  panel.bars.push_back(boiler);
  if (of_source > 0.0) panel.bars.push_back(source);
  panel.height_m = 0.022;
  return panel;
}

std::vector<std::string> months_from(std::size_t first) {
  std::vector<std::string> words;
  for (std::size_t k = 0; k < 12; ++k) words.push_back(month_words[(k + first) % 12]);
  return words;
}

PlotBars hours_bars(const std::array<double, 12>& month_s, const char* words, PlotTone tone) {
  PlotBars bars{{}, {tell(words)}, tone};
  for (const double s : month_s) bars.value.push_back(hours(s));
  return bars;
}

}  // namespace

std::optional<DrawnPlot> setting_plot(const Quotes& q) {
  if (!q.answer().winter || !q.answer().winter->series) return std::nullopt;
  const Settings settings = settings_of(*q.answer().winter->series);
  if (settings.row.size() < 2) return std::nullopt;
  const InUnits degree(Kind::degree, q.system()), energy(Kind::energy, q.system());
  const bool money = settings.row.front().money.has_value();
  PlotPanel panel;
  panel.line.push_back(line_of(PlotInk::solid, {}));
  panel.line[0].dots = true;
  for (const SettingCost& row : settings.row)
    panel.line[0].at.push_back({degree(row.setting_degC), money ? row.money.value_or(0.0) : energy(row.use_J)});
  const auto keeps = std::find_if(settings.row.begin(), settings.row.end(), [](const auto& row) { return row.keeps; });
  if (settings.lowest_degC)
    panel.wall.push_back(
        {degree(*settings.lowest_degC),
         PlotBeyond::left,
         {tell("something may freeze"), tell("below ", q.figure(settings.lowest_key, Kind::dial, Lean::frost_hold))}});
  if (keeps != settings.row.end()) {
    const auto at = static_cast<std::size_t>(keeps - settings.row.begin());
    panel.mark.push_back({panel.line[0].at[at], {tell(used(q, key_of_row(settings.key, at), money))}, false});
  }
  panel.y = cost_axis(q, money, "a winter");
  panel.y.least = 0.0;
  return draw_plot({"What the setting costs",
                    "The higher the floor is set all winter the more it takes; below a limit something freezes.",
                    degree.axis(settings.axis),
                    {panel}});
}

std::optional<DrawnPlot> months_plot(const Quotes& q) {
  if (!q.answer().winter || q.answer().winter->way.empty()) return std::nullopt;
  const std::vector<WayResult>& ways = q.answer().winter->way;
  const double most_J = largest_month_J(ways);
  if (most_J <= 0.0) return std::nullopt;
  const InUnits energy(Kind::energy, q.system());
  Plot plot{"Electricity by month",
            "A row of bars for each way of running, the best first.",
            axis_of_words("", months_from(season_begins)),
            {}};
  bool said = false;
  for (std::size_t k = 0; k < std::min(ways.size(), most_ways); ++k) {
    PlotPanel panel = way_panel(q, k, energy);
    panel.y = energy.axis("electricity of a month");
    if (k > 0) panel.y.title.clear();
    panel.y.reaches = energy(most_J);
    // Named once, where both are there.
    if (said || panel.bars.size() < 2) {
      for (PlotBars& bars : panel.bars) bars.words.clear();
    } else {
      said = true;
    }
    plot.panel.push_back(std::move(panel));
  }
  return draw_plot(plot);
}

std::optional<DrawnPlot> sweating_plot(const Quotes& q) {
  if (!q.answer().winter || q.answer().winter->way.empty()) return std::nullopt;
  const Sweating& sweating = q.answer().winter->way.front().sweating;
  PlotPanel panel;
  panel.bars = {hours_bars(sweating.wet_s, "the floor sweats", PlotTone::dark),
                hours_bars(sweating.damp_s, "so damp that iron rusts", PlotTone::light)};
  const auto some = [](const PlotBars& bars) {
    return std::any_of(bars.value.begin(), bars.value.end(), [](double h) { return h > 0.0; });
  };
  panel.bars.erase(std::remove_if(panel.bars.begin(), panel.bars.end(), [&](const PlotBars& b) { return !some(b); }),
                   panel.bars.end());
  if (panel.bars.empty()) return std::nullopt;
  panel.y.title = "hours a month";
  if (!sweating.inside_known) panel.heading = {tell("by outdoor dew points alone")};
  return draw_plot({"When the floor sweats",
                    "Hours of each month in which water condenses on the floor.",
                    axis_of_words("", months_from(0)),
                    {panel}});
}

}  // namespace slabwright::sheets
