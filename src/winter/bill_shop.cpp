#include "winter/bill_shop.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/handbook_floor_film.hpp"

namespace slabwright::winter {
namespace {

constexpr FieldOptions coarse_ground{0.02, 1.5, 1.0, false};

/// Everything but concrete conducts so much better: foam and boards, and soil wherever it was laid back.
EdgeDetail conducting(EdgeDetail detail, double share) {
  constexpr double board_W_per_mK = 0.3;
  for (EdgePart& part : detail.parts)
    if (part.conductivity_W_per_mK < board_W_per_mK || part.conductivity_W_per_mK == detail.soil_W_per_mK)
      part.conductivity_W_per_mK *= share;
  detail.soil_W_per_mK *= share;
  return detail;
}

/// Heat down and out of a strip per kelvin, tubes' plane and room alike warm.
double down_W_per_K(const FloorStrip& strip) {
  const FewStates& states = strip.states;
  const auto at_rest = [&](const DriverValues& drivers) {
    return watched_values(states, steady_state(states, drivers), drivers);
  };
  DriverValues room(states.direct.front().size(), 0.0), tubes = room;
  room[edge_row::indoor] = 1.0;
  tubes[edge_row::tube_heat] = 1.0;
  if (strip.near_air_share) room[edge_row::near_air] = 1.0;
  const std::vector<double> warm = at_rest(room), heated = at_rest(tubes);
  const double tube_W_per_m2 = (1.0 - warm[0]) / heated[0];
  const auto leaves = [&](const std::vector<double>& values) {
    return -(values[states.points + edge_row::outdoor] + values[states.points + edge_row::ground]);
  };
  return strip.length_m * (leaves(warm) + tube_W_per_m2 * leaves(heated));
}

double down_W_per_K(const std::vector<FloorStrip>& floor) {
  double sum = 0.0;
  for (const FloorStrip& strip : floor) sum += down_W_per_K(strip);
  return sum;
}

/// Strips row for row of the design's, as long as they are there.
std::vector<FloorStrip> on_ground(const WinterShop& shop, const YearShop& designed, double conducts_share) {
  Envelope envelope = shop.envelope;
  for (EdgeStretch& edge : envelope.edge) edge.detail = conducting(edge.detail, conducts_share);
  EdgeFields fields(coarse_ground);
  const auto zone = heated_zone(shop.design, envelope, shop.floor, shop.watched, fields);
  if (!zone) return {};
  std::vector<FloorStrip> floor = zone->floor;
  for (std::size_t i = 0; i < floor.size(); ++i) floor[i].length_m = designed.zone.floor[i].length_m;
  return floor;
}

/// U-values are of the whole wall, the film inside it is not one that ages.
void scale_loss(ShopRoom& room, double share) {
  const double inside_W_per_K = room.air_faces_W_per_K + room.floor_m2 * floor_radiative_W_per_m2K;
  const double whole_W_per_K = share / (1.0 / room.opaque_W_per_K + 1.0 / inside_W_per_K);
  room.opaque_W_per_K = 1.0 / std::max(1.0 / whole_W_per_K - 1.0 / inside_W_per_K, 0.05 / whole_W_per_K);
  room.light_W_per_K *= share;
  room.layered_Wm_per_K *= share;
}

}  // namespace

std::optional<GroundRange> ground_range(const WinterShop& shop, const YearShop& designed) {
  GroundRange range{designed, on_ground(shop, designed, ground_conducts_less),
                    on_ground(shop, designed, ground_conducts_more), 1.0, 1.0};
  if (range.less.empty() || range.more.empty()) return std::nullopt;
  const double as_designed = down_W_per_K(designed.zone.floor);
  range.less_share = down_W_per_K(range.less) / as_designed;
  range.more_share = down_W_per_K(range.more) / as_designed;
  return range;
}

YearShop shop_at(const GroundRange& range, double loss_share, double ground_share) {
  YearShop shop = range.designed;
  for (ShopRoom& room : shop.room) scale_loss(room, loss_share);
  const bool more = ground_share > 1.0;
  const double end_share = more ? range.more_share : range.less_share;
  const double there = std::clamp((ground_share - 1.0) / (end_share - 1.0), 0.0, 1.0);
  const std::size_t strips = shop.zone.floor.size();
  for (std::size_t i = 0; i < strips && there > 0.0; ++i) {
    FloorStrip other = more ? range.more[i] : range.less[i];
    other.length_m *= there;
    shop.zone.floor[i].length_m *= 1.0 - there;
    shop.zone.floor.push_back(std::move(other));
    shop.strip_room.push_back(shop.strip_room[i]);
  }
  return shop;
}

double conducts_share(const GroundRange& range, double ground_share) {
  const bool more = ground_share > 1.0;
  const double end = std::log(more ? range.more_share : range.less_share);
  const double there = std::clamp(std::log(ground_share) / end, 0.0, 1.0);
  return std::pow(more ? ground_conducts_more : ground_conducts_less, there);
}

YearShop fitted(const GroundRange& range, const BillFit& fit) {
  return shop_at(range, fit.loss_share, fit.ground_share);
}

}  // namespace slabwright::winter
