// The nearest loop of every cell: cells hand on the nearest tube they know of, there and back over the raster.
#include "patches.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace slabwright {
namespace {

/// Of each cell the nearest cell that was marked.
struct Nearest {
  int columns = 0, rows = 0;
  std::vector<int> column, row;  // -1: none known
  std::vector<long long> square;

  explicit Nearest(int columns_, int rows_)
      : columns(columns_),
        rows(rows_),
        column(count(), -1),
        row(count(), -1),
        square(count(), std::numeric_limits<long long>::max()) {}

  std::size_t count() const { return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows); }
  std::size_t index(int c, int r) const {
    return static_cast<std::size_t>(r) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(c);
  }
  void mark(int c, int r) {
    const std::size_t k = index(c, r);
    column[k] = c;
    row[k] = r;
    square[k] = 0;
  }
  void take_from(int c, int r, int dc, int dr) {
    if (c + dc < 0 || c + dc >= columns || r + dr < 0 || r + dr >= rows) return;
    const std::size_t k = index(c, r), other = index(c + dc, r + dr);
    if (column[other] < 0) return;
    const long long x = column[other] - c, y = row[other] - r;
    if (x * x + y * y >= square[k]) return;
    square[k] = x * x + y * y;
    column[k] = column[other];
    row[k] = row[other];
  }
  void spread() {
    for (int r = 0; r < rows; ++r) {
      for (int c = 0; c < columns; ++c) {
        for (const int dc : {-1, 0, 1}) take_from(c, r, dc, -1);
        take_from(c, r, -1, 0);
      }
      for (int c = columns; c-- > 0;) take_from(c, r, 1, 0);
    }
    for (int r = rows; r-- > 0;) {
      for (int c = columns; c-- > 0;) {
        for (const int dc : {-1, 0, 1}) take_from(c, r, dc, 1);
        take_from(c, r, 1, 0);
      }
      for (int c = 0; c < columns; ++c) take_from(c, r, -1, 0);
    }
  }
};

/// The cells that tube passes through, each by the loop that came first.
void mark_tube(Raster& raster, Nearest& nearest, const DrawnFloor& plan) {
  for (std::size_t k = 0; k < plan.loop.size(); ++k) {
    const auto corners = flattened(plan.loop[k].path, 0.1 * raster.cell_m);
    for (std::size_t i = 1; i < corners.size(); ++i) {
      const Point a = corners[i - 1], b = corners[i];
      const int parts = static_cast<int>(distance_m(a, b) / (0.5 * raster.cell_m)) + 1;
      for (int s = 0; s <= parts; ++s) {
        const double share = static_cast<double>(s) / parts;
        const int c = static_cast<int>((a.x_m + share * (b.x_m - a.x_m) - raster.low.x_m) / raster.cell_m);
        const int r = static_cast<int>((a.y_m + share * (b.y_m - a.y_m) - raster.low.y_m) / raster.cell_m);
        if (c < 0 || r < 0 || c >= raster.columns || r >= raster.rows) continue;
        int& owner = raster.loop[nearest.index(c, r)];
        if (owner < 0) owner = static_cast<int>(k);
        nearest.mark(c, r);
      }
    }
  }
}

}  // namespace

Raster nearest_loops(const DrawnFloor& plan, double cell_m, double reach_m) {
  const Box box = grown(box_round(plan.floor.outline), cell_m);
  Raster raster{box.low,
                cell_m,
                static_cast<int>((box.high.x_m - box.low.x_m) / cell_m) + 1,
                static_cast<int>((box.high.y_m - box.low.y_m) / cell_m) + 1,
                {}};
  Nearest nearest(raster.columns, raster.rows);
  raster.loop.assign(nearest.count(), -1);
  mark_tube(raster, nearest, plan);
  nearest.spread();
  const double reach = reach_m / cell_m;
  const std::vector<int> tube = raster.loop;  // read while the raster is written
  for (int r = 0; r < raster.rows; ++r) {
    for (int c = 0; c < raster.columns; ++c) {
      const std::size_t k = nearest.index(c, r);
      const bool far = nearest.column[k] < 0 || static_cast<double>(nearest.square[k]) > reach * reach;
      raster.loop[k] = far ? -1 : tube[nearest.index(nearest.column[k], nearest.row[k])];
    }
  }
  return raster;
}

