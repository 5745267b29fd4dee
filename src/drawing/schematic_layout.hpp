// Where things stand on a piping schematic.
#pragma once
#include <vector>

#include "plan_parts.hpp"
#include "slabwright/drawing_schematic.hpp"

namespace slabwright::schematic {

using drawn::mm;

constexpr double word_m = 2.4 * mm, word_pitch_m = 3.3 * mm;
/// Words beside a symbol are broken to this; those of devices, which stand side by side, to less.
constexpr double words_wide_m = 25.0 * mm, device_words_m = 17.0 * mm;
constexpr double symbol_m = 3.2 * mm;  ///< half of a usual symbol
constexpr double least_pitch_m = 6.0 * mm, best_pitch_m = 8.5 * mm;

/// How a branch along a side runs: at the side's own level, or on a track farther out.
struct Lane {
  double from_x_m = 0.0, to_x_m = 0.0;  ///< where it leaves and arrives
  double level_m = 0.0;                 ///< height on paper of its long part
  double words_x_m = 0.0;               ///< where its words may begin
  bool straight = true;
};

/// A meeting on its side: from its first column to its last, on paper.
struct Rail {
  double low_x_m = 0.0, high_x_m = 0.0;
  double level_m = 0.0;
};

struct Layout {
  double width_m = 0.0, height_m = 0.0;
  double pitch_m = 0.0;
  double supply_m = 0.0, return_m = 0.0;  ///< heights of the two sides
  std::vector<double> column_x_m;         ///< from column 1 on
  std::vector<Rail> rail;                 ///< by meeting
  std::vector<Lane> lane;                 ///< by branch; of those in columns nothing is set
  double top_m = 0.0, bottom_m = 0.0;     ///< highest and lowest that may be drawn; title above, notes below
};

Layout layout_of(const DrawnScheme& scheme);

/// Lines of an element's words.
std::vector<KeyedText> lines_of(const DrawnElement& element, double wide_m = words_wide_m);
/// Its symbols along a side, with room for their words, one after the other.
double lane_room_m(const DrawnBranch& branch);
/// Whether an element is drawn with a symbol: all but pipes and bars.
bool has_symbol(const DrawnElement& element);

}  // namespace slabwright::schematic
