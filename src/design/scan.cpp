#include "design/scan.hpp"

#include <algorithm>

#include "design/split.hpp"

namespace slabwright {

std::size_t quoted_end(std::string_view text, std::size_t start) {
  const char quote = text[start];
  for (std::size_t i = start + 1; i < text.size() && text[i] != '\n'; ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (text[i] == quote) {
      return i + 1;
    }
  }
  return std::string_view::npos;
}

Scan scan(std::string_view text) {
  Scan found;
  int dots = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '"' || c == '\'') {
      i = std::min(quoted_end(text, i), text.find('\n', i)) - 1;
      if (i >= text.size()) break;
    } else if (c == '#') {
      i = text.find('\n', i);
      if (i == std::string_view::npos) break;
    } else if (c == '[' || c == '{') {
      found.deepest = std::max(found.deepest, ++found.depth);
    } else if (c == ']' || c == '}') {
      --found.depth;
    } else if (c == '.') {
      found.dots = std::max(found.dots, ++dots);
    }
    if (c == ',' || c == '=' || c == '\n' || c == '[' || c == '{') dots = 0;
  }
  return found;
}

std::size_t equals_at(std::string_view text) {
  for (std::size_t i = 0; i < text.size() && text[i] != '\n' && text[i] != '#'; ++i) {
    if (text[i] == '=') return i;
    if (text[i] != '"' && text[i] != '\'') continue;
    const std::size_t end = quoted_end(text, i);
    if (end == std::string_view::npos) return end;
    i = end - 1;
  }
  return std::string_view::npos;
}

std::string_view after_equals(std::string_view text) {
  const std::size_t at = equals_at(text);
  return at == std::string_view::npos ? std::string_view{} : trimmed(text.substr(at + 1));
}

std::size_t remark_at(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '#' && (i == 0 || text[i - 1] == ' ' || text[i - 1] == '\t')) return i;
    if (text[i] != '"' && text[i] != '\'') continue;
    const std::size_t end = quoted_end(text, i);
    if (end != std::string_view::npos) i = end - 1;
  }
  return text.size();
}

}  // namespace slabwright
