#include "envelope/floors.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "slabwright/envelope.hpp"

namespace slabwright {

std::size_t room_row(const Design& design, std::string_view name) {
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    if (design.room[i].name == name) return i;
  }
  return 0;
}

namespace envelope {
namespace {

/// What is given stands; the others share what it leaves of the whole, by weight.
std::vector<double> shared_out(const std::vector<std::optional<double>>& given, double whole,
                               const std::vector<double>& weights) {
  double left = whole, weight = 0.0;
  for (std::size_t i = 0; i < given.size(); ++i) {
    if (given[i])
      left -= *given[i];
    else
      weight += weights[i];
  }
  std::vector<double> shares;
  for (std::size_t i = 0; i < given.size(); ++i) {
    const double own = weight > 0.0 ? std::max(0.0, left) * weights[i] / weight : 0.0;
    shares.push_back(given[i].value_or(own));
  }
  return shares;
}

}  // namespace

WholeFloor whole_floor(const Design& design) {
  FloorShape shape = floor_shape(design.slab);
  if (shape.area_m2 <= 0.0) {
    for (const Room& room : design.room) shape.area_m2 += floor_shape(room).area_m2;
    shape.perimeter_m = 4.0 * std::sqrt(shape.area_m2);
  }
  return {shape.area_m2, design.slab.exposed_perimeter_m.value_or(shape.perimeter_m)};
}

std::vector<double> outer_walls_m(const Design& design) {
  std::vector<std::optional<double>> given;
  for (const Room& room : design.room) given.push_back(room.outer_wall_m);
  return shared_out(given, whole_floor(design).exposed_m, room_floors_m2(design));
}

double door_widths_m(const Design& design, std::size_t room) {
  return std::accumulate(design.opening.begin(), design.opening.end(), 0.0, [&](double sum, const Opening& opening) {
    const bool counts = opening.kind == OpeningKind::big_door && room_row(design, opening.room) == room;
    return counts ? sum + opening.size.width_m : sum;
  });
}

}  // namespace envelope
}  // namespace slabwright
