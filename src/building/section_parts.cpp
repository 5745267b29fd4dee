#include "building/section_parts.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace slabwright::building {
namespace {

/// At least so much of the floor, of the ground outside and of the ground below is shown ...
constexpr double least_in_m = 0.9, least_out_m = 0.45, least_depth_m = 0.7;
/// ... and so much beyond what is built; no more than that of wings, aprons and footings.
constexpr double beyond_m = 0.2, most_out_m = 1.5, most_depth_m = 2.2;
/// Of tubes that are shown beside the nearest.
constexpr double spacings_shown = 2.5;

std::string_view name_of_part(EdgePartOf of) {
  switch (of) {
    case EdgePartOf::own: return "part of the edge";
    case EdgePartOf::foam_under: return "foam under the slab";
    case EdgePartOf::foam_along_rim: return "foam under the rim";
    case EdgePartOf::thickened_edge: return "thickened edge";
    case EdgePartOf::stem_wall: return "stem wall";
    case EdgePartOf::footing: return "footing";
    case EdgePartOf::foam_inside: return "foam inside the edge";
    case EdgePartOf::foam_outside: return "foam outside the edge";
    case EdgePartOf::wing: return "foam in the ground outside";
    case EdgePartOf::apron: return "apron";
    case EdgePartOf::apron_gap: return "foam at the apron";
    case EdgePartOf::thermal_break: return "foam strip under the door";
  }
  return "";
}

bool lies_flat(EdgePartOf of) {
  return of == EdgePartOf::foam_under || of == EdgePartOf::foam_along_rim || of == EdgePartOf::wing;
}

std::string material_of(const EdgePart& part, const EdgeDetail& detail) {
  if (part.heat_capacity_J_per_m3K == board_J_per_m3K) return "foam";
  if (part.heat_capacity_J_per_m3K == concrete_J_per_m3K) return "concrete";
  const bool as_ground =
      part.heat_capacity_J_per_m3K == soil_J_per_m3K && part.conductivity_W_per_mK == detail.soil_W_per_mK;
  return as_ground ? "ground" : "other";
}

SectionPart part_of(const EdgePart& part, const EdgeDetail& detail) {
  SectionPart made{std::string(name_of_part(part.of)),
                   material_of(part, detail),
                   part.in_from_m,
                   part.in_to_m,
                   part.depth_from_m,
                   part.depth_to_m,
                   part.conductivity_W_per_mK,
                   {},
                   {}};
  if (part.of == EdgePartOf::own || made.material != "foam") return made;
  made.thickness_m = lies_flat(part.of) ? part.depth_to_m - part.depth_from_m : part.in_to_m - part.in_from_m;
  made.resistance_m2K_per_W = *made.thickness_m / part.conductivity_W_per_mK;
  return made;
}

bool ends_with(std::string_view text, std::string_view end) {
  return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

/// The tube nearest to this edge, whichever section has its temperature.
bool is_nearest_tube(const WatchedPlace& place, const EdgeStretch& edge) {
  return place.kind == PlaceKind::tube && place.room == edge.room && ends_with(place.name, " inside the " + edge.name);
}

}  // namespace

void set_build(SectionField& field, const Design& design, const EdgeStretch& edge) {
  const EdgeDetail& detail = edge.detail;
  field.at = edge.kind == EdgeKind::wall ? "wall" : "big door";
  if (const auto* wall = std::get_if<WallEdge>(&detail.kind)) {
    field.face_m = wall->width_m;
    field.covered_m = wall->covered_m;
  } else {
    field.face_m = std::get<DoorEdge>(detail.kind).leaf_m;
    field.nose_m = std::get<DoorEdge>(detail.kind).nose_m;
  }
  field.floor_above_ground_m = detail.grade_depth_m;
  field.slab_m = detail.slab_thickness_m;
  const double covering = design.slab.covering.resistance_m2K_per_W;
  if (covering > 0.0) field.covering_m2K_per_W = covering;
}

SectionWindow window_of(const SectionField& field, const EdgeStretch& edge, double tube_spacing_m) {
  const double outer_in_m = -(field.face_m + field.nose_m);
  const double middle_in_m = edge.detail.half_width_m + outer_in_m;
  double out_m = least_out_m, depth_m = std::max(least_depth_m, field.floor_above_ground_m + least_out_m);
  for (const EdgePart& part : edge.detail.parts) {
    out_m = std::max(out_m, outer_in_m - part.in_from_m + beyond_m);
    depth_m = std::max(depth_m, part.depth_to_m + beyond_m);
  }
  return {outer_in_m - std::min(out_m, most_out_m),
          std::min(middle_in_m, std::max(least_in_m, edge.tube_in_m + spacings_shown * tube_spacing_m)),
          std::min({depth_m, most_depth_m, edge.detail.domain_depth_m})};
}

std::vector<SectionPart> parts_in(const SectionWindow& window, const EdgeDetail& detail, double outer_in_m) {
  const auto ground = [&](double from_m, double to_m, double depth_m) {
    return SectionPart{"ground", "ground", from_m, to_m, depth_m, window.depth_to_m, detail.soil_W_per_mK, {}, {}};
  };
  std::vector<SectionPart> parts{ground(outer_in_m, window.in_to_m, 0.0),
                                 ground(window.in_from_m, outer_in_m, detail.grade_depth_m),
                                 {"slab",
                                  "concrete",
                                  outer_in_m,
                                  window.in_to_m,
                                  0.0,
                                  detail.slab_thickness_m,
                                  detail.concrete_W_per_mK,
                                  detail.slab_thickness_m,
                                  {}}};
  for (const EdgePart& part : detail.parts) parts.push_back(part_of(part, detail));
  return parts;
}

std::vector<SectionPlace> places_at(const EdgeStretch& edge, std::size_t row, const WatchedPlaces& watched) {
  std::vector<SectionPlace> places;
  const auto add = [&](const std::string& name, EdgePoint at) {
    const bool known = std::any_of(places.begin(), places.end(), [&](const SectionPlace& place) {
      return place.in_m == at.in_m && place.depth_m == at.depth_m;
    });
    if (!known) places.push_back({name, at.in_m, at.depth_m, 0.0});
  };
  for (const WatchedPlace& place : watched.place) {
    if (is_nearest_tube(place, edge))
      add(place.name, {edge.tube_in_m, edge.detail.tube_depth_m});
    else if (place.edge == row && place.kind != PlaceKind::tube)
      add(place.name, place.at);
  }
  return places;
}

}  // namespace slabwright::building
