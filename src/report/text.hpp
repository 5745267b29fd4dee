// The parts of a text report, a file for each stage.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "report/ledger.hpp"
#include "slabwright/report.hpp"
#include "slabwright/report_guesses.hpp"
#include "slabwright/report_number.hpp"
#include "slabwright/report_words.hpp"

namespace slabwright::report {

/// An answer and whom it is told to.
struct Reader {
  const Answer& answer;
  const ReportOptions& options;
  const Design& design() const { return answer.file.design; }
  System system() const { return answer.file.design.units; }
  std::string operator()(Kind kind, double si) const { return figure(kind, si, system()); }
  std::string operator()(Kind kind, double si, Figure leaning) const {
    return marked(figure(kind, si, system()), answer, leaning);
  }
};

// Whole answers, from the third line on: the verdict first.
void add_check(Page& page, const Reader& reader);
void add_design(Page& page, const Reader& reader);
void add_route(Page& page, const Reader& reader);
void add_balance(Page& page, const Reader& reader);
/// Balancing with readings brought along: what they say.
void add_readings(Page& page, const Reader& reader);
void add_freeze(Page& page, const Reader& reader);
void add_winter(Page& page, const Reader& reader);
void add_drill(Page& page, const Reader& reader);
void add_cure(Page& page, const Reader& reader);
void add_sheets(Page& page, const Reader& reader);
/// The floor in plan, where its field was found.
void add_field(Page& page, const Reader& reader);
/// Everything else that is known: only with `full`.
void add_full(Page& page, const Reader& reader);

/// Between boiler and floor: circuits, pumps and mixing, where it is piped otherwise than directly; zones shut.
void add_source(Page& page, const Reader& reader);

/// Coils and materials: a part of that.
void add_site(Page& page, const Reader& reader);

/// Pump, boiler, start, tank, electric service and air out of the loops: a part of that.
void add_plant_full(Page& page, const Reader& reader);

// Pieces that several of them share.

/// A flow without its unit, for a column.
std::string flow(const Reader& reader, double m3_per_s);

/// In capitals.
std::string upper(std::string text);
/// A title, its table, an empty line; nothing where it has no rows.
void add_section(Page& page, std::string_view title, const Table& table);
/// A column of figures with its unit under its word.
Column in(std::string_view word, Kind kind, System system);
/// "at 5 C 13.2 L/min moves, 71 % of the usual flow; all loops laminar; the usual flow after 5.9 h".
std::string start_words(const Reader& reader, const StartUp& start);
/// "3 min", and from an hour and a half on "5.9 h".
std::string minutes_words(double s);

/// "and 3 more: add --full", or "and 3 holes more: ...": what a page leaves out, and what shows it.
std::string and_more(std::size_t left_out, std::string_view one = {});

/// "Capital letter, full stop."
std::string sentence(const std::string& text);
std::string sentence(const Diagnostic& said, System system);
/// The same, and behind it the key and the value that were tried and end it, where there is one.
std::string with_remedy(const Reader& reader, const Diagnostic& said);
/// Shop, slab, tube and file on one line.
void add_first_line(Page& page, const Reader& reader, const std::string& topic);
/// "9 values are yours, 24 are our guesses. ~ leans on a guess."
std::string counts(const Reader& reader);
/// Reasons of the verdict as (1), (2) ...; as many as fit into `most` lines, and the count of the rest.
void add_reasons(Page& page, const Reader& reader, const std::vector<Diagnostic>& reasons, std::size_t most);
/// One line for each stage that lacks something.
void add_lacking(Page& page, const Reader& reader);
/// The three guesses that move most, with what they move, under a heading. Nothing where none is known.
void add_sharpen(Page& page, const Reader& reader, const std::string& heading);
/// Notes of one stage, by the front of their code, as many as leave room for the end of a short report.
void add_notes(Page& page, const Reader& reader, std::string_view stage);
/// One caution (all of them with `full`) and the next command, with an option that is not among the reader's own.
void add_end(Page& page, const Reader& reader, const std::string& next_command, const std::string& option = {});
/// "3", or where there are several manifolds "2-3": the third port of the second.
std::string port_words(const Reader& reader, std::size_t row);
/// The boiler as it is called in a sentence: "tank heater".
std::string boiler_words(BoilerKind kind);
/// "down to -36 F ~" for weather that the boiler keeps up with; "even below -60 F" where none is that cold.
std::string keeps_to(const Reader& reader, double degC, Figure leaning);

}  // namespace slabwright::report
