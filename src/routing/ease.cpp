// Jogs eased: a line that steps aside by two right angles slants over instead, which turns less.
#include <algorithm>
#include <cmath>

#include "lying.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// Cotangents of the slants tried, from 15 degrees on.
constexpr double slants[] = {3.732050807568877, 1.7320508075688772, 1.0, 0.5773502691896258};
/// How much of a slant lies before the jog's own line.
constexpr double shares[] = {0.5, 1.0, 0.0};
/// Longer jogs are no jogs, in spacings.
constexpr double longest = 4.0;

class Easer {
 public:
  explicit Easer(Lying& lying) : lying_(lying), s_(lying.spacing_m()) {}

  void ease() {
    for (std::size_t k = 0; k < lying_.size(); ++k) {
      for (std::size_t i = leader_corners; i + 1 + leader_corners < lying_.corners(k).size(); ++i) ease(k, i);
    }
  }

 private:
  /// The line between corners i and i + 1, if the lines before and after it run the same way.
  void ease(std::size_t k, std::size_t i) {
    const auto& c = lying_.corners(k);
    const Point in = unit(minus(c[i], c[i - 1])), out = unit(minus(c[i + 2], c[i + 1])), over = minus(c[i + 1], c[i]);
    if (std::abs(cross(in, out)) > 1e-9 || dot(in, out) < 0.0) return;
    const double aside_m = std::abs(cross(in, over)), along_m = dot(in, over);
    if (aside_m < 1e-6 || aside_m > longest * s_) return;
    const double before_m = distance_m(c[i - 1], c[i]), after_m = distance_m(c[i + 1], c[i + 2]);
    for (const double slant : slants) {
      const double more_m = aside_m * slant - along_m;
      if (more_m <= 1e-6) return;
      for (const double share : shares) {
        if (share * more_m >= before_m || (1.0 - share) * more_m >= after_m) continue;
        Strand eased{c};
        eased.corner[i] = moved(c[i], in, -share * more_m);
        eased.corner[i + 1] = moved(c[i + 1], in, (1.0 - share) * more_m);
        if (lying_.take(k, std::move(eased), lying_.rule(), lying_.map().far_number())) return;
      }
    }
  }

  Lying& lying_;
  double s_;
};

}  // namespace

void ease_jogs(Lying& lying) { Easer(lying).ease(); }

}  // namespace slabwright::routing
