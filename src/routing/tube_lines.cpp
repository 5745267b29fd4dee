// Tube lines along one axis: two for each column or row of cells, fitted between marks.
#include <algorithm>
#include <cmath>

#include "bands.hpp"
#include "marks.hpp"

namespace slabwright::routing {
namespace {

constexpr double same_m = 2e-6;
/// A line with slack is tried in so many places on either side.
constexpr int slack_steps = 6;
/// What the whole of a mark's slack costs, against the same part of a cell stretched.
constexpr double slack_price = 0.1;
/// Cells come out at least so wide, in cells of the spacing: nearer, and tube breaks its distance.
constexpr double least_cell = 0.935;
/// Tube lines may be drawn in by so much, in spacings, to pass an opening.
constexpr double drawn_in = 0.06;

using Kind = Mark::Kind;

/// The lines where the cells before a mark end and those after it begin.
double end_before(const Mark& mark, double left_cell_m, double right_cell_m) {
  switch (mark.kind) {
    case Kind::floor_after: return mark.right_m - 0.25 * right_cell_m;
    case Kind::line: return mark.left_m;
    default: return mark.left_m + 0.25 * left_cell_m;
  }
}
double begin_after(const Mark& mark, double left_cell_m, double right_cell_m) {
  return mark.kind == Kind::floor_beside ? mark.right_m - 0.25 * right_cell_m
                                         : end_before(mark, left_cell_m, right_cell_m);
}

/// Cells between two lines: the nearest number, but rather wide cells than ones that are too narrow.
int count_of(double length_m, double cell_m, const Fit& fit) {
  const int nearest = std::max(1, static_cast<int>(std::floor(length_m / cell_m + 0.5)));
  return nearest > 1 && length_m < fit.squeezed * nearest * cell_m ? nearest - 1 : nearest;
}

class Fitting {
 public:
  Fitting(const LayoutTask& task, bool x, const Fit& fit)
      : cell_m_(2.0 * task.spacing_m), fit_(fit), marks_(marks_of(task, x, fit)) {
    for (const BandStrip& strip : strips_of(task)) {
      const double inward = x ? strip.inward.x_m : strip.inward.y_m, at = x ? strip.at.x_m : strip.at.y_m;
      if (std::abs(inward) < 0.5) continue;
      const double to = at + inward * strip.depth_m;
      bands_.push_back({std::min(at, to), std::max(at, to), 2.0 * strip.spacing_m});
    }
  }

  std::vector<double> lines() {
    choose();
    std::vector<Part> parts = placed();
    for (auto tight = tightest(parts); tight && kept_.size() > 2; tight = tightest(parts)) {
      kept_.erase(kept_.begin() + static_cast<std::ptrdiff_t>(less_wanted_end(*tight)));
      parts = placed();
    }
    return tubes_of(parts);
  }

  /// Exactly a spacing apart from the first wall on; less than two are left over before the last.
  std::vector<double> exact_lines() {
    choose();
    const double from_m = begin_after(kept_.front(), cell_m_, cell_m_),
                 to_m = end_before(kept_.back(), cell_m_, cell_m_);
    const int tubes = 2 * std::max(1, static_cast<int>((to_m - from_m + same_m) / cell_m_));
    std::vector<double> all;
    for (int k = 0; k < tubes; ++k) all.push_back(from_m + 0.5 * (k + 0.5) * cell_m_);
    return all;
  }

 private:
  struct Band {
    double from_m, to_m, cell_m;
  };

  double cell_at(double at_m) const {
    double least = cell_m_;
    for (const Band& band : bands_) {
      if (at_m > band.from_m && at_m < band.to_m) least = std::min(least, band.cell_m);
    }
    return least;
  }
  /// Where a mark stands, as far as cells of the common size tell.
  double place_of(const Mark& mark) const {
    return 0.5 * (end_before(mark, cell_m_, cell_m_) + begin_after(mark, cell_m_, cell_m_));
  }
  double cell_between(const Mark& a, const Mark& b) const { return cell_at(0.5 * (place_of(a) + place_of(b))); }

