// From an answer to the drawings of its cold edges in section.
#pragma once
#include <optional>

#include "slabwright/drawing_section.hpp"
#include "slabwright/report_quotes.hpp"

namespace slabwright::sheets {

/// The section through the coldest outer wall's edge, and through the coldest big door's; empty where the answer has
/// none.
std::optional<SectionSheet> section_at_edge(const Quotes& quotes);
std::optional<SectionSheet> section_at_door(const Quotes& quotes);

/// What a row of Answer::edge_section is drawn from.
DrawnSection drawn_section(const Quotes& quotes, std::size_t row);

}  // namespace slabwright::sheets
