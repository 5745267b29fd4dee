// Statistics of four typical years, computed from the same files by an independent script. SLABWRIGHT_WEATHER names the
// folder; without it there is nothing to read.
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <numeric>

#include "slabwright/climate.hpp"
#include "slabwright/climate_snap.hpp"
#include "slabwright/climate_statistics.hpp"
#include "slabwright/climate_sun.hpp"
#include "slabwright/climate_synthetic.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// As the script printed them; each is checked to half a unit in its last digit.
struct Expected {
  std::string name;
  double mean, sum, dew_sum, lowest;
  CalendarHour when;
  double wind, pressure;
  std::array<double, 3> sun_kWh;        // global, direct, diffuse
  std::array<double, 3> base65;         // day mean, extremes, hourly, F-days
  std::array<double, 2> base40;         // day mean, hourly, F-days
  int below5F;                          // below -5 F
  int longest, runs;                    // of that
  double persistence;                   // of day means
  std::array<double, 3> january, july;  // mean, deviation, swing
  std::array<double, 12> south_kWh;     // on a wall, by months
  double west_kWh;
};

const Expected all[] = {
    {"Minneapolis",
     7.732,
     67733.1,
     11396.5,
     -31.1,
     {1, 30, 8},
     4.59,
     98623,
     {1398.8, 1502.5, 585.7},
     {7721.5, 7782.2, 7856.0},
     {2521.8, 2596.2},
     154,
     58,
     14,
     0.711,
     {-11.39, 6.82, 7.73},
     {23.78, 3.01, 10.55},
     {93.6, 95.7, 107.1, 93.5, 95.3, 87.9, 89.2, 93.8, 96.0, 98.0, 74.2, 70.6},
     843.6},
    {"Hibbing",
     3.793,
     33223.0,
     -7985.0,
     -41.0,
     {1, 17, 4},
     3.40,
     96634,
     {1193.4, 1214.1, 566.3},
     {9793.8, 9990.0, 10014.3},
     {3795.2, 3937.7},
     537,
     85,
     44,
     0.665,
     {-15.56, 8.56, 13.26},
     {18.08, 3.25, 11.71},
     {78.6, 111.6, 68.1, 88.5, 77.3, 77.7, 83.4, 101.6, 105.3, 81.4, 48.0, 50.5},
     735.5},
    {"Chicago",
     9.988,
     87494.8,
     37764.9,
     -22.8,
     {1, 7, 7},
     4.56,
     99189,
     {1406.6, 1294.3, 660.3},
     {6325.3, 6398.1, 6496.9},
     {1647.2, 1720.8},
     25,
     8,
     7,
     0.737,
     {-4.65, 6.45, 9.39},
     {24.13, 3.05, 10.54},
     {76.9, 79.4, 90.7, 81.6, 91.0, 82.8, 89.9, 88.4, 93.4, 94.9, 65.1, 72.1},
     801.7},
    {"Denver",
     10.875,
     95268.0,
     -9339.9,
     -19.4,
     {12, 31, 24},
     3.92,
     83460,
     {1670.2, 1977.6, 556.5},
     {5783.5, 5655.6, 6016.3},
     {996.4, 1262.6},
     0,
     0,
     0,
     0.565,
     {0.79, 4.51, 15.59},
     {22.27, 2.99, 15.07},
     {132.7, 110.7, 126.4, 88.3, 90.4, 83.2, 86.1, 97.3, 114.0, 126.4, 109.5, 115.8},
     918.4},
};

std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::filesystem::path file_of(const std::string& name) {
  const char* folder = std::getenv("SLABWRIGHT_WEATHER");
  if (folder == nullptr || !std::filesystem::is_directory(folder)) return {};
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().filename().string().find(name) != std::string::npos) return entry.path();
  return {};
}

double total(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }
double mean(const std::vector<double>& values) { return total(values) / static_cast<double>(values.size()); }

