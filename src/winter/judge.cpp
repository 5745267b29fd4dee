#include "winter/judge.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "slabwright/units_exact.hpp"

namespace slabwright::winter {
namespace {

/// Nearer than this, one thermostat calls while the other's heat is still on its way (practice).
constexpr double apart_K = 1.0;

/// The air that the floor is held at while there is work.
double floor_air_degC(const Scene& scene, const WayEntry& way) {
  if (way.charge || way.sensor == WaySensor::slab) return not_set_degC;
  switch (way.floor) {
    case WayFloor::work: return scene.work_degC;
    case WayFloor::frost_hold: return scene.hold.floor_air_degC;
    case WayFloor::setpoint: return way.setpoint_degC.value_or(not_set_degC);
    case WayFloor::off: break;
  }
  return not_set_degC;
}

void say_fights(const Scene& scene, const Winter& winter, std::vector<Diagnostic>& said) {
  for (const WayResult& result : winter.way) {
    const WayEntry& way = result.way;
    if (way.second_source == WaySource::off || !scene.machines.source) continue;
    const double floor_degC = floor_air_degC(scene, way);
    const double source_degC = way.source_degC.value_or(scene.work_degC);
    if (floor_degC <= not_set_degC || floor_degC <= source_degC - apart_K) continue;
    said.push_back({Severity::warning,
                    "winter.fight",
                    "way",
                    fmt::format("in \"{}\" the floor's thermostat stands at {{}} and the second source's at {{}}: the "
                                "floor does the work of both. Set the floor lower by {{}} or more.",
                                way.name),
                    {Measured{floor_degC, Dimension::degree}, Measured{source_degC, Dimension::degree},
                     Measured{apart_K, Dimension::rise}}});
  }
}

void say_machines(const Scene& scene, const Winter& winter, std::vector<Diagnostic>& said) {
  const Design& design = scene.shop.design;
  if (design.second_source.kind == SecondSourceKind::water_heat_pump)
    said.push_back({Severity::warning,
                    "winter.water-source",
                    "second_source.kind",
                    "a second source that carries the system's water is not run through the winter here: its hours "
                    "and its cost are left out.",
                    {}});
  const bool wanted = std::any_of(winter.way.begin(), winter.way.end(),
                                  [](const WayResult& result) { return result.way.second_source != WaySource::off; });
  if (wanted && !scene.machines.source && design.second_source.kind != SecondSourceKind::water_heat_pump)
    said.push_back({Severity::warning,
                    "winter.no-source",
                    "second_source",
                    "a way runs a second source of which nobody knows what it gives: write capacity, or points, in "
                    "[second_source]. It is left out.",
                    {}});
  if (!scene.machines.boiler)
    said.push_back({Severity::warning,
                    "winter.no-boiler",
                    "boiler",
                    "nothing warms the floor's water here: every way is run without the floor.",
                    {}});
}

/// What stays below is not worth a word: a few close summer hours.
constexpr double washing_dries_share = 0.8;

void say_washing(const Scene& scene, const Winter& winter, std::vector<Diagnostic>& said) {
  if (!scene.season.washing || winter.way.empty()) return;
  double washed_s = 0.0;
  for (const SeasonHour& hour : scene.season.hour) washed_s += hour.worked ? hour_s : 0.0;
  const double wash_kg = scene.shop.design.work.wash_kg, washed_kg = scene.season.washing->kg_per_s * washed_s;
  const double dries_share = washed_kg > 0.0 ? winter.way.front().dries_kg / washed_kg : 1.0;
  if (dries_share >= washing_dries_share) return;
  said.push_back({Severity::warning,
                  "winter.washing",
                  "work.wash",
                  "of {} of washing water on a day of work about {} dry before the next, in the mean of the year: the "
                  "air carries no more away, and the rest is left out. Write what dries in the room, not what runs to "
                  "the drain.",
                  {Measured{wash_kg, Dimension::mass}, Measured{dries_share * wash_kg, Dimension::mass}}});
}

/// The hottest air of the months that are heated: nobody shuts a shop in summer.
double hottest_degC(const Season& season, const WayResult& result) {
  double hottest = -273.0;
  for (std::size_t i = 0; i < hours_of_year && !result.air_degC.empty(); ++i)
    if (in_season(season, season.hour[i].month)) hottest = std::max(hottest, result.air_degC[of_year(i)]);
  return hottest;
}

void say_heat(const Scene& scene, const Winter& winter, std::vector<Diagnostic>& said) {
  const Design& design = scene.shop.design;
  if (design.gains.empty() && design.work.people_number == 0.0) return;
  for (const WayResult& result : winter.way) {
    const double degC = hottest_degC(scene.season, result);
    if (degC <= hottest_air_degC) continue;
    said.push_back({Severity::warning,
                    "winter.too-hot",
                    design.gains.empty() ? "work.people" : "gains",
                    fmt::format("in \"{}\" the air in the shop comes to {{}}, which no shop does. Look at the heat of "
                                "machines and people, and leave this way's figures alone until then.",
                                result.way.name),
                    {Measured{degC, Dimension::degree}}});
    return;  // one way's word does for all
  }
}

std::string failing(const WayResult& result) {
  std::vector<std::string> by;
  if (result.fails.frost_hold && !result.place.empty())
    by.push_back(result.place.front().name + " comes too near freezing");
  if (result.fails.comfort) by.push_back("it is too cold at work");
  if (result.fails.boiler) by.push_back("the boiler is too small");
  std::string words;
  for (std::size_t i = 0; i < by.size(); ++i) words += (i == 0 ? "" : i + 1 == by.size() ? " and " : ", ") + by[i];
  return words;
}

void say_failures(const Winter& winter, std::vector<Diagnostic>& said) {
  const bool passes =
      std::any_of(winter.way.begin(), winter.way.end(), [](const WayResult& result) { return !result.fails.any(); });
  if (passes || winter.way.empty()) return;
  const WayResult& least = winter.way.front();
  said.push_back({Severity::failure,
                  "winter.none-passes",
                  "way",
                  fmt::format("no way of running this winter passes. In \"{}\" {}.", least.way.name, failing(least)),
                  {}});
}

}  // namespace

std::vector<Diagnostic> judged(const Scene& scene, const Winter& winter) {
  std::vector<Diagnostic> said;
  say_failures(winter, said);
  say_fights(scene, winter, said);
  say_machines(scene, winter, said);
  say_washing(scene, winter, said);
  say_heat(scene, winter, said);
  if (!scene.shop.design.electricity.price)
    said.push_back({Severity::note,
                    "winter.no-price",
                    "electricity",
                    "no price is given, so there are kWh only: write price = \"0.15 /kWh\" in [electricity], your own "
                    "figure.",
                    {}});
  if (!winter.sun)
    said.push_back({Severity::note,
                    "winter.no-sun",
                    "climate",
                    "no sun is counted: give latitude, or a weather file, in [climate].",
                    {}});
  return said;
}

}  // namespace slabwright::winter