Raster cut_to(const Floor& floor, Raster raster) {
  for (int r = 0; r < raster.rows; ++r) {
    const Point a = raster.middle(-1, r), b = raster.middle(raster.columns, r);
    const auto shares = clipped(a, b, floor);
    auto share = shares.begin();
    for (int c = 0; c < raster.columns; ++c) {
      const double at = (c + 1.0) / (raster.columns + 1.0);
      while (share != shares.end() && share->to_ratio < at) ++share;
      if (share == shares.end() || at < share->from_ratio) {
        raster.loop[static_cast<std::size_t>(r) * static_cast<std::size_t>(raster.columns) +
                    static_cast<std::size_t>(c)] = -1;
      }
    }
  }
  return raster;
}

std::vector<std::pair<int, int>> neighbours(const Raster& raster) {
  std::vector<std::pair<int, int>> pairs;
  const auto note = [&](int a, int b) {
    if (a >= 0 && b >= 0 && a != b) pairs.emplace_back(std::min(a, b), std::max(a, b));
  };
  for (int r = 0; r < raster.rows; ++r) {
    for (int c = 0; c < raster.columns; ++c) {
      note(raster.at(c, r), raster.at(c + 1, r));
      note(raster.at(c, r), raster.at(c, r + 1));
    }
  }
  std::sort(pairs.begin(), pairs.end());
  pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
  return pairs;
}

std::vector<std::vector<WidePlace>> wide_places(const Raster& raster, std::size_t loops, double enough_m) {
  Nearest borders(raster.columns, raster.rows);
  for (int r = 0; r < raster.rows; ++r) {
    for (int c = 0; c < raster.columns; ++c) {
      const int own = raster.at(c, r);
      const bool inner = raster.at(c - 1, r) == own && raster.at(c + 1, r) == own && raster.at(c, r - 1) == own &&
                         raster.at(c, r + 1) == own;
      if (own < 0 || !inner) borders.mark(c, r);
    }
  }
  borders.spread();
  struct Cell {
    long long square;
    int row, column;
    long long off_middle = 0;
  };
  const auto enough = static_cast<long long>(enough_m * enough_m / (raster.cell_m * raster.cell_m));
  std::vector<std::vector<Cell>> cells(loops);
  for (int r = 0; r < raster.rows; ++r) {
    for (int c = 0; c < raster.columns; ++c) {
      if (raster.at(c, r) < 0) continue;
      cells[static_cast<std::size_t>(raster.at(c, r))].push_back({borders.square[borders.index(c, r)], r, c});
    }
  }
  std::vector<std::vector<WidePlace>> places(loops);
  for (std::size_t loop = 0; loop < loops; ++loop) {
    auto& own = cells[loop];
    long long rows = 0, columns = 0;
    for (const Cell& cell : own) {
      rows += cell.row;
      columns += cell.column;
    }
    for (Cell& cell : own) {
      const long long number = static_cast<long long>(own.size());
      const long long y = cell.row - rows / number, x = cell.column - columns / number;
      cell.off_middle = x * x + y * y;
    }
    std::stable_sort(own.begin(), own.end(), [&](const Cell& a, const Cell& b) {
      const long long wide_a = std::min(a.square, enough), wide_b = std::min(b.square, enough);
      return wide_a != wide_b ? wide_a > wide_b : a.off_middle < b.off_middle;
    });
    for (const Cell& cell : own) {
      if (places[loop].size() >= 60) break;
      const Point middle = raster.middle(cell.column, cell.row);
      const bool apart = std::all_of(places[loop].begin(), places[loop].end(), [&](const WidePlace& other) {
        return distance_m(middle, other.middle) > 5.0 * raster.cell_m;
      });
      if (!apart) continue;
      places[loop].push_back({middle, (std::sqrt(static_cast<double>(cell.square)) + 0.5) * raster.cell_m});
    }
  }
  return places;
}

}  // namespace slabwright
