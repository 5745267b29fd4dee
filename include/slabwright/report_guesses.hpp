// Which figures lean on our guesses.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

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
  winter,      ///< what a year uses
};

/// "design", "freeze": the command's own word.
std::string_view question_word(Question question);

/// Whether the question's stages read the key at this path: some keys only one command reads, and `sheets`.
bool is_read(const Answer& answer, std::string_view path);

/// The guesses among those keys, and how many of them the user gave.
std::vector<Assumption> guesses_read(const Answer& answer);
std::size_t given_read(const Answer& answer);

/// Whether any guess stands under the figure. `~` follows the figure then.
bool leans(const Answer& answer, Figure figure);

/// The text, and `~` where the figure leans on a guess.
std::string marked(const std::string& text, const Answer& answer, Figure figure);

}  // namespace slabwright::report
