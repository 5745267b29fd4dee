// A plot: its sheet, what is drawn in its panels, and words, with more room above where they find none.
#include <algorithm>
#include <iterator>

#include "plot_parts.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace drawn;

/// Room above the values grows by a line of text, so many times.
constexpr int most_rounds = 6;
/// So much of a panel stays for its values.
constexpr double least_left_m = 11.0 * mm;

/// Everything of a plot on one sheet.
struct Tried {
  PlotSheet sheet;
  std::vector<PanelWords> words;

  std::size_t missing() const {
    std::size_t number = 0;
    for (const PanelWords& one : words) number += one.left_out.size();
    return number;
  }
};

Tried tried(const Plot& plot, const std::vector<double>& room_m) {
  Tried made{sheet_of(plot, room_m), {}};
  for (std::size_t k = 0; k < plot.panel.size(); ++k)
    made.words.push_back(words_of(plot.panel[k], made.sheet.frame[k]));
  return made;
}

/// Where words are missing; panels that are to be compared get it together.
void more_room(const Plot& plot, const Tried& made, std::vector<double>& room_m) {
  bool compared = false;
  for (std::size_t k = 0; k < room_m.size(); ++k)
    compared = compared || (plot.panel[k].y.reaches && !made.words[k].left_out.empty());
  for (std::size_t k = 0; k < room_m.size(); ++k) {
    if (made.words[k].left_out.empty() && !(compared && plot.panel[k].y.reaches)) continue;
    room_m[k] = std::max(0.0, std::min(room_m[k] + plot_line_m, plot.panel[k].height_m - least_left_m));
  }
}

Tried with_room(const Plot& plot) {
  std::vector<double> room(plot.panel.size(), 0.0);
  Tried best = tried(plot, room);
  for (int round = 0; round < most_rounds && best.missing() > 0; ++round) {
    more_room(plot, best, room);
    Tried next = tried(plot, room);
    if (next.missing() < best.missing()) best = std::move(next);
  }
  return best;
}

/// From the ground up: shaded, hatched, bars, lines, marks.
void draw_panel(std::vector<SheetShape>& to, const PlotPanel& panel, const PlotFrame& frame) {
  for (const PlotBand& band : panel.band) to.push_back(band_shape(band_of(band, frame)));
  for (const PlotWall& wall : panel.wall) draw_wall(to, wall, frame);
  for (std::size_t s = 0; s < panel.bars.size(); ++s) {
    for (const Box& bar : bars_of(panel, s, frame)) {
      if (bar.low.y_m < bar.high.y_m && bar.low.x_m < bar.high.x_m) to.emplace_back(bar_shape(bar, panel.bars[s].tone));
    }
  }
  for (const PlotLine& line : panel.line) draw_curve(to, line, curve_of(line, frame), frame);
  for (const PlotMark& mark : panel.mark) draw_mark(to, mark, frame);
}

}  // namespace

Point on_paper(const PlotFrame& frame, PlotPoint at) {
  const Box& area = frame.area;
  return {area.low.x_m + (at.x - frame.low.x) / (frame.high.x - frame.low.x) * (area.high.x_m - area.low.x_m),
          area.low.y_m + (at.y - frame.low.y) / (frame.high.y - frame.low.y) * (area.high.y_m - area.low.y_m)};
}

namespace drawn {

Span span_x(const Plot& plot) {
  Span span;
  for (const PlotPanel& panel : plot.panel) {
    for (const PlotLine& line : panel.line) {
      for (const PlotPoint& at : line.at) span.hold(at.x);
    }
    for (const PlotBand& band : panel.band) {
      for (const PlotBandPoint& at : band.at) span.hold(at.x);
    }
    for (const PlotMark& mark : panel.mark) span.hold(mark.at.x);
    for (const PlotWall& wall : panel.wall) {
      if (wall.beyond == PlotBeyond::left || wall.beyond == PlotBeyond::right) span.hold(wall.at);
    }
    for (const PlotBars& bars : panel.bars) {
      if (bars.value.empty()) continue;
      span.hold(-0.5);
      span.hold(static_cast<double>(bars.value.size()) - 0.5);
    }
  }
  return span;
}

Span span_y(const PlotPanel& panel) {
  Span span;
  for (const PlotLine& line : panel.line) {
    for (const PlotPoint& at : line.at) span.hold(at.y);
  }
  for (const PlotBand& band : panel.band) {
    for (const PlotBandPoint& at : band.at) {
      span.hold(at.low);
      span.hold(at.high);
    }
  }
  for (const PlotMark& mark : panel.mark) span.hold(mark.at.y);
  for (const PlotWall& wall : panel.wall) {
    if (wall.beyond == PlotBeyond::below || wall.beyond == PlotBeyond::above) span.hold(wall.at);
  }
  std::vector<double> sum;
  for (const PlotBars& bars : panel.bars) {
    span.hold(0.0);
    sum.resize(std::max(sum.size(), bars.value.size()), 0.0);
    for (std::size_t k = 0; k < bars.value.size(); ++k) {
      sum[k] = panel.stacked ? sum[k] + bars.value[k] : bars.value[k];
      expects(!panel.stacked || bars.value[k] >= 0.0, "draw_plot: stacked bars that are negative");
      span.hold(sum[k]);
    }
  }
  return span;
}

}  // namespace drawn

DrawnPlot draw_plot(const Plot& plot) {
  expects(!plot.panel.empty(), "draw_plot: no panel");
  Tried made = with_room(plot);
  DrawnPlot drawn;
  drawn.frame = made.sheet.frame;
  drawn.left_out = made.sheet.left_out;
  std::vector<SheetShape> shapes, words;
  for (std::size_t k = 0; k < plot.panel.size(); ++k) {
    draw_panel(shapes, plot.panel[k], made.sheet.frame[k]);
    PanelWords& of_panel = made.words[k];
    std::move(of_panel.shape.begin(), of_panel.shape.end(), std::back_inserter(words));
    std::move(of_panel.left_out.begin(), of_panel.left_out.end(), std::back_inserter(drawn.left_out));
  }
  drawn.picture = {made.sheet.width_m, made.sheet.height_m, plot.title, plot.description, {}};
  drawn.picture.layer.push_back({"grid", std::move(made.sheet.grid), {}});
  drawn.picture.layer.push_back({"values", std::move(shapes), {}});
  drawn.picture.layer.push_back({"axes", std::move(made.sheet.axes), {}});
  drawn.picture.layer.push_back({"words", std::move(words), {}});
  return drawn;
}

}  // namespace slabwright
