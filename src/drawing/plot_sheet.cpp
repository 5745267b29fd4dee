// Where the panels of a plot lie, their ends and their axes.
#include <algorithm>
#include <cmath>

#include "plot_parts.hpp"
#include "slabwright/contract.hpp"

namespace slabwright::drawn {
namespace {

constexpr Colour grid_grey{222, 224, 228};
constexpr double tick_m = 1.0 * mm, from_axis_m = 0.8 * mm, between_ticks_m = 1.6 * mm;
/// Text with a comma is deeper: by half of that its middle lies lower.
constexpr double comma_ratio = 0.105;
constexpr double tick_pitch_m = 7.0 * mm;  ///< of ticks along y, at least
constexpr double between_panels_m = 2.2 * mm;
constexpr int most_ticks = 9, most_ticks_y = 7;
constexpr Pen axis_pen{0.3 * mm, dark, Dash::solid}, grid_pen{0.15 * mm, grid_grey, Dash::solid};

/// An axis with its ends and ticks.
struct Scale {
  double low = 0.0, high = 1.0;
  std::vector<PlotTick> tick;
};

/// Both ends apart, however alike the values are.
Span opened(Span span) {
  if (!span.known) return {true, 0.0, 1.0};
  const double largest = std::max(std::abs(span.low), std::abs(span.high));
  if (span.high - span.low > std::max(1.0e-9 * largest, 1.0e-12)) return span;
  const double by = largest > 1.0e-11 ? 0.1 * largest : 1.0;
  return {true, span.low - by, span.high + by};
}

Span with_ends(Span span, const PlotAxis& axis) {
  for (const auto& end : {axis.least, axis.most, axis.reaches}) {
    if (end) span.hold(*end);
  }
  span = opened(span);
  expects(!axis.least || !axis.most || *axis.least < *axis.most, "draw_plot: ends of an axis that are not in order");
  if (axis.least) span.low = *axis.least;
  if (axis.most) span.high = *axis.most;
  // Where all values lie beyond the one end that is given.
  if (span.low >= span.high) (axis.least ? span.high : span.low) += axis.least ? 1.0 : -1.0;
  return span;
}

std::vector<PlotTick> worded(const RoundTicks& round, const PlotAxis& axis) {
  std::vector<PlotTick> ticks;
  for (const double at : round.at) ticks.push_back({at, tick_words(at, round.decimals, axis.commas)});
  return ticks;
}

Scale scale_y(const PlotPanel& panel, double room_m) {
  const Span span = with_ends(span_y(panel), panel.y);
  const double height = panel.height_m;
  const int most = std::clamp(static_cast<int>((height - room_m) / tick_pitch_m) + 1, 3, most_ticks_y);
  Scale scale{span.low, span.high, panel.y.tick};
  if (!panel.y.least || !panel.y.most) {
    const RoundTicks round = ticks_around(span.low, span.high, most, panel.y.steps);
    if (!panel.y.least) scale.low = std::min(span.low, round.at.front());
    if (!panel.y.most) scale.high = std::max(span.high, round.at.back());
    const double top = scale.low + (scale.high - scale.low) * height / (height - room_m);
    if (scale.tick.empty()) {
      for (std::size_t k = 0; k < round.at.size(); ++k) {
        if (round.at[k] >= scale.low) scale.tick.push_back({round.at[k], ""});
      }
      // The room that words were given is part of the axis.
      for (double at = round.at.back() + round.step; at <= top; at += round.step) scale.tick.push_back({at, ""});
      for (PlotTick& tick : scale.tick) tick.text = tick_words(tick.at, round.decimals, panel.y.commas);
    }
    scale.high = top;
    return scale;
  }
  scale.high = scale.low + (scale.high - scale.low) * height / (height - room_m);
  if (scale.tick.empty()) scale.tick = worded(round_ticks(scale.low, scale.high, most, panel.y.steps), panel.y);
  return scale;
}

double width_of(const std::string& text) { return text_size(text, plot_text_m, false).width_m; }

double widest(const std::vector<PlotTick>& ticks) {
  double width = 0.0;
  for (const PlotTick& tick : ticks) width = std::max(width, width_of(tick.text));
  return width;
}

bool stand_apart(const Scale& x, double per_value_m, std::size_t every) {
  for (std::size_t k = every; k < x.tick.size(); k += every) {
    const PlotTick &a = x.tick[k - every], &b = x.tick[k];
    const double apart = (b.at - a.at) * per_value_m;
    if (apart < 0.5 * (width_of(a.text) + width_of(b.text)) + between_ticks_m) return false;
  }
  return true;
}

/// Left and right of the panels, and the x axis between them.
struct Across {
  double left_m = 0.0, right_m = 0.0;
  Scale x;
};

/// Room for half of the words of the last ticks.
void widen(Across& across, double width_m) {
  const Scale& x = across.x;
  for (int round = 0; round < 2; ++round) {
    const double per = (width_m - across.left_m - across.right_m) / (x.high - x.low);
    for (const PlotTick& tick : x.tick) {
      const double half = 0.5 * width_of(tick.text) + plot_edge_m;
      across.left_m = std::max(across.left_m, half - (tick.at - x.low) * per);
      across.right_m = std::max(across.right_m, half - (x.high - tick.at) * per);
    }
  }
}

Across across_of(const Plot& plot, double left_m) {
  const Span span = with_ends(span_x(plot), plot.x);
  Across across{left_m, 2.0 * mm, {span.low, span.high, plot.x.tick}};
  const auto per_value = [&] { return (plot.width_m - across.left_m - across.right_m) / (span.high - span.low); };
  if (!plot.x.tick.empty()) {
    std::size_t every = 1;
    while (every < across.x.tick.size() && !stand_apart(across.x, per_value(), every)) ++every;
    for (std::size_t k = 0; k < across.x.tick.size(); ++k) {
      if (k % every != 0) across.x.tick[k].text.clear();
    }
    widen(across, plot.width_m);
    return across;
  }
  for (int most = most_ticks; most >= 2; --most) {
    Across tried = across;
    tried.x.tick = worded(round_ticks(span.low, span.high, most, plot.x.steps), plot.x);
    widen(tried, plot.width_m);
    const double per = (plot.width_m - tried.left_m - tried.right_m) / (span.high - span.low);
    if (most > 2 && !stand_apart(tried.x, per, 1)) continue;
    across = tried;
    if (!stand_apart(tried.x, per, 1)) across.x.tick.resize(1);
    break;
  }
  return across;
}

Lettering text_at(Point middle, const KeyedText& words, Align align) {
  return {middle, words.text, plot_text_m, dark, false, false, align, words.key};
}

/// A number whose digits stand about the place, whatever hangs below the line they stand on.
Lettering number_at(Point place, const KeyedText& words, Align align) {
  const bool deep = text_size(words.text, 1.0, false).height_m > 0.9;
  return text_at({place.x_m, place.y_m - (deep ? comma_ratio * plot_text_m : 0.0)}, words, align);
}

void add_words_left(std::vector<SheetShape>& to, const KeyedText& words, Point top_left) {
  const double width = width_of(words.text);
  to.emplace_back(text_at({top_left.x_m + 0.5 * width, top_left.y_m - 0.5 * plot_line_m}, words, Align::left));
}

void draw_y(PlotSheet& sheet, const Scale& y, const PlotFrame& frame) {
  for (const PlotTick& tick : y.tick) {
    const Point at = on_paper(frame, {frame.low.x, tick.at});
    if (at.y_m < frame.area.low.y_m - 1.0e-9 || at.y_m > frame.area.high.y_m + 1.0e-9) continue;
    sheet.grid.emplace_back(stroke(at, {frame.area.high.x_m, at.y_m}, grid_pen));
    sheet.axes.emplace_back(stroke({at.x_m - tick_m, at.y_m}, at, axis_pen));
    const double width = width_of(tick.text);
    const Point middle{at.x_m - tick_m - from_axis_m - 0.5 * width, at.y_m};
    sheet.axes.emplace_back(number_at(middle, {tick.text, scale_mark}, Align::right));
  }
  sheet.axes.emplace_back(stroke(frame.area.low, {frame.area.low.x_m, frame.area.high.y_m}, axis_pen));
}

void draw_x(PlotSheet& sheet, const PlotAxis& axis, const Scale& x, bool words) {
  const PlotFrame& frame = sheet.frame.back();
  const double bottom = frame.area.low.y_m;
  // Between words there is nothing to mark.
  const bool marks = axis.tick.empty() || axis.steps == PlotSteps::hours;
  for (const PlotTick& tick : x.tick) {
    const double at = on_paper(frame, {tick.at, frame.low.y}).x_m;
    if (at < frame.area.low.x_m - 1.0e-9 || at > frame.area.high.x_m + 1.0e-9) continue;
    if (marks) sheet.grid.emplace_back(stroke({at, bottom}, {at, frame.area.high.y_m}, grid_pen));
    if (marks) sheet.axes.emplace_back(stroke({at, bottom - tick_m}, {at, bottom}, axis_pen));
    if (!words || tick.text.empty()) continue;
    const Point middle{at, bottom - tick_m - from_axis_m - 0.5 * plot_text_m};
    const bool digits = tick.text.find_first_of("0123456789") != std::string::npos;
    sheet.axes.emplace_back(number_at(middle, {tick.text, digits ? scale_mark : ""}, Align::middle));
  }
  sheet.axes.emplace_back(stroke(frame.area.low, {frame.area.high.x_m, bottom}, axis_pen));
}

/// Heights are found from the top down, below zero; then all is lifted. Each gives the height that it ends at.
double head_of(PlotSheet& sheet, double down_m, const PlotPanel& panel) {
  for (const KeyedText& line : panel.heading) {
    if (width_of(line.text) > sheet.width_m - 2.0 * plot_edge_m) {
      sheet.left_out.push_back(line.text);
      continue;
    }
    add_words_left(sheet.axes, line, {plot_edge_m, down_m});
    down_m -= plot_line_m;
  }
  for (const std::string& line : wrapped(panel.y.title, plot_text_m, sheet.width_m - 2.0 * plot_edge_m)) {
    add_words_left(sheet.axes, {line, ""}, {plot_edge_m, down_m});
    down_m -= plot_line_m;
  }
  // The topmost tick's words reach above the panel.
  return down_m - 0.5 * plot_text_m;
}

double foot_of(PlotSheet& sheet, double down_m, const PlotAxis& x) {
  down_m -= tick_m + from_axis_m + plot_text_m;
  const Box& area = sheet.frame.back().area;
  for (const std::string& line : wrapped(x.title, plot_text_m, sheet.width_m - 2.0 * plot_edge_m)) {
    const double half = 0.5 * width_of(line);
    const double middle = std::clamp(0.5 * (area.low.x_m + area.high.x_m), plot_edge_m + half,
                                     std::max(plot_edge_m + half, sheet.width_m - plot_edge_m - half));
    sheet.axes.emplace_back(text_at({middle, down_m - 0.5 * plot_line_m - 0.3 * mm}, {line, ""}, Align::middle));
    down_m -= plot_line_m;
  }
  return down_m - plot_edge_m - 0.3 * mm;
}

void lift(std::vector<SheetShape>& shapes, double by_m) {
  for (SheetShape& shape : shapes) {
    if (auto* text = std::get_if<Lettering>(&shape)) text->middle.y_m += by_m;
    if (auto* trace = std::get_if<Trace>(&shape)) {
      for (Piece& piece : trace->path) {
        piece.from.y_m += by_m;
        piece.to.y_m += by_m;
      }
    }
  }
}

}  // namespace

void Span::hold(double value) {
  expects(std::isfinite(value) && std::abs(value) <= 1.0e12, "draw_plot: a value that is no number, or far too large");
  low = known ? std::min(low, value) : value;
  high = known ? std::max(high, value) : value;
  known = true;
}

PlotSheet sheet_of(const Plot& plot, const std::vector<double>& room_m) {
  PlotSheet sheet;
  sheet.width_m = plot.width_m;
  std::vector<Scale> y;
  double left = 0.0;
  for (std::size_t k = 0; k < plot.panel.size(); ++k) {
    y.push_back(scale_y(plot.panel[k], room_m[k]));
    left = std::max(left, widest(y.back().tick) + plot_edge_m + from_axis_m + tick_m);
  }
  const Across across = across_of(plot, left);
  double down_m = 0.0 - plot_edge_m;
  for (std::size_t k = 0; k < plot.panel.size(); ++k) {
    if (k > 0) down_m -= between_panels_m;
    down_m = head_of(sheet, down_m, plot.panel[k]);
    const Box area{{across.left_m, down_m - plot.panel[k].height_m}, {plot.width_m - across.right_m, down_m}};
    sheet.frame.push_back({area, {across.x.low, y[k].low}, {across.x.high, y[k].high}});
    draw_y(sheet, y[k], sheet.frame.back());
    const bool last = k + 1 == plot.panel.size();
    draw_x(sheet, plot.x, across.x, last);
    down_m = area.low.y_m - (last ? 0.0 : 0.5 * plot_text_m);
  }
  down_m = foot_of(sheet, down_m, plot.x);
  sheet.height_m = -down_m;
  lift(sheet.grid, sheet.height_m);
  lift(sheet.axes, sheet.height_m);
  for (PlotFrame& frame : sheet.frame) {
    frame.area.low.y_m += sheet.height_m;
    frame.area.high.y_m += sheet.height_m;
  }
  return sheet;
}

}  // namespace slabwright::drawn
