#include "tube_map.hpp"

#include <algorithm>
#include <cmath>

#include "open_floor.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

constexpr double raster = 0.25;  ///< of the spacing
constexpr double sag = 0.01;     ///< of the spacing

}  // namespace

TubeMap::TubeMap(const LayoutTask& task) : spacing_m_(task.spacing_m), step_m_(raster * task.spacing_m) {
  const Box box = box_of(task.outline);
  const Point most = box.most;
  from_ = box.least;
  columns_ = static_cast<int>((most.x_m - from_.x_m) / step_m_) + 1;
  rows_ = static_cast<int>((most.y_m - from_.y_m) / step_m_) + 1;
  square_columns_ = static_cast<int>((most.x_m - from_.x_m) / spacing_m_) + 1;
  square_rows_ = static_cast<int>((most.y_m - from_.y_m) / spacing_m_) + 1;
  square_.resize(index(square_columns_ * square_rows_));
  spot_.reserve(index(columns_ * rows_));
  const OpenFloor open(task);
  for (int j = 0; j < rows_; ++j) {
    for (int i = 0; i < columns_; ++i) {
      const Point p{from_.x_m + (i + 0.5) * step_m_, from_.y_m + (j + 0.5) * step_m_};
      const bool floor = open.holds(p);
      spot_.push_back({p, floor ? 0 : -1});
      floor_number_ += floor ? 1 : 0;
    }
  }
  far_number_ = floor_number_;
}

TubeMap::Window TubeMap::window(Point low, Point high) const {
  const auto place = [&](double at, double from) { return static_cast<int>(std::floor((at - from) / step_m_)); };
  return {std::max(0, place(low.x_m, from_.x_m)), std::min(columns_ - 1, place(high.x_m, from_.x_m)),
          std::max(0, place(low.y_m, from_.y_m)), std::min(rows_ - 1, place(high.y_m, from_.y_m))};
}

void TubeMap::count(const TubeEdge& edge, int more) {
  const double by = spacing_m_;
  const Window w = window({std::min(edge.a.x_m, edge.b.x_m) - by, std::min(edge.a.y_m, edge.b.y_m) - by},
                          {std::max(edge.a.x_m, edge.b.x_m) + by, std::max(edge.a.y_m, edge.b.y_m) + by});
  for (int j = w.bottom; j <= w.top; ++j) {
    for (int i = w.left; i <= w.right; ++i) {
      Spot& spot = spot_[index(j * columns_ + i)];
      if (spot.lines_number < 0 || !within(spot.place, edge.a, edge.b, by)) continue;
      const bool was_far = spot.lines_number == 0;
      spot.lines_number += more;
      far_number_ += (spot.lines_number == 0 ? 1 : 0) - (was_far ? 1 : 0);
    }
  }
}

template <class Do>
void TubeMap::each_square(const TubeEdge& edge, Do what) {
  const auto place = [&](double at, double from, int most) {
    return std::clamp(static_cast<int>((at - from) / spacing_m_), 0, most - 1);
  };
  const int i0 = place(std::min(edge.a.x_m, edge.b.x_m), from_.x_m, square_columns_);
  const int i1 = place(std::max(edge.a.x_m, edge.b.x_m), from_.x_m, square_columns_);
  const int j0 = place(std::min(edge.a.y_m, edge.b.y_m), from_.y_m, square_rows_);
  const int j1 = place(std::max(edge.a.y_m, edge.b.y_m), from_.y_m, square_rows_);
  for (int j = j0; j <= j1; ++j) {
    for (int i = i0; i <= i1; ++i) what(square_[index(j * square_columns_ + i)]);
  }
}

TubeMap::Listed TubeMap::add(const Piece& piece, std::size_t loop, double at_m) {
  Listed listed{piece, {}};
  const std::vector<Point> corner = flattened(std::span<const Piece>(&piece, 1), sag * spacing_m_);
  for (std::size_t c = 0; c + 1 < corner.size(); ++c) {
    const Point a = corner[c], b = corner[c + 1];
    const double length = distance_m(a, b);
    const int parts = std::max(1, static_cast<int>(std::ceil(length / spacing_m_)));
    Point from = a;
    for (int p = 1; p <= parts; ++p) {
      const double share = static_cast<double>(p) / parts;
      const Point to{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
      const int k = static_cast<int>(edge_.size());
      edge_.push_back({from, to, static_cast<int>(loop), at_m + length / parts * (p - 0.5)});
      count(edge_.back(), 1);
      each_square(edge_.back(), [k](std::vector<int>& square) { square.push_back(k); });
      listed.edge.push_back(k);
      from = to;
    }
    at_m += length;
  }
  return listed;
}

void TubeMap::remove(const Listed& listed) {
  for (const int k : listed.edge) {
    count(edge_[index(k)], -1);
    each_square(edge_[index(k)],
                [k](std::vector<int>& square) { square.erase(std::find(square.begin(), square.end(), k)); });
  }
}

void TubeMap::set(std::size_t loop, const Path& path) {
  of_loop_.resize(std::max(of_loop_.size(), loop + 1));
  std::vector<Listed>& old = of_loop_[loop];
  const auto same = [](const Listed& a, const Piece& b) {
    return a.piece.from == b.from && a.piece.to == b.to && a.piece.radius_m == b.radius_m && a.piece.turn == b.turn;
  };
  std::size_t first = 0, tail = 0;
  while (first < old.size() && first < path.size() && same(old[first], path[first])) ++first;
  const std::size_t most = std::min(old.size(), path.size()) - first;
  while (tail < most && same(old[old.size() - 1 - tail], path[path.size() - 1 - tail])) ++tail;
  double at_m = length_m(std::span<const Piece>(path.data(), first)), old_m = at_m;
  std::vector<Listed> made(old.begin(), old.begin() + static_cast<std::ptrdiff_t>(first));
  for (std::size_t n = first; n < old.size() - tail; ++n) {
    remove(old[n]);
    old_m += length_m(old[n].piece);
  }
  for (std::size_t n = first; n < path.size() - tail; ++n) {
    made.push_back(add(path[n], loop, at_m));
    at_m += length_m(path[n]);
  }
  for (std::size_t n = old.size() - tail; n < old.size(); ++n) {
    for (const int k : old[n].edge) edge_[index(k)].at_m += at_m - old_m;
    made.push_back(std::move(old[n]));
  }
  old = std::move(made);
}

}  // namespace slabwright::routing
