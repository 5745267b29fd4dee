// What a section is put together from: paper and scale, and the parts that bring shapes, obstacles and labels.
#pragma once
#include <string>
#include <vector>

#include "plan_parts.hpp"
#include "slabwright/drawing_section.hpp"

namespace slabwright::drawn {

constexpr double section_text_m = 2.9 * mm;
constexpr Colour isotherm_hue{38, 84, 150}, freezing_hue{14, 40, 96};

struct SectionFrame {
  double width_m = 0.0, height_m = 0.0;
  int denominator = 1;
  Onto onto;
  Box ground;  ///< the window on paper
  Box area;    ///< the same with the air above the floor, over the sheet's whole width: where labels may stand
};

/// The largest usual scale at which the window fits the sheet's width; the height is left to who writes below it.
SectionFrame section_frame(const DrawnSection& section);

/// A label without spots, on a white ground, that rather stands on lines than nowhere.
Label section_label(const KeyedText& words, Point target, double leader_m);

/// Materials, what stands on the slab, tube; and the words that speak of them.
Part material_part(const DrawnSection& section, const SectionFrame& frame);
Part standing_part(const DrawnSection& section, const SectionFrame& frame);
Part section_tube_part(const DrawnSection& section, const SectionFrame& frame);

/// Material within the window as rectangles that do not overlap.
std::vector<Polygon> material_rings(const DrawnSection& section, const SectionFrame& frame);

/// Levels of the lines that are drawn; the freezing point of water is one of them where it lies within.
std::vector<double> section_levels_degC(const DrawnSection& section);
/// The lines, and their numbers.
Part isotherm_part(const DrawnSection& section, const SectionFrame& frame, const std::vector<double>& level_degC);

Part size_part(const DrawnSection& section, const SectionFrame& frame);
Part watched_part(const DrawnSection& section, const SectionFrame& frame);
Part air_part(const DrawnSection& section, const SectionFrame& frame);

}  // namespace slabwright::drawn
