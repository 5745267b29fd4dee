// Texts cut in two.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace slabwright {

inline std::string_view trim(std::string_view s) {
  constexpr std::string_view blanks = " \t\r\n";
  const std::size_t first = s.find_first_not_of(blanks);
  return first == std::string_view::npos ? std::string_view{} : s.substr(first, s.find_last_not_of(blanks) - first + 1);
}

/// Both sides of the first `mark`, trimmed; empty where there is none or where a side is empty.
inline std::optional<std::pair<std::string, std::string>> split_at(std::string_view text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  if (at == std::string_view::npos) return std::nullopt;
  const std::string_view first = trim(text.substr(0, at)), second = trim(text.substr(at + mark.size()));
  if (first.empty() || second.empty()) return std::nullopt;
  return std::pair{std::string(first), std::string(second)};
}

}  // namespace slabwright
