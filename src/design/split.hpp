// Texts cut in two.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "slabwright/units.hpp"

namespace slabwright {

/// Both sides of the first `mark`, trimmed; empty where there is none or where a side is empty.
inline std::optional<std::pair<std::string, std::string>> split_at(std::string_view text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  if (at == std::string_view::npos) return std::nullopt;
  const std::string_view first = trimmed(text.substr(0, at)), second = trimmed(text.substr(at + mark.size()));
  if (first.empty() || second.empty()) return std::nullopt;
  return std::pair{std::string(first), std::string(second)};
}

}  // namespace slabwright
