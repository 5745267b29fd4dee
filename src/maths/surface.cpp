// Response surfaces of second degree.
#include "slabwright/maths_surface.hpp"

#include <Eigen/QR>
#include <algorithm>
#include <array>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;

using Values = std::vector<std::vector<double>>;
using Scaled = std::array<double, sample_dimensions_most>;

bool all_finite(const std::vector<double>& row) {
  return std::all_of(row.begin(), row.end(), [](double x) { return std::isfinite(x); });
}

void expects_rows(const Values& rows, std::size_t width, const char* what) {
  for (const std::vector<double>& row : rows) expects(row.size() == width && all_finite(row), what);
}

void expects_data(const SamplePoints& points, const Values& values) {
  expects(!points.empty() && points.size() == values.size(), "a surface needs points, and values for each");
  const std::size_t dimensions = points[0].size();
  expects(dimensions >= 1 && dimensions <= sample_dimensions_most, "a surface has 1 to 12 dimensions");
  expects(!values[0].empty(), "a surface needs an output");
  expects_rows(points, dimensions, "points of a surface are finite and of one dimension");
  expects_rows(values, values[0].size(), "values of a surface are finite and as many everywhere");
}

Surface scaled_to(const SamplePoints& points) {
  Surface surface;
  for (std::size_t d = 0; d < points[0].size(); ++d) {
    double low = points[0][d], high = low;
    for (const std::vector<double>& point : points) {
      low = std::min(low, point[d]);
      high = std::max(high, point[d]);
    }
    const double half = 0.5 * high - 0.5 * low;
    surface.middle.push_back(low + half);
    surface.per_half.push_back(half > 0.0 ? 1.0 / half : 0.0);
  }
  return surface;
}

Scaled scaled(const Surface& surface, const std::vector<double>& point) {
  Scaled z;
  for (std::size_t d = 0; d < point.size(); ++d) z[d] = (point[d] - surface.middle[d]) * surface.per_half[d];
  return z;
}

/// Rows of coefficients of one output that stand for a term which varies.
std::vector<std::size_t> kept_terms(const Surface& surface) {
  std::vector<std::size_t> kept{0};
  std::size_t term = 1;
  for (std::size_t i = 0; i < surface.middle.size(); ++i) {
    const bool varies = surface.per_half[i] != 0.0;
    if (varies) kept.push_back(term);
    ++term;
    for (std::size_t j = i; j < surface.middle.size(); ++j, ++term)
      if (varies && surface.per_half[j] != 0.0) kept.push_back(term);
  }
  return kept;
}

std::vector<double> terms_at(const Surface& surface, const std::vector<double>& point) {
  const Scaled z = scaled(surface, point);
  std::vector<double> terms{1.0};
  for (std::size_t i = 0; i < point.size(); ++i) {
    terms.push_back(z[i]);
    for (std::size_t j = i; j < point.size(); ++j) terms.push_back(z[i] * z[j]);
  }
  return terms;
}

MatrixXd matrix_of_terms(const Surface& surface, const SamplePoints& points, const std::vector<std::size_t>& kept) {
  MatrixXd matrix(static_cast<Index>(points.size()), static_cast<Index>(kept.size()));
  for (Index row = 0; row < matrix.rows(); ++row) {
    const std::vector<double> terms = terms_at(surface, points[static_cast<std::size_t>(row)]);
    for (Index k = 0; k < matrix.cols(); ++k) matrix(row, k) = terms[kept[static_cast<std::size_t>(k)]];
  }
  return matrix;
}

MatrixXd matrix_of_values(const Values& values) {
  MatrixXd matrix(static_cast<Index>(values.size()), static_cast<Index>(values[0].size()));
  for (Index row = 0; row < matrix.rows(); ++row)
    for (Index k = 0; k < matrix.cols(); ++k)
      matrix(row, k) = values[static_cast<std::size_t>(row)][static_cast<std::size_t>(k)];
  return matrix;
}

}  // namespace

std::size_t surface_terms(std::size_t dimensions) { return 1 + dimensions + dimensions * (dimensions + 1) / 2; }

SurfaceFit fit_surface(const SamplePoints& points, const Values& values) {
  expects_data(points, values);
  SurfaceFit fit{scaled_to(points), {}};
  Surface& surface = fit.surface;
  const std::vector<std::size_t> kept = kept_terms(surface);
  expects(points.size() >= kept.size(), "fewer points than a surface has terms");
  const MatrixXd terms = matrix_of_terms(surface, points, kept);
  const Eigen::ColPivHouseholderQR<MatrixXd> parts(terms);
  expects(parts.rank() == terms.cols(), "points that do not tell the terms of a surface apart");
  const MatrixXd found = parts.solve(matrix_of_values(values));
  surface.outputs = values[0].size();
  const std::size_t width = surface_terms(points[0].size());
  surface.coefficients.assign(surface.outputs * width, 0.0);
  for (std::size_t output = 0; output < surface.outputs; ++output)
    for (std::size_t k = 0; k < kept.size(); ++k)
      surface.coefficients[output * width + kept[k]] = found(static_cast<Index>(k), static_cast<Index>(output));
  for (const SurfaceError& error : surface_error(surface, points, values)) fit.residual.push_back(error.rms);
  return fit;
}

double surface_value(const Surface& surface, const std::vector<double>& point, std::size_t output) {
  expects(point.size() == surface.middle.size() && output < surface.outputs, "a point or output that is no surface's");
  const std::size_t dimensions = point.size();
  const Scaled z = scaled(surface, point);
  const double* next = surface.coefficients.data() + output * surface_terms(dimensions);
  double sum = *next++;
  for (std::size_t i = 0; i < dimensions; ++i) {
    double slope = *next++;
    for (std::size_t j = i; j < dimensions; ++j) slope += *next++ * z[j];
    sum += z[i] * slope;
  }
  return sum;
}

std::vector<SurfaceError> surface_error(const Surface& surface, const SamplePoints& points, const Values& values) {
  expects_data(points, values);
  expects(values[0].size() == surface.outputs, "values that are not the surface's outputs");
  std::vector<SurfaceError> errors(surface.outputs, SurfaceError{0.0, 0.0});
  for (std::size_t i = 0; i < points.size(); ++i)
    for (std::size_t output = 0; output < surface.outputs; ++output) {
      const double off = std::abs(surface_value(surface, points[i], output) - values[i][output]);
      errors[output].largest = std::max(errors[output].largest, off);
      errors[output].rms += off * off;
    }
  for (SurfaceError& error : errors) error.rms = std::sqrt(error.rms / static_cast<double>(points.size()));
  return errors;
}

SamplePoints surface_points(std::size_t dimensions, std::size_t count, std::uint64_t seed) {
  expects(dimensions >= 1 && dimensions <= sample_dimensions_most, "a surface has 1 to 12 dimensions");
  expects(count >= 1 + 2 * dimensions, "a surface needs its centre and its faces");
  SamplePoints points(1 + 2 * dimensions, std::vector<double>(dimensions, 0.5));
  for (std::size_t d = 0; d < dimensions; ++d) {
    points[1 + 2 * d][d] = 0.0;
    points[2 + 2 * d][d] = 1.0;
  }
  const SamplePoints inside = quasi_random(count - points.size(), dimensions, seed);
  points.insert(points.end(), inside.begin(), inside.end());
  return points;
}

}  // namespace slabwright
