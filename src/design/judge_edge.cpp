// Foam, walls and footings at the slab's edge that cannot be built so.
#include <fmt/format.h>

#include <algorithm>

#include "design/edge_sizes.hpp"
#include "design/judge.hpp"
#include "slabwright/handbook_materials.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// More foam than this lies under no slab.
constexpr double most_foam_m = 1.0;
constexpr double depth_example_m[] = {foot_m, 0.3};  // US, SI

std::string in_own(const Judge& judge, double m) {
  const bool us = judge.design.units == System::us;
  return show_as(m, Dimension::length, us ? "in" : "mm", us ? 1 : 0);
}

std::string_view example(const Judge& judge, std::string_view us, std::string_view si) {
  return judge.design.units == System::us ? us : si;
}

bool there(const std::optional<Insulation>& insulation) { return insulation && insulation->resistance_m2K_per_W > 0.0; }

double as_foam_m(const Insulation& insulation) {
  return insulation.resistance_m2K_per_W * find_insulation("XPS")->conductivity_W_per_mK;
}

/// A size of what is not there.
void judge_alone(Judge& judge) {
  const Record edge = reading(judge.design.edge);
  for (const EdgeSize& size : edge_sizes) {
    const std::string path = fmt::format("edge.{}", size.word), of_path = fmt::format("edge.{}", size.of);
    const Key& of = *find_key(edge, size.of);
    const std::string written = write_out(of, of.slot(edge.at), judge.design.units);
    if (!judge.given(path) || !judge.sound({of_path}) || (!written.empty() && written != "none")) continue;
    judge.problem(path, "edge.alone",
                  fmt::format("{0} needs {1}, which is missing: write {1} = \"{2}\" in [edge], or remove {0}.",
                              size.word, size.of, example(judge, size.us_example, size.si_example)));
  }
}

bool any_edge_foam(const Design& design) {
  const Edge& edge = design.edge;
  const auto has_strip = [](const Opening& opening) { return there(opening.strip); };
  return there(edge.insulation) || there(edge.door_strip) || there(edge.inside_insulation) ||
         there(edge.flat_insulation) || there(edge.wing_insulation) || there(edge.apron_gap) ||
         std::any_of(design.opening.begin(), design.opening.end(), has_strip);
}

void judge_spoiled_foam(Judge& judge) {
  const FloorInsulation& under = judge.design.insulation;
  const bool foam_under = there(under.under) || !under.more_layers.empty();
  struct Place {
    std::string_view section, key;
    bool foam;
  };
  for (const Place& place :
       {Place{"insulation", "under", foam_under}, Place{"edge", "insulation", any_edge_foam(judge.design)}}) {
    for (const std::string_view word : {"wet", "crushed"}) {
      const std::string path = fmt::format("{}.{}", place.section, word);
      if (place.foam || !judge.given(path)) continue;
      judge.problem(path, "edge.no-foam",
                    fmt::format("no foam is there that could be {0}: write {1} in [{2}], or remove {0}.", word,
                                place.key, place.section));
    }
  }
}

void judge_layers(Judge& judge) {
  const FloorInsulation& insulation = judge.design.insulation;
  double all_m = as_foam_m(insulation.under);
  for (const Insulation& layer : insulation.more_layers) all_m += as_foam_m(layer);
  if (all_m <= most_foam_m || !judge.given("insulation.more_layers")) return;
  judge.problem("insulation.more_layers", "insulation.thick",
                fmt::format("under and more_layers make {} of foam: at most {} lies under a slab. Write fewer layers, "
                            "or a smaller R.",
                            in_own(judge, all_m), in_own(judge, most_foam_m)));
}

void judge_thickened(Judge& judge) {
  const Edge& edge = judge.design.edge;
  if (!edge.thickened_depth_m || !judge.sound({"edge.thickened_depth", "slab.thickness"})) return;
  if (edge.stem_wall_m) {
    judge.problem("edge.thickened_depth", "edge.two-feet",
                  "a thickened edge and a stem wall cannot both carry the edge: remove thickened_depth or stem_wall.");
  } else if (*edge.thickened_depth_m <= judge.design.slab.thickness_m) {
    judge.problem("edge.thickened_depth", "edge.thin",
                  fmt::format("the edge, {} deep, is no deeper than the slab with {}: write thickened_depth = \"{}\", "
                              "or remove it.",
                              in_own(judge, *edge.thickened_depth_m), in_own(judge, judge.design.slab.thickness_m),
                              in_own(judge, judge.design.slab.thickness_m + depth_example_m[0])));
  }
}

