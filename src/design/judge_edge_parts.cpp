// The user's own rectangles of material at the edge.
#include <fmt/format.h>

#include <algorithm>

#include "design/judge.hpp"
#include "slabwright/handbook_materials.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

/// What conducts less carries no tube: tubes are cast in.
constexpr double least_round_tube_W_per_mK = 0.3;

class PartJudge {
 public:
  PartJudge(Judge& judge, std::size_t row)
      : judge_(judge), part_(judge.design.edge_part[row]), prefix_(fmt::format("edge_part[{}].", row + 1)) {}

  void run() {
    for (const std::string_view word : {"in_from", "in_to", "depth_from", "depth_to"}) {
      if (!judge_.given(path(word))) return;  // said elsewhere
    }
    judge_order("in", part_.in_from_m, part_.in_to_m);
    judge_order("depth", part_.depth_from_m, part_.depth_to_m);
    judge_where();
    judge_material();
    judge_tube();
  }

 private:
  std::string path(std::string_view word) const { return prefix_ + std::string(word); }

  void judge_order(std::string_view along, double from_m, double to_m) {
    if (from_m < to_m) return;
    judge_.problem(path(fmt::format("{}_to", along)), "edge.part-size",
                   fmt::format("{0}_to must be more than {0}_from: {1}.", along,
                               along == "in" ? "both run from the inner face of wall or leaf into the room, and are "
                                               "less than nothing outside it"
                                             : "both run down from the top of the slab"));
  }

  void judge_where() {
    if (part_.where.empty() || part_.where == "walls") return;
    std::string doors;
    for (const Opening& opening : judge_.design.opening) {
      if (opening.kind != OpeningKind::big_door || opening.name.empty()) continue;
      if (opening.name == part_.where) return;
      doors += fmt::format(", or where = \"{}\"", opening.name);
    }
    judge_.problem(
        path("where"), "edge.part-where",
        fmt::format("no big door is called \"{}\". Write where = \"walls\"{}.", excerpt(part_.where), doors));
  }

  void judge_material() {
    if (!judge_.sound({path("material"), path("conductivity")})) return;
    if (!part_.material.empty() && part_.conductivity_W_per_mK) {
      judge_.problem(
          path("conductivity"), "edge.part-twice",
          fmt::format("{} has a conductivity of its own: remove material or conductivity.", excerpt(part_.material)));
    } else if (part_.material.empty() && !part_.conductivity_W_per_mK) {
      judge_.problem(prefix_.substr(0, prefix_.size() - 1), "edge.part-nothing",
                     "what is it made of? Write material = \"concrete\" or conductivity = \"0.04 W/mK\".");
    } else if (!edge_material(part_)) {
      judge_.problem(
          path("material"), "edge.part-unknown",
          fmt::format("no material \"{}\" is known here. Write \"concrete\", a soil (\"sand or gravel\"), an "
                      "insulation (\"XPS\"), or a conductivity.",
                      excerpt(part_.material)));
    }
  }

  /// Tubes lie in concrete.
  void judge_tube() {
    const Design& design = judge_.design;
    const auto material = edge_material(part_);
    if (!material || material->conductivity_W_per_mK >= least_round_tube_W_per_mK) return;
    if (!find_tube(design.tube.size.name) || !judge_.sound({"slab.thickness", "slab.concrete_above_tube"})) return;
    const double depth_m = tube_axis_depth_m(design);
    const auto covers = [&](double in_m) {
      return part_.in_from_m < in_m && in_m < part_.in_to_m && part_.depth_from_m < depth_m &&
             depth_m < part_.depth_to_m;
    };
    const bool at_walls = part_.where.empty() || part_.where == "walls";
    bool covered = at_walls && covers(design.tube.from_walls_m);
    for (const Opening& opening : design.opening) {
      covered = covered || (opening.kind == OpeningKind::big_door && opening.name == part_.where &&
                            covers(opening.tube_distance_m.value_or(design.tube.from_doors_m)));
    }
    if (!covered) return;
    judge_.problem(prefix_.substr(0, prefix_.size() - 1), "edge.part-over-tube",
                   "this rectangle lies over the nearest tube, and tubes lie in concrete: write a smaller in_to, or "
                   "move the tube further in.");
  }

  Judge& judge_;
  const EdgePartEntry& part_;
  std::string prefix_;
};

}  // namespace

void judge_edge_parts(Judge& judge) {
  for (std::size_t row = 0; row < judge.design.edge_part.size(); ++row) PartJudge(judge, row).run();
}

}  // namespace slabwright