/// Slightly over half a unit: the file's own decimals sum to exact halves.
Approx within(double value, double last_digit) { return Approx(value).epsilon(0.0).margin(0.5001 * last_digit); }

double f_days(const Hourly& hourly, double base_F, DegreeDays way) {
  return 1.8 * degree_days_Kd(hourly, (base_F - 32.0) / 1.8, way);
}

void check_degree_days(const Hourly& hourly, const Expected& expected) {
  CHECK(f_days(hourly, 65.0, DegreeDays::day_mean) == within(expected.base65[0], 0.1));
  CHECK(f_days(hourly, 65.0, DegreeDays::day_extremes) == within(expected.base65[1], 0.1));
  CHECK(f_days(hourly, 65.0, DegreeDays::hourly) == within(expected.base65[2], 0.1));
  CHECK(f_days(hourly, 40.0, DegreeDays::day_mean) == within(expected.base40[0], 0.1));
  CHECK(f_days(hourly, 40.0, DegreeDays::hourly) == within(expected.base40[1], 0.1));
}

void check_month(const MonthlyNormals& normals, std::size_t month, const std::array<double, 3>& expected) {
  CHECK(normals.mean_degC[month] == within(expected[0], 0.01));
  CHECK(normals.deviation_K[month] == within(expected[1], 0.01));
  CHECK(normals.swing_K[month] == within(expected[2], 0.01));
}

void check_file(const WeatherYear& year, const Expected& expected) {
  const Hourly& hourly = year.dry_bulb_degC;
  CHECK(year_mean_degC(hourly) == within(expected.mean, 0.001));
  CHECK(total(hourly) == within(expected.sum, 0.1));
  CHECK(total(year.dew_point_degC) == within(expected.dew_sum, 0.1));
  CHECK(hourly[lowest_hour(hourly)] == within(expected.lowest, 0.1));
  CHECK(calendar_hour(lowest_hour(hourly), false) == expected.when);
  CHECK(mean(year.wind_m_per_s) == within(expected.wind, 0.01));
  CHECK(mean(year.pressure_Pa) == within(expected.pressure, 1.0));
  CHECK(total(year.global_W_per_m2) / 1000.0 == within(expected.sun_kWh[0], 0.1));
  CHECK(total(year.direct_W_per_m2) / 1000.0 == within(expected.sun_kWh[1], 0.1));
  CHECK(total(year.diffuse_W_per_m2) / 1000.0 == within(expected.sun_kWh[2], 0.1));
  check_degree_days(hourly, expected);
  const HoursBelow below = hours_below(hourly, (-5.0 - 32.0) / 1.8);
  CHECK(below.hours == expected.below5F);
  CHECK(below.longest == expected.longest);
  CHECK(below.runs == expected.runs);
  CHECK(day_persistence(hourly) == within(expected.persistence, 0.001));
  check_month(normals_of(hourly), 0, expected.january);
  check_month(normals_of(hourly), 6, expected.july);
}

double on_wall_kWh(const std::vector<SurfaceSun>& sun, int month) {
  double sum = 0.0;
  for (std::size_t hour = 0; hour < sun.size(); ++hour)
    if (month == 0 || calendar_hour(hour, false).month == month) sum += sun[hour].total_W_per_m2() / 1000.0;
  return sum;
}

