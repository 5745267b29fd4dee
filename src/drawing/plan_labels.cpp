// All labels of a sheet placed at once, and drawn where they stand.
#include <iterator>

#include "plan_sheet.hpp"

namespace slabwright::drawn {

Placed place_all(const std::vector<Part*>& parts, const Frame& frame) {
  Placed placed;
  std::vector<Obstacle> obstacles;
  std::vector<LabelWish> wishes;
  for (Part* part : parts) {
    obstacles.insert(obstacles.end(), part->obstacle.begin(), part->obstacle.end());
    for (Label& label : part->label) {
      wishes.push_back(label.wish);
      placed.label.push_back(std::move(label));
    }
  }
  placed.plan = place_labels(frame.plan, obstacles, wishes, 0.35 * mm);
  return placed;
}

namespace {

void append(std::vector<SheetShape>& to, std::vector<SheetShape> more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// Where line work had to be covered, a white ground that hides little more than the letters need.
void ground(std::vector<SheetShape>& shapes, const Lettering& text, double by_m) {
  shapes.emplace_back(Area{{ring_of(grown(box_of(text), by_m))}, Fill{white, Pattern::plain, white}, {}});
}

}  // namespace

LabelShapes label_shapes(const DrawnFloor& plan, const Frame& frame, const Placed& placed) {
  LabelShapes made;
  std::vector<SheetShape> grounds;  // below all text: a neighbour's ground may reach farther than the gap between them
  for (std::size_t k = 0; k < placed.label.size(); ++k) {
    const Label& label = placed.label[k];
    const auto& found = placed.plan.placed[k];
    if (!found) {
      if (!label.may_lack) made.left_out.push_back(label.what);
      continue;
    }
    if (!found->leader.empty()) {
      made.text.emplace_back(Trace{found->leader, {0.15 * mm, dark, Dash::solid}});
      made.text.emplace_back(Disc{label.wish.target, 0.35 * mm, dark, {}});
    }
    if (!label.port.empty()) {
      append(made.text, port_row(plan, frame.onto, label.manifold, *found));
      made.ports_number += static_cast<int>(label.port.size());
      continue;
    }
    Lettering text = label.lettering;
    text.middle = found->spot.middle;
    text.upright = found->spot.upright;
    const bool below = label.wish.on_lines == OnLines::freely && found->leader.empty();
    if (found->covers) ground(grounds, text, 0.2 * mm);
    if (label.on_ground) ground(grounds, text, 0.7 * mm);
    (below ? made.number : made.text).emplace_back(std::move(text));
  }
  made.text.insert(made.text.begin(), grounds.begin(), grounds.end());
  return made;
}

std::vector<SheetShape> frame_lines(const Frame& frame) {
  const Box whole = grown({frame.plan.low, frame.column.high}, 2.0 * mm);
  return {Area{{ring_of(whole)}, std::nullopt, {0.35 * mm, dark, Dash::solid}}};
}

}  // namespace slabwright::drawn
