// Edge and door in section: where the cold comes in, for whoever builds the forms and whoever inspects them.
#include "sheets/section.hpp"

#include "sheets/page.hpp"

namespace slabwright::sheets {

std::optional<SheetBody> sections_sheet(const Source& source) {
  Markup body;
  if (const auto edge = section_at_edge(source.q)) body += figure(edge->picture, "edge", prose("Through the edge."));
  if (const auto door = section_at_door(source.q)) body += figure(door->picture, "door", prose("Through the door."));
  if (body.html.empty()) return std::nullopt;
  return SheetBody{body};
}

}  // namespace slabwright::sheets
