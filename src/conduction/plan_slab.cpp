// A layered slab as a plate: the slowest profile over its depth that tube heats, and what that profile leaves out.
#include <algorithm>
#include <cmath>

#include "conduction/plan_shape.hpp"
#include "conduction/tube_row_sides.hpp"
#include "slabwright/conduction_plan.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace conduction;

/// Temperatures of tube plane and top face, K per W/m2 of heat let free in that plane as a wave.
struct Answer {
  double plane, top;
};

Answer answer_to_wave(const RowSides& sides, double kappa_per_m) {
  const auto taken = [&](const RowSide& side, double& at_outer) {
    const Echo echo = echo_of(side, kappa_per_m);
    const double fall = std::exp(-kappa_per_m * side.gap_m), back = echo.reflected * fall * fall;
    at_outer = fall * echo.at_outer / (1.0 + back);
    return side.conductivity_W_per_mK * kappa_per_m * (1.0 - back) / (1.0 + back);
  };
  double top = 0.0, bottom = 0.0;
  const double plane = 1.0 / (taken(sides.above, top) + taken(sides.below, bottom));
  return {plane, top * plane};
}

/// A profile over the depth that dies away in plan as exp(-x sqrt(rate)): temperature and heat at the axis for a
/// temperature of 1 at the outer face.
struct AtAxis {
  double degrees, heat;
};

AtAxis at_axis(const RowSide& side, double rate_per_m2) {
  const double wave = std::sqrt(rate_per_m2);
  AtAxis at{1.0, side.outer_W_per_m2K};
  const auto pass = [&](double thickness_m, double conductivity) {
    const double c = std::cos(wave * thickness_m), s = std::sin(wave * thickness_m);
    at = {c * at.degrees + s / (conductivity * wave) * at.heat, c * at.heat - conductivity * wave * s * at.degrees};
  };
  for (std::size_t i = side.layers.size(); i-- > 0;) {
    pass(side.layers[i].thickness_m, side.layers[i].conductivity_W_per_mK);
  }
  pass(side.gap_m, side.conductivity_W_per_mK);
  return at;
}

/// `plane_share` is of the answer to even heat in the tubes' plane.
struct Profile {
  double rate_per_m2 = 0.0, plane_share = 0.0;
};

class Profiles {
 public:
  explicit Profiles(const RowSides& sides)
      : sides_(sides),
        thickness_m_(sides.above.gap_m + sides.below.gap_m),
        up_(conductance_W_per_m2K(sides.above)),
        both_(up_ + conductance_W_per_m2K(sides.below)) {}

  /// Plane shares of all profiles add up to 1: the first above a half is the largest. Two slabs with foam between
  /// them have a slower one that the tube does not reach.
  Profile heated() const {
    const double step = 0.01 / (thickness_m_ * thickness_m_);
    Profile best;
    for (int i = 0; i < most_steps && best.plane_share < 0.5; ++i) {
      const double low = step * (i + 0.001), high = low + step;
      if ((mismatch(low) > 0.0) == (mismatch(high) > 0.0)) continue;
      const Profile found = profile_between(low, high);
      if (found.plane_share > best.plane_share) best = found;
    }
    expects(best.plane_share > 0.0, "plan: no profile over the slab's depth");
    return best;
  }

 private:
  static constexpr int most_steps = 4000;  ///< up to profiles of two waves in the tube's layer

  double mismatch(double rate) const {
    const AtAxis up = at_axis(sides_.above, rate), down = at_axis(sides_.below, rate);
    return up.heat * down.degrees + down.heat * up.degrees;
  }

  Profile profile_between(double low, double high) const {
    const bool falls = mismatch(low) > 0.0;
    for (int i = 0; i < 60; ++i) {
      const double middle = 0.5 * (low + high);
      ((mismatch(middle) > 0.0) == falls ? low : high) = middle;
    }
    const double rate = 0.5 * (low + high), near = 1e-4 * rate;
    const double slope = (mismatch(rate - near) - mismatch(rate + near)) / (2.0 * near);
    const AtAxis up = at_axis(sides_.above, rate), down = at_axis(sides_.below, rate);
    return {rate, both_ * up.degrees * down.degrees / (slope * rate)};
  }

  const RowSides& sides_;
  double thickness_m_, up_, both_;
};

/// Fitted so that the plate of cells, fed and read through PlanShape, has the profile's own rate and strength from a
/// few cells away onward.
struct Plate {
  double up_W_per_m2K = 0.0, both_W_per_m2K = 0.0;
  double along_W_per_K = 0.0, felt_share = 0.0;
  double cell_m = 0.0;

