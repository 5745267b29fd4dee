// A year of weather, hour by hour: what it holds, its calendar, and the reader of the two common forms of file.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics.hpp"

namespace slabwright {

/// Where the weather was taken, as the file's heading says it.
struct Station {
  std::string name;
  std::string place;           ///< state and country
  double latitude_deg = 0.0;   ///< north positive, -90 to 90
  double longitude_deg = 0.0;  ///< east positive, -180 to 180
  double time_zone_s = 0.0;    ///< local standard time less universal time
  double elevation_m = 0.0;    ///< above the sea
};

/// 8760 hours, or 8784 with 29 February, in local standard time. Entry i is of the hour from i to i + 1, counted from
/// the beginning of 1 January: radiation is its mean over that hour, so the sun belongs at i + 1/2. A series that the
/// source does not have is empty; all others have the length of `dry_bulb_degC`.
struct WeatherYear {
  Station station;
  std::vector<double> dry_bulb_degC;
  std::vector<double> dew_point_degC;
  std::vector<double> humidity_share;  ///< relative humidity, 0 to 1.1
  std::vector<double> pressure_Pa;     ///< at the station, not at sea level
  std::vector<double> global_W_per_m2;
  std::vector<double> direct_W_per_m2;  ///< on a plane square to the sun
  std::vector<double> diffuse_W_per_m2;
  std::vector<double> wind_m_per_s;
  std::vector<double> wind_direction_deg;  ///< where it comes from: north 0, east 90
  std::vector<double> snow_depth_m;
  std::vector<double> sky_infrared_W_per_m2;  ///< from the whole sky on flat ground
  std::vector<double> opaque_share;           ///< cloud that hides the sky, 0 to 1
};

/// Month 1 to 12, day 1 to 31, hour 1 to 24: the hour that ends then.
struct CalendarHour {
  int month = 1;
  int day = 1;
  int hour = 1;
  friend bool operator==(const CalendarHour& a, const CalendarHour& b) {
    return a.month == b.month && a.day == b.day && a.hour == b.hour;
  }
};

/// Whether a series is a leap year's; 8760 or 8784 hours only.
bool is_leap_year(std::size_t hours);
int days_of_month(int month, bool leap);
/// `hour` counts from 0, the first hour of the year.
CalendarHour calendar_hour(std::size_t hour, bool leap);
std::size_t hour_of_year(CalendarHour at, bool leap);

enum class WeatherForm { epw, tmy3 };

/// What the reader mended, and never without saying so.
enum class RepairKind {
  last_good,        ///< missing, so the value before stands (at the file's beginning: the first that is there)
  no_radiation,     ///< radiation missing, so none is counted: the cold side
  negative,         ///< radiation below zero, read as none
  absent,           ///< no value in the whole file: the series is empty
  short_last_line,  ///< the last line breaks off behind the wind, which is enough
  hours_from_zero,  ///< hours run from 0 to 23 and are read as 1 to 24
  unknown_heading   ///< a line of heading of an unknown kind, passed over
};

struct Repair {
  RepairKind kind = RepairKind::last_good;
  std::string column;     ///< "dew point"; empty where the file as a whole is meant
  int count = 0;          ///< values, or lines
  int first_line = 0;     ///< counted from 1
  int longest_hours = 0;  ///< the longest gap, for missing values
};

/// The repair in words, a note: "the weather file: dew point: 12 values are missing, ...".
Diagnostic repair_note(const Repair& repair);

struct WeatherFile {
  WeatherForm form = WeatherForm::epw;
  WeatherYear year;
  std::vector<Repair> repairs;  ///< in the order of the columns
};

struct WeatherOptions {
  int longest_gap_hours = 24;  ///< dry bulb missing for longer is refused; practice: one day's wave can be guessed
};

/// Reads the text of an EPW file (35 columns, in files before 2000 as few as 32) or of a TMY3 file (68 or 71 columns).
/// Line ends, a byte-order mark, empty lines, the spelling of the heading and the years of the dates do not matter: a
/// typical year's months are of different years. There is one answer only: a year, with a note for each repair, or one
/// sentence naming the line why there is none (code `weather.*`). Sources: US Department of Energy, Auxiliary Programs,
/// EPW data dictionary (columns, valid ranges, codes of missing values); NREL/TP-581-43156 (TMY3).
Checked<WeatherFile> read_weather(std::string_view text, const WeatherOptions& options = {});

}  // namespace slabwright
