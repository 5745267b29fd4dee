// Pages for one reader each, made from an answer. A face: it computes nothing.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/drawing_plan.hpp"
#include "slabwright/report.hpp"

namespace slabwright {

/// The floor of an answer as a plan's values: its walls, doors, rooms, no-tube areas, joints, manifolds, anchors that
/// the drilling guide was asked about, and the loops that are drawn. Sleeves are numbered along the joints, one joint
/// after the other. Empty where the slab's shape is not known.
std::optional<DrawnFloor> drawn_floor(const Answer& answer);

/// The pages there are: "plan.svg" and "plan.dxf" where loops are drawn, "temperatures.svg" where the floor's field is
/// known too.
std::vector<Sheet> sheets_of(const Answer& answer);

/// A page to print, and for whom.
struct ReaderSheet {
  Sheet sheet;
  std::string reader;
};

/// A self-contained page for each reader of the answer to `sheets`, and "index.html" that leads to them.
std::vector<ReaderSheet> reader_sheets(const Answer& answer);

/// The floor in letters, for a terminal; empty where no loops are drawn.
std::vector<std::string> floor_in_letters(const Answer& answer);

}  // namespace slabwright
