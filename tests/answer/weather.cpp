// An answer with a weather file beside the design.
#include "climate/written.hpp"
#include "slabwright/answer.hpp"
#include "slabwright/climate_statistics.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

WeatherFile invented() {
  const auto read = read_weather(joined(epw_lines()));
  if (!read) throw std::runtime_error("the invented year does not read");
  return *read.value;
}

std::string source_of(const DesignFile& file, std::string_view path) {
  for (const Assumption& guess : file.assumed) {
    if (guess.path == path) return guess.source;
  }
  return "-";
}

DesignFile small(const std::string& units) {
  return from_keys({{"units", units}, {"slab.size", "11 x 9 m"}, {"climate.weather", "town.epw"}});
}

std::vector<std::string> sentences(const Answer& answer, std::string_view code) {
  std::vector<std::string> found;
  for (const Diagnostic& d : answer.said) {
    if (d.code == code) found.push_back(say(d, System::si));
  }
  return found;
}

}  // namespace

TEST_CASE("what the user did not give is the weather's, to the last digit that is shown") {
  const WeatherFile weather = invented();
  const Hourly& hourly = weather.year.dry_bulb_degC;
  for (const std::string units : {"US", "SI"}) {
    const double half_digit = units == "US" ? 0.05 / 1.8 : 0.05;
    const Climate climate = with_weather(small(units), weather).design.climate;
    CHECK(*climate.outdoor_degC == Approx(reached_degC(hourly, 0.996)).margin(half_digit));
    CHECK(climate.mean_degC == Approx(year_mean_degC(hourly)).margin(half_digit));
    CHECK(climate.half_swing_K == Approx(half_swing_K(month_means_degC(hourly))).margin(half_digit));
    CHECK(climate.altitude_m == Approx(254.0).margin(0.16));
  }
  const DesignFile file = with_weather(small("SI"), weather);
  for (const std::string path : {"climate.outdoor", "climate.mean", "climate.half_swing", "climate.altitude"})
    CHECK(source_of(file, path) == "weather file");
  CHECK(*file.design.climate.coldest_degC == *file.design.climate.outdoor_degC - 7.0);
}

TEST_CASE("what the user gave stands") {
  const DesignFile own =
      from_keys({{"climate.outdoor", "-5 C"}, {"climate.mean", "3 C"}, {"climate.altitude", "10 m"}});
  const Climate climate = with_weather(own, invented()).design.climate;
  CHECK(*climate.outdoor_degC == -5.0);
  CHECK(climate.mean_degC == 3.0);
  CHECK(climate.altitude_m == 10.0);
  // The file's lowest hour, -25 degC, is colder than 12 F below the user's own.
  CHECK(*climate.coldest_degC == Approx(-25.0).margin(0.05));
}

TEST_CASE("the weather is enough for heat, boiler and frost hold, and says whose it is") {
  const Answer without = answer(small("SI"), {Question::freeze, false});
  CHECK_FALSE(without.freeze);
  CHECK(sentences(without, "weather.absent") ==
        std::vector<std::string>{"the weather file town.epw was not brought along: our guesses stand in its place"});
  const Answer with = answer(small("SI"), {Question::freeze, false}, {invented(), {}});
  REQUIRE(with.freeze);
  CHECK(with.file.design.climate.outdoor_degC.has_value());
  CHECK(sentences(with, "weather.absent").empty());
  CHECK(sentences(with, "weather.taken").at(0).find("the weather file is of Coldwell Field, XX") == 0);
  CHECK(sentences(with, "weather.coldest").size() == 1);
}

TEST_CASE("repairs are said with their counts") {
  FileLines lines = epw_lines();
  for (const std::size_t line : {10u, 11u, 500u}) lines[line] = with_cell(lines[line], 7, "99.9");
  const auto read = read_weather(joined(lines));
  REQUIRE(read);
  const Answer with = answer(small("SI"), {Question::check, false}, {*read.value, {}});
  const auto said = sentences(with, "weather.repaired");
  REQUIRE(said.size() == 1);
  CHECK(said[0].find("dew point: 3 values are missing, the first in line 11, up to 2 in a row") != std::string::npos);
}

TEST_CASE("a coldest hour warmer than the weather's design hour is said") {
  const DesignFile file = from_keys({{"slab.size", "11 x 9 m"}, {"climate.coldest", "-10 C"}});
  const Answer with = answer(file, {Question::freeze, false}, {invented(), {}});
  CHECK(sentences(with, "weather.coldest").at(0).find("is warmer than") != std::string::npos);
  CHECK(with.verdict.kind != VerdictKind::works);
}

TEST_CASE("ranges and sensitivities keep the weather, and do not doubt it") {
  const Answer with = answer(small("SI"), {Question::design, true}, {invented(), {}});
  REQUIRE(with.loss_W);
  CHECK(with.loss_W->usual == Approx(with.envelope->loss_W));
  CHECK_FALSE(with.sensitivity.empty());
  for (const Sensitivity& one : with.sensitivity) CHECK(one.path != "climate.mean");
  const Answer without =
      answer(from_keys({{"slab.size", "11 x 9 m"}, {"climate.outdoor", "-20 C"}}), {Question::design, true});
  CHECK(std::any_of(without.sensitivity.begin(), without.sensitivity.end(),
                    [](const Sensitivity& one) { return one.path == "climate.mean"; }));
}

TEST_CASE("a value that its key refuses is left out and said") {
  WeatherFile pole = invented();
  for (double& hour : pole.year.dry_bulb_degC) hour -= 40.0;
  pole.year.station.elevation_m = 5400.0;
  const Answer with = answer(small("SI"), {Question::check, false}, {pole, {}});
  CHECK(source_of(with.file, "climate.mean") == "practice");
  CHECK(source_of(with.file, "climate.altitude") == "practice");
  CHECK(sentences(with, "weather.unfit").size() >= 2);
}
