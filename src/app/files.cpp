#include "app/files.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <optional>

namespace slabwright::app {
namespace fs = std::filesystem;

namespace {

/// Bytes of a design file that are read: one more than it may have, so that the reader sees that it is too large.
constexpr std::size_t most_of_design = 1'000'000;

/// What kind of file is wanted, and what to say where it is another.
struct Wanted {
  std::string_view what, absent, form, size;
  std::size_t most_bytes;
};

/// The first bytes of a file, one more than the most where it has more; nothing where it cannot be read.
std::optional<std::string> first_bytes(const std::string& name, std::size_t most_bytes) {
  std::ifstream in(name, std::ios::binary);
  std::string text(most_bytes + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (in.bad() || (in.fail() && !in.eof())) return std::nullopt;
  text.resize(static_cast<std::size_t>(in.gcount()));
  return text;
}

FileText read_plain_file(const std::string& name, const Wanted& wanted) {
  std::error_code error;
  const fs::file_status status = fs::status(name, error);
  if (status.type() == fs::file_type::not_found)
    return {{}, fmt::format("there is no {} {}. {}", wanted.what, name, wanted.absent)};
  if (fs::is_directory(status)) return {{}, fmt::format("{} is a folder. Name the {} in it.", name, wanted.what)};
  if (!error && !fs::is_regular_file(status))
    return {{}, fmt::format("{} is no plain file. Name a {} ({}).", name, wanted.what, wanted.form)};
  std::optional<std::string> text = first_bytes(name, wanted.most_bytes);
  if (!text) return {{}, fmt::format("the {} {} cannot be read. See that you may open it.", wanted.what, name)};
  if (text->size() > wanted.most_bytes)
    return {{}, fmt::format("{} is too large for a {}: {}. Name another.", name, wanted.what, wanted.size)};
  return {std::move(*text), {}};
}

}  // namespace

FileText read_design_file(const std::string& name) {
  std::error_code error;
  if (!fs::exists(name, error)) {
    return {{},
            fmt::format("no file {0} here. Make one:\n  slabwright new {0} --size \"36 ft x 30 ft\" --spacing "
                        "\"12 in\"",
                        name)};
  }
  if (fs::is_directory(name, error)) return {{}, fmt::format("{} is a folder, not a design file.", name)};
  std::optional<std::string> text = first_bytes(name, most_of_design);
  if (!text) return {{}, fmt::format("{} cannot be read.", name)};
  return {std::move(*text), {}};
}

FileText read_found_file(const std::string& name) {
  return read_plain_file(
      name, {"file of places where tube was found", "Write one: each line a place, as --at takes it.", "plain text",
             "two hundred places have less than 100 kB", 100'000});
}

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

}  // namespace slabwright::app
