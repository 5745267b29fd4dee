// The coldest month of every weather file in a folder, by few states and by the whole field. Hourly files of the common
// form with eight lines of heading; SLABWRIGHT_WEATHER names the folder.
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numeric>
#include <sstream>

#include "states_month.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Year {
  std::vector<int> month;
  std::vector<double> dry_bulb_degC;
};

Year read_year(const std::filesystem::path& path) {
  constexpr std::size_t heading_lines = 8, month_column = 1, dry_bulb_column = 6;
  std::ifstream in(path);
  Year year;
  std::string line;
  for (std::size_t number = 0; std::getline(in, line); ++number) {
    if (number < heading_lines) continue;
    std::istringstream cells(line);
    std::vector<std::string> row;
    for (std::string cell; row.size() <= dry_bulb_column && std::getline(cells, cell, ',');) row.push_back(cell);
    if (row.size() <= dry_bulb_column) continue;
    year.month.push_back(std::stoi(row[month_column]));
    year.dry_bulb_degC.push_back(std::stod(row[dry_bulb_column]));
  }
  return year;
}

/// The coldest month, and the year's mean and first wave.
Weather coldest_month(const Year& year) {
  Weather coldest{{}, 0.0, 0.0, 0.0, 0.0};
  double coldest_degC = 1e9;
  for (int month = 1; month <= 12; ++month) {
    const auto first = std::find(year.month.begin(), year.month.end(), month) - year.month.begin();
    const auto hours = std::count(year.month.begin(), year.month.end(), month);
    const auto begin = year.dry_bulb_degC.begin() + first;
    const double mean_degC = std::accumulate(begin, begin + hours, 0.0) / static_cast<double>(hours);
    if (mean_degC >= coldest_degC) continue;
    coldest_degC = mean_degC;
    coldest.hourly_degC.assign(begin, begin + hours);
    coldest.first_hour = static_cast<double>(first);
  }
  const double count = static_cast<double>(year.dry_bulb_degC.size());
  for (std::size_t hour = 0; hour < year.dry_bulb_degC.size(); ++hour) {
    const double angle = 6.283185307179586 * static_cast<double>(hour) / count, degC = year.dry_bulb_degC[hour];
    coldest.mean_degC += degC / count;
    coldest.cosine_K += 2.0 * degC * std::cos(angle) / count;
    coldest.sine_K += 2.0 * degC * std::sin(angle) / count;
  }
  return coldest;
}

std::vector<std::filesystem::path> weather_files() {
  std::vector<std::filesystem::path> files;
  const char* folder = std::getenv("SLABWRIGHT_WEATHER");
  if (folder == nullptr || !std::filesystem::is_directory(folder)) return files;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".epw") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

TEST_CASE("the coldest month of weather files, by few states and by the whole field") {
  const std::vector<std::filesystem::path> files = weather_files();
  if (files.empty()) {
    WARN("left out: SLABWRIGHT_WEATHER names no folder with weather files; the made-up month has been run");
    return;
  }
  for (const std::filesystem::path& file : files) {
    const Year year = read_year(file);
    REQUIRE(year.dry_bulb_degC.size() == 8760);
    const Weather weather = coldest_month(year);
    for (const std::string detail : {"wall", "wall_under_edge", "door_under", "door"}) {
      StatesOptions options;
      options.constant = {edge_driver::ground};
      // The states' own grid against a finer one for the field; steady answers are of the finer one.
      const MonthErrors errors = month_errors(detail, weather, options, {options.grid, 3e-5, 0.03});
      CAPTURE(file.filename().string(), detail, errors.states, errors.worst_K, errors.heat_share);
      CHECK(errors.worst_K < 0.1);
      CHECK(errors.heat_share < 0.01);
    }
  }
}
