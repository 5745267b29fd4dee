// A text cut into lines and cells, and the plain numbers in them.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace slabwright::weather {

/// Digits with an optional sign, point and exponent, blanks around it and behind the sign; nothing else is a number.
/// The nearest double, as strtod gives it, in any locale. Empty where it is no number or too big for one.
std::optional<double> plain_decimal(std::string_view s);

/// The same for a whole number of at most nine digits.
std::optional<int> plain_whole(std::string_view s);

/// Cells between commas. `quoted`: a comma within "..." belongs to the cell, and the quotes do not.
std::vector<std::string_view> cells_of(std::string_view line, bool quoted);

/// What a file holds, fit to be printed: strange characters as ?, cut after 24.
std::string shown_cell(std::string_view s);

/// Walks over the lines of a text that are not blank.
class LineWalk {
 public:
  explicit LineWalk(std::string_view text);
  bool next();  ///< false behind the last line
  std::string_view line() const { return line_; }
  int number() const { return number_; }  ///< from 1, blank lines counted
  bool last() const { return rest_.empty(); }
  /// Cells of the line, plain commas; stands until the next call.
  const std::vector<std::string_view>& cells();

 private:
  std::string_view rest_, line_;
  std::vector<std::string_view> cells_;
  int number_ = 0;
};

}  // namespace slabwright::weather
