// The corner of a floor in plan, solved in three dimensions, against the product of its two edges' weights: the rule by
// which plan corners are estimated. Derived: finite volumes of this file's own; cells a
// quarter as large move no weight by more than 0.003.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "slabwright/conduction_edge.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double half_m = 6.0, wall_m = 0.20, slab_m = 0.15, board_m = 0.05, board_depth_m = 0.60, domain_m = 15.0;
constexpr double concrete_W = 1.75, soil_W = 2.0, board_W = 0.035, indoor_W = 1.0 / 0.17, outdoor_W = 25.0;
constexpr double face_m = half_m - wall_m, in_m = 0.15, depth_m = 0.075;

struct Boards {
  bool under, edge;
};

/// Cells that double away from every line that is named.
std::vector<double> lines_between(const std::vector<double>& named, double first_m) {
  std::vector<double> lines{named.front()};
  for (std::size_t gap = 0; gap + 1 < named.size(); ++gap) {
    const double half_gap_m = (named[gap + 1] - named[gap]) / 2.0;
    std::vector<double> cells;
    double sum_m = 0.0;
    for (double size_m = first_m; sum_m < half_gap_m; size_m *= 2.0) {
      cells.push_back(size_m);
      sum_m += size_m;
    }
    double at_m = named[gap];
    for (const double cell_m : cells) lines.push_back(at_m += cell_m * half_gap_m / sum_m);
    std::reverse(cells.begin(), cells.end());
    for (const double cell_m : cells) lines.push_back(at_m += cell_m * half_gap_m / sum_m);
    lines.back() = named[gap + 1];
  }
  return lines;
}

double conductivity_W(double x, double y, double z, Boards boards) {
  const double out_m = std::max(x, y), down_m = -z;
  if (out_m < half_m && down_m < slab_m) return concrete_W;
  if (boards.under && out_m < half_m && down_m < slab_m + board_m) return board_W;
  if (boards.edge && out_m > half_m && out_m < half_m + board_m && down_m < board_depth_m) return board_W;
  return soil_W;
}

/// Nodes where lines cross; conductance to the next node in each direction, to indoor and to outdoor air. The last
/// layer of nodes, z = -domain, is the ground's.
class Block {
 public:
  explicit Block(Boards boards)
      : plan_(lines_between({0.0, face_m - in_m, face_m, half_m, half_m + board_m, half_m + domain_m}, 0.05)),
        deep_(lines_between({-domain_m, -board_depth_m, -slab_m - board_m, -slab_m, -depth_m, 0.0}, 0.05)),
        n_(plan_.size()),
        nodes_(n_ * n_ * deep_.size()),
        air_{std::vector<double>(nodes_, 0.0), std::vector<double>(nodes_, 0.0)} {
    for (std::vector<double>& link : link_) link.assign(nodes_, 0.0);
    for (std::size_t k = 1; k < deep_.size(); ++k) {
      for (std::size_t j = 1; j < n_; ++j) {
        for (std::size_t i = 1; i < n_; ++i) add_cell(i, j, k, boards);
      }
    }
    add_films(boards);
  }

  /// Temperature at the watched point for one of the two airs at 1, all else at 0.
  double weight(std::size_t air) const {
    const std::vector<double> field = solved(air_[air]);
    const auto line = [](const std::vector<double>& lines, double at_m) {
      return static_cast<std::size_t>(std::lower_bound(lines.begin(), lines.end(), at_m - 1e-9) - lines.begin());
    };
    const std::size_t i = line(plan_, face_m - in_m);
    return field[node(i, i, line(deep_, -depth_m))];
  }

 private:
  std::size_t node(std::size_t i, std::size_t j, std::size_t k) const { return (k * n_ + j) * n_ + i; }
  std::size_t stride(std::size_t axis) const { return axis == 0 ? 1 : axis == 1 ? n_ : n_ * n_; }

