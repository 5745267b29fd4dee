// Places for labels: first come, first served; a neighbour gives way; a leader; line work covered.
#include "slabwright/drawing_labels.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

Box box_round(Point a, Point b) {
  return {{std::min(a.x_m, b.x_m), std::min(a.y_m, b.y_m)}, {std::max(a.x_m, b.x_m), std::max(a.y_m, b.y_m)}};
}

double distance_to_box_m(Point a, Point b, const Box& box) {
  const auto in = [&](Point p) { return within({p, p}, box); };
  if (in(a) || in(b)) return 0.0;
  const Polygon ring = ring_of(box);
  double least = distance_of_edges_m(a, b, ring[3], ring[0]);
  for (std::size_t k = 0; k < 3; ++k) least = std::min(least, distance_of_edges_m(a, b, ring[k], ring[k + 1]));
  return least;
}

/// Obstacles by the squares of the sheet that they touch, so that a box asks only those near it.
class Squares {
 public:
  Squares(const Box& sheet, const std::vector<Obstacle>& obstacles)
      : low_(sheet.low),
        columns_(static_cast<int>((sheet.high.x_m - sheet.low.x_m) / side_m) + 1),
        rows_(static_cast<int>((sheet.high.y_m - sheet.low.y_m) / side_m) + 1),
        of_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_)),
        obstacles_(obstacles) {
    for (std::size_t k = 0; k < obstacles.size(); ++k) {
      const Obstacle& one = obstacles[k];
      each(grown(box_round(one.from, one.to), one.reach_m), [&](std::size_t square, const Box& box) {
        if (distance_to_box_m(one.from, one.to, box) <= one.reach_m) of_[square].push_back(k);
      });
    }
  }

  /// Whether an obstacle of a kind touches the box.
  bool touched(const Box& box, Hardness hardness) const {
    bool found = false;
    each(box, [&](std::size_t square, const Box&) {
      for (std::size_t k = 0; k < of_[square].size() && !found; ++k) found = touches(of_[square][k], box, hardness);
    });
    return found;
  }

  /// How many obstacles of a kind touch the box.
  int touching(const Box& box, Hardness hardness) const {
    std::vector<std::size_t> met;
    each(box, [&](std::size_t square, const Box&) {
      for (const std::size_t k : of_[square]) {
        if (touches(k, box, hardness)) met.push_back(k);
      }
    });
    std::sort(met.begin(), met.end());
    return static_cast<int>(std::unique(met.begin(), met.end()) - met.begin());
  }

 private:
  static constexpr double side_m = 0.005;

  bool touches(std::size_t k, const Box& box, Hardness hardness) const {
    const Obstacle& one = obstacles_[k];
    return one.hardness == hardness && overlap(grown(box, one.reach_m), box_round(one.from, one.to)) &&
           distance_to_box_m(one.from, one.to, box) < one.reach_m;
  }

  template <class Use>
  void each(const Box& box, Use use) const {
    const auto index = [](double offset_m, int number) {
      return std::clamp(static_cast<int>(std::floor(offset_m / side_m)), 0, number - 1);
    };
    for (int r = index(box.low.y_m - low_.y_m, rows_); r <= index(box.high.y_m - low_.y_m, rows_); ++r) {
      for (int c = index(box.low.x_m - low_.x_m, columns_); c <= index(box.high.x_m - low_.x_m, columns_); ++c) {
        const Point corner{low_.x_m + c * side_m, low_.y_m + r * side_m};
        use(static_cast<std::size_t>(r) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(c),
            Box{corner, {corner.x_m + side_m, corner.y_m + side_m}});
      }
    }
  }

  Point low_;
  int columns_, rows_;
  std::vector<std::vector<std::size_t>> of_;
  const std::vector<Obstacle>& obstacles_;
};

class Placer {
 public:
  Placer(const Box& sheet, const std::vector<Obstacle>& obstacles, const std::vector<LabelWish>& wishes, double gap_m)
      : sheet_(sheet), squares_(sheet, obstacles), wishes_(wishes), gap_m_(gap_m), placed_(wishes.size()) {}

  LabelPlan run() {
    for (std::size_t k = 0; k < wishes_.size(); ++k) {
      if (at_a_spot(k) || neighbour_gives_way(k, false)) continue;
      const bool may_cover = wishes_[k].on_lines == OnLines::if_needed;
      if (may_cover && wishes_[k].lines_first && on_lines(k)) continue;
      if (with_leader(k, false) || !may_cover) continue;
      if (!on_lines(k) && !with_leader(k, true)) neighbour_gives_way(k, true);
    }
    LabelPlan plan{placed_, {}};
    for (std::size_t k = 0; k < placed_.size(); ++k) {
      if (!placed_[k]) plan.left_out.push_back(k);
    }
    return plan;
  }

 private:
  Box box(std::size_t k, const LabelSpot& spot) const {
    const LabelWish& wish = wishes_[k];
    return spot.upright ? box_about(spot.middle, wish.height_m, wish.width_m)
                        : box_about(spot.middle, wish.width_m, wish.height_m);
  }

