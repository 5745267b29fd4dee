#include "tube_map.hpp"

#include <algorithm>
#include <cmath>

#include "vectors.hpp"

namespace slabwright::routing {
namespace {

constexpr double raster = 0.25;  ///< of the spacing
constexpr double sag = 0.01;     ///< of the spacing

}  // namespace

TubeMap::TubeMap(const LayoutTask& task, std::size_t loops)
    : spacing_m_(task.spacing_m), step_m_(raster * task.spacing_m), of_loop_(loops) {
  Point most{-HUGE_VAL, -HUGE_VAL};
  from_ = {HUGE_VAL, HUGE_VAL};
  for (const Point p : task.outline) {
    from_ = {std::min(from_.x_m, p.x_m), std::min(from_.y_m, p.y_m)};
    most = {std::max(most.x_m, p.x_m), std::max(most.y_m, p.y_m)};
  }
  columns_ = static_cast<int>((most.x_m - from_.x_m) / step_m_) + 1;
  rows_ = static_cast<int>((most.y_m - from_.y_m) / step_m_) + 1;
  square_columns_ = static_cast<int>((most.x_m - from_.x_m) / spacing_m_) + 1;
  square_rows_ = static_cast<int>((most.y_m - from_.y_m) / spacing_m_) + 1;
  square_.resize(index(square_columns_ * square_rows_));
  const auto is_floor = [&](Point p) {
    return where_is(p, task.outline) != Where::outside &&
           std::none_of(task.no_tube.begin(), task.no_tube.end(), [&](const NoTubeArea& area) {
             return where_is(p, area.outline) != Where::outside ||
                    distance_to_boundary_m(p, area.outline) < area.clearance_m;
           });
  };
  for (int j = 0; j < rows_; ++j) {
    for (int i = 0; i < columns_; ++i) {
      const Point p{from_.x_m + (i + 0.5) * step_m_, from_.y_m + (j + 0.5) * step_m_};
      const bool floor = is_floor(p);
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

void TubeMap::list(int k) {
  const TubeEdge& edge = edge_[index(k)];
  const auto place = [&](double at, double from, int most) {
    return std::clamp(static_cast<int>((at - from) / spacing_m_), 0, most - 1);
  };
  const int i0 = place(std::min(edge.a.x_m, edge.b.x_m), from_.x_m, square_columns_);
  const int i1 = place(std::max(edge.a.x_m, edge.b.x_m), from_.x_m, square_columns_);
  const int j0 = place(std::min(edge.a.y_m, edge.b.y_m), from_.y_m, square_rows_);
  const int j1 = place(std::max(edge.a.y_m, edge.b.y_m), from_.y_m, square_rows_);
  for (int j = j0; j <= j1; ++j) {
    for (int i = i0; i <= i1; ++i) square_[index(j * square_columns_ + i)].push_back(k);
  }
}

double TubeMap::add(Point a, Point b, std::size_t loop, double at_m) {
  const double length = distance_m(a, b);
  const int parts = std::max(1, static_cast<int>(std::ceil(length / spacing_m_)));
  Point from = a;
  for (int p = 1; p <= parts; ++p) {
    const double share = static_cast<double>(p) / parts;
    const Point to{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
    of_loop_[loop].push_back(static_cast<int>(edge_.size()));
    edge_.push_back({from, to, static_cast<int>(loop), at_m + length / parts * (p - 0.5)});
    count(edge_.back(), 1);
    list(of_loop_[loop].back());
    from = to;
  }
  return at_m + length;
}

void TubeMap::set(std::size_t loop, const Path& path) {
  for (const int k : of_loop_[loop]) {
    count(edge_[index(k)], -1);
    edge_[index(k)].loop = -1;
  }
  if (!of_loop_[loop].empty()) {
    for (auto& list : square_) {
      const auto gone = [&](int k) { return edge_[index(k)].loop < 0; };
      list.erase(std::remove_if(list.begin(), list.end(), gone), list.end());
    }
  }
  of_loop_[loop].clear();
  double at_m = 0.0;
  for (const Piece& piece : path) {
    const std::vector<Point> corner = flattened(std::span<const Piece>(&piece, 1), sag * spacing_m_);
    for (std::size_t c = 0; c + 1 < corner.size(); ++c) at_m = add(corner[c], corner[c + 1], loop, at_m);
  }
}

}  // namespace slabwright::routing
