#include "sheets/plots_parts.hpp"

#include <algorithm>

#include "slabwright/contract.hpp"

namespace slabwright::sheets {
namespace {

/// Letters of a plot, and how wide a line of them may be.
constexpr double plot_letters_m = 0.0032, plot_wide_m = 0.088;

Dimension dimension_of(Kind kind) {
  switch (kind) {
    case Kind::degree: return Dimension::degree;
    case Kind::heat: return Dimension::power;
    case Kind::flow: return Dimension::flow;
    case Kind::head: return Dimension::head;
    case Kind::pressure: return Dimension::pressure;
    case Kind::energy: return Dimension::energy;
    default: break;
  }
  throw std::logic_error("plots: a kind without an axis");
}

}  // namespace

InUnits::InUnits(Kind kind, System system)
    : dimension_(dimension_of(kind)), unit_(report::unit(kind, system)), commas_(system == System::us) {}

PlotAxis InUnits::axis(const std::string& title) const {
  PlotAxis axis;
  axis.title = title + ", " + std::string(unit_);
  axis.commas = commas_;
  return axis;
}

PlotAxis hours_axis(const std::string& title) {
  PlotAxis axis;
  axis.title = title;
  axis.steps = PlotSteps::hours;
  return axis;
}

double hours(double s) { return in_unit(s, "h", Dimension::time); }

void add_to(KeyedText& to, const Quote& quote) {
  to.text += quote.text;
  to.key += (to.key.empty() ? "" : " ") + quote.key;
}

void add_to(KeyedText& to, std::string_view words) {
  expects(words.find_first_of("0123456789") == std::string_view::npos, "plots: a digit in words of ours");
  to.text += words;
}

bool fits(const std::string& text) { return text_size(text, plot_letters_m, false).width_m < plot_wide_m; }

PlotWords heading_of(const Quote& quote) {
  PlotWords lines;
  for (const std::string& line : wrapped(quote.text, plot_letters_m, plot_wide_m)) lines.push_back({line, quote.key});
  return lines;
}

PlotLine line_of(PlotInk ink, PlotWords words) {
  PlotLine line;
  line.ink = ink;
  line.words = std::move(words);
  return line;
}

PlotLine course_of(PlotLine line, const std::vector<double>& value, double every_s, const InUnits& units) {
  for (std::size_t k = 0; k < value.size(); ++k)
    line.at.push_back({hours(every_s * static_cast<double>(k)), units(value[k])});
  return line;
}

namespace {

struct PlotRow {
  std::string_view name, caption;
  std::optional<DrawnPlot> (*plot)(const Quotes&);
};
constexpr PlotRow plot_rows[] = {
    {"pump", "What the pump gives and what the piping asks for.", pump_plot},
    {"heat", "What the shop wants in each weather, and what can give it.", heat_plot},
    {"setting", "What a winter takes, by the setting of the floor.", setting_plot},
    {"hours", "Hours without power until something freezes, by the setting before.", hours_plot},
    {"outage", "Floor and air through a power cut in the coldest hour.", outage_plot},
    {"recovery", "From the frost hold back to working temperature.", recovery_plot},
    {"months", "Electricity by month, for each way of running.", months_plot},
    {"week", "The week of the cold snap, hour by hour.", week_plot},
    {"sweating", "Hours in which the floor sweats, by month.", sweating_plot},
};

}  // namespace

std::vector<ReaderPlot> plots_of(const Quotes& q) {
  std::vector<ReaderPlot> plots;
  for (const PlotRow& row : plot_rows) {
    if (auto drawn = row.plot(q)) plots.push_back({std::string(row.name), std::string(row.caption), std::move(*drawn)});
  }
  return plots;
}

Markup plot_figures(const Quotes& q, const std::vector<std::string_view>& names) {
  Markup all;
  for (const std::string_view name : names) {
    const auto row =
        std::find_if(std::begin(plot_rows), std::end(plot_rows), [&](const PlotRow& one) { return one.name == name; });
    expects(row != std::end(plot_rows), "sheets: a plot of an unknown name");
    if (const auto drawn = row->plot(q)) all += figure(drawn->picture, name, prose(row->caption));
  }
  return all;
}

}  // namespace slabwright::sheets
