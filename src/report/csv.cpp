#include "report/csv.hpp"

#include <fmt/format.h>

namespace slabwright::report {

std::string text_cell(const std::string& text) {
  const bool formula = !text.empty() && std::string_view("=+-@").find(text.front()) != std::string_view::npos;
  const std::string plain = formula ? "'" + text : text;
  if (plain.find_first_of(",\"\r\n") == std::string::npos) return plain;
  std::string quoted = "\"";
  for (const char c : plain) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

void Csv::head(std::string_view word, Kind kind) { cell(fmt::format("{} ({})", word, unit(kind, system_))); }

}  // namespace slabwright::report
