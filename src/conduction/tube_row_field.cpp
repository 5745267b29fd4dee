#include "conduction/tube_row_field.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "slabwright/units_exact.hpp"

namespace slabwright::conduction {
namespace {

using Eigen::Index;

/// Waves are summed until what they carry is below this: temperatures are right to about as much, and echoes, which
/// travel both ways, to its square.
constexpr double least_wave = 1e-11;

/// Riemann's zeta by its first terms and the Euler-Maclaurin rest, which leaves 1e-14.
double zeta(int power) {
  const int whole = 40;
  const double p = power, n = whole;
  double sum = 0.0;
  for (int i = whole - 1; i > 0; --i) sum += std::pow(i, -p);
  const double last = std::pow(n, -p);
  return sum + last * (n / (p - 1.0) + 0.5 + p / (12.0 * n) - p * (p + 1.0) * (p + 2.0) / (720.0 * n * n * n));
}

/// The neighbours: log(2 sinh(pi z / W)) = log(2 pi z / W) + sum c_p (z / R)^p over even p, z = y + ix.
class Neighbours {
 public:
  Neighbours(double radius_per_spacing, Index highest) : c_(static_cast<std::size_t>(highest) + 1, 0.0) {
    const double square = radius_per_spacing * radius_per_spacing;
    double power = 1.0;
    for (std::size_t p = 2; p < c_.size(); p += 2) {
      power *= -square;
      c_[p] = -2.0 / static_cast<double>(p) * zeta(static_cast<int>(p)) * power;
    }
  }
  double operator[](Index p) const { return c_[static_cast<std::size_t>(p)]; }

 private:
  std::vector<double> c_;
};

/// The part that does not change along the floor: one path up, one down.
struct EvenPart {
  double up_share;           ///< of heat let free at the axes
  double through_W_per_m2K;  ///< from below to the room
  double axis_m2K_per_W;     ///< of the axes over both ends, for heat let free there
};

EvenPart even_part_of(const RowSides& sides) {
  const double up = conductance_W_per_m2K(sides.above), down = conductance_W_per_m2K(sides.below);
  return {up / (up + down), up * down / (up + down), 1.0 / (up + down)};
}

class Builder {
 public:
  Builder(const TubeRow& row, const RowSides& sides, std::size_t multipoles)
      : sides_(sides),
        even_(even_part_of(sides)),
        multipoles_(static_cast<Index>(multipoles)),
        radius_m_(row.outside_diameter_m / 2.0),
        spacing_m_(row.spacing_m),
        conductivity_(sides.above.conductivity_W_per_mK),
        field_{Eigen::MatrixXd::Zero(multipoles_ + 1, multipoles_ + 1), Eigen::MatrixXd::Zero(multipoles_ + 1, 2),
               Eigen::MatrixXd::Zero(row_place::count, multipoles_ + 1), Eigen::MatrixXd::Zero(row_place::count, 2),
               row.spacing_m} {}

  RowField build() {
    add_neighbours();
    add_even_part();
    add_ends();
    add_means();
    add_waves();
    return std::move(field_);
  }

 private:
  double heat_scale() const { return 1.0 / (2.0 * pi * conductivity_); }
  double dipole_even() const { return 2.0 * pi * radius_m_ / spacing_m_; }  ///< twice its even part on either side

  void add_neighbours() {
    const Neighbours c(radius_m_ / spacing_m_, 2 * multipoles_);
    Eigen::MatrixXd& h = field_.harmonics;
    h(0, 0) -= heat_scale() * std::log(2.0 * pi * radius_m_ / spacing_m_);
    for (Index m = 2; m <= multipoles_; m += 2) h(m, 0) -= heat_scale() * c[m];
    field_.places(row_place::plane_mid, 0) -= heat_scale() * std::log(2.0);
    for (Index n = 1; n <= multipoles_; ++n) {
      const double sign = n % 2 == 0 ? -1.0 : 1.0, order = static_cast<double>(n);
      double chosen = 1.0;  // n + m over m
      for (Index m = 0; m <= multipoles_; ++m) {
        if (m > 0) chosen *= static_cast<double>(n + m) / static_cast<double>(m);
        h(m, n) += sign * order * chosen * c[n + m];
      }
      field_.places(row_place::plane_mid, n) += sign * order * (std::pow(2.0, order) - 1.0) * c[n];
    }
  }

  void add_even_part() {
    const double up = even_.up_share, slope_K = radius_m_ / conductivity_;
    Eigen::MatrixXd& h = field_.harmonics;
    h(0, 0) += even_.axis_m2K_per_W / spacing_m_;
    h(1, 0) += (0.5 - up) * slope_K / spacing_m_;
    h(0, 1) += dipole_even() * (0.5 - up);
    h(1, 1) -= dipole_even() * even_.through_W_per_m2K * slope_K;
    field_.places(row_place::plane_mid, 0) += even_.axis_m2K_per_W / spacing_m_;
    field_.places(row_place::plane_mid, 1) += dipole_even() * (0.5 - up);
  }

