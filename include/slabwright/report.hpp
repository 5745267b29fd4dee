// An answer for people, for programs and for spreadsheets. A face: it computes nothing.
#pragma once
#include <string>
#include <vector>

#include "slabwright/answer.hpp"
#include "slabwright/answer_gauge.hpp"

namespace slabwright {

/// A page that was written, and who reads it.
struct SheetLine {
  std::string file, reader;
};

struct ReportOptions {
  std::string file_name;  ///< as the user typed it; empty where there is no file
  bool full = false;
  std::string command;              ///< the words to repeat in "Next:" when there is no file
  bool explain = false;             ///< of the frost hold: only the arithmetic of the place that decides
  std::string asked = {};           ///< words to repeat that only `drill` takes; not among `command`
  std::vector<std::string> map{};   ///< of route: the floor in letters, from who can draw
  std::vector<SheetLine> sheets{};  ///< of sheets: what was written
};

/// Verdict, ledger, cautions, next command: at most 45 lines of 80 plain ASCII characters unless `full`.
std::string text_of(const Answer& answer, const ReportOptions& options);

/// "As written" beside "as tried", where options changed a file.
std::string text_of_both(const Answer& written, const Answer& tried, const ReportOptions& options);

/// The whole answer with stable keys that carry their units. Six digits are as many as any figure means; more are for
/// comparing machines.
std::string json_of(const Answer& answer, int digits = 6);

/// The units that readings of a pressure test were typed in.
struct GaugeOptions {
  std::string pressure_unit = "psi";  ///< "psi", "bar", "kPa", "mbar"
  std::string degree_unit = "F";      ///< or "C"
};
/// Is the pressure test leaking: verdict, what is expected, errors, what to do.
std::string text_of(const GaugeAnswer& answer, const GaugeOptions& options);
std::string json_of(const GaugeAnswer& answer);

struct Sheet {
  std::string name;  ///< file name: "loops.csv"
  std::string content;
};
/// Loop and balance tables, power cuts and ways back to work.
std::vector<Sheet> tables_of(const Answer& answer);

}  // namespace slabwright
