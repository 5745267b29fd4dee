#include "slabwright/diagnostics.hpp"

#include <algorithm>

namespace slabwright {

std::string say(const Diagnostic& diagnostic, System system) {
  std::string out;
  std::size_t part = 0;
  const std::string& s = diagnostic.sentence;
  for (std::size_t i = 0; i < s.size(); ++i) {
    const bool hole = s[i] == '{' && i + 1 < s.size() && s[i + 1] == '}';
    if (!hole || part >= diagnostic.parts.size()) {
      out += s[i];
      continue;
    }
    const auto& content = diagnostic.parts[part++];
    if (const auto* text = std::get_if<std::string>(&content)) out += *text;
    if (const auto* measured = std::get_if<Measured>(&content)) out += show(measured->si, measured->dimension, system);
    ++i;
  }
  return out;
}

bool any(const std::vector<Diagnostic>& said, Severity at_least) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.severity >= at_least; });
}

bool any_code(const std::vector<Diagnostic>& said, std::string_view code) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

}  // namespace slabwright