/// Walls as the script has them, with its sun of whole days; and the three figures of the file fit each other with the
/// sun of the hour's middle. At its end or beginning they miss by 21 to 32 W/m2.
void check_sun(const WeatherYear& year, const Expected& expected) {
  const std::vector<SurfaceSun> south = surface_sun(year, {}), west = surface_sun(year, {90.0, 270.0});
  for (int month = 1; month <= 12; ++month)
    CHECK(on_wall_kWh(south, month) == Approx(expected.south_kWh[static_cast<std::size_t>(month - 1)]).epsilon(0.01));
  CHECK(on_wall_kWh(west, 0) == Approx(expected.west_kWh).epsilon(0.01));
  double squares = 0.0;
  int hours = 0;
  for (std::size_t hour = 0; hour < south.size(); ++hour) {
    const double sine = std::sin(sun_position(year.station, static_cast<double>(hour) + 0.5).altitude_deg * pi / 180.0);
    const double together = year.direct_W_per_m2[hour] * sine + year.diffuse_W_per_m2[hour];
    if (sine <= 0.0 || year.global_W_per_m2[hour] <= 0.0) continue;
    squares += (together - year.global_W_per_m2[hour]) * (together - year.global_W_per_m2[hour]);
    ++hours;
  }
  CHECK(std::sqrt(squares / hours) < 2.0);
}

/// The files' infrared, whole W/m2, was made by the same formula of another hand.
void check_sky(WeatherYear year) {
  const std::vector<double> written = year.sky_infrared_W_per_m2, sky = sky_degC(year);
  REQUIRE(written.size() == 8760);
  double worst_W_per_m2 = 0.0, mean_K = 0.0;
  for (std::size_t hour = 0; hour < written.size(); ++hour) {
    const double ours =
        sky_infrared_W_per_m2(year.dry_bulb_degC[hour], year.dew_point_degC[hour], year.opaque_share[hour]);
    worst_W_per_m2 = std::max(worst_W_per_m2, std::abs(ours - written[hour]));
  }
  CHECK(worst_W_per_m2 < 0.75);  // half of the last digit, and 273 or 273.15
  year.sky_infrared_W_per_m2.clear();
  const std::vector<double> again = sky_degC(year);
  for (std::size_t hour = 0; hour < sky.size(); ++hour) mean_K += (again[hour] - sky[hour]) / 8760.0;
  CHECK(std::abs(mean_K) < 0.1);
}

/// Twenty years made up from a file's normals with the file's coldest three days: degree days to 2 %, and as many cold
/// hours as fits a year of one such spell.
void check_made_up(const Hourly& hourly) {
  const ColdRun worst = cold_snap(hourly, 3, 5).run;
  SyntheticYear of;
  of.normals = normals_of(hourly);
  of.spell = ColdSpell{std::max(1, static_cast<int>(worst.first_hour) / 24), 3, worst.lowest_degC};
  of.spell->swing_K = (worst.mean_degC - worst.lowest_degC) / 0.46375;
  const double limit_degC = (-5.0 - 32.0) / 1.8;
  double days = 0.0, cold = 0.0;
  for (of.seed = 1; of.seed <= 20; ++of.seed) {
    const auto year = synthetic_year_degC(of);
    REQUIRE(year);
    days += degree_days_Kd(*year.value, 18.333) / 20.0;
    cold += hours_below(*year.value, limit_degC).hours / 20.0;
  }
  const int found = hours_below(hourly, limit_degC).hours;
  CAPTURE(days, cold, found);
  CHECK(days == Approx(degree_days_Kd(hourly, 18.333)).epsilon(0.02));
  if (found > 100) CHECK(cold == Approx(found).epsilon(0.35));
}

}  // namespace

TEST_CASE("four typical years as a script of another hand sums them") {
  for (const Expected& expected : all) {
    const std::filesystem::path path = file_of(expected.name);
    if (path.empty()) {
      WARN("left out: SLABWRIGHT_WEATHER names no folder with the weather file of " << expected.name);
      continue;
    }
    CAPTURE(expected.name);
    const Checked<WeatherFile> file = read_weather(text_of(path));
    REQUIRE(file);
    check_file(file.value->year, expected);
    check_sun(file.value->year, expected);
    check_sky(file.value->year);
    check_made_up(file.value->year.dry_bulb_degC);
    for (const Diagnostic& said : file.said) UNSCOPED_INFO(say(said, System::si));
    for (const Repair& repair : file.value->repairs)
      CHECK((repair.column == "snow depth" || repair.column == "global radiation"));
  }
}