  /// On the sheet and clear of all that no label may cover, other labels left aside.
  bool clear_of_things(std::size_t k, const Box& b, bool lines) const {
    if (!within(b, sheet_) || squares_.touched(b, Hardness::solid)) return false;
    if (wishes_[k].on_lines == OnLines::freely) return true;
    return !squares_.touched(b, Hardness::mark) && (lines || !squares_.touched(b, Hardness::line));
  }

  bool leader_meets(const PlacedLabel& label, const Box& b) const {
    return !label.leader.empty() && distance_to_box_m(label.leader[0].from, label.leader[0].to, b) <= 0.0;
  }

  /// The labels that a box would touch, or whose leaders it would stand on; at most two are asked for.
  std::vector<std::size_t> in_the_way(std::size_t k, const Box& b) const {
    std::vector<std::size_t> found;
    const Box wide = grown(b, gap_m_);
    for (std::size_t j = 0; j < placed_.size() && found.size() < 2; ++j) {
      if (j == k || !placed_[j]) continue;
      if (overlap(wide, box(j, placed_[j]->spot)) || leader_meets(*placed_[j], wide)) found.push_back(j);
    }
    return found;
  }

  bool at_a_spot(std::size_t k) {
    for (const LabelSpot& spot : wishes_[k].spot) {
      const Box b = box(k, spot);
      if (!clear_of_things(k, b, false) || !in_the_way(k, b).empty()) continue;
      placed_[k] = PlacedLabel{spot, {}, false};
      return true;
    }
    return false;
  }

  bool neighbour_gives_way(std::size_t k, bool lines) {
    for (const LabelSpot& spot : wishes_[k].spot) {
      const Box b = box(k, spot);
      if (!clear_of_things(k, b, lines)) continue;
      const auto others = in_the_way(k, b);
      if (others.size() != 1) continue;
      const auto before = placed_[others[0]];
      placed_[k] = PlacedLabel{spot, {}, lines};
      placed_[others[0]].reset();
      if (at_a_spot(others[0])) return true;
      placed_[others[0]] = before;
      placed_[k].reset();
    }
    return false;
  }

  /// From the rim of the box to the target.
  Piece leader_from(const Box& b, Point target) const {
    return line({std::clamp(target.x_m, b.low.x_m, b.high.x_m), std::clamp(target.y_m, b.low.y_m, b.high.y_m)}, target);
  }

  bool leader_free(std::size_t k, const Piece& leader) const {
    for (std::size_t j = 0; j < placed_.size(); ++j) {
      if (j == k || !placed_[j]) continue;
      if (distance_to_box_m(leader.from, leader.to, box(j, placed_[j]->spot)) <= 0.0) return false;
      if (placed_[j]->leader.empty()) continue;
      const Piece& other = placed_[j]->leader[0];
      if (meet(leader.from, leader.to, other.from, other.to)) return false;
    }
    return true;
  }

  bool with_leader(std::size_t k, bool lines) {
    // Sixteen directions; steps short enough that a free place as large as a label is not stepped over.
    static constexpr Point ways[] = {
        {1, 0},     {0, 1},      {-1, 0},      {0, -1},     {0.8, 0.6},   {-0.8, 0.6},   {-0.8, -0.6},   {0.8, -0.6},
        {0.6, 0.8}, {-0.6, 0.8}, {-0.6, -0.8}, {0.6, -0.8}, {0.96, 0.28}, {-0.96, 0.28}, {-0.96, -0.28}, {0.96, -0.28}};
    const LabelWish& wish = wishes_[k];
    for (double away = 0.002; away <= wish.leader_m; away += 0.001) {
      for (const Point way : ways) {
        // The rim of the box, not its middle, stands this far away.
        const Point middle{wish.target.x_m + way.x_m * (away + 0.5 * wish.width_m),
                           wish.target.y_m + way.y_m * (away + 0.5 * wish.height_m)};
        const LabelSpot spot{middle, false};
        const Box b = box(k, spot);
        if (!clear_of_things(k, b, lines) || !in_the_way(k, b).empty()) continue;
        const Piece leader = leader_from(b, wish.target);
        if (!leader_free(k, leader)) continue;
        placed_[k] = PlacedLabel{spot, {leader}, lines};
        return true;
      }
    }
    return false;
  }

  /// The spot that covers least.
  bool on_lines(std::size_t k) {
    int least = 0;
    for (const LabelSpot& spot : wishes_[k].spot) {
      const Box b = box(k, spot);
      if (!clear_of_things(k, b, true) || !in_the_way(k, b).empty()) continue;
      const int covered = squares_.touching(b, Hardness::line);
      if (placed_[k] && covered >= least) continue;
      placed_[k] = PlacedLabel{spot, {}, true};
      least = covered;
    }
    return placed_[k].has_value();
  }

  Box sheet_;
  Squares squares_;
  const std::vector<LabelWish>& wishes_;
  double gap_m_;
  std::vector<std::optional<PlacedLabel>> placed_;
};

}  // namespace

LabelPlan place_labels(const Box& sheet, const std::vector<Obstacle>& obstacles, const std::vector<LabelWish>& wishes,
                       double gap_m) {
  expects(sheet.low.x_m < sheet.high.x_m && sheet.low.y_m < sheet.high.y_m, "place_labels: a sheet without size");
  return Placer(sheet, obstacles, wishes, gap_m).run();
}

}  // namespace slabwright