void judge_footing(Judge& judge) {
  const Edge& edge = judge.design.edge;
  if (!edge.stem_wall_m || !edge.footing_depth_m) return;
  if (!judge.sound({"edge.stem_wall", "edge.footing_depth", "edge.footing_width", "edge.footing_thickness"})) return;
  if (edge.footing_width_m && *edge.footing_width_m <= *edge.stem_wall_m) {
    judge.problem("edge.footing_width", "edge.footing-narrow",
                  fmt::format("the footing is {} wide, the wall on it {}: write a wider footing_width, or remove it.",
                              in_own(judge, *edge.footing_width_m), in_own(judge, *edge.stem_wall_m)));
  }
  const double footing_m = edge.footing_width_m ? edge.footing_thickness_m.value_or(0.0) : 0.0;
  const double slab_m = judge.design.slab.thickness_m;
  if (!judge.sound({"slab.thickness"}) || *edge.footing_depth_m - footing_m > slab_m) return;
  judge.problem(
      "edge.footing_depth", "edge.footing-high",
      fmt::format("the wall's foot is {} thick and reaches {} down, so that none of the wall stands below the "
                  "slab with {}: write footing_depth more than {}.",
                  in_own(judge, footing_m), in_own(judge, *edge.footing_depth_m), in_own(judge, slab_m),
                  in_own(judge, slab_m + footing_m)));
}

/// Something of concrete must reach from the floor down to the ground outside.
void judge_grade(Judge& judge) {
  const Edge& edge = judge.design.edge;
  if (!edge.floor_above_grade_m || !judge.sound({"edge.floor_above_grade", "slab.thickness"})) return;
  if (!judge.sound({"edge.stem_wall", "edge.footing_depth", "edge.thickened_depth"})) return;
  const double foot_m = edge.stem_wall_m
                            ? edge.footing_depth_m.value_or(0.0)
                            : std::max(edge.thickened_depth_m.value_or(0.0), judge.design.slab.thickness_m);
  if (foot_m >= *edge.floor_above_grade_m) return;
  judge.problem("edge.floor_above_grade", "edge.earth-open",
                fmt::format("the floor lies {} above the ground outside, but the concrete at its edge reaches only {} "
                            "down: write stem_wall = \"{}\", or a greater {}.",
                            in_own(judge, *edge.floor_above_grade_m), in_own(judge, foot_m),
                            example(judge, "8 in", "200 mm"), edge.stem_wall_m ? "footing_depth" : "thickened_depth"));
}

/// Foam stands where the nearest tube would have to lie.
void judge_tube_in_foam(Judge& judge, const std::string& path, std::string_view foam, double foam_in_m,
                        const std::string& tube_path, double tube_in_m) {
  const TubeSize* size = find_tube(judge.design.tube.size.name);
  if (!size || !judge.sound({path, tube_path, "tube.size"})) return;
  if (foam_in_m + 0.5 * size->outside_diameter_m <= tube_in_m) return;
  judge.problem(
      path, "edge.tube-in-foam",
      fmt::format("{} reaches {} into the room, and the nearest tube lies {} in: write a thinner one, or more "
                  "{} in [{}].",
                  foam, in_own(judge, foam_in_m), in_own(judge, tube_in_m), tube_path.substr(tube_path.find('.') + 1),
                  tube_path.substr(0, tube_path.find_first_of(".["))));
}

void judge_tube_at_foam(Judge& judge) {
  const Design& design = judge.design;
  // A strip begins under the leaf, which with the slab's nose is 100 mm deep.
  constexpr double under_leaf_m = 0.1;
  if (there(design.edge.inside_insulation)) {
    judge_tube_in_foam(judge, "edge.inside_insulation", "the board inside the stem wall",
                       as_foam_m(*design.edge.inside_insulation), "tube.from_walls", design.tube.from_walls_m);
  }
  for (std::size_t i = 0; i < design.opening.size(); ++i) {
    const Opening& opening = design.opening[i];
    if (opening.kind != OpeningKind::big_door) continue;
    const double in_m = as_foam_m(opening.strip.value_or(design.edge.door_strip)) - under_leaf_m;
    const std::string row = fmt::format("opening[{}].", i + 1);
    if (in_m <= 0.0) continue;
    judge_tube_in_foam(judge, opening.strip ? row + "strip" : "edge.door_strip", "the strip across the slab", in_m,
                       opening.tube_distance_m ? row + "tube_distance" : "tube.from_doors",
                       opening.tube_distance_m.value_or(design.tube.from_doors_m));
  }
}

}  // namespace

void judge_edge(Judge& judge) {
  judge_alone(judge);
  judge_spoiled_foam(judge);
  judge_layers(judge);
  judge_thickened(judge);
  judge_footing(judge);
  judge_grade(judge);
  judge_tube_at_foam(judge);
}

}  // namespace slabwright
