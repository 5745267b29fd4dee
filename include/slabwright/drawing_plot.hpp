// Plots: curves, bars and walls over axes, and words that stand beside what they name. Plain values in, a drawing out.
// Values are numbers in the unit that the axis' title names, no larger than 1e12.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/drawing.hpp"

namespace slabwright {

struct PlotPoint {
  double x = 0.0, y = 0.0;
};

/// One or more lines of text, one below the other. Each is written whole; none is broken.
using PlotWords = std::vector<KeyedText>;

struct PlotTick {
  double at = 0.0;
  std::string text;
};

/// What is round on an axis: 1, 2 and 5 of each decade; on a clock 1, 2, 3, 6, 12 h, days, weeks.
enum class PlotSteps { decimal, hours };

struct PlotAxis {
  std::string title;  ///< with its unit, without digits; broken where it is long
  /// Ends. Where absent: those of the values along x, round ones that hold all values along y.
  std::optional<double> least, most;
  std::optional<double> reaches;  ///< a value that it holds besides: panels to be compared have one scale then
  PlotSteps steps = PlotSteps::decimal;
  std::vector<PlotTick> tick;  ///< in place of round ones; where they stand too close, only some have their text
  bool commas = false;         ///< between thousands
};
/// An axis of words: the first at 0, the next at 1, ...
PlotAxis axis_of_words(std::string title, const std::vector<std::string>& words);

/// How lines are told apart without colour: solid, dashes, dash-dot, thin with rings, heavy and grey.
enum class PlotInk { solid, dashes, dash_dot, rings, heavy };

/// Along rising x.
struct PlotLine {
  std::vector<PlotPoint> at;
  PlotWords words;
  PlotInk ink = PlotInk::solid;
  bool steps = false;  ///< each value holds until the next x
  bool dots = false;   ///< one at each point; a line of one point has its dot anyway
};

struct PlotBandPoint {
  double x = 0.0, low = 0.0, high = 0.0;
};
/// What lies between two lines, shaded.
struct PlotBand {
  std::vector<PlotBandPoint> at;
  PlotWords words;
};

enum class PlotBeyond { below, above, left, right };
/// A limit, hatched on its bad side.
struct PlotWall {
  double at = 0.0;
  PlotBeyond beyond = PlotBeyond::below;
  PlotWords words;
};

/// A place to be seen: an operating point, a crossing.
struct PlotMark {
  PlotPoint at;
  PlotWords words;
  bool ring = false;
};

/// Fills of bars, told apart without colour.
enum class PlotTone { dark, light, hatched, middle, dotted };
struct PlotBars {
  std::vector<double> value;  ///< at x = 0, 1, ...; not negative where they are stacked
  PlotWords words;
  PlotTone tone = PlotTone::dark;
};

/// Things over one y axis. Bars stand side by side, or one upon the other.
struct PlotPanel {
  PlotWords heading;
  PlotAxis y;
  std::vector<PlotBand> band;
  std::vector<PlotWall> wall;
  std::vector<PlotBars> bars;
  bool stacked = false;
  std::vector<PlotLine> line;
  std::vector<PlotMark> mark;
  double height_m = 0.042;
};

/// Panels below one another over one x axis.
struct Plot {
  std::string title, description;  ///< for those who cannot see it; without digits
  PlotAxis x;
  std::vector<PlotPanel> panel;
  double width_m = 0.09;
};

/// Where a panel lies on paper, and which values its sides stand for.
struct PlotFrame {
  Box area;
  PlotPoint low, high;
};
Point on_paper(const PlotFrame& frame, PlotPoint at);

struct DrawnPlot {
  Picture picture;
  std::vector<PlotFrame> frame;       ///< of each panel
  std::vector<std::string> left_out;  ///< words for which no place was found without a collision
};

/// Draws the plot with letters that are read where it is 330 px wide (3.2 mm on 90 mm). A panel in which words find no
/// place gets more room above its values first. Values beyond an axis that has ends are cut off there. Asks for a
/// panel, finite values, lines of rising x, and ends in order.
DrawnPlot draw_plot(const Plot& plot);

/// Round values from `low` to `high`, no more than `most` (> 1) of them, and how many decimals they need.
struct RoundTicks {
  std::vector<double> at;
  double step = 0.0;
  int decimals = 0;
};
/// Ticks within the ends, in the finest steps that do not give too many.
RoundTicks round_ticks(double low, double high, int most, PlotSteps steps);
/// "1,500", "0.25", "-3"; beyond seven digits or five decimals as "2e-07".
std::string tick_words(double value, int decimals, bool commas);

}  // namespace slabwright
