// Last winter's bill, read as a measurement of the shop.
#pragma once
#include <string>
#include <vector>

namespace slabwright {

/// What is held of the unknowns before the bill is read, as standard errors: all practice. The first two and the last
/// are of logarithms.
struct BillPriors {
  double loss_share = 0.35, ground_share = 0.5, indoor_K = 1.0, other_share = 0.3;
};

/// How well the bill itself and the winter that it is of are known: standard errors, practice.
struct BillErrors {
  double reading_share = 0.03;  ///< of a month, days that were counted to its neighbour in it
  double month_K = 1.5;         ///< of a month's mean outdoors against the year that is run; 0 where that was the year
};

/// How far last winter's bill agrees with the shop, and what it cannot tell apart.
struct BillFit {
  int months = 0;                                      ///< that were held against the shop
  double misfit_share = 0.0;                           ///< root mean square of the months, over their mean
  double loss_share = 1.0;                             ///< of what the design loses to air: the middle ...
  double loss_low_share = 1.0, loss_high_share = 1.0;  ///< ... and 5 and 95 of 100
  double ground_share = 1.0, ground_low_share = 1.0, ground_high_share = 1.0;
  double indoor_K = 0.0;  ///< warmer than was said
  double indoor_low_K = 0.0, indoor_high_K = 0.0;
  double other_share = 1.0, other_low_share = 1.0, other_high_share = 1.0;  ///< of what was said not to be heat
  double surface_error_share =
      0.0;                         ///< largest, of a month's mean: the surface against whole runs that it had not seen
  std::vector<std::string> ridge;  ///< pairs that fit as well, in words
  std::vector<std::string> implies;  ///< wet foam, a leaky door
  std::vector<std::string> paste;    ///< lines of a design file that put the fit into it, with their sections
};

}  // namespace slabwright
