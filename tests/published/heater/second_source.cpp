// A load of 0.3 kW for each kelvin below 10 degC through the typical years of two stations: what a heat pump carries,
// with a cut-out, and with a cut-out that comes back later than it went. Results computed by a second program.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "slabwright/climate.hpp"
#include "slabwright/heater.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double cut_out_degC = -20.5556, cut_in_degC = -17.7778, no_load_degC = 10.0;

/// Hours of load. Their order matters only where it is colder than the cut-in: those spells come last, each after an
/// hour without load, in which a pump that was cut out comes back.
std::vector<double> hours_of(const std::string& station) {
  std::vector<double> hours;
  for (const auto& row : read_table("two_stations_tmy3/hours_by_degree.csv"))
    if (row.at("station") == station)
      hours.insert(hours.end(), static_cast<std::size_t>(number(row, "hours")), number(row, "outdoor_degC"));
  double spell = 0.0;
  for (const auto& row : read_table("two_stations_tmy3/cold_spells.csv")) {
    if (row.at("station") != station) continue;
    if (number(row, "spell") != spell) hours.push_back(no_load_degC);
    spell = number(row, "spell");
    hours.push_back(number(row, "outdoor_degC"));
  }
  return hours;
}

HeatPump pump_with(std::optional<CutOut> cut_out) {
  HeatPump pump;
  const auto from_degF = [](double degF) { return (degF - 32.0) / 1.8; };
  pump.row = {{from_degF(5.0), 5000.0, 1.9}, {from_degF(17.0), 6000.0, 2.4}, {from_degF(47.0), 8500.0, 3.5}};
  pump.warmer = BeyondRows::straight;
  pump.cut_out = cut_out;
  return pump;
}

struct Season {
  double load_kWh = 0.0, pump_kWh = 0.0, compressor_kWh = 0.0, backup_kWh = 0.0, locked_h = 0.0,
         highest_backup_kW = 0.0;
};

Season season_of(const HeatPump& pump, const std::vector<double>& hours) {
  Season season;
  HeatPumpState state;
  for (const double outdoor_degC : hours) {
    const double load_W = 300.0 * std::max(0.0, no_load_degC - outdoor_degC);
    // The table's machine has a COP of no less than 1, where ours would stop.
    FullLoad full = full_load(pump, outdoor_degC);
    full.cop = std::max(1.0, full.cop);
    const HeatPumpHour hour = heat_pump_hour(pump, full, {outdoor_degC, 20.0, load_W}, state);
    state = hour.after;
    const double backup_kW = (load_W - hour.heat_W) / 1000.0;
    season.load_kWh += load_W / 1000.0;
    season.pump_kWh += hour.heat_W / 1000.0;
    season.compressor_kWh += hour.electric_W / 1000.0;
    season.backup_kWh += backup_kW;
    season.highest_backup_kW = std::max(season.highest_backup_kW, backup_kW);
    const bool locked = hour.run == HeatPumpRun::below_cut_out || hour.run == HeatPumpRun::before_cut_in;
    season.locked_h += locked && load_W > 0.0 ? 1.0 : 0.0;
  }
  return season;
}

struct Row {
  const char *station, *mode, *load, *pump, *compressor, *backup, *total, *locked, *highest;
};
constexpr Row rows[] = {
    {"Minneapolis", "no cut-out", "17434.8", "15229.5", "6232.3", "2205.3", "8437.6", "0", "9.745"},
    {"Minneapolis", "cut-out", "17434.8", "14649.7", "5782.0", "2785.0", "8567.0", "154", "12.330"},
    {"Minneapolis", "cut-out and later cut-in", "17434.8", "14322.6", "5575.0", "3112.2", "8687.3", "229", "12.330"},
    {"Denver", "no cut-out", "10956.8", "10769.5", "3876.1", "187.3", "4063.4", "0", "4.480"},
    {"Denver", "cut-out", "10956.8", "10769.5", "3876.1", "187.3", "4063.4", "0", "4.480"},
    {"Denver", "cut-out and later cut-in", "10956.8", "10769.5", "3876.1", "187.3", "4063.4", "0", "4.480"}};

