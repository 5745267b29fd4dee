// Usual details as rectangles of material.
#include <algorithm>

#include "slabwright/conduction_edge.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

struct Reach {
  double from_m, to_m;
};

class Builder {
 public:
  Builder(EdgeDetail& detail, const EdgeBuild& build) : detail_(detail), build_(build) {
    if (const auto* wall = std::get_if<WallEdge>(&detail.kind))
      outer_in_m_ = -wall->width_m;
    else
      outer_in_m_ = -(std::get<DoorEdge>(detail.kind).leaf_m + std::get<DoorEdge>(detail.kind).nose_m);
  }

  void run() {
    add_under();
    add_concrete();
    add_upright();
    if (build_.wing) add_wing(*build_.wing);
    if (build_.apron) add_apron(*build_.apron);
    if (build_.thermal_break) {
      const double inner_m = build_.thermal_break->in_m;
      const InsulatingBoard& strip = build_.thermal_break->strip;
      add(EdgePartOf::thermal_break, strip, {inner_m - strip.thickness_m, inner_m}, {0.0, detail_.slab_thickness_m});
    }
  }

 private:
  bool at_wall() const { return std::holds_alternative<WallEdge>(detail_.kind); }

  /// The slab's extent inward of its outer face, at most to the line of symmetry.
  Reach from_outer_face(double width_m) const {
    return {outer_in_m_, outer_in_m_ + std::min(width_m, detail_.half_width_m)};
  }

  void add(EdgePartOf of, const InsulatingBoard& board, Reach in, Reach depth) {
    expects(std::min(board.resistance_m2K_per_W, board.thickness_m) > 0.0,
            "edge: a board needs resistance and thickness");
    detail_.parts.push_back({in.from_m, in.to_m, depth.from_m, depth.to_m,
                             board.thickness_m / board.resistance_m2K_per_W, board_J_per_m3K, of});
  }

  void add_concrete(EdgePartOf of, Reach in, Reach depth) {
    detail_.parts.push_back(
        {in.from_m, in.to_m, depth.from_m, depth.to_m, detail_.concrete_W_per_mK, concrete_J_per_m3K, of});
  }

  void add_under() {
    double top_m = detail_.slab_thickness_m;
    for (const FlatBoard& layer : build_.under) {
      const double underside_m = top_m + layer.board.thickness_m;
      const EdgePartOf of = layer.width_m ? EdgePartOf::foam_along_rim : EdgePartOf::foam_under;
      add(of, layer.board, from_outer_face(layer.width_m.value_or(detail_.half_width_m)), {top_m, underside_m});
      top_m = underside_m;
    }
  }

  void add_concrete() {
    if (build_.thickened)
      add_concrete(EdgePartOf::thickened_edge, from_outer_face(build_.thickened->width_m),
                   {0.0, build_.thickened->depth_m});
    if (!build_.stem_wall) return;
    const StemWall& wall = *build_.stem_wall;
    add_concrete(EdgePartOf::stem_wall, from_outer_face(wall.thickness_m), {0.0, wall.depth_m});
    if (!wall.footing) return;
    const double middle_m = outer_in_m_ + wall.thickness_m / 2.0, half_m = wall.footing->width_m / 2.0;
    add_concrete(EdgePartOf::footing, {middle_m - half_m, middle_m + half_m},
                 {wall.depth_m - wall.footing->thickness_m, wall.depth_m});
  }

  void add_upright() {
    if (build_.inside) {
      const double from_m = outer_in_m_ + (build_.stem_wall ? build_.stem_wall->thickness_m : 0.0);
      const double top_m = at_wall() ? 0.0 : detail_.slab_thickness_m;
      expects(build_.inside->depth_m > top_m, "edge: a board inside must reach below the slab at a door");
      add(EdgePartOf::foam_inside, build_.inside->board, {from_m, from_m + build_.inside->board.thickness_m},
          {top_m, build_.inside->depth_m});
    }
    if (!build_.outside) return;
    const InsulatingBoard& board = build_.outside->board;
    add(EdgePartOf::foam_outside, board, {outer_in_m_ - board.thickness_m, outer_in_m_},
        {0.0, build_.outside->depth_m});
    if (auto* wall = std::get_if<WallEdge>(&detail_.kind)) wall->covered_m = board.thickness_m;
  }

  void add_wing(const WingBoard& wing) {
    const double from_m = outer_in_m_ - (build_.outside ? build_.outside->board.thickness_m : 0.0);
    const double top_m = detail_.grade_depth_m + wing.depth_m;
    add(EdgePartOf::wing, wing.board, {from_m - wing.width_m, from_m}, {top_m, top_m + wing.board.thickness_m});
  }

  void add_apron(const Apron& apron) {
    const Reach depth{detail_.grade_depth_m, detail_.grade_depth_m + apron.thickness_m};
    const double gap_m = apron.gap ? apron.gap->thickness_m : 0.0;
    add_concrete(EdgePartOf::apron, {outer_in_m_ - gap_m - apron.length_m, outer_in_m_ - gap_m}, depth);
    if (apron.gap) add(EdgePartOf::apron_gap, *apron.gap, {outer_in_m_ - gap_m, outer_in_m_}, depth);
  }

  EdgeDetail& detail_;
  const EdgeBuild& build_;
  double outer_in_m_ = 0.0;
};

}  // namespace

EdgeDetail with_build(EdgeDetail detail, const EdgeBuild& build) {
  Builder(detail, build).run();
  return detail;
}

}  // namespace slabwright
