// Foam under the slab, and everything at its edge.
#include "design/choices.hpp"

namespace slabwright {
namespace {

constexpr double most_crushed_share = 0.9, most_wet_share = 5.0;

constexpr Key keys_of_edge[] = {
    key<&Edge::insulation>({.meaning = "Foam board upright outside the edge of the slab, along walls.",
                            .us = "none",
                            .source = "practice",
                            .tight = "R-10",
                            .poor = "none",
                            .si_tight = "1.8 m2K/W",
                            .si_poor = "none"}),
    key<&Edge::depth_m>({.meaning = "How far the edge board reaches below the top of the slab.",
                         .us = "24 in",
                         .si = "600 mm",
                         .source = "practice",
                         .least = 0.05,
                         .most = 3.0}),
    key<&Edge::door_strip>({.meaning = "Foam strip across the slab under a big door; none means that the concrete "
                                       "runs through to the cold.",
                            .us = "none",
                            .source = "practice",
                            .tight = "R-10",
                            .poor = "none",
                            .si_tight = "1.8 m2K/W",
                            .si_poor = "none"}),
    key<&Edge::wet_share>({.meaning = "By how much water in the edge's foam raises its conductivity; dry when absent.",
                           .least = 0.0,
                           .most = most_wet_share}),
    key<&Edge::crushed_share>({.meaning = "How much of the thickness of the edge's foam is crushed; none when absent.",
                               .least = 0.0,
                               .most = most_crushed_share}),
    key<&Edge::floor_above_grade_m>({.meaning = "How far the floor lies above the ground outside, along walls; level "
                                                "when absent. At a big door ground or apron comes up to the floor.",
                                     .least = 0.0,
                                     .most = 1.0}),
    key<&Edge::stem_wall_m>({.meaning = "Thickness of a concrete wall under the edge, flush with its outer face; the "
                                        "outer wall is as thick. None when absent.",
                             .least = 0.1,
                             .most = 0.6}),
    key<&Edge::footing_depth_m>({.meaning = "How far stem wall and footing reach below the top of the slab; 48 in or "
                                            "1.2 m when absent.",
                                 .least = 0.15,
                                 .most = 4.0}),
    key<&Edge::footing_width_m>(
        {.meaning = "Width of a footing, centred under the stem wall; none when absent.", .least = 0.15, .most = 1.5}),
    key<&Edge::footing_thickness_m>(
        {.meaning = "Thickness of the footing; 8 in or 200 mm when absent.", .least = 0.1, .most = 1.0}),
    key<&Edge::thickened_depth_m>({.meaning = "How deep the slab is along its edge where it is cast deeper there; no "
                                              "deeper when absent.",
                                   .least = 0.1,
                                   .most = 2.0}),
    key<&Edge::thickened_width_m>({.meaning = "Width of the thickened edge, from the slab's outer face in; 12 in or "
                                              "300 mm when absent.",
                                   .least = 0.1,
                                   .most = 1.0}),
    key<&Edge::inside_insulation>({.meaning = "Foam board upright against the inner face of the stem wall: between "
                                              "slab and wall, below the slab at a big door. None when absent."}),
    key<&Edge::inside_depth_m>({.meaning = "How far that board reaches below the top of the slab; 24 in or 600 mm "
                                           "when absent.",
                                .least = 0.05,
                                .most = 3.0}),
    key<&Edge::flat_insulation>({.meaning = "Foam board flat under the rim of the slab, below all other foam there. "
                                            "None when absent."}),
    key<&Edge::flat_width_m>({.meaning = "Width of that board, from the slab's outer face in; 24 in or 600 mm when "
                                         "absent.",
                              .least = 0.1,
                              .most = 3.0}),
    key<&Edge::wing_insulation>({.meaning = "Foam board flat in the ground outside, along walls. None when absent."}),
    key<&Edge::wing_width_m>(
        {.meaning = "Width of that board, from the edge out; 24 in or 600 mm when absent.", .least = 0.1, .most = 3.0}),
    key<&Edge::wing_depth_m>({.meaning = "How deep that board is buried, from the ground to its top; 12 in or 300 mm "
                                         "when absent.",
                              .least = 0.0,
                              .most = 2.0}),
    key<&Edge::apron_thickness_m>(
        {.meaning = "Thickness of a concrete apron outside big doors; none when absent.", .least = 0.05, .most = 0.5}),
    key<&Edge::apron_length_m>(
        {.meaning = "How far the apron reaches out; 48 in or 1.2 m when absent.", .least = 0.1, .most = 14.0}),
    key<&Edge::apron_gap>({.meaning = "Foam between slab and apron; concrete meets concrete when absent."})};

}  // namespace

Record record_of(FloorInsulation& x) {
  static constexpr Key keys[] = {
      key<&FloorInsulation::under>({.meaning = "Foam under the slab.",
                                    .us = "R-10",
                                    .si = "1.8 m2K/W",
                                    .source = "practice",
                                    .tight = "R-15",
                                    .poor = "none",
                                    .si_tight = "2.6 m2K/W",
                                    .si_poor = "none"}),
      key<&FloorInsulation::more_layers>(
          {.meaning = "Further layers of foam below that one, from the top down: [\"1 in XPS\", ...]."}),
      key<&FloorInsulation::wet_share>({.meaning = "By how much water in the foam raises its conductivity; dry when "
                                                   "absent.",
                                        .least = 0.0,
                                        .most = most_wet_share}),
      key<&FloorInsulation::crushed_share>({.meaning = "How much of the foam's thickness is crushed; none when absent.",
                                            .least = 0.0,
                                            .most = most_crushed_share})};
  return {keys, &x};
}

Record record_of(Edge& x) { return {keys_of_edge, &x}; }

Record record_of(EdgePartEntry& x) {
  static constexpr Key keys[] = {
      key<&EdgePartEntry::where>({.meaning = "\"walls\", or the name of a big door; walls when absent."}),
      key<&EdgePartEntry::in_from_m>({.meaning = "Where it begins, from the inner face of wall or leaf into the room; "
                                                 "less than nothing is outside that face.",
                                      .least = -14.0,
                                      .most = 10.0}),
      key<&EdgePartEntry::in_to_m>({.meaning = "Where it ends, more than `in_from`.", .least = -14.0, .most = 10.0}),
      key<&EdgePartEntry::depth_from_m>(
          {.meaning = "How far its top lies below the top of the slab.", .least = 0.0, .most = 10.0}),
      key<&EdgePartEntry::depth_to_m>(
          {.meaning = "How far its underside lies below the top of the slab.", .least = 0.0, .most = 10.0}),
      key<&EdgePartEntry::material>({.meaning = "What it is made of: \"concrete\", an insulation (\"XPS\") or a soil "
                                                "(\"clay or silt\"); or give `conductivity`."}),
      key<&EdgePartEntry::conductivity_W_per_mK>(
          {.meaning = "Its heat conductivity, in place of a material.", .least = 0.005, .most = 400.0})};
  return {keys, &x};
}

}  // namespace slabwright
