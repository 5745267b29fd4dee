// Words beside what they name, in one panel.
#include <algorithm>
#include <cmath>

#include "plot_profile.hpp"

namespace slabwright::drawn {
namespace {

constexpr double leader_m = 30.0 * mm, off_curve_m = 0.45 * mm, gap_m = 0.5 * mm, ground_m = 0.4 * mm;
constexpr double stripe_m = 1.0 * mm, leader_pen_m = 0.2 * mm, leader_dot_m = 0.5 * mm;
constexpr double line_pitch_ratio = 1.15;

/// Words that want a place.
struct WantedWords {
  TextBlock block;
  LabelWish wish;
  Colour colour = dark;
  bool dotted = true;  ///< its leader ends in a dot
};

WantedWords wanted(const PlotWords& words, Point target, Colour colour) {
  WantedWords one{block_of(words), {}, colour, true};
  one.wish.width_m = one.block.width_m;
  one.wish.height_m = one.block.height_m;
  one.wish.target = target;
  one.wish.leader_m = leader_m;
  one.wish.on_lines = OnLines::if_needed;
  one.wish.lines_first = true;
  return one;
}

/// A box that no words may cover, as lines side by side.
void keep_clear(std::vector<Obstacle>& to, const Box& box, double by_m, Hardness hardness) {
  const double width = box.high.x_m - box.low.x_m, height = box.high.y_m - box.low.y_m;
  if (width <= 0.0 || height <= 0.0) return;
  const bool upright = height > width;
  const double thin = upright ? width : height;
  const int number = static_cast<int>(std::ceil(thin / stripe_m));
  const double half = 0.5 * thin / number;
  for (int k = 0; k < number; ++k) {
    const double at = (2 * k + 1) * half;
    const Point from =
        upright ? Point{box.low.x_m + at, box.low.y_m + half} : Point{box.low.x_m + half, box.low.y_m + at};
    const Point to_end = upright ? Point{from.x_m, box.high.y_m - half} : Point{box.high.x_m - half, from.y_m};
    to.push_back({from, to_end, half + by_m, hardness});
  }
}

/// A panel with what is drawn in it.
class Wording {
 public:
  Wording(const PlotPanel& panel, const PlotFrame& frame) : panel_(panel), frame_(frame) {
    for (const PlotLine& line : panel.line) {
      curves_.push_back(curve_of(line, frame));
      profiles_.push_back(profile_of(curves_.back().part, frame.area));
      for (const Stroke& part : curves_.back().part) {
        for (std::size_t k = 0; k < part.size(); ++k)
          obstacles_.push_back(keep_off(part[k > 0 ? k - 1 : 0], part[k], off_curve_m));
      }
    }
    for (const PlotMark& mark : panel.mark) {
      const Point at = on_paper(frame, mark.at);
      obstacles_.push_back(keep_off(at, at, mark_m + 0.3 * mm));
    }
    for (std::size_t s = 0; s < panel.bars.size(); ++s) {
      for (const Box& bar : bars_of(panel, s, frame)) keep_clear(obstacles_, bar, 0.3 * mm, Hardness::solid);
    }
  }

  PanelWords run() {
    std::vector<WantedWords> all;
    add_walls(all);
    add_marks(all);
    add_lines(all);
    add_bands(all);
    add_bars(all);
    place(all);
    return std::move(made_);
  }

 private:
  /// Words rather stand beside hatching than on it, but for those of the wall.
  void add_walls(std::vector<WantedWords>& all) {
    for (const PlotWall& wall : panel_.wall) {
      const Box box = beyond(wall, frame_);
      if (!wall.words.empty()) all.push_back(wall_wish(wall, box));
      add_limit(box, wall);
      keep_clear(obstacles_, box, 0.3 * mm, Hardness::line);
      hatched_.push_back(box);
    }
  }

  /// The limit's own line.
  void add_limit(const Box& box, const PlotWall& wall) {
    const bool flat = wall.beyond == PlotBeyond::below || wall.beyond == PlotBeyond::above;
    const bool at_high = wall.beyond == PlotBeyond::below || wall.beyond == PlotBeyond::left;
    const Point from = at_high ? (flat ? Point{box.low.x_m, box.high.y_m} : Point{box.high.x_m, box.low.y_m}) : box.low;
    const Point to = at_high ? box.high : (flat ? Point{box.high.x_m, box.low.y_m} : Point{box.low.x_m, box.high.y_m});
    obstacles_.push_back(keep_off(from, to, 0.35 * mm));
  }

