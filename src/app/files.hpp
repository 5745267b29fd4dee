// The only place that touches the disk.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/report.hpp"

namespace slabwright::app {

/// The text of a file, or a sentence that says why there is none.
struct FileText {
  std::string text;
  std::string problem;
};
/// A design file, also from a pipe. No more of it is read than a design may have.
FileText read_design_file(const std::string& name);

/// The same for the weather file that a design names: a year of it has less than 8 MB, so that no more is read.
FileText read_weather_file(const std::string& name);

/// The same for a table of meter readings.
FileText read_readings_file(const std::string& name);

/// The same for places where tube was found.
FileText read_found_file(const std::string& name);

/// Writes a file that must not be there yet, whole or not at all, and returns a sentence where it failed.
std::string write_new_file(const std::string& path, const std::string& text);

/// Writes every sheet into a folder, which is made where it is missing, and returns a sentence where it failed: then
/// what stood in the folder stands there as before. Nothing outside the folder is touched, whatever lies in it. A run
/// that is killed leaves whole files, old or new, and some whose names end in `unfinished_ending`; the next run takes
/// those away. Runs into the same folder wait for each other.
std::string write_sheets(const std::string& folder, const std::vector<Sheet>& sheets);
inline constexpr std::string_view unfinished_ending = ".slabwright-part";

/// Why no sheets can go into a folder of this name, as far as that is seen before anything is computed.
std::string folder_problem(const std::string& folder);

}  // namespace slabwright::app
