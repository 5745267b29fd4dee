// What a plot is put together from: pens and sizes, text of several lines, panels with their ends, things on paper.
#pragma once
#include <string>
#include <vector>

#include "plan_parts.hpp"
#include "slabwright/drawing_plot.hpp"

namespace slabwright::drawn {

constexpr double plot_text_m = 3.2 * mm, plot_line_m = 4.0 * mm;
constexpr double plot_edge_m = 0.8 * mm;  ///< left free at the picture's rim
constexpr double mark_m = 1.1 * mm;       ///< radius of a marked place
constexpr double clear_m = 0.7 * mm;      ///< between words and what they name

/// Ticks that hold two values, `most` of them or fewer.
RoundTicks ticks_around(double low, double high, int most, PlotSteps steps);

/// Lines of text as one label.
struct TextBlock {
  PlotWords line;
  double width_m = 0.0, height_m = 0.0;
};
TextBlock block_of(const PlotWords& words);
void write_block(std::vector<SheetShape>& to, const TextBlock& block, const LabelSpot& spot, Colour colour);
std::string spoken(const PlotWords& words);

/// Ends of values; grows to hold what it is given.
struct Span {
  bool known = false;
  double low = 0.0, high = 0.0;
  void hold(double value);
};

/// Panels with their places and ends, and the shapes of their axes.
struct PlotSheet {
  double width_m = 0.0, height_m = 0.0;
  std::vector<PlotFrame> frame;
  std::vector<SheetShape> grid;       ///< below everything
  std::vector<SheetShape> axes;       ///< above everything
  std::vector<std::string> left_out;  ///< headings that are wider than the picture
};
/// `room_m`: of each panel, how much is kept free above its largest value.
PlotSheet sheet_of(const Plot& plot, const std::vector<double>& room_m);

/// Ends of x of all panels; of y of one.
Span span_x(const Plot& plot);
Span span_y(const PlotPanel& panel);

/// A broken line on paper, cut off at the panel's sides.
using Stroke = std::vector<Point>;
struct DrawnCurve {
  std::vector<Stroke> part;
  Colour colour;
};
DrawnCurve curve_of(const PlotLine& line, const PlotFrame& frame);
void draw_curve(std::vector<SheetShape>& to, const PlotLine& line, const DrawnCurve& curve, const PlotFrame& frame);
/// Outlines of a shaded band, upper and lower.
struct DrawnBand {
  Stroke low, high;
};
DrawnBand band_of(const PlotBand& band, const PlotFrame& frame);
SheetShape band_shape(const DrawnBand& band);
/// What lies beyond a limit; without size where that is nothing.
Box beyond(const PlotWall& wall, const PlotFrame& frame);
void draw_wall(std::vector<SheetShape>& to, const PlotWall& wall, const PlotFrame& frame);
/// Bars of one series, by their x.
std::vector<Box> bars_of(const PlotPanel& panel, std::size_t series, const PlotFrame& frame);
Area bar_shape(const Box& bar, PlotTone tone);
void draw_mark(std::vector<SheetShape>& to, const PlotMark& mark, const PlotFrame& frame);

/// Words of one panel, each at its place.
struct PanelWords {
  std::vector<SheetShape> shape;
  std::vector<std::string> left_out;
};
PanelWords words_of(const PlotPanel& panel, const PlotFrame& frame);

}  // namespace slabwright::drawn