  /// On the hatching, across it or upright; else beside it.
  WantedWords wall_wish(const PlotWall& wall, const Box& box) {
    const Box inner = grown(box, -(ground_m + 0.5 * mm));
    const Point middle{0.5 * (box.low.x_m + box.high.x_m), 0.5 * (box.low.y_m + box.high.y_m)};
    WantedWords one = wanted(wall.words, middle, dark);
    one.wish.on_lines = OnLines::freely;
    for (const bool upright : {false, true}) {
      const double w = upright ? one.wish.height_m : one.wish.width_m;
      const double h = upright ? one.wish.width_m : one.wish.height_m;
      for (const double up : {1.0, 0.5, 0.0, 0.75, 0.25}) {
        for (const double along : {0.5, 1.0, 0.0, 0.75, 0.25}) {
          const Point at{inner.low.x_m + 0.5 * w + along * (inner.high.x_m - inner.low.x_m - w),
                         inner.low.y_m + 0.5 * h + up * (inner.high.y_m - inner.low.y_m - h)};
          if (within(box_about(at, w, h), grown(inner, 1.0e-9))) one.wish.spot.push_back({at, upright});
        }
      }
    }
    add_spots_outside(one, wall, box);
    return one;
  }

  /// Along the limit, on its good side.
  void add_spots_outside(WantedWords& one, const PlotWall& wall, const Box& box) const {
    const double w = 0.5 * one.wish.width_m, h = 0.5 * one.wish.height_m, by = clear_m + 0.3 * mm;
    for (int k = 0; k <= 20; ++k) {
      const double up = frame_.area.high.y_m - 0.5 * mm - h - k * 2.0 * mm, along = box.low.x_m + w + k * 4.0 * mm;
      switch (wall.beyond) {
        case PlotBeyond::left: one.wish.spot.push_back({{box.high.x_m + by + w, up}, false}); break;
        case PlotBeyond::right: one.wish.spot.push_back({{box.low.x_m - by - w, up}, false}); break;
        case PlotBeyond::below: one.wish.spot.push_back({{along, box.high.y_m + by + h}, false}); break;
        case PlotBeyond::above: one.wish.spot.push_back({{along, box.low.y_m - by - h}, false}); break;
      }
    }
  }

  void add_marks(std::vector<WantedWords>& all) const {
    for (const PlotMark& mark : panel_.mark) {
      if (mark.words.empty()) continue;
      WantedWords one = wanted(mark.words, on_paper(frame_, mark.at), dark);
      one.dotted = false;
      const Point at = one.wish.target;
      const double x = mark_m + clear_m + 0.5 * one.block.width_m, y = mark_m + clear_m + 0.5 * one.block.height_m;
      const double lean = 0.7 * mark_m + 0.5 * one.block.width_m;
      for (const Point by : {Point{x, 0}, {-x, 0}, {lean, y}, {-lean, y}, {lean, -y}, {-lean, -y}, {0, y}, {0, -y}})
        one.wish.spot.push_back({{at.x_m + by.x_m, at.y_m + by.y_m}, false});
      all.push_back(std::move(one));
    }
  }

  void add_lines(std::vector<WantedWords>& all) {
    for (std::size_t k = 0; k < panel_.line.size(); ++k) {
      if (panel_.line[k].words.empty()) continue;
      const auto target = loneliest(profiles_, k);
      if (!target) {
        made_.left_out.push_back(spoken(panel_.line[k].words));
        continue;
      }
      WantedWords one = wanted(panel_.line[k].words, *target, curves_[k].colour);
      one.wish.spot = spots_beside(profiles_, k, one.block, frame_.area);
      all.push_back(std::move(one));
    }
  }

  void add_bands(std::vector<WantedWords>& all) {
    for (const PlotBand& band : panel_.band) {
      const DrawnBand drawn = band_of(band, frame_);
      if (band.words.empty()) continue;
      std::vector<std::pair<double, Point>> places;
      for (std::size_t k = 0; k < drawn.low.size(); ++k) {
        const Point a = drawn.low[k], b = drawn.high[k];
        places.push_back({b.y_m - a.y_m, {a.x_m, 0.5 * (a.y_m + b.y_m)}});
      }
      std::stable_sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
      if (places.empty()) {
        made_.left_out.push_back(spoken(band.words));
        continue;
      }
      WantedWords one = wanted(band.words, places[0].second, dark);
      for (const auto& [high, at] : places) {
        if (high > one.block.height_m + 2.0 * clear_m) one.wish.spot.push_back({at, false});
      }
      all.push_back(std::move(one));
    }
  }

  /// At a high bar, another one for each series, so that their leaders part.
  void add_bars(std::vector<WantedWords>& all) const {
    std::vector<std::size_t> taken;
    for (std::size_t s = 0; s < panel_.bars.size(); ++s) {
      const std::vector<Box> bars = bars_of(panel_, s, frame_);
      if (panel_.bars[s].words.empty() || bars.empty()) continue;
      const std::size_t k = told_bar(bars, s, taken);
      taken.push_back(k);
      const double top = bars[k].high.y_m, middle = 0.5 * (bars[k].low.y_m + top);
      all.push_back(wanted(panel_.bars[s].words,
                           {0.5 * (bars[k].low.x_m + bars[k].high.x_m), panel_.stacked ? middle : top}, dark));
    }
  }

