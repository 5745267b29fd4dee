// Small tables of reference data kept beside the tests.
#pragma once
#include <map>
#include <string>
#include <vector>

namespace slabwright::test {

/// The rows of a comma-separated file under tests/published/data/, each a map from column name to text.
/// Lines that begin with '#' are provenance and are passed over. A missing file throws: the test is broken.
std::vector<std::map<std::string, std::string>> read_table(const std::string& path_below_data);

/// A cell as a number; throws where the column is missing or empty.
double number(const std::map<std::string, std::string>& row, const std::string& column);

/// A whole text file, by its path below the project's folder.
std::string read_text(const std::string& path_below_project);

}  // namespace slabwright::test
