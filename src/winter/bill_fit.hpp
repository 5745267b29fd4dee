// Last winter's bill against the shop: what it fixes, and what it leaves open.
#pragma once
#include "slabwright/maths_linear.hpp"
#include "winter/bill_model.hpp"

namespace slabwright::winter {

/// Unknowns in the order of their rows, each counted in standard errors of what was held of it beforehand.
enum BillUnknown : std::size_t { air_loss, ground_loss, indoor_warmth, other_use };

/// What is known after the bill: a normal law around the likeliest, which the draws correct.
struct BillKnown {
  std::size_t unknowns = 0;  ///< 3 where the meter has heat alone
  std::vector<double> likeliest;
  MatrixRows by_bill;     ///< precision that the bill alone gives
  MatrixRows covariance;  ///< with what was held beforehand
  double squares = 0.0;   ///< of the bill's months, over their standard errors
  int worst_month = 1;    ///< that the likeliest shop misses most
  double worst_errors = 0.0;
};

/// One bill, the shop it is held against, and what is held of either beforehand.
struct BillQuestion {
  const BillCase& shop;
  const BillModel& model;
  const Bill& bill;
  BillPriors priors = {};
  BillErrors errors = {};
};

/// Two unknowns that take each other's place: one moved by `one_errors`, the other has to move by `other_errors`.
struct BillPair {
  BillUnknown one = air_loss, other = air_loss;
  double one_errors = 0.0, other_errors = 0.0;
  double squares = 0.0;  ///< by which the bill is then missed more
};
struct BillAnswer {
  BillFit fit;  ///< without words
  BillKnown known;
  std::vector<BillPair> ridge;  ///< under which the bill is missed by one standard error more at most, worst told first
  std::vector<double> least_known;  ///< the mix of unknowns of which least is known, one standard error of it
};

/// Gauss and Newton to the likeliest shop, the surface laid onto whole runs there; the bands by weighted draws.
/// Months of October to April are held against the model, June to August against what is not heat; in May and in
/// September nobody knows whether it was heated. Absent: fewer than `least_bill_months` in the season; less than the
/// best shop would use, or more than the worst (code "bill.few-months", "bill.too-low", "bill.too-high"). Said: months
/// that cannot go together ("bill.summer", "bill.months-disagree"); a summer that does is then left out.
Checked<BillAnswer> read_bill(const BillQuestion& question);
inline constexpr int least_bill_months = 3;

}  // namespace slabwright::winter
