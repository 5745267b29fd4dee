// Designs that the tests of this folder share.
#pragma once
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/routing.hpp"

namespace slabwright::test {

/// 36 x 30 ft, 1/2 in tube every 12 in, leaders of 10 ft, one room, one manifold.
inline Design shop() {
  Design design;
  design.slab.size = Size{10.9728, 9.144};
  design.slab.thickness_m = 0.127;
  design.tube.size.name = "1/2 in";
  design.tube.spacing_m = 0.3048;
  design.tube.leader_m = 3.048;
  design.manifold.resize(1);
  design.room.resize(1);
  design.room[0].name = "shop";
  return design;
}

inline Room room(const std::string& name, double area_m2, bool heated_floor = true) {
  Room out;
  out.name = name;
  out.area_m2 = area_m2;
  out.heated_floor = heated_floor;
  return out;
}

inline LoopEntry entry(double length_m, const std::string& room = {}, const std::string& manifold = {}) {
  LoopEntry out;
  out.length_m = length_m;
  out.room = room;
  out.manifold = manifold;
  return out;
}

inline std::optional<Diagnostic> find(const std::vector<Diagnostic>& said, const std::string& code) {
  const auto found = std::find_if(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
  return found == said.end() ? std::nullopt : std::optional(*found);
}

}  // namespace slabwright::test