  /// The cell below node (i, j, k): a quarter of its section belongs to each of the four edges along an axis.
  void add_cell(std::size_t i, std::size_t j, std::size_t k, Boards boards) {
    const double dx = plan_[i] - plan_[i - 1], dy = plan_[j] - plan_[j - 1], dz = deep_[k] - deep_[k - 1];
    const double conductivity = conductivity_W(plan_[i] - dx / 2.0, plan_[j] - dy / 2.0, deep_[k] - dz / 2.0, boards);
    const std::array<double, 3> conductance{dy * dz / dx, dx * dz / dy, dx * dy / dz};
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const std::size_t a = axis == 0 ? 1 : 0, b = axis == 2 ? 1 : 2;
      for (std::size_t corner = 0; corner < 4; ++corner) {
        const std::size_t low = node(i - 1, j - 1, k - 1) + (corner & 1 ? stride(a) : 0) + (corner & 2 ? stride(b) : 0);
        link_[axis][low] += conductivity * conductance[axis] / 4.0;
      }
    }
  }

  void add_films(Boards boards) {
    const double outdoor_m = half_m + (boards.edge ? board_m : 0.0);
    const std::size_t top = deep_.size() - 1;
    for (std::size_t j = 1; j < n_; ++j) {
      for (std::size_t i = 1; i < n_; ++i) {
        const double out_m = std::max(plan_[i] + plan_[i - 1], plan_[j] + plan_[j - 1]) / 2.0;
        if (out_m > face_m && out_m < outdoor_m) continue;
        const bool indoor = out_m < face_m;
        const double quarter_m2 = (plan_[i] - plan_[i - 1]) * (plan_[j] - plan_[j - 1]) / 4.0;
        for (const std::size_t at :
             {node(i, j, top), node(i - 1, j, top), node(i, j - 1, top), node(i - 1, j - 1, top)})
          air_[indoor ? 0 : 1][at] += quarter_m2 * (indoor ? indoor_W : outdoor_W);
      }
    }
  }

  /// Heat leaving each node; the ground's nodes are held at 0.
  std::vector<double> leaving(const std::vector<double>& field) const {
    std::vector<double> heat(nodes_, 0.0);
    for (std::size_t at = n_ * n_; at < nodes_; ++at) heat[at] = (air_[0][at] + air_[1][at]) * field[at];
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const std::size_t step = stride(axis);
      for (std::size_t at = 0; at + step < nodes_; ++at) {
        const double flow = link_[axis][at] * (field[at] - field[at + step]);
        heat[at] += flow;
        heat[at + step] -= flow;
      }
    }
    std::fill(heat.begin(), heat.begin() + static_cast<std::ptrdiff_t>(n_ * n_), 0.0);
    return heat;
  }

  std::vector<double> diagonal() const {
    std::vector<double> sum(nodes_, 0.0);
    for (std::size_t at = 0; at < nodes_; ++at) sum[at] = air_[0][at] + air_[1][at];
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const std::size_t step = stride(axis);
      for (std::size_t at = 0; at + step < nodes_; ++at) {
        sum[at] += link_[axis][at];
        sum[at + step] += link_[axis][at];
      }
    }
    return sum;
  }

  /// Conjugate gradients with the diagonal as preconditioner.
  std::vector<double> solved(std::vector<double> rest) const {
    const std::vector<double> own = diagonal();
    std::vector<double> field(nodes_, 0.0), direction(nodes_, 0.0);
    double before = 1.0, first = 0.0;
    for (int round = 0; round < 2000; ++round) {
      double now = 0.0, along = 0.0;
      for (std::size_t at = 0; at < nodes_; ++at) now += rest[at] * rest[at] / own[at];
      if (round == 0) first = now;
      if (now < 1e-9 * first) break;
      const double keep = round == 0 ? 0.0 : now / before;
      for (std::size_t at = 0; at < nodes_; ++at) direction[at] = rest[at] / own[at] + keep * direction[at];
      const std::vector<double> heat = leaving(direction);
      for (std::size_t at = 0; at < nodes_; ++at) along += direction[at] * heat[at];
      for (std::size_t at = 0; at < nodes_; ++at) {
        field[at] += now / along * direction[at];
        rest[at] -= now / along * heat[at];
      }
      before = now;
    }
    return field;
  }

  std::vector<double> plan_, deep_;
  std::size_t n_, nodes_;
  std::array<std::vector<double>, 3> link_;
  std::array<std::vector<double>, 2> air_;  ///< indoor, outdoor
};

std::vector<double> edge_weights(Boards boards) {
  EdgeDetail detail;
  detail.half_width_m = half_m;
  detail.slab_thickness_m = slab_m;
  detail.tube_depth_m = depth_m;
  detail.last_tube_in_m = 0.10;
  const InsulatingBoard board{board_m / board_W, board_m};
  EdgeBuild build;
  if (boards.under) build.under = {{board, std::nullopt}};
  if (boards.edge) build.outside = EdgeBoard{board, board_depth_m};
  return edge_responses(with_build(detail, build), {{in_m, depth_m}}).weights.front();
}

}  // namespace

TEST_CASE("the weights of a plan corner are nearly the products of its edges'", "[slow]") {
  // Without any foam the ground under the corner is warmed from two sides, which no product knows: 0.035, on the
  // careful side.
  constexpr double rule = 0.03, rule_without_foam = 0.04;
  for (const Boards boards : {Boards{false, false}, Boards{true, false}, Boards{true, true}}) {
    const std::vector<double> edge = edge_weights(boards);
    const Block corner(boards);
    const double indoor = corner.weight(0), outdoor = corner.weight(1);
    const double own = edge[edge_row::indoor], other = 1.0 - edge[edge_row::outdoor];
    CAPTURE(boards.under, boards.edge, indoor, outdoor, own * own, 1.0 - other * other);
    const double within = boards.under ? rule : rule_without_foam;
    CHECK(indoor == Approx(own * own).margin(within));
    CHECK(outdoor == Approx(1.0 - other * other).margin(within));
    // The rule is careful: the corner that it sees is no warmer than the corner is.
    CHECK(own * own < indoor);
    // A corner is colder than the edges that meet in it.
    CHECK(indoor < own);
    CHECK(outdoor > edge[edge_row::outdoor]);
  }
}
