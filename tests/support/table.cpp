#include "support/table.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace slabwright::test {
namespace {

std::vector<std::string> cells(std::string line) {
  if (!line.empty() && line.back() == '\r') line.pop_back();
  std::vector<std::string> found(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      found.emplace_back();
    else
      found.back() += c;
  }
  return found;
}

}  // namespace

std::vector<std::map<std::string, std::string>> read_table(const std::string& path_below_data) {
  std::istringstream in(read_text("tests/published/data/" + path_below_data));
  std::vector<std::map<std::string, std::string>> rows;
  std::vector<std::string> header;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line.front() == '#') continue;
    const std::vector<std::string> found = cells(line);
    if (header.empty()) {
      header = found;
      continue;
    }
    auto& row = rows.emplace_back();
    for (std::size_t i = 0; i < header.size() && i < found.size(); ++i) row[header[i]] = found[i];
  }
  return rows;
}

double number(const std::map<std::string, std::string>& row, const std::string& column) {
  const auto at = row.find(column);
  if (at == row.end() || at->second.empty()) throw std::runtime_error("no number in column " + column);
  return std::stod(at->second);
}

std::string read_text(const std::string& path_below_project) {
  std::ifstream in(std::string(SLABWRIGHT_ROOT) + "/" + path_below_project, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + path_below_project);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

}  // namespace slabwright::test
