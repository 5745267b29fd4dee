// Floor that the lattice left bare beside columns and walls: the largest patch first, tube near it is moved towards it.
#include <algorithm>
#include <cmath>

#include "lying.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// So little of the floor may stay bare.
constexpr double little_bare = 0.0002;
/// Where more does, all patches are tried once more.
constexpr double much_bare = 0.002;
/// Smaller patches are worth no bends.
constexpr int least_spots = 3;
constexpr int most_moves = 60;
/// Tube is moved without bends first where that heats so much of a patch.
constexpr double nearly_all = 0.7;

class Filler {
 public:
  Filler(const ExactTask& exact, std::vector<Strand>& strands, std::vector<Path>& paths, Work& work)
      : lying_(exact.task, exact.without_tube, strands, paths), work_(work) {
    left_.assign(lying_.map().spots().size(), 0);
  }

  void fill() {
    fill_bare();
    ease_jogs(lying_);
    // What moved may have made room elsewhere.
    if (lying_.map().far_number() <= much_bare * lying_.map().floor_number()) return;
    left_.assign(left_.size(), 0);
    fill_bare();
  }

 private:
  void fill_bare() {
    for (int made = 0; made < most_moves && work_.steps_left > 0;) {
      if (lying_.map().far_number() <= little_bare * lying_.map().floor_number()) return;
      const Bare bare = largest_bare();
      if (bare.spot.empty()) return;
      const long before = lying_.tried_number();
      const bool worth_bends = static_cast<int>(bare.spot.size()) >= least_spots;
      if (nudge_into(lying_, bare, nearly_all) ||
          (worth_bends && (bump_into(lying_, bare) || follow_wall(lying_, bare) || lead_round(lying_, bare))) ||
          nudge_into(lying_, bare, 0.0)) {
        ++made;
      } else {
        for (const int spot : bare.spot) left_[index(spot)] = 1;
      }
      work_.steps_left -= lying_.tried_number() - before;
    }
  }

  bool is_bare(int spot) const {
    return lying_.map().spots()[index(spot)].lines_number == 0 && left_[index(spot)] == 0;
  }

  Bare largest_bare() const {
    Bare largest;
    std::vector<char> seen(left_.size(), 0);
    const int columns = lying_.map().columns(), all = static_cast<int>(left_.size());
    for (int first = 0; first < all; ++first) {
      if (seen[index(first)] != 0 || !is_bare(first)) continue;
      Bare bare;
      bare.spot.push_back(first);
      seen[index(first)] = 1;
      for (std::size_t k = 0; k < bare.spot.size(); ++k) {
        const int i = bare.spot[k] % columns, j = bare.spot[k] / columns;
        for (int n = 0; n < 9; ++n) {
          const int x = i + n % 3 - 1, y = j + n / 3 - 1, spot = y * columns + x;
          if (x < 0 || x >= columns || y < 0 || spot >= all || seen[index(spot)] != 0 || !is_bare(spot)) continue;
          seen[index(spot)] = 1;
          bare.spot.push_back(spot);
        }
      }
      if (bare.spot.size() > largest.spot.size()) largest = std::move(bare);
    }
    largest.low = {HUGE_VAL, HUGE_VAL};
    largest.high = {-HUGE_VAL, -HUGE_VAL};
    for (const int spot : largest.spot) {
      const Point p = lying_.map().spots()[index(spot)].place;
      largest.low = {std::min(largest.low.x_m, p.x_m), std::min(largest.low.y_m, p.y_m)};
      largest.high = {std::max(largest.high.x_m, p.x_m), std::max(largest.high.y_m, p.y_m)};
      largest.middle = moved(largest.middle, p, 1.0 / static_cast<double>(largest.spot.size()));
    }
    return largest;
  }

  Lying lying_;
  Work& work_;
  std::vector<char> left_;  ///< spots that no move reaches
};

}  // namespace

void fill_bare_floor(const ExactTask& exact, std::vector<Strand>& strands, std::vector<Path>& paths, Work& work) {
  Filler(exact, strands, paths, work).fill();
}

}  // namespace slabwright::routing
