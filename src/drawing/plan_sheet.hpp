// The paper of a plan: which size, which scale, and what stands beside the floor.
#pragma once
#include <string>
#include <vector>

#include "plan_parts.hpp"

namespace slabwright::drawn {

struct Frame {
  double width_m = 0.0, height_m = 0.0;
  std::string paper;  ///< "11 x 17 in"
  int denominator = 1;
  Box plan;    ///< where the floor and all round it may be drawn
  Box column;  ///< title, key, list of loops
  Onto onto;
};

/// The smallest paper on which neighbouring tubes lie far enough apart to be told from each other, else the largest,
/// and the largest scale that fits it.
Frame frame_for(const DrawnFloor& plan);

/// Labels that have found their places, as far as there are any.
struct Placed {
  std::vector<Label> label;
  LabelPlan plan;
};
/// Takes the labels of all parts; those of earlier parts choose first.
Placed place_all(const std::vector<Part*>& parts, const Frame& frame);

struct LabelShapes {
  std::vector<SheetShape> number;  ///< grey, below the tube
  std::vector<SheetShape> text;
  std::vector<KeyedText> left_out;
  int ports_number = 0;
};
LabelShapes label_shapes(const DrawnFloor& plan, const Frame& frame, const Placed& placed);

/// The line round the whole sheet.
std::vector<SheetShape> frame_lines(const Frame& frame);

/// Samples with words: only of what the plan shows.
struct KeyLine {
  std::vector<SheetShape> sample;  ///< about zero, 12 mm wide
  KeyedWords words;
};
std::vector<KeyLine> key_lines(const DrawnFloor& plan, const TubePens& pens);

/// What stands in the column beside title, scale, north and notes.
struct ColumnText {
  std::vector<KeyedText> sentence;  ///< below the scale
  std::vector<KeyLine> key;
  bool loops = false;  ///< with the list of loops
};

/// What stands in the column, from the top down, and what found no room there.
struct Column {
  std::vector<SheetShape> shape;
  std::vector<KeyedText> left_out;
};
Column column_of(const DrawnFloor& plan, const Frame& frame, const ColumnText& text,
                 const std::vector<KeyedText>& left_out_of_plan);

}  // namespace slabwright::drawn
