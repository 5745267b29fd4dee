// Which figures lean on our guesses.
#pragma once
#include <string>

#include "slabwright/answer.hpp"

namespace slabwright::report {

/// What is printed, by what it is worked out from.
enum class Figure {
  indoor,     ///< the temperature wanted inside
  coldest,    ///< the coldest hour
  loops,      ///< number and lengths
  distances,  ///< of the first tube from walls and doors
  loss,       ///< heat of the rooms
  ground,     ///< heat to ground and edge
  heat,       ///< of the floor, up and down
  floor,      ///< how warm the floor gets
  water,      ///< supply and return
  flow,
  pump,
  boiler,
  tank,
  power,
  balance,     ///< readings of the meters
  frost_hold,  ///< dials and places
};

/// Whether any guess stands under the figure. `~` follows the figure then.
bool leans(const Answer& answer, Figure figure);

/// The text, and `~` where the figure leans on a guess.
std::string marked(const std::string& text, const Answer& answer, Figure figure);

}  // namespace slabwright::report
