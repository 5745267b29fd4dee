// The shop with other losses than the design's.
#pragma once
#include "slabwright/building_year.hpp"
#include "slabwright/winter.hpp"

namespace slabwright::winter {

/// The shop over three grounds: as designed, and with all that lies under and beside its concrete (soil, foam, boards)
/// conducting less and more. Shares are of the design's heat down and out per kelvin, at rest, tubes' plane and room
/// at one temperature.
struct GroundRange {
  YearShop designed;
  std::vector<FloorStrip> less, more;
  double less_share = 1.0, more_share = 1.0;
};
inline constexpr double ground_conducts_less = 0.3, ground_conducts_more = 4.0;

/// Absent as year_shop(). Two more fields for each edge, on coarse grids: only differences count.
std::optional<GroundRange> ground_range(const WinterShop& shop, const YearShop& designed);

/// Losses to the air, all alike, and to the ground as shares of the design's. In between some of the floor lies on one
/// ground and the rest on the other, as foam that is wet in places does; ground beyond the range counts as its end.
/// Doors that open, fans, and what the sun does to walls are of the season and stay as they are.
YearShop shop_at(const GroundRange& range, double loss_share, double ground_share);
/// How much better foam and soil would have to conduct for that share of heat, everywhere alike.
double conducts_share(const GroundRange& range, double ground_share);

/// The shop that a bill has shown.
YearShop fitted(const GroundRange& range, const BillFit& fit);

}  // namespace slabwright::winter
