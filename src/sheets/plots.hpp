// Curves from an answer. Each is empty where the answer has nothing for it, and says what words it had to leave out.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheets/markup.hpp"
#include "slabwright/drawing_plot.hpp"
#include "slabwright/report_quotes.hpp"

namespace slabwright::sheets {

/// The pump's curve, what the piping asks for, the hardest loop; the operating point and the duty to buy.
std::optional<DrawnPlot> pump_plot(const Quotes& q);

/// What the shop wants in each weather, what boiler and second source can give, and where they cross.
std::optional<DrawnPlot> heat_plot(const Quotes& q);

/// Cost of a winter, or energy without a price, against the slab sensor's setting (else the wall thermostat's), hatched
/// where something freezes.
std::optional<DrawnPlot> setting_plot(const Quotes& q);

/// Hours from a power cut to the first freezing, against the wall thermostat's setting, a line for each weather.
std::optional<DrawnPlot> hours_plot(const Quotes& q);

/// Slab, air and the place that freezes first through a power cut in the coldest hour.
std::optional<DrawnPlot> outage_plot(const Quotes& q);

/// From frost hold to working temperature, a panel for each weather.
std::optional<DrawnPlot> recovery_plot(const Quotes& q);

/// Electricity by month, a panel for each of the five best ways.
std::optional<DrawnPlot> months_plot(const Quotes& q);

/// The week of the cold snap: weather, air and slab, and below what heats.
std::optional<DrawnPlot> week_plot(const Quotes& q);

/// Hours by month in which the floor sweats, and in which it is damp, in the best way. Empty where it stays dry.
std::optional<DrawnPlot> sweating_plot(const Quotes& q);

/// A plot with a word of a-z and - for it, and what it shows, without digits.
struct ReaderPlot {
  std::string name;
  std::string caption;
  DrawnPlot drawn;
};
/// All that there are, in the order above.
std::vector<ReaderPlot> plots_of(const Quotes& q);

/// Those of these names in a page, each with what it shows; nothing where there is none.
Markup plot_figures(const Quotes& q, const std::vector<std::string_view>& names);

}  // namespace slabwright::sheets