  /// Of the high bars that are not taken the one nearest to the series' own place across the panel, else the highest.
  std::size_t told_bar(const std::vector<Box>& bars, std::size_t series, const std::vector<std::size_t>& taken) const {
    constexpr double high_share = 0.6;
    const auto height = [](const Box& bar) { return bar.high.y_m - bar.low.y_m; };
    const auto lower = [&](const Box& a, const Box& b) { return height(a) < height(b); };
    std::size_t best = static_cast<std::size_t>(std::max_element(bars.begin(), bars.end(), lower) - bars.begin());
    const double most = height(bars[best]);
    const double share = (static_cast<double>(series) + 0.5) / static_cast<double>(panel_.bars.size());
    const double liked = frame_.area.low.x_m + share * (frame_.area.high.x_m - frame_.area.low.x_m);
    double nearest = frame_.area.high.x_m;
    for (std::size_t k = 0; k < bars.size(); ++k) {
      const double off = std::abs(0.5 * (bars[k].low.x_m + bars[k].high.x_m) - liked);
      if (height(bars[k]) < high_share * most || off >= nearest) continue;
      if (std::find(taken.begin(), taken.end(), k) != taken.end()) continue;
      nearest = off;
      best = k;
    }
    return best;
  }

  void place(const std::vector<WantedWords>& all) {
    std::vector<LabelWish> wishes;
    for (const WantedWords& one : all) wishes.push_back(one.wish);
    const Box sheet = grown(frame_.area, -0.3 * mm);
    const LabelPlan plan = place_labels(sheet, obstacles_, wishes, gap_m);
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (plan.placed[k])
        write(all[k], *plan.placed[k]);
      else
        made_.left_out.push_back(spoken(all[k].block.line));
    }
  }

  void write(const WantedWords& one, const PlacedLabel& placed) {
    const LabelSpot& spot = placed.spot;
    const Box box = spot.upright ? box_about(spot.middle, one.block.height_m, one.block.width_m)
                                 : box_about(spot.middle, one.block.width_m, one.block.height_m);
    if (!placed.leader.empty()) {
      made_.shape.emplace_back(Trace{placed.leader, {leader_pen_m, dark, Dash::solid}});
      if (one.dotted)
        made_.shape.emplace_back(Disc{one.wish.target, leader_dot_m, white, {leader_pen_m, dark, Dash::solid}});
    }
    const Box ground = grown(box, ground_m);
    if (std::any_of(hatched_.begin(), hatched_.end(), [&](const Box& hatched) { return overlap(hatched, ground); }))
      made_.shape.emplace_back(Area{{ring_of(ground)}, Fill{white, Pattern::plain, white}, {}});
    write_block(made_.shape, one.block, spot, one.colour);
  }

  const PlotPanel& panel_;
  const PlotFrame& frame_;
  std::vector<DrawnCurve> curves_;
  std::vector<Profile> profiles_;
  std::vector<Obstacle> obstacles_;
  std::vector<Box> hatched_;
  PanelWords made_;
};

}  // namespace

TextBlock block_of(const PlotWords& words) {
  TextBlock block{words, 0.0, plot_text_m};
  for (const KeyedText& line : words) {
    block.width_m = std::max(block.width_m, text_size(line.text, plot_text_m, false).width_m);
  }
  if (words.size() > 1) block.height_m += line_pitch_ratio * plot_text_m * static_cast<double>(words.size() - 1);
  return block;
}

void write_block(std::vector<SheetShape>& to, const TextBlock& block, const LabelSpot& spot, Colour colour) {
  const double pitch = line_pitch_ratio * plot_text_m;
  for (std::size_t k = 0; k < block.line.size(); ++k) {
    const double down = pitch * (static_cast<double>(k) - 0.5 * static_cast<double>(block.line.size() - 1));
    // Upright text reads from below upwards: its next line lies to the right.
    const Point middle =
        spot.upright ? Point{spot.middle.x_m + down, spot.middle.y_m} : Point{spot.middle.x_m, spot.middle.y_m - down};
    to.emplace_back(Lettering{middle, block.line[k].text, plot_text_m, colour, false, spot.upright, Align::middle,
                              block.line[k].key});
  }
}

std::string spoken(const PlotWords& words) {
  std::string text;
  for (const KeyedText& line : words) text += (text.empty() ? "" : " ") + line.text;
  return text;
}

PanelWords words_of(const PlotPanel& panel, const PlotFrame& frame) { return Wording(panel, frame).run(); }

}  // namespace slabwright::drawn