  /// How far cells between two marks are off their size; nothing where that is more than the fit allows.
  std::optional<double> misfit(const Mark& a, const Mark& b, const Fit& fit) const {
    const double cell_m = cell_between(a, b);
    const double length_m = end_before(b, cell_m, cell_m) - begin_after(a, cell_m, cell_m);
    if (length_m <= same_m) return std::nullopt;
    const double stretch = length_m / (count_of(length_m, cell_m, fit) * cell_m);
    if (stretch < fit.squeezed || stretch > fit.stretched) return std::nullopt;
    return std::abs(stretch - 1.0);
  }

  /// The outermost walls, and of the marks between them, by rank and length, those that cells fit between.
  void choose() {
    const auto before = [&](const Mark& a, const Mark& b) { return place_of(a) < place_of(b); };
    std::vector<Mark> walls = marks_;
    walls.erase(std::remove_if(walls.begin(), walls.end(), [](const Mark& m) { return m.kind == Kind::line; }),
                walls.end());
    std::stable_sort(walls.begin(), walls.end(), before);
    kept_ = {walls.front(), walls.back()};
    std::stable_sort(marks_.begin(), marks_.end(), before);
    std::stable_sort(marks_.begin(), marks_.end(), [](const Mark& a, const Mark& b) {
      return a.rank != b.rank ? a.rank < b.rank : a.length_m > b.length_m;
    });
    for (const Mark& mark : marks_) add(mark);
  }

  /// Kept marks from the first that stands behind this one on.
  std::vector<Mark>::const_iterator behind(const Mark& mark) const {
    return std::upper_bound(kept_.begin(), kept_.end(), mark,
                            [&](const Mark& a, const Mark& b) { return place_of(a) < place_of(b); });
  }

  /// A mark with the one that ends its cells, if they fit between kept ones.
  std::optional<double> price_of(const Mark& mark, const Mark& end) const {
    const auto place = behind(mark);
    if (place == kept_.begin() || place == kept_.end() || behind(end) != place) return std::nullopt;
    const auto left = misfit(*(place - 1), mark, mark.fit), right = misfit(end, *place, mark.fit);
    if (!left || !right) return std::nullopt;
    return *left + *right;
  }

  void add(const Mark& mark) {
    std::vector<Mark> best;
    double least = HUGE_VAL;
    const int steps = mark.slack_m > 0.0 ? slack_steps : 0;
    for (int k = -steps; k <= steps; ++k) {
      Mark moved = mark;
      if (k != 0) moved.left_m = moved.right_m = mark.left_m + mark.slack_m * k / steps;
      Mark end = moved;
      end.left_m = end.right_m = moved.left_m + mark.cells_m;
      const auto misfits = price_of(moved, mark.cells_m > 0.0 ? end : moved);
      if (!misfits) continue;
      const double price = *misfits + (k != 0 ? slack_price * std::abs(k) / steps : 0.0);
      if (price >= least - 1e-9) continue;
      least = price;
      best = {moved};
      if (mark.cells_m > 0.0) best.push_back(end);
    }
    if (!best.empty()) kept_.insert(behind(best[0]), best.begin(), best.end());
  }

  /// Cells between two kept marks.
  struct Part {
    double begin_m = 0.0, size_m = 0.0, asked_m = 0.0;
    int count = 0;
  };

  /// A wall's line lies a quarter of its cells from its tube, and the cells are what lies between lines: a few rounds
  /// bring the two together.
  std::vector<Part> placed() const {
    std::vector<Part> parts(kept_.size() - 1);
    for (std::size_t k = 0; k < parts.size(); ++k) {
      parts[k].asked_m = cell_between(kept_[k], kept_[k + 1]);
      parts[k].size_m = parts[k].asked_m;
    }
    for (int round = 0; round < 40; ++round) place(parts, round == 0);
    return parts;
  }

  void place(std::vector<Part>& parts, bool counts) const {
    std::vector<double> end(parts.size());
    for (std::size_t k = 0; k <= parts.size(); ++k) {
      const double left_m = parts[k > 0 ? k - 1 : 0].size_m, right_m = parts[k < parts.size() ? k : k - 1].size_m;
      if (k > 0) end[k - 1] = end_before(kept_[k], left_m, right_m);
      if (k < parts.size()) parts[k].begin_m = begin_after(kept_[k], left_m, right_m);
    }
    for (std::size_t k = 0; k < parts.size(); ++k) {
      const double length_m = end[k] - parts[k].begin_m;
      if (counts) parts[k].count = count_of(length_m, parts[k].asked_m, fit_of(k));
      parts[k].size_m = length_m / parts[k].count;
    }
  }

