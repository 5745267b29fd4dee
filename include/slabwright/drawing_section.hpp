// An edge of a floor in vertical section with its temperatures, to scale. Plain values in, a drawing out. Metres: x
// from the inner face of wall or leaf into the room, which lies at the right; y up from the floor.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/drawing_warmth.hpp"
#include "slabwright/drawing_words.hpp"

namespace slabwright {

enum class SectionInk { ground, concrete, foam, other };

/// A rectangle of material; words speak of it from beside it, or are empty.
struct DrawnMaterial {
  Box box;
  SectionInk ink = SectionInk::ground;
  KeyedText words;
};

/// What stands on the slab, from its outer face to its inner face at zero.
struct DrawnStanding {
  double thickness_m = 0.0;
  bool leaf = false;  ///< of a door; otherwise a wall
  KeyedText words;
};

/// A line along one of the axes, and what its ends measure: thin lines lead there.
struct DrawnSize {
  Point from, to;
  Point from_thing, to_thing;
  KeyedText words;
};

/// A watched place: a letter at it, and its temperature.
struct DrawnWatched {
  Point place;
  KeyedText words;
};

struct DrawnSection {
  KeyedText title;
  System units = System::us;
  Box window;                           ///< what of the ground and the slab is drawn; its top is the floor or above
  std::vector<DrawnMaterial> material;  ///< later ones cover earlier ones
  DrawnStanding standing;
  std::optional<KeyedText> covering;  ///< lies on the floor
  std::vector<Point> tube;            ///< axes, the nearest first
  double tube_diameter_m = 0.0;
  DrawnWarmth warmth;  ///< points at the middles of cells; on_floor: on material
  KeyedText room_words, outdoor_words;
  std::optional<KeyedText> near_words;  ///< of the air at a door's floor
  std::vector<DrawnSize> size;
  std::vector<DrawnWatched> watched;
  std::vector<KeyedWords> note;  ///< sentences below the drawing
};

struct SectionSheet {
  Picture picture;
  double scale_ratio = 0.0;
  Point zero;                       ///< where the inner face meets the floor, on paper
  std::vector<double> level_degC;   ///< of the lines of equal temperature, the freezing point among them
  std::vector<KeyedText> left_out;  ///< words for which no place was found, but for levels
};

/// Draws the section, 190 mm wide and as high as it needs: materials by pattern, tube at its true size and place, lines
/// of equal temperature in one hue with their level, that of freezing water heavy and named; places, sizes and
/// sentences. Asks for a window with a size and rows that fit.
SectionSheet draw_section(const DrawnSection& section);

}  // namespace slabwright
