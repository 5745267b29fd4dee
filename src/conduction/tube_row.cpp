#include "slabwright/conduction_tube_row.hpp"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <optional>

#include "conduction/tube_row_field.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace conduction;
using Eigen::Index;

constexpr std::size_t first_terms = 8;
/// Waves are cut off at 1e-11, and a few such add up.
constexpr double rounding = 1e-10;

bool positive(std::initializer_list<double> numbers) {
  return std::all_of(numbers.begin(), numbers.end(), [](double n) { return std::isfinite(n) && n > 0.0; });
}

bool not_negative(double number) { return std::isfinite(number) && number >= 0.0; }

void expect_sound(const TubeRow& row) {
  expects(positive({row.spacing_m, row.outside_diameter_m, row.axis_depth_m}),
          "tube row: spacing, diameter and depth must be above 0");
  expects(row.spacing_m > row.outside_diameter_m, "tube row: tubes must not overlap");
  expects(row.spacing_m <= 1000.0 * row.outside_diameter_m, "tube row: tubes lie more than 1000 diameters apart");
  expects(!row.layers.empty(), "tube row: no layer");
  for (const FlatLayer& layer : row.layers) {
    expects(positive({layer.thickness_m, layer.conductivity_W_per_mK}),
            "tube row: a layer needs thickness and conductivity");
  }
  expects(positive({row.above_W_per_m2K}), "tube row: the film above must be above 0");
  expects(not_negative(row.below_W_per_m2K), "tube row: the coefficient below must not be negative");
}

void expect_sound(const TubeRowOptions& options) {
  expects(positive({options.tolerance_share}), "tube row: the tolerance must be above 0");
  expects(options.most_terms >= first_terms, "tube row: fewer than 8 terms");
}

/// [cause][tube, above, below]: heat and multipoles that meet the condition on the tube's outer face.
Eigen::MatrixXd causes(const RowField& field, double conductivity_W_per_mK, double tube_mK_per_W, Index terms) {
  Eigen::MatrixXd system = field.harmonics.topLeftCorner(terms + 1, terms + 1);
  Eigen::MatrixXd given = Eigen::MatrixXd::Zero(terms + 1, 3);
  given.rightCols(2) = -field.harmonics_of_ends.topRows(terms + 1);
  given(0, 0) = 1.0;
  system(0, 0) += tube_mK_per_W;
  const double biot = 2.0 * pi * conductivity_W_per_mK * tube_mK_per_W;
  for (Index m = 1; m <= terms; ++m) {
    const double order = static_cast<double>(m), answered = (1.0 - order * biot) / (1.0 + order * biot);
    system.row(m) *= answered;
    given.row(m) *= answered;
    system(m, m) += 1.0;
  }
  return system.partialPivLu().solve(given);
}

TubeRowWeights weights_of(const Eigen::RowVectorXd& row) { return {row(0), row(1), row(2)}; }

TubeRowResponse response_of(const RowField& field, double conductivity_W_per_mK, double tube_mK_per_W, Index terms) {
  using namespace row_place;
  const Eigen::MatrixXd by = causes(field, conductivity_W_per_mK, tube_mK_per_W, terms);
  Eigen::MatrixXd at = field.places.leftCols(terms + 1) * by;
  at.rightCols(2) += field.places_of_ends;
  TubeRowResponse response;
  response.above_W_per_m_K = at(heat_up, 0);
  response.below_W_per_m_K = by(0, 0) - at(heat_up, 0);
  response.through_W_per_m_K = at(heat_up, 2);
  response.floor_mean = weights_of(at.row(floor_mean));
  response.floor_over_tube = weights_of(at.row(floor_over));
  response.floor_midway = weights_of(at.row(floor_mid));
  response.plane_midway = weights_of(at.row(plane_mid));
  response.under_mean = weights_of(at.row(under_mean));
  response.under_tube = weights_of(at.row(under_tube));
  response.under_midway = weights_of(at.row(under_mid));
  response.terms = static_cast<std::size_t>(terms);
  return response;
}

double change(const TubeRowWeights& a, const TubeRowWeights& b) {
  return std::max({std::abs(a.tube_share - b.tube_share), std::abs(a.above_share - b.above_share),
                   std::abs(a.below_share - b.below_share)});
}

double change_share(double from, double to) { return to == 0.0 ? 0.0 : std::abs(to - from) / std::abs(to) + rounding; }

TubeRowErrors errors_of(const TubeRowResponse& half, const TubeRowResponse& all) {
  TubeRowErrors errors;
  errors.above_share = change_share(half.above_W_per_m_K, all.above_W_per_m_K);
  errors.below_share = change_share(half.below_W_per_m_K, all.below_W_per_m_K);
  errors.through_share = change_share(half.through_W_per_m_K, all.through_W_per_m_K);
  for (const auto place : {&TubeRowResponse::floor_mean, &TubeRowResponse::floor_over_tube,
                           &TubeRowResponse::floor_midway, &TubeRowResponse::plane_midway, &TubeRowResponse::under_mean,
                           &TubeRowResponse::under_tube, &TubeRowResponse::under_midway}) {
    errors.weight_share = std::max(errors.weight_share, change(half.*place, all.*place) + rounding);
  }
  return errors;
}

double worst(const TubeRowErrors& errors) {
  return std::max({errors.above_share, errors.below_share, errors.through_share, errors.weight_share});
}

}  // namespace

std::vector<TubeRowResponse> tube_row_responses(const TubeRow& row, const std::vector<double>& tube_mK_per_W,
                                                const TubeRowOptions& options) {
  expect_sound(row);
  expect_sound(options);
  for (const double tube : tube_mK_per_W) expects(not_negative(tube), "tube row: a tube's resistance below 0");
  const RowSides sides = sides_of(row);
  const double conductivity = sides.above.conductivity_W_per_mK;
  std::vector<std::optional<TubeRowResponse>> found(tube_mK_per_W.size());
  bool all = false;
  for (std::size_t terms = first_terms; !all; terms = std::min(2 * terms, options.most_terms)) {
    const RowField field = field_of(row, sides, terms);
    const Index whole = static_cast<Index>(terms);
    all = true;
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (found[i] && found[i]->end == TubeRowEnd::tolerance_met) continue;
      found[i] = response_of(field, conductivity, tube_mK_per_W[i], whole);
      found[i]->error = errors_of(response_of(field, conductivity, tube_mK_per_W[i], whole / 2), *found[i]);
      const bool met = worst(found[i]->error) <= options.tolerance_share;
      found[i]->end = met ? TubeRowEnd::tolerance_met : TubeRowEnd::most_terms;
      all = all && (met || terms == options.most_terms);
    }
  }
  std::vector<TubeRowResponse> responses;
  for (const auto& response : found) responses.push_back(*response);
  return responses;
}

}  // namespace slabwright