  static std::vector<double> tubes_of(const std::vector<Part>& parts) {
    std::vector<double> tubes;
    for (const Part& part : parts) {
      for (int i = 0; i < part.count; ++i) {
        tubes.push_back(part.begin_m + (i + 0.25) * part.size_m);
        tubes.push_back(part.begin_m + (i + 0.75) * part.size_m);
      }
    }
    return tubes;
  }

  /// Cells that came out narrower than tube may lie: marks were chosen by cells of the common size.
  static std::optional<std::size_t> tightest(const std::vector<Part>& parts) {
    std::optional<std::size_t> tight;
    double least = least_cell;
    for (std::size_t k = 0; k < parts.size(); ++k) {
      const double cell = parts[k].size_m / parts[k].asked_m;
      if (cell >= least) continue;
      least = cell;
      tight = k;
    }
    return tight;
  }

  /// Of the marks at the ends of a part, the one that is no outer wall, or of two the one of lower rank.
  std::size_t less_wanted_end(std::size_t part) const {
    if (part == 0) return 1;
    if (part + 2 == kept_.size()) return part;
    return kept_[part].rank > kept_[part + 1].rank ? part : part + 1;
  }

  /// Cells between two marks come out as they were counted when the later of the two was put in.
  const Fit& fit_of(std::size_t part) const {
    const Mark &a = kept_[part], &b = kept_[part + 1];
    if (part == 0 && part + 2 == kept_.size()) return fit_;
    const bool a_loose = part > 0 && a.fit.squeezed < fit_.squeezed;
    const bool b_loose = part + 2 < kept_.size() && b.fit.squeezed < fit_.squeezed;
    return b_loose ? b.fit : a_loose ? a.fit : fit_;
  }

  double cell_m_;
  Fit fit_;
  std::vector<Mark> marks_, kept_;
  std::vector<Band> bands_;
};

/// An opening just wide enough asks for its tubes to the inch, and cells come out a little off their size.
void draw_in(const LayoutTask& task, bool x, std::vector<double>& tubes) {
  for (const Opening& opening : openings_of(task)) {
    const double from_m = (x ? opening.from.x_m : opening.from.y_m) + opening.clearance_m;
    const double to_m = (x ? opening.to.x_m : opening.to.y_m) - opening.clearance_m;
    if (to_m < from_m) continue;
    for (std::size_t i = 0; i + 1 < tubes.size(); i += 2) {
      const double first_m = std::max(tubes[i], from_m), last_m = std::min(tubes[i + 1], to_m);
      const double by_m = std::max(first_m - tubes[i], tubes[i + 1] - last_m);
      const bool enough = last_m - first_m >= (1.0 - drawn_in) * task.spacing_m;
      if (by_m > 0.0 && by_m <= drawn_in * task.spacing_m && enough) {
        tubes[i] = first_m;
        tubes[i + 1] = last_m;
      }
    }
  }
}

/// Lines of a symmetric task that are so to a hair are made so to the last bit.
void make_even(std::vector<double>& tubes) {
  const std::size_t n = tubes.size();
  constexpr double hair_m = 1e-4;
  for (std::size_t i = 0; i < n; ++i) {
    if (std::abs(tubes[i] + tubes[n - 1 - i]) > hair_m) return;
  }
  for (std::size_t i = 0; i < n / 2; ++i) tubes[n - 1 - i] = -tubes[i];
}

}  // namespace

std::vector<double> tube_lines(const LayoutTask& task, bool x, const Fit& fit) {
  if (task.exact_spacing) return Fitting(task, x, fit).exact_lines();
  std::vector<double> tubes = Fitting(task, x, fit).lines();
  draw_in(task, x, tubes);
  if (x && fit.about_axis) make_even(tubes);
  return tubes;
}

}  // namespace slabwright::routing
