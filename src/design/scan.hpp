// Brackets, quotes and remarks of a piece of a design file.
#pragma once
#include <string_view>

namespace slabwright {

struct Scan {
  int depth = 0;    ///< brackets opened and not closed
  int deepest = 0;  ///< most brackets open at once
  int dots = 0;     ///< most dots in a row that nothing but letters, digits and quotes separate
};

/// What stands in quotes or behind # does not count. A text in single or double quotes ends with its line at the
/// latest.
Scan scan(std::string_view text);

/// The value of a `key = value`, without blanks before it; empty where there is no equals sign outside quotes.
std::string_view after_equals(std::string_view text);

/// Where the equals sign of a `key = value` stands, outside quotes and before any remark; npos where there is none.
std::size_t equals_at(std::string_view text);

/// Where a remark begins: # at the front or after a blank, outside the quotes that the text keeps; the size where none.
std::size_t remark_at(std::string_view text);

/// The end of the text that begins with a quote at `start`: one past its closing quote, or npos where the line ends
/// first.
std::size_t quoted_end(std::string_view text, std::size_t start);

}  // namespace slabwright
