#include "winter/bill_held.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace slabwright::winter {
namespace {

bool is_summer(int month) { return month >= 6 && month <= 8; }

double other_share_of(const std::vector<double>& z, const BillPriors& priors) {
  return z.size() > other_use ? std::exp(priors.other_share * z[other_use]) : 1.0;
}

/// Heat of the bill over that of the design: how much more a warmer month would have saved.
double heat_share(const HeldBill& q, const std::vector<ReadMonth>& months) {
  double billed_J = 0.0, designed_J = 0.0;
  for (const ReadMonth& month : months) {
    if (!month.heats) continue;
    billed_J += month.bill.use_J - q.bill.other_J;
    designed_J += q.model.designed_J[static_cast<std::size_t>(month.bill.month - 1)];
  }
  return designed_J > 0.0 ? std::max(0.1, billed_J / designed_J) : 1.0;
}

}  // namespace

BillPoint point_of(const std::vector<double>& z, const BillPriors& priors) {
  return {std::exp(priors.loss_share * z[air_loss]), std::exp(priors.ground_share * z[ground_loss]),
          priors.indoor_K * z[indoor_warmth]};
}
double model_J(const HeldBill& q, const ReadMonth& month, const std::vector<double>& z) {
  const double other_J = q.bill.other_J * other_share_of(z, q.priors);
  return other_J + (month.heats ? heat_in_month(q.model, point_of(z, q.priors), month.bill.month) : 0.0);
}

std::vector<ReadMonth> months_of(const Bill& bill) {
  std::vector<ReadMonth> months;
  for (const BillMonth& month : bill.months) {
    const bool heats = month.month >= 10 || month.month <= 4;  // as the model has it
    if (heats || (is_summer(month.month) && bill.other_J > 0.0)) months.push_back({month, heats, 0.0});
  }
  return months;
}

void add_month_errors(const HeldBill& q, std::vector<ReadMonth>& months) {
  const double share = heat_share(q, months);
  double mean_J = 0.0;
  for (const ReadMonth& month : months) mean_J += month.bill.use_J / static_cast<double>(months.size());
  for (ReadMonth& month : months) {
    const std::size_t row = static_cast<std::size_t>(month.bill.month - 1);
    // A month of next to nothing is no better known for that.
    const double reading_J = q.errors.reading_share * std::max(month.bill.use_J, 0.2 * mean_J);
    const double weather_J = month.heats ? q.errors.month_K * share * q.model.per_outdoor_J_per_K[row] : 0.0;
    month.error_J = std::sqrt(reading_J * reading_J + weather_J * weather_J +
                              (month.heats ? q.model.error_J[row] * q.model.error_J[row] : 0.0));
  }
}

std::vector<double> missed(const HeldBill& q, const std::vector<ReadMonth>& months, const std::vector<double>& z) {
  std::vector<double> leftover;
  for (const ReadMonth& month : months) leftover.push_back((month.bill.use_J - model_J(q, month, z)) / month.error_J);
  return leftover;
}

double squares_of(const std::vector<double>& x) { return std::inner_product(x.begin(), x.end(), x.begin(), 0.0); }

}  // namespace slabwright::winter
