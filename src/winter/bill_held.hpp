// A bill held against a model: how far its months are missed by what is taken of the unknowns.
#pragma once
#include "winter/bill_fit.hpp"

namespace slabwright::winter {

/// A month of the bill with what the model says of it.
struct ReadMonth {
  BillMonth bill;
  bool heats = true;
  double error_J = 0.0;
};

/// The question with a surface that is laid onto whole runs as the answer is found.
struct HeldBill {
  BillModel model;
  const Bill& bill;
  BillPriors priors;
  BillErrors errors;
};

/// Of the season, and of a summer that tells what is not heat; errors are not in them yet.
std::vector<ReadMonth> months_of(const Bill& bill);
/// Of reading, weather and surface.
void add_month_errors(const HeldBill& q, std::vector<ReadMonth>& months);

BillPoint point_of(const std::vector<double>& z, const BillPriors& priors);
double model_J(const HeldBill& q, const ReadMonth& month, const std::vector<double>& z);
/// [month]: bill less model over the month's standard error.
std::vector<double> missed(const HeldBill& q, const std::vector<ReadMonth>& months, const std::vector<double>& z);
double squares_of(const std::vector<double>& x);
/// Half the step of differences, in standard errors of what was held beforehand.
inline constexpr double bill_slope_step = 0.05;

}  // namespace slabwright::winter
