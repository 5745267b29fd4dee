// What a table of readings is made of: columns, and texts that are figures of one kind.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "slabwright/balance_meters.hpp"

namespace slabwright {

enum class MeterColumn { at, flow, supply, back, front, turns, water, room, meter_error, remark };

/// A column by its heading; `unit` is as written, empty where the cells carry theirs.
struct MeterHeading {
  MeterColumn column = MeterColumn::remark;
  std::string unit;
  std::string problem;  ///< a sentence; nothing where it can be read
};
MeterHeading meter_heading(std::string_view text);

/// A figure of a column, in SI; `unit` is the heading's. Absent where nothing was read or the text cannot be taken,
/// and then `problem` says what to write.
struct MeterFigure {
  std::optional<double> si;
  std::string problem;
  bool no_unit = false;  ///< neither the text nor its heading has one
};
MeterFigure meter_figure(MeterColumn column, std::string_view text, std::string_view unit);

/// "flow", "return": what a column is called in sentences.
std::string_view word_of(MeterColumn column);

/// Blank, or a dash, a question mark or the like: nothing was read.
bool nothing_read(std::string_view text);

/// Lower case, one blank between words.
std::string folded_words(std::string_view text);

}  // namespace slabwright
