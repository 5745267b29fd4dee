// A table for a spreadsheet in the making.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/report.hpp"
#include "slabwright/report_number.hpp"

namespace slabwright::report {

/// A text in a cell. Quoted where it must be, and never taken for a formula.
std::string text_cell(const std::string& text);

class Csv {
 public:
  explicit Csv(System system) : system_(system) {}

  void head(std::string_view word) { cell(std::string(word)); }
  void head(std::string_view word, Kind kind);
  void cell(const std::string& text) { number(text_cell(text)); }
  /// A number, which may begin with a minus.
  void cell(Kind kind, double si) { number(plain(kind, si, system_)); }
  void number(const std::string& digits) {
    if (!first_) content_ += ',';
    content_ += digits;
    first_ = false;
  }
  void end_row() {
    content_ += "\n";
    first_ = true;
  }
  std::string content() const { return content_; }

 private:
  System system_;
  std::string content_;
  bool first_ = true;
};

/// Tables for the site: coils, materials, lines, walks, holes.
std::vector<Sheet> site_tables_of(const Answer& answer);
/// Every way in a row, and the best one hour by hour.
std::vector<Sheet> winter_tables_of(const Answer& answer);

}  // namespace slabwright::report
