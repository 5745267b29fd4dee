// A piping schematic: plain values in, a drawing out. Not to scale: the supply side above, the return side below, what
// joins them in columns from the source at the left outward.
#pragma once
#include <string>
#include <vector>

#include "slabwright/drawing_words.hpp"
#include "slabwright/units.hpp"

namespace slabwright {

enum class SchematicSymbol {
  boiler,
  pump,
  mixing_valve,
  check_valve,
  bypass_valve,
  shared_piece,
  pipe,
  bar,
  balancing_valve,
  tube,
  return_valve,
  zone_valve,
  relief_valve,
  low_water,
  air_separator,
  tank,
  fill
};

struct DrawnElement {
  SchematicSymbol symbol = SchematicSymbol::pipe;
  bool by_others = false;         ///< dashed
  std::vector<KeyedWords> words;  ///< beside it, each on a line of its own or more; may be empty
};

struct DrawnMeeting {
  bool supply = true;
  int column_number = 0;  ///< of its own, from 1; 0: it stands where its branches do
  KeyedText water;        ///< how warm the water is there; may be empty
};

/// From one meeting to another, elements in order. With a column of its own it joins the two sides.
struct DrawnBranch {
  std::size_t from = 0, to = 0;
  int column_number = 0;  ///< from 1; 0: along its side
  bool runs_back = false;
  std::vector<DrawnElement> element;
  KeyedWords words;    ///< of the whole: beside a loop, along a pipe
  bool loop = false;   ///< narrow: its elements go without words
  KeyedText manifold;  ///< of a loop: whose it is
};

struct DrawnDevice {
  std::size_t meeting = 0;
  int column_number = 0;
  DrawnElement element;
};

struct DrawnScheme {
  KeyedWords title;
  std::vector<KeyedWords> notes;
  System units = System::us;
  std::vector<DrawnMeeting> meeting;
  std::vector<DrawnBranch> branch;
  std::vector<DrawnDevice> device;
};

struct SchematicSheet {
  Picture picture;
  double pitch_m = 0.0;             ///< from loop to loop
  std::vector<KeyedText> left_out;  ///< notes that found no room
};

/// On letter or A4 lying where loops keep a pitch of 6 mm there, else on larger paper. Layers: "pipes" has one line for
/// each branch, from meeting to meeting; "meetings" one for each meeting that is longer than a point; "symbols" one
/// shape or more for each element but pipes and bars, in the order of the branches. Asks for rows that fit.
SchematicSheet draw_schematic(const DrawnScheme& scheme);

}  // namespace slabwright
