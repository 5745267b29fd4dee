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

namespace {

/// What kind of file is wanted, and what to say where it is another.
struct Wanted {
  std::string_view what, absent, form, size;
  std::size_t most_bytes;
};

FileText read_plain_file(const std::string& name, const Wanted& wanted) {
  std::error_code error;
  const fs::file_status status = fs::status(name, error);
  if (status.type() == fs::file_type::not_found)
    return {{}, fmt::format("there is no {} {}. {}", wanted.what, name, wanted.absent)};
  if (fs::is_directory(status)) return {{}, fmt::format("{} is a folder. Name the {} in it.", name, wanted.what)};
  if (!error && !fs::is_regular_file(status))
    return {{}, fmt::format("{} is no plain file. Name a {} ({}).", name, wanted.what, wanted.form)};
  std::ifstream in(name, std::ios::binary);
  std::string text(wanted.most_bytes + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (in.bad() || (in.fail() && !in.eof()))
    return {{}, fmt::format("the {} {} cannot be read. See that you may open it.", wanted.what, name)};
  text.resize(static_cast<std::size_t>(in.gcount()));
  if (text.size() > wanted.most_bytes)
    return {{}, fmt::format("{} is too large for a {}: {}. Name another.", name, wanted.what, wanted.size)};
  return {std::move(text), {}};
}

}  // namespace

FileText read_weather_file(const std::string& name) {
  return read_plain_file(name, {"weather file", "Put it there, or take the key weather out.", "EPW or TMY3",
                                "one year has less than 8 MB", 8'000'000});
}

FileText read_readings_file(const std::string& name) {
  return read_plain_file(name, {"file of readings",
                                "Write one, with a first line such as: loop, flow (gpm), return (F); or give the "
                                "flows themselves: --read \"0.73 0.64 - 0.57\".",
                                "CSV", "a manifold's readings have less than 200 kB", 200'000});
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
