// Everything off for the winter: what still freezes.
#include <algorithm>

#include "freeze/held_zone.hpp"
#include "slabwright/fluid.hpp"
#include "slabwright/freeze_outage.hpp"

namespace slabwright {
namespace {

using namespace freeze;

struct Coldest {
  std::string name;
  double degC = 0.0;
};

}  // namespace

TurnOff turned_off(const HeldShop& held, EdgeFields& fields) {
  TurnOff off;
  const auto zone = held.design.climate.coldest_degC ? held_zone(held, fields) : std::nullopt;
  if (!zone) return off;
  const std::vector<ZoneRow> rows = unheated_snap(zone->zone, snap_case(held.design, held.snap, zone->shop.first));
  const double mixture_degC = freezing_point_degC(mixture_of(held.design.fluid));
  double loops_degC = 100.0;
  std::vector<Coldest> frozen;
  for (std::size_t i = 0; i < zone->places.place.size(); ++i) {
    const WatchedPlace& place = zone->places.place[i];
    const bool holds_mixture = place.kind == PlaceKind::tube || place.kind == PlaceKind::room_air;
    if (!place.decides && !holds_mixture) continue;
    double coldest_degC = 100.0;
    for (const ZoneRow& row : rows) coldest_degC = std::min(coldest_degC, row.place_degC[i]);
    if (place.kind == PlaceKind::tube) off.coldest_tube_degC = std::min(off.coldest_tube_degC, coldest_degC);
    if (place.kind == PlaceKind::room_air) off.coldest_air_degC = std::min(off.coldest_air_degC, coldest_degC);
    if (holds_mixture) loops_degC = std::min(loops_degC, coldest_degC);
    if (coldest_degC <= (holds_mixture ? mixture_degC : place.freezes_degC))
      frozen.push_back({place.name, coldest_degC});
  }
  std::stable_sort(frozen.begin(), frozen.end(), [](const Coldest& a, const Coldest& b) { return a.degC < b.degC; });
  for (const Coldest& place : frozen) off.freezes.push_back(place.name);
  off.yes = off.freezes.empty() && zone->places.unknown.empty();
  off.glycol_share = glycol_that_keeps_share(held.design.fluid.kind, loops_degC);
  return off;
}

}  // namespace slabwright
