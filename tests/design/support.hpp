// What the tests of the design share.
#pragma once
#include <rapidcheck.h>

#include <string>
#include <string_view>

#include "slabwright/design.hpp"
#include "support/catch.hpp"

namespace slabwright::test {

/// The problems of a text, one a line, without the last line that all of them share.
inline std::string problems(std::string_view text, const std::vector<Override>& options = {}) {
  const ReadDesign read = read_design(text, options);
  if (read.checked) return {};
  std::string all = problems_text(read, "shop.toml", 1000);
  return all.substr(0, all.size() - std::string_view("Nothing was computed, nothing was written.\n").size());
}

/// A text that must read.
inline DesignFile must_read(std::string_view text, const std::vector<Override>& options = {}) {
  const ReadDesign read = read_design(text, options);
  INFO(text);
  INFO((read.checked ? std::string{} : problems_text(read, "shop.toml")));
  if (!read.checked) throw std::runtime_error("a text that must read does not: " + problems_text(read, "shop.toml"));
  return *read.checked.value;
}

/// The guess at a path, or "-" where the key is no guess.
inline std::string guess(const DesignFile& file, std::string_view path) {
  for (const Assumption& assumption : file.assumed) {
    if (assumption.path == path) return assumption.text;
  }
  return "-";
}

inline bool gives(const DesignFile& file, std::string_view path) {
  return std::find(file.given.begin(), file.given.end(), path) != file.given.end();
}

}  // namespace slabwright::test
