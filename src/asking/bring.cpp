// The files that a question names: the weather of a design, readings of its manifolds.
#include <fmt/format.h>

#include "asking/parts.hpp"

namespace slabwright {
namespace {

constexpr std::string_view key = "climate.weather";

FileWanted weather_wanted(const DesignFile& file) {
  const auto spot = file.spots.find(std::string(key));
  const bool from_option = spot != file.spots.end() && !spot->second.option.empty();
  return {FileWanted::Kind::weather, file.design.climate.weather, !from_option};
}

/// A sentence about the key, with the place where the design names the file.
Refusal at_the_key(const ReadDesign& read, const Asked& asked, const std::string& sentence) {
  ReadDesign refused = read;
  refused.checked.value.reset();
  refused.checked.said = {{Severity::problem, "weather.file", std::string(key), "{}", {sentence}}};
  return asking::refusal_of(refused, asked.file.empty() ? "command line" : asked.file);
}

/// "town.epw:80: the file ends after ..."
Refusal in_the_file(const std::string& name, const Diagnostic& problem, System system) {
  PlacedProblem placed{name, 0, 0, {}, problem.code, problem.about, say(problem, system)};
  std::string place = name;
  const std::string begins = fmt::format("the weather file, {}: ", problem.about);
  if (placed.sentence.compare(0, begins.size(), begins) == 0) {
    const std::string line = problem.about.substr(problem.about.find(' ') + 1);
    place += ":" + line;
    placed.line = static_cast<int>(read_number(line).value_or(0.0));
    placed.sentence = placed.sentence.substr(begins.size());
  }
  return {bad_design,
          fmt::format("{}: {}.\nNothing was computed, nothing was written.\n", place, placed.sentence),
          {placed}};
}

}  // namespace

std::optional<Refusal> bring_weather(const ReadDesign& read, const Asked& asked, const GetFile& get, Brought& into) {
  const DesignFile& file = *read.checked.value;
  if (file.design.climate.weather.empty()) return std::nullopt;
  const FileGot got = get(weather_wanted(file));
  if (!got.problem.empty()) return at_the_key(read, asked, got.problem);
  Checked<WeatherFile> weather = read_weather(got.text);
  if (!weather) return in_the_file(got.name, weather.said.front(), read.units);
  into.weather = std::move(weather.value);
  return std::nullopt;
}

std::optional<Refusal> asking::bring_meters(const Asked& asked, System system, const GetFile& get, Brought& into) {
  const std::string &table = own_text(asked, "--readings"), &flows = own_text(asked, "--read");
  if (table.empty() && flows.empty()) return std::nullopt;
  if (!table.empty()) {
    const FileGot got = get({FileWanted::Kind::readings, table, false});
    if (!got.problem.empty()) return refusal_of(got.problem, bad_design);
    into.meters = read_meters(got.text);
  } else {
    into.meters = read_flows(flows, system, "--read");
  }
  for (const char* option : {"--water", "--room", "--meter-error"}) {
    if (const std::string& text = own_text(asked, option); !text.empty())
      into.meters = with_option(*into.meters, option, text);
  }
  return std::nullopt;
}

std::optional<Refusal> refused_readings(const Asked& asked, const Brought& brought, const Answer& answer) {
  if (!brought.meters) return std::nullopt;
  ReadDesign read;
  read.spots = brought.meters->spots;
  read.units = answer.file.design.units;
  for (const Diagnostic& said : answer.said) {
    if (said.severity == Severity::problem && said.code.compare(0, 9, "readings.") == 0)
      read.checked.said.push_back(said);
  }
  if (read.checked.said.empty()) return std::nullopt;
  const std::string& table = own_text(asked, "--readings");
  return asking::refusal_of(read, table.empty() ? "--read" : table);
}

}  // namespace slabwright
