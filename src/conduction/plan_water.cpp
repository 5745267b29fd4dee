#include "conduction/plan_water.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "conduction/plan_shape.hpp"
#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

double distance_m(FieldPoint a, FieldPoint b) {
  return std::sqrt((b.x_m - a.x_m) * (b.x_m - a.x_m) + (b.y_m - a.y_m) * (b.y_m - a.y_m));
}

double length_m(const std::vector<FieldPoint>& line) {
  double sum = 0.0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += distance_m(line[i - 1], line[i]);
  return sum;
}

/// Cells that two pieces share, weighted by both.
double common(const PlanFloor& floor, const PlanPlace& a, const PlanPlace& b) {
  const auto column = [&](const PlanPlace& p) { return static_cast<std::ptrdiff_t>(p.first % floor.columns); };
  const auto row = [&](const PlanPlace& p) { return static_cast<std::ptrdiff_t>(p.first / floor.columns); };
  const std::ptrdiff_t dx = column(b) - column(a), dy = row(b) - row(a);
  double sum = 0.0;
  for (std::ptrdiff_t j = std::max<std::ptrdiff_t>(0, dy); j < std::min<std::ptrdiff_t>(3, 3 + dy); ++j) {
    for (std::ptrdiff_t i = std::max<std::ptrdiff_t>(0, dx); i < std::min<std::ptrdiff_t>(3, 3 + dx); ++i) {
      sum += a.share[static_cast<std::size_t>(3 * j + i)] * b.share[static_cast<std::size_t>(3 * (j - dy) + i - dx)];
    }
  }
  return sum;
}

double sleeve_mK_per_W(const PlanTube& tube, double at_m) {
  double sum = 0.0;
  for (const PlanSleeve& sleeve : tube.sleeve) {
    if (at_m >= sleeve.from_m && at_m <= sleeve.to_m) sum += sleeve.mK_per_W;
  }
  return sum;
}

/// Between rows of the slab's table, and as at its ends beyond.
double near_mK_per_W(const PlanSlab& slab, double other_ratio) {
  const std::vector<PlanNear>& near = slab.near;
  std::size_t i = 1;
  while (i + 1 < near.size() && near[i].other_ratio < other_ratio) ++i;
  if (near.size() < 2) return near.front().mK_per_W;
  const PlanNear &low = near[i - 1], &high = near[i];
  const double share = std::clamp((other_ratio - low.other_ratio) / (high.other_ratio - low.other_ratio), 0.0, 1.0);
  return low.mK_per_W + share * (high.mK_per_W - low.mK_per_W);
}

}  // namespace

std::size_t cell_at(const PlanFloor& floor, FieldPoint where) {
  const double x = std::floor((where.x_m - floor.corner.x_m) / floor.cell_m);
  const double y = std::floor((where.y_m - floor.corner.y_m) / floor.cell_m);
  const bool on = x >= 0.0 && y >= 0.0 && x < static_cast<double>(floor.columns) && y < static_cast<double>(floor.rows);
  return on ? static_cast<std::size_t>(y) * floor.columns + static_cast<std::size_t>(x) : floor.cell.size();
}

PlanPlace place_of(const PlanFloor& floor, FieldPoint where) {
  PlanPlace place;
  const std::size_t cell = cell_at(floor, where);
  if (cell == floor.cell.size()) return place;
  const std::size_t i = cell % floor.columns, j = cell / floor.columns;
  const double across = (where.x_m - floor.corner.x_m) / floor.cell_m - static_cast<double>(i) - 0.5;
  const double along = (where.y_m - floor.corner.y_m) / floor.cell_m - static_cast<double>(j) - 0.5;
  if (i == 0 || j == 0 || i + 1 >= floor.columns || j + 1 >= floor.rows) return place;
  const PlanShape x = plan_shape(across), y = plan_shape(along);
  const double shares_x[] = {x.before, x.at, x.after}, shares_y[] = {y.before, y.at, y.after};
  place.first = cell - floor.columns - 1;
  double sum = 0.0;
  for (std::size_t n = 0; n < 9; ++n) {
    const bool on_floor = floor.cell[place.first + n / 3 * floor.columns + n % 3].above_W_per_m2K > 0.0;
    place.share[n] = on_floor ? shares_x[n % 3] * shares_y[n / 3] : 0.0;
    sum += place.share[n];
  }
  if (sum > 0.0) {
    for (double& share : place.share) share /= sum;
  }
  return place;
}

double read(const PlanFloor& floor, const PlanPlace& place, const std::vector<double>& of_cell) {
  double sum = 0.0;
  for (std::size_t j = 0; j < 3; ++j) {
    const double* cell = of_cell.data() + place.first + j * floor.columns;
    const double* share = place.share.data() + 3 * j;
    sum += share[0] * cell[0] + share[1] * cell[1] + share[2] * cell[2];
  }
  return sum;
}

