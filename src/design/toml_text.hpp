// Values as they stand in a design file.
#pragma once
#include <string>
#include <string_view>
#include <variant>

#include "slabwright/fields.hpp"

namespace slabwright {

/// A text in quotes that the parser takes, whatever is in it: a control character becomes a blank.
inline std::string in_quotes(std::string_view content) {
  std::string out = "\"";
  for (const char c : content) {
    if (c == '"' || c == '\\') out += '\\';
    out += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
  }
  return out + '"';
}

/// true, 5: values that are written without quotes.
inline bool stands_bare(const Key& key, const Slot& slot) {
  const bool counted = key.unit && key.unit->dimension == Dimension::number;
  return counted || std::holds_alternative<Flag>(slot) || std::holds_alternative<Whole>(slot);
}

}  // namespace slabwright
