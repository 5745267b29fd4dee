// What a weather file knows, in place of our guesses, and what is said about it.
#include <fmt/format.h>

#include <algorithm>

#include "answer/pass.hpp"
#include "slabwright/climate_statistics.hpp"

namespace slabwright {
namespace {

constexpr double heating_share = 0.996;
constexpr std::string_view source = "weather file";

bool fits(const Assumption& value) {
  Design any;
  const auto found = find_path(record_of(any), value.path);
  return read_into(*found->key, found->slot, value.text).empty();
}

std::vector<Assumption> values_of(const WeatherYear& year, System system) {
  const bool us = system == System::us;
  const Hourly& hourly = year.dry_bulb_degC;
  const auto degree = [us](double degC) { return show_as(degC, Dimension::degree, us ? "F" : "C", 1); };
  const double half_K = half_swing_K(month_means_degC(hourly));
  const std::string from(source);
  return {{"climate.outdoor", degree(reached_degC(hourly, heating_share)), from},
          {"climate.coldest", degree(hourly[lowest_hour(hourly)]), from + ", lowest hour"},
          {"climate.mean", degree(year_mean_degC(hourly)), from},
          {"climate.half_swing", show_as(half_K, Dimension::rise, us ? "F" : "K", 1), from},
          {"climate.altitude", show_as(year.station.elevation_m, Dimension::length, us ? "ft" : "m", 0), from}};
}

using measured::degree;

Diagnostic taken(const WeatherYear& year) {
  const Hourly& hourly = year.dry_bulb_degC;
  const std::string station = excerpt(fmt::format("{}, {}", year.station.name, year.station.place));
  return {Severity::note,
          "weather.taken",
          "climate.weather",
          "the weather file is of {}: 99.6 % hour {}, lowest hour {}, yearly mean {}",
          {station, degree(reached_degC(hourly, heating_share)), degree(hourly[lowest_hour(hourly)]),
           degree(year_mean_degC(hourly))}};
}

bool gives(const DesignFile& file, std::string_view path) {
  return std::find(file.given.begin(), file.given.end(), path) != file.given.end();
}

/// How the coldest hour came about.
std::optional<Diagnostic> about_coldest(const DesignFile& file) {
  const Climate& climate = file.design.climate;
  if (!climate.outdoor_degC || !climate.coldest_degC) return std::nullopt;
  if (*climate.coldest_degC > *climate.outdoor_degC) {
    return Diagnostic{Severity::warning,
                      "weather.coldest",
                      "climate.coldest",
                      "coldest {} is warmer than the weather file's 99.6 % hour {}: the coldest hour in many years is "
                      "the colder one",
                      {degree(*climate.coldest_degC), degree(*climate.outdoor_degC)}};
  }
  if (gives(file, "climate.coldest") || gives(file, "climate.yearly_minimum")) return std::nullopt;
  return Diagnostic{Severity::note,
                    "weather.coldest",
                    "climate.coldest",
                    "a weather file's year is a typical one and hides extremes: the coldest hour is taken as {}",
                    {degree(*climate.coldest_degC)}};
}

/// Values that the file has and no key would take.
std::vector<Diagnostic> left_out(const WeatherYear& year, System system) {
  std::vector<Diagnostic> said;
  for (const Assumption& value : values_of(year, system)) {
    if (fits(value)) continue;
    said.push_back({Severity::warning,
                    "weather.unfit",
                    value.path,
                    "the weather file makes {} {}, which is no value for it: our guess stands",
                    {value.path, value.text}});
  }
  return said;
}

}  // namespace

DesignFile with_weather(const DesignFile& file, const WeatherFile& weather) {
  std::vector<Assumption> known = values_of(weather.year, file.design.units);
  known.erase(std::remove_if(known.begin(), known.end(), [](const Assumption& value) { return !fits(value); }),
              known.end());
  return with_known(file, std::move(known));
}

std::vector<Diagnostic> weather_said(const DesignFile& file, const Brought& brought) {
  if (!brought.weather) {
    if (file.design.climate.weather.empty()) return {};
    return {{Severity::warning,
             "weather.absent",
             "climate.weather",
             "the weather file {} was not brought along: our guesses stand in its place",
             {excerpt(file.design.climate.weather)}}};
  }
  const WeatherYear& year = brought.weather->year;
  std::vector<Diagnostic> said{taken(year)};
  for (const Repair& repair : brought.weather->repairs) said.push_back(repair_note(repair));
  for (Diagnostic& one : left_out(year, file.design.units)) said.push_back(std::move(one));
  if (auto coldest = about_coldest(file)) said.push_back(std::move(*coldest));
  return said;
}

}  // namespace slabwright