void feed(const PlanFloor& floor, const PlanPlace& place, double amount, std::vector<double>& to_cell) {
  for (std::size_t j = 0; j < 3; ++j) {
    double* cell = to_cell.data() + place.first + j * floor.columns;
    const double* share = place.share.data() + 3 * j;
    cell[0] += amount * share[0];
    cell[1] += amount * share[1];
    cell[2] += amount * share[2];
  }
}

PlanWater::PlanWater(const PlanSlab& slab, const PlanFloor& floor, const std::vector<PlanTube>& tubes,
                     const std::vector<double>& even_degC)
    : floor_(floor), felt_share_(slab.felt_share) {
  double pieces = 0.0;
  for (const PlanTube& tube : tubes) pieces += length_m(tube.line) / slab.piece_m + 1.0;
  piece_.reserve(static_cast<std::size_t>(pieces));
  for (const PlanTube& tube : tubes) cut(tube, slab.piece_m);
  add_conductances(slab, tubes);
  for (PlanWaterPiece& piece : piece_) piece.other_degC = (1.0 - felt_share_) * read(floor_, piece.place, even_degC);
}

void PlanWater::cut(const PlanTube& tube, double longest_m) {
  const double whole_m = length_m(tube.line);
  const double count = std::ceil(whole_m / longest_m - 1e-9), piece_m = whole_m / count;
  PlanRun run{tube.capacity_W_per_K, tube.supply_degC, piece_.size(), 0};
  std::size_t corner = 1;
  double passed_m = 0.0, edge_m = distance_m(tube.line[0], tube.line[1]);
  for (double n = 0.0; n < count; n += 1.0) {
    const double at_m = (n + 0.5) * piece_m;
    while (corner + 1 < tube.line.size() && passed_m + edge_m < at_m) {
      passed_m += edge_m;
      ++corner;
      edge_m = distance_m(tube.line[corner - 1], tube.line[corner]);
    }
    const FieldPoint from = tube.line[corner - 1], to = tube.line[corner];
    const double share = edge_m > 0.0 ? (at_m - passed_m) / edge_m : 0.0;
    const FieldPoint where{from.x_m + share * (to.x_m - from.x_m), from.y_m + share * (to.y_m - from.y_m)};
    piece_.push_back({where, at_m, piece_m, place_of(floor_, where), 0.0});
  }
  run.end = piece_.size();
  run_.push_back(run);
}

void PlanWater::add_conductances(const PlanSlab& slab, const std::vector<PlanTube>& tubes) {
  std::vector<double> laid_m(floor_.cell.size(), 0.0);
  for (const PlanWaterPiece& piece : piece_) feed(floor_, piece.place, piece.length_m, laid_m);
  for (std::size_t t = 0; t < run_.size(); ++t) {
    const PlanRun& run = run_[t];
    // A line's own pieces share cells over three of them and a little more.
    const std::size_t shared = static_cast<std::size_t>(std::ceil(4.0 * slab.cell_m / piece_[run.first].length_m));
    for (std::size_t i = run.first; i < run.end; ++i) {
      PlanWaterPiece& piece = piece_[i];
      double own_m = 0.0, on_floor = 0.0;
      for (const double share : piece.place.share) on_floor += share;
      const std::size_t from = i - std::min(shared, i - run.first), to = std::min(i + shared + 1, run.end);
      for (std::size_t j = from; j < to; ++j)
        own_m += piece_[j].length_m * common(floor_, piece.place, piece_[j].place);
      const double own = piece.own_ratio = own_m / slab.cell_m,
                   other = read(floor_, piece.place, laid_m) / slab.cell_m - own;
      const double lays = tubes[t].tube_mK_per_W + sleeve_mK_per_W(tubes[t], piece.at_m) + near_mK_per_W(slab, other) +
                          slab.place_mK_per_W * (own - plan_own_ratio);
      expects(lays > 0.0, "plan: a tube without resistance in cells too small for it");
      const double capacity = run.capacity_W_per_K;
      if (on_floor > 0.0 && capacity > 0.0)
        piece.given_W_per_K = -capacity * std::expm1(-piece.length_m / (lays * capacity));
    }
  }
}

std::vector<double> PlanWater::heat_W(const std::vector<double>& plate_degC, bool driven) const {
  std::vector<double> heat(piece_.size(), 0.0);
  for (const PlanRun& run : run_) {
    double water = driven ? run.supply_degC : 0.0;
    for (std::size_t i = run.first; i < run.end; ++i) {
      const PlanWaterPiece& piece = piece_[i];
      if (piece.given_W_per_K <= 0.0) continue;
      const double stands_in = felt_share_ * read(floor_, piece.place, plate_degC) + (driven ? piece.other_degC : 0.0);
      heat[i] = piece.given_W_per_K * (water - stands_in);
      water -= heat[i] / run.capacity_W_per_K;
    }
  }
  return heat;
}

void PlanWater::add_to_cells(const std::vector<double>& piece_W, double times, std::vector<double>& cell_W) const {
  for (std::size_t i = 0; i < piece_.size(); ++i) feed(floor_, piece_[i].place, times * piece_W[i], cell_W);
}

}  // namespace slabwright::conduction
