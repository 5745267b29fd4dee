// Labels that never collide: each finds a place that is free of the others and of what is drawn, or says that there is
// none. On paper; metres.
#pragma once
#include <cstddef>
#include <vector>

#include "slabwright/drawing.hpp"

namespace slabwright {

/// Nothing may lie on what is solid. Lines may be covered by labels that must, lines and marks by those that lie below
/// them anyway.
enum class Hardness { solid, mark, line };

/// What a label may not cover: a line with this much on either side; one place where both ends are the same.
struct Obstacle {
  Point from, to;
  double reach_m = 0.0;
  Hardness hardness = Hardness::solid;
};

/// Whether a label may lie on lines: never; where there is no other place; as it likes, because it is drawn below.
enum class OnLines { never, if_needed, freely };

struct LabelSpot {
  Point middle;
  bool upright = false;  ///< the label's width and height change places
};

struct LabelWish {
  double width_m = 0.0;
  double height_m = 0.0;
  std::vector<LabelSpot> spot;  ///< best first
  Point target;                 ///< the place it speaks of
  double leader_m = 0.0;        ///< how far from its target a thin line may bring it; 0: it has none
  OnLines on_lines = OnLines::never;
  bool lines_first = false;  ///< rather on lines than at the end of a leader
};

struct PlacedLabel {
  LabelSpot spot;
  std::vector<Piece> leader;  ///< from the label's rim to its target; empty where it stands at its place
  bool covers = false;        ///< lies on lines although it would rather not
};

struct LabelPlan {
  std::vector<std::optional<PlacedLabel>> placed;  ///< a row for each wish
  std::vector<std::size_t> left_out;               ///< rows of `placed` without a place
};

/// Places labels in their order, each at its first free spot; where there is none, a neighbour that has another free
/// spot gives way, then a leader is tried, then lines are covered where the wish allows, at a spot or at the end of a
/// leader. Labels keep `gap_m` between them, lie within `sheet`, and no leader passes through a label. The same wishes
/// give the same places.
LabelPlan place_labels(const Box& sheet, const std::vector<Obstacle>& obstacles, const std::vector<LabelWish>& wishes,
                       double gap_m);

}  // namespace slabwright
