#include "ports.hpp"

#include <algorithm>
#include <cmath>

#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// What is drawn lies off its port by no more than this, in pitches: nearer to it than to any other.
constexpr double drawn_slack = 0.5;

/// Pairs that stay free, where the row has so many.
constexpr int most_spare = 4;

Point right_of(const PortRow& row) {
  const Point ahead = unit(row.facing);
  return {ahead.y_m, -ahead.x_m};
}

/// All pairs of the row: the fewest that the taken ones fall in with.
std::vector<double> all_pairs(const PortRow& row, int loops) {
  const int taken = static_cast<int>(row.taken_m.size()), least = loops + taken, total = row.loops_number + taken;
  std::vector<double> best;
  double least_off = HUGE_VAL;
  const int most = row.taken_m.empty() ? least : std::max(least, std::min(least + most_spare, total));
  for (int count = least; count <= most; ++count) {
    std::vector<double> pairs;
    for (int p = 1; p <= count; ++p) pairs.push_back(2.0 * p - 1.0 - count);
    double off = 0.0;
    for (const double at_m : row.taken_m) {
      double nearest = HUGE_VAL;
      for (const double pair : pairs) nearest = std::min(nearest, std::abs(at_m / row.port_pitch_m - pair));
      off += nearest;
    }
    if (off >= least_off - 1e-6) continue;
    least_off = off;
    best = std::move(pairs);
  }
  return best;
}

struct Split {
  std::vector<double> taken, free;
};

/// Each that is taken has the nearest pair that is left.
Split split(const PortRow& row, int loops) {
  Split made;
  made.free = all_pairs(row, loops);
  for (const double at_m : row.taken_m) {
    const auto off = [&](double pair) { return std::abs(pair - at_m / row.port_pitch_m); };
    const auto nearest =
        std::min_element(made.free.begin(), made.free.end(), [&](double a, double b) { return off(a) < off(b); });
    made.taken.push_back(*nearest);
    made.free.erase(nearest);
  }
  // The spare one goes where fewer are left, so that the others stand on one side of what is taken.
  while (static_cast<int>(made.free.size()) > loops) {
    const auto left =
        std::count_if(made.free.begin(), made.free.end(), [&](double pair) { return pair < made.taken.front(); });
    const bool first = left > 0 && 2 * left <= static_cast<std::ptrdiff_t>(made.free.size());
    made.free.erase(first ? made.free.begin() : made.free.end() - 1);
  }
  return made;
}

}  // namespace

std::vector<double> free_pairs(const PortRow& row, int loops) { return split(row, loops).free; }

Point on_row(const PortRow& row, double right_m) { return moved(row.place, right_of(row), right_m); }

double pair_of_m(const PortRow& row, Point supply, Point back) {
  const Point middle{0.5 * (supply.x_m + back.x_m), 0.5 * (supply.y_m + back.y_m)};
  return dot(minus(middle, row.place), right_of(row));
}

std::vector<WantedEnds> wanted_ends(const LayoutTask& task, const TubeLayout& layout) {
  struct AtRow {
    PortRow row;
    std::vector<std::size_t> drawn, laid;
  };
  std::vector<AtRow> at;
  for (const PortRow& row : task.manifold) at.push_back({row, {}, {}});
  for (std::size_t k = 0; k < layout.loop.size(); ++k) {
    const LaidLoop& loop = layout.loop[k];
    AtRow& here = at[loop.manifold];
    if (!loop.drawn) here.laid.push_back(k);
    if (!loop.drawn || !task.drawn[*loop.drawn].ends_at_ports) continue;
    here.drawn.push_back(k);
    --here.row.loops_number;
    here.row.taken_m.push_back(pair_of_m(here.row, loop.path.front().from, loop.path.back().to));
  }
  std::vector<WantedEnds> all;
  for (const AtRow& here : at) {
    const Split pairs = split(here.row, static_cast<int>(here.laid.size()));
    const double pitch_m = here.row.port_pitch_m;
    const auto add = [&](std::size_t k, double pair, double slack_m) {
      const Point left = on_row(here.row, (pair - 0.5) * pitch_m), right = on_row(here.row, (pair + 0.5) * pitch_m);
      const bool left_first = layout.loop[k].left_first;
      all.push_back({k, left_first ? left : right, left_first ? right : left, slack_m});
    };
    const std::size_t before = here.row.taken_m.size() - here.drawn.size();
    for (std::size_t i = 0; i < here.laid.size(); ++i) add(here.laid[i], pairs.free[i], 0.0);
    for (std::size_t i = 0; i < here.drawn.size(); ++i) {
      add(here.drawn[i], pairs.taken[before + i], drawn_slack * pitch_m);
    }
  }
  return all;
}

}  // namespace slabwright::routing
