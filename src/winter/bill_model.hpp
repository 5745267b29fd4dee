// What the meter of a shop would have shown, month by month, for losses and warmth that nobody knows.
#pragma once
#include <array>

#include "slabwright/maths_surface.hpp"
#include "winter/bill_shop.hpp"
#include "winter/way_run.hpp"

namespace slabwright::winter {

/// January first.
using MonthsOfUse = std::array<double, 12>;  ///< J

/// What may differ from what was said.
struct BillPoint {
  double loss_share = 1.0, ground_share = 1.0;
  double indoor_K = 0.0;  ///< every thermostat is turned up by it
};

/// Last winter's way, of the shop as designed, and how it has been for years.
struct BillCase {
  const GroundRange& range;
  const WayCase& way;
  ZoneHistory history;
};

/// Electric energy for heat, by the hourly way over the heating season; 0 in months outside it. Soil as years of this
/// way have left it. `outdoor_K`: by month, warmer than the season's weather.
MonthsOfUse heat_use(const BillCase& of, const BillPoint& at, const MonthsOfUse& outdoor_K = {});

/// In place of whole runs: a surface of second degree for each month of the season, over the box below.
struct BillModel {
  Surface surface;
  BillPoint low, high;                ///< the box
  MonthsOfUse error_J{};              ///< root mean square at points that it had not seen
  double largest_error_share = 0.0;   ///< of the mean month
  MonthsOfUse per_outdoor_J_per_K{};  ///< less heat for a month that was a kelvin warmer
  MonthsOfUse designed_J{};           ///< heat as designed, by a whole run
  MonthsOfUse shift_J{};              ///< added to the surface, so that it is right at one point
};
struct BillModelOptions {
  std::size_t solves = 22, checks = 6;
  std::uint64_t seed = 20261127;
};
/// Range of the box: so many standard errors of what is held beforehand.
BillModel bill_model(const BillCase& of, const BillPriors& priors = {}, const BillModelOptions& options = {});

/// J of heat in a month, 1 to 12, of the season. Beyond the box as at its end.
double heat_in_month(const BillModel& model, const BillPoint& at, int month);

/// The surface shifted onto a whole run at this point.
void anchor(BillModel& model, const BillCase& of, const BillPoint& at);

}  // namespace slabwright::winter