  /// As Answer, of the plate as a tube's place feeds and reads it.
  double answer_to_wave(double kappa_per_m) const {
    const double half = 0.5 * kappa_per_m * cell_m, step = 2.0 / cell_m * std::sin(half);
    return plan_shape_wave(half) * plan_shape_wave(half) / (both_W_per_m2K + along_W_per_K * step * step);
  }
};

Plate plate_of(const RowSides& sides, const TubeRowResponse& usual, const TubeRow& row, double cell_m) {
  Plate plate;
  plate.cell_m = cell_m;
  const double a = usual.above_W_per_m_K, b = usual.below_W_per_m_K, c = usual.through_W_per_m_K;
  // The row's three conductances as a star whose middle is the plate.
  plate.up_W_per_m2K = b > 0.0 ? (a + c + a * c / b) / row.spacing_m : conductance_W_per_m2K(sides.above);
  plate.both_W_per_m2K = plate.up_W_per_m2K + (b > 0.0 ? (b + c + b * c / a) / row.spacing_m : 0.0);
  const Profile profile = Profiles(sides).heated();
  const double half = 0.5 * std::sqrt(profile.rate_per_m2) * cell_m;
  const double step = std::sinh(half) / half;  // of a second difference over the slope's square
  plate.along_W_per_K = plate.both_W_per_m2K / (profile.rate_per_m2 * step * step);
  const double shape = step * step * step;
  const double fitted = std::sinh(2.0 * half) / (2.0 * half) / (step * step * shape * shape);
  plate.felt_share = profile.plane_share * fitted;
  return plate;
}

/// Between the outer face of a row's tubes and the plate, as its cells have it on average over places.
double at_row_mK_per_W(const Plate& plate, const TubeRowResponse& exact, double spacing_m, double tube_mK_per_W) {
  double of_plate = 1.0 / plate.both_W_per_m2K;
  for (double n = 1.0; n * plate.cell_m < 20.0 * spacing_m; n += 1.0) {
    of_plate += 2.0 * plate.answer_to_wave(2.0 * pi * n / spacing_m);
  }
  return 1.0 / (exact.above_W_per_m_K + exact.below_W_per_m_K) - tube_mK_per_W -
         plate.felt_share * of_plate / spacing_m;
}

double others_at_row_ratio(double spacing_m, double cell_m) {
  double sum = 1.0;
  for (double n = 1.0; n * cell_m < 20.0 * spacing_m; n += 1.0) {
    const double shape = plan_shape_wave(pi * n * cell_m / spacing_m);
    sum += 2.0 * shape * shape;
  }
  return sum * cell_m / spacing_m - plan_own_ratio;
}

std::vector<PlanNear> near_of(const Plate& plate, const TubeRow& row, double tube_mK_per_W) {
  // Closer rows touch; further ones leave no mark on a tube's own cells.
  constexpr double rows_cells[] = {2.4, 2.0, 1.6, 1.3, 1.0, 0.8, 0.6, 0.4};
  const double closest_m = 1.2 * row.outside_diameter_m, apart_m = 3.0 * plate.cell_m;
  const auto at = [&](double spacing_m) {
    TubeRow closer = row;
    closer.spacing_m = spacing_m;
    return at_row_mK_per_W(plate, tube_row_responses(closer, {tube_mK_per_W}).front(), spacing_m, tube_mK_per_W);
  };
  std::vector<PlanNear> near{{0.0, at(std::max(row.spacing_m, apart_m))}};
  for (const double cells : rows_cells) {
    const double spacing_m = cells * plate.cell_m;
    if (spacing_m > closest_m) near.push_back({others_at_row_ratio(spacing_m, plate.cell_m), at(spacing_m)});
  }
  return near;
}

/// Lines in the middle of cells and between cells differ by this, over their difference in own ratio: one line fed to
/// a ring of eight cells, wave by wave.
double place_mK_per_W(const Plate& plate) {
  constexpr int ring = 8;
  double difference = 0.0;
  for (int n = 0; n < ring; ++n) {
    const double angle = 2.0 * pi * n / ring, step = 2.0 / plate.cell_m * std::sin(0.5 * angle);
    const double centred = 0.75 + 0.25 * std::cos(angle), between = std::cos(0.5 * angle);
    difference += (centred * centred - between * between) / (plate.both_W_per_m2K + plate.along_W_per_K * step * step);
  }
  constexpr double centred_ratio = 0.59375, between_ratio = 0.5;
  return -plate.felt_share * difference / (ring * plate.cell_m) / (centred_ratio - between_ratio);
}

/// By the square of the distance to a point of heat, 0 to the reach: the top face's answer, K/W.
using ByDistance = std::vector<double>;

