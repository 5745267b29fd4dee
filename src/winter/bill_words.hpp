// Last winter's bill in words.
#pragma once
#include "slabwright/winter.hpp"
#include "winter/bill_fit.hpp"

namespace slabwright::winter {

Diagnostic few_months_said(int months);
Diagnostic summer_said(int summer_month, int winter_month);
Diagnostic disagree_said(int month);
Diagnostic too_low_said(double billed_J, double least_J);
Diagnostic too_high_said(double billed_J, double most_J);

/// Pairs, and the mix of which least is known.
std::vector<std::string> ridge_words(const BillAnswer& answer, const BillPriors& priors, System system);
/// Hints, marked as such.
std::vector<std::string> implied_words(const BillFit& fit, const Design& design);
/// What a design file can say: the loss to the air; ground and foam where the bill moves them.
std::vector<std::string> lines_to_paste(const BillFit& fit, const WinterShop& shop, const GroundRange& range);

}  // namespace slabwright::winter
