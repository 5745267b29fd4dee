#include "conduction/edge_outline.hpp"

#include <algorithm>
#include <cmath>

#include "conduction/grid.hpp"

namespace slabwright::conduction {
namespace {

enum class Air { none, indoor, outdoor };

std::vector<double> distinct(std::vector<double> values_m) {
  const auto same = [](double a_m, double b_m) { return std::abs(a_m - b_m) < same_line_m; };
  std::sort(values_m.begin(), values_m.end());
  values_m.erase(std::unique(values_m.begin(), values_m.end(), same), values_m.end());
  return values_m;
}

bool holds(const MaterialRectangle& r, FieldPoint p) {
  return r.x0_m < p.x_m && p.x_m < r.x1_m && r.y0_m < p.y_m && p.y_m < r.y1_m;
}

class Outline {
 public:
  Outline(const std::vector<MaterialRectangle>& materials, const Threshold& threshold)
      : materials_(materials), threshold_(threshold) {
    std::vector<double> x{threshold.face_m, threshold.outdoor_m}, y;
    for (const MaterialRectangle& r : materials) {
      x.insert(x.end(), {r.x0_m, r.x1_m});
      y.insert(y.end(), {r.y0_m, r.y1_m});
    }
    x_ = distinct(std::move(x));
    y_ = distinct(std::move(y));
  }

  ExposedFaces run() {
    for (std::size_t j = 1; j < y_.size(); ++j) {
      follow(
          x_,
          [&](double at_m) {
            return FieldPoint{at_m, y_[j]};
          },
          [&](double x_m) { return air_over(x_m, j); });
    }
    for (std::size_t i = 1; i + 1 < x_.size(); ++i) {
      follow(
          y_,
          [&](double at_m) {
            return FieldPoint{x_[i], at_m};
          },
          [&](double y_m) { return air_beside(i, y_m); });
    }
    return std::move(faces_);
  }

 private:
  bool filled(double x_m, double y_m) const {
    return std::any_of(materials_.begin(), materials_.end(), [&](const MaterialRectangle& r) {
      return holds(r, {x_m, y_m});
    });
  }

  bool filled_above(double x_m, std::size_t j) const {
    return j + 1 < y_.size() && filled(x_m, 0.5 * (y_[j] + y_[j + 1]));
  }

  Air air_over(double x_m, std::size_t j) const {
    const bool above = filled_above(x_m, j);
    if (above == filled(x_m, 0.5 * (y_[j - 1] + y_[j]))) return Air::none;
    if (x_m < threshold_.face_m) return Air::indoor;
    // Wall and leaf stand at the floor's level; below it the face lies open, as does the underside of what stands out.
    const bool under_leaf = x_m < threshold_.outdoor_m && j + 1 == y_.size() && !above;
    return under_leaf ? Air::none : Air::outdoor;
  }

  /// Nothing of an edge stands above the floor, so that a face upright in the air is outdoors.
  Air air_beside(std::size_t i, double y_m) const {
    const bool left = filled(0.5 * (x_[i - 1] + x_[i]), y_m), right = filled(0.5 * (x_[i] + x_[i + 1]), y_m);
    return left == right ? Air::none : Air::outdoor;
  }

  void keep(Air air, FieldPoint from, FieldPoint to) {
    if (air == Air::indoor) faces_.indoor.push_back({from, to});
    if (air == Air::outdoor) faces_.outdoor.push_back({from, to});
  }

  /// Along one line of the outline, one gap between coordinates after the other.
  template <class PointAt, class AirAt>
  void follow(const std::vector<double>& along, PointAt point_at, AirAt air_at) {
    double from_m = along.front();
    Air air = Air::none;
    for (std::size_t i = 0; i + 1 < along.size(); ++i) {
      const Air here = air_at(0.5 * (along[i] + along[i + 1]));
      if (here == air) continue;
      keep(air, point_at(from_m), point_at(along[i]));
      from_m = along[i];
      air = here;
    }
    keep(air, point_at(from_m), point_at(along.back()));
  }

  const std::vector<MaterialRectangle>& materials_;
  Threshold threshold_;
  std::vector<double> x_, y_;
  ExposedFaces faces_;
};

}  // namespace

ExposedFaces exposed_faces(const std::vector<MaterialRectangle>& materials, const Threshold& threshold) {
  return Outline(materials, threshold).run();
}

}  // namespace slabwright::conduction
