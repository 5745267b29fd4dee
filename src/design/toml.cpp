// The one place that knows the TOML parser.
#include <fmt/format.h>

#include <toml++/toml.h>
#include <algorithm>
#include <cmath>

#include "design/statements.hpp"

namespace slabwright {
namespace {

Spot spot_of(const toml::source_position& at, int first_line) {
  return {static_cast<int>(at.line) + first_line - 1, static_cast<int>(at.column), {}};
}

/// Hexadecimal, octal and binary stay recognisable: no length is written that way.
std::string whole_text(const toml::value<std::int64_t>& whole) {
  const bool plain = (whole.flags() & (toml::value_flags::format_as_binary | toml::value_flags::format_as_octal |
                                       toml::value_flags::format_as_hexadecimal)) == toml::value_flags::none;
  return plain ? fmt::format("{}", whole.get()) : fmt::format("0x{:x}", whole.get());
}

FileValue value_of(const toml::node& node, int first_line) {
  FileValue value;
  value.spot = spot_of(node.source().begin, first_line);
  if (const auto* text = node.as_string()) {
    value.text = text->get();
  } else if (const auto* whole = node.as_integer()) {
    value.kind = ValueKind::number;
    value.text = whole_text(*whole);
  } else if (const auto* number = node.as_floating_point()) {
    value.kind = ValueKind::number;
    value.text = fmt::format("{}", number->get());
  } else if (const auto* flag = node.as_boolean()) {
    value.kind = ValueKind::flag;
    value.text = flag->get() ? "true" : "false";
  } else if (const auto* list = node.as_array()) {
    value.kind = ValueKind::list;
    for (const toml::node& item : *list) value.items.push_back(value_of(item, first_line));
  } else if (const auto* table = node.as_table()) {
    value.kind = ValueKind::table;
    for (const auto& [key, inner] : *table) {
      value.entries.push_back(
          {std::string(key.str()), spot_of(key.source().begin, first_line), value_of(inner, first_line)});
    }
    // The parser hands keys out in alphabetical order.
    std::stable_sort(value.entries.begin(), value.entries.end(), [](const FileEntry& a, const FileEntry& b) {
      return std::pair(a.spot.line, a.spot.column) < std::pair(b.spot.line, b.spot.column);
    });
  } else {
    value.kind = ValueKind::date;
    if (const auto* date = node.as_date()) {
      const toml::date on = date->get();
      value.text = iso_text({on.year, on.month, on.day});
    }
  }
  return value;
}

}  // namespace

std::variant<FileEntry, Spot> parse_entry(const std::string& text, int first_line) {
  try {
    const toml::table table = toml::parse(text);
    if (table.size() != 1) return Spot{first_line, 1, {}};
    FileValue whole = value_of(table, first_line);
    return std::move(whole.entries.front());
  } catch (const toml::parse_error& error) {
    return spot_of(error.source().begin, first_line);
  }
}

}  // namespace slabwright
