#include "random/design_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace slabwright::test {
namespace {

std::string section_of(const std::string& path) {
  const std::size_t dot = path.find('.');
  return dot == std::string::npos ? "" : path.substr(0, dot);
}

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

}  // namespace

void DesignText::put(const std::string& path, std::string value) {
  for (Entry& entry : entries_) {
    if (entry.path != path) continue;
    entry.value = std::move(value);
    return;
  }
  entries_.push_back({path, std::move(value)});
}

void DesignText::set(const std::string& path, const std::string& text) {
  const bool bare =
      text == "true" || text == "false" || (!text.empty() && text.find_first_not_of("0123456789") == std::string::npos);
  put(path, bare ? text : quoted(text));
}

void DesignText::set_list(const std::string& path, const std::vector<std::string>& items) {
  std::string list;
  for (const std::string& item : items) list += (list.empty() ? "" : ", ") + quoted(item);
  put(path, "[" + list + "]");
}

void DesignText::remove(const std::string& path) {
  entries_.erase(std::remove_if(entries_.begin(), entries_.end(), [&](const Entry& e) { return e.path == path; }),
                 entries_.end());
}

bool DesignText::has(const std::string& path) const {
  return std::any_of(entries_.begin(), entries_.end(), [&](const Entry& e) { return e.path == path; });
}

std::size_t DesignText::rows(const std::string& section) const {
  std::size_t count = 0;
  const std::string begins = section + "[";
  for (const Entry& e : entries_) {
    if (e.path.compare(0, begins.size(), begins) == 0)
      count = std::max(count, static_cast<std::size_t>(std::stoul(e.path.substr(begins.size()))));
  }
  return count;
}

std::string DesignText::next_row(const std::string& section) const {
  return fmt::format("{}[{}]", section, rows(section) + 1);
}

std::vector<std::string> DesignText::texts(const std::string& section, const std::string& word) const {
  std::vector<std::string> all;
  for (std::size_t row = 1; row <= rows(section); ++row) {
    const std::string path = fmt::format("{}[{}].{}", section, row, word);
    for (const Entry& e : entries_)
      if (e.path == path && e.value.size() > 2) all.push_back(e.value.substr(1, e.value.size() - 2));
  }
  return all;
}

std::vector<std::string> DesignText::paths() const {
  std::vector<std::string> all;
  for (const Entry& e : entries_) all.push_back(e.path);
  return all;
}

std::string DesignText::toml() const {
  std::vector<std::string> sections;
  for (const Entry& e : entries_) {
    const std::string section = section_of(e.path);
    if (std::find(sections.begin(), sections.end(), section) == sections.end()) sections.push_back(section);
  }
  // What stands above the first section has to come first.
  std::stable_partition(sections.begin(), sections.end(), [](const std::string& s) { return s.empty(); });
  std::string text;
  for (const std::string& section : sections) {
    const std::size_t row = section.find('[');
    if (row != std::string::npos)
      text += "\n[[" + section.substr(0, row) + "]]\n";
    else if (!section.empty())
      text += "\n[" + section + "]\n";
    for (const Entry& e : entries_) {
      if (section_of(e.path) == section) text += e.path.substr(e.path.rfind('.') + 1) + " = " + e.value + "\n";
    }
  }
  return text;
}

}  // namespace slabwright::test
