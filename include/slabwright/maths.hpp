// Roots, fixed points and tables: small numerical tools that say honestly how they ended.
#pragma once
#include <cstddef>
#include <functional>
#include <vector>

namespace slabwright {

/// Why an iteration ended.
enum class Stop {
  converged,     ///< within the tolerances asked for
  rounds_spent,  ///< not there yet, and no rounds are left
  no_solution,   ///< there is none where it was sought
  not_finite     ///< a function gave infinity or no number
};

struct RootOptions {
  double x_tolerance = 0.0;      ///< width of the last bracket; a few roundings of x are always allowed
  double value_tolerance = 0.0;  ///< |f(x)| that is good enough
  int most_rounds = 150;         ///< bisection alone needs 60 to reach rounding; every other step is at least that good
};

/// The best x found, and the bracket it lies in.
struct Root {
  double x = 0.0;
  double value = 0.0;
  double low = 0.0;
  double high = 0.0;
  Stop stop = Stop::rounds_spent;
  int rounds = 0;
};

/// A root of f between low and high, by inverse quadratic interpolation where it can be trusted and bisection where
/// not (Chandrupatla 1997, Advances in Engineering Software 28(3); simpler than Brent's method and at least as fast).
/// f is monotone, or changes its sign at least once. Where it has the same sign at both ends the answer is
/// `no_solution`, with the better end as x.
Root root_in_bracket(const std::function<double(double)>& f, double low, double high, const RootOptions& options = {});

struct FixedPointOptions {
  double tolerance = 1e-9;                       ///< of |next(x) - x| / scale in the worst unknown
  int most_rounds = 60;                          ///< a mild contraction needs 5 to 10; more means a jump or a circle
  double first_share = 1.0;                      ///< how much of the first step is taken
  double least_share = 0.02, most_share = 10.0;  ///< Aitken's factor divides by a difference that may be noise
};

/// `x` is the best point seen, `worst` what is left of it there and `worst_unknown` where; after `not_finite`,
/// `worst_unknown` is the one that lost its number.
struct FixedPoint {
  std::vector<double> x;
  Stop stop = Stop::rounds_spent;
  int rounds = 0;
  double worst = 0.0;
  std::size_t worst_unknown = 0;
};

using NextPoint = std::function<std::vector<double>(const std::vector<double>&)>;

/// x = next(x), taking of each step the one share that the last two differences suggest (Aitken's relaxation in the
/// form of Irons and Tuck 1969, Int. J. Numer. Meth. Eng. 1). `scale` holds, for each unknown, the change that counts
/// as one; all greater than zero.
FixedPoint fixed_point(std::vector<double> x, const std::vector<double>& scale, const NextPoint& next,
                       const FixedPointOptions& options = {});

/// A row of a table of one variable.
struct TablePoint {
  double at = 0.0;
  double value = 0.0;
};

/// `clamped`: asked outside the table, where the end's value stands and the slope is zero.
struct TableValue {
  double value = 0.0;
  double slope = 0.0;
  bool clamped = false;
};

/// Whether there are two rows or more, all finite, `at` rising from row to row.
bool is_table(const std::vector<TablePoint>& points);

/// Straight lines between the rows of a table (see is_table).
TableValue linear_in_table(const std::vector<TablePoint>& points, double at);

/// A smooth line through the rows of a table (see is_table) that never leaves the span of the two rows it runs between,
/// so that a falling table stays a falling line: cubic Hermite pieces, inner slopes by Fritsch and Butland (1984, SIAM
/// J. Sci. Stat. Comput. 5).
class MonotoneTable {
 public:
  explicit MonotoneTable(std::vector<TablePoint> points);
  TableValue at(double at) const;
  const std::vector<TablePoint>& points() const { return points_; }

 private:
  std::vector<TablePoint> points_;
  std::vector<double> slopes_;
};

}  // namespace slabwright
