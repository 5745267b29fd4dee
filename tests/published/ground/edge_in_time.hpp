// The details of floor_edge_elements as sections with what their materials store.
#pragma once
#include <string>

#include "slabwright/conduction.hpp"

namespace slabwright::test {

/// Rows of drivers, and (the first three) of boundaries.
namespace edge_driver {
constexpr FieldDriverId indoor{0}, outdoor{1}, ground{2}, tube_heat{3};
}

inline bool at_door(const std::string& detail) { return detail.rfind("door", 0) == 0; }

/// From the inner face of wall or leaf into the room.
inline FieldPoint edge_point(const std::string& detail, double in_m, double depth_m) {
  return {(at_door(detail) ? 5.90 : 5.80) - in_m, -depth_m};
}

/// Half floor 6 m, slab 0.15 m of 1.75 W/mK, soil 2.0, boards 0.05 m of 0.035, edge board 0.60 m deep, 15 m of ground
/// below and outside, tubes at mid depth to x = 5.70; films 1/0.17 and 25 W/m2K. Concrete stores 2300 kg/m3 x 880
/// J/kgK, soil 2.0e6 J/m3K, boards 30 kg/m3 x 1450 J/kgK. Parts by name: wall or door, under, edge.
inline FieldSection edge_in_time(const std::string& detail) {
  using Kind = FieldDriver::Kind;
  using namespace edge_driver;
  const double board = 0.035, board_stores = 30.0 * 1450.0;
  const bool edge_board = detail.find("edge") != std::string::npos;
  FieldSection section;
  section.drivers = {{"indoor air", Kind::temperature},
                     {"outdoor air", Kind::temperature},
                     {"deep ground", Kind::temperature},
                     {"tube heat", Kind::heat}};
  section.materials = {{0.0, 21.0, -15.0, 0.0, 2.0, 2.0e6}, {0.0, 6.0, -0.15, 0.0, 1.75, 2300.0 * 880.0}};
  if (detail.find("under") != std::string::npos)
    section.materials.push_back({0.0, 6.0, -0.20, -0.15, board, board_stores});
  if (edge_board) section.materials.push_back({6.0, 6.05, -0.60, 0.0, board, board_stores});
  const double face_m = edge_point(detail, 0.0, 0.0).x_m;
  const double outdoor_m = at_door(detail) ? 5.95 : edge_board ? 6.05 : 6.0;
  section.boundaries = {{{{0.0, 0.0}, {face_m, 0.0}}, SurfaceFilm{1.0 / 0.17, indoor}},
                        {{{outdoor_m, 0.0}, {21.0, 0.0}}, SurfaceFilm{25.0, outdoor}},
                        {{{0.0, -15.0}, {21.0, -15.0}}, FixedTemperature{ground, ground}}};
  section.planes = {{{{0.0, -0.075}, {5.70, -0.075}}, tube_heat}};
  return section;
}

}  // namespace slabwright::test
