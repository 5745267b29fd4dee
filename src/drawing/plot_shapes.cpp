// Curves, bands, walls, bars and marks on paper.
#include <algorithm>
#include <array>
#include <cmath>

#include "plot_parts.hpp"
#include "slabwright/contract.hpp"

namespace slabwright::drawn {
namespace {

constexpr Colour brown{160, 66, 24}, blue{26, 84, 148}, green{36, 104, 60}, slate{92, 96, 104};
constexpr Colour shade{232, 226, 214}, wall_tint{250, 248, 244}, wall_marks{172, 174, 180};
constexpr double dot_m = 0.55 * mm, ring_m = 0.75 * mm, between_rings_m = 9.0 * mm;
/// Of a place's width, what its bars take together.
constexpr double bars_share = 0.8;

struct InkRow {
  Pen pen;
};
constexpr std::array<InkRow, 5> inks{{{{0.5 * mm, dark, Dash::solid}},
                                      {{0.5 * mm, brown, Dash::dashes}},
                                      {{0.5 * mm, blue, Dash::dash_dot}},
                                      {{0.3 * mm, green, Dash::solid}},
                                      {{0.9 * mm, slate, Dash::solid}}}};
const Pen& pen_of(PlotInk ink) { return inks[static_cast<std::size_t>(ink)].pen; }

/// The corners of a line of values; with steps, two for each value but the last.
Stroke corners_of(const PlotLine& line, const PlotFrame& frame) {
  Stroke corners;
  for (std::size_t k = 0; k < line.at.size(); ++k) {
    expects(k == 0 || line.at[k].x >= line.at[k - 1].x, "draw_plot: a line that runs back along x");
    if (line.steps && k > 0) corners.push_back(on_paper(frame, {line.at[k].x, line.at[k - 1].y}));
    corners.push_back(on_paper(frame, line.at[k]));
  }
  return corners;
}

bool in_frame(Point p, const PlotFrame& frame) { return within({p, p}, grown(frame.area, 1.0e-9)); }

Point part_way(Point a, Point b, double share) {
  return {a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
}

void go_on(std::vector<Stroke>& parts, Point from, Point to) {
  if (parts.empty() || !(parts.back().back() == from)) parts.push_back({from});
  parts.back().push_back(to);
}

/// Values this near to a straight line between others add nothing to see.
constexpr double unseen_m = 0.03 * mm;

/// Long series without the points that nobody sees.
Stroke thinned(const Stroke& all) {
  Stroke kept;
  std::size_t from = 0;
  for (std::size_t k = 0; k < all.size(); ++k) {
    if (k > 0 && k + 1 < all.size()) {
      bool straight = k + 1 - from < 40;
      for (std::size_t j = from + 1; j <= k && straight; ++j)
        straight = distance_to_edge_m(all[j], all[from], all[k + 1]) < unseen_m;
      if (straight) continue;
    }
    kept.push_back(all[k]);
    from = k;
  }
  return kept;
}

Path path_of(const Stroke& stroke) {
  Path path;
  for (std::size_t k = 1; k < stroke.size(); ++k) path.push_back(line(stroke[k - 1], stroke[k]));
  return path;
}

/// Rings along a curve, evenly, so that it is known without colour.
std::vector<Point> ring_places(const DrawnCurve& curve) {
  std::vector<Point> places;
  for (const Stroke& part : curve.part) {
    const Path path = path_of(part);
    const double whole = length_m(path);
    for (double at = 0.5 * between_rings_m; at < whole; at += between_rings_m) places.push_back(point_at(path, at));
  }
  return places;
}

Box cut(const Box& box, const Box& by) {
  return {{std::max(box.low.x_m, by.low.x_m), std::max(box.low.y_m, by.low.y_m)},
          {std::min(box.high.x_m, by.high.x_m), std::min(box.high.y_m, by.high.y_m)}};
}

}  // namespace

DrawnCurve curve_of(const PlotLine& line, const PlotFrame& frame) {
  DrawnCurve curve{{}, pen_of(line.ink).colour};
  const Stroke corners = corners_of(line, frame);
  if (corners.size() == 1 && in_frame(corners[0], frame)) curve.part.push_back(corners);
  const Floor area{ring_of(frame.area), {}};
  for (std::size_t k = 1; k < corners.size(); ++k) {
    const Point a = corners[k - 1], b = corners[k];
    if (in_frame(a, frame) && in_frame(b, frame)) {
      go_on(curve.part, a, b);
      continue;
    }
    if (a == b) continue;
    for (const Share& share : clipped(a, b, area)) {
      go_on(curve.part, share.from_ratio <= 0.0 ? a : part_way(a, b, share.from_ratio),
            share.to_ratio >= 1.0 ? b : part_way(a, b, share.to_ratio));
    }
  }
  for (Stroke& part : curve.part) part = thinned(part);
  return curve;
}

void draw_curve(std::vector<SheetShape>& to, const PlotLine& line, const DrawnCurve& curve, const PlotFrame& frame) {
  const Pen& pen = pen_of(line.ink);
  for (const Stroke& part : curve.part) {
    if (part.size() > 1) to.emplace_back(Trace{path_of(part), pen});
  }
  if (line.ink == PlotInk::rings) {
    for (const Point at : ring_places(curve)) to.emplace_back(Disc{at, ring_m, white, {0.3 * mm, pen.colour, {}}});
  }
  if (!line.dots && line.at.size() > 1) return;
  for (const PlotPoint& value : line.at) {
    const Point at = on_paper(frame, value);
    if (in_frame(at, frame)) to.emplace_back(Disc{at, dot_m, pen.colour, {}});
  }
}

DrawnBand band_of(const PlotBand& band, const PlotFrame& frame) {
  DrawnBand drawn;
  const Box& area = frame.area;
  for (const PlotBandPoint& at : band.at) {
    const Point low = on_paper(frame, {at.x, at.low}), high = on_paper(frame, {at.x, at.high});
    if (low.x_m < area.low.x_m - 1.0e-9 || low.x_m > area.high.x_m + 1.0e-9) continue;
    drawn.low.push_back({low.x_m, std::clamp(low.y_m, area.low.y_m, area.high.y_m)});
    drawn.high.push_back({high.x_m, std::clamp(high.y_m, area.low.y_m, area.high.y_m)});
  }
  return drawn;
}

SheetShape band_shape(const DrawnBand& band) {
  Polygon ring = band.low;
  ring.insert(ring.end(), band.high.rbegin(), band.high.rend());
  return Area{{ring}, Fill{shade, Pattern::plain, dark}, {}};
}

Box beyond(const PlotWall& wall, const PlotFrame& frame) {
  const Point limit = on_paper(frame, {wall.at, wall.at});
  Box box = frame.area;
  switch (wall.beyond) {
    case PlotBeyond::below: box.high.y_m = limit.y_m; break;
    case PlotBeyond::above: box.low.y_m = limit.y_m; break;
    case PlotBeyond::left: box.high.x_m = limit.x_m; break;
    case PlotBeyond::right: box.low.x_m = limit.x_m; break;
  }
  return cut(box, frame.area);
}

void draw_wall(std::vector<SheetShape>& to, const PlotWall& wall, const PlotFrame& frame) {
  const Box box = beyond(wall, frame);
  const Point limit = on_paper(frame, {wall.at, wall.at});
  const Box& area = frame.area;
  if (box.low.x_m < box.high.x_m && box.low.y_m < box.high.y_m)
    to.emplace_back(Area{{ring_of(box)}, Fill{wall_tint, Pattern::hatch, wall_marks}, {}});
  const Pen pen{0.7 * mm, dark, Dash::solid};
  const bool flat = wall.beyond == PlotBeyond::below || wall.beyond == PlotBeyond::above;
  if (flat && limit.y_m >= area.low.y_m && limit.y_m <= area.high.y_m)
    to.emplace_back(stroke({area.low.x_m, limit.y_m}, {area.high.x_m, limit.y_m}, pen));
  if (!flat && limit.x_m >= area.low.x_m && limit.x_m <= area.high.x_m)
    to.emplace_back(stroke({limit.x_m, area.low.y_m}, {limit.x_m, area.high.y_m}, pen));
}

std::vector<Box> bars_of(const PlotPanel& panel, std::size_t series, const PlotFrame& frame) {
  const std::vector<double>& value = panel.bars[series].value;
  const double each = panel.stacked ? bars_share : bars_share / static_cast<double>(panel.bars.size());
  std::vector<Box> bars;
  for (std::size_t k = 0; k < value.size(); ++k) {
    double x = static_cast<double>(k) - 0.5 * bars_share, below = 0.0;
    if (!panel.stacked) x += each * static_cast<double>(series);
    for (std::size_t s = 0; s < series && panel.stacked; ++s) {
      if (k < panel.bars[s].value.size()) below += panel.bars[s].value[k];
    }
    const Point from = on_paper(frame, {x, std::min(below, below + value[k])});
    const Point to = on_paper(frame, {x + each, std::max(below, below + value[k])});
    bars.push_back(cut({from, to}, frame.area));
  }
  return bars;
}

Area bar_shape(const Box& bar, PlotTone tone) {
  static constexpr std::array<Fill, 5> fills{{{{66, 70, 78}, Pattern::plain, {}},
                                              {{255, 255, 255}, Pattern::plain, {}},
                                              {{246, 240, 228}, Pattern::hatch, {110, 112, 118}},
                                              {{214, 138, 80}, Pattern::plain, {}},
                                              {{226, 236, 246}, Pattern::dots, {70, 74, 82}}}};
  return {{ring_of(bar)}, fills[static_cast<std::size_t>(tone)], {0.2 * mm, dark, Dash::solid}};
}

void draw_mark(std::vector<SheetShape>& to, const PlotMark& mark, const PlotFrame& frame) {
  const Point at = on_paper(frame, mark.at);
  if (!in_frame(at, frame)) return;
  to.emplace_back(Disc{at, mark_m, mark.ring ? white : dark, {0.4 * mm, dark, Dash::solid}});
}

}  // namespace slabwright::drawn
