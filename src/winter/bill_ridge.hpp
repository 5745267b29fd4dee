// What a bill cannot tell apart.
#pragma once
#include "winter/bill_held.hpp"

namespace slabwright::winter {

struct RidgeQuestion {
  const HeldBill& bill;
  const std::vector<ReadMonth>& months;
  const BillKnown& known;
};
std::vector<BillPair> ridge_of(const RidgeQuestion& of);
std::vector<double> least_known(const BillKnown& known);

}  // namespace slabwright::winter
