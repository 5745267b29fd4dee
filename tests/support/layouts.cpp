#include "support/layouts.hpp"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

#include "support/table.hpp"

namespace slabwright::test {

Layout layout(const std::string& name) {
  const std::string text = read_text("layouts/" + name + ".toml");
  const ReadDesign read = read_design(text);
  if (!read.checked) throw std::runtime_error(problems_text(read, name));
  return {name, text, *read.checked.value};
}

std::vector<Layout> layouts() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(SLABWRIGHT_ROOT) + "/layouts")) {
    if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  std::vector<Layout> all;
  for (const std::string& name : names) all.push_back(layout(name));
  return all;
}

DesignFile from_keys(const Keys& keys) {
  std::vector<Override> overrides;
  for (const auto& [path, text] : keys) overrides.push_back({path, text, path});
  const ReadDesign read = read_design("", overrides);
  if (!read.checked) throw std::runtime_error(problems_text(read, "keys"));
  return *read.checked.value;
}

DesignFile with_keys(DesignFile file, const Keys& keys) {
  for (const auto& [path, text] : keys) {
    auto next = with_key(file, path, text);
    if (!next) throw std::runtime_error(path + " does not take " + text);
    file = std::move(*next);
  }
  return file;
}

}  // namespace slabwright::test
