#include "app/bring.hpp"

#include <fmt/format.h>

#include <filesystem>

#include "app/files.hpp"

namespace slabwright::app {
namespace {

constexpr std::string_view key = "climate.weather";

std::string path_of(const DesignFile& file, const std::string& design_name) {
  const std::filesystem::path named = file.design.climate.weather;
  const auto spot = file.spots.find(std::string(key));
  const bool from_option = spot != file.spots.end() && !spot->second.option.empty();
  return (from_option ? named : std::filesystem::path(design_name).parent_path() / named).string();
}

/// A sentence about the key, with the place where the design names the file.
std::string at_the_key(const ReadDesign& read, const std::string& design_name, const std::string& sentence) {
  ReadDesign refused = read;
  refused.checked.value.reset();
  refused.checked.said = {{Severity::problem, "weather.file", std::string(key), "{}", {sentence}}};
  return problems_text(refused, design_name.empty() ? "command line" : design_name);
}

/// "town.epw:80: the file ends after ..."
std::string in_the_file(const std::string& path, const Diagnostic& problem, System system) {
  std::string sentence = say(problem, system), place = path;
  const std::string begins = fmt::format("the weather file, {}: ", problem.about);
  if (sentence.compare(0, begins.size(), begins) == 0) {
    place += ":" + problem.about.substr(problem.about.find(' ') + 1);
    sentence = sentence.substr(begins.size());
  }
  return fmt::format("{}: {}.\nNothing was computed, nothing was written.\n", place, sentence);
}

}  // namespace

BroughtFiles bring(const ReadDesign& read, const std::string& design_name) {
  const DesignFile& file = *read.checked.value;
  if (file.design.climate.weather.empty()) return {};
  const std::string path = path_of(file, design_name);
  const FileText text = read_weather_file(path);
  if (!text.problem.empty()) return {{}, at_the_key(read, design_name, text.problem)};
  Checked<WeatherFile> weather = read_weather(text.text);
  if (!weather) return {{}, in_the_file(path, weather.said.front(), read.units)};
  return {{std::move(weather.value)}, {}};
}

}  // namespace slabwright::app
