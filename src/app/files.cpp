#include "app/files.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace slabwright::app {
namespace fs = std::filesystem;

FileText read_file(const std::string& name) {
  std::error_code error;
  if (!fs::exists(name, error)) {
    return {{},
            fmt::format("no file {0} here. Make one:\n  slabwright new {0} --size \"36 ft x 30 ft\" --spacing "
                        "\"12 in\"",
                        name)};
  }
  if (fs::is_directory(name, error)) return {{}, fmt::format("{} is a folder, not a design file.", name)};
  std::ifstream in(name, std::ios::binary);
  std::ostringstream all;
  all << in.rdbuf();
  if (!in) return {{}, fmt::format("{} cannot be read.", name)};
  return {all.str(), {}};
}

std::string write_file(const std::string& path, const std::string& text) {
  const std::string own_name = path + ".part";
  std::error_code error;
  {
    std::ofstream out(own_name, std::ios::binary);
    out << text;
    out.flush();
    if (!out) {
      fs::remove(own_name, error);
      return fmt::format("{} cannot be written.", path);
    }
  }
  fs::rename(own_name, path, error);
  if (!error) return {};
  std::error_code ignored;
  fs::remove(own_name, ignored);
  return fmt::format("{} cannot be written: {}.", path, error.message());
}

std::string write_sheets(const std::string& folder, const std::vector<Sheet>& sheets) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) return fmt::format("the folder {} cannot be made: {}.", folder, error.message());
  for (const Sheet& sheet : sheets) {
    const std::string problem = write_file((fs::path(folder) / sheet.name).string(), sheet.content);
    if (!problem.empty()) return problem;
  }
  return {};
}

}  // namespace slabwright::app
