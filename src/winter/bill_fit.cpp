#include "winter/bill_fit.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "slabwright/maths_least_squares.hpp"
#include "winter/bill_draws.hpp"
#include "winter/bill_ridge.hpp"
#include "winter/bill_words.hpp"

namespace slabwright::winter {
namespace {

/// The second moves the answer by less than a tenth of its band.
constexpr int anchor_rounds = 2;
/// A month that is missed by so much does not go with the others.
constexpr double disagrees_errors = 3.5;
/// A bill outside of what the surface was made for, by so many standard errors of all its months.
constexpr double outside_errors = 2.0;

int heating_months(const std::vector<ReadMonth>& months) {
  return static_cast<int>(std::count_if(months.begin(), months.end(), [](const ReadMonth& m) { return m.heats; }));
}

MatrixRows bill_precision(const HeldBill& q, const std::vector<ReadMonth>& months, const std::vector<double>& z) {
  MatrixRows slopes;
  for (std::size_t i = 0; i < z.size(); ++i) {
    std::vector<double> up = z, down = z;
    up[i] += bill_slope_step;
    down[i] -= bill_slope_step;
    std::vector<double> slope = missed(q, months, up);
    const std::vector<double> lower = missed(q, months, down);
    for (std::size_t k = 0; k < slope.size(); ++k) slope[k] = (slope[k] - lower[k]) / (2.0 * bill_slope_step);
    slopes.push_back(std::move(slope));
  }
  MatrixRows precision(z.size(), std::vector<double>(z.size(), 0.0));
  for (std::size_t i = 0; i < z.size(); ++i)
    for (std::size_t j = 0; j < z.size(); ++j)
      precision[i][j] = std::inner_product(slopes[i].begin(), slopes[i].end(), slopes[j].begin(), 0.0);
  return precision;
}

LeastSquares likeliest(const HeldBill& q, const std::vector<ReadMonth>& months) {
  const auto leftovers = [&](const std::vector<double>& z) {
    std::vector<double> all = missed(q, months, z);
    all.insert(all.end(), z.begin(), z.end());  // what was held beforehand
    return all;
  };
  return least_squares(std::vector<double>(q.bill.other_J > 0.0 ? 4 : 3, 0.0), leftovers);
}

BillKnown known_of(HeldBill& q, const BillCase& shop, const std::vector<ReadMonth>& months) {
  LeastSquares best = likeliest(q, months);
  for (int round = 0; round < anchor_rounds; ++round) {
    anchor(q.model, shop, point_of(best.x, q.priors));
    best = likeliest(q, months);
  }
  BillKnown known;
  known.unknowns = best.x.size();
  known.likeliest = best.x;
  known.covariance = best.covariance;
  known.by_bill = bill_precision(q, months, best.x);
  const std::vector<double> left = missed(q, months, best.x);
  known.squares = squares_of(left);
  for (std::size_t i = 0; i < left.size(); ++i) {
    if (std::abs(left[i]) <= known.worst_errors) continue;
    known.worst_errors = std::abs(left[i]);
    known.worst_month = months[i].bill.month;
  }
  return known;
}

BillFit fit_of(const HeldBill& q, const std::vector<ReadMonth>& months, const BillKnown& known) {
  const BillDraws draws = drawn(q, months, known);
  const auto share = [&](BillUnknown unknown, double error) {
    const Band z = band_in(draws, unknown);
    return Band{std::exp(error * z.low), std::exp(error * z.middle), std::exp(error * z.high)};
  };
  BillFit fit;
  fit.months = static_cast<int>(months.size());
  const Band loss = share(air_loss, q.priors.loss_share), ground = share(ground_loss, q.priors.ground_share);
  fit.loss_share = loss.middle, fit.loss_low_share = loss.low, fit.loss_high_share = loss.high;
  fit.ground_share = ground.middle, fit.ground_low_share = ground.low, fit.ground_high_share = ground.high;
  const Band indoor = band_in(draws, indoor_warmth);
  fit.indoor_K = q.priors.indoor_K * indoor.middle;
  fit.indoor_low_K = q.priors.indoor_K * indoor.low, fit.indoor_high_K = q.priors.indoor_K * indoor.high;
  if (known.unknowns > other_use) {
    const Band other = share(other_use, q.priors.other_share);
    fit.other_share = other.middle, fit.other_low_share = other.low, fit.other_high_share = other.high;
  }
  double squares = 0.0, sum_J = 0.0;
  for (const ReadMonth& month : months) {
    const double off_J = month.bill.use_J - model_J(q, month, known.likeliest);
    squares += off_J * off_J;
    sum_J += month.bill.use_J;
  }
  const double count = static_cast<double>(months.size());
  fit.misfit_share = std::sqrt(squares / count) / (sum_J / count);
  fit.surface_error_share = q.model.largest_error_share;
  return fit;
}

/// A summer month that used more than one of the depth of winter has something else on the meter.
void leave_out_summer(std::vector<ReadMonth>& months, std::vector<Diagnostic>& said) {
  for (const ReadMonth& summer : months) {
    if (summer.heats) continue;
    for (const ReadMonth& winter : months) {
      const bool deep = winter.bill.month == 12 || winter.bill.month <= 2;
      if (!winter.heats || !deep || summer.bill.use_J <= winter.bill.use_J) continue;
      said.push_back(summer_said(summer.bill.month, winter.bill.month));
      months.erase(std::remove_if(months.begin(), months.end(), [](const ReadMonth& m) { return !m.heats; }),
                   months.end());
      return;
    }
  }
}

/// What all months of the season add up to, against the best and the worst shop that the model knows.
std::optional<Diagnostic> beyond_physics(const HeldBill& q, const std::vector<ReadMonth>& months) {
  double billed_J = 0.0, least_J = 0.0, most_J = 0.0, error_J2 = 0.0;
  for (const ReadMonth& month : months) {
    if (!month.heats) continue;
    billed_J += month.bill.use_J - q.bill.other_J;
    least_J += heat_in_month(q.model, q.model.low, month.bill.month);
    most_J += heat_in_month(q.model, q.model.high, month.bill.month);
    const double other_J = q.priors.other_share * q.bill.other_J;
    error_J2 += month.error_J * month.error_J + other_J * other_J;
  }
  const double margin_J = outside_errors * std::sqrt(error_J2);
  if (billed_J < least_J - margin_J) return too_low_said(billed_J, least_J);
  if (billed_J > most_J + margin_J) return too_high_said(billed_J, most_J);
  return std::nullopt;
}

}  // namespace

Checked<BillAnswer> read_bill(const BillQuestion& question) {
  std::vector<Diagnostic> said;
  std::vector<ReadMonth> months = months_of(question.bill);
  if (heating_months(months) < least_bill_months) return {std::nullopt, {few_months_said(heating_months(months))}};
  leave_out_summer(months, said);
  HeldBill held{question.model, question.bill, question.priors, question.errors};
  add_month_errors(held, months);
  if (auto beyond = beyond_physics(held, months)) {
    said.push_back(std::move(*beyond));
    return {std::nullopt, std::move(said)};
  }
  BillAnswer answer;
  answer.known = known_of(held, question.shop, months);
  answer.fit = fit_of(held, months, answer.known);
  answer.ridge = ridge_of({held, months, answer.known});
  answer.least_known = least_known(answer.known);
  if (answer.known.worst_errors > disagrees_errors) said.push_back(disagree_said(answer.known.worst_month));
  return {std::move(answer), std::move(said)};
}

}  // namespace slabwright::winter
