// The only place that touches the disk.
#pragma once
#include <string>
#include <vector>

#include "slabwright/report.hpp"

namespace slabwright::app {

/// The text of a file, or a sentence that says why there is none.
struct FileText {
  std::string text;
  std::string problem;
};
FileText read_file(const std::string& name);

/// The same for the weather file that a design names: a year of it has less than 8 MB, so that no more is read.
FileText read_weather_file(const std::string& name);

/// The same for a table of meter readings.
FileText read_readings_file(const std::string& name);

/// Writes whole or not at all: to a name of its own first, then renamed. Returns a sentence where it failed.
std::string write_file(const std::string& path, const std::string& text);

/// Writes every sheet into a folder, which is made where it is missing.
std::string write_sheets(const std::string& folder, const std::vector<Sheet>& sheets);

}  // namespace slabwright::app
