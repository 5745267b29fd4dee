#include "plot_profile.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace slabwright::drawn {
namespace {

/// Farther than this from other curves is far enough.
constexpr double far_m = 6.0 * mm;
/// And for the tip of a leader this is.
constexpr double enough_m = 1.5 * mm;
/// By so much its own curve must be nearer than any other.
constexpr double plain_m = 0.8 * mm;
/// What a place loses for each metre that it lies off the one that is liked best.
constexpr double dislike_ratio = 0.03;
constexpr double liked_share = 0.6;
constexpr std::size_t most_spots = 80;

std::size_t column_at(const Profile& profile, double x_m) {
  const double at = std::floor((x_m - profile.left_m) / slice_m);
  return static_cast<std::size_t>(std::clamp(at, 0.0, static_cast<double>(profile.low.size() - 1)));
}

void hold(Profile& profile, Point a, Point b) {
  if (b.x_m < a.x_m) std::swap(a, b);
  const double run = b.x_m - a.x_m;
  const auto height = [&](double x_m) {
    return run > 0.0 ? a.y_m + std::clamp((x_m - a.x_m) / run, 0.0, 1.0) * (b.y_m - a.y_m) : a.y_m;
  };
  for (std::size_t c = column_at(profile, a.x_m); c <= column_at(profile, b.x_m); ++c) {
    const double left = profile.middle_m(c) - 0.5 * slice_m;
    const double one = height(left), other = run > 0.0 ? height(left + slice_m) : b.y_m;
    profile.low[c] = std::min({profile.low[c], one, other});
    profile.high[c] = std::max({profile.high[c], one, other});
  }
}

double distance_to_others_m(const Box& box, const std::vector<Profile>& curves, std::size_t own) {
  double least = far_m;
  for (std::size_t k = 0; k < curves.size(); ++k) {
    if (k != own) least = std::min(least, distance_to_profile_m(box, curves[k], least));
  }
  return least;
}

/// Where the curve begins and ends.
std::pair<double, double> seen(const Profile& profile) {
  std::pair<double, double> ends{profile.left_m, profile.left_m};
  bool any = false;
  for (std::size_t c = 0; c < profile.low.size(); ++c) {
    if (profile.empty(c)) continue;
    if (!any) ends.first = profile.middle_m(c);
    ends.second = profile.middle_m(c);
    any = true;
  }
  return ends;
}

struct RankedSpot {
  LabelSpot spot;
  double rank_m = 0.0;
};

class Beside {
 public:
  Beside(const std::vector<Profile>& curves, std::size_t own, const TextBlock& block, const Box& area)
      : curves_(curves), own_(own), block_(block), area_(area) {
    const Profile& profile = curves[own];
    const auto [first, last] = seen(profile);
    liked_m_ = first + liked_share * (last - first);
  }

  std::vector<LabelSpot> run() {
    const Profile& own = curves_[own_];
    for (std::size_t c = 0; c < own.low.size(); c += 2) over_and_under(own.middle_m(c));
    for (std::size_t c = 0; c < own.low.size(); c += 3) {
      if (!own.empty(c)) at_the_sides(c);
    }
    std::stable_sort(found_.begin(), found_.end(),
                     [](const RankedSpot& a, const RankedSpot& b) { return a.rank_m > b.rank_m; });
    std::vector<LabelSpot> spots;
    for (std::size_t k = 0; k < std::min(found_.size(), most_spots); ++k) spots.push_back(found_[k].spot);
    return spots;
  }

 private:
  void over_and_under(double middle_m) {
    const Profile& own = curves_[own_];
    double low = 1.0, high = -1.0;
    const double half = 0.5 * block_.width_m;
    for (std::size_t c = column_at(own, middle_m - half); c <= column_at(own, middle_m + half); ++c) {
      if (own.empty(c)) continue;
      low = low > high ? own.low[c] : std::min(low, own.low[c]);
      high = std::max(high, own.high[c]);
    }
    if (low > high) return;
    try_at({middle_m, high + clear_m + 0.5 * block_.height_m});
    try_at({middle_m, low - clear_m - 0.5 * block_.height_m});
  }

  void at_the_sides(std::size_t c) {
    const Profile& own = curves_[own_];
    const double by = 0.5 * slice_m + clear_m + 0.5 * block_.width_m;
    for (const double y : {0.5 * (own.low[c] + own.high[c]), own.high[c], own.low[c]}) {
      try_at({own.middle_m(c) + by, y});
      try_at({own.middle_m(c) - by, y});
    }
  }

  void try_at(Point middle) {
    const Box box = box_about(middle, block_.width_m, block_.height_m);
    if (!within(box, area_)) return;
    const double others = distance_to_others_m(box, curves_, own_);
    if (others < clear_m + plain_m) return;
    found_.push_back({{middle, false}, others - dislike_ratio * std::abs(middle.x_m - liked_m_)});
  }

  const std::vector<Profile>& curves_;
  std::size_t own_;
  const TextBlock& block_;
  Box area_;
  double liked_m_ = 0.0;
  std::vector<RankedSpot> found_;
};

}  // namespace

Profile profile_of(const std::vector<Stroke>& parts, const Box& area) {
  Profile profile;
  profile.left_m = area.low.x_m;
  const auto columns = static_cast<std::size_t>((area.high.x_m - area.low.x_m) / slice_m) + 1;
  profile.low.assign(columns, 1.0);
  profile.high.assign(columns, -1.0);
  for (const Stroke& part : parts) {
    for (std::size_t k = 0; k < part.size(); ++k) hold(profile, part[k > 0 ? k - 1 : 0], part[k]);
  }
  return profile;
}

double distance_to_profile_m(const Box& box, const Profile& profile, double most_m) {
  double least = most_m;
  const std::size_t last = column_at(profile, box.high.x_m + most_m);
  for (std::size_t c = column_at(profile, box.low.x_m - most_m); c <= last; ++c) {
    if (profile.empty(c)) continue;
    const double x = profile.middle_m(c);
    const double dx = std::max({box.low.x_m - x, x - box.high.x_m, 0.0});
    const double dy = std::max({box.low.y_m - profile.high[c], profile.low[c] - box.high.y_m, 0.0});
    least = std::min(least, std::sqrt(dx * dx + dy * dy));
  }
  return least;
}

std::vector<LabelSpot> spots_beside(const std::vector<Profile>& curves, std::size_t own, const TextBlock& block,
                                    const Box& area) {
  return Beside(curves, own, block, area).run();
}

std::optional<Point> loneliest(const std::vector<Profile>& curves, std::size_t own) {
  const Profile& profile = curves[own];
  // Lines that lie on one another are pointed at in different places.
  const double share = (static_cast<double>(own) + 1.0) / (static_cast<double>(curves.size()) + 1.0);
  const auto [first, last] = seen(profile);
  const double liked = first + share * (last - first);
  std::optional<Point> best;
  double most = 0.0;
  for (std::size_t c = 0; c < profile.low.size(); ++c) {
    if (profile.empty(c)) continue;
    const Point at{profile.middle_m(c), 0.5 * (profile.low[c] + profile.high[c])};
    const double apart = std::min(distance_to_others_m({at, at}, curves, own), enough_m);
    const double rank = apart - dislike_ratio * std::abs(at.x_m - liked);
    if (best && rank <= most) continue;
    most = rank;
    best = at;
  }
  return best;
}

}  // namespace slabwright::drawn
