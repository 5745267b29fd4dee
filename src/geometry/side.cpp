// The orientation of three points, exact. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust
// Geometric Predicates", 1997. Products are split by Dekker's method: no fused multiply-add is asked for.
#include <array>
#include <cmath>

#include "slabwright/geometry.hpp"

namespace slabwright {
namespace {

struct Two {
  double high, low;
};

Two two_sum(double a, double b) {
  const double high = a + b, part = high - a;
  return {high, (a - (high - part)) + (b - part)};
}

Two split(double a) {
  const double c = 134217729.0 * a;  // 2^27 + 1
  const double high = c - (c - a);
  return {high, a - high};
}

Two two_product(double a, double b) {
  const double high = a * b;
  const Two x = split(a), y = split(b);
  return {high, x.low * y.low - (((high - x.high * y.high) - x.low * y.high) - x.high * y.low)};
}

/// A sum kept as parts that do not overlap, smallest first: the sign of the last part that is not zero is its sign.
struct Expansion {
  std::array<double, 12> part{};
  std::size_t size = 0;

  void add(double value) {
    for (std::size_t i = 0; i < size; ++i) {
      const Two sum = two_sum(value, part[i]);
      part[i] = sum.low;
      value = sum.high;
    }
    part[size++] = value;
  }
  double leading() const {
    for (std::size_t i = size; i > 0; --i) {
      if (part[i - 1] != 0.0) return part[i - 1];
    }
    return 0.0;
  }
};

Side sign(double value) { return value > 0.0 ? Side::left : value < 0.0 ? Side::right : Side::on; }

/// (a - c) x (b - c) multiplied out; c x c falls away.
Side exact_side(Point a, Point b, Point c) {
  Expansion sum;
  const auto add = [&sum](double x, double y) {
    const Two product = two_product(x, y);
    sum.add(product.low);
    sum.add(product.high);
  };
  add(a.x_m, b.y_m);
  add(-a.x_m, c.y_m);
  add(-c.x_m, b.y_m);
  add(-a.y_m, b.x_m);
  add(a.y_m, c.x_m);
  add(c.y_m, b.x_m);
  return sign(sum.leading());
}

}  // namespace

Side side_of(Point a, Point b, Point c) {
  const double left = (a.x_m - c.x_m) * (b.y_m - c.y_m), right = (a.y_m - c.y_m) * (b.x_m - c.x_m);
  const double determinant = left - right;
  // (3 + 16 e) e with e = 2^-53: beyond this bound the rounded sign is right.
  constexpr double bound = 3.3306690738754716e-16;
  if (std::abs(determinant) >= bound * (std::abs(left) + std::abs(right)) && determinant != 0.0) {
    return sign(determinant);
  }
  return exact_side(a, b, c);
}

}  // namespace slabwright