  void add_ends() {
    const double up = even_.up_share, slope_K = even_.through_W_per_m2K * radius_m_ / conductivity_;
    field_.harmonics_of_ends.row(0) << up, 1.0 - up;
    field_.harmonics_of_ends.row(1) << slope_K, -slope_K;
    field_.places_of_ends.row(row_place::plane_mid) << up, 1.0 - up;
  }

  /// Heat upward, and mean temperatures of floor and underside: the even part at the axes' plane, less what the heat
  /// loses in the layers.
  void add_means() {
    using namespace row_place;
    const double up = even_.up_share, through = even_.through_W_per_m2K;
    Eigen::MatrixXd &p = field_.places, &e = field_.places_of_ends;
    p(heat_up, 0) = up;
    p(heat_up, 1) = dipole_even() * through * spacing_m_;
    e.row(heat_up) << -through * spacing_m_, through * spacing_m_;
    Eigen::RowVectorXd heat_down = -p.row(heat_up);
    heat_down(0) += 1.0;
    for (const Index mean : {floor_mean, under_mean}) {
      p(mean, 0) = even_.axis_m2K_per_W / spacing_m_;
      e.row(mean) << up, 1.0 - up;
    }
    p(floor_mean, 1) = dipole_even() * (1.0 - up);
    p(under_mean, 1) = -dipole_even() * up;
    const double above = solid_m2K_per_W(sides_.above) / spacing_m_, below = solid_m2K_per_W(sides_.below) / spacing_m_;
    p.row(floor_mean) -= above * p.row(heat_up);
    e.row(floor_mean) -= above * e.row(heat_up);
    p.row(under_mean) -= below * heat_down;
    e.row(under_mean) += below * e.row(heat_up);
    for (const Index place : {floor_over, floor_mid}) {
      p.row(place) = p.row(floor_mean);
      e.row(place) = e.row(floor_mean);
    }
    for (const Index place : {under_tube, under_mid}) {
      p.row(place) = p.row(under_mean);
      e.row(place) = e.row(under_mean);
    }
  }

  double nearest_m() const { return std::min(sides_.above.gap_m, sides_.below.gap_m); }

  /// A source sends the waves cos(kappa x) exp(-kappa |y|), kappa = 2 pi s / W, up and down; even orders send the same
  /// both ways, odd ones opposites.
  void add_waves() {
    // (kappa radius)^m / m! at the nearer face: alone it would overflow.
    Eigen::VectorXd powers(multipoles_ + 1);
    double carried = 1.0;
    for (double s = 1.0; carried > least_wave; s += 1.0) {
      const double kappa = 2.0 * pi * s / spacing_m_;
      powers(0) = std::exp(-kappa * nearest_m());
      for (Index m = 1; m <= multipoles_; ++m) powers(m) = powers(m - 1) * kappa * radius_m_ / static_cast<double>(m);
      carried = powers.maxCoeff() * static_cast<double>(multipoles_) / s;
      add_wave(kappa, s, powers);
    }
  }

  void add_wave(double kappa, double s, const Eigen::VectorXd& powers) {
    using namespace row_place;
    const Echo up = echo_of(sides_.above, kappa), down = echo_of(sides_.below, kappa);
    const double rise = std::exp(-kappa * (sides_.above.gap_m - nearest_m()));
    const double fall = std::exp(-kappa * (sides_.below.gap_m - nearest_m()));
    const double there_and_back = powers(0) * powers(0);
    const double top = up.reflected * rise * rise, bottom = down.reflected * fall * fall;  // as from the nearer face
    const double both = top * bottom * there_and_back;
    const double again = 1.0 / (1.0 - both * there_and_back);  // to and fro between the two faces
    const double same_even = (top + bottom + 2.0 * both) * again, same_odd = (top + bottom - 2.0 * both) * again;
    const double mixed = (top - bottom) * again, midway = std::fmod(s, 2.0) == 0.0 ? 1.0 : -1.0;
    for (Index n = 0; n <= multipoles_; ++n) {
      const bool even = n % 2 == 0;
      const double sent = powers(n) / s * (n == 0 ? heat_scale() : static_cast<double>(n));
      for (Index m = 0; m <= multipoles_; m += 2) {
        field_.harmonics(m, n) += powers(m) * sent * (even ? same_even : mixed);
      }
      for (Index m = 1; m <= multipoles_; m += 2) {
        field_.harmonics(m, n) += powers(m) * sent * (even ? mixed : same_odd);
      }
      const double sent_down = even ? sent : -sent;
      const double at_floor = (sent + bottom * there_and_back * sent_down) * again * rise * up.at_outer;
      const double at_under = (sent_down + top * there_and_back * sent) * again * fall * down.at_outer;
      field_.places(floor_over, n) += at_floor;
      field_.places(floor_mid, n) += midway * at_floor;
      field_.places(under_tube, n) += at_under;
      field_.places(under_mid, n) += midway * at_under;
      field_.places(plane_mid, n) += midway * powers(0) * sent * (even ? same_even : mixed);
    }
  }

  const RowSides& sides_;
  EvenPart even_;
  Index multipoles_;
  double radius_m_, spacing_m_, conductivity_;
  RowField field_;
};

}  // namespace

RowField field_of(const TubeRow& row, const RowSides& sides, std::size_t multipoles) {
  return Builder(row, sides, multipoles).build();
}

}  // namespace slabwright::conduction
