// A shop written by hand, every entry in sight.
#pragma once
#include <string>

#include "slabwright/design.hpp"

namespace slabwright::test {

/// 12 x 9 m, 120 mm of concrete on 1.8 m2K/W, tube every 300 mm, one big door of 3 x 3 m whose concrete runs through,
/// nothing at the edge, not described; -20 and -27 degC outdoors.
inline Design bare_shop() {
  Design d;
  d.units = System::si;
  d.climate = {-20.0, -27.0, 16.0, 7.0, 12.0, 0.0, 4.0};
  d.ground.conductivity_W_per_mK = 2.0;
  d.building.wall_insulation = {2.3};
  d.building.roof_insulation = {5.3};
  d.building.door_insulation = {1.05};
  d.building.height_m = 3.6;
  d.building.air_changes_per_s = 0.6 / 3600.0;
  Room room;
  room.name = "shop";
  room.size = Size{12.0, 9.0};
  d.room = {room};
  Opening door;
  door.name = "big door";
  door.room = "shop";
  door.size = {3.0, 3.0};
  d.opening = {door};
  d.slab.size = Size{12.0, 9.0};
  d.slab.thickness_m = 0.12;
  d.slab.conductivity_W_per_mK = 1.75;
  d.insulation.under = {1.8};
  d.edge.depth_m = 0.6;
  d.tube.size = {"16 x 2 mm"};
  d.tube.spacing_m = 0.3;
  d.tube.from_walls_m = 0.15;
  d.tube.from_doors_m = 0.3;
  d.tube.leader_m = 3.0;
  d.manifold.resize(1);
  d.manifold[0].name = "manifold";
  d.boiler.hottest_degC = 49.0;
  d.pump.drop_K = 10.0;
  d.frost_hold = {2.0, 4.4, 1.0, 0.05, 1.0, 4.0 * 3600.0};
  d.work.hours = {7.0 * 3600.0, 17.0 * 3600.0};
  return d;
}

inline Design described_shop() {
  Design d = bare_shop();
  d.building.described = true;
  return d;
}

/// The same floor as a shop of 9 x 9 m and a store of 3 x 9 m.
inline Design shop_with_store() {
  Design d = described_shop();
  Room store;
  d.room[0].size = Size{9.0, 9.0};
  store.name = "store";
  store.size = Size{3.0, 9.0};
  d.room.push_back(store);
  return d;
}

inline bool has_code(const std::vector<Diagnostic>& said, const std::string& code) {
  for (const Diagnostic& d : said) {
    if (d.code == code) return true;
  }
  return false;
}

}  // namespace slabwright::test
