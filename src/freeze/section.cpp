#include "slabwright/freeze_section.hpp"

#include <algorithm>

#include "freeze/held_zone.hpp"

namespace slabwright {
namespace {

using namespace freeze;

/// Every heated room over the slab that holds the first at the wall thermostat.
class HeldRooms {
 public:
  HeldRooms(const Shop& shop, double air_degC)
      : shop_(shop), slab_degC_(held_at(*shop.hold[shop.first], air_degC, shop.outdoor_degC).sensor_degC) {}

  Drivers drivers(std::size_t room) const {
    const HeldRoom held = room_held_by(*shop_.hold[room], slab_degC_, shop_.outdoor_degC);
    return {held.room_degC, shop_.outdoor_degC, shop_.ground_degC,
            std::max(0.0, held.up_W_per_m2 + held.down_W_per_m2)};
  }

 private:
  const Shop& shop_;
  double slab_degC_;
};

/// By the tube nearest to each; the first of two that are alike.
std::optional<std::size_t> coldest_edge(const HeldShop& held, const Shop& shop, const HeldRooms& rooms, EdgeKind kind) {
  std::optional<std::size_t> coldest;
  double coldest_degC = 0.0;
  for (const WatchedPlace& place : held.watched.place) {
    if (place.kind != PlaceKind::tube || !place.edge || !shop.hold[place.room]) continue;
    const EdgeStretch& edge = held.envelope.edge[*place.edge];
    if (edge.kind != kind) continue;
    const double degC = temperature_at(place.running, rooms.drivers(place.room));
    if (coldest && degC >= coldest_degC) continue;
    coldest = place.edge;
    coldest_degC = degC;
  }
  return coldest;
}

/// A door whose tube was found colder beside its wall stands for none: the first of a heated room then.
std::optional<std::size_t> any_door(const HeldShop& held, const Shop& shop) {
  for (std::size_t row = 0; row < held.envelope.edge.size(); ++row) {
    const EdgeStretch& edge = held.envelope.edge[row];
    if (edge.kind == EdgeKind::big_door && shop.hold[edge.room]) return row;
  }
  return std::nullopt;
}

}  // namespace

std::vector<SectionField> held_sections(const HeldShop& held, const Freeze& freeze) {
  if (!held.design.climate.coldest_degC || !freeze.air) return {};
  const auto shop = shop_of(held.design, held.envelope, held.floor);
  if (!shop) return {};
  const HeldRooms rooms(*shop, true_air_degC(held.design, freeze.air->dial_degC, shop->outdoor_degC));
  const auto wall = coldest_edge(held, *shop, rooms, EdgeKind::wall);
  auto door = coldest_edge(held, *shop, rooms, EdgeKind::big_door);
  if (!door) door = any_door(held, *shop);
  std::vector<SectionField> sections;
  for (const auto& row : {wall, door}) {
    if (!row) continue;
    const std::size_t room = held.envelope.edge[*row].room;
    sections.push_back(section_field(held.design, held.envelope, held.watched, *row, rooms.drivers(room)));
  }
  return sections;
}

}  // namespace slabwright