std::optional<CutOut> cut_out_of(const std::string& mode) {
  if (mode == "no cut-out") return std::nullopt;
  return CutOut{cut_out_degC, mode == "cut-out" ? cut_out_degC : cut_in_degC};
}

}  // namespace

TEST_CASE("a season of a second source beside a backup of COP 1") {
  for (const Row& row : rows) {
    const Source source{"Season of a second source, computed by a second program", std::string(row.station),
                        Oracle::derived};
    const Season season = season_of(pump_with(cut_out_of(row.mode)), hours_of(row.station));
    const std::string mode = row.mode;
    // Two of the sums lie just between two printed digits.
    const Within tenth{0.0501, 0.0, "its last digit, and rounding of 4000 sums"};
    CHECK_PUBLISHED(source, mode + ": load, kWh", row.load, season.load_kWh, tenth);
    CHECK_PUBLISHED(source, mode + ": heat of the pump, kWh", row.pump, season.pump_kWh, tenth);
    CHECK_PUBLISHED(source, mode + ": compressor, kWh", row.compressor, season.compressor_kWh, tenth);
    CHECK_PUBLISHED(source, mode + ": backup, kWh", row.backup, season.backup_kWh, tenth);
    CHECK_PUBLISHED(source, mode + ": electric in all, kWh", row.total, season.compressor_kWh + season.backup_kWh,
                    tenth);
    CHECK_PUBLISHED(source, mode + ": hours locked out", row.locked, season.locked_h);
    CHECK_PUBLISHED(source, mode + ": highest backup, kW", row.highest, season.highest_backup_kW);
  }
}

TEST_CASE("a pump that stops below COP 1 leaves the use as it is") {
  const std::vector<double> hours = hours_of("Minneapolis");
  const HeatPump pump = pump_with(std::nullopt);
  const Season floored = season_of(pump, hours);
  double electric_kWh = 0.0;
  HeatPumpState state;
  for (const double outdoor_degC : hours) {
    const double load_W = 300.0 * (no_load_degC - outdoor_degC);
    const HeatPumpHour hour = heat_pump_hour(pump, {outdoor_degC, 20.0, load_W}, state);
    state = hour.after;
    electric_kWh += (hour.electric_W + load_W - hour.heat_W) / 1000.0;
  }
  CHECK(electric_kWh == Approx(floored.compressor_kWh + floored.backup_kWh).epsilon(1e-9));
}

/// The folder with the four files under the names that they are published with; without it there is nothing to compare.
TEST_CASE("the hours kept here are those of the files, where these lie at hand") {
  const char* folder = std::getenv("SLABWRIGHT_WEATHER");
  if (!folder) return;
  const std::pair<const char*, const char*> files[] = {
      {"Minneapolis", "USA_MN_Minneapolis-St.Paul.Intl.AP.726580_TMY3.epw"},
      {"Denver", "USA_CO_Denver.Intl.AP.725650_TMY3.epw"}};
  for (const auto& [station, name] : files) {
    std::ifstream file(std::string(folder) + "/" + name, std::ios::binary);
    REQUIRE(file);
    std::stringstream text;
    text << file.rdbuf();
    const auto read = read_weather(text.str());
    REQUIRE(read);
    const Season kept = season_of(pump_with(CutOut{cut_out_degC, cut_in_degC}), hours_of(station));
    const Season whole = season_of(pump_with(CutOut{cut_out_degC, cut_in_degC}), read.value->year.dry_bulb_degC);
    CHECK(whole.load_kWh == Approx(kept.load_kWh).epsilon(1e-9));
    CHECK(whole.compressor_kWh == Approx(kept.compressor_kWh).epsilon(1e-9));
    CHECK(whole.locked_h == kept.locked_h);
  }
}
