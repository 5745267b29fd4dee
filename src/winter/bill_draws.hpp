// What a bill leaves open, as weighted draws.
#pragma once
#include "slabwright/maths_sampling.hpp"
#include "winter/bill_held.hpp"

namespace slabwright::winter {

/// Draws, each in standard errors of what was held beforehand, with their weights.
struct BillDraws {
  std::vector<std::vector<double>> z;
  std::vector<double> weight;
};
/// Quasi-random and seeded.
BillDraws drawn(const HeldBill& q, const std::vector<ReadMonth>& months, const BillKnown& known);
/// Of one unknown, in its standard errors.
Band band_in(const BillDraws& draws, std::size_t unknown);

}  // namespace slabwright::winter
