// A design as a shop for years: its rooms over the strips of the heated zone.
#include <algorithm>
#include <cmath>

#include "building/edge_heat.hpp"
#include "slabwright/building_year.hpp"
#include "slabwright/handbook_air.hpp"

namespace slabwright {
namespace {

constexpr double working_air_degC = 10.0;
/// Areal capacity of inner faces: classes "very light", "medium" and "very heavy" of ISO 52016-1.
double faces_J_per_m2K(Mass mass) {
  switch (mass) {
    case Mass::heavy: return 250e3;
    case Mass::medium: return 110e3;
    case Mass::light: break;
  }
  return 50e3;
}
/// A building that is not described: so much of its loss goes through walls and roof (practice).
constexpr double opaque_share = 0.45;
/// A framed partition, and a doorway through which the air goes round one hour in five (practice).
constexpr double partition_W_per_m2K = 2.0;
constexpr double doorway_width_m = 0.9, doorway_height_m = 2.05, doorway_open_share = 0.2, doorway_K = 2.0;
/// Heads are here; the rest of the height is warmer or colder.
constexpr double head_height_m = 1.1;
constexpr double same_line_m = 0.02;

double height_of(const Design& design, std::size_t row) {
  return design.room[row].height_m.value_or(design.building.height_m);
}

ShopRoom room_of(const Design& design, const Envelope& envelope, std::size_t row) {
  const RoomLoss& loss = envelope.room[row];
  const double height_m = height_of(design, row);
  double outer_wall_m = 0.0;
  for (const EdgeStretch& edge : envelope.edge) outer_wall_m += edge.room == row ? edge.length_m : 0.0;
  const double faces_m2 = outer_wall_m * height_m + loss.floor_m2;
  ShopRoom room;
  room.of = row;
  room.floor_m2 = loss.floor_m2;
  room.air_J_per_K =
      loss.floor_m2 * height_m * air_density_kg_per_m3(working_air_degC, design.climate.altitude_m) * air_J_per_kgK;
  room.contents_J_per_K = loss.floor_m2 * contents_J_per_m2K;
  room.faces_J_per_K = faces_m2 * faces_J_per_m2K(design.building.mass);
  room.air_faces_W_per_K = faces_m2 * faces_film_W_per_m2K;
  const double inside_W_per_K = room.air_faces_W_per_K + loss.floor_m2 * floor_radiative_W_per_m2K;
  const double opaque_W_per_K = loss.walls_W_per_K + loss.roof_W_per_K + opaque_share * loss.by_area_W_per_K;
  room.light_W_per_K = loss.openings_W_per_K + loss.air_W_per_K + (1.0 - opaque_share) * loss.by_area_W_per_K;
  // Floor and air as warm as each other, the faces' own film is a part of the resistance that was counted.
  room.opaque_W_per_K = 1.0 / std::max(1.0 / opaque_W_per_K - 1.0 / inside_W_per_K, 0.05 / opaque_W_per_K);
  room.layered_Wm_per_K = layered_Wm_per_K(design, loss, row);
  return room;
}

/// How far two pieces of wall lie side by side.
double along_m(const Place& a, const Place& b, const Place& c, const Place& d) {
  const double length_m = std::hypot(b.x_m - a.x_m, b.y_m - a.y_m);
  if (length_m == 0.0) return 0.0;
  const double ux = (b.x_m - a.x_m) / length_m, uy = (b.y_m - a.y_m) / length_m;
  const auto off_m = [&](const Place& p) { return std::abs((p.x_m - a.x_m) * uy - (p.y_m - a.y_m) * ux); };
  if (off_m(c) > same_line_m || off_m(d) > same_line_m) return 0.0;
  const double from_m = (c.x_m - a.x_m) * ux + (c.y_m - a.y_m) * uy;
  const double to_m = (d.x_m - a.x_m) * ux + (d.y_m - a.y_m) * uy;
  return std::max(0.0, std::min(length_m, std::max(from_m, to_m)) - std::max(0.0, std::min(from_m, to_m)));
}

double shared_m(const std::vector<Place>& one, const std::vector<Place>& other) {
  double shared = 0.0;
  for (std::size_t i = 0; i < one.size(); ++i)
    for (std::size_t j = 0; j < other.size(); ++j)
      shared += along_m(one[i], one[(i + 1) % one.size()], other[j], other[(j + 1) % other.size()]);
  return shared;
}

ShopLink link_of(std::size_t one, std::size_t other, double length_m, double height_m) {
  const double air_W_per_K =
      door_heat_W({doorway_width_m, doorway_height_m}, doorway_K) / doorway_K * doorway_open_share;
  return {one, other, partition_W_per_m2K * length_m * height_m + air_W_per_K};
}

/// Rooms that share a line. Where rooms are known by their areas alone each borders on the main one, by a side of a
/// square as large.
std::vector<ShopLink> links_of(const Design& design, const YearShop& shop) {
  std::vector<ShopLink> links;
  for (std::size_t one = 0; one < shop.room.size(); ++one) {
    for (std::size_t other = one + 1; other < shop.room.size(); ++other) {
      const FloorShape a = floor_shape(design.room[shop.room[one].of]);
      const FloorShape b = floor_shape(design.room[shop.room[other].of]);
      const bool drawn = !a.outline.empty() && !b.outline.empty();
      const bool beside = one == shop.main || other == shop.main;
      const double side_m = std::sqrt(std::min(shop.room[one].floor_m2, shop.room[other].floor_m2));
      const double length_m = drawn ? shared_m(a.outline, b.outline) : beside ? side_m : 0.0;
      if (length_m > 0.0) links.push_back(link_of(one, other, length_m, height_of(design, shop.room[one].of)));
    }
  }
  return links;
}

/// Row of the shop's room for one of the design; the largest for one that is not among them.
std::size_t row_for(const YearShop& shop, std::size_t design_room) {
  std::size_t largest = 0;
  for (std::size_t row = 0; row < shop.room.size(); ++row) {
    if (shop.room[row].of == design_room) return row;
    if (shop.room[row].floor_m2 > shop.room[largest].floor_m2) largest = row;
  }
  return largest;
}

void merge(ShopRoom& into, const ShopRoom& room) {
  into.floor_m2 += room.floor_m2;
  into.air_J_per_K += room.air_J_per_K;
  into.contents_J_per_K += room.contents_J_per_K;
  into.faces_J_per_K += room.faces_J_per_K;
  into.light_W_per_K += room.light_W_per_K;
  into.opaque_W_per_K += room.opaque_W_per_K;
  into.air_faces_W_per_K += room.air_faces_W_per_K;
  into.layered_Wm_per_K += room.layered_Wm_per_K;
}

bool has_edge(const Zone& zone, std::size_t design_room) {
  return std::any_of(zone.floor.begin(), zone.floor.end(),
                     [&](const FloorStrip& strip) { return strip.room == design_room; });
}

/// Rooms with an edge of their own; the others count with the largest of those.
void add_rooms(YearShop& shop, const Design& design, const Envelope& envelope) {
  std::vector<ShopRoom> inner;
  for (std::size_t row = 0; row < envelope.room.size(); ++row) {
    if (!envelope.room[row].heated_floor || envelope.room[row].floor_m2 <= 0.0) continue;
    const ShopRoom room = room_of(design, envelope, row);
    (has_edge(shop.zone, row) ? shop.room : inner).push_back(room);
  }
  for (const ShopRoom& room : inner) merge(shop.room[row_for(shop, envelope.room.size())], room);
}

/// A room's strips cover its floor.
void fit_strips(YearShop& shop) {
  std::vector<double> covered_m2(shop.room.size(), 0.0);
  for (const FloorStrip& strip : shop.zone.floor) {
    shop.strip_room.push_back(row_for(shop, strip.room));
    covered_m2[shop.strip_room.back()] += strip.length_m * strip.width_m;
  }
  for (std::size_t i = 0; i < shop.zone.floor.size(); ++i) {
    const std::size_t room = shop.strip_room[i];
    shop.zone.floor[i].length_m *= shop.room[room].floor_m2 / covered_m2[room];
  }
}

}  // namespace

double layered_Wm_per_K(const Design& design, const RoomLoss& loss, std::size_t row) {
  const double height_m = height_of(design, row);
  const double opaque_W_per_K = loss.walls_W_per_K + loss.roof_W_per_K + opaque_share * loss.by_area_W_per_K;
  const double light_W_per_K = loss.openings_W_per_K + loss.air_W_per_K + (1.0 - opaque_share) * loss.by_area_W_per_K;
  const double half_m = std::max(0.0, 0.5 * height_m - head_height_m);
  const double roof_W_per_K = loss.roof_W_per_K + 0.5 * opaque_share * loss.by_area_W_per_K;
  const double sides_W_per_K = opaque_W_per_K - roof_W_per_K + light_W_per_K;
  return roof_W_per_K * std::max(0.0, height_m - head_height_m) + sides_W_per_K * half_m;
}

std::optional<YearShop> year_shop(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                                  const WatchedPlaces& watched, EdgeFields& fields) {
  auto zone = heated_zone(design, envelope, floor, watched, fields);
  if (!zone) return std::nullopt;
  YearShop shop;
  shop.zone = std::move(*zone);
  add_rooms(shop, design, envelope);
  fit_strips(shop);
  for (const ZonePlace& place : shop.zone.place) shop.place_room.push_back(row_for(shop, place.room));
  shop.link = links_of(design, shop);
  shop.film_W_per_m2K = floor_film(floor_film_rise_K(building::typical_up_W_per_m2)).coefficient_W_per_m2K;
  for (const ShopRoom& room : shop.room)
    shop.slab_J_per_K += room.floor_m2 * design.slab.thickness_m * concrete_J_per_m3K;
  return shop;
}

double tubes_m2(const YearShop& shop) { return tubes_m2(shop.zone); }

}  // namespace slabwright
