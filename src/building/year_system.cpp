#include "building/year_system.hpp"

#include <algorithm>

namespace slabwright::building {
namespace {

/// Right sides: without heat, of 1 W/m2 in the tubes, of 1 W of the second source.
constexpr std::size_t right_sides = 3;

/// One equation for each unknown: the faces of all rooms first, each of which knows its own air alone, then the airs.
struct Equations {
  double* values;
  std::size_t unknowns;
  double& at(std::size_t row, std::size_t column) { return values[row * (unknowns + right_sides) + column]; }
  double& right(std::size_t row, std::size_t side) { return at(row, unknowns + side); }
  /// A conductance between an unknown and another whose start is known: by the mean of both ends.
  void join(std::size_t row, std::size_t other, double W_per_K, double start_K) {
    at(row, row) += 0.5 * W_per_K;
    at(row, other) -= 0.5 * W_per_K;
    right(row, 0) -= 0.5 * W_per_K * start_K;
  }
};

void add_room(Equations& equations, const YearSystem& system, std::size_t index, const ShopState& from,
              double outdoor_sum_degC, double dt_s) {
  const RoomStep& room = system.room[index];
  const FloorFlow& floor = system.floor[index];
  const std::size_t faces = index, air = system.room.size() + index;
  const double air_degC = from.air_degC[index], faces_degC = from.faces_degC[index];
  const double share[2] = {room.to_air_share, 1.0 - room.to_air_share};
  const double stores[2] = {room.air_J_per_K / dt_s, room.faces_J_per_K / dt_s};
  const double outward[2] = {room.air_out_W_per_K, room.faces_out_W_per_K};
  const double gains[2] = {room.air_W, room.faces_W}, start[2] = {air_degC, faces_degC};
  for (std::size_t part = 0; part < 2; ++part) {
    const std::size_t row = part == 0 ? air : faces;
    equations.at(row, row) += stores[part] + 0.5 * outward[part];
    equations.right(row, 0) += stores[part] * start[part] + 0.5 * outward[part] * (outdoor_sum_degC - start[part]) +
                               gains[part] + share[part] * (floor.up_W + floor.up_W_per_K * room.sun_on_floor_K);
    equations.right(row, 1) += share[part] * floor.up_m2;
    equations.at(row, air) -= share[part] * floor.up_W_per_K * share[0];
    equations.at(row, faces) -= share[part] * floor.up_W_per_K * share[1];
  }
  // However much heat that is, by the air at the step's end: by the mean of both ends much of it would swing.
  equations.at(air, air) += room.beside_W_per_K;
  equations.right(air, 0) += room.beside_W;
  equations.join(air, faces, room.between_W_per_K, air_degC - faces_degC);
  equations.join(faces, air, room.between_W_per_K, faces_degC - air_degC);
}

/// Gauss without pivots: every row's own unknown weighs more than its others together. The right sides become what was
/// sought.
void eliminate(Equations& equations) {
  const std::size_t n = equations.unknowns, width = n + right_sides;
  for (std::size_t pivot = 0; pivot < n; ++pivot) {
    const double* of_pivot = &equations.at(pivot, 0);
    const double inverse = 1.0 / of_pivot[pivot];
    for (std::size_t row = pivot + 1; row < n; ++row) {
      double* of_row = &equations.at(row, 0);
      const double factor = of_row[pivot] * inverse;
      if (factor == 0.0) continue;
      for (std::size_t column = pivot + 1; column < width; ++column) of_row[column] -= factor * of_pivot[column];
    }
  }
  for (std::size_t row = n; row-- > 0;) {
    double* of_row = &equations.at(row, 0);
    const double inverse = 1.0 / of_row[row];
    for (std::size_t side = n; side < width; ++side) {
      double sum = of_row[side];
      for (std::size_t column = row + 1; column < n; ++column) sum -= of_row[column] * equations.at(column, side);
      of_row[side] = sum * inverse;
    }
  }
}

}  // namespace

YearSystem year_system(const YearShop& shop) {
  YearSystem system;
  const std::size_t rooms = shop.room.size();
  system.floor.resize(rooms);
  system.room.resize(rooms);
  system.link = shop.link;
  system.main = shop.main;
  system.solved.air.resize(rooms);
  system.solved.faces.resize(rooms);
  system.air_degC.resize(rooms);
  system.faces_degC.resize(rooms);
  system.matrix.resize(2 * rooms * (2 * rooms + right_sides));
  return system;
}

void solve(YearSystem& system, const ShopState& from, const ShopDrivers& drivers, double dt_s) {
  const std::size_t rooms = system.room.size();
  std::fill(system.matrix.begin(), system.matrix.end(), 0.0);
  Equations equations{system.matrix.data(), 2 * rooms};
  for (std::size_t room = 0; room < rooms; ++room)
    add_room(equations, system, room, from, from.outdoor_degC + drivers.outdoor_degC, dt_s);
  for (const ShopLink& link : system.link) {
    const double start_K = from.air_degC[link.one] - from.air_degC[link.other];
    equations.join(rooms + link.one, rooms + link.other, link.W_per_K, start_K);
    equations.join(rooms + link.other, rooms + link.one, link.W_per_K, -start_K);
  }
  equations.right(rooms + system.main, 2) += 1.0 - drivers.layered_share;
  eliminate(equations);
  for (std::size_t room = 0; room < rooms; ++room) {
    const std::size_t air = rooms + room, faces = room;
    system.solved.air[room] = {equations.right(air, 0), equations.right(air, 1), equations.right(air, 2)};
    system.solved.faces[room] = {equations.right(faces, 0), equations.right(faces, 1), equations.right(faces, 2)};
  }
}

}  // namespace slabwright::building
