// The floor's temperatures on a sheet: labelled contours over one hue. Plain values in, a drawing out.
#pragma once
#include <string>
#include <vector>

#include "slabwright/drawing_plan.hpp"

namespace slabwright {

/// Temperatures at the middles of square cells; cell (i, j), i along x, is number j * columns + i.
struct DrawnWarmth {
  Point corner;  ///< lower left of cell (0, 0)
  double cell_m = 0.0;
  std::size_t columns = 0, rows = 0;
  std::vector<double> degC;    ///< [cell]
  std::vector<bool> on_floor;  ///< [cell]; off the floor `degC` is not looked at
};

/// A place to be marked, with a few words.
struct DrawnSpot {
  Point place;
  KeyedText words;
};

/// Rings round everything that is warmer than a level, high ground to their left; the map is taken on evenly beyond the
/// floor's rim for two cells. Straight from where the level crosses the line between two middles to the next.
std::vector<Polygon> warmer_than(const DrawnWarmth& warmth, double level_degC);

/// Levels a round step of the reader's own scale apart, at most eight, between the coldest and the warmest cell;
/// rising. Empty where all cells lie within one step.
std::vector<double> contour_levels_degC(const DrawnWarmth& warmth, System system);

struct WarmthSheet {
  Picture picture;
  double scale_ratio = 0.0;
  std::vector<double> level_degC;
  std::vector<KeyedText> left_out;  ///< words for which no place was found
};

/// Draws the sheet on the paper and at the scale of the plan, whose notes stand beside it: tints that darken with
/// warmth, a line with its temperature at each level, walls, doors, manifolds and no-tube areas. Asks for an outline,
/// and rows that fit.
WarmthSheet draw_warmth(const DrawnFloor& plan, const DrawnWarmth& warmth, const std::vector<DrawnSpot>& spots);

}  // namespace slabwright
