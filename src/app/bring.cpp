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
  return {{std::move(weather.value), {}}, {}};
}

BroughtFiles bring_meters(const Request& request, System system) {
  BroughtFiles brought;
  if (request.readings.empty() && request.read.empty()) return brought;
  if (!request.readings.empty()) {
    const FileText text = read_readings_file(request.readings);
    if (!text.problem.empty()) return {{}, text.problem + '\n'};
    brought.brought.meters = read_meters(text.text);
  } else {
    brought.brought.meters = read_flows(request.read, system, "--read");
  }
  for (const auto& [option, text] :
       {std::pair{"--water", &request.water}, {"--room", &request.room}, {"--meter-error", &request.meter_error}}) {
    if (!text->empty()) brought.brought.meters = with_option(*brought.brought.meters, option, *text);
  }
  return brought;
}

std::string meter_problems(const Request& request, const MeterSheet& sheet, const Answer& answer) {
  ReadDesign read;
  read.spots = sheet.spots;
  read.units = answer.file.design.units;
  for (const Diagnostic& said : answer.said) {
    if (said.severity == Severity::problem && said.code.compare(0, 9, "readings.") == 0)
      read.checked.said.push_back(said);
  }
  if (read.checked.said.empty()) return {};
  return problems_text(read, request.readings.empty() ? "--read" : request.readings);
}

}  // namespace slabwright::app