/// Answers of the layers themselves, and of the plate seen through them, by an integral over waves.
struct Answers {
  ByDistance layers, plate;
};

Answers answers_to_point(const RowSides& sides, const Plate& plate, double reach_m) {
  constexpr std::size_t rows = 128;
  const double last = std::min(std::max(25.0 / sides.above.gap_m, 20.0 / plate.cell_m), 60.0 / plate.cell_m);
  const int waves = static_cast<int>(std::ceil(2.0 * last * reach_m));
  const double between = last / waves, top_of_even = plate.up_W_per_m2K / sides.above.outer_W_per_m2K;
  Answers answers{ByDistance(rows + 1, 0.0), ByDistance(rows + 1, 0.0)};
  for (int n = 0; n < waves; ++n) {
    const double kappa = (n + 0.5) * between, share = kappa * between / (2.0 * pi);
    const double layers = share * answer_to_wave(sides, kappa).top;
    const double of_plate = share * top_of_even * plate.answer_to_wave(kappa);
    for (std::size_t i = 0; i <= rows; ++i) {
      const double wave = ::j0(kappa * reach_m * std::sqrt(static_cast<double>(i) / rows));
      answers.layers[i] += layers * wave;
      answers.plate[i] += of_plate * wave;
    }
  }
  return answers;
}

/// Over the disc out to the reach, K per W/m2.
double whole(const ByDistance& answer, double reach_m) {
  double sum = 0.5 * (answer.front() + answer.back());
  for (std::size_t i = 1; i + 1 < answer.size(); ++i) sum += answer[i];
  return sum * pi * reach_m * reach_m / static_cast<double>(answer.size() - 1);
}

/// What tube adds near itself, and so much of the plate beside it that even heat has just its own answer. In one slab
/// that is the profile's share; a second one below foam answers further than the reach, and the plate stands in for it.
void set_top(PlanSlab& slab, const RowSides& sides, const Plate& plate) {
  const Answers answers = answers_to_point(sides, plate, slab.reach_m);
  const double even = plate.up_W_per_m2K / sides.above.outer_W_per_m2K / plate.both_W_per_m2K;
  slab.shown_share = (even - whole(answers.layers, slab.reach_m)) / (even - whole(answers.plate, slab.reach_m));
  slab.add_K_per_W = answers.layers;
  for (std::size_t i = 0; i < slab.add_K_per_W.size(); ++i) slab.add_K_per_W[i] -= slab.shown_share * answers.plate[i];
  // To nothing at the reach, so that no place has an edge there.
  slab.add_K_per_W.back() = 0.0;
}

/// The next profile has half a wave in what conducts about as well as the tube's own layer: it is down to a fiftieth.
/// Further than six cells it would cost more than it is worth.
double reach_m(const TubeRow& row, double own_W_per_mK, double cell_m) {
  double conducting_m = 0.0;
  for (const FlatLayer& layer : row.layers) {
    if (layer.conductivity_W_per_mK > 0.25 * own_W_per_mK) conducting_m += layer.thickness_m;
  }
  return std::clamp(4.0 / pi * conducting_m, 3.0 * cell_m, 6.0 * cell_m);
}

}  // namespace

PlanSlab plan_slab(const TubeRow& row, double tube_mK_per_W, double cell_m) {
  expects(std::isfinite(cell_m) && cell_m > 0.0, "plan: cells must have a size");
  const TubeRowResponse usual = tube_row_responses(row, {tube_mK_per_W}).front();
  const RowSides sides = sides_of(row);
  const Plate plate = plate_of(sides, usual, row, cell_m);
  PlanSlab slab;
  slab.cell_m = cell_m;
  slab.up_m2K_per_W = 1.0 / plate.up_W_per_m2K - 1.0 / row.above_W_per_m2K;
  const double down_W_per_m2K = plate.both_W_per_m2K - plate.up_W_per_m2K;
  if (row.below_W_per_m2K > 0.0) slab.down_m2K_per_W = 1.0 / down_W_per_m2K - 1.0 / row.below_W_per_m2K;
  slab.along_W_per_K = plate.along_W_per_K;
  slab.felt_share = plate.felt_share;
  slab.near = near_of(plate, row, tube_mK_per_W);
  slab.place_mK_per_W = place_mK_per_W(plate);
  // Points a piece apart leave exp(-2 pi depth / piece) of a ripple on the top face: 1 % where that is allowed for.
  slab.piece_m = std::clamp(row.axis_depth_m / 0.8, cell_m / 6.0, cell_m);
  slab.reach_m = reach_m(row, sides.above.conductivity_W_per_mK, cell_m);
  set_top(slab, sides, plate);
  return slab;
}

}  // namespace slabwright
