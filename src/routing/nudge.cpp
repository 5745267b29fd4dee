// Ends pushed out, straight or slanting as the wall does, and corners moved along their lines: tube comes nearer to
// bare floor without a bend more.
#include <algorithm>
#include <cmath>

#include "lying.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

std::ptrdiff_t offset(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

/// How far ends are pushed, one leg and the other, and corners are moved, in spacings.
constexpr double pushes[] = {1.5, 1.0, 0.75, 0.5, 0.35, 0.25, 0.15, 0.1};
constexpr double skews[] = {1.0, 0.75, 0.5, 0.25};
constexpr double moves[] = {1.0, 0.7, 0.4, 0.2};
/// Corners farther than this from bare floor stay, in spacings.
constexpr double near_enough = 2.0;
/// Bare spots that a right angle more is worth.
constexpr double angle_price = 3.0;
constexpr std::size_t most_tried = 10;

/// Corners from i on, as many as these, in other places.
struct Nudge {
  std::size_t loop = 0, i = 0;
  std::vector<Point> corner;
  double worth = 0.0;
};

class Nudger {
 public:
  Nudger(Lying& lying, const Bare& bare, double least_share)
      : lying_(lying),
        bare_(bare),
        s_(lying.spacing_m()),
        least_(std::max(1.0, least_share * static_cast<double>(bare.spot.size()))) {}

  bool nudge() {
    for (std::size_t k = 0; k < lying_.size(); ++k) {
      const auto& c = lying_.corners(k);
      for (std::size_t i = leader_corners; i + leader_corners < c.size(); ++i) {
        if (!is_near(c[i])) continue;
        if (i + 1 + leader_corners < c.size() && turns_back(c, i)) add_end(k, i);
        if (!turns_back(c, i) && !turns_back(c, i - 1)) add_corner(k, i);
      }
    }
    std::stable_sort(nudges_.begin(), nudges_.end(), [](const Nudge& a, const Nudge& b) { return a.worth > b.worth; });
    for (std::size_t n = 0; n < nudges_.size() && n < most_tried; ++n) {
      const Nudge& nudge = nudges_[n];
      Strand moved{lying_.corners(nudge.loop)};
      std::copy(nudge.corner.begin(), nudge.corner.end(), moved.corner.begin() + offset(nudge.i));
      if (lying_.take(nudge.loop, std::move(moved), lying_.rule())) return true;
    }
    return false;
  }

 private:
  bool is_near(Point p) const {
    const double by = near_enough * s_;
    return p.x_m > bare_.low.x_m - by && p.x_m < bare_.high.x_m + by && p.y_m > bare_.low.y_m - by &&
           p.y_m < bare_.high.y_m + by;
  }

  void add_end(std::size_t k, std::size_t i) {
    const auto& c = lying_.corners(k);
    const Point out = unit(minus(c[i], c[i - 1]));
    const auto pushed = [&](double a, double b) {
      add({k, i, {moved(c[i], out, a * s_), moved(c[i + 1], out, b * s_)}, 0.0});
    };
    for (const double by : pushes) pushed(by, by);
    // What is a bulb stays square.
    if (distance_m(c[i], c[i + 1]) < 2.0 * lying_.task().bend_radius_m) return;
    for (const double by : skews) {
      pushed(by, 0.0);
      pushed(0.0, by);
      pushed(by, 0.5 * by);
      pushed(0.5 * by, by);
    }
  }

  void add_corner(std::size_t k, std::size_t i) {
    const auto& c = lying_.corners(k);
    for (const Point along : {unit(minus(c[i], c[i - 1])), unit(minus(c[i + 1], c[i]))}) {
      for (const double by : moves) {
        add({k, i, {moved(c[i], along, by * s_)}, 0.0});
        add({k, i, {moved(c[i], along, -by * s_)}, 0.0});
      }
    }
  }

  void add(Nudge nudge) {
    const auto& c = lying_.corners(nudge.loop);
    std::vector<Point> line{c[nudge.i - 1]};
    line.insert(line.end(), nudge.corner.begin(), nudge.corner.end());
    line.push_back(c[nudge.i + nudge.corner.size()]);
    for (const int spot : bare_.spot) {
      bool heated = false;
      for (std::size_t n = 0; n + 1 < line.size() && !heated; ++n) {
        heated = within(lying_.map().spots()[index(spot)].place, line[n], line[n + 1], s_);
      }
      nudge.worth += heated ? 1.0 : 0.0;
    }
    if (nudge.worth < least_) return;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
      if (line[n] == line[n + 1] || !keeps_clear(lying_.task(), line[n], line[n + 1])) return;
    }
    nudge.worth -= angle_price * more_turned(nudge);
    if (nudge.worth > 0.0) nudges_.push_back(std::move(nudge));
  }

  /// Right angles that the line turns more for it.
  double more_turned(const Nudge& nudge) const {
    constexpr double right_angle = 1.5707963267948966;
    const auto& c = lying_.corners(nudge.loop);
    const std::size_t end = nudge.i + nudge.corner.size();
    const auto at = [&](std::size_t k) { return k >= nudge.i && k < end ? nudge.corner[k - nudge.i] : c[k]; };
    double more = 0.0;
    for (std::size_t k = nudge.i - 1; k <= end; ++k) {
      more += angle_between_rad(minus(at(k), at(k - 1)), minus(at(k + 1), at(k)));
      more -= angle_between_rad(minus(c[k], c[k - 1]), minus(c[k + 1], c[k]));
    }
    return more / right_angle;
  }

  Lying& lying_;
  const Bare& bare_;
  double s_;
  double least_;  ///< spots that a nudge must heat
  std::vector<Nudge> nudges_;
};

}  // namespace

bool nudge_into(Lying& lying, const Bare& bare, double least_share) { return Nudger(lying, bare, least_share).nudge(); }

}  // namespace slabwright::routing
