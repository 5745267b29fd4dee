// Where tube lies on a floor, for who asks what is near it: its lines by squares of the floor, and floor points with
// the number of lines that heat them.
#pragma once
#include "cells.hpp"

namespace slabwright::routing {

/// A straight line of a loop's tube, a spacing long at most.
struct TubeEdge {
  Point a, b;
  int loop = 0;
  double at_m = 0.0;  ///< of its middle along the loop
};

class TubeMap {
 public:
  /// Of the floor without tube.
  explicit TubeMap(const LayoutTask& task);

  /// The tube of a loop, in place of what it was. It costs as much as what differs.
  void set(std::size_t loop, const Path& path);

  /// Every line that may lie within `by_m` of the line a-b, some of them more than once.
  template <class Do>
  void each_near(Point a, Point b, double by_m, Do what) const;

  /// Points of floor, a quarter of a spacing apart, without those in no-tube areas and their clearances.
  struct Spot {
    Point place;
    int lines_number = 0;  ///< within a spacing
  };
  /// By column and row; spots that are not floor have a negative number of lines.
  const std::vector<Spot>& spots() const { return spot_; }
  int columns() const { return columns_; }
  int far_number() const { return far_number_; }
  int floor_number() const { return floor_number_; }

  /// Columns and rows of the spots within a box.
  struct Window {
    int left = 0, right = -1, bottom = 0, top = -1;
  };
  Window window(Point low, Point high) const;

 private:
  /// A piece of a loop's tube and its lines.
  struct Listed {
    Piece piece;
    std::vector<int> edge;
  };
  Listed add(const Piece& piece, std::size_t loop, double at_m);
  void remove(const Listed& listed);
  void count(const TubeEdge& edge, int more);
  template <class Do>
  void each_square(const TubeEdge& edge, Do what);

  double spacing_m_, step_m_;
  Point from_;
  int columns_ = 0, rows_ = 0, far_number_ = 0, floor_number_ = 0;
  std::vector<Spot> spot_;
  int square_columns_ = 0, square_rows_ = 0;
  std::vector<std::vector<int>> square_;
  std::vector<TubeEdge> edge_;
  std::vector<std::vector<Listed>> of_loop_;
};

template <class Do>
void TubeMap::each_near(Point a, Point b, double by_m, Do what) const {
  const auto place = [&](double at, double from, int most) {
    return std::max(0, std::min(most - 1, static_cast<int>((at - from) / spacing_m_)));
  };
  const int i0 = place(std::min(a.x_m, b.x_m) - by_m, from_.x_m, square_columns_);
  const int i1 = place(std::max(a.x_m, b.x_m) + by_m, from_.x_m, square_columns_);
  const int j0 = place(std::min(a.y_m, b.y_m) - by_m, from_.y_m, square_rows_);
  const int j1 = place(std::max(a.y_m, b.y_m) + by_m, from_.y_m, square_rows_);
  for (int j = j0; j <= j1; ++j) {
    for (int i = i0; i <= i1; ++i) {
      for (const int k : square_[static_cast<std::size_t>(j * square_columns_ + i)]) {
        if (!what(edge_[static_cast<std::size_t>(k)])) return;
      }
    }
  }
}

}  // namespace slabwright::routing
