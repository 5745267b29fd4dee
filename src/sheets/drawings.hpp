// Drawings for sheets, each from an answer; absent where the answer has not what it shows.
#pragma once
#include <optional>

#include "slabwright/answer.hpp"
#include "slabwright/drawing_schematic.hpp"

namespace slabwright::sheets {

/// The plant's scheme as a drawing's values.
std::optional<DrawnScheme> drawn_scheme(const Answer& answer);
std::optional<Picture> schematic_picture(const Answer& answer);

}  // namespace slabwright::sheets
